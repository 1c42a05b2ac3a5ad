"""Stretches of hours or minutes as a manager types them: "6:30am to 3:30pm", "30 to 90 minutes"."""

from __future__ import annotations

import re
from typing import Annotated, Final

from pydantic import BeforeValidator

from swardcast.quantities import QuantityError, parse_minutes
from swardcast.reading.clock_times import clock_time
from swardcast.reading.schema import wrong
from swardcast.records.club import HoursOfDay

__all__ = ["EntryAge", "HoursFromTo", "MinutesFromTo", "SeveralHours"]

_LEAST_MINUTES: Final = 15  # of a working day or a break: shorter is a slip of the pen
_MOST_MINUTES: Final = 12 * 60
_LEAST_AGE_MINUTES, _MOST_AGE_MINUTES = 60, 24 * 60
_HOURS: Final = "hours of the day, such as '6:30am to 3:30pm' or '06:30 to 15:30'"
_MINUTES: Final = "a time up to 12 hours, such as '1 hour' or '30 to 90 minutes'"
_FOR_DAYS: Final = "For days or weeks write 'reopens after: {from: 2 to 3 days, source: ...}'."


def _hours(value: object) -> HoursOfDay:
    if isinstance(value, HoursOfDay):
        return value
    first, to, last = str(value).partition(" to ")
    if not to:
        raise wrong(value, _HOURS, "Write 'to' between the two times.")
    begins, ends = clock_time(first), clock_time(last)
    if (ends.hour - begins.hour) * 60 + ends.minute - begins.minute < _LEAST_MINUTES:
        hint = "The second time must be later, on the same day." if ends <= begins else "That is under 15 minutes."
        raise wrong(value, _HOURS, hint)
    return HoursOfDay(begins=begins, ends=ends)


def _several_hours(value: object) -> tuple[HoursOfDay, ...]:
    if isinstance(value, list | tuple):
        return tuple(map(_hours, value))
    return tuple(map(_hours, re.split(r",\s*| and ", str(value)))) if value is not None else ()


def _minutes(value: object) -> tuple[float, float]:
    low, to, high = str(value).partition(" to ")
    try:
        last = parse_minutes(high if to else value)
        bare = to and re.fullmatch(r"[\d.]+", low.strip())
        first = parse_minutes(f"{low} {high.split()[-1]}" if bare else low) if to else last
    except QuantityError as error:
        raise wrong(value, _MINUTES, _FOR_DAYS if re.search("day|week", str(value)) else error.hint) from error
    if first > last:
        raise wrong(value, "a range that goes up, such as '30 to 90 minutes'")
    if last > _MOST_MINUTES:
        raise wrong(value, _MINUTES, _FOR_DAYS)
    return first, last


def _age(value: object) -> float:
    expected = "a time from 1 to 24 hours, such as '10 hours'; an entry never counts beyond its day"
    try:
        minutes = parse_minutes(value)
    except QuantityError as error:
        raise wrong(value, expected, error.hint) from error
    if not _LEAST_AGE_MINUTES <= minutes <= _MOST_AGE_MINUTES:
        raise wrong(value, expected)
    return minutes


EntryAge = Annotated[float, BeforeValidator(_age)]
"""Minutes for which an entry counts."""
HoursFromTo = Annotated[HoursOfDay, BeforeValidator(_hours)]
SeveralHours = Annotated[tuple[HoursOfDay, ...], BeforeValidator(_several_hours)]
MinutesFromTo = Annotated[tuple[float, float], BeforeValidator(_minutes)]
