"""club.yaml, and what it names: the badge, phrases of the club's own, its pages and templates."""

from __future__ import annotations

from typing import Final

from tests.bad_input.mutations import a_folder, add, broken, fine, gone, put, swap, within
from tests.bad_input.rows.files import BADGE, CLUB

__all__ = ["ROWS"]

_SVG: Final = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">{}</svg>'
_ENTITIES: Final = '<!DOCTYPE svg [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;">]>' + _SVG.format("<title>&b;</title>")
_PHRASES: Final = "phrases/own.ftl"
_TEMPLATE: Final = "templates/status.html"

_FIELDS = (
    broken("a format that is no number", CLUB, swap("format: 2", "format: two"), "format", "'two'", "1 or 2"),
    broken("a format with a decimal", CLUB, swap("format: 2", "format: 2.0"), "format", "'2.0'", "1 or 2"),
    broken("no format behind its colon", CLUB, swap("format: 2", "format:"), "format", "nothing", "1 or 2"),
    broken("a format before the first", CLUB, swap("format: 2", "format: 0"), "format", "'0'", "1 or 2"),
    broken("a newer format", CLUB, swap("format: 2", "format: 3"), "format", "written for a newer Swardcast"),
    broken("a format of 15 digits", CLUB, swap("format: 2", "format: 999999999999999"), "format", "a newer Swardcast"),
    broken("costs of an older format in a folder of this one", CLUB, swap("cost per green:", "cost per surface:"), "planning.cost per surface", "the unknown field"),
    broken("a field misspelt", CLUB, swap("time zone:", "time zne:"), "time zne", "Did you mean 'time zone'?", more=True),
    broken("a field of another language", CLUB, add("¦nom: Le club\n"), "nom", "the unknown field 'nom'"),
    broken("a field twice", CLUB, add("¦name: Another\n"), "name", "a second time", "line 2"),
    broken("the name as a list", CLUB, swap("name: Quillhaven Golf Club", "name: [a, b]"), "name", "a list of 2"),
    broken("the name as fields", CLUB, swap("name: Quillhaven Golf Club", "name: {a: b}"), "name", "several fields"),
    broken("the name as true", CLUB, swap("name: Quillhaven Golf Club", "name: true"), "name", "'true'"),
    broken("a name that nobody sees", CLUB, swap("name: Quillhaven Golf Club", 'name: "\\u200b\\u2060"'), "name", "some words"),
    broken("a name of 1,001 letters", CLUB, swap("name: Quillhaven Golf Club", "name: " + "a" * 1001), "name", "at most 1,000 letters; these are 1,001"),
    fine("a name of 1,000 letters", CLUB, swap("name: Quillhaven Golf Club", "name: " + "a" * 1000)),
    broken("no name behind its colon", CLUB, swap("name: Quillhaven Golf Club", "name:"), "name", "nothing"),
    broken("no name at all", CLUB, within("format:", swap("name: Quillhaven Golf Club\n", "")), "name", "the field 'name'", at=CLUB),
    broken("an address of a file", CLUB, swap("https://quillhaven.example", "file:///etc/passwd"), "site", "file:///etc/passwd"),
    broken("an address of 3,000 letters", CLUB, swap("https://quillhaven.example", "https://a.example/" + "a" * 3000), "site", "at most 120"),
    broken("an address with a blank", CLUB, swap("https://quillhaven.example", "https://quill haven.example"), "site", "quill haven"),
    broken("a latitude as words", CLUB, swap("latitude: 55.6", "latitude: north"), "place.latitude", "'north'", "a number"),
    broken("a latitude off the earth", CLUB, swap("latitude: 55.6", "latitude: 155.60"), "place.latitude", "'155.60'"),
    broken("a latitude that is no number", CLUB, swap("latitude: 55.6", "latitude: nan"), "place.latitude", "'nan'"),
    broken("a latitude that is endless", CLUB, swap("latitude: 55.6", "latitude: .inf"), "place.latitude", "'.inf'"),
    broken("a latitude of 1e308", CLUB, swap("latitude: 55.6", "latitude: 1e308"), "place.latitude", "'1e308'"),
    fine("a longitude of minus nothing", CLUB, swap("longitude: -1.7", "longitude: -0")),
    broken("a latitude with a decimal comma", CLUB, swap("latitude: 55.6", "latitude: 55,6"), "place.latitude", "'55,6'", "point"),
    broken("an elevation without a unit", CLUB, swap("elevation: 18 m", "elevation: 18"), "place.elevation", "needs its unit"),
    broken("an elevation beyond the sky", CLUB, swap("elevation: 18 m", "elevation: 999999999 m"), "place.elevation", "'999999999 m'"),
    broken("an elevation of 400 digits", CLUB, swap("elevation: 18 m", f"elevation: {'9' * 400} m"), "place.elevation", "999..."),
    broken("an elevation as a fraction of 400 digits", CLUB, swap("elevation: 18 m", f"elevation: {'9' * 400}/7 m"), "place.elevation", "999..."),
    broken("an elevation by nothing", CLUB, swap("elevation: 18 m", "elevation: 1/0 m"), "place.elevation", "1/0"),
    broken("the place as one text", CLUB, swap("place:\n  latitude: 55.6\n  longitude: -1.7\n  elevation: 18 m", "place: by the sea"), "place", "by the sea"),
    broken("a time zone misspelt", CLUB, swap("Europe/London", "Europe/Londn"), "time zone", "Did you mean 'Europe/London'?"),
    broken("a time zone out of the folder", CLUB, swap("Europe/London", "../../etc/passwd"), "time zone", "../../etc/passwd"),
    broken("a time zone as an offset", CLUB, swap("Europe/London", "+01:00"), "time zone", "+01:00"),
    broken("a time zone of whatever machine it is", CLUB, swap("Europe/London", "localtime"), "time zone", "'localtime'"),
    broken("a language by its country's usual name", CLUB, swap("language: en-GB", "language: en-UK"), "language", "Did you mean 'en-GB'?"),
    broken("a language in words", CLUB, swap("language: en-GB", "language: American English"), "language", "Did you mean 'en-US'?"),
    broken("a language that has no phrases", CLUB, swap("language: en-GB", "language: fr-FR"), "language", "'fr-FR'"),
    broken("an e-mail of two", CLUB, swap("links@quillhaven.example", "a@b.example, c@d.example"), "contact.email", "on one line"),
    broken("an e-mail that opens another header", CLUB, swap("links@quillhaven.example", '"a@b.example\\nBcc: c@d.example"'), "contact.email", "on one line"),
    broken("a telephone in words", CLUB, swap("01632 960317", "ask at the bar"), "contact.telephone", "ask at the bar"),
    broken("the contact left out", CLUB, within("format:", swap("contact:\n", "contact2:\n")), "contact", "nothing", more=True),
    broken("sand lighter than air", CLUB, swap("sand density: 1.56 t/m3", "sand density: 0.001 t/m3"), "standards.sand density", "0.001 t/m3"),
    broken("a green speed of 40 feet", CLUB, swap("green speed: 9 ft 4 in", "green speed: 40 ft"), "standards.green speed", "'40 ft'"),
    broken("a weekday misspelt", CLUB, swap("Monday to Friday", "Monday to Fryday"), "standards.working days", "Did you mean 'friday'?"),
    broken("no weekday", CLUB, swap("working days: Monday to Friday", "working days: someday"), "standards.working days", "'someday'"),
    broken("hours that go back", CLUB, swap("7am to 4pm", "4pm to 7am"), "standards.working hours", "later, on the same day"),
    broken("an hour that no clock shows", CLUB, swap("7am to 4pm", "7am to 25:00"), "standards.working hours", "25:00"),
    broken("a break that leaves no time", CLUB, swap("working hours: 7am to 4pm", "working hours: 7am to 4pm\n  breaks: ¦7am to 4pm"), "standards.breaks", "leave time to work"),
    broken("cautions as fields", CLUB, within("cautions:", swap("  - In lightning, stop play", "  - {a: 1}\n  - In lightning, stop play")), "cautions", "several fields", more=True),
    broken("a tone that we do not have", CLUB, swap("tone: full", "tone: loud"), "house style.tone", "'loud'", "one of"),
    broken("a group of greens that there are not", CLUB, swap("greens 1-9", "greens 1-99"), "house style.groups.the front nine greens", "no green 99"),
    broken("two groups of the same greens", CLUB, swap("greens 4, 11 and 16", "greens 1-9"), "house style.groups.the sheltered greens", "the same surfaces"),
    broken("a group that counts to a million digits", CLUB, swap("greens 1-9", "greens 1-" + "9" * 6000), "house style.groups.the front nine greens", "greens"),
    broken("a colour by name", CLUB, swap('"#5d2b5a"', "plum"), "look.colour", "'plum'"),
    broken("a colour behind a remark's sign", CLUB, swap('"#5d2b5a"', "#5d2b5a"), "look.colour", "quotation marks"),
    broken("a badge misspelt", CLUB, swap("badge: badge.svg", "badge: bagde.svg"), "look.badge", "Did you mean 'badge.svg'?"),
    broken("a badge in another folder", CLUB, swap("badge: badge.svg", "badge: ../badge.svg"), "look.badge", "../badge.svg"),
    broken("no file of the badge", BADGE, gone, "look.badge", "no file 'badge.svg'", at=CLUB),
    broken("a block that we do not know", CLUB, add("¦wether:\n  service: institutes\n"), "wether", "Did you mean 'weather'?"),
    broken("a weather service that we do not know", CLUB, add("weather:\n  ¦service: wizard\n"), "weather.service", "'wizard'"),
    broken("a million observed days", CLUB, add("weather:\n  ¦observed days: 1000000\n"), "weather.observed days", "'1000000'"),
    broken("a station without columns", CLUB, add("weather:\n  station file:\n    ¦columns: {}\n"), "weather.station file.columns.day", "nothing", more=True),
    broken("a day written without a year", CLUB, add("weather:\n  ¦station file:\n    columns: {day: D, temperature: T}\n    day is written: day/month\n"), "weather.station file", "day, month and year"),
    broken("a sheet without a column of days", CLUB, add("¦log sheet:\n  columns: {kind: What}\n"), "log sheet", "day"),
    broken("an entry that counts for a year", CLUB, add("¦entry counts for: 9000 hours\n"), "entry counts for", "1 to 24 hours"),
)  # fmt: skip

