"""Growth of the last days and of the next ones, beside what the same days of past years brought."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

import numpy as np

from swardcast.outlook.weather_view import WeatherView
from swardcast.records.club import Grass, Surface, SurfaceKind
from swardcast.turf.climate import calendar_places
from swardcast.turf.growth import GRASSES, growth_fraction
from swardcast.turf.milestones import ALLOW_UNTIL, EARLY, LIKELY, days_at

__all__ = ["DAYS_BACK", "DayOfGrowth", "WeekOfGrowth", "usual_grass", "week_of_growth"]

DAYS_BACK: Final = 7
_DAYS_AHEAD: Final = 7
_WINDOW_DAYS: Final = 3  # days either side of a calendar day that count as the same time of year: judgement
_ROUND_THE_YEAR: Final = 366


@dataclass(frozen=True, slots=True, kw_only=True)
class DayOfGrowth:
    """One day's growth, each value from 0 to 1 for the best growing day.

    Args:
        day: the day.
        growth: as observed, or the middle of what is expected.
        low: 1 chance in 10 that it is less; the growth itself where observed.
        high: 9 chances in 10 that it is no more; the growth itself where observed.
        is_observed: whether the day is over and its weather was recorded.
        usual_low: no more than that in 1 past year of 10.
        usual: the middle of past years.
        usual_high: no more than that in 9 past years of 10.
    """

    day: date
    growth: float
    low: float
    high: float
    is_observed: bool
    usual_low: float
    usual: float
    usual_high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class WeekOfGrowth:
    """The last seven days and the next seven.

    Args:
        today: the first day that is not over.
        grass: the grass that grows.
        days: the days in order.
    """

    today: date
    grass: Grass
    days: tuple[DayOfGrowth, ...]


def usual_grass(surfaces: Iterable[Surface]) -> Grass | None:
    """Choose the grass that most greens have, or most other surfaces where no green has one.

    Args:
        surfaces: the club's surfaces.

    Returns:
        The grass, or None where no surface has one.
    """
    there = [surface for surface in surfaces if surface.grass is not None]
    counted = [surface for surface in there if surface.kind is SurfaceKind.GREEN] or there
    common = Counter(surface.grass for surface in counted).most_common(1)
    return common[0][0] if common else None


def week_of_growth(view: WeatherView, grass: Grass) -> WeekOfGrowth:
    """Lay the growth of two weeks out beside that of past years.

    Assumes that a day of past years is any day within three of the same calendar day, each year as likely as another.

    Args:
        view: the weather as known.
        grass: the grass.

    Returns:
        Seven days that are over and seven to come, as the sums of the dates take them.
    """
    first = view.today - timedelta(days=DAYS_BACK)
    growth = view.growth_from(first, grass, DAYS_BACK + _DAYS_AHEAD)
    missing = np.ones(DAYS_BACK, dtype=bool)
    if view.observed is not None:
        missing = np.isnan(view.observed.between(first, DAYS_BACK))
    days = []
    for place, usual in enumerate(_usual(view, grass, first, DAYS_BACK + _DAYS_AHEAD)):
        low, middle, high = (value or 0.0 for value in days_at(growth[:, place], EARLY, LIKELY, ALLOW_UNTIL))
        usual_low, usual_middle, usual_high = usual
        days.append(
            DayOfGrowth(
                day=first + timedelta(days=place),
                growth=middle,
                low=low,
                high=high,
                is_observed=place < DAYS_BACK and not missing[place],
                usual_low=usual_low,
                usual=usual_middle,
                usual_high=usual_high,
            )
        )
    return WeekOfGrowth(today=view.today, grass=grass, days=tuple(days))


def _usual(view: WeatherView, grass: Grass, first: date, days: int) -> list[tuple[float, float, float]]:
    history = view.past.history
    there = calendar_places(history.first, len(history.tmean_c))
    growth = growth_fraction(history.tmean_c, GRASSES[grass.value].curve)
    found = []
    for place in calendar_places(first, days):
        apart = np.abs(there - place)
        near = np.minimum(apart, _ROUND_THE_YEAR - apart) <= _WINDOW_DAYS
        values = growth[near & ~np.isnan(growth)]
        low, middle, high = (value or 0.0 for value in days_at(values, EARLY, LIKELY, ALLOW_UNTIL))
        found.append((low, middle, high))
    return found
