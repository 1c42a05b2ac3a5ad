### How good the dates have been.

## The club's own: what was computed on the day of the work, and what came

# $count of jobs that can be judged, $needed at the least.
record-too-early = { $count ->
    [0] No job with a computed date has come to an end so far.
    [one] { $count } job with a computed date has come to an end so far.
   *[other] { $count } jobs with a computed date have come to an end so far.
} That is too early to judge: { $needed } are needed at the least.
# Of $count jobs. Kept: inside the range. Missed: after it. Sooner: before it.
record-counts = Of { $count } jobs, { $kept } kept the dates that we gave, { $missed ->
    [0] none
   *[other] { $missed }
} missed them, and { $sooner ->
    [0] none
   *[other] { $sooner }
} came sooner.
record-expected = Of 10 jobs we expect 8 to keep them, 1 to miss them and 1 to come sooner.
# $job: its title as typed. $days: after the day to allow for
record-missed-job = Missed: { $job }, by { $days ->
    [one] { $days } day
   *[other] { $days } days
}.
# $missed and $days: numbers of days with a decimal. $lean: which way the days were wrong on the whole.
record-missed = On average the end came { $missed } days away from the likely day; { $lean ->
    [hopeful] on the whole we were { $days } days too hopeful
    [careful] on the whole we were { $days } days too careful
   *[neither] on the whole we were neither too hopeful nor too careful
}.

record-done = Done on { $day }
# $date: as surely as it was known, such as "likely by ...". $early: 1 chance in 10 that it is by then.
record-computed = { $date }
    .early = { $date } (early day: { $early })
record-not-normal-yet = Not called back to normal yet
record-not-judged-yet = Not over yet, so not counted
# The day to allow for, $day, is over
record-not-reported = Due by { $day }; not reported. Counted neither as kept nor as missed
# Of $count jobs the day to allow for is over
record-silent = { $count ->
    [one] { $count } more is past its day, and nobody has reported it back to normal. It is counted neither as kept nor as missed.
   *[other] { $count } more are past their days, and nobody has reported them back to normal. They are counted neither as kept nor as missed.
}
record-no-date = No date was given
# $outcome: kept, missed or sooner, of those that can be
record-on-the-day = Kept: on the likely day
# $past: days after the day to allow for, where it was missed
record-after = { $outcome ->
    [missed] { $past ->
        [one] Missed by { $past } day
       *[other] Missed by { $past } days
    }
   *[kept] Kept
}: { $days ->
    [one] { $days } day
   *[other] { $days } days
} after the likely day
record-before = { $outcome ->
    [sooner] Sooner than we said
   *[kept] Kept
}: { $days ->
    [one] { $days } day
   *[other] { $days } days
} before the likely day

## By years

# Columns are as short as can be: there are five of them on a telephone
record-by-years = Jobs that count, year by year
record-column-year = Year
record-column-judged = Jobs
record-column-kept = Kept
record-column-missed = Missed
record-column-sooner = Sooner
# $count of jobs; those before stand on pages of their own
record-latest-jobs = { $count ->
    [one] The latest job with its days
   *[other] The { $count } latest jobs with their days
}
record-year-title = Our dates of { $year }
record-year-summary = { $count ->
    [one] What we said of { $count } job that was done in { $year }, and what came.
   *[other] What we said of { $count } jobs that were done in { $year }, and what came.
}
# Before a link to all years
record-year-lead = How we count, and all years together:

## Published recoveries, worked out again. Names, work, sources and what was assumed are data in English.

published-inside = For { $inside } of { $count } published recoveries the computed day lies inside the days that were seen.
# $lean: to which side the sum is wrong on the whole.
published-missed =
    { $count } of them say when to within a month. There the sum misses the middle of the days seen by { $missed } days on average, and leans { $lean ->
        [late] { $days } days to the late side
        [early] { $days } days to the early side
       *[neither] to neither side
    }. It takes the usual temperatures of the place, since those of the days were not published.
published-work = { $who ->
    [trial] Trial: { $work }
   *[course] Report: { $work }
}
# $seen: the milestone that the source speaks of. $share: of the surface under leaf.
published-computed = { $seen ->
    [settled] Most putts rolled true
    [holes-closed] Holes closed
    [complete-cover] { $share } cover
   *[back-to-normal] Back to normal
} after { $days ->
    [one] { $days } day
   *[other] { $days } days
}
published-came = { $first } to { $last ->
    [one] { $last } day
   *[other] { $last } days
}
published-not-yet = Not yet after { $days ->
    [one] { $days } day
   *[other] { $days } days
}
published-fits = Fits
published-too-late = { $days ->
    [one] { $days } day too late
   *[other] { $days } days too late
}
published-too-early = { $days ->
    [one] { $days } day too early
   *[other] { $days } days too early
}
published-source = Source: { $source }.
    .assumed = Source: { $source }. Assumed: { $assumed }.
