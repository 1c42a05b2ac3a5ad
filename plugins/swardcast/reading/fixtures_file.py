"""fixtures.ics -> competitions and visitors' days, as the club's local days.

Events count, one by one or as they come back; to-dos, free and busy times and journals are passed over. So is what is
cancelled, and what its owner marked as private, since everything that is read here may be published.
"""

from __future__ import annotations

import re
import warnings
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from operator import attrgetter
from typing import Final
from zoneinfo import ZoneInfo

import recurring_ical_events
from icalendar import Calendar, Component, Timezone
from icalendar.timezone import tzp

from swardcast.errors import Problem
from swardcast.reading.calendar_events import event_from, times_of
from swardcast.reading.calendar_lines import Part, parts_of
from swardcast.reading.calendar_rules import never_comes, steps_to
from swardcast.reading.plain_words import shown
from swardcast.records.fixtures import Fixture
from swardcast.records.log import Entry, PlanChange
from swardcast.records.plan import Job

__all__ = ["LARGEST_CHARACTERS", "MOST_FIXTURES", "days_that_matter", "fixtures_from"]

LARGEST_CHARACTERS: Final = 1_000_000
"""Some 3000 events; more is no list of fixtures: judgement."""
MOST_EVENTS: Final = 3000
"""Events in a file: judgement."""
MOST_FIXTURES: Final = 5000
"""Occurrences read: judgement."""
_MOST_ENDLESS: Final = 10  # told one by one: judgement
_MOST_STEPS: Final = 200_000
"""Days, weeks, months and years gone through for all rules: a hundred daily events of five years. Judgement."""
_AFTER_LAST_START: Final = timedelta(days=731)
"""A job may start a year late, and its dates reach a year at most: judgement."""
_FAILURES: Final = (ArithmeticError, AttributeError, LookupError, TypeError, ValueError)
"""What a library may raise on an odd file."""
_UNSEEN: Final = re.compile("[\x7f-\x9f\u202a-\u202e\u2066-\u2069]")
"""Controls, and marks that turn the direction of writing."""

Days = tuple[date, date]


def days_that_matter(jobs: Iterable[Job], entries: Iterable[Entry]) -> Days | None:
    """Name the days over which fixtures that come back are laid out; no clock is read.

    Args:
        jobs: the planned jobs.
        entries: the log.

    Returns:
        From the first day on which a job is announced or starts to two years after the last day on which one starts, as
        planned or as moved; None without a job, since then no notice can name a fixture.
    """
    planned = list(jobs)
    starts = [job.starts for job in planned]
    starts += [entry.starts for entry in entries if isinstance(entry, PlanChange) and entry.starts is not None]
    first = min([*starts, *(job.announced for job in planned)], default=None)
    return None if first is None else (first, max(starts) + _AFTER_LAST_START)


def fixtures_from(
    text: str, *, file: str, zone: ZoneInfo, days: Days | None, problems: list[Problem]
) -> tuple[Fixture, ...]:
    """Read a calendar file.

    Args:
        text: the file, its lines ending with a line feed.
        file: name for problems.
        zone: the club's time zone, also of times that name none.
        days: the first and last day to lay out, or None for no fixture.
        problems: where problems are added.

    Returns:
        Fixtures that touch these days, the first first.

    Source: Desruisseaux 2009, RFC 5545; the end of an event is exclusive (section 3.6.1).
    """
    if len(text) > LARGEST_CHARACTERS:
        size = f"{len(text):,} characters"
        problems.append(Problem(file=file, found=size, expected=f"at most {LARGEST_CHARACTERS:,}, a list of fixtures"))
        return ()
    before = len(problems)
    found: list[Fixture] = []
    series: dict[str, list[_Told]] = {}
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # a zone's name behind a maker's prefix is worth no talk
        calendars = parts_of(text, file=file, problems=problems)
        if not _too_many_events(calendars, file, problems):
            series = _series_of(calendars, file, problems)
        if days is None or len(problems) > before:
            return ()
        problems += _endless(series, days, file)
        if len(problems) > before:
            return ()
        for one in series.values():
            try:
                found += _laid_out(one, zone, days)
            except _FAILURES:
                problems.append(_not_laid_out(one[0].part, file))
            if len(found) > MOST_FIXTURES:
                problems.append(_too_many(one[0].part, file))
                break
    return tuple(sorted(found, key=attrgetter("order")))


