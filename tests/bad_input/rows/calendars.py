"""fixtures.ics: lines, components, moments and rules."""

from __future__ import annotations

from typing import Final

from tests.bad_input.mutations import Row, broken, every, fine, put, swap, without
from tests.bad_input.rows.files import FIXTURES

__all__ = ["ROWS"]

_BEGIN: Final = "BEGIN:VCALENDAR\nVERSION:2.0\n"
_EVENT: Final = "BEGIN:VEVENT\nUID:{}@a.example\nDTSTART;VALUE=DATE:20270918\nSUMMARY:Medal\n{}END:VEVENT\n"
_END: Final = "END:VCALENDAR\n"


def _event(lines: str) -> str:
    return _BEGIN + _EVENT.format("a", lines) + _END


def _rule(name: str, rule: str, *said: str) -> Row:
    return broken(f"a rule {name}", FIXTURES, put(_event(f"¦RRULE:{rule}\n")), "RRULE", *said)


_LINES = (
    broken("no beginning", FIXTURES, swap("BEGIN:VCALENDAR\n", ""), "", "BEGIN:VCALENDAR"),
    broken("no end of the calendar", FIXTURES, put(_BEGIN + _EVENT.format("a", ""), 1), "", "'END:VCALENDAR'"),
    broken("no end of an event", FIXTURES, put(_BEGIN + _EVENT.format("a", "").replace("END:VEVENT\n", "") + "¦" + _END), "", "'END:VEVENT'"),
    broken("an event cut off", FIXTURES, put(_BEGIN + "¦BEGIN:VEVENT\nUID:a@a.exam"), "", "'BEGIN:VEVENT' without its end", more=True),
    broken("an end of what never began", FIXTURES, swap("END:VEVENT\n", "END:VEVENT\n¦END:VTODO\n"), "", "END:VTODO"),
    broken("a long line that was not folded", FIXTURES, put(_event("DESCRIPTION:nine holes\n¦after work every week\n")), "", "begins with a blank"),
    broken("a page of the web", FIXTURES, put("<!DOCTYPE html>\n<html></html>\n", 1), "", "<!DOCTYPE html>"),
    broken("a calendar that is none of ours", FIXTURES, swap("CALSCALE:GREGORIAN", "CALSCALE:HEBREW"), "CALSCALE", "HEBREW"),
    broken("events in 60,000 events", FIXTURES, put(_BEGIN + "BEGIN:VEVENT\n" * 60_000, 60_002), "", "without its end"),
    broken("an event without a name for life", FIXTURES, without("UID:autumn-medal-2027@quillhaven.example\n", "BEGIN:VEVENT"), "UID", "without a name for life"),
    broken("a name for life twice", FIXTURES, swap("UID:captains-day-2027@quillhaven.example", "UID:autumn-medal-2027@quillhaven.example"), "UID", "a second time"),
    broken("an event without a day", FIXTURES, without("DTSTART;VALUE=DATE:20270918\n", "BEGIN:VEVENT"), "DTSTART", "without its day"),
    broken("an event without a name", FIXTURES, without("SUMMARY:Autumn medal\n", "BEGIN:VEVENT"), "SUMMARY", "without a name"),
    broken("an event of a name of 5,000 letters", FIXTURES, swap("SUMMARY:Autumn medal", "SUMMARY:" + "a" * 5000), "SUMMARY", "5000 characters"),
    broken("two days of one event", FIXTURES, swap("DTSTART;VALUE=DATE:20270918\n", "DTSTART;VALUE=DATE:20270918\n¦DTSTART;VALUE=DATE:20270919\n"), "DTSTART", "a second time"),
    broken("2,900 events of nothing", FIXTURES, put(_BEGIN + "BEGIN:VEVENT\nEND:VEVENT\n" * 2_900 + _END, 3), "UID", "without a name for life", more=True),
    broken("10,000 events", FIXTURES, put(_BEGIN + "".join(_EVENT.format(n, "") for n in range(10_000)) + _END, None), "", "events"),
    fine("a line that is folded within a letter", FIXTURES, every(lambda data: data.replace(b"Invented competition.", b"Invented compe\n tition."))),
    broken("an event of a name that nobody sees", FIXTURES, swap("SUMMARY:Autumn medal", "SUMMARY:\u200b"), "SUMMARY", "without a name"),
    fine("a zone of the calendar that is a part of the world", FIXTURES, put("BEGIN:VCALENDAR\nX-WR-TIMEZONE:Europe\n" + _EVENT.format("a", "") + _END)),
    fine("a to-do that we pass over", FIXTURES, swap("END:VCALENDAR", "BEGIN:VTODO\nRRULE:FREQ=NONSENSE\nEND:VTODO\nEND:VCALENDAR")),
)  # fmt: skip

