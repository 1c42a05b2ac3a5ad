"""When work is done: the club's working days and the pace of a job."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

__all__ = ["finishing_days", "working_day_after", "working_days_between"]


def working_day_after(day: date, working_days: int, weekdays: Sequence[int]) -> date:
    """Name the day that lies a number of working days after a day.

    Args:
        day: the day to count from; when it is not a working day, the count starts from the next one.
        working_days: 0 or more.
        weekdays: weekdays on which work is done, 0 for Monday; at least one.

    Returns:
        A working day, not before `day`.
    """
    current = day
    left = working_days
    while current.weekday() not in weekdays or left > 0:
        if current.weekday() in weekdays:
            left -= 1
        current += timedelta(days=1)
    return current


def finishing_days(start: date, count: int, *, a_day: float, weekdays: Sequence[int]) -> list[date]:
    """Name the day on which each surface of a job is finished.

    Args:
        start: first day of the work.
        count: how many surfaces, 0 or more.
        a_day: surfaces finished in a working day, above 0.
        weekdays: weekdays on which work is done.

    Returns:
        One day for each surface, in order, never going back.
    """
    # A surface that takes two and a half days is finished on the third.
    return [working_day_after(start, int((place + 1) / a_day - 1e-9), weekdays) for place in range(count)]


def working_days_between(one: date, other: date, weekdays: Sequence[int]) -> int:
    """Count the working days by which two days lie apart.

    Args:
        one: a day.
        other: another, before or after it.
        weekdays: weekdays on which work is done, 0 for Monday.

    Returns:
        Working days after the earlier day, up to the later one; 0 for the same day.
    """
    first, last = min(one, other), max(one, other)
    days = (first + timedelta(days=number) for number in range(1, (last - first).days + 1))
    return sum(day.weekday() in weekdays for day in days)
