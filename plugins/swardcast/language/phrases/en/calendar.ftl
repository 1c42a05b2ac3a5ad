### The calendar that members can put into their own: summaries of its events.

calendar-name = { $club }: work on the course
calendar-description = Days of work on the course at { $club }, when what was closed should open again, and until when it may still be healing.

# Summaries, without a full stop. $places begins with a capital, $count of them; $title: the job's title as typed.
calendar-work = { $places }: { $title }
# $work: calendar-work
calendar-work-in-state = { $work } ({ $state ->
    [done] done
    [under-way] under way
    [held-up] held up
    [not-started] planned, no start reported
    [not-reported] no report yet
   *[planned] planned
})
calendar-reopening = { $count ->
   *[other] { $places } open again
}
# A later entry took some of these out of play again. $event: calendar-reopening
calendar-closed-again = { $event }, then closed again
# The event has the hours
calendar-reopening-expected = { $count ->
   *[other] { $places } should open again
}
# $when: a date of dates.ftl
calendar-reopening-by = { $count ->
   *[other] { $places } should open again: { $when }
}
calendar-healing = { $count ->
   *[other] { $places } not yet back to normal: { $when }
}
# Its day is over, and nobody has entered it
calendar-should-be-normal = { $count ->
   *[other] { $places } should be back to normal
}
# Of this work: other work may have come since
calendar-normal-again = { $count ->
   *[other] { $places } back to normal on { $day }
}

# An event that does not take place. $event: calendar-work, calendar-reopening or calendar-normal-by
calendar-called-off = Called off: { $event }
calendar-withdrawn = Withdrawn: { $event }
# Its surfaces stand in another event now
calendar-moved = Moved: { $event }
calendar-taken-back = This no longer holds: { $event }
calendar-normal-by = { $count ->
   *[other] { $places } back to normal by { $day }
}

## Sentences of an event

# $day: when the event became as it is
calendar-told-on = Told on { $day }.
# Of the surfaces of a day of work
calendar-work-done = The work there is done.
