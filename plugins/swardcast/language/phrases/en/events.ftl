### What happened to a job, entry by entry and date by date. Reasons that the club typed stand as typed: $because.

## Entries

event-work-started = Work started on { $places }.
event-work-done = Work done on { $places }.
event-work-resumed = Work taken up again on { $places }.
event-held-up = Held up on { $places }. Why: { $because }.
event-back-to-normal = { $places }: back to normal.
event-postponed-to = Postponed to { $day }: { $because }.
event-brought-forward-to = Brought forward to { $day }: { $because }.
event-postponed = Postponed, no new day is known yet: { $because }.
event-called-off = Called off: { $because }.
event-correction = Correction of an earlier report.
event-note = A note from the { -course-manager }.
event-morning = Morning report.

# After event-work-done; the amounts with their units
event-sand-each = Really used: { $mass } of sand each.
event-sand-in-all = Really used: { $mass } of sand in all.
event-sand-depth = Really used: { $depth } of sand.
event-sand-rate = Really used: sand, { $rate }.

# $by: one of held-back-...; the words that differ are in the folders of the two Englishes
event-held-back-on = { $places }: growth held back by { $by } on { $day }.
event-held-back-from-to = { $places }: growth held back by { $by } from { $first } to { $last }.
held-back-growth-regulator = a growth regulator
held-back-frost-on-the-leaf = frost on the leaf

## Observations. $seen: what was seen, one thing after the other

event-seen = { $places }: { $seen }.
# $share: of the first marks, which are all that the work disturbed, as typed
event-marks-left-by-eye = about { $share } of the first marks left (by eye)
event-marks-left-counted = about { $share } of the first marks left (counted)
# $ofsurface: the same as a share of the surface, which is what the chart and its tables show; $alike: "no" where the
# surfaces were disturbed by different shares, and it is the largest
event-still-disturbed-by-eye = { $alike ->
    [no] up to { $ofsurface }
   *[yes] { $ofsurface }
} of the surface disturbed (by eye: { $share } of the first marks)
event-still-disturbed-counted = { $alike ->
    [no] up to { $ofsurface }
   *[yes] { $ofsurface }
} of the surface disturbed (counted: { $share } of the first marks)
event-turf-cover = turf cover { $share }
event-looked-at = looked at
# $value as typed, with its unit
event-reading = { $name } { $value }
reading-green-speed = green speed
reading-firmness = firmness
reading-moisture = moisture
reading-height-of-cut = { -height-of-cut }
reading-organic-matter = organic matter

## Moves of the date

# $cause: one of cause-...; $now and $before: dates, or why there is none
event-date-moved = { $cause }. { $end ->
    [finished] Work finished
    [open] Open again
   *[normal] Back to normal
}: { $now }. Before that our news said { $before }.
cause-because = { $cause } ({ $because })
cause-announced = First announced
cause-a-change-of-plan = The plan changed
cause-the-work-itself = The work went other than planned
# Instead of it, where a report that work is done brought the new day
cause-work-reported-done = Work was reported as done
cause-work-still-held-up = The work is still held up
cause-work-takes-longer = No report yet that the work is finished
cause-what-was-seen-on-the-course = What we saw on the course
cause-growth-held-back = Growth is held back
cause-what-healed-jobs-taught = What our last work taught us
cause-a-correction-of-the-log = A correction of our log
cause-some-of-it-is-back-to-normal = Some of it is back to normal
cause-colder-weather-than-usual = Colder weather than usual
cause-warmer-weather-than-usual = Warmer weather than usual
cause-hotter-weather-than-is-good-for-grass = Hotter weather than is good for grass
cause-cooler-weather-after-heat = Cooler weather after the heat
cause-a-colder-forecast = A colder forecast
cause-a-warmer-forecast = A warmer forecast
cause-a-forecast-of-heat = A forecast of heat, which slows the grass
cause-a-forecast-of-the-end-of-heat = A forecast of the end of the heat
cause-the-weather = The weather
