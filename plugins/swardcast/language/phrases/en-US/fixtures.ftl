fixtures-heading = Tournaments and outside events
fixtures-left-out = Other events in between are left out.

## The page Season

# What a folded month holds
season-count-fixtures = { $count ->
    [one] { $count } event
   *[other] { $count } events
}
season-total-fixtures = Events
season-total-fixtures-are = Events are tournaments and outside events that fall on a day of work or of healing, those already played too.
