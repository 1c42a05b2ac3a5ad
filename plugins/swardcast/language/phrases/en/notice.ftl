### A notice: headline, short answer and the headings of its parts.

## Headline: what, where, when

headline = { $title }: { $when }
headline-with-place = { $title }, { $where }: { $when }
# The same without its days, for a message that has no room for them
headline-without-days = { $title }, { $where }
when-called-off = called off
# Its day is over: nobody knows whether it began
when-not-started = planned from { $day }; no start reported
when-put-off = postponed; no new day yet
when-planned = planned for { $days }
when-planned-from = planned from { $day }
when-under-way = since { $day }
when-under-way-since = under way since { $day }
when-was-planned = was planned from { $day }; nobody has reported that it began
# Begun, and not reported on any more since $last
when-not-reported = from { $day }; no report since { $last }
when-still-to-do = from { $day }; work still to do
when-on-a-day = { $state ->
    [planned] planned on { $day }
   *[done] on { $day }
}
when-from-to = { $state ->
    [planned] planned from { $first } to { $last }
   *[done] from { $first } to { $last }
}

## A notice that was withdrawn: all that stays of it. $title as typed, $because as typed.

withdrawn-headline = { $title }: notice withdrawn
withdrawn-because = This notice was withdrawn at { $moment }: { $because }.
withdrawn-instead = Read this notice instead: { $title }.
# Leads to that notice
withdrawn-to-other = Go to the other notice

## Short answer: 40 words or fewer

# $meanwhile: answer-while-working
# Work of one day that leaves nothing to heal. $days: "Planned for Wednesday 6 October, or the day after"
answer-on-one-day = { $days }; { $meanwhile }.
# $when: whether that is the day of the reader
answer-starts-brief = Work should start { $when ->
    [today] today, { $day }
   *[later] on { $day }
}.
answer-starts = Work should start { $when ->
    [today] today, { $day }
   *[later] on { $day }
}; { $meanwhile }.
answer-not-started = This work was planned from { $day }; nobody has reported that it began.
answer-put-off = This work is postponed; no new day is known yet.
answer-put-off-because = This work is postponed, and no new day is known yet: { $because }.
answer-under-way = Work is going on; { $meanwhile }.
# The rest of begun work was due by $by, as the last report gave it; $where begins with a capital, $count of them
answer-not-reported = { $count ->
    [one] { $where } was due { $ends ->
        [open] to open
       *[done] to be finished
    } by { $by }; nobody has reported it as { $ends ->
        [open] open
       *[done] finished
    } yet.
   *[other] { $where } were due { $ends ->
        [open] to open
       *[done] to be finished
    } by { $by }; nobody has reported them as { $ends ->
        [open] open
       *[done] finished
    } yet.
}
answer-not-reported-brief = This work was due { $ends ->
    [open] to end
   *[done] to be finished
} by { $by }; nobody has reported that it is.
# After one of answer-held-up…
answer-no-report-since = Nobody has reported on it since { $day }.
answer-held-up = Work on { $where } is held up.
# $play: a clause of play.ftl
answer-held-up-meanwhile = Work on { $where } is held up; { $play }.
answer-held-up-because = Held up, { $where }: { $because }.
answer-held-up-cause = Work is held up: { $because }.

