### Hours of reopening. $first and $latest are a time of day, with its day where that is not today.

hours-open-again = Open again
hours-open-again-where = Open again: { $places }
# Where the surface stays in play during the work
hours-work-finished = Work finished
hours-work-finished-where = Work finished: { $places }

hours-tomorrow = tomorrow, { $day }
hours-time-tomorrow = { $time } tomorrow, { $day }

hours-due-now = due now, by { $latest } at the latest
hours-from = likely from { $first }
hours-from-by = likely from { $first }, by { $latest } at the latest
# Both on $day, which is not today
hours-day-from-by = { $day }, likely from { $first }, by { $latest } at the latest
# On two days
hours-from-by-another-day = likely from { $first }; by { $latest }, at the latest

# $by: a moment or a day that has passed; $count of surfaces
hours-overdue-open = was due by { $by }; { $count ->
    [one] nobody has reported it as open yet
   *[other] nobody has reported them as open yet
}
hours-overdue-done = was due by { $by }; { $count ->
    [one] nobody has reported it as done yet
   *[other] nobody has reported them as done yet
}

# Opened after the work, and taken out of play again while it heals; $day of the first opening
hours-closed-again = { $count ->
    [one] it was opened on { $day } and is closed again; no day is known yet
   *[other] they were opened by { $day } and are closed again; no day is known yet
}

# Nobody reports on it any more
hours-held-up-not-reported = held up since { $since }; nobody has reported since then
# The first day on which work may go on, and what it may shut then; $day: "tomorrow, Friday 28 May", or "on Monday 31 May"
hours-hope-to-go-on = We hope to go on { $day }; then { $places } may be { $play ->
    [temporary-green] { $count ->
        [one] on a temporary green
       *[other] on temporary greens
    }
   *[closed] closed
}.
hours-held-up = held up since { $since }; no time can be given until work goes on; not before { $first } in any case
# $first is a time on another day
hours-held-up-to-another-day = held up since { $since }; no time can be given until work goes on; not before { $first }, in any case
# The day is given up; $first is a time on another day
hours-held-up-for-today = held up since { $since }; no more work today; not before { $first }, in any case
# Nobody works before $day; $first is a time on it or later
hours-held-up-until = held up since { $since }; no work before { $day }; not before { $first }, in any case