def _too_many_events(calendars: Sequence[Part], file: str, problems: list[Problem]) -> bool:
    count = sum(part.name == "VEVENT" for calendar in calendars for part in calendar.parts)
    if count > MOST_EVENTS:
        expected = f"at most {MOST_EVENTS:,}, a list of fixtures"
        problems.append(Problem(file=file, found=f"{count:,} events", expected=expected))
    return count > MOST_EVENTS


def _endless(series: Mapping[str, Sequence[_Told]], days: Days, file: str) -> Iterator[Problem]:
    """Rules whose days would be sought for hours: those by which none comes, and too many that begin long ago."""
    steps = told = 0
    for one in (one for several in series.values() for one in several if "RRULE" in one.event):
        rule, start = one.part.value("RRULE"), _day_of(times_of(one.event, "DTSTART")[0])
        line = one.part.line_of("RRULE")
        steps += steps_to(rule, start, days[1])
        if steps > _MOST_STEPS:
            found = "rules that begin too long ago for so many"
            expected = "those of past years left out, or with a later DTSTART"
            yield Problem(file=file, line=line, field="RRULE", found=found, expected=expected)
            return
        if never_comes(rule, start, days[1]):
            found, expected = f"{shown(rule)}, which never comes", "a rule by which a day comes"
            yield Problem(file=file, line=line, field="RRULE", found=found, expected=expected)
            told += 1
        if told == _MOST_ENDLESS:
            return


def _day_of(time: date) -> date:
    return time.date() if isinstance(time, datetime) else time


@dataclass(frozen=True, slots=True, kw_only=True)
class _Told:
    """An event, the part of the file that it stands in, and the zone that the calendar around it names."""

    part: Part
    event: Component
    calendar_zone: str

    @property
    def recurs(self) -> bool:
        """Whether it is one of several occurrences, or tells them."""
        return any(name in self.event for name in ("RRULE", "RDATE", "RECURRENCE-ID"))


def _series_of(calendars: Sequence[Part], file: str, problems: list[Problem]) -> dict[str, list[_Told]]:
    """Read the zones, then the events, and bring those together that share a UID."""
    tzp.use_default()  # forget the zones that another file described
    before = len(problems)
    for zone in (part for calendar in calendars for part in calendar.parts if part.name == "VTIMEZONE"):
        try:
            Timezone.from_ical(zone.text())
        except _FAILURES as error:
            found = f"a time zone that cannot be read ({error})"
            problems.append(Problem(file=file, line=zone.line, found=found, expected="a VTIMEZONE as RFC 5545 has it"))
    if len(problems) > before:
        return {}  # every event in such a zone would be called at fault
    series: dict[str, list[_Told]] = {}
    for calendar in calendars:
        problems += _other_calendar(calendar, file)
        zone_name = _zone_named(calendar.value("X-WR-TIMEZONE").strip())
        for part in calendar.parts:
            event = event_from(part, file=file, problems=problems) if part.name == "VEVENT" else None
            if event is not None:
                told = _Told(part=part, event=event, calendar_zone=zone_name)
                others = series.setdefault(str(event["UID"]), [])
                problems += _twice(told, others, file)
                others.append(told)
    return series


def _zone_named(name: str) -> str:
    """The zone that a calendar names, or "" where there is none of that name."""
    try:
        return "" if tzp.timezone(name) is None else name
    except OSError:  # it is the name of a folder of zones, such as Europe
        return ""


def _other_calendar(calendar: Part, file: str) -> Iterator[Problem]:
    scale = calendar.value("CALSCALE").strip()
    if scale.upper() not in ("", "GREGORIAN"):
        line = calendar.line_of("CALSCALE")
        yield Problem(file=file, line=line, field="CALSCALE", found=shown(scale), expected="GREGORIAN")


