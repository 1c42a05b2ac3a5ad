mass-of-sand = { $number } { $count ->
    [one] tonne
   *[other] tonnes
}