# A clause. $where is the one surface; $surface is the kind of surface; $play how it plays meanwhile.
answer-while-working = { $count ->
    [one] { $where } { $play ->
        [temporary-green] is out of play, with a temporary green
        [open-with-care] stays open with care while we work on it
        [open] stays open while we work on it
        [not-known] may be closed while we work on it
       *[closed] is closed while we work on it
    }
   *[other] each { $surface ->
        [green] green
        [tee] tee
        [approach] approach
        [fairway] fairway
        [rough] part of the rough
        [bunker] bunker
       *[mixed] place
    } { $play ->
        [temporary-green] is out of play, with a temporary green
        [open-with-care] stays open with care while we work on it
        [open] stays open while we work on it
        [not-known] may be closed while we work on it
       *[closed] is closed while we work on it
    }
}
# The same where it stays so after the work
answer-until-opened = { $count ->
    [one] { $where } { $play ->
        [temporary-green] is out of play, with a temporary green,
       *[closed] stays closed
    } until opened again
   *[other] each { $surface ->
        [green] green
        [tee] tee
        [approach] approach
        [fairway] fairway
        [rough] part of the rough
        [bunker] bunker
       *[mixed] place
    } { $play ->
        [temporary-green] is out of play, with a temporary green,
       *[closed] stays closed
    } until opened again
}
# Each of them is begun or done, and none open; $where has them all
answer-all-shut = { $where } { $count ->
    [one] is closed
   *[other] are closed
}
answer-temporary-greens = { $count ->
    [one] the hole plays to a temporary green until its own is fit again
   *[other] the holes play to temporary greens until their own are fit again
}
# Where nothing has to heal afterwards
answer-finished = Work finished: { $date }.
# Of the same work, done where it closed a surface
answer-open-again = Open again: { $date }.
# Of what stays closed after the work, before back to normal; $times: how many dates the surfaces have
answer-opening = { $times ->
    [one] Open again: { $date }.
   *[other] All open again: { $date }.
}
answer-normal = Back to normal: { $date }.
# A product was used: only its label says when people may be back.
answer-label = The product label counts first: see “{ part-please-take-care }”.
answer-how-sure = “Allow until” holds 9 times in 10.
answer-called-off = This work is called off. Nothing changes for play.
answer-called-off-because = This work is called off: { $because }. Nothing changes for play.
# The day has passed, $by, and no entry opened what was closed
answer-not-opened = The work on { $where } is done. { $count ->
    [one] It was due to open by { $by }; nobody has reported it as open yet.
   *[other] They were due to open by { $by }; nobody has reported them as open yet.
}
answer-reopens = The work on { $where } is done; open again: { $date }.
answer-closed-again = The work on { $where } is done. { $count ->
    [one] It was opened on { $day } and is closed again; no day is known yet.
   *[other] They were opened by { $day } and are closed again; no day is known yet.
}
answer-settling = The work on { $where } is done; it still has to settle.
answer-healing = { $where } { $count ->
    [one] is
   *[other] are
} healing; putts may still turn.
answer-healing-settled = { $where } { $count ->
    [one] is
   *[other] are
} healing; most putts roll true by now.
# Of this work: other work may have come since. The last day, or $when they all were
answer-normal-again = { $where } { $count ->
    [one] was
   *[other] were
} back to normal from this work { $when ->
    [on] on { $day }
   *[by] by { $day }
}.
# $day: "on Friday 24 September"
answer-finished-on = The work on { $where } was finished { $day }.
# After it, of ropes and covers
answer-protection-stays = Ropes, mats and covers stay until the grass grows again. Please go the way that the ropes show.
# By the sum alone
# $where does not begin with a capital; the last day to allow for was $by
answer-over = The work on { $where } is over. { $count ->
    [one] It was due back to normal by { $by }; nobody has reported it back to normal.
   *[other] They were due back to normal by { $by }; nobody has reported them back to normal.
}
# Entries called $count of them back to normal, the last on $day; $others begins with a capital
answer-over-in-part = The work is over. { $where } { $count ->
    [one] was
   *[other] were
} called back to normal { $when ->
    [on] on { $day }
   *[by] by { $day }
}. { $left ->
    [one] { $others } was due back by { $by }; nobody has reported it back to normal.
   *[other] { $others } were due back by { $by }; nobody has reported them back to normal.
}

## The parts, in their fixed order

part-short-answer = Short answer
part-day-by-day = Day by day
part-where = Where
part-why-now = Why now
part-in-numbers = In numbers
part-what-changed = What changed and why
part-what-you-can-do = What you can do
part-the-rules = The Rules
part-please-take-care = Please take care
part-how-the-date-is-worked-out = How the date is worked out
part-who-decides = Who decides and whom to ask

work-planned = planned
work-postponed = postponed
# Of planned work whose day is over
work-not-started = no start reported
work-under-way = under way
work-held-up = held up
work-not-reported = no report since { $day }
work-healing = healing
# Of bunkers: sand does not heal
work-settling = settling
work-back-to-normal = back to normal
# By the sum; no report says so of all of it
work-should-be-normal = should be back to normal
# Of what was to be opened before that
work-not-opened = not reported as open
# The end of work that leaves nothing to heal
work-finished = finished
work-called-off = called off

