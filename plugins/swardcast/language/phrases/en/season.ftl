### The page Season: what is planned when; and the archive of notices.

season-work-heading = Work
season-healing-heading = Healing or closed
season-no-work = No work is announced.
# Of a month that is over
season-no-work-entered = No work was reported.
season-no-healing = Nothing.
# Before a list of work that neither begins to heal in this month nor may be back to normal
season-goes-on = All month:
season-no-fixture = None in the calendar of the club.
season-months = Months
# The heading of a month that is past, folded away
season-month-over = { $month } (over)
# $days: such as "23 to 25 August"
season-work = { $days }, { $state ->
    [done] done
    [under-way] under way
    [held-up] held up
    [not-finished] not finished
   *[planned] planned
}
# Of work that waits. $places: where nothing is done yet
season-still-to-do = Still to do: { $places }
# $when: a date of dates.ftl
season-normal = Back to normal: { $when }
# Several of a series, $days joined
season-fixture-days = { $name }, { $days }
season-clear = Clear of all announced work, as far as we know.
# $title: a job, linked. $words: a sentence or two.
season-meeting = { $title }: { $words }
# What a fixture meets besides. $count: pieces of work
season-more-meetings = { $count ->
    [one] And { $count } more piece of work
   *[other] And { $count } more pieces of work
}
season-nothing = No work on the course is announced at the moment, and nothing is healing.
season-no-day = No day yet
season-no-day-lead = Here no day can be told. The notice of the work will have it first.
season-beyond = After { $month }
season-beyond-lead = Then this is still healing or closed, or is still to come.

## The picture

# $months: how many there are
season-picture-title = { $months ->
    [one] Work and healing in { $first }
   *[other] Work and healing, { $first } to { $last }
}
# $count: pieces of work
season-picture-summary = { $count ->
    [one] { $count } piece of work with its days and its healing, { $first } to { $last }.
   *[other] { $count } pieces of work with their days and their healing, { $first } to { $last }.
}
season-picture-bars = Each row is a piece of work, with its days and the days on which it heals.
season-picture-months = Where only months can be told, the bar is open all along, and the last month stands beside the name. An arrow leads on past the edge of the picture.
# $count: rows
season-picture-first = { $count ->
   *[other] These are the first { $count }; all the work stands below.
}
season-key-waits = Not finished, nobody at work
season-key-likely = Healing or closed, until the likely day
season-key-allow-until = Until the day to allow for
season-table-work = Work and healing
season-nothing-heals = nothing has to heal
# Beside a row of the picture, as short as can be. $month: "May 2028"
season-bar-until = to { $month }
season-bar-no-date = no date yet

## The archive

archive-title = Archive
archive-summary = Every notice that we have published, by the year of its work.
archive-lead = Every notice that we have published stays at its address. Here they stand by the year in which the work began, or is to begin.
archive-year-title = Notices of { $year }
archive-year-summary = { $count ->
    [one] { $count } notice about work on the course in { $year }, and how it ended.
   *[other] { $count } notices about work on the course in { $year }, and how it ended.
}
archive-all-years = All years
# On the page of notices
archive-link = Notices of all years
archive-rest = What has been over for more than half a year is in the archive.