_PLANNING = (
    broken("a currency that there is not", CLUB, swap("currency: GBP", "currency: ABC"), "planning.currency", "'ABC'"),
    broken("a price without what it is for", CLUB, swap("47.35 per tonne", "47.35"), "planning.sand price", "per tonne"),
    broken("a price of 400 digits", CLUB, swap("47.35 per tonne", "9" * 400 + " per tonne"), "planning.sand price", "1,000,000"),
    broken("a price by the ton", CLUB, swap("47.35 per tonne", "47.35 per ton"), "planning.sand price", "2,000 pounds"),
    broken("a cost below nothing", CLUB, swap("scarifying: 38.15", "scarifying: -38.15"), "planning.cost per green.scarifying", "'-38.15'"),
    broken("a cost of work misspelt", CLUB, swap("scarifying: 38.15", "scarifyng: 38.15"), "planning.cost per green.scarifyng", "Did you mean 'scarifying'?"),
    broken("a goal of 400 %", CLUB, swap("17.63 %", "400 %"), "planning.yearly goal.surface disturbed", "400 %"),
    broken("a goal of sand by the mountain", CLUB, swap("sand: 8.37 mm", "sand: 999999999 mm"), "planning.yearly goal.sand", "50 mm"),
    broken("a goal for no kind of surface", CLUB, swap("{for: greens,", "{for: grens,"), "planning.yearly goal.for", "Did you mean 'greens'?"),
    broken("a sample of a metre", CLUB, add("  ¦organic matter depth: 1 m\n"), "planning.organic matter depth", "'1 m'"),
)  # fmt: skip

