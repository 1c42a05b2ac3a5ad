### The course status: how the course plays, what is not simply open, what comes next.

## How a surface plays

# After the name of a place, or alone. $count of surfaces, for languages whose words change with it.
play-open = { $count ->
   *[other] open
}
play-open-with-care = { $count ->
   *[other] open with care
}
play-temporary-green = { $count ->
    [one] on a temporary green
   *[other] on temporary greens
}
play-closed = { $count ->
   *[other] closed
}
play-not-known = { $count ->
   *[other] not known
}

# Clauses, without a capital or a full stop. $places: "greens 1 to 6", "the practice green"; $count of them.
plays-open = { $count ->
    [one] { $places } is open
   *[other] { $places } are open
}
plays-open-with-care = { $count ->
    [one] { $places } is open with care
   *[other] { $places } are open with care
}
plays-temporary-green = { $count ->
    [one] { $places } is on a temporary green
   *[other] { $places } are on temporary greens
}
plays-closed = { $count ->
    [one] { $places } is closed
   *[other] { $places } are closed
}
plays-not-known = { $count ->
    [one] { $places } is not known
   *[other] { $places } are not known
}
# $holes: "12", "1 to 3 and 7".
plays-holes-to-temporary-greens = { $count ->
    [one] hole { $holes } plays to a temporary green
   *[other] holes { $holes } play to temporary greens
}
# Of tees that are closed while their holes are in play; $holes as above.
plays-from-other-markers = { $count ->
    [one] hole { $holes } is played from other markers
   *[other] holes { $holes } are played from other markers
}

## The sentence. It stands in one or two parts, the first set larger; $course as the club types it, "the course".

status-open-as-usual = { $course } is open as usual.
status-all-closed = { $course } is closed.
# The first part; status-but follows.
status-open-but = { $course } is open,
# $clauses: "greens 1 to 6 are closed; hole 12 plays to a temporary green".
status-but = but { $clauses }.
status-never-entered = We do not know yet how { $course } is: no morning report has been made.
# The first part; status-last-entered follows.
status-not-entered-today = We do not know yet how { $course } is today.
# The same where the entry of the day no longer counts.
status-entry-too-old = We do not know how { $course } is now.
status-last-entered = The last morning report was made at { $moment }.

## What is not simply open

# How holes are played whose tees are closed, where the club has no words of its own for it; $count of holes
meanwhile-other-markers = { $count ->
    [one] The hole is played from other markers.
   *[other] The holes are played from other markers.
}
status-work-under-way = work under way
status-work-held-up = work held up
status-work-healing = healing
# Of bunkers: sand does not heal
status-work-settling = settling
# Another job on the same surfaces. $job: its title as typed; $work: one of those above.
status-also = { $job }: { $work }
# $play: one of play-...
status-not-known-then = not known ({ $play } then)
status-not-known-since = not known since { $day } ({ $play } then)
status-putts-roll-true = Most putts roll true
status-normal = Back to normal

## Hole by hole: $what is "green", "tee" or a place's own name; $play is one of play-...

hole-plays-to-temporary-green = temporary green
hole-state = { $what } { $play }
hole-tee-closed = tee closed, so played from other markers

## What comes next

# $when: whether that is the day of the reader
coming-from = { $when ->
    [today] from today, { $day }
   *[later] from { $day }
}
coming-late = was planned from { $day }; nobody has reported that it began
# $when: a date, or why there is none.
coming-normal = { $end ->
    [finished] Work finished
   *[normal] Back to normal
}: { $when }

## In the log, for members to read. $job: its title as typed.

morning-closed-for-work = { $count ->
    [one] { $places } is closed for work ({ $job })
   *[other] { $places } are closed for work ({ $job })
}
