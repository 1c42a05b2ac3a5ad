# Words of the site around notices: menu, headings, foot, lists, titles.
# Slots that hold a link or a time of a page are filled with it; they may stand anywhere in the phrase.

## Titles and what search engines show

site-title = { $page }: { $club }
site-description = Course status and notices of { $club }.
site-feed = { $club }: course status
site-feed-description = What is open at { $club }, what work is going on, and when it is back to normal.
# $surfaces: a kind of surface as a heading
site-feed-surfaces = { $club }: { $surfaces }
site-feed-surfaces-description = { $surfaces }: what changes there, and news for the whole course at { $club }.
site-all-notices-description = Every notice about work on the course at { $club }.
# $what: a kind of work or a kind of surface
site-notices-description = Notices of { $club }: { $what }.

## Menu

site-skip = Go to the content
site-pages = Pages
site-status = Course status
# The same in the menu, where there is room for a short word
site-menu-status = Status
# Opens a list of further pages
site-menu-more = More
site-notices = Notices
site-season = Season
site-follow = Follow
site-dates = How dates are worked out
site-record = Our dates so far
site-about = About and contact

## Foot of every page

# $contacts: the office, e-mail and telephone
site-questions = Questions: { $contacts }.
site-contacts-more = { $first }, { $next }
site-made-from = Made from the club's own records as they stood at { $moment }.

## Lists of notices

site-notices-about = Notices: { $what }
site-no-notice = There is no notice yet.
site-going-on = Going on now
site-to-come = To come
# Planned work whose day is over
site-not-started = No start reported
site-over = Over
site-other = Other
site-last-news = Last news on { $day }
site-more-notices = More notices
site-newer = Newer notices
site-older = Older notices
site-by-date = All notices by date
site-authors = Authors
site-kinds-of-work = Kinds of work
site-surfaces = Surfaces
# A kind of surface as a heading
site-surface-green = Greens
site-surface-tee = Tees
site-surface-approach = Approaches
site-surface-fairway = Fairways
site-surface-rough = Roughs
site-surface-bunker = Bunkers
site-surface-practice-ground = Practice grounds
# A name in a list and how many notices it has
site-with-count = { $name } ({ $count })

## Around a notice

site-notice-is-over = This notice is over.
# In its place where the sum has ended, and nobody has reported the end
site-notice-days-past = The days given here are past, and nobody has reported the end.
site-notice-stays = It stays here to be read.
# Under the title of a notice that is not over, and of the season: the moment of the records that it was made from
site-true-at = True at { $moment }.
# In its place once that is too old. $ago: "26 hours ago", in the reader's browser
site-page-was-true = This was true at { $moment }.
site-page-was-true-ago = This was true at { $moment }, { $ago }.
site-published-on = First published on { $first }. Last news on { $last }.
# $links: kinds of work and surfaces
site-more-like-this = More like this: { $links }
site-links-more = { $first }, { $next }
site-what-happened = What happened
site-event = { $when }: { $what }
# Before an event that a later correction withdrew
site-withdrawn = Withdrawn:

## The course status

site-entered-at = Reported at { $moment }.
site-check-first = Please check before you set out.
# Once an entry no longer counts. $sentence: how the course was then; $ago: "26 hours ago", in the reader's browser
site-age = That was { $ago }.
site-was-true = This was true at { $moment }: { $sentence }
site-was-true-ago = This was true at { $moment }, { $ago }: { $sentence }
site-ask = Ask { $contacts }.
site-different = What is different
site-different-today = What is different today
site-different-then = What was different when last reported
site-also = Also: { $what }
# Opens the names of places that are only counted above
site-which = Which ones
site-last-entered-at = Last reported at { $moment }
site-hole-by-hole = Hole by hole
# A hole in the plan of the holes; only its number is shown, the rest is read out
site-hole-is = Hole { $hole }: { $what }
site-holes = { $count ->
    [one] Hole { $holes }:
   *[other] Holes { $holes }:
}
# $count of them; what is said when all are alike follows
site-all-holes = { $count ->
    [one] The hole:
   *[other] All { $count } holes:
}
# $count of planned jobs to come; $silent: of further ones, whose day is over and whose start nobody has reported
site-coming-all = { $silent ->
    [0] { $count ->
        [one] The { $count } job to come
       *[other] All { $count } jobs to come
    }
   *[other] { $count ->
        [0] No job to come
        [one] { $count } job to come
       *[other] { $count } jobs to come
    }; { $silent } with no start reported
}
site-coming = What comes next
# $when: "from Monday 20 September"
site-where-and-when = { $where }, { $when }
site-latest-news = Latest news
site-feed-link = All news as a feed
site-follow-link = How to follow

## The course status in themes that have no page of their own for it

site-sentence = { $words }.
site-line = { $where }: { $play }.
# $work: "work under way", "healing"
site-line-with-work = { $where }: { $play }, { $work }.
site-fact = { $name }: { $value }
site-coming-line = { $work }: { $where }, { $when }. { $normal }.

## At an address that is not there

missing-title = This page is not here
missing-what = The address may be mistyped, or the page has gone.
missing-instead = What you look for may be here:
# $page: one of the site's pages, linked
missing-status = { $page }: what is open today.
missing-notices = { $page }: work that is planned, going on or healing.
missing-archive = { $page }: notices of all years.

## Without a connection

offline-bar = You are offline.
offline-known-at = This is what was known at { $moment }.
offline-title = Without a connection
offline-what = This phone or computer keeps the last course status that you opened. You can then read it where there is no signal. It says how old it is.
offline-is-on = The last course status is kept here.
offline-is-off = The last course status is not kept here.
offline-turn-off = Do not keep it
offline-turn-on = Keep it

## The list of feeds: each feed with its formats, which are links

site-feed-whole = The whole course
site-feed-line = { $feed }: { $formats }
site-feed-rss = RSS
site-feed-atom = Atom
site-feed-json = JSON

## About and contact

site-who-decides = Who decides
site-whom-to-ask = Whom to ask
site-office = Office
site-email = E-mail
site-telephone = Telephone

## Sums, promises and published recoveries

site-no-sum = Nothing whose date is computed is healing just now, so there is no sum to show.
# $work: when the work was done
site-we-said = { $work }. The dates for that day
site-back-to-normal = Back to normal
site-how-we-did = How we did
site-none-finished = No job with a computed date has been finished yet.
# $count of finished jobs
site-each-job = { $count ->
    [one] The job with its days
   *[other] All { $count } jobs with their days
}
site-one-by-one = All { $count } of them, one by one
# Each of the parts is a sentence or more
site-compared = { $what } { $work } { $computed } { $seen } { $verdict } { $source }
site-computed = Computed: { $computed }.
site-seen = Seen: { $seen }.
