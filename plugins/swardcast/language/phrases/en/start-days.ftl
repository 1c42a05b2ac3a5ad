### When to do a job, for the manager and the committee. None of it is published.

# $job: its title, or what is done, as typed
startdays-title = When to do: { $job }
# $first and $last: days, or numbers
startdays-span = { $first } to { $last }
# $middle, $low and $high: numbers
startdays-with-range = { $middle } ({ $low } to { $high })
# $count of $years
startdays-years-of = { $count } of { $years }
startdays-none = none
# $days: a number of days
startdays-count = { $days ->
    [one] { $days } day
   *[other] { $days } days
}

## Tables

startdays-table-best = The best times to begin
startdays-table-weeks = Every week: its best first day
startdays-table-fixtures = Fixtures that these days touch: the chance that some surfaces are still disturbed
startdays-table-blocked = Days on which the work cannot begin
startdays-column-window = First day
startdays-column-best = Best first day
startdays-column-weighted = Weighted days
startdays-column-days = Days disturbed
startdays-column-spare = Spare days
startdays-column-week = Week from
startdays-column-dry = Dry first day
startdays-column-frost = Frost that morning
startdays-column-fixture = Fixture
startdays-column-reason = Reason
startdays-column-blocked = Days
startdays-column-runs-into = The work would run into it from

## Why a day is out

startdays-because-weekday = Not a working day
# $name: of the holiday, as its country has it
startdays-because-holiday = Public holiday: { $name }
# $name: of the competition or visitors' day, as typed
startdays-because-fixture = Fixture: { $name }
# $why: the club's own words
startdays-because-club = { $why }
startdays-because-daylight = Less than { $hours } hours from sunrise to sunset
# $kind: a kind of work
startdays-because-contractor = Not a day of the contractor for { $kind }

## What speaks for and against a time; each is a sentence after the best day's name

# $share: of the best growth there can be
startdays-grows = The grass then grows at { $share } of its best pace.
startdays-quickest = Play is disturbed about as shortly as it can be.
# $days: a number of days
startdays-longer = { $days ->
    [one] Play is disturbed a day longer than at the quickest time.
   *[other] Play is disturbed { $days } days longer than at the quickest time.
}
# $fixture: its name and day. $chance: "about 3 chances in 10".
startdays-meets = The first fixture that it touches is { $fixture }: { $chance } that it finds some surfaces still disturbed.
startdays-meets-work = The first fixture that it touches is { $fixture }, which falls into the days of the work.
startdays-meets-perhaps = The first fixture that it may touch is { $fixture }.
startdays-meets-none = It touches no fixture.
startdays-meets-not-known = Which fixtures after the work it touches is not known.
# $enough and $years: numbers of years
startdays-spare-needed = { $spare ->
    [0] Without a spare day the work would have been finished in time in { $enough } of { $years } past years.
    [one] With { $spare } spare day the work would have been finished in time in { $enough } of { $years } past years.
   *[other] With { $spare } spare days the work would have been finished in time in { $enough } of { $years } past years.
}
# $days: a number of days
startdays-cold = A cold spell may hold it up: in 1 case out of 10 it takes { $days } days longer than likely, or more.
# $chance: "about 3 chances in 10", which gets a capital. $days: a number.
startdays-never = { $chance } that it is not over within { $days } days, perhaps not before spring.
# $jobs: titles of other work
startdays-same-days = The plan has other work in these days: { $jobs }. Whether the crew can do both is for you to judge.
# $reason: why a day is out, as in the table
startdays-before-out = The days before are out ({ $reason }).
startdays-after-out = The days after are out ({ $reason }).

## Notes

