"""A run of daily temperatures with its first day; a missing day is NaN."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta

import numpy as np
from numpy.typing import NDArray

__all__ = ["DailySeries", "same_day_in"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class DailySeries:
    """Daily mean air temperatures on consecutive days.

    Args:
        first: the first day.
        tmean_c: one mean temperature for each day, C; NaN where none was recorded.
    """

    first: date
    tmean_c: NDArray[np.float64]

    @classmethod
    def from_days(cls, days: Mapping[date, float]) -> DailySeries:
        """Lay scattered days out in order, NaN between.

        Args:
            days: mean temperature of each day, C; at least one day.

        Returns:
            The series from the earliest day to the latest.
        """
        first, last = min(days), max(days)
        values = np.full((last - first).days + 1, np.nan)
        for day, value in days.items():
            values[(day - first).days] = value
        return cls(first=first, tmean_c=values)

    @property
    def after_last(self) -> date:
        """The day after the last day of the series."""
        return self.first + timedelta(days=len(self.tmean_c))

    def between(self, start: date, days: int) -> NDArray[np.float64]:
        """Cut out a run of days, NaN where the series has none.

        Args:
            start: first day wanted.
            days: how many, 0 or more.

        Returns:
            Temperatures, C, shape (days,).
        """
        wanted = np.full(max(0, days), np.nan)
        offset = (start - self.first).days
        low, high = max(0, offset), min(len(self.tmean_c), offset + days)
        if high > low:
            wanted[low - offset : high - offset] = self.tmean_c[low:high]
        return wanted


def same_day_in(day: date, year: int) -> date:
    """Name the same calendar day in another year; 29 February becomes 28 February.

    Args:
        day: a day.
        year: the other year.

    Returns:
        The day in that year.
    """
    try:
        return day.replace(year=year)
    except ValueError:
        return day.replace(year=year, day=28)
