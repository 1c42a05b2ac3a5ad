"""One event of a calendar file, checked property by property before anything is computed from it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from datetime import date, datetime, timedelta
from typing import Any, Final
from zoneinfo import available_timezones

from icalendar import Component, Event

from swardcast.errors import Problem, nearest
from swardcast.moments import FIRST_YEAR, LAST_YEAR
from swardcast.reading.calendar_lines import ContentLine, Part
from swardcast.reading.calendar_rules import faults_of_rule
from swardcast.reading.plain_words import shown
from swardcast.reading.typed_words import is_seen

__all__ = ["event_from", "times_of"]

_DAY_OR_TIME: Final = "a day such as 20270918, or a day and time such as 20270918T083000"
_EXPECTED: Final = {
    "DTSTART": _DAY_OR_TIME,
    "DTEND": _DAY_OR_TIME,
    "RECURRENCE-ID": _DAY_OR_TIME,
    "EXDATE": "days such as 20270918,20270925, or days and times",
    "RDATE": "days such as 20270918,20270925, or days and times",
    "DURATION": "a length such as P2D (two days) or PT3H30M",
    "RRULE": "a rule such as FREQ=WEEKLY;BYDAY=WE",
    "SEQUENCE": "a number",
}
_READ: Final = (*_EXPECTED, "UID", "SUMMARY", "STATUS", "CLASS", "LOCATION", "CATEGORIES")
_ONCE: Final = ("UID", "DTSTART", "DTEND", "DURATION", "RECURRENCE-ID", "SUMMARY", "STATUS", "CLASS", "LOCATION")
_TIMES: Final = ("DTSTART", "DTEND", "RECURRENCE-ID", "EXDATE", "RDATE")
_MOMENTS: Final = ("DTSTART", "DTEND", "RECURRENCE-ID")
_PERIOD: Final = re.compile(r"^[A-Z-]+;(?:[^:]*;)?VALUE=PERIOD\b", re.IGNORECASE)
_ZONE: Final = re.compile(r";TZID=(?:\"([^\"]*)\"|([^;:]*))", re.IGNORECASE)
_LONGEST_LINE: Final = 8000  # some 500 days left out in one line: judgement
_LONGEST_EVENT: Final = timedelta(days=366)  # longer is no fixture: judgement
_LONGEST_NAME: Final = 120  # what a line of a notice bears: judgement


def times_of(component: Component, name: str) -> list[date]:
    """Give the days, or days and times, that a property holds; of a period, its start.

    Args:
        component: an event that icalendar has read.
        name: a property that holds times.

    Returns:
        Days, or moments as written: with a zone where the file names one.
    """
    value: Any = component.get(name)
    values = [] if value is None else [item.dt for item in getattr(value, "dts", [value])]
    return [item[0] if isinstance(item, tuple) else item for item in values]


def event_from(part: Part, *, file: str, problems: list[Problem]) -> Component | None:
    """Check an event and let icalendar read it.

    Assumes that the file's VTIMEZONE components were read before.

    Args:
        part: the event as it stands in the file.
        file: name for problems.
        problems: where problems are added.

    Returns:
        The event with the properties that we read, or None when something is wrong with it.

    Source: Desruisseaux 2009, RFC 5545, sections 3.6.1 (event), 3.3.10 and 3.8.5.3 (recurrence rule).
    """
    told = [
        Problem(file=file, line=number, field=name, found=found, expected=expected, hint=hint)
        for number, name, found, expected, hint in _faults(part)
    ]
    event = None
    if not told:
        event = Event.from_ical(part.text(*_READ))
        told = [
            Problem(file=file, line=part.line_of(name), field=name, found=found, expected=expected)
            for name, found, expected in _faults_of_times(event, part)
        ]
    problems += told
    return None if told else event


Fault = tuple[int, str, str, str, str]
"""Line, property, what was found, what was expected, what to do."""


def _faults(part: Part) -> Iterator[Fault]:
    for name in _ONCE:
        for again in part.all_of(name)[1:]:
            yield again.number, name, "this property a second time", "it once in an event", ""
    yield from _missing(part)
    for line in part.lines:
        if line.name in _EXPECTED:
            yield from _faults_of_line(line)
    yield from _faults_of_name(part)
    for line in part.all_of("EXRULE"):
        yield line.number, "EXRULE", "a rule of days left out, which RFC 5545 has dropped", "EXDATE with those days", ""
    if part.all_of("DTEND") and part.all_of("DURATION"):
        number = part.line_of("DURATION")
        yield number, "DURATION", "a length beside a DTEND", "one of the two", ""


def _missing(part: Part) -> Iterator[Fault]:
    if not part.value("UID").strip():
        found = "an event without a name for life"
        yield part.line_of("UID"), "UID", found, "a line such as 'UID:autumn-medal-2027@our-club'", ""
    if not part.all_of("DTSTART"):
        yield part.line, "DTSTART", "an event without its day", "a line such as 'DTSTART;VALUE=DATE:20270918'", ""


def _faults_of_name(part: Part) -> Iterator[Fault]:
    name = part.value("SUMMARY").strip()
    if part.value("STATUS").strip().upper() == "CANCELLED":
        return  # programs leave out the name of what is called off
    if not is_seen(name):
        found = "an event without a name"
        yield part.line_of("SUMMARY"), "SUMMARY", found, "a line such as 'SUMMARY:Autumn medal'", ""
    elif len(name) > _LONGEST_NAME:
        found = f"{len(name)} characters"
        yield part.line_of("SUMMARY"), "SUMMARY", found, f"a name of at most {_LONGEST_NAME} characters", ""


def _faults_of_line(line: ContentLine) -> Iterator[Fault]:
    if len(line.text) > _LONGEST_LINE:
        yield line.number, line.name, f"{len(line.text):,} characters", _EXPECTED[line.name], ""
        return
    try:
        read = Event.from_ical(f"BEGIN:VEVENT\r\n{line.text}\r\nEND:VEVENT")
    except OSError:  # the zone's name is that of a folder of zones, such as Europe
        yield _fault_of_zone(line)
        return
    if read.errors or not line.value.strip() or (line.name in _MOMENTS and _PERIOD.search(line.text)):
        yield line.number, line.name, shown(line.value), _EXPECTED[line.name], ""
    elif line.name == "RRULE":
        yield from ((line.number, "RRULE", *fault) for fault in faults_of_rule(line.value))
    elif line.name == "DURATION" and line.value.startswith("-"):
        yield line.number, line.name, shown(line.value), "a length above nothing", ""
    elif line.name in _TIMES:
        yield from _faults_of_moments(line, times_of(read, line.name))


def _faults_of_moments(line: ContentLine, times: Sequence[object]) -> Iterator[Fault]:
    zone = _zone_of(line)
    for time in times:
        if not isinstance(time, date) or not FIRST_YEAR <= time.year <= LAST_YEAR:
            expected = f"{_EXPECTED[line.name]}, from {FIRST_YEAR} to {LAST_YEAR}"
            yield line.number, line.name, shown(line.value), expected, ""
        elif zone is not None and isinstance(time, datetime) and time.tzinfo is None:
            yield _fault_of_zone(line)
            return


def _zone_of(line: ContentLine) -> str | None:
    """The name of the zone in which a time is told, or None where it names none."""
    zone = _ZONE.search(line.text.split(":", 1)[0] if '"' not in line.text else line.text)
    return None if zone is None else zone[1] or zone[2] or ""


def _fault_of_zone(line: ContentLine) -> Fault:
    name = _zone_of(line) or ""
    expected = "one such as Europe/London, or one that the file itself describes in a VTIMEZONE"
    return line.number, line.name, f"the time zone {shown(name)}", expected, nearest(name, available_timezones())


def _faults_of_times(event: Component, part: Part) -> Iterator[tuple[str, str, str]]:
    (start,) = times_of(event, "DTSTART")
    ends = times_of(event, "DTEND")
    length = event.get("DURATION")
    if length is not None and length.dt > _LONGEST_EVENT:
        yield "DURATION", shown(part.value("DURATION")), "a year at most"
    if not ends:
        return
    (end,) = ends
    if isinstance(start, datetime) is not isinstance(end, datetime):
        yield "DTEND", shown(part.value("DTEND")), "a day where DTSTART is a day, a time where it is a time"
    elif _comparable(end, start) < _comparable(start, end):
        expected = f"an end not before DTSTART, {part.value('DTSTART')}"
        yield "DTEND", shown(part.value("DTEND")), expected
    elif _comparable(end, start) - _comparable(start, end) > _LONGEST_EVENT:
        yield "DTEND", shown(part.value("DTEND")), "a year after DTSTART at most"


def _comparable(time: date, other: date) -> date:
    """A time as far as it can be compared with another: of one in a zone and one without, the wall clocks."""
    if isinstance(time, datetime) and isinstance(other, datetime) and other.tzinfo is None:
        return time.replace(tzinfo=None)
    return time
