"""Stretches of days that a club names: of one year, or of every year."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

__all__ = ["DayInYear", "DaySpan"]


@dataclass(frozen=True, slots=True, kw_only=True)
class DayInYear:
    """A day by its month.

    Args:
        month: 1 to 12.
        day: day of the month, from 1 on.
        year: the year, or None for every year.
    """

    month: int
    day: int
    year: int | None = None

    @property
    def place(self) -> tuple[int, int]:
        """Its place in a year."""
        return self.month, self.day


@dataclass(frozen=True, slots=True, kw_only=True)
class DaySpan:
    """Days from one to another, both included.

    Args:
        first: the first day.
        last: the last one; both have a year, or neither. One of every year may run over the end of the year.
    """

    first: DayInYear
    last: DayInYear

    def holds(self, day: date) -> bool:
        """Whether a day lies in it."""
        place = (day.month, day.day)
        if self.first.year is not None and self.last.year is not None:
            return (self.first.year, *self.first.place) <= (day.year, *place) <= (self.last.year, *self.last.place)
        if self.first.place <= self.last.place:
            return self.first.place <= place <= self.last.place
        return place >= self.first.place or place <= self.last.place
