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

hours-held-up = held up since { $since }; no time can be given until work goes on; not before { $first } in any case
# $first is a time on another day
hours-held-up-to-another-day = held up since { $since }; no time can be given until work goes on; not before { $first }, in any case
