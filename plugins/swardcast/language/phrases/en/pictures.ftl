### Words in and around pictures. What stands inside a picture has little room: as few letters as can be.

# $day: a day in few letters, such as "24 Sep"
picture-as-of = as of { $day }
picture-in-figures = The same in figures
picture-from-to = { $first } to { $last }
# $name: such as "Holes closed". $value: days.
picture-fact = { $name }: { $value }.
# A day of the sum, once the work is over
picture-was-likely = was likely by { $day }
picture-fixture = Fixture { $number }
picture-likely-and-band = The line is the likely course. The shaded part holds in 8 cases out of 10.

## Headings of tables

picture-column-day = Day
picture-column-what = What
picture-column-when = When
picture-column-disturbed = Still disturbed
picture-column-growth = Growth
picture-column-usual = Usual year
picture-column-usual-range = 8 past years in 10
picture-column-job = Work
picture-column-promised = Range given
picture-column-came = Came
picture-column-verdict = How we did

# Inside the picture of healing: a row of "Day by day" in as few letters as can be
picture-row-settled = Most putts roll true
picture-row-holes-closed = Holes healed
picture-row-lines-closed = Lines healed
picture-row-grown-in = Grass grown in
picture-row-sand-worked-in = Sand worked in

## Keys: what a sign stands for

picture-key-work = Days of work
picture-key-seen = What we saw on the course
picture-key-seen-elsewhere = What we saw where healing was further on
picture-key-normal = Back to normal: the likely day, and the days from early to the last to allow for
picture-key-grew = What the weather brought
picture-key-not-recorded = No record: the usual
picture-key-expected = What to expect; the thin line holds in 8 cases out of 10
picture-key-usual = The same days of past years: the middle, and 8 years in 10
picture-key-promised = What we said on the day of the work, worked out again: the range and its likely day
picture-key-inside = Kept: back to normal inside the range
picture-key-outside = Missed, or sooner than we said: outside the range

## How a surface heals

picture-healing-heading = Healing day by day
# $title: a job
picture-healing-title = { $title }: share of the surface still disturbed
# $share: of the surface
picture-healing-begins = Disturbed on { $day }: { $share } of the surface.
picture-healing-small-shares = Small shares are drawn larger, so that the end can be seen.
# $count: how many places the work is on
picture-healing-last = { $count ->
   *[other] Of all places it shows the one that is furthest behind.
}
picture-healing-planned = The work is still to come, so the weather of past years stands for this one.
picture-healing-shares = Share of the surface still disturbed
picture-healing-days = Days in the picture
# $share: of the surface
picture-seen-elsewhere = { $share }, where healing was further on
picture-healing-seen = What we saw: share of the surface still disturbed

## The week's growth

picture-growth-title = Growth of the last 7 days and the next 7, beside a usual year
# $growth and $usual: growth days. $grass: a kind of grass. $count: days of which weather was recorded; $missing others.
picture-growth-summary = The last 7 days brought { $growth } growth days for { $grass } grass. In a usual year the same days bring { $usual }.
picture-growth-summary-in-part = No weather was recorded on { $missing } of the last 7 days. The { $count ->
    [one] other one
   *[other] other { $count }
} brought { $growth } growth days for { $grass } grass. In a usual year { $count ->
    [one] that day brings
   *[other] those days bring
} { $usual }.
picture-growth-summary-unknown = No weather was recorded on the last 7 days, so we cannot say what they brought. In a usual year they bring { $usual } growth days for { $grass } grass.
picture-growth-bars = A full bar is a day's growth, as a part of the best growing day. An open bar is what to expect.
picture-growth-usual = The line and the shade are the same days of past years.
picture-growth-days = Growth of each day, as a part of the best growing day
picture-growth-expected = { $growth }, in 8 cases out of 10 { $low } to { $high }
picture-growth-not-recorded = { $growth } (no record: the usual)

## What was promised and what happened

picture-promises-title = What we said on the day of the work, and what came
# $count: jobs that can be judged
picture-promises-summary = { $count ->
    [one] { $count } job is over, and { $inside } kept its range.
   *[other] { $count } jobs are over, and { $inside } of them kept their range.
}
picture-promises-bars = Each bar goes from the early day to the day to allow for; 0 is the likely day. The sign tells when it was back to normal.
# $count: jobs in the picture
picture-promises-latest = { $count ->
   *[other] These are the latest { $count }.
}
picture-promises-sooner = days sooner
picture-promises-later = days later
picture-promises-days = Days from the likely day
# $days: a number. $side: of the likely day.
picture-days-after = { $side ->
    [after] +{ $days }
    [before] −{ $days }
   *[on] { $days }
}
picture-promise-kept = kept
picture-promise-missed = missed
picture-promise-sooner = sooner
