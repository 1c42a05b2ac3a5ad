"""The weather as it was known at one moment: what grew, and what is likely to grow."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from typing import TYPE_CHECKING, Final

import numpy as np
from numpy.typing import NDArray

from swardcast.outlook.weather_days import LONGEST_DAYS, DaysGone, DaysToCome, SlowDays, slowed
from swardcast.records.club import Grass
from swardcast.turf.climate import FADE_DAYS
from swardcast.turf.ensemble import HORIZON_DAYS, WeatherPast, weather_members
from swardcast.turf.growth import GRASSES, growth_fraction
from swardcast.turf.milestones import Disruption, MilestoneDays, milestone_days_of_each
from swardcast.turf.series import DailySeries

if TYPE_CHECKING:
    from swardcast.outlook.believed import Believed  # these know the weather
    from swardcast.outlook.recovery import Dated

__all__ = ["LOOK_AHEAD_DAYS", "SlowDays", "WeatherView"]

Floats = NDArray[np.float64]

LOOK_AHEAD_DAYS: Final = 366 + HORIZON_DAYS
"""Days from a moment on for which weather is laid out: a job planned up to a year ahead, and its healing."""
_LOOK_BACK_DAYS: Final = 300  # how long before a moment temperatures are told


@dataclass(slots=True, eq=False)
class WeatherView:
    """The weather as it was known at one moment.

    Args:
        today: the first day not over.
        past: the place's climate and past years.
        past_years: how many of them serve as members.
        observed: days observed, or None.
        forecast: days foretold, from today on, or None.
        issued_at: when the forecast in use was issued, or None.
        gone: growth of the days that are over.
        to_come: growth of the days that neither what was observed nor the forecast reaches.
        dated: what was asked of this view before, kept by `outlook.recovery`.
    """

    today: date
    past: WeatherPast
    past_years: int
    observed: DailySeries | None
    forecast: DailySeries | None
    issued_at: datetime | None
    gone: DaysGone
    to_come: DaysToCome
    _near: dict[Grass, tuple[Floats, Floats]] = field(default_factory=dict)
    _sums: dict[tuple[date, Grass, SlowDays], Floats] = field(default_factory=dict)
    dated: dict[Believed, Dated] = field(default_factory=dict)

    def growth_from(self, start: date, grass: Grass, days: int = HORIZON_DAYS, slow: SlowDays = ()) -> Floats:
        """Give the growth of each day from a day on.

        Args:
            start: first day.
            grass: the grass.
            days: how many days.
            slow: days on which less of the growth was left.

        Returns:
            Growth, shape (members, days), 0 to 1; fewer days where they reach further ahead than weather is looked for.
        """
        over = self.days_over(start, days)
        ahead = [growth for growth, _ in self._ahead(start, grass, days)]
        known = np.broadcast_to(self.gone.growth(start, over, grass), (self.gone.members, over))
        return slowed(np.hstack([known, *ahead]), start, slow)

    def days_over(self, start: date, days: int) -> int:
        """Tell how many of some days are over, so that they are the same in all members.

        Args:
            start: the first of them.
            days: how many there are.

        Returns:
            A number from 0 to `days`.
        """
        return min(max(0, (self.today - start).days), days)

    def _ahead(self, start: date, grass: Grass, days: int) -> list[tuple[Floats, Floats]]:
        """Growth and its mean, of the days from today on: first those that only this view knows, then the others."""
        near, far = self._near_days(grass), self.to_come.growth(grass)
        first = max(0, (start - self.today).days)
        last = max(first, min((start - self.today).days + days, LOOK_AHEAD_DAYS))
        parts, offset = [], (self.today - self.to_come.first).days
        reach = near[0].shape[1]
        if first < reach:
            parts.append((near[0][:, first:last], near[1][first:last]))
        if last > reach:
            begin = offset + max(first, reach)
            parts.append((far[0][:, begin : offset + last], far[1][begin : offset + last]))
        return parts

    def _near_days(self, grass: Grass) -> tuple[Floats, Floats]:
        """The same of the days from today on that the last days observed, or the forecast, still reach."""
        if grass not in self._near:
            told = (self.forecast.after_last - self.today).days if self.forecast is not None else 0
            days = min(max(FADE_DAYS, told), LOOK_AHEAD_DAYS)
            growth = growth_fraction(self._tmean_c(self.today, days), GRASSES[grass.value].curve)
            self._near[grass] = growth, growth.mean(axis=0)
        return self._near[grass]

    def _tmean_c(self, start: date, days: int) -> Floats:
        """Temperatures of the members from a day on that is not after today, shape (members, days), C."""
        return weather_members(
            self.past, self.observed, self.forecast, start=start, today=self.today, days=days
        ).tmean_c

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
        growth = self.growth_from(start, grass, slow=slow)
        return milestone_days_of_each(growth, disruptions, self.days_over(start, HORIZON_DAYS))

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
            self._sums[key] = np.concatenate([[0.0], np.cumsum(self._means(start, grass, slow))])
        return self._sums[key]

    def _means(self, start: date, grass: Grass, slow: SlowDays) -> Floats:
        if slow:
            return np.asarray(self.growth_from(start, grass, LONGEST_DAYS, slow).mean(axis=0))
        over = self.days_over(start, LONGEST_DAYS)
        ahead = [mean for _, mean in self._ahead(start, grass, LONGEST_DAYS)]
        return np.concatenate([self.gone.means(start, over, grass), *ahead])

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

    def no_later(self, day: date) -> date:
        """That day, or today where it is still to come."""
        return min(day, self.today)

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
        first = max(start, self.today - timedelta(days=_LOOK_BACK_DAYS))
        skipped = max(0, (first - self.today).days)  # what is laid out begins today at the latest
        days = max(1, (end - start).days)
        return float(self._tmean_c(first - timedelta(days=skipped), skipped + days)[:, skipped:].mean())

    def warmth(self, start: date) -> float | None:
        """Compare the observed days since a day with the usual: degrees above (or below) it, or None."""
        days = (self.today - start).days
        if self.observed is None or days <= 0:
            return None
        difference = self.observed.between(start, days) - self.past.usual_c(start, days)
        known = difference[~np.isnan(difference)]
        return float(known.mean()) if len(known) else None
