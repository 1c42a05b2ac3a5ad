"""The club's weather as the sums want it: prepared once, asked for any moment."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from typing import TYPE_CHECKING, Final

import numpy as np
from numpy.typing import NDArray

from swardcast.records.club import Club, Grass
from swardcast.records.weather import Forecast, Weather
from swardcast.turf.ensemble import HORIZON_DAYS, Ensemble, WeatherPast, climate_of, known_days_c, weather_members
from swardcast.turf.growth import GRASSES, growth_fraction
from swardcast.turf.milestones import Disruption, MilestoneDays, milestone_days_of_each
from swardcast.turf.series import DailySeries

if TYPE_CHECKING:
    from swardcast.outlook.course import Memory  # which knows the weather
    from swardcast.outlook.recovery import Dated

__all__ = ["SlowDays", "WeatherBook", "WeatherView"]

Floats = NDArray[np.float64]

SlowDays = tuple[tuple[date, float], ...]
"""Days on which growth was held back, with the share that was left, 0 to 1."""

Question = tuple[date, Grass, Disruption, SlowDays]
"""Day 0, the grass, what has to heal and what held growth back."""

_LOOK_BACK_DAYS: Final = 300  # how long before a moment healing is still followed
_LOOK_AHEAD_DAYS: Final = 366 + HORIZON_DAYS  # a job planned up to a year ahead, and its healing


@dataclass(slots=True, eq=False)
class WeatherView:
    """The weather as it was known at one moment.

    Args:
        today: the first day not over.
        ensemble: temperatures from `_LOOK_BACK_DAYS` before today on.
        observed: days observed, or None.
        past: the place's climate and past years.
        issued_at: when the forecast in use was issued, or None.
        dated: what was asked of this view before, kept by `outlook.recovery`.
    """

    today: date
    ensemble: Ensemble
    observed: DailySeries | None
    past: WeatherPast
    issued_at: datetime | None
    _growth: dict[Grass, Floats] = field(default_factory=dict)
    _sums: dict[tuple[date, Grass, SlowDays], Floats] = field(default_factory=dict)
    dated: dict[Question, Dated] = field(default_factory=dict)

    def growth_from(self, start: date, grass: Grass, days: int = HORIZON_DAYS, slow: SlowDays = ()) -> Floats:
        """Give the growth of each day from a day on.

        Args:
            start: first day.
            grass: the grass.
            days: how many days.
            slow: days on which less of the growth was left.

        Returns:
            Growth, shape (members, days), 0 to 1.
        """
        if grass not in self._growth:
            self._growth[grass] = growth_fraction(self.ensemble.tmean_c, GRASSES[grass.value].curve)
        offset = (start - self.ensemble.first).days
        growth = self._growth[grass][:, max(0, offset) : max(0, offset + days)]
        if offset < 0:  # an old job: those days are the same in all members
            before = known_days_c(self.observed, self.past, start, min(days, -offset))
            early = growth_fraction(before, GRASSES[grass.value].curve)
            growth = np.hstack([np.broadcast_to(early, (len(growth), len(early))), growth])
        if not slow:
            return growth
        left = np.ones(growth.shape[1])
        for day, share in slow:
            if 0 <= (place := (day - start).days) < len(left):
                left[place] = share
        return growth * left

    def milestones_of_each(
        self, start: date, grass: Grass, disruptions: Sequence[Disruption], slow: SlowDays = ()
    ) -> tuple[MilestoneDays, ...]:
        """Compute the days to each milestone, of several disruptions that begin on the same day.

        Args:
            start: day 0.
            grass: the grass.
            disruptions: what has to heal, in each case.
            slow: days on which less of the growth was left.

        Returns:
            Days from day 0, for each of them.
        """
        return milestone_days_of_each(self.growth_from(start, grass, slow=slow), disruptions)

    def growth_sums(self, start: date, grass: Grass, slow: SlowDays = ()) -> Floats:
        """Sum the growth from a day on: observed, or the mean over members where it is to come.

        Args:
            start: first day.
            grass: the grass.
            slow: days on which less of the growth was left.

        Returns:
            Growth days gained before day 0, 1, 2, ... after the start, shape (days + 1,), beginning with 0.
        """
        key = (start, grass, slow)
        if key not in self._sums:
            mean = self.growth_from(start, grass, _LOOK_BACK_DAYS + HORIZON_DAYS, slow).mean(axis=0)
            self._sums[key] = np.concatenate([[0.0], np.cumsum(mean)])
        return self._sums[key]

    def growth_between(self, start: date, end: date, grass: Grass, slow: SlowDays = ()) -> float:
        """Sum the growth from a day up to and without another: observed, or expected where it is to come.

        Args:
            start: first day.
            end: the day after the last.
            grass: the grass.
            slow: days on which less of the growth was left.

        Returns:
            Growth days, the mean over members.
        """
        sums = self.growth_sums(start, grass, slow)
        return float(sums[min(max(0, (end - start).days), len(sums) - 1)])

    def unobserved_days(self, start: date) -> int:
        """Count the days from a day up to yesterday that were not observed."""
        days = max(0, (self.today - start).days)
        if self.observed is None:
            return days
        return int(np.isnan(self.observed.between(start, days)).sum())

    def mean_c(self, start: date, end: date) -> float:
        """Average the temperature from a day up to and without another, over the members.

        Args:
            start: first day, not before the view's first.
            end: the day after the last, after `start`.

        Returns:
            Mean temperature, C.
        """
        first = (start - self.ensemble.first).days
        days = max(1, (end - start).days)
        return float(self.ensemble.tmean_c[:, max(0, first) : max(0, first) + days].mean())

    def warmth(self, start: date) -> float | None:
        """Compare the observed days since a day with the usual: degrees above (or below) it, or None."""
        days = (self.today - start).days
        if self.observed is None or days <= 0:
            return None
        difference = self.observed.between(start, days) - self.past.usual_c(start, days)
        known = difference[~np.isnan(difference)]
        return float(known.mean()) if len(known) else None


class WeatherBook:
    """A club's weather, prepared once for all moments of a build of one set of records.

    Attributes:
        memories: what was worked out with it, by the identity of the records; kept by `outlook.course`.
    """

    def __init__(self, club: Club, weather: Weather) -> None:
        self._zone = club.time_zone
        self._weather = weather
        self._history = _series(weather.history_c)
        self._observed = _series(weather.observed_c)
        self.memories: dict[int, Memory] = {}
        self._pasts: dict[int, WeatherPast | None] = {}
        self._views: dict[tuple[date, datetime | None], WeatherView | None] = {}

    def at(self, moment: datetime) -> WeatherView | None:
        """Show the weather as it was known at a moment.

        Args:
            moment: aware.

        Returns:
            The view, or None when there is no history to say anything from.
        """
        today = moment.astimezone(self._zone).date()
        issued = [forecast for forecast in self._weather.forecasts if forecast.issued_at <= moment]
        forecast = issued[-1] if issued else None
        key = (today, forecast.issued_at if forecast else None)
        if key not in self._views:
            self._views[key] = self._view(today, forecast)
        return self._views[key]

    def _view(self, today: date, forecast: Forecast | None) -> WeatherView | None:
        past = self._past(today.year)
        if past is None:
            return None
        observed = None
        if self._observed is not None and self._observed.first < today:
            kept = (today - self._observed.first).days
            observed = DailySeries(first=self._observed.first, tmean_c=self._observed.tmean_c[:kept])
        told = forecast.tmean_c if forecast is not None else {}
        to_come = _series({day: value for day, value in told.items() if day >= today})
        ensemble = weather_members(
            past,
            observed,
            to_come,
            start=today - timedelta(days=_LOOK_BACK_DAYS),
            today=today,
            days=_LOOK_BACK_DAYS + _LOOK_AHEAD_DAYS,
        )
        if not len(ensemble.tmean_c):
            return None
        issued_at = forecast.issued_at if forecast is not None else None
        return WeatherView(today=today, ensemble=ensemble, observed=observed, past=past, issued_at=issued_at)

    def _past(self, year: int) -> WeatherPast | None:
        """Past years up to the end of the year before: a moment of 2025 must not know 2026."""
        if year not in self._pasts:
            self._pasts[year] = self._past_before(date(year, 1, 1))
        return self._pasts[year]

    def _past_before(self, end: date) -> WeatherPast | None:
        if self._history is None or self._history.first >= end:
            return None
        kept = min(len(self._history.tmean_c), (end - self._history.first).days)
        return climate_of(DailySeries(first=self._history.first, tmean_c=self._history.tmean_c[:kept]))


def _series(days: Mapping[date, float]) -> DailySeries | None:
    return DailySeries.from_days(days) if days else None
