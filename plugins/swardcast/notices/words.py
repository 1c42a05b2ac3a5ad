"""Dates, amounts and places in plain English; the same uncertainty gives the same words everywhere.

Style after the NHS service manual ("Numbers, measurements, dates and time"): no ordinals, no comma after the
weekday, ranges with "to", 7:05am, midday, midnight.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date, datetime
from typing import Final

from swardcast.moments import MONTHS, WEEKDAYS
from swardcast.outlook.states import WIDE_RANGE_DAYS, DateRange, NoDate, Work
from swardcast.records.club import Surface, SurfaceKind

__all__ = [
    "NOT_DONE",
    "NO_DATE",
    "amount",
    "capital",
    "day_in_words",
    "joined",
    "moment_in_words",
    "percent",
    "places_in_words",
    "published_in_words",
    "range_in_words",
    "time_in_words",
    "tonnes",
]

NOT_DONE: Final = "no date until the work is done"
NO_DATE: Final = "too early to give a date: the grass is hardly growing"
_NO_DATES: Final = {
    NoDate.NOT_THIS_SEASON: NO_DATE,
    NoDate.NO_HISTORY: "no date: the weather of past years is not known here",
    NoDate.TOO_FAR: "no date yet: the work is more than a year ahead",
}


def capital(sentence: str) -> str:
    """Begin with a capital letter, leaving the rest as it is."""
    return sentence[:1].upper() + sentence[1:]


def joined(parts: Sequence[str]) -> str:
    """Join words as in a sentence: "a", "a and b", "a, b and c"."""
    if len(parts) < 2:  # noqa: PLR2004 - one or none needs no joining
        return "".join(parts)
    return f"{', '.join(parts[:-1])} and {parts[-1]}"


def day_in_words(day: date, near: date) -> str:
    """Say a day: "Friday 24 September", with the year when it is not the one of `near`."""
    year = "" if day.year == near.year else f" {day.year}"
    return f"{WEEKDAYS[day.weekday()]} {day.day} {MONTHS[day.month - 1]}{year}"


def _month_in_words(day: date, near: date) -> str:
    year = "" if day.year == near.year else f" {day.year}"
    return f"{MONTHS[day.month - 1]}{year}"


def time_in_words(moment: datetime) -> str:
    """Say a time of day: "7:05am", "2pm", "midday", "midnight"."""
    if (moment.hour, moment.minute) in ((0, 0), (12, 0)):
        return "midnight" if moment.hour == 0 else "midday"
    minutes = f":{moment.minute:02d}" if moment.minute else ""
    return f"{moment.hour % 12 or 12}{minutes}{'am' if moment.hour < 12 else 'pm'}"  # noqa: PLR2004 - noon


def moment_in_words(moment: datetime, near: date) -> str:
    """Say a moment: "7:05am on Tuesday 14 September"."""
    return f"{time_in_words(moment)} on {day_in_words(moment.date(), near)}"


def range_in_words(given: DateRange, near: date) -> str:
    """Say a date as surely as it is known; this is the only table of such words.

    Args:
        given: early, likely and allow until.
        near: the day of the reader, to leave out its year.

    Returns:
        "on Friday 24 September" for a fact; "likely by ...; allow until ..." for a computed date; months where the
        range is wider than eight weeks; no date where the season does not bring one.
    """
    if given.likely is None or given.allow_until is None:
        return _NO_DATES[given.no_date]
    if given.is_fact:
        return f"on {day_in_words(given.likely, near)}"
    if given.allow_until < near:
        return "by now"
    if given.likely < near:
        return f"due now; allow until {day_in_words(given.allow_until, near)}"
    early = given.early or given.likely
    if (given.allow_until - early).days > WIDE_RANGE_DAYS:
        return f"some time from {_month_in_words(early, near)} to {_month_in_words(given.allow_until, near)}"
    if given.allow_until == given.likely:
        return f"likely by {day_in_words(given.likely, near)}"
    return f"likely by {day_in_words(given.likely, near)}; allow until {day_in_words(given.allow_until, near)}"


def published_in_words(published: DateRange, work: Work, near: date) -> str:
    """Say the published date; once it has passed with the work still to do, it says nothing any more.

    Args:
        published: the date that stands on the site.
        work: the state of the work.
        near: the day of the reader.

    Returns:
        Words of `range_in_words`, or that there is no date until the work is done.
    """
    unfinished = work in (Work.PLANNED, Work.UNDER_WAY, Work.HELD_UP)
    if unfinished and published.allow_until is not None and published.allow_until < near:
        return NOT_DONE
    return range_in_words(published, near)


def amount(value: float) -> str:
    """Say a number, rounded to two figures that people can use: 151,872 becomes "about 150,000"."""
    if value <= 0:
        return "0"
    digits = max(0, len(str(int(value))) - 2)
    return f"about {round(value / 10**digits) * 10**digits:,}" if value >= 100 else f"{value:.0f}"  # noqa: PLR2004


def percent(fraction: float) -> str:
    """Say a share: "5.3 %", "14 %"."""
    share = 100 * fraction
    return f"{share:.1f}\u00a0%" if share < 10 else f"{share:.0f}\u00a0%"  # noqa: PLR2004 - below ten a decimal tells; the blank does not break


def tonnes(value: float) -> str:
    """Say a mass of sand: "1.4 tonnes", "25 tonnes"."""
    number = f"{value:.1f}".removesuffix(".0") if value < 10 else f"{value:.0f}"  # noqa: PLR2004 - as above
    return f"{number} tonne{'' if number == '1' else 's'}"


def places_in_words(surfaces: Iterable[Surface]) -> str:
    """Name surfaces as in a sentence: "greens 1 to 9 and 14 and the practice green"."""
    chosen = list(surfaces)
    parts = []
    for kind in SurfaceKind:
        numbered = [
            surface for surface in chosen if surface.kind is kind and surface.name == f"{kind.value} {surface.hole}"
        ]
        parts += _numbered(kind, sorted(surface.hole or 0 for surface in numbered))
        parts += [surface.name for surface in chosen if surface.kind is kind and surface not in numbered]
    return joined(parts)


def _numbered(kind: SurfaceKind, holes: Sequence[int]) -> list[str]:
    if not holes:
        return []
    runs: list[list[int]] = []
    for hole in holes:
        if runs and hole == runs[-1][-1] + 1:
            runs[-1].append(hole)
        else:
            runs.append([hole])
    said: list[str] = []
    for run in runs:
        said += [f"{run[0]} to {run[-1]}"] if len(run) > 2 else [str(hole) for hole in run]  # noqa: PLR2004 - "1 and 2"
    return [f"{kind.plural if len(holes) > 1 else kind.value} {joined(said)}"]
