mass-of-sand = { $number } { $count ->
    [one] ton
   *[other] tons
}
