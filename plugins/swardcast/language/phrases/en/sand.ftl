### A year's sand, for the manager and the committee. None of it is published.

## The whole

# $period: a year or days
sand-title = Sand and materials, { $period }
# $planned, $used and $coming: masses
sand-summary = The plan has { $planned } of dry sand. Used so far: { $used }. Still to come: { $coming }.
# $mass: what lies there
sand-lasts = By the plan, the log and the deliveries typed the store lasts to { $day }, with { $mass } left then, as weighed.
sand-runs-out = The store runs out on { $day }: it is { $mass } short for { $job }.
sand-below-least = The store falls below what is kept back on { $day }, with { $mass } left after { $job }.
sand-does-not-fit = The delivery of { $day } would not fit: there would be { $mass } too much.
sand-needed-by = A further delivery has to be there before the work of { $day }: { $missing } at least.
sand-room-then = There is room for { $room } then.
sand-no-count = The store was not counted, so there is no balance of it.

## Notes

sand-dry = Months, surfaces and jobs have dry sand that weighs { $density } as spread. An amount that the plan or the log has in tonnes counts as dry too.
sand-weighed = The store has sand as weighed.
sand-days = Planned sand counts on the days of the plan as it stands now. Used sand counts on the day on which the log has the work as done. What is still to come counts on its expected day.
# $count: surfaces finished. $told: those of which an entry told the sand.
sand-as-logged = { $count ->
    [one] The log has sand on { $count } surface.
   *[other] The log has sand on { $count } surfaces.
} { $told ->
    [0] No entry tells how much, so the planned amount counts.
   *[other] For { $told } of them an entry tells how much. For the others the planned amount counts.
}
sand-not-known = Not in these sums, since nobody typed how much or an area is missing: { $jobs }.
sand-without-day = In no month, since nobody knows the day: { $mass } for { $jobs }.
sand-overdue = Late, and counted as if done today: { $jobs }.
sand-called-off = Called off, so that what is not done stays planned and is not to come: { $jobs }.
# $kinds: kinds of work. $since: a day.
sand-store-rules = Sand for { $kinds } comes out of the store. The sums go from the count of { $since }. On one day a count comes first, then deliveries, then work.
# $day: a day. $mass: by how much less than nothing.
sand-disagrees = By the sums the store was { $mass } short on { $day }: count, deliveries and log do not agree there.
# $price: "£47.35 a tonne as weighed"
sand-price = All sand counts at { $price }.
sand-no-price = Nobody typed a price of sand.
# $density: with its unit. $area: of the greens.
sand-published = Amounts in print are those of other courses and trials, for a year on putting greens. They are information and no aim. A mass in print is turned into a layer by { $density }, and that of a course by the { $area } of these greens.
sand-published-no-area = Amounts in print are those of other courses and trials, for a year on putting greens. They are information and no aim. A mass in print is turned into a layer by { $density }. That of a course has 18 holes, so it becomes no layer beside other greens, or where an area is missing.
# $days: how long the period is
sand-not-a-year = The period has { $days } days, and what is in print is for a year.
sand-materials = Of other materials seed alone is added up. Products stand as typed; their labels come first.
sand-no-sand = No sand is planned or used in these days.

## Tables: captions, headings and cells

# $unit: tonnes or tons
sand-table-months = By month, planned on each kind of surface and then in all ({ $unit } of dry sand)
sand-table-jobs = By job ({ $unit } of dry sand)
sand-table-kinds = By kind of surface: used and to come, over all surfaces of the kind ({ $unit } of dry sand)
sand-table-cost = Dry, as weighed, and its cost ({ $unit })
sand-table-store = The store ({ $unit } as weighed)
sand-table-materials = Other materials
sand-table-published = A year's sand on greens, here and in print
sand-column-month = Month
sand-column-planned = Planned
sand-column-used = Used
sand-column-to-come = To come
sand-column-job = Job
sand-column-surfaces = Surfaces
sand-column-days = Days
sand-column-against = Against plan
sand-column-area = Area
sand-column-rate = Rate
sand-column-layer = As a layer
sand-column-what = What
sand-column-dry = Dry
sand-column-weighed = As weighed
sand-column-cost = Cost
sand-column-day = Day
sand-column-change = In or out
sand-column-there = There then
sand-column-remark = Remark
sand-column-material = Material
sand-column-amount = Rate
sand-column-printed = In print
sand-column-source = Source
sand-in-all = In all
sand-more = +{ $number }
sand-less = −{ $number }
# $likely: what is known; some of the sand is not
sand-at-least = { $mass }+
sand-from-day-to-day = { $first } to { $last }
sand-row-planned = Planned
sand-row-used = Used
sand-row-to-come = Still to come
sand-row-delivered = Delivered
sand-row-deliveries-to-come = Deliveries to come
sand-line-opening = At the beginning
sand-line-counted = Counted
sand-line-delivered = Delivery
sand-to-come = to come
sand-would-run-out = runs out
sand-would-be-below = below what is kept back
sand-would-not-fit = does not fit
sand-not-all-known = not all of it is known
sand-on-surfaces = { $count ->
    [one] { $count } surface
   *[other] { $count } surfaces
}
sand-these-greens = These greens, used and to come
# $material: a kind of work and what it takes
sand-material = { $kind }, { $name }

## Amounts in print

published-sand-advice-2019 = Advice in the United States
published-sand-survey-2014 = Survey in 15 of the United States
published-sand-trial-2017 = Trial in New Jersey, best rate
published-sand-trial-2018 = Trial on a leaf disease
published-sand-japan-2017 = Median of 17 courses in Japan
published-sand-japan-2019 = Two courses in Japan
published-sand-britain-rates = Usual rates in Britain
published-sand-britain-course = A course in Britain
published-sand-most-2020 = The most one adviser met
published-sand-little-2021 = A course with little sand

## Pictures

sand-picture-store = What lies in the store
# $least and $most: masses. $first and $last: days.
sand-picture-store-summary = From { $first } to { $last } the store holds between { $least } and { $most }, as weighed.
sand-picture-store-short = From { $first } to { $last } the store holds { $most } at most, as weighed, and is { $least } short at worst.
sand-picture-store-line = The line steps up with deliveries and down with work. Up to today it follows the log, from then on the plan.
sand-picture-room = room
sand-picture-least = kept back
sand-picture-axis = { $unit } as weighed
sand-picture-count = a count of the store
sand-picture-delivery = a delivery
sand-picture-published = A year's sand on greens, in layers
sand-picture-published-summary = These greens get { $layer }. Amounts in print go from { $low } to { $high }.
sand-picture-published-no-area = Amounts in print go from { $low } to { $high }.
sand-picture-published-reads = Further right is more sand. A bar is a range. The broken line is these greens.
sand-picture-range = a range in print
sand-picture-one = one amount in print
