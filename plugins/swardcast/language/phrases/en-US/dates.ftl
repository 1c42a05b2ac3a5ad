# Patterns of the Unicode CLDR (UTS 35, "Date Format Patterns"); month first, as the United States write it.
language-locale = en_US
day-pattern = EEEE, MMMM d
day-pattern-with-year = EEEE, MMMM d, y
short-day-pattern = MMMM d
short-day-pattern-with-year = MMMM d, y
# On the axis of a picture, where there is little room
tick-day-pattern = MMM d
tick-day-pattern-with-year = MMM d, y
tick-month-pattern = MMM
tick-month-pattern-with-year = MMM y
month-pattern = MMMM
month-pattern-with-year = MMMM y
time-pattern = h:mm a
full-hour-pattern = h a
midday = noon
days-of-a-month = { $month } { $first } to { $last }
days-of-a-month-with-year = { $month } { $first } to { $last }, { $year }
