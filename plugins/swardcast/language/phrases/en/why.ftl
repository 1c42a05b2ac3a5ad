### The pages "Why we do this".

why-title = Why we do this: { $kind }
why-heading-reason = What it is, and why we do it
why-heading-play = How play is affected
why-heading-readings = What we measured here
why-heading-do = What you can do
why-heading-questions = What members ask
why-heading-care = Please take care
why-row-see = What you will see
why-row-day = On the day
why-row-week = The days after
why-row-then = After that
why-heading-jobs = On our course
# Opens a list. $count of jobs that are over
why-jobs-over = { $count ->
    [one] One more that is over
   *[other] { $count } more that are over
}
why-no-jobs = No work of this kind is announced at the moment.
why-index-title = Why we do this
why-index-lead = Each kind of work on a golf course in plain words: what it is, why it is done, what you will notice, and what members ask.
why-index-ours = What we do here
why-index-others = Other work on a golf course
# Where nothing is announced yet, over all of them
why-index-all = Work on a golf course
