"""Moments and days as a greenkeeper says them: "7:05am", "yesterday 4pm", "7 September"."""

from __future__ import annotations

import re
from calendar import isleap
from datetime import date, datetime, time, timedelta
from typing import Final
from zoneinfo import ZoneInfo

from pydantic_core import PydanticCustomError

from swardcast.entering.wrong import WrongAnswer, understood
from swardcast.errors import nearest
from swardcast.moments import MONTHS, WEEKDAYS
from swardcast.reading.clock_times import clock_time
from swardcast.reading.schema import local_moment

__all__ = ["day_said", "moment_said"]

_ISO: Final = re.compile(r"^(\d{4})-(\d{2})-(\d{2})$")
_DAY: Final = re.compile(
    r"^(?:(?P<weekday>[a-z]{3,9}),?\s+)?(?P<day>\d{1,2})(?:st|nd|rd|th)?\s+(?P<month>[a-z]{3,9})(?:\s+(?P<year>\d{4}))?$"
)
_WEEKDAYS: Final = tuple(day.lower() for day in WEEKDAYS)
_SAMPLE_MOMENT: Final = "a time such as '7:05am', 'yesterday 4pm' or '2027-08-23 15:40'"
_SAMPLE_DAY: Final = "a day such as '7 September' or '2027-09-07'"


def moment_said(text: str, zone: ZoneInfo, now: datetime) -> datetime:
    """Read a moment that has come.

    Args:
        text: a time of today, or a day and a time; "now" is now.
        zone: the club's time zone.
        now: the present moment, aware.

    Returns:
        The moment, to the minute, in the club's zone.

    Raises:
        WrongAnswer: when it is no moment, does not exist, or is still to come.
    """
    local = now.astimezone(zone).replace(second=0, microsecond=0)
    words = " ".join(text.lower().replace(",", " ").split())
    if words == "now":
        return local
    day, clock = _parted(words, local.date(), text)
    at = understood(lambda: local_moment(f"{day.isoformat()} {clock:%H:%M}", zone))
    if at > local:
        found = f"{text!r}, which is still to come"
        raise WrongAnswer(found, f"a moment up to now, {local:%Y-%m-%d %H:%M}", "Say what is planned in plan/.")
    return at


def _parted(words: str, today: date, text: str) -> tuple[date, time]:
    for place in range(len(words.split())):
        parts = words.split()
        clock = _clock(" ".join(parts[place:]))
        before = " ".join(parts[:place]).removesuffix(" at")
        if clock is not None:
            return (today if before in ("", "at", "today") else _past_day(before, today, text)), clock
    raise WrongAnswer(repr(text), _SAMPLE_MOMENT)


def _past_day(words: str, today: date, text: str) -> date:
    if words == "yesterday":
        return today - timedelta(days=1)
    if words in _WEEKDAYS:
        return today - timedelta(days=(today.weekday() - _WEEKDAYS.index(words)) % 7)
    try:
        return day_said(words, today)
    except WrongAnswer as error:
        raise WrongAnswer(repr(text), _SAMPLE_MOMENT, error.hint) from error


def _clock(words: str) -> time | None:
    if words == "midnight":  # of a day that is named or over it is plain which one is meant
        return time(0)
    try:
        return clock_time(words.replace(".", ":"))
    except PydanticCustomError:
        return None


def day_said(text: str, near: date) -> date:
    """Read a day.

    Args:
        text: "2027-09-07", "7 September" or "Tuesday 7 September"; without a year it is the nearest one.
        near: the present day.

    Returns:
        The day.

    Raises:
        WrongAnswer: when it is no day, or a weekday that it does not fall on.
    """
    words = " ".join(text.lower().split())
    if words in ("today", "tomorrow"):
        return near + timedelta(days=words == "tomorrow")
    iso, match = _ISO.fullmatch(words), _DAY.match(words)
    try:
        if iso is not None:
            return date(*map(int, iso.groups()))
        if match is None:
            raise WrongAnswer(repr(text), _SAMPLE_DAY)
        day = _nearest_year(int(match["day"]), _month(match["month"], text), match["year"], near)
    except ValueError:
        raise WrongAnswer(repr(text), "a day that exists in the calendar") from None
    weekday = match["weekday"]
    if weekday is not None and not _WEEKDAYS[day.weekday()].startswith(weekday):
        found = f"{text!r}, but {day.isoformat()} is a {WEEKDAYS[day.weekday()]}"
        raise WrongAnswer(found, "a day and the weekday it falls on")
    return day


def _month(word: str, text: str) -> int:
    for number, month in enumerate(MONTHS, start=1):
        if month.lower().startswith(word):
            return number
    raise WrongAnswer(repr(text), _SAMPLE_DAY, nearest(word, MONTHS))


def _nearest_year(day: int, month: int, year: str | None, near: date) -> date:
    if year is not None:
        return date(int(year), month, day)
    found = []
    for candidate in (near.year - 1, near.year, near.year + 1):
        if (day, month) != (29, 2) or isleap(candidate):
            found.append(date(candidate, month, day))
    if not found:
        raise ValueError(day)
    return min(found, key=lambda one: abs((one - near).days))
