### The sum behind a date, for a sceptic with a pocket calculator.
### Shares, lengths and days come in words; $needed, $gained, $left are growth days with one decimal.

sums-disturbed = { $share } of the surface was disturbed on { $day }.
# $what heals: holes or grooves, or bare turf.
sums-needed = It needs { $needed } growth days until { $what ->
    [holes] the holes count as closed
   *[turf] it counts as healed
}. It has gained { $gained }.
# $rate: a length.
sums-rim = The rim of the widest hole needs that much at least: its radius at { $rate } per growth day.
# $weeks: one of the sums-weeks.
sums-left = That leaves { $left }. We expect { $weeks }.
# $when: whether it is over.
sums-heals = { $what ->
    [holes] { $when ->
        [past] So the holes closed about { $day }.
       *[ahead] So the holes close about { $day }.
    }
   *[turf] { $when ->
        [past] So it was healed about { $day }.
       *[ahead] So it is healed about { $day }.
    }
}
sums-normal = Back to normal: { $date }.

# How long from closed to back to normal; at another pace than usual, what is usual stands beside it.
sums-lag-days = { $days ->
    [one] { $days } day
   *[other] { $days } days
}
    .own-pace = { $days ->
        [one] { $days } day
       *[other] { $days } days
    } (the usual { $usual }, at the pace that this course has shown)

# $growth: growth days of each of $count weeks, in a row.
sums-weeks = { $count ->
    [one] { $growth } in the coming week
   *[other] { $growth } in the coming weeks
}
    .and-so-on = { $count ->
        [one] { $growth } and so on in the coming week
       *[other] { $growth } and so on in the coming weeks
    }
sums-week-after-week = { $first }, then { $next }

# Of the whole job. $date: as its notice gives it
sums-in-the-notice = The notice gives the day for the last of all places: { $date }. It can be a little later than the day of any one place, because nobody knows which will be the last.

## The other places of a job, in tables. Columns have few letters, so that they stand side by side on a telephone

sums-other-places = { $count ->
    [one] The other place of this work
   *[other] The other { $count } places of this work
}
sums-column-place = Place
sums-column-work = Work done
sums-column-growth = Growth days: so far / needed
sums-gained-of-needed = { $gained } / { $needed }
sums-steps = The steps between, and the formula
sums-column-disturbed = Disturbed at first
sums-column-weeks = Growth to come, by weeks
sums-column-closed = { $what ->
    [holes] Holes closed
   *[turf] Healed
}
sums-column-lag = Days after that
# Where nothing more is needed
sums-no-figure = none

## Formulas

sums-formula-lead = The share of the surface still disturbed after G growth days:
sums-formula = { $place }: { $formula }
sums-largest = the largest of [{ $parts }]

## The same in short, of one surface

pocket-settled = Growth days needed to settle (left: { $share }): { $needed }.
pocket-closed = Growth days needed until { $what ->
    [holes] the holes count as closed
   *[turf] it counts as healed
} (left: { $share }): { $needed }.
pocket-gained = Growth days gained up to yesterday: { $gained }, so { $left } to go.
pocket-weeks = Growth days to be expected: { $weeks }.
    .from = Growth days to be expected: { $weeks }, counted from { $day }.
pocket-heals = { $what ->
    [holes] { $when ->
        [past] By these sums the holes closed about { $day }.
       *[ahead] By these sums the holes close about { $day }.
    }
   *[turf] { $when ->
        [past] By these sums it was healed about { $day }.
       *[ahead] By these sums it is healed about { $day }.
    }
}
pocket-normal = Back to normal: { $lag } after that.
