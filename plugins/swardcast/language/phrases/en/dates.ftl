# The one table of dates, times and lists: the same uncertainty gives the same words everywhere.
# Style after the NHS service manual ("Numbers, measurements, dates and time"): no ordinals, no comma after the weekday
# in British English, ranges with "to", 7:05am, midday, midnight.

list-more = { $first }, { $next }
# $count: how many there are in all
list-last = { $count ->
   *[other] { $first } and { $last }
}
list-clauses = { $first }; { $next }
# A clause that stands alone
sentence = { $clause }.
list-sentences = { $first } { $next }
moment = { $time } on { $day }
midnight = midnight

# Uncertain days
on-day = on { $day }
by-now = by now
due-now = due now; allow until { $until }
months-from-to = some time from { $first } to { $last }
# Of a usual time that somebody typed: no chance is known
usual-months-from-to = usually some time from { $first } to { $last }
usually-between = usually between { $first } and { $last }
usually-by = usually by { $day }
# Of a plan, and the days that it keeps: $why, for weather, or since a product's label has to be heeded. $how: planned, or
# expected from where the work stands.
planned-for = { $how ->
    [planned] planned for { $day }
   *[expected] expected by { $day }
}
planned-for-or-next-day = { $why ->
    [weather] { $how ->
        [planned] planned for { $day }, or the day after if the weather holds us up
       *[expected] expected by { $day }, or the day after if the weather holds us up
    }
   *[label] { $how ->
        [planned] planned for { $day }, or the day after
       *[expected] expected by { $day }, or the day after
    }
}
planned-for-or-by = { $why ->
    [weather] { $how ->
        [planned] planned for { $day }, or by { $last } if the weather holds us up
       *[expected] expected by { $day }, or by { $last } if the weather holds us up
    }
   *[label] { $how ->
        [planned] planned for { $day }, or by { $last }
       *[expected] expected by { $day }, or by { $last }
    }
}
likely-by = likely by { $day }
# Where there is room for one day only
allow-until = allow until { $until }
likely-by-allow-until = likely by { $day }; allow until { $until }
# Of several surfaces whose days lie apart. $first: one of the two that follow.
first-and-last = { $first }, the last likely by { $last }; allow until { $until }
first-likely-by = the first of them likely by { $day }
first-due-now = the first of them due now
no-date-until-done = no date until the work is done
# Computed; $by has passed
normal-by-sum = was due by { $by }; nobody has reported it yet
# Of work that nobody reports on any more: $date as it was last told
date-as-last-told = { $date }, as last told
# Of work that leaves nothing to heal
no-day-known = no day known yet
no-date-not-this-season = too early to give a date: the grass is hardly growing
no-date-no-history = no date: the weather of past years is not known here
no-date-too-far = no date yet: the work is more than a year ahead

# Chances: all out of ten, so that they compare. "that ..." follows.
chance-hardly-any = hardly any chance (less than 1 in 20)
chance-tenths = about { $tenths ->
    [one] { $tenths } chance
   *[other] { $tenths } chances
} in 10
chance-almost-certain = almost certain (more than 19 chances in 20)

# Spans of days
days-from-to = { $first } to { $last }

# Headings of tables: of an even chance, and of the days or amounts between 1 chance in 10 and 9 chances in 10
column-likely = Likely
column-allow-until = Allow until
column-8-in-10 = In 8 cases out of 10