def _twice(told: _Told, others: Sequence[_Told], file: str) -> Iterator[Problem]:
    for other in others:
        if _which(other.event) == _which(told.event):
            expected = f"one of its own; the event of line {other.part.line} has this one"
            found = f"{shown(str(told.event['UID']))} a second time"
            yield Problem(file=file, line=told.part.line_of("UID"), field="UID", found=found, expected=expected)
            return


def _which(event: Component) -> date | None:
    """The occurrence of its series that an event speaks of, or None for the series."""
    return next(iter(times_of(event, "RECURRENCE-ID")), None)


def _laid_out(told: Sequence[_Told], zone: ZoneInfo, days: Days) -> Iterator[Fixture]:
    calendar = Calendar()
    if told[0].calendar_zone:
        calendar.add("X-WR-TIMEZONE", told[0].calendar_zone)
    for one in told:
        calendar.add_component(one.event)
    recurs = any(one.recurs for one in told)
    for occurrence in recurring_ical_events.of(calendar).between(days[0], days[1] + timedelta(days=1)):
        if not _is_left_out(occurrence):
            yield _fixture(occurrence, zone, recurs=recurs)


def _is_left_out(occurrence: Component) -> bool:
    status, kept_from = (str(occurrence.get(name, "")).strip().upper() for name in ("STATUS", "CLASS"))
    return status == "CANCELLED" or kept_from in ("PRIVATE", "CONFIDENTIAL")


def _fixture(occurrence: Component, zone: ZoneInfo, *, recurs: bool) -> Fixture:
    series = _on_one_line(occurrence["UID"])
    start, end = (_local(time, zone) for name in ("DTSTART", "DTEND") for time in times_of(occurrence, name))
    if isinstance(start, datetime) and isinstance(end, datetime):
        first, last, starts_at = start.date(), (end - timedelta(microseconds=1)).date(), start
        ends_at = end if end > start else None
    else:
        first, last, starts_at, ends_at = start, end - timedelta(days=1), None, None
    name = _on_one_line(occurrence.get("SUMMARY", ""))
    return Fixture(
        id=f"{series}/{_planned_for(occurrence, zone)}" if recurs else series,
        series=series,
        name=name,
        first_day=first,
        last_day=max(first, last),
        starts_at=starts_at,
        ends_at=ends_at,
        where=_on_one_line(occurrence.get("LOCATION", "")),
        is_for_visitors=any("visitor" in word.lower() for word in (name, *_categories(occurrence))),
    )


def _categories(occurrence: Component) -> list[str]:
    """Its categories, which may stand in several lines (RFC 5545, section 3.8.1.2)."""
    told = occurrence.get("CATEGORIES", [])
    return [str(word) for one in (told if isinstance(told, list) else [told]) for word in one.cats]


def _planned_for(occurrence: Component, zone: ZoneInfo) -> str:
    """The day, and time, for which the series had this occurrence."""
    onwards = "RANGE" in occurrence["RECURRENCE-ID"].params  # then each later one has only its own start
    (planned,) = times_of(occurrence, "DTSTART" if onwards else "RECURRENCE-ID")
    moment = _local(planned, zone)
    return moment.strftime("%Y-%m-%dT%H:%M") if isinstance(moment, datetime) else moment.isoformat()


def _local(moment: date, zone: ZoneInfo) -> date:
    if not isinstance(moment, datetime):
        return moment
    return moment.replace(tzinfo=zone) if moment.tzinfo is None else moment.astimezone(zone)


def _on_one_line(words: object) -> str:
    return _UNSEEN.sub("", " ".join(str(words).split()))


def _not_laid_out(part: Part, file: str) -> Problem:
    rule = part.value("RRULE")
    return Problem(
        file=file,
        line=part.line_of("RRULE"),
        field="RRULE" if rule else "",
        found=shown(rule) if rule else "an event whose days cannot be told",
        expected="a rule that RFC 5545, section 3.3.10, allows" if rule else "days as RFC 5545 has them",
    )


def _too_many(part: Part, file: str) -> Problem:
    found = f"more than {MOST_FIXTURES:,} fixtures, the last ones of {shown(part.value('SUMMARY'))}"
    return Problem(file=file, line=part.line, found=found, expected=f"at most {MOST_FIXTURES:,}")
