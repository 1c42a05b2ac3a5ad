### Planning, for the manager and the committee: choices of work beside each other. None of it is published.

## Choices in few words

planning-as-planned = As planned now
# $outside and $inside: widths of a hollow tine
planning-inside = { $outside } ({ $inside } inside)
# $kind: a kind of work. $width, $spacing and $depth: lengths with their unit.
planning-tined = { $passes ->
    [one] { $kind } { $width } at { $spacing }, { $depth } deep
   *[other] { $kind } { $width } at { $spacing }, { $depth } deep, { $passes } passes
}
planning-grooved = { $passes ->
    [one] { $kind } { $width } every { $spacing }, { $depth } deep
   *[other] { $kind } { $width } every { $spacing }, { $depth } deep, { $passes } passes
}
# $amount: with its unit
planning-sanded = { $kind } { $amount }
planning-on-each = { $mass } on each
planning-in-all = { $mass } in all
planning-own-choice = your own
planning-from-plan = the plan

## The comparison as a whole

# $places: surfaces. $club: its name.
planning-title = Ways of doing the work on { $places }
# $count: choices. $day: the first day of the work.
planning-about = { $count ->
    [one] { $count } way, begun on { $day }.
   *[other] { $count } ways beside each other, each begun on { $day }.
}
# $pace: surfaces finished in a day
planning-pace = The work is taken to finish { $pace } surfaces a day.
planning-pace-one-day = All surfaces are taken to be finished on the first day.
planning-dates = Dates are for the last of the surfaces: the likely day, then the day to allow until. In 9 cases out of 10 it is over by then.
# $count: years
planning-weather = { $count ->
    [one] They rest on { $count } past year of the club's weather.
   *[other] They rest on { $count } past years of the club's weather.
}
planning-weather-forecast = They rest on the forecast and on { $count ->
    [one] { $count } past year
   *[other] { $count } past years
} of the club's weather.
planning-star = A star marks work of which that is so on any grass.
# $number: that of a choice. $source: whose usual time it is, as typed.
planning-usual-time = The usual time of choice { $number } was not computed but typed ({ $source }).
# $count: the club's own choices
planning-left-out = { $count ->
    [one] { $count } of your own choices is for other surfaces, and not shown.
   *[other] { $count } of your own choices are for other surfaces, and not shown.
}
planning-no-weather = Without past years of weather there are no dates.
# $density: with its unit
planning-sand = Sand is dry and weighs { $density }.
# $after: a share. $surfaces: a number of surfaces. $layer: a depth.
planning-organic = Organic matter is { $before } now (top { $layer }, the latest readings of { $count ->
    [one] { $count } surface
   *[other] { $count } surfaces
}, { $when }). What is left of it counts dilution by sand alone, with nothing growing or rotting.
# $layer: a depth
planning-layer-assumed = You have not typed how deep your samples go, so the top { $layer } is assumed, by convention.
planning-no-organic = There is no reading of organic matter in the log, so none is worked out.
planning-from-to = { $first } to { $last }
# $price: an amount of money
planning-price-a-tonne = { $price } a tonne as weighed
# a ton of 2,000 pounds, for languages that count in them
planning-price-a-ton = { $price } a ton as weighed
# $price: "£47.35 a tonne as weighed"
planning-cost = Cost is sand at { $price }, and work as far as it was typed.
# $share: water. $times: a number a little above 1.
planning-sand-moist = The water in the sand is { $share } of the dry mass, so that dry sand weighs { $times } times as much in the yard.
planning-sand-as-dry = Nobody told the moisture of the sand, so it counts as dry.
planning-cost-without = A plus, or sand alone, marks work whose cost nobody typed: { $kinds }.
planning-no-work-cost = Nobody typed a cost of the work.
planning-sand-without = A plus marks sand of which nobody typed how much: { $kinds }.
planning-cost-no-sand = Nobody typed a price of sand, so what needs sand has no cost.
planning-goals = The aim for a year is { $goals }.
planning-goal-disturbed = { $share } of the surface disturbed
planning-goal-removed = { $share } of the surface removed
planning-goal-sand = { $layer } of sand
planning-days-a-year = Likely days a year are for as many times as all aims take, each as long as here and over before the next. At another time of the year a job takes other days.
# $year: a calendar year. $done: clauses, such as "2.8 mm of sand (33 % of the aim)".
planning-done = By the log, { $year } has brought so far: { $done }. Work that is only planned does not count.
# $share: of the surface. $part: of the aim.
planning-done-disturbed = { $share } of the surface disturbed ({ $part } of the aim)
planning-done-removed = { $share } of the surface removed ({ $part } of the aim)
planning-done-sand = { $layer } of sand ({ $part } of the aim)
planning-done-part = Of some of that work nothing is computed, and it is left out.
planning-nothing-done = The log has no work done there in { $year } yet.
planning-fixtures = A fixture has the chance that some of the surfaces are still healing on its first morning.
planning-fixture-words = There "10 in 10" is more than 19 chances in 20, and "hardly" less than 1 in 20. "Work" falls into the days of the work. "Perhaps work" falls into days kept free for weather. "Perhaps" falls into a usual time, of which no chance is known.
planning-touched = It counts as touched in days that the work may take, and as long as that is above 1 chance in 10.
planning-no-fixtures = No competition or visitors' day is known in those weeks.
planning-passes = Passes are added as if no hole met another. Two passes take no longer here than one; where they do, type a pace with the choice.
planning-area-not-depth = Shares of the surface count its area, however deep or shallow the work is.
planning-fits-at-most = The sand in the holes is what would fit at most.
planning-goes-besides = { $count ->
    [one] Another job is planned there about that day, and counts besides the choices: { $jobs }.
   *[other] Other jobs are planned there about that day, and count besides the choices: { $jobs }.
}
planning-no-promise = These figures are information and no promise. Labels, local rules and licensed practice come first.
planning-notes-title = What the figures rest on
planning-private = Private, for the committee. It is no part of the club's site.
planning-made = As of { $moment }.

