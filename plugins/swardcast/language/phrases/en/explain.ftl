### Where a surface's dates come from, step by step. Shares, lengths and days come in words, with their unit.

explain-play = Play
# $title: a job. $work: how it stands, from notice.ftl.
explain-job = { $title }: { $work }
# $milestone: one of the names below. $early: 1 chance in 10 that it is by then.
explain-date = { $milestone }: { $date }.
    .early = { $milestone }: { $date } (1 chance in 10 by { $early }).
milestone-reopening = Reopening
milestone-settled = Settled
milestone-holes-closed = Holes closed
milestone-back-to-normal = Back to normal
# $finished: surfaces. $plan: as many surfaces as the plan counts for.
explain-pace-of-work = Reopening: { $minutes ->
    [one] { $minutes } minute
   *[other] { $minutes } minutes
} of working time for a surface, from { $finished } finished so far and the plan, which counts as { $plan }.

## What the work disturbed. $kind: the kind of work, with a capital.

# $rate: a number.
explain-stripped = { $kind }: { $share } of the surface loses its crowns and grows back at { $rate } per growth day.
explain-room-in-holes = Room for sand: holes { $width } inside and { $depth } deep take { $room }.
explain-room-in-grooves = Room for sand: grooves { $depth } deep take { $room }.
explain-passes = { $formula } x { $passes ->
    [one] { $passes } pass
   *[other] { $passes } passes
}
explain-sand-fits = Sand: { $spread } spread; all of it fits into holes and grooves.
explain-earlier = Earlier work had left { $share } of the surface disturbed on that day.
explain-day-zero = Disturbed on day 0, { $day }: { $share } of the surface.
explain-left = Left after G growth days: { $formula }.

## How fast this course heals. $pace, $low and $high: shares of the fitted pace.

explain-usual-pace = Healing pace before anything was known of this course: { $pace } of the fitted one, in 8 cases of 10 from { $low } to { $high }.
# $title: a job. $taken and $computed: days.
explain-healed-before = Healed before: { $title }, back to normal on { $day } after { $taken ->
    [one] { $taken } day
   *[other] { $taken } days
}. The fitted pace gives { $computed }, so it healed { $pace ->
    [fast] more than three times as fast
    [slow] more than three times as slowly
   *[between] at { $share } of it
}.
explain-pace-after-lessons = Healing pace after that: { $pace }, in 8 cases of 10 from { $low } to { $high }; a healed job counts in part only.
explain-brakes = Different things that hold growth back multiply; the same one told twice counts once.
# $seen: a look, from reasons.ftl. $of: what its share is of. $growth: growth days.
explain-look = Seen at { $when }: { $seen }. { $of ->
    [roll] { $share } of the lost roll is still missing
   *[marks] { $share } of the first marks are left
}, where { $foretold } was computed after { $growth } growth days; such a look is right within { $error }.
    .no-growth = Seen at { $when }: { $seen }. No growth since the work, so it teaches nothing yet.
explain-pace-after-looks = Healing pace after what was seen: { $pace }, in 8 cases of 10 from { $low } to { $high }.

## Growth. The formula has T in degrees Celsius in every language; $optimum is a number of them, $best a temperature.

explain-growth = Growth of a day: { $formula }, for { $grass } turf, T its mean in °C. It is best at { $best }.
    .held = Growth of a day: { $formula }, and 1 above { $optimum } °C, for { $grass } turf, T its mean in °C. It is best at { $best } and above.
grass-cool-season = cool-season
grass-warm-season = warm-season