_MOMENTS = (
    *(broken(f"an event: {name}", FIXTURES, put(_event("").replace("DTSTART;VALUE=DATE:20270918", f"¦{line}")), field, *said)
    for name, line, field, said in (
        ("a day that there is not", "DTSTART;VALUE=DATE:20270230", "DTSTART", ("20270230",)),
        ("a day with signs", "DTSTART;VALUE=DATE:2027-09-18", "DTSTART", ("2027-09-18",)),
        ("a time of 25 o'clock", "DTSTART:20270918T250000", "DTSTART", ("250000",)),
        ("a day of the first year", "DTSTART;VALUE=DATE:00010101", "DTSTART", ("00010101", "1900")),
        ("a day of the last year", "DTSTART;VALUE=DATE:99991231", "DTSTART", ("99991231", "2200")),
        ("a time zone that is a part of the world", "DTSTART;TZID=Europe:20270918T080000", "DTSTART", ("the time zone 'Europe'",)),
        ("a time zone that there is not", "DTSTART;TZID=Europe/Londn:20270918T080000", "DTSTART", ("Did you mean 'Europe/London'?",)),
        ("a day of nothing", "DTSTART;VALUE=DATE:", "DTSTART", ("''",)),
        ("a day of 5,000 digits", f"DTSTART;VALUE=DATE:{'2' * 5000}", "DTSTART", ("222...",)),
    )),
    broken("an end before the beginning", FIXTURES, put(_event("¦DTEND;VALUE=DATE:20270901\n")), "DTEND", "an end not before DTSTART"),
    broken("an end that is a time", FIXTURES, put(_event("¦DTEND:20270918T100000\n")), "DTEND", "a day where DTSTART is a day"),
    broken("a length below nothing", FIXTURES, put(_event("¦DURATION:-P2D\n")), "DURATION", "above nothing"),
    broken("a length that no calendar bears", FIXTURES, put(_event("¦DURATION:P9999999D\n")), "DURATION", "P9999999D"),
    broken("a length and an end", FIXTURES, put(_event("DTEND;VALUE=DATE:20270919\n¦DURATION:P1D\n")), "DURATION", "one of the two"),
    broken("days left out in words", FIXTURES, put(_event("RRULE:FREQ=DAILY;COUNT=3\n¦EXDATE:tomorrow\n")), "EXDATE", "tomorrow"),
    broken("an event of a hundred years", FIXTURES, put(_event("¦DTEND;VALUE=DATE:21270918\n")), "DTEND", "a year"),
)  # fmt: skip

_RULES = (
    _rule("without how often", "BYDAY=MO", "FREQ"),
    _rule("misspelt", "FREQ=WEKLY", "WEKLY"),
    _rule("each second", "FREQ=SECONDLY", "once a day at most"),
    _rule("each minute of a day", "FREQ=DAILY;BYMINUTE=0,1,2,3", "once a day at most"),
    _rule("of nothing", "", "''"),
    _rule("with a part that there is not", "FREQ=DAILY;BYMOON=1", "BYMOON"),
    _rule("of an interval of nothing", "FREQ=DAILY;INTERVAL=0", "INTERVAL=0"),
    _rule("of a count of 5,000 digits", f"FREQ=DAILY;COUNT={'9' * 5000}", "COUNT=999"),
    _rule("on the 30th of February", "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30", "never comes"),
    _rule("on the 366th day in January", "FREQ=DAILY;BYYEARDAY=366;BYMONTH=1", "never comes"),
    _rule("on the fifth of the Mondays in a week", "FREQ=WEEKLY;BYDAY=MO;BYSETPOS=5", "never comes"),
    _rule("on the sixth Monday of a month", "FREQ=MONTHLY;BYDAY=6MO", "never comes"),
    _rule("in the last week, in June", "FREQ=YEARLY;BYWEEKNO=53;BYMONTH=6", "never comes"),
    _rule("every seventh day on another weekday", "FREQ=DAILY;INTERVAL=7;BYDAY=TU", "never comes"),
    _rule("until a word", "FREQ=DAILY;UNTIL=autumn", "UNTIL=autumn"),
    _rule("until before it begins, in other words", "FREQ=DAILY;UNTIL=99991399", "99991399"),
    broken("1,000 rules that began in 1900", FIXTURES, put(_BEGIN + "".join(_EVENT.format(n, "RRULE:FREQ=DAILY;BYMONTHDAY=31\n").replace("20270918", "19000131") for n in range(1000)) + _END, 31), "RRULE", "too long ago", more=True),
    broken("200 rules of each day", FIXTURES, put(_BEGIN + "".join(_EVENT.format(n, "RRULE:FREQ=DAILY\n") for n in range(200)) + _END, 33), "", "more than 5,000 fixtures", more=True),
    fine("a rule that stopped before the plan began", FIXTURES, put(_event("RRULE:FREQ=DAILY;UNTIL=20270920\n"))),
    fine("a rule of leap days", FIXTURES, put(_event("RRULE:FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=29\n"))),
)  # fmt: skip

ROWS = (*_LINES, *_MOMENTS, *_RULES)
