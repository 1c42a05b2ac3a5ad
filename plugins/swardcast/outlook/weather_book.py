"""The club's weather as the sums want it: prepared once, asked for any moment."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping
from datetime import date, datetime
from functools import cache, lru_cache
from typing import TYPE_CHECKING, Final

from swardcast.outlook.weather_days import DaysGone, DaysToCome
from swardcast.outlook.weather_view import LOOK_AHEAD_DAYS, WeatherView
from swardcast.records.club import Club
from swardcast.records.weather import Weather
from swardcast.turf.climate import PAST_YEARS
from swardcast.turf.ensemble import WeatherPast, climate_of, past_years, weather_members
from swardcast.turf.series import DailySeries, same_day_in

if TYPE_CHECKING:
    from swardcast.outlook.memory import Memory  # it knows the weather

__all__ = ["WeatherBook"]

_VIEWS_KEPT: Final = 128  # mornings of some months: jobs told one after the other mostly lie near each other
_YEARS_KEPT: Final = 8  # of weather to come, 1 MB each


class WeatherBook:
    """A club's weather, prepared once for all moments of a build of one set of records.

    Attributes:
        memories: what was worked out with it, by the identity of the records; kept by `outlook.memory`.
    """

    def __init__(self, club: Club, weather: Weather) -> None:
        self._zone = club.time_zone
        self._weather = weather
        self._history = _series(weather.history_c)
        self._observed = _series(weather.observed_c)
        self.memories: dict[int, Memory] = {}
        self._pasts: dict[int, WeatherPast | None] = {}
        self._issued = [forecast.issued_at.timestamp() for forecast in weather.forecasts]
        self._view = lru_cache(_VIEWS_KEPT)(self._viewed)
        self._to_come = lru_cache(_YEARS_KEPT)(self._coming)
        self._gone = cache(self._going)
        self._years = lru_cache(_VIEWS_KEPT)(self._years_on)

    def at(self, moment: datetime) -> WeatherView | None:
        """Show the weather as it was known at a moment.

        Args:
            moment: aware.

        Returns:
            The view, or None when there is no history to say anything from.
        """
        return self._view(moment.astimezone(self._zone).date(), bisect_right(self._issued, moment.timestamp()))

    def of(self, today: date, issued_at: datetime | None) -> WeatherView | None:
        """Show the weather as it was known on a day with a forecast.

        Args:
            today: the day.
            issued_at: when the forecast was issued, or None.

        Returns:
            The view, or None when there is no history to say anything from.
        """
        return self._view(today, bisect_right(self._issued, issued_at.timestamp()) if issued_at is not None else 0)

    def _viewed(self, today: date, issued: int) -> WeatherView | None:
        past = self._past(today.year)
        if past is None or not (years := self._years(today)):
            return None
        observed = None
        if self._observed is not None and self._observed.first < today:
            kept = (today - self._observed.first).days
            observed = DailySeries(first=self._observed.first, tmean_c=self._observed.tmean_c[:kept])
        forecast = self._weather.forecasts[issued - 1] if issued else None
        told = forecast.tmean_c if forecast is not None else {}
        to_come = self._to_come(past, self._lying_alike(today))
        return WeatherView(
            today=today,
            past=past,
            past_years=len(years),
            observed=observed,
            forecast=_series({day: value for day, value in told.items() if day >= today}),
            issued_at=forecast.issued_at if forecast is not None else None,
            gone=self._gone(past, len(to_come.tmean_c)),
            to_come=to_come,
        )

    def _lying_alike(self, today: date) -> date:
        """The first of a few days of the year from which the members' days lie as they do from today on."""
        candidates = (today.replace(month=1, day=1), today.replace(month=3, day=1), today.replace(day=1))
        alike = (day for day in candidates if day <= today and self._years(day) == self._years(today))
        return next(alike, today)

    def _years_on(self, today: date) -> tuple[int, ...]:
        """How many days before a day each past year begins that serves as a member from it on."""
        past = self._past(today.year)
        return () if past is None else tuple((today.toordinal() - past_years(past, today)).tolist())

    @staticmethod
    def _coming(past: WeatherPast, first: date) -> DaysToCome:
        days = (date(first.year, 12, 31) - first).days + 1 + LOOK_AHEAD_DAYS
        members = weather_members(past, None, None, start=first, today=first, days=days)
        return DaysToCome(first=first, tmean_c=members.tmean_c)

    def _going(self, past: WeatherPast, members: int) -> DaysGone:
        """One for all moments that know the same past and as many members, so that they share its sums."""
        return DaysGone(past=past, observed=self._observed, members=members)

    def _past(self, year: int) -> WeatherPast | None:
        """The last past years, up to the end of the year before: a moment of 2025 must not know 2026."""
        if year not in self._pasts:
            self._pasts[year] = self._past_before(date(year, 1, 1))
        return self._pasts[year]

    def _past_before(self, end: date) -> WeatherPast | None:
        if self._history is None or self._history.first >= end:
            return None
        end = min(self._history.after_last, end)
        first = max(self._history.first, same_day_in(end, end.year - PAST_YEARS))
        return climate_of(DailySeries(first=first, tmean_c=self._history.between(first, (end - first).days)))


def _series(days: Mapping[date, float]) -> DailySeries | None:
    return DailySeries.from_days(days) if days else None
