"""Days on which growth was held back on a surface, from the log."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, timedelta
from typing import Final

from swardcast.outlook.weather_days import SlowDays
from swardcast.records.log import GrowthHeldBack, HeldBackBy
from swardcast.turf.ensemble import HORIZON_DAYS
from swardcast.turf.growth import BRAKES

__all__ = ["slow_days"]

_LONGEST: Final = timedelta(days=HORIZON_DAYS)


def slow_days(told: Iterable[GrowthHeldBack], start: date) -> SlowDays:
    """Lay the days out on which less of the growth was left.

    Assumes that different causes multiply, and that the same cause told twice counts once.

    Args:
        told: entries about one surface.
        start: days before this one do not matter.

    Returns:
        Days in order, each with the share of its growth that was left.
    """
    causes: dict[date, set[HeldBackBy]] = {}
    for entry in told:
        day = max(entry.first_day, start)
        last = min(entry.last_day, start + _LONGEST)
        while day <= last:
            causes.setdefault(day, set()).add(entry.by)
            day += timedelta(days=1)
    shares = []
    for day in sorted(causes):
        left = 1.0
        for cause in HeldBackBy:
            left *= BRAKES[cause.value].growth_left if cause in causes[day] else 1.0
        shares.append((day, left))
    return tuple(shares)
