### How good the dates have been.

## The club's own: what was computed on the day of the work, and what came

# $count of jobs that can be judged, $needed at the least.
record-too-early = { $count ->
    [0] No job with a computed date has come to an end so far.
    [one] { $count } job with a computed date has come to an end so far.
   *[other] { $count } jobs with a computed date have come to an end so far.
} That is too early to judge: { $needed } are needed at the least.
record-inside = Of { $count } jobs, { $inside } ended inside the range for the day of the work (expected: 8 in 10).
record-by-then = { $normal } of { $count } were back to normal by the day to allow until (expected: 9 in 10).
# $missed and $days: numbers of days with a decimal. $lean: which way the days were wrong on the whole.
record-missed = The likely day was missed by { $missed } days on average; { $lean ->
    [hopeful] we were { $days } days too hopeful
    [careful] we were { $days } days too careful
   *[neither] neither too hopeful nor too careful
}.

record-done = Done on { $day }
# $date: as surely as it was known, such as "likely by ...". $early: 1 chance in 10 that it is by then.
record-computed = { $date }
    .early = { $date } (1 chance in 10 by { $early })
record-not-normal-yet = Not called back to normal yet
record-not-judged-yet = Cannot be judged yet
record-no-date = No date was given
record-on-the-day = { $side ->
    [inside] Inside the range
   *[outside] Outside the range
}, on the likely day
record-after = { $side ->
    [inside] Inside the range
   *[outside] Outside the range
}, { $days ->
    [one] { $days } day
   *[other] { $days } days
} after the likely day
record-before = { $side ->
    [inside] Inside the range
   *[outside] Outside the range
}, { $days ->
    [one] { $days } day
   *[other] { $days } days
} before the likely day

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
