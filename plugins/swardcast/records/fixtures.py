"""Competitions and visitors' days: what is to be played on the course, and on which days."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime

__all__ = ["Fixture"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Fixture:
    """One competition or visitors' day; of one that comes back, one occurrence.

    Args:
        id: name for life. Of a fixture that comes back, the series and the day for which the series had this one, so
            that it keeps its name when it is moved.
        series: what all occurrences share; the id itself where there is but one.
        name: what members call it, on one line.
        first_day: its first day, in the club's local time.
        last_day: its last day, not before the first.
        starts_at: when it starts, in the club's local time, or None where it takes the whole day.
        ends_at: when it ends, or None where that is not told.
        where: the place as typed, or "".
        is_for_visitors: whether it is a visitors' day, and no competition of the club's own.
    """

    id: str
    series: str
    name: str
    first_day: date
    last_day: date
    starts_at: datetime | None = None
    ends_at: datetime | None = None
    where: str = ""
    is_for_visitors: bool = False

    def __post_init__(self) -> None:
        """Refuse a fixture that ends before it begins."""
        if self.last_day < self.first_day:
            message = f"{self.name!r} ends on {self.last_day}, before it begins on {self.first_day}"
            raise ValueError(message)

    @property
    def order(self) -> tuple[date, float, str]:
        """What fixtures are sorted by: the day, then the hour, what takes the whole day first."""
        return self.first_day, self.starts_at.timestamp() if self.starts_at is not None else 0.0, self.id
