# Patterns of the Unicode CLDR (UTS 35, "Date Format Patterns").
language-locale = en_GB
day-pattern = EEEE d MMMM
day-pattern-with-year = EEEE d MMMM y
short-day-pattern = d MMMM
short-day-pattern-with-year = d MMMM y
# On the axis of a picture, where there is little room
tick-day-pattern = d MMM
tick-day-pattern-with-year = d MMM y
tick-month-pattern = MMM
tick-month-pattern-with-year = MMM y
month-pattern = MMMM
month-pattern-with-year = MMMM y
time-pattern = h:mma
full-hour-pattern = ha
midday = midday
days-of-a-month = { $first } to { $last } { $month }
days-of-a-month-with-year = { $first } to { $last } { $month } { $year }