# $count: possible first days. $all: days asked about.
startdays-about = { $count ->
    [0] Of { $all } days from { $first } to { $last } the work can begin on none.
    [one] Of { $all } days from { $first } to { $last } the work can begin on { $count }.
   *[other] Of { $all } days from { $first } to { $last } the work can begin on { $count }.
}
startdays-until-settled = Play counts as disturbed from the first day of the work until most putts roll true on the last of the surfaces.
startdays-until-holes-closed = Play counts as disturbed from the first day of the work until the holes are closed on the last of the surfaces.
startdays-until-back-to-normal = Play counts as disturbed from the first day of the work until the last of the surfaces is back to normal.
startdays-until-over = Play counts as disturbed from the first day of the work until it is over on the last of the surfaces.
startdays-weighted = Weighted days count each disturbed day by how likely it is and by how much that day matters. An ordinary day counts 1.
startdays-ranges = In brackets stands the range that holds in 8 cases out of 10.
startdays-not-typed = Nobody has typed how much days matter.
# $weekdays: "Saturday 2 and Sunday 2"
startdays-weekdays = { $weekdays }.
# $name: of a weekday. $weight: a number.
startdays-weekday = { $name } counts { $weight }
startdays-fixture-adds = Each fixture adds { $weight } to its day.
# $weight, and $visitors for visitors' days
startdays-fixture-adds-visitors = Each competition adds { $weight } to its day, each visitors' day { $visitors }.
# $name: of fixtures, as typed
startdays-named-adds = { $name } adds { $weight }.
# $name: of a season, as typed. $times: a number.
startdays-period = In { $name } an ordinary day counts { $times } times as much.
startdays-period-unnamed = In a season that you typed an ordinary day counts { $times } times as much.
startdays-not-found = No fixture is called { $name }.
# $count: years
startdays-rests-past = The dates rest on { $count ->
    [one] { $count } past year
   *[other] { $count } past years
} of the club's weather.
# $day: the last day that the forecast reaches
startdays-rests-forecast = First days up to { $day } also rest on the forecast.
startdays-usual-time = The end of this work was not computed but typed ({ $source }), so no chance of it is known. Days are those of the middle of that range. In brackets stand those of its ends. It counts alike at every time of the year, also where turf hardly grows.
startdays-nothing-heals = Nothing has to heal after this work, so play is disturbed on its days alone.
startdays-no-weather = Without past years of weather no end is computed, so no day is better than another.
# $rain and $frost: with their units
startdays-lost = A day of work counts as lost with { $rain } of rain or more, or with { $frost } or less in the air.
startdays-lost-rain = A day of work counts as lost with { $rain } of rain or more.
startdays-lost-frost = A day of work counts as lost with { $frost } or less in the air.
startdays-dry = The first day is dry in so many of the past years.
startdays-spare = Spare days are those that were enough in at least 4 past years of 5. Days lost are counted by past years, and put no date off here.
startdays-frost = Frost is told in the same way, of its morning.
startdays-no-rain = The past years tell neither rain nor frost, so no spare days are counted.
startdays-on-fixtures = Work goes on while fixtures are played.
startdays-not-on-fixtures = No work is done while a fixture is on in working hours.
startdays-fixture-cells = A fixture has the chance that some surfaces are still disturbed on its first morning. A dash means that it is over before the work, or comes when all is back to normal.
# $day: the last day of the last fixture in the calendar
startdays-fixtures-end = No fixture after { $day } is known, so that later days count as if there were none.
startdays-others = What else is planned on the same surfaces is taken to be done as planned.
startdays-instead = The job counts as moved from { $day }.

## The picture

startdays-picture-title = What each first day costs
# $low and $high: weighted days. $best: a day.
startdays-picture-summary = A first day costs from { $low } to { $high } weighted days. The least is on { $best }.
startdays-picture-reads = The line is the weighted days that a first day is expected to cost. The shade is the range that holds in 8 cases out of 10.
startdays-picture-gaps = Where the line is broken the work cannot begin.
startdays-picture-often = Fixtures that come back often are left out here; they count all the same.
startdays-picture-weighted = Weighted days
# $day: a day
startdays-picture-best = Best first day: { $day }
startdays-picture-blocked = The work cannot begin; weekdays off are left out
startdays-picture-table = Every possible first day
startdays-column-day = First day
startdays-column-low = Low end
startdays-column-high = High end
