"""Days and stretches of days as a manager types them: "1 July", "2 August 2027", "2027-08-02"."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from datetime import date
from typing import Annotated, Any, Final, TypeVar

from pydantic import BeforeValidator

from swardcast.errors import nearest
from swardcast.moments import FIRST_YEAR, LAST_YEAR, MONTHS
from swardcast.reading.schema import one_day, wrong
from swardcast.records.day_spans import DayInYear, DaySpan

__all__ = ["SomeDay", "SomeDays", "span_from"]

T = TypeVar("T")

_ISO: Final = re.compile(r"^\d{4}-\d{2}-\d{2}$")
_DAY_FIRST: Final = re.compile(r"^(?P<day>\d{1,2}) (?P<month>[A-Za-z]+)(?:,? (?P<year>\d{4}))?$")
_MONTH_FIRST: Final = re.compile(r"^(?P<month>[A-Za-z]+) (?P<day>\d{1,2})(?:,? (?P<year>\d{4}))?$")
_EXPECTED: Final = "a day, such as '1 July' for every year, or '1 July 2027'"
_A_LEAP_YEAR: Final = 2000


def _day_in_year(value: object) -> DayInYear:
    if isinstance(value, DayInYear):
        return value
    text = " ".join(str(value).split())
    if _ISO.fullmatch(text):
        day = one_day(text)
        return DayInYear(month=day.month, day=day.day, year=day.year)
    match = _DAY_FIRST.fullmatch(text) or _MONTH_FIRST.fullmatch(text)
    if match is None:
        raise wrong(value, _EXPECTED)
    months = [name.lower() for name in MONTHS]
    named = [place for place, name in enumerate(months) if name == match["month"].lower()]
    if not named:
        raise wrong(value, _EXPECTED, nearest(match["month"].capitalize(), MONTHS))
    year = int(match["year"]) if match["year"] else None
    try:
        day = date(year or _A_LEAP_YEAR, named[0] + 1, int(match["day"]))
    except ValueError:
        raise wrong(value, "a day that exists in the calendar") from None
    if not FIRST_YEAR <= day.year <= LAST_YEAR:
        raise wrong(value, f"a year from {FIRST_YEAR} to {LAST_YEAR}")
    return DayInYear(month=day.month, day=day.day, year=year)


def _one_or_more(read: Callable[[object], T]) -> Callable[[object], tuple[T, ...]]:
    def several(value: object) -> tuple[T, ...]:
        items: Sequence[Any] = value if isinstance(value, list | tuple) else [value]
        return tuple(map(read, items))

    return several


SomeDay = Annotated[DayInYear, BeforeValidator(_day_in_year)]
"""A day of one year or of every year."""
SomeDays = Annotated[tuple[DayInYear, ...], BeforeValidator(_one_or_more(_day_in_year))]
"""One such day or several."""


def span_from(first: DayInYear, last: DayInYear) -> DaySpan:
    """Put two days together.

    Args:
        first: the first day.
        last: the last one.

    Returns:
        The days from one to the other.

    Raises:
        PydanticCustomError: when one has a year and the other has none, or the last is before the first.
    """
    if (first.year is None) is not (last.year is None):
        raise wrong("a year in one of the two days", "a year in both, or in neither for every year")
    if first.year is not None and last.year is not None:
        begin, end = (first.year, *first.place), (last.year, *last.place)
        if end < begin:
            raise wrong("a last day before the first", "'to' not before 'from'")
    return DaySpan(first=first, last=last)
