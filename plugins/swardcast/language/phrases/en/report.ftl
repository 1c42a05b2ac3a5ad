### The committee's report for a period. None of it is published.

# $period: such as "September 2027"
report-title = Report to the committee: { $period }
report-so-far = The period is not over: what came later than { $day } is not in it.
report-from-records = Everything in this report comes from the club's own plan and log.
report-from-records-by-number = { report-from-records } A number under "Source" leads to the list at the end.
report-on-each-page = Private: for the committee
report-column-source = Source
report-column-job = Job
report-column-where = Where
report-column-day = Day

## In short. Each line begins with what it is about.

report-summary-title = In short
report-summary-no-jobs = Work: no job was planned for this period, and none was worked on.
# $jobs: a number. $parts: the five clauses below, as far as they are true.
report-summary-jobs = { $jobs ->
    [one] Work: { $jobs } job; { $parts }.
   *[other] Work: { $jobs } jobs; { $parts }.
}
report-jobs-finished = { $count } finished
report-jobs-under-way = { $count } under way
report-jobs-not-begun = { $count } not begun
# Their day is over, and no entry says that they began
report-jobs-not-reported = { $count } without a start reported
report-jobs-called-off = { $count } called off
report-jobs-withdrawn = { $count } taken out of the plan
report-summary-no-days = Play: no work disturbed it.
# $kinds: such as "greens 29 days"
report-summary-days = Play: days on which one or more were disturbed: { $kinds }.
# $kind: such as "Greens"
report-kind-days = { $kind } { $days } of { $all }
# $count jobs are over; days they took in all, and as they were promised before the work
report-summary-ended = { $count ->
    [one] { $count } job that is over by now took { $days } days. Before the work we told { $likely } by the likely day, and { $allowed } by the day to allow until.
   *[other] { $count } jobs that are over by now took { $days } days, added up. Before the work we told { $likely } by the likely days, and { $allowed } by the days to allow until.
}
report-summary-no-sand = Sand and cost: no work needs sand or has a price.
# $planned and $used: masses, or "none"
report-none-of-it = none
report-summary-sand = Sand: { $planned } planned, { $used } used.
report-summary-cost = Cost: { $planned } planned, { $done } as done.
report-summary-no-readings = Readings: none to be set beside a target of the club.
# $readings: such as "green speed 3 of 7"
report-summary-readings = Readings inside the club's targets: { $readings }.
report-inside-of = { $name } { $inside } of { $all }
report-summary-no-hold-ups = Hold-ups: none was entered.
# $days: working days
report-summary-hold-ups = { $count ->
    [one] Hold-ups: { $count }, with { $days ->
        [one] { $days } working day lost
       *[other] { $days } working days lost
    } ({ $causes }).
   *[other] Hold-ups: { $count }, with { $days ->
        [one] { $days } working day lost
       *[other] { $days } working days lost
    } ({ $causes }).
}
report-summary-no-dates = Our dates: no job with a computed date ended in the period.
report-summary-dates = { $count ->
    [one] Our dates: { $count } job with a computed date ended in the period, { $inside ->
        [0] outside
       *[other] inside
    } the days that we gave.
   *[other] Our dates: { $count } jobs with computed dates ended in the period, { $inside } of them inside the days that we gave.
}

## Planned and done

report-done-title = Planned and done
report-no-jobs = No job was planned for this period, and none was worked on.
report-table-jobs = Jobs
report-column-planned-from = Planned from
report-column-worked = Worked on
report-column-surfaces = Surfaces done
report-column-state = State now
# $day: the plan's. $now: the new one
report-moved = { $day }, moved to { $now }
report-put-off = { $day }, postponed without a day
report-since = since { $day }
report-of = { $done } of { $all }
report-withdrawn = taken out of the plan
report-table-work = The work
report-column-as-planned = As planned
report-column-as-done = As done
report-as-planned = as planned
# $places: surfaces. $work: operations that are not the plan's
report-done-otherwise = { $places }: { $work }
report-table-changes = Changes of plan
report-column-change = What changed
report-table-notes = Private notes, as they were typed
report-column-about = About
report-column-note = Note
report-note-jobs = A job is in this report if it was planned for the period or worked on in it.

## Days disturbed

report-disturbed-title = Days disturbed, against what was promised
report-nothing-disturbed = No work of this period disturbed play.
report-table-promises = Back to normal, as promised and as it came
report-column-announced = When announced
report-column-before = Last told before the work
report-column-came = What came
report-column-promised-days = Days promised
report-column-came-days = Days that came
report-as-announced = the same
# $count of $all surfaces, the last of them on $day; $stands: how the job stands
report-ended-in-part = { $count } of { $all } by { $day }; as a whole { $stands }
report-not-announced = not announced
report-so-far-days = { $days } so far
# No entry says that it is over, but the sum does
report-days-by-sum = { $days } by the sum
report-table-kinds = Days of the period on which one or more were disturbed
report-column-kind = Surfaces
report-column-jobs = Jobs
report-column-work-days = Days of work
report-column-healing-days = Other days of healing
report-column-all-days = In all
report-column-fixtures = Fixtures on those days
report-note-days = Days count from the first day of the work to back to normal. The first number is up to the likely day that was told, the one in brackets up to the day to allow until.
report-note-kinds = The days of the period count up to { $day }, each once, however many jobs disturbed it.
report-note-not-called = What nobody called back to normal counts up to the day of this report; where it should be back to normal, up to the likely day, or the middle of a usual time.

## Sand and cost