## Tables: captions, headings and cells

planning-table-choices = What is done
planning-table-work = The work
planning-table-goals = Towards the aim of the year: how many times the work has to be done
planning-table-healing = Healing: the likely day, and in brackets the day to allow until
planning-table-fixtures = Competitions and visitors' days: the chance that some of the surfaces are still healing
planning-column-number = No.
planning-column-choice = Choice
planning-column-operations = Operations
planning-column-source = Source
planning-column-pace = Surfaces a day
planning-column-holes-each = Holes on each
planning-column-holes = Holes in all
planning-column-disturbed = Disturbed
planning-column-removed = Removed
# depth of what is removed
planning-column-removed-depth = Down to
planning-column-sand = Sand in all
planning-column-fits = Sand in the holes
planning-column-surplus = Left on top
planning-column-cost = Cost
planning-column-organic = Organic matter after
planning-column-settled = Most putts true
planning-column-closed = Holes closed
planning-column-normal = Back to normal
planning-column-days = Days until normal
planning-column-touched = Fixtures touched
planning-column-goal-disturbed = Times a year, disturbed
planning-column-goal-removed = Times a year, removed
planning-column-goal-sand = Times a year, sand
# $year: the calendar year of the work
planning-column-left-disturbed = Still in { $year }, disturbed
planning-column-left-removed = Still in { $year }, removed
planning-column-days-a-year = Likely days a year
planning-column-left-sand = Still in { $year }, sand
# $likely and $until: days, or numbers of days
# $fits and $room: layers of sand
planning-fits = { $fits } of { $room }
planning-likely-until = { $likely } ({ $until })
# $first and $last: days, or numbers of days, of somebody's usual time
planning-usually = usually { $first } to { $last }
# $range: both days, or months
planning-not-validated = { $range }*
planning-none = –
planning-not-known = not known
planning-never = never
planning-more-than-a-year = more than 365
planning-incomplete = { $cost }+
planning-sand-alone = { $cost } for sand alone
planning-no-date-not-this-season = not this season
planning-no-date-no-weather-history = not known
planning-no-date-not-reported = not reported
planning-no-date-more-than-a-year-ahead = over a year ahead
planning-in-work = work
planning-perhaps-in-work = perhaps work
planning-perhaps = perhaps
planning-hardly = hardly
planning-tenths = { $tenths } in 10

## The picture

planning-picture-title = Area worked against days of disturbance
# $least and $most: days. $low and $high: shares.
planning-picture-summary = { $count ->
    [one] { $count } choice works { $low } of the surface and is likely over after { $least } days.
   *[other] { $count } choices work from { $low } to { $high } of the surface. They are likely over after { $least } to { $most } days.
}
planning-picture-reads = Further right more of the surface is worked. Further up it takes longer until all is back to normal.
planning-picture-line = The line runs up to the day to allow until.
# $numbers: those of choices, from the least area to the most
planning-picture-front = { $count ->
    [one] No other choice works as much in as few days as { $numbers }.
   *[other] The broken line joins { $numbers }: no other choice works as much in as few days as one of them.
}
planning-picture-front-alone = That weighs area and days alone, and neither depth nor sand nor cost.
planning-picture-numbers = A number that would lie on another mark is left out; the table has them all.
planning-picture-left-out = { $count ->
    [one] { $count } choice has no date or no known share, and is not drawn.
   *[other] { $count } choices have no date or no known share, and are not drawn.
}
planning-picture-days = days until back to normal
planning-picture-share = share of the surface worked
planning-picture-table = Share of the surface, and days until back to normal
planning-picture-likely-days = Likely days
planning-picture-until-days = Allow
