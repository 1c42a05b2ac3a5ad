### What members hear of: feed items, and the last change of a job in its notice.

# What changed and where comes first: a telephone cuts a title. $news: one or more of the clauses below; $job: its title
# as typed
news-title = { $news } ({ $job })
# Of the job as a whole: planned, put off, called off, a note
news-title-whole = { $news }: { $job }
# $places: all places of the job
news-places = { $places }: { $news }
news-category-course = course status

## Clauses

news-planned = planned from { $day }
news-now-from = now from { $day }
# $end: what members wait for
news-end-as-said = { $end ->
    [finished] work finished
    [open] open again
   *[normal] back to normal
}, as the { -course-manager } says
# $when: a date, or why there is none
news-new-date = { $end ->
    [finished] new date for the work to be finished
    [open] new date for opening again
   *[normal] new date for back to normal
}, { $when }
# The day of some of its surfaces alone, $places; they have $sets days, and $when is the last of them
news-new-date-of-some = { $sets ->
    [one] new date
   *[other] new dates
}{ $ends ->
    [done] {" "}to finish { $places }
   *[open] {" "}for { $places } to open again
}{ $sets ->
    [one] {""}
   *[other] , the last one
}: { $when }
news-corrected = corrected: { $news }
news-correction = a correction of an earlier report
news-note = a note from the { -course-manager }
news-entry-put-right = a report on the course was put right
news-entry-withdrawn = a report on the course was withdrawn
news-withdrawn = this notice was withdrawn

# What became of the work: on all of its surfaces, or on some of them, $places
news-all-planned = still to do
news-all-under-way = work under way
news-all-held-up = work held up
news-all-healing = work done
news-all-back-to-normal = back to normal
news-all-finished = work finished
news-all-called-off = called off
# What the sum alone says, and nobody entered
news-all-should-be-normal = should be back to normal by now
news-some-planned = { $places } still to do
news-some-under-way = work under way on { $places }
news-some-held-up = work held up on { $places }
news-some-healing = work done on { $places }
news-some-back-to-normal = { $places } back to normal
news-some-finished = work finished on { $places }
news-some-called-off = called off on { $places }
news-some-should-be-normal = { $count ->
   *[other] { $places } should be back to normal by now
}

## Sentences

news-work-starts = Work starts on { $day }.
news-end = { $end ->
    [finished] Work finished
    [open] Open again
   *[normal] Back to normal
}: { $when }.
# The same where other surfaces are back to normal already
news-end-of-the-rest = Back to normal on { $places }: { $when }.
# $places begins with a capital, $count of them
news-over-by-sum = { $count ->
   *[other] { $places }
} should be back to normal by now. This is worked out; nobody has reported it yet.
# $before: the date told before
news-told-before = Before that our news said { $before }.
# $why: a cause of events.ftl
news-why-it-moved = Why it moved: { $why }.
# $fixtures with their days. $basis: sum, whose likely day is an even chance; else a plan or a usual time, without chances
news-fixtures-before = { $basis ->
    [sum] More likely than not still healing at: { $fixtures }.
   *[other] { $end ->
        [finished] Expected to be finished only after: { $fixtures }.
        [open] Expected to open again only after: { $fixtures }.
       *[normal] Expected back to normal only after: { $fixtures }.
    }
}
news-fixtures-after = { $basis ->
    [sum] More likely than not back to normal by: { $fixtures }.
   *[other] { $end ->
        [finished] Expected to be finished by: { $fixtures }.
        [open] Expected to open again by: { $fixtures }.
       *[normal] Expected back to normal by: { $fixtures }.
    }
}
news-told-at = Told at { $moment }.
news-limit = { $name }: { $value }
news-note-to-all = A note to all members.
news-note-withdrawn = This note was withdrawn.

## Around the news in a feed

news-notice-now = Read the notice as it stands now
news-status-now = See how the course stands now
news-notice-then = The notice as it stood when this was told:
