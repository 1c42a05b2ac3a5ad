"""Growth day by day: of days gone by, and of days to come, kept so that one morning's sums serve the next."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date, timedelta
from functools import lru_cache
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from swardcast.records.club import Grass
from swardcast.turf.ensemble import WeatherPast, known_days_c
from swardcast.turf.growth import GRASSES, growth_fraction
from swardcast.turf.series import DailySeries

__all__ = ["LONGEST_DAYS", "DaysGone", "DaysToCome", "Growth", "SlowDays", "slowed"]

Floats = NDArray[np.float64]

SlowDays = tuple[tuple[date, float], ...]
"""Days on which growth was held back, with the share that was left, 0 to 1."""

LONGEST_DAYS = 500
"""For how many days from its start growth is summed: judgement, 300 that healing is followed and 200 to come."""

_MARGIN_DAYS = 400  # laid out on either side of what is asked for, so that days asked one by one are laid out once
_SUMS_KEPT = 512  # of the latest starts that were asked for


class Growth(Protocol):
    """Growth as it is known at a moment, or of days that are over."""

    def growth_between(self, start: date, end: date, grass: Grass, slow: SlowDays = ()) -> float:
        """Sum the growth from a day up to and without another, growth days."""

    def no_later(self, day: date) -> date:
        """That day, or today where it is still to come."""


def slowed(growth: Floats, start: date, slow: SlowDays) -> Floats:
    """Hold growth back.

    Args:
        growth: growth of each day from a day on, shape (..., days), 0 to 1.
        start: that day.
        slow: days on which less of it was left.

    Returns:
        What was left, same shape.
    """
    if not slow:
        return growth
    left = np.ones(growth.shape[-1])
    for day, share in slow:
        if 0 <= (place := (day - start).days) < len(left):
            left[place] = share
    return np.asarray(growth * left)


@dataclass(slots=True, eq=False)
class DaysGone:
    """Growth of days that are over, as all moments of a year know it: every member of the weather has the same.

    A day without a record has the usual temperature, which hangs on the past years that count in that year.

    Args:
        past: the place's climate and past years.
        observed: days observed, or None.
        members: how many members the weather has.
    """

    past: WeatherPast
    observed: DailySeries | None
    members: int
    _first: dict[Grass, date] = field(default_factory=dict)
    _growth: dict[Grass, Floats] = field(default_factory=dict)
    _means: dict[Grass, Floats] = field(default_factory=dict)
    _sums: Callable[[date, Grass, SlowDays], Floats] = field(init=False)

    def __post_init__(self) -> None:
        self._sums = lru_cache(_SUMS_KEPT)(self._summed)

    def growth(self, start: date, days: int, grass: Grass) -> Floats:
        """Give the growth of each day.

        Args:
            start: first day.
            days: how many, 0 or more.
            grass: the grass.

        Returns:
            Growth, shape (days,), 0 to 1.
        """
        place = self._place(start, days, grass)
        return self._growth[grass][place : place + days]

    def means(self, start: date, days: int, grass: Grass, slow: SlowDays = ()) -> Floats:
        """Give the mean over the members, which rounding keeps from being quite the growth of each.

        Args:
            start: first day.
            days: how many, 0 or more.
            grass: the grass.
            slow: days on which less of the growth was left.

        Returns:
            Growth, shape (days,), 0 to 1.
        """
        place = self._place(start, days, grass)
        if slow:
            return self._mean(slowed(self._growth[grass][place : place + days], start, slow))
        return self._means[grass][place : place + days]

    def growth_between(self, start: date, end: date, grass: Grass, slow: SlowDays = ()) -> float:
        """Sum the growth from a day up to and without another, as `WeatherView.growth_between` does.

        Args:
            start: first day.
            end: the day after the last; that one is over.
            grass: the grass.
            slow: days on which less of the growth was left.

        Returns:
            Growth days.
        """
        return float(self._sums(start, grass, slow)[min(max(0, (end - start).days), LONGEST_DAYS)])

    def no_later(self, day: date) -> date:
        """The day itself: it is over."""
        return day

    def _summed(self, start: date, grass: Grass, slow: SlowDays) -> Floats:
        return np.concatenate([[0.0], np.cumsum(self.means(start, LONGEST_DAYS, grass, slow))])

    def _place(self, start: date, days: int, grass: Grass) -> int:
        """Where a run of days begins in what is laid out; longer is laid out where it is not in it."""
        first = self._first.get(grass)
        if first is None or start < first or (start - first).days + days > len(self._growth[grass]):
            last = start + timedelta(days=days)
            if first is not None:
                last = max(last, first + timedelta(days=len(self._growth[grass])))
            self._lay_out(min(start, first or start), last, grass)
        return (start - self._first[grass]).days

    def _lay_out(self, first: date, last: date, grass: Grass) -> None:
        margin = timedelta(days=_MARGIN_DAYS)
        first, last = first - margin, last + margin
        known = known_days_c(self.observed, self.past, first, (last - first).days)
        self._first[grass] = first
        self._growth[grass] = growth_fraction(known, GRASSES[grass.value].curve)
        self._means[grass] = self._mean(self._growth[grass])

    def _mean(self, growth: Floats) -> Floats:
        return np.asarray(np.tile(growth, (self.members, 1)).mean(axis=0))


@dataclass(slots=True, eq=False)
class DaysToCome:
    """Days to come that neither the last days observed nor a forecast reach, of each member.

    Successive mornings have the same ones, as long as the same past years serve and their calendar days lie alike.

    Args:
        first: the first day.
        tmean_c: temperatures, C, shape (members, days).
    """

    first: date
    tmean_c: Floats
    _growth: dict[Grass, tuple[Floats, Floats]] = field(default_factory=dict)

    def growth(self, grass: Grass) -> tuple[Floats, Floats]:
        """Give the growth of each day, shape (members, days), 0 to 1, and its mean over the members, shape (days,)."""
        if grass not in self._growth:
            growth = growth_fraction(self.tmean_c, GRASSES[grass.value].curve)
            self._growth[grass] = growth, growth.mean(axis=0)
        return self._growth[grass]
