"""What healed jobs teach: how fast this course really healed, from the day it was called back to normal."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.outlook.held_back import slow_days
from swardcast.outlook.states import JobOutlook, Lesson, Recovery, SurfaceWork
from swardcast.outlook.weather_book import WeatherView
from swardcast.records.club import Grass, SurfaceKind
from swardcast.records.log import BackToNormal
from swardcast.turf.healing import BACK_TO_NORMAL_LAG_DAYS, HOLES_CLOSED, growth_days_needed

__all__ = ["lessons_of"]

Floats = NDArray[np.float64]

_MOST_LOG_PACE: Final = 1.2  # three times as fast or slow: beyond that something else was at work; judgement
_HALVINGS: Final = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class _Healed:
    """A surface that was called back to normal: days taken, days computed, logarithm of its pace."""

    taken: float
    computed: float
    log_pace: float


def lessons_of(
    entry: BackToNormal, outlook: JobOutlook, view: WeatherView
) -> tuple[tuple[SurfaceKind, Grass, Lesson], ...]:
    """Learn from the surfaces that an entry calls back to normal.

    Assumes that the same pace governs the growth needed and the days from holes closed to back to normal.

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
        if work.surface.id in entry.surfaces and work.recovery is not None and grass is not None:
            healed = _healed(work, work.recovery, grass, entry, view)
            if healed is not None:
                groups.setdefault((work.surface.kind, grass), []).append(healed)
    return tuple((kind, grass, _lesson(entry, outlook, healed)) for (kind, grass), healed in groups.items())


def _lesson(entry: BackToNormal, outlook: JobOutlook, healed: Sequence[_Healed]) -> Lesson:
    return Lesson(
        job=outlook.job.id,
        title=outlook.job.title,
        source=entry.head.id,
        normal_on=entry.head.true_from.date(),
        days_taken=fmean(one.taken for one in healed),
        days_computed=fmean(one.computed for one in healed),
        log_pace=fmean(one.log_pace for one in healed),
    )


def _healed(
    work: SurfaceWork, recovery: Recovery, grass: Grass, entry: BackToNormal, view: WeatherView
) -> _Healed | None:
    taken = (entry.head.true_from.date() - recovery.start).days
    need = growth_days_needed(recovery.layers, HOLES_CLOSED)
    if taken <= 0 or need <= 0 or work.done_at is None:
        return None
    lag = BACK_TO_NORMAL_LAG_DAYS if recovery.lag_days > 0 else 0.0
    slow = slow_days(recovery.held_back, recovery.start)
    sums = np.concatenate([[0.0], np.cumsum(view.growth_from(recovery.start, grass, slow=slow).mean(axis=0))])
    low, high = -_MOST_LOG_PACE, _MOST_LOG_PACE
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if _days(sums, need, lag, middle) > taken else (low, middle)
    return _Healed(taken=taken, computed=_days(sums, need, lag, 0.0), log_pace=(low + high) / 2)


def _days(sums: Floats, need: float, lag: float, log_pace: float) -> float:
    """Days to back to normal at a pace, in the weather that came; past the horizon its last day."""
    pace = math.exp(log_pace)
    return float(np.interp(need / pace, sums, np.arange(len(sums), dtype=np.float64))) + lag / pace
