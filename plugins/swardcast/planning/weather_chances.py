"""What the past years say of the weather in days of work: how often it was dry, how often days were lost."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date, timedelta
from itertools import count

from swardcast.records.blocked import DaysWithoutWork
from swardcast.records.weather import Weather
from swardcast.turf.series import same_day_in

__all__ = ["MOST_SPARE_DAYS", "PastWork", "WeatherChances"]

_OFTEN_ENOUGH = 0.8
"""Share of past years in which spare days have to be enough: four in five, judgement."""
MOST_SPARE_DAYS = 30
"""More are not counted, as in a plan."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WeatherChances:
    """How work that begins on a calendar day would have gone in the past years.

    Args:
        dry: years, of those known, in which less rain than the club's limit fell on that day, or None where no past
            year tells rain.
        frost: years, of those known, with a morning at or below the club's limit, or None where none tells the lowest
            temperature.
        years: years in which what is recorded is known for that day.
        spare_days: working days that were lost before the work was finished, one for each year that is known for as
            long as it took, at most `MOST_SPARE_DAYS`.
    """

    dry: int | None
    frost: int | None
    years: int
    spare_days: tuple[int, ...]

    def enough_in(self, spare_days: int) -> int:
        """Count the years in which so many spare days were enough."""
        return sum(one <= spare_days for one in self.spare_days)

    @property
    def often_enough(self) -> int | None:
        """The fewest spare days that were enough in four years of five, or None without a year."""
        if not self.spare_days:
            return None
        wanted = _OFTEN_ENOUGH * len(self.spare_days)
        return next(spare for spare in count() if self.enough_in(spare) >= wanted - 1e-9)


@dataclass(slots=True, kw_only=True)
class PastWork:
    """The past years, asked how work would have gone in them.

    Args:
        weather: the club's weather.
        limits: rain and frost by which a day is lost.
        before: years before this one count, so that a past moment knows no later year.
    """

    weather: Weather
    limits: DaysWithoutWork
    before: int
    _first_year: int | None = field(init=False)

    def __post_init__(self) -> None:
        """Find the first year that tells anything."""
        known = [min(days) for days in (self.weather.history_rain_mm, self.weather.history_lowest_c) if days]
        self._first_year = min(known).year if known else None

    def chances(self, starts: date, days_of_work: int, *, is_worked: Callable[[date], bool]) -> WeatherChances | None:
        """Ask how work that begins on a day would have gone.

        Assumes the calendar of the year planned: in each past year the work is tried on the same days after the same
        calendar day, and a lost day puts it off to the next day of work.

        Args:
            starts: first day of the work.
            days_of_work: days of work that it takes, at least 1.
            is_worked: whether the club works on a day of the year planned.

        Returns:
            Counts of years, or None where no past year tells rain or the lowest temperature.
        """
        if self._first_year is None:
            return None
        rain, lowest = self.weather.history_rain_mm, self.weather.history_lowest_c
        begins = [same_day_in(starts, year) for year in range(self._first_year, self.before)]
        begins = [day for day in begins if self._is_lost(day) is not None]
        spare = [self._lost_days(day, starts, days_of_work, is_worked) for day in begins]
        return WeatherChances(
            dry=sum(rain[day] < self.limits.rain_mm for day in begins) if rain else None,
            frost=sum(lowest[day] <= self.limits.frost_c for day in begins) if lowest else None,
            years=len(begins),
            spare_days=tuple(one for one in spare if one is not None),
        )

    def _is_lost(self, day: date) -> bool | None:
        """Whether a past day was lost, or None where what the past years record is not known of it."""
        rain, lowest = self.weather.history_rain_mm, self.weather.history_lowest_c
        if (rain and day not in rain) or (lowest and day not in lowest):
            return None
        wet = bool(rain) and rain[day] >= self.limits.rain_mm
        return wet or (bool(lowest) and lowest[day] <= self.limits.frost_c)

    def _lost_days(
        self, begins: date, starts: date, days_of_work: int, is_worked: Callable[[date], bool]
    ) -> int | None:
        """Working days lost in one past year; None where its record ends before the work does."""
        lost = done = place = 0
        while done < days_of_work and lost < MOST_SPARE_DAYS:
            if is_worked(starts + timedelta(days=place)):
                is_lost = self._is_lost(begins + timedelta(days=place))
                if is_lost is None:
                    return None
                lost, done = lost + is_lost, done + (not is_lost)
            place += 1
        return lost
