site-from-the-manager = From the { -course-manager }
# $use, $name, $credit and $licence are as typed in weather/sources.yaml
site-weather-source = Weather, { $use }: { $name }. { $credit } License: { $licence }.

## Whom to ask. Slots may hold a link

contact-email-or-telephone = { $email }, or call { $telephone }
# On a page that may be out of date
site-ask-by-telephone = Call { $office }: { $telephone }.
# On a poster
poster-ask = Questions: { $office }, { $way }
    .by-telephone = Questions: call { $office }, { $way }
