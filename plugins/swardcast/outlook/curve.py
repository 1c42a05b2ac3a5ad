"""The curve of healing: the share of the worked surface that is still disturbed, from the same sums as the dates."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.outlook.held_back import slow_days
from swardcast.outlook.job_ranges import open_works, sampled_recoveries, samples_of_last
from swardcast.outlook.sightings import CoverSeen, MarksSeen
from swardcast.outlook.states import DateRange, JobOutlook, Milestone, Recovery, SurfaceWork, Work, date_range
from swardcast.outlook.weather_view import WeatherView
from swardcast.records.club import Grass
from swardcast.turf.curve import shares_left
from swardcast.turf.ensemble import HORIZON_DAYS
from swardcast.turf.healing import disruption_left
from swardcast.turf.milestones import ALLOW_UNTIL, EARLY, LIKELY, Disruption, days_at

__all__ = ["Curve", "DayLeft", "Drawn", "Seen", "curve_of", "drawn_works", "seen_of"]

Floats = NDArray[np.float64]

_AS_FAR_BEHIND: Final = 0.8  # of what is left on the surface furthest behind counts as about the same: judgement


@dataclass(frozen=True, slots=True, kw_only=True)
class DayLeft:
    """The share that is still disturbed on the morning of a day, on the surface that is furthest behind.

    Args:
        day: the day.
        low: 1 chance in 10 that no more is left, 0 to 1.
        likely: an even chance that no more is left.
        high: 9 chances in 10 that no more is left.
    """

    day: date
    low: float
    likely: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """The surfaces of a job that a curve speaks for, with what they are to reach.

    Args:
        works: the surfaces that are not over, or all of them where the job is over.
        recoveries: how each of them heals, in the same order.
    """

    works: tuple[SurfaceWork, ...]
    recoveries: tuple[Recovery, ...]

    @property
    def begins(self) -> date:
        """The day on which the last of them has been worked on, so that all of them heal."""
        return max(recovery.start for recovery in self.recoveries)

    def reaches(self, milestone: Milestone) -> DateRange:
        """Date a milestone for the last of them, from the days that the curve is made of."""
        return date_range(*samples_of_last(self.recoveries, milestone))


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """What a log entry saw.

    Args:
        day: the day.
        share: share of the surface that was still disturbed, 0 to 1; of several surfaces the largest.
        is_of_the_last: whether it is of a surface that was about as far behind as any on that day.
    """

    day: date
    share: float
    is_of_the_last: bool


Curve = tuple[DayLeft, ...]
"""Consecutive days."""


def drawn_works(outlook: JobOutlook) -> Drawn | None:
    """Choose the surfaces for a curve: those whose dates are the job's.

    Args:
        outlook: how the job stands.

    Returns:
        The surfaces, or None where one of them has no computed healing, so that no one curve has the job's dates.
    """
    works = open_works(outlook.surfaces) or [work for work in outlook.surfaces if work.work is not Work.CALLED_OFF]
    recoveries = sampled_recoveries(works)
    if not recoveries or len(recoveries) < len(works):
        return None
    return Drawn(works=tuple(works), recoveries=tuple(recoveries))


def curve_of(drawn: Drawn, view: WeatherView, until: date) -> Curve:
    """Follow the share still disturbed day by day, on the surface that is furthest behind.

    Assumes the same weather and the same error of the model for all surfaces, as their dates do.

    Args:
        drawn: the surfaces.
        view: the weather as known.
        until: the last day wanted; the horizon of the sums ends it too.

    Returns:
        The days from that on which all of them have been worked on; the last surface is at a milestone's threshold or
        below it from the very days on that `Drawn.reaches` has as early, likely and allow until.
    """
    begins = drawn.begins
    days = min((until - begins).days, HORIZON_DAYS)
    if days < 0:
        return ()
    known = min(max(0, (view.today - begins).days + 1), days + 1)  # mornings that no weather to come changes
    past = _of_the_last(drawn, view, begins, slice(0, known), members=slice(0, 1))
    to_come = _of_the_last(drawn, view, begins, slice(known, days + 1), members=slice(None))
    return tuple(_day_left(begins + timedelta(days=place), one) for place, one in enumerate([*past, *to_come]))


def _of_the_last(drawn: Drawn, view: WeatherView, begins: date, days: slice, members: slice) -> list[Floats]:
    """Equally likely shares of each day, the largest over the surfaces."""
    if days.start >= days.stop:
        return []
    largest: Floats | None = None
    seen: set[tuple[object, ...]] = set()
    for work, recovery in zip(drawn.works, drawn.recoveries, strict=True):
        grass = work.surface.grass
        key = (grass, recovery.start, recovery.layers, recovery.pace, recovery.rim_growth_days, recovery.held_back)
        if grass is None or key in seen:
            continue
        seen.add(key)
        sums = _growth_sums(recovery, grass, view, (begins - recovery.start).days, days)[members]
        left = shares_left(sums, _disruption(recovery))
        largest = left if largest is None else np.maximum(largest, left)
    return [] if largest is None else [largest[:, :, place].ravel() for place in range(largest.shape[2])]


def _growth_sums(recovery: Recovery, grass: Grass, view: WeatherView, shift: int, days: slice) -> Floats:
    """Growth gained before each day wanted, counted from the surface's own day 0."""
    last = shift + days.stop - 1
    growth = view.growth_from(recovery.start, grass, last, slow_days(recovery.held_back, recovery.start))
    sums = np.concatenate([np.zeros((len(growth), 1)), np.cumsum(growth, axis=1)], axis=1)
    return np.asarray(sums[:, shift + days.start : shift + days.stop])


