### The page for whoever runs the sites of many clubs. It is never published.

# $count: of clubs
fleet-title = { $count ->
    [one] The site of { $count } club
   *[other] The sites of { $count } clubs
}
fleet-private = Private, for whoever runs these sites. It is no part of any of them.
# $moment: such as "9:30am on Tuesday 14 September"
fleet-made = Finished at { $moment }.
fleet-took-seconds = { $seconds ->
    [one] It took { $seconds } second.
   *[other] It took { $seconds } seconds.
}
fleet-took-minutes = It took { $minutes } min { $seconds } s.

## How many clubs of each state. These stand in a row, and those of 0 are left out.

fleet-count-published = { $count } published
fleet-count-unchanged = { $count } unchanged
fleet-count-failed = { $count } failed

## What became of a site

fleet-state-published = published
fleet-state-unchanged = unchanged
fleet-state-failed = failed

## Parts of the page

fleet-failed-title = Put these right first
fleet-failed-what = Nothing new was published for these clubs. Where a site was live, it stays as it was, and says by itself how old it is.
fleet-all-title = All clubs
fleet-column-club = Club
fleet-column-state = Site
fleet-column-seconds = Seconds
fleet-told-title = Worth another look
fleet-told-what = These sites are live. This is what the builds told, for the course managers.
# $name: of a club, or of its folder. $count: lines
fleet-told-of = { $count ->
    [one] { $name }: { $count } line
   *[other] { $name }: { $count } lines
}
