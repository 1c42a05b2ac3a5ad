### Days for several jobs together, for the manager and the committee. None of it is published.

# $count: how many
together-title = When to do { $count } jobs together
# $days: a number of days
together-days = { $days ->
    [one] { $days } day
   *[other] { $days } days
}
# $weeks: a number of weeks
together-weeks = { $weeks ->
    [one] { $weeks } week
   *[other] { $weeks } weeks
}

## Tables

together-table-best = The days with the fewest weighted days in all
together-table-soonest = The soonest days on which the jobs fit
together-table-trade-offs = Trade-offs: more weighted days for fewer days disturbed
together-column-letter = Letter
together-column-job = Job
together-column-kept = Kept free until
together-column-with-all = Weighted, done together
together-in-all = In all

## What speaks for a day; each is a sentence after the job's letter

together-cheapest = No first day would cost it less, taken alone.
# $day: a day. $more: a number.
together-not-cheapest = Taken alone it would best begin on { $day }, with { $more } weighted days less.
together-for-the-others = Then the others would cost more, or would not fit.
# $gap: "4 weeks". $other: the letter of a job.
together-waits-gap = It waits until { $gap } after the work of { $other }.
together-waits = It waits until the days of { $other } are over.
# $more: a number
together-on-healing = When the others are done it costs { $more } weighted days more than alone, since turf still heals from them.

## Notes

# $first and $last: days
together-proven = No other first days from { $first } to { $last } cost fewer weighted days, reckoned job by job and added up. That is proven, not only tried.
together-soonest = Nothing is known of how long these jobs disturb play, so these are the soonest days on which they fit.
# $alone: weighted days
together-sum-same = They come to { $alone } weighted days, and to no more when all of the jobs are done.
# $alone and $all: weighted days. $more: a number.
together-sum-more = They come to { $alone } weighted days. When all of the jobs are done they come to { $all }, which is { $more } more, since some of the turf still heals from another job. The first table has those days and dates.
together-longer-gap = A longer gap would keep them apart.
together-added = Each job's disturbed days count, also where two jobs disturb the same day.
together-one-crew = One crew does all of it, so that no two jobs share a day.
# $crews: a number above 1
together-crews = { $crews ->
    [one] No more than { $crews } job is worked on during one day.
   *[other] No more than { $crews } jobs are worked on during one day.
}
together-spare = Spare days are kept free as well, and a gap counts from the last of them.
together-in-order = The jobs keep the order in which they were named.
together-any-order = The jobs may come in any order.
# $pairs: "from A to B and from B to C". $gap: "4 weeks".
together-gap = { $gap } or more have to pass { $pairs }.
# $earlier and $later: letters of jobs
together-pair = from { $earlier } to { $later }
together-gap-rule = Gaps hold between jobs that share a surface.
together-no-trade-off = No other first days would bring fewer days disturbed.
# $count: a number above 1
together-trade-offs = { $count ->
    [one] The second table has { $count } trade-off.
   *[other] The second table has all { $count } trade-offs.
}
# $count: a number above that of those shown
together-trade-offs-some = { $count ->
    [one] There is { $count } trade-off.
   *[other] There are { $count } trade-offs. The second table has { $shown } of them, with both ends.
}
together-trade-off-is = Each has fewer days disturbed than the one above, but more weighted days. The jobs are reckoned one by one there, weighted days to a hundredth and days disturbed to a tenth. The last column has the weighted days when all are done.
# $number: of a trade-off. $days: weighted days.
together-other-is-less = Of these number { $number } costs least when all are done, { $days } weighted days.
# $jobs: titles
together-without-end = Of the end of this work nothing is known, so that it counts for nothing in the sums: { $jobs }.
together-usual-time = The end of this work was not computed but typed: { $jobs }. It counts alike at every time of the year, also where turf hardly grows.
# $jobs: titles
together-beside = This work stays as planned, on days that are kept for the jobs here: { $jobs }. Whether the crew can do both is for you to judge.

## Where they do not fit

# $first and $last: days
together-none = The jobs cannot all be done from { $first } to { $last }.
# $job: its letter
together-never = { $job } can begin on none of these days. Ask for it alone to see why.
# $gap and $most: "4 weeks". $earlier and $later: letters of jobs.
together-eased = They fit with { $most } instead of { $gap } from { $earlier } to { $later }.
together-without-gaps = They fit without gaps.
together-other-order = They fit in another order.
together-more-crews = They fit with one crew more.
together-too-few-days = Neither shorter gaps nor another order nor one crew more would do. The days are too few.
# $letter: of a job. $job: its title.
together-key = { $letter }: { $job }

## The picture

together-picture-title = Trade-offs
# $more and $fewer: numbers of days
together-picture-summary = From the first trade-off to the last there are { $fewer } fewer days disturbed, for { $more } weighted days more.
together-picture-reads = A point farther to the left has fewer days disturbed, a lower one fewer weighted days.
together-picture-axes = The axes do not begin at 0.
together-picture-best = The days with the fewest weighted days
together-picture-others = The other trade-offs, by their numbers in the table