def _disruption(recovery: Recovery) -> Disruption:
    return Disruption(layers=recovery.layers, rim_growth_days=recovery.rim_growth_days, pace=recovery.pace)


def _day_left(day: date, shares: Floats) -> DayLeft:
    low, likely, high = (share or 0.0 for share in days_at(shares, EARLY, LIKELY, ALLOW_UNTIL))
    return DayLeft(day=day, low=low, likely=likely, high=high)


def seen_of(drawn: Drawn, view: WeatherView) -> tuple[Seen, ...]:
    """List what was seen of the marks and of the turf, as shares of the surface.

    Assumes that a share of the first marks is that share of what was disturbed on day 0.

    Args:
        drawn: the surfaces.
        view: the weather as known.

    Returns:
        One for each day and log entry, oldest first. The roll tells no share of the surface.
    """
    found: dict[tuple[date, str], Seen] = {}
    for work, recovery in zip(drawn.works, drawn.recoveries, strict=True):
        for look in recovery.looks:
            match look.what:
                case MarksSeen(share_left=share):
                    left = share * recovery.day_zero
                case CoverSeen(share=share):
                    left = 1 - share
                case _:
                    continue
            day = look.at.date()
            last = max(
                _expected(one, there, view, day) for one, there in zip(drawn.works, drawn.recoveries, strict=True)
            )
            of_the_last = _expected(work, recovery, view, day) >= _AS_FAR_BEHIND * last
            other = found.get((day, look.source), Seen(day=day, share=0.0, is_of_the_last=False))
            found[day, look.source] = Seen(
                day=day, share=max(left, other.share), is_of_the_last=of_the_last or other.is_of_the_last
            )
    return tuple(found[key] for key in sorted(found))


def _expected(work: SurfaceWork, recovery: Recovery, view: WeatherView, day: date) -> float:
    """The share that the sum expects on a day, before the work all that it will disturb."""
    if work.surface.grass is None:
        return 0.0
    slow = slow_days(recovery.held_back, recovery.start)
    growth = view.growth_between(recovery.start, day, work.surface.grass, slow)
    return disruption_left(recovery.layers, growth, recovery.pace.middle)
