### What a state or a date rests on: one sentence each.
### $when: a moment or a day in words. $because: a reason as the club typed it, without its full stop.

reason-morning-entry = Morning report of { $when }.
    .because = Morning report of { $when } ({ $because }).
reason-no-fresh-entry = No report today; the last one was made at { $when }.
    .never = No report was ever made.

## Work

reason-planned = Planned to start on { $when }.
reason-overdue = Was planned from { $when }; nobody has reported that it began.
reason-moved = Moved to { $when }.
    .because = Moved to { $when } ({ $because }).
reason-postponed = Postponed; no new day is known yet.
    .because = Postponed; no new day is known yet ({ $because }).
reason-called-off = Called off.
    .because = Called off ({ $because }).
reason-started = Work started at { $when }.
reason-held-up = Held up since { $when }.
    .because = Held up since { $when } ({ $because }).
reason-done = Work done at { $when }.

## Dates

reason-computed = Dates computed from the work, the growth from { $when } on and past years' weather.
reason-said-to-be-back-to-normal = The { -course-manager } called it back to normal at { $when }.
reason-computed-to-be-back-to-normal = Computed to be back to normal since { $when }; no report has confirmed it yet.
# $because: whose usual time it is.
reason-rule-of-thumb = We do not compute this date. It is the usual time for such work ({ $because }).
reason-not-validated = Few recoveries of such grass or work have been published, so we give a wider range.
reason-no-weather-history = There is no weather history, so no date can be computed.
reason-more-than-a-year-ahead = The work is more than a year ahead, so no date is computed yet.
reason-not-this-season = In more than 1 case in 10 it would not heal this season, so no date is given.
# $count of days
reason-weather-missing =
    { $count ->
        [one] The weather of 1 day is not recorded, so that day takes the usual temperature.
       *[other] The weather of { $count } days is not recorded, so those days take the usual temperature.
    }
# $count of years
reason-few-past-years-of-weather = Past years of weather known here: only { $count }, so the range is drawn wider.
reason-nothing-to-heal = This work leaves nothing that has to heal.

## What was seen, and what moved the pace. $seen and $before: a look.

reason-observed = Seen on the course at { $when }: { $seen }.
reason-observations-contradict-each-other =
    Two looks contradict each other ({ $before }, then { $seen }); each counts as far as it can be trusted.
reason-an-observation-far-from-the-sum =
    What was seen at { $when } ({ $seen }) is far from the sum. One look moves the date only so far; if it is so, look again and write it down.
# $brake: what holds growth back. $share: of the growth, in per cent.
reason-growth-held-back = Growth held back from { $when } to { $until }: { $brake }; growth counts { $share }.

## A look, as a clause

look-marks = { $share } of the first marks left, { $how ->
    [counted] counted
   *[by-eye] by eye
}
look-cover = turf cover { $share }
look-roll = green speed { $roll }, { $share } of the target

## What holds growth back

brake-growth-regulator = growth regulator
brake-frost-on-the-leaf = frost on the leaf