report-sand-title = Sand and cost
report-no-sand = No work of this period needs sand or has a price.
report-table-sand = Sand and cost
report-column-sand-planned = Sand planned
report-column-sand-used = Sand used
report-column-cost-planned = Cost planned
report-column-cost-done = Cost as done
report-in-all = In all
report-at-least = { $amount } at least
report-note-no-prices = Nobody typed prices, so that there is no cost.
report-note-sand-days = Planned sand counts on the days of the plan as it stands, used sand on the days on which the log has the work as done. Tonnes are those of dry sand, and money is that of sand as weighed.

## Readings

report-readings-title = Readings against the club's targets
report-no-readings = No readings were entered.
report-no-targets = The club has typed no targets.
# $names: such as "moisture and firmness"
report-not-read = No readings of { $names } were entered.
report-table-reading = { $name }
report-table-reading-target = { $name } (the club's target: { $target })
report-column-reading = Reading
report-column-beside = Beside the target
report-beside-below = below
report-beside-within = within
report-beside-above = above
report-beside-none = –
report-read-before = { $name } before that: { $found } on { $day }.
report-note-targets = Targets are the club's own. A reading is told as below, within or above its target, and no more.
report-picture-title = { $name } over time
report-picture-summary = { $count } readings of { $name } from { $first } to { $last }: the lowest { $low }, the highest { $high }.
report-picture-line = The line joins the days, each by the mean of the surfaces that were read on it.
# $target: with an end on one side only, such as "5 % or less"
report-picture-target-end = The broken line is the club's target, { $target }.
report-picture-period = The period of this report begins at the upright line.
report-picture-key-reading = a reading
report-picture-key-target = the club's target, { $target }

## Hold-ups

report-hold-ups-title = Hold-ups and their causes
report-no-hold-ups = No hold-up was entered.
report-table-hold-ups = Hold-ups
report-column-cause = Cause
report-column-sort = Sort
report-column-working-days = Working days
report-column-ended = Until
report-part-of-a-day = part of a day
report-still-held-up = { $days } so far
report-goes-on = still held up
report-table-causes = By cause
report-column-count = Hold-ups
report-note-causes = The sort of a cause is told by the first word of it that we know. A hold-up ends when work goes on on any of its surfaces. Working days leave out weekdays off, and the public holidays and other days on which the club does no work.
report-cause-count = { $cause } { $count }
report-cause-rain = rain
report-cause-frost = frost
report-cause-wind = wind
report-cause-heat = heat
report-cause-machine = machine
report-cause-supply = supply
report-cause-staff = staff
report-cause-play = play
report-cause-other = other
# Words by which a cause is known, or their beginnings, in small letters: typed by a greenkeeper
report-words-rain = rain, wet, soaked, flood, storm, thunder, lightning, water standing, standing water, soft
report-words-frost = frost, frozen, ice, icy, snow, cold
report-words-wind = wind, gale
report-words-heat = heat, hot, drought, dry spell
report-words-machine = machine, belt, broke, breakdown, engine, hydraulic, tractor, tyre, puncture, diesel, spare part
report-words-supply = deliver, quarry, supplier, lorry, sand did not come, sand is late, no sand, ran out
report-words-staff = staff, ill, sick, holiday, short of people, accident
report-words-play = competition, fixture, visitors, members, society, medal

## How good the dates were

report-dates-title = How good the dates were
report-no-dates = No job with a computed date ended in this period.
# $missed: days with a decimal
report-dates-counts = { $count ->
    [one] { $count } job with a computed date ended in the period.
   *[other] { $count } jobs with computed dates ended in the period.
} { $inside ->
    [0] None of them
   *[other] { $inside } of them
} lay inside the days that we gave on the day of the work, which is meant to hold in 8 cases out of 10. On average the end came { $missed } days away from the likely day.
report-dates-few = So few jobs say little: { $needed } are needed at the least.
report-dates-many = These are { $needed } jobs or more. Each further one makes this surer.
report-table-dates = What was computed when the work was finished, and what came
report-column-done-on = Work
report-column-computed = Computed
report-column-verdict = How they compare

## What lies ahead

# $period: the next one
report-ahead-title = What lies ahead: { $period }
report-nothing-ahead = No job is planned for that time.
report-table-ahead = Jobs to come
report-column-normal = Back to normal
report-column-meets = Competitions and visitors' days
report-no-fixtures = none
# $meets: such as "6 in 10". $fixtures: those that meet that, with their days.
report-meets = { $meets }: { $fixtures }
report-fixture-days = { $name } ({ $days })

## Sources

report-sources-title = Sources
# $place: a file, with a line where it is one of the plan
report-source = { $number }: { $place }
# A line for each kind. $days: the first and the last of theirs.
report-sources-of = { $kind ->
    [plan] Jobs in the plan: { $count }, planned for { $days }.
    [work] Log, work begun, held up or done: { $count ->
        [one] { $count } entry
       *[other] { $count } entries
    }, { $days }.
    [normal] Log, back to normal: { $count ->
        [one] { $count } entry
       *[other] { $count } entries
    }, { $days }.
    [seen] Log, seen and measured: { $count ->
        [one] { $count } entry
       *[other] { $count } entries
    }, { $days }.
    [change] Changes of plan: { $count }, { $days }.
   *[other] Log, all else: { $count ->
        [one] { $count } entry
       *[other] { $count } entries
    }, { $days }.
}
report-sources-whole = The same report, made with "--sources", names the source of each row.
report-file-and-line = { $file }, line { $line }
