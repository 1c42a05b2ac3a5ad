"""What healed jobs teach: how fast this course really healed, from the day it was called back to normal."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from statistics import fmean
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.outlook.believed import Believed, ToHeal
from swardcast.outlook.ledger import JobFacts
from swardcast.outlook.states import Lesson, Lessons
from swardcast.outlook.weather_view import WeatherView
from swardcast.records.club import Grass, Surface, SurfaceKind
from swardcast.records.log import BackToNormal
from swardcast.records.plan import Job
from swardcast.turf.healing import BACK_TO_NORMAL_LAG_DAYS, HOLES_CLOSED, growth_days_needed

__all__ = ["MOST_LOG_PACE", "lessons_of"]

Floats = NDArray[np.float64]
_Group = tuple[SurfaceKind, Grass]

MOST_LOG_PACE: Final = 1.2
"""Three times as fast or slow (as a logarithm); beyond that something else was at work: judgement."""

_HALVINGS: Final = 40


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Healed:
    """A surface that was called back to normal, and what it needed.

    Args:
        group: its kind and grass.
        start: day 0.
        need: growth days until its holes are closed, at the fitted pace.
        rim: growth days that its widest hole needs at least.
        lag: days from closed to back to normal, at the fitted pace.
        sums: growth since day 0 up to each day, growth days.
    """

    group: _Group
    start: date
    need: float
    rim: float
    lag: float
    sums: Floats

    def normal_on(self, log_pace: float) -> float:
        """The day of back to normal at a pace, in the weather that came, as an ordinal; past the horizon its last."""
        pace = math.exp(log_pace)
        places = np.arange(len(self.sums), dtype=np.float64)
        growth = max(self.need / pace, self.rim)
        return self.start.toordinal() + float(np.interp(growth, self.sums, places)) + self.lag / pace


@dataclass(frozen=True, slots=True, kw_only=True)
class _Call:
    """What one entry that calls surfaces back to normal tells of the slowest of them."""

    source: str
    normal_on: date
    taken: float
    computed: float
    log_pace: float


def lessons_of(
    facts: JobFacts, surfaces: Mapping[str, Surface], seen: Mapping[str, Believed], view: WeatherView
) -> Lessons:
    """Learn from the surfaces of a job that the log calls back to normal.

    Assumes that an entry waits for the slowest of its surfaces, so that only the kind of surface and grass of that one
    can learn from it; that the last word on a surface counts; and that the same pace governs the growth needed and the
    days from holes closed to back to normal.

    Args:
        facts: what the log says of the job.
        surfaces: the club's surfaces by id.
        seen: how those of the job that heal do so, as believed with nothing learnt, by id.
        view: the weather as known.

    Returns:
        One lesson for each kind of surface and grass that learns; none for work whose dates are not computed.
    """
    if facts.job.normal_after is not None:
        return ()
    called: dict[BackToNormal, list[_Healed]] = {}
    for name in facts.job.surfaces:
        normal = facts.surfaces[name].normal
        if normal is not None and name in seen:
            called.setdefault(normal, []).append(_healed(surfaces[name].kind, seen[name].left, view))
    calls: dict[_Group, list[_Call]] = {}
    for entry, healed in called.items():
        slowest = max(healed, key=lambda one: one.normal_on(0.0))
        normal_on = entry.head.true_from.date()
        if slowest.need > 0 and normal_on > slowest.start:
            told = _call(entry.head.id, normal_on, slowest, [one for one in healed if one.group == slowest.group])
            calls.setdefault(slowest.group, []).append(told)
    return tuple((kind, grass, _lesson(facts.job, told)) for (kind, grass), told in calls.items())


def _healed(kind: SurfaceKind, left: ToHeal, view: WeatherView) -> _Healed:
    healing = left.healing
    return _Healed(
        group=(kind, healing.grass),
        start=healing.start,
        need=growth_days_needed(healing.layers, HOLES_CLOSED),
        rim=left.disruption.rim_growth_days,
        lag=BACK_TO_NORMAL_LAG_DAYS if healing.lag_days > 0 else 0.0,
        sums=view.growth_sums(healing.start, healing.grass, healing.slow),
    )


def _call(source: str, normal_on: date, slowest: _Healed, surfaces: Sequence[_Healed]) -> _Call:
    alike = {(one.start, one.need, one.rim, one.lag, id(one.sums)): one for one in surfaces}
    low, high = -MOST_LOG_PACE, MOST_LOG_PACE
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        too_late = max(one.normal_on(middle) for one in alike.values()) > normal_on.toordinal()
        low, high = (middle, high) if too_late else (low, middle)
    start = slowest.start.toordinal()
    return _Call(
        source=source,
        normal_on=normal_on,
        taken=normal_on.toordinal() - start,
        computed=slowest.normal_on(0.0) - start,
        log_pace=(low + high) / 2,
    )


def _lesson(job: Job, calls: Sequence[_Call]) -> Lesson:
    last = max(calls, key=lambda call: (call.normal_on, call.source))
    return Lesson(
        job=job.id,
        title=job.title,
        source=last.source,
        normal_on=last.normal_on,
        days_taken=fmean(call.taken for call in calls),
        days_computed=fmean(call.computed for call in calls),
        log_pace=fmean(call.log_pace for call in calls),
    )