_BADGES = (
    *(broken(f"a badge {name}", BADGE, put(text, None), "look.badge", *said, at=CLUB)
    for name, text, said in (
        ("that runs a script", _SVG.format("<script>1</script>"), ("<script>",)),
        ("that asks another host", _SVG.format('<use href="https://a.example/x"/>'), ("https://a.example",)),
        ("with entities in entities", _ENTITIES, ("<!ENTITY>",)),
        ("cut off", _SVG.format("<g>")[:-6], ("no well-formed SVG",)),
        ("without a size", '<svg xmlns="http://www.w3.org/2000/svg"/>', ("without a size",)),
        ("of endless width", _SVG.format("").replace("0 0 9 9", "0 0 1e400 9"), ("without a size",)),
        ("that is no picture", "GIF89a", ("neither SVG nor PNG",)),
        ("of 60 KB", _SVG.format(f"<desc>{'x' * 60_000}</desc>"), ("60 KB",)),
    )),
    broken("a badge as a PNG that is cut off", BADGE, put(b"\x89PNG\r\n\x1a\n" + bytes(40), None), "look.badge", "cut off", at=CLUB),
)  # fmt: skip

_WORDS = (
    broken("a badge that draws itself a billion times", BADGE, put(_SVG.format('<g id="a0"><path d="M0 0"/></g>' + "".join(f'<g id="a{n + 1}">' + f'<use href="#a{n}"/>' * 10 + "</g>" for n in range(9))), None), "look.badge", "drawn again and again", at=CLUB),
    broken("a badge 3,000 deep", BADGE, put(_SVG.format("<g>" * 3_000 + "</g>" * 3_000), None), "look.badge", "too deep in each other", at=CLUB),
    fine("a badge that uses its parts twice and draws a circle", BADGE, put(_SVG.format('<defs><path id="p" d="M0 0"/><g id="q"><use href="#p"/><use href="#q"/></g></defs><use href="#q"/><use href="#none"/>'), None)),
    broken("a page in Latin-1", "pages/about.md", put(b"Title: About\n\ncaf\xe9\n", 3), "", "not UTF-8", more=True),
    broken("a page of two versions", "pages/about.md", put("Title: About\n\n¦<<<<<<< HEAD\nHi\n=======\nHo\n>>>>>>> deputy\n"), "", "two versions", more=True),
    broken("30,000 phrases", _PHRASES, put(lambda: b"".join(b"site-%d = x\n" % n for n in range(30_000)), None), "", "30,000 phrases", "at most 3,000"),
    broken("3,000 phrases that we do not have", _PHRASES, put(lambda: b"".join(b"site-%d = x\n" % n for n in range(3_000)), 1), "", "the name of a phrase of ours", more=True),
    broken("a phrase that we do not have", _PHRASES, put("site-over = Over\n¦site-ovr = Over\n"), "", "Did you mean 'site-over'?"),
    broken("a phrase twice", _PHRASES, put("site-over = Over\n¦site-over = Gone\n"), "", "a second time"),
    broken("a phrase without its sign", _PHRASES, put("site-over = Over\n¦site-other Other\n"), "", "Fluent's format"),
    broken("a phrase of brackets", _PHRASES, put("site-over = " + "{" * 50_000 + "\n", None), "", "nested brackets"),
    broken("a phrase with an open bracket", _PHRASES, put("¦site-over = Over { $x\n"), "", "Fluent's format"),
    broken("a phrase that puts itself in", _PHRASES, put("¦site-over = { site-over }\n"), "", "which puts itself in"),
    broken("a phrase with a slot that it has not", _PHRASES, put("¦site-over = Over {$when}\n"), "", "the slot $when"),
    broken("a phrase set in by blanks alone", _PHRASES, put("site-over = Over\n¦\t\nsite-other = Other\n"), "", "blanks alone"),
    broken("a caution taken away", _PHRASES, put("¦caution-lightning = Play on.\n"), "", "caution", more=True),
    broken("20,000 phrases that are none", _PHRASES, put("¦a\n" * 20_000), "", "Fluent's format", more=True),
    fine("a file of phrases that is empty", _PHRASES, put(b"", None)),
    broken("phrases in Latin-1", _PHRASES, put("site-over = Passé\n".encode("latin-1"), 1), "", "not UTF-8"),
)  # fmt: skip

