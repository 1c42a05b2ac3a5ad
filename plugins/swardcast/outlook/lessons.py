"""What healed jobs teach: how fast this course really healed, from the day it was called back to normal."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.outlook.held_back import slow_days
from swardcast.outlook.states import JobOutlook, Lesson, Recovery
from swardcast.outlook.weather_book import WeatherView
from swardcast.records.club import Grass, SurfaceKind
from swardcast.records.log import BackToNormal
from swardcast.turf.healing import BACK_TO_NORMAL_LAG_DAYS, HOLES_CLOSED, growth_days_needed

__all__ = ["lessons_of"]

Floats = NDArray[np.float64]

_MOST_LOG_PACE: Final = 1.2  # three times as fast or slow: beyond that something else was at work; judgement
_HALVINGS: Final = 40


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Healed:
    """A surface that was called back to normal, and what it needed.

    Args:
        start: day 0.
        need: growth days until its holes are closed, at the fitted pace.
        lag: days from closed to back to normal, at the fitted pace.
        sums: growth since day 0 up to each day, growth days.
    """

    start: date
    need: float
    lag: float
    sums: Floats

    def days(self, log_pace: float) -> float:
        """Days to back to normal at a pace, in the weather that came; past the horizon its last day."""
        pace = math.exp(log_pace)
        places = np.arange(len(self.sums), dtype=np.float64)
        return float(np.interp(self.need / pace, self.sums, places)) + self.lag / pace


def lessons_of(
    entry: BackToNormal, outlook: JobOutlook, view: WeatherView
) -> tuple[tuple[SurfaceKind, Grass, Lesson], ...]:
    """Learn from the surfaces that an entry calls back to normal.

    Assumes that an entry waits for the slowest of its surfaces, and that the same pace governs the growth needed and
    the days from holes closed to back to normal.

    Args:
        entry: the entry.
        outlook: its job as assessed at the moment of the entry, with nothing learnt.
        view: the weather as known then.

    Returns:
        One lesson for each kind of surface and grass among them; none for work whose dates are not computed.
    """
    if outlook.job.normal_after is not None:
        return ()
    groups: dict[tuple[SurfaceKind, Grass], list[_Healed]] = {}
    for work in outlook.surfaces:
        grass = work.surface.grass
        if work.surface.id in entry.surfaces and work.recovery is not None and grass is not None and work.done_at:
            groups.setdefault((work.surface.kind, grass), []).append(_healed(work.recovery, grass, view))
    lessons = ((key, _lesson(entry, outlook, healed)) for key, healed in groups.items())
    return tuple((kind, grass, lesson) for (kind, grass), lesson in lessons if lesson is not None)


def _healed(recovery: Recovery, grass: Grass, view: WeatherView) -> _Healed:
    slow = slow_days(recovery.held_back, recovery.start)
    return _Healed(
        start=recovery.start,
        need=growth_days_needed(recovery.layers, HOLES_CLOSED),
        lag=BACK_TO_NORMAL_LAG_DAYS if recovery.lag_days > 0 else 0.0,
        sums=view.growth_sums(recovery.start, grass, slow),
    )


def _lesson(entry: BackToNormal, outlook: JobOutlook, surfaces: Sequence[_Healed]) -> Lesson | None:
    first = min(one.start for one in surfaces)
    normal_on = entry.head.true_from.date()

    def last(log_pace: float) -> float:
        return max((one.start - first).days + one.days(log_pace) for one in surfaces)

    slowest = max(surfaces, key=lambda one: (one.start - first).days + one.days(0.0))
    if slowest.need <= 0 or normal_on <= slowest.start:
        return None
    low, high = -_MOST_LOG_PACE, _MOST_LOG_PACE
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if last(middle) > (normal_on - first).days else (low, middle)
    return Lesson(
        job=outlook.job.id,
        title=outlook.job.title,
        source=entry.head.id,
        normal_on=normal_on,
        days_taken=(normal_on - slowest.start).days,
        days_computed=slowest.days(0.0),
        log_pace=(low + high) / 2,
    )
