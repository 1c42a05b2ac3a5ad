### E-mails for members, and the page from which the pro shop sends them.

## The e-mail

# $headline: of the notice. Many programs show about 60 characters of a subject.
email-subject = { $headline }
email-weekly-title = Work on the course, { $day }
email-weekly-lead = What is going on, what comes next, and how it affects play.
email-weekly-nothing = No work is going on, and none is announced.
# $address: a whole address, which becomes a link
email-read-on = Why we do this, the numbers and the latest news: { $address }
# In the weekly e-mail, in place of answer-label: the label's words stand right below the short answer.
email-label-below = The product label counts first: its words stand below.
# The last heading of the weekly e-mail: the day of this work is over, and nobody has reported that it began
email-no-start-reported = Planned, no start reported
# In the weekly e-mail, of planned work. $day: the day that was told before
email-moved-from = Moved from { $day }.
email-notice-at = The whole notice: { $address }
email-status = What is open today: { $address }
email-holds = From { $club }. This is how it stood at { $moment }. Dates can still move.
# Over notices of which there is room for no more than a line
email-in-a-line = In a line each
# Where there is no room for a line either
email-more-notices = { $count ->
    [one] One more notice stands with all the others: { $address }
   *[other] { $count } more notices stand with all the others: { $address }
}
# A name and its address: of a source in the plain text, of a notice that has a line
email-name-at = { $name } ({ $address })

## The page "For the pro shop"

site-pro-shop = For the pro shop
pro-shop-weekly = All current notices in one e-mail
pro-shop-nothing = There is no current notice. The weekly e-mail says so.
pro-shop-nothing-new = Nothing new to send
# Its day is over and nobody has reported it, or it is postponed to no day, and that is old news. A list of notices follows
pro-shop-nothing-new-why = There is nothing to send about this work until there is a new report.
pro-shop-address = Short address
pro-shop-subject = Subject line
pro-shop-message = Text message
pro-shop-email = The e-mail
pro-shop-email-on-its-own = Open it on its own
pro-shop-email-as-text = Open it as plain text
pro-shop-email-as-draft = Get it as a draft for your mail program
pro-shop-show-email = Show it here
# Names the frame for people who hear the page. $subject: the subject line
pro-shop-frame = E-mail: { $subject }
pro-shop-copy-address = Copy the address
pro-shop-copy-subject = Copy the subject line
pro-shop-copy-message = Copy the message
pro-shop-copy-email = Copy the e-mail
pro-shop-copied = Copied.
pro-shop-not-copied = This did not work here. Select the words yourself and copy them.