_PAGES = (
    broken("an empty folder of pages", "pages", a_folder, "", "no such file", at="pages/about.md", more=True),
    broken("one page of six", "pages/about.md", put("Title: About\n\nWords.\n", None), "", "no such file", at="pages/follow.md", more=True),
    broken("a template that the theme has not", "templates/sttus.html", put("x", None), "", "Did you mean 'status.html'?"),
    broken("a template with an open tag", _TEMPLATE, put("{% extends 'base.html' %}\n¦{% if page %}\n"), "", "if"),
    broken("a template with a filter that there is not", _TEMPLATE, put("{% extends 'base.html' %}{% block content %}\n¦{{ page|upcase }}{% endblock %}\n"), "", "upcase"),
    broken("a template in Latin-1", _TEMPLATE, put("Passé".encode("latin-1"), 1), "", "not UTF-8"),
    broken("a template with a NUL", _TEMPLATE, put(b"a\nb\x00", 2), "", "U+0000"),
    broken("a template of brackets", _TEMPLATE, put("{{ " + "(" * 20_000 + "\n", 1), "", "nested brackets"),
    broken("a template of 10 MB", _TEMPLATE, put(lambda: b"a" * 10_000_000, None), "", "10 MB"),
    broken("a template as a folder", _TEMPLATE, a_folder, "", "a folder"),
)  # fmt: skip

ROWS = (*_FIELDS, *_PLANNING, *_BADGES, *_WORDS, *_PAGES)