# Day by day: names of the rows.
row-the-day = On the day
# $state: planned, or how the work goes
row-planned-day = { $state ->
    [planned] We plan to work on { $places }.
   *[going] As things stand now, we work on { $places }.
}
# The same where one place takes more than a day
row-planned-finish = { $state ->
    [planned] We plan to finish { $places }.
   *[going] As things stand now, we finish { $places }.
}
row-done-so-far = Done so far
# Begun, and held up before it was done
row-half-done = Half done
row-why-held-up = Why it is held up
row-when-it-goes-on = When work goes on
row-going-on = Going on now
row-still-to-do = Still to do
row-further-days = The days after these
row-until = { $state ->
    [planned] We plan to go on in the same way until { $day }.
   *[going] As things stand now, we go on in the same way until { $day }.
}
row-work-finished = Work finished
# How holes are played while surfaces are out of play
row-meanwhile = Meanwhile
# Of work of one day
row-the-work = The work
row-days-after = The days after
# The same once the work is done
row-now = Now
row-by-then = After that
row-settled = Most putts roll true
row-holes-closed = Aeration holes healed
# Of work that cuts grooves alone
row-lines-closed = Lines healed
# Of turf that was taken off
row-grown-in = Grass grown in
row-sand-worked-in = Sand worked in
row-back-to-normal = Back to normal

# What there is to see: until a week after the work, and from then on
heading-you-will-see = What you will see
heading-you-see-now = What you see now

where-in-words = The work is on { $where }.
# $set: the club's own name for $places; $count of them
where-set = { $count ->
    [one] { $set }, which is { $places }
   *[other] { $set }, which are { $places }
}
where-it-was = The work was on { $where }.
where-it-was-planned = The work was planned for { $where }.

# Why now: $share is a percentage, of the best growth there is.
why-season = In the four weeks after the work, grass here usually grows at { $share } of its best pace.
why-between-fixtures = The work lies between { $before } ({ $beforeday }) and { $after } ({ $afterday }).
reading-with-aim = { $found }; our aim is { $aim }
reading-with-day = { $found } ({ $day })
reading-with-aim-and-day = { $found } ({ $day }); our aim is { $aim }

do-look-at-status = On the day, look at the course status before you set out. It says what is open.

# The label as the manager typed it; nothing is added.
label-re-entry = { $kind }: { $product }. The label says: { $reentry }
label-signs-ahead = Signs: { $signs } The label is to be read on { $day } by { $by }.
label-signs = Signs: { $signs } The label was read on { $day } by { $by }.

sure-likely = By a “likely” day there is an even chance that it is so.
sure-allow-until = By an “allow until” day there are 9 chances in 10.
sure-computed-from = We work the dates out from how much is disturbed, the growth so far and past years' weather.
# Of the published recoveries those that say when to within a month; the site's page "How dates are worked out" has them
# one by one. tests/notices/test_record_in_words.py compares the number.
sure-how-near = In published trials and course reports such sums were 3 days out on average.
sure-in-the-cold = In cold months, think in weeks.
# Work that leaves the turf whole
sure-nothing-heals = This work leaves nothing that has to heal. Its last day is what the plan and the days kept for weather give.
# No date of it holds any more
sure-never-begun = There is no date now: nobody has reported that the work began.
sure-postponed = There is no date now: the work is postponed, and no new day is known.
sure-unreported = Nobody has reported on the work since { $day }, so no new date is worked out.
sure-of-some = { $where }: { $sentence }

ask-office = Questions: { $office }.
ask-office-at = Questions: { $office }, { $ways }.

# A Local Rule that the morning entry names for the whole course: $until its last day, or a time of today; $what is what
# was decided, as typed.
rules-on-the-course = Model Local Rule { $number }, adopted by { $by }, holds on the whole course until { $until }.
rules-it-says = It says: { $what }.
explain-head = Headline and short answer
# Above the manager's newest note, in an e-mail. $when: a moment
notice-note-of = A note from the { -course-manager }, { $when }
# The manager's opening words, folded away once the work is done
notice-before-the-work = Before the work
# Older entries of "What happened", folded away
notice-earlier = { $count ->
    [one] What happened before: one more entry
   *[other] What happened before: { $count } more entries
}

link-how-dates = How dates are worked out, with today's sums
# $kinds: links to the pages "Why we do this"
link-why = Why we do this: { $kinds }
