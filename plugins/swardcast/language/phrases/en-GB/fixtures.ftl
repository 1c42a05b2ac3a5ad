fixtures-heading = Competitions and visitors' days
fixtures-left-out = Other fixtures in between are left out.

## The page Season

# What a folded month holds
season-count-fixtures = { $count ->
    [one] { $count } fixture
   *[other] { $count } fixtures
}
season-total-fixtures = Fixtures
season-total-fixtures-are = Fixtures are competitions and visitors' days that fall on a day of work or of healing, those already played too.
