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
season-months-from-to = { $first } to { $last }
# What a folded month holds, in a row of such pieces; season-count-fixtures is in the folders of the two Englishes.
season-count-jobs = { $count ->
    [one] { $count } job
   *[other] { $count } jobs
}
season-count-healing = { $count ->
   *[other] { $count } healing or closed
}
season-count-nothing = nothing is announced
# Before what several fixtures of a month meet. $day: the first or the last of them
season-together = { $exceptions ->
    [some] { $which ->
        [from] From { $day } on, unless it says otherwise below:
        [until] Until { $day }, unless it says otherwise below:
       *[all] For all of them, unless it says otherwise below:
    }
   *[none] { $which ->
        [from] From { $day } on:
        [until] Until { $day }:
       *[all] For all of them:
    }
}
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
# $days: of the $done that are finished, of $count surfaces, of which nobody reports the others
season-work-in-part = { $days }, { $done } of { $count } done
# Of work that waits. $places: where nothing is done yet
season-still-to-do = Still to do: { $places }
# $when: a date of dates.ftl
season-normal = Back to normal: { $when }
# Some surfaces were called back to normal: $done, such as "greens 1 to 11 on Monday 20 September"; $left, $count of them,
# begins with a capital
season-normal-in-part = { $count ->
   *[other] Back to normal: { $done }. { $left }: { $when }
}
# In the reader's month. $said: season-normal or season-normal-in-part; $places, $count of them, begins with a capital
season-closed-again = { $count ->
   *[other] { $said }. { $places } closed again; no day is known yet
}
season-normal-there = { $places } { $when }
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

## In figures; season-total-fixtures and season-total-fixtures-are are in the folders of the two Englishes

season-totals-heading = The season in figures
season-total-where = Where
season-total-jobs = Jobs
season-total-work = Days of work
season-total-healing = Days of healing
season-total-jobs-are = Jobs are pieces of work that we do, or that heal, in these months; one on two kinds of surface counts with both.
season-total-work-is = A day of work is one on which we work on at least one of them, or plan to.
season-total-healing-is = A day of healing is any other day on which at least one of them heals or is still closed after the work, up to the likely day.
season-total-about = “About” stands where days that count may still move.
# $count: pieces of work
season-total-uncounted = { $count ->
    [one] { $count } job without a day yet is not counted.
   *[other] { $count } jobs without a day yet are not counted.
}

## The picture

# $months: season-months-from-to, or one month
season-picture-title = Work and healing, { $months }
# $count: pieces of work
season-picture-summary = { $count ->
    [one] { $count } piece of work with its days and its healing, { $months }.
   *[other] { $count } pieces of work with their days and their healing, { $months }.
}
season-picture-bars = Each row is a piece of work, with its days and the days on which it heals.
season-picture-months = Where only months can be told, the bar is hollow all along, and the last month stands beside the name.
season-picture-arrow = An arrow leads on past the edge of the picture.
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
archive-lead = Here are our notices of all years, by the year in which the work began or is to begin. Each keeps its address, so an old link still works.
# Before the first notice
archive-empty = There is no notice yet. Each one stands here from the day on which we publish it.
# $year: linked
archive-year = { $count ->
    [one] { $year }: { $count } notice
   *[other] { $year }: { $count } notices
}
archive-year-title = Notices of { $year }
archive-year-summary = { $count ->
    [one] { $count } notice about work on the course in { $year }, and how it ended.
   *[other] { $count } notices about work on the course in { $year }, and how it ended.
}
archive-all-years = All years
# On the pages of notices and of the season
archive-link = Notices of all years
archive-rest = What has been over for more than half a year is in the archive.
# On the page of a kind of work
archive-rest-of-kind = What has been over for more than two years is in the archive.
