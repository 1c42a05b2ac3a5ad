"""When a surface is healed: the dates that follow from what is believed of it and the weather of one view."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.outlook.believed import Believed, Left
from swardcast.outlook.sightings import Healing, contradictions
from swardcast.outlook.states import DateRange, Milestone, Recovery, date_range
from swardcast.outlook.weather_book import SlowDays, WeatherView
from swardcast.records.club import Grass
from swardcast.records.translate import SurfaceSums
from swardcast.turf.healing import HOLES_CLOSED, disruption_left, growth_at_pace
from swardcast.turf.milestones import Disruption, MilestoneDays

__all__ = ["Dated", "recovery_of", "work_out"]

_WEEK: Final = 7
_WEEKS_SHOWN: Final = 8


def recovery_of(sums: SurfaceSums, before: Left, seen: Believed, view: WeatherView) -> Recovery:
    """Date how a surface heals.

    Args:
        sums: what the work does to it.
        before: what earlier work has left on day 0.
        seen: what is believed.
        view: the weather as known.

    Returns:
        The recovery.
    """
    left, healing = seen.left, seen.left.healing
    disruption = replace(left.disruption, pace=seen.pace)
    dated = _dated(view, healing, disruption)
    return Recovery(
        start=healing.start,
        sums=sums,
        before=disruption_left(before.layers),
        layers=healing.layers,
        day_zero=disruption_left(healing.layers),
        usual=left.usual,
        prior=left.disruption.pace,
        pace=seen.pace,
        lessons=left.lessons,
        rim_growth_days=disruption.rim_growth_days,
        lag_days=healing.lag_days,
        growth_so_far=_gained(healing, view) if healing.start <= view.today else None,
        weeks_ahead=dated.weeks_ahead,
        closes_on=dated.closes_on,
        samples=dated.samples,
        ranges=dated.ranges,
        looks=seen.looks,
        contradictions=tuple(contradictions(seen.looks)),
        wild=seen.wild,
        held_back=left.held_back,
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Dated:
    """What follows from day 0, the grass, the disruption and the weather of one view."""

    samples: Mapping[Milestone, NDArray[np.float64]]
    ranges: Mapping[Milestone, DateRange]
    weeks_ahead: tuple[float, ...]
    closes_on: date | None


def work_out(view: WeatherView, asked: Iterable[tuple[Healing, Disruption]]) -> None:
    """Work out dates before they are wanted: those of one day and grass together, which is much faster.

    Args:
        view: the weather as known, which remembers them.
        asked: what has to heal, in each case.
    """
    alike: dict[tuple[date, Grass, SlowDays], dict[Disruption, Healing]] = {}
    for healing, disruption in asked:
        if (healing.start, healing.grass, disruption, healing.slow) not in view.dated:
            alike.setdefault((healing.start, healing.grass, healing.slow), {})[disruption] = healing
    for (start, grass, slow), cases in alike.items():
        found = view.milestones_of_each(start, grass, tuple(cases), slow)
        for (disruption, healing), days in zip(cases.items(), found, strict=True):
            view.dated[start, grass, disruption, slow] = _dates_of(days, healing, disruption, view)


def _dated(view: WeatherView, healing: Healing, disruption: Disruption) -> Dated:
    """Work it out; the same question asked again costs nothing."""
    work_out(view, [(healing, disruption)])
    return view.dated[healing.start, healing.grass, disruption, healing.slow]


def _dates_of(days: MilestoneDays, healing: Healing, disruption: Disruption, view: WeatherView) -> Dated:
    samples = {
        Milestone.SETTLED: days.settled,
        Milestone.HOLES_CLOSED: days.holes_closed,
        Milestone.BACK_TO_NORMAL: days.back_to_normal,
    }
    need = growth_at_pace(disruption.layers, HOLES_CLOSED, disruption.pace.middle, disruption.rim_growth_days)
    return Dated(
        samples=samples,
        ranges={name: date_range(values, healing.start) for name, values in samples.items()},
        weeks_ahead=_weeks_ahead(healing, view),
        closes_on=_closes_on(healing, view, need),
    )


def _gained(healing: Healing, view: WeatherView) -> float:
    return view.growth_between(healing.start, view.today, healing.grass, healing.slow)


def _weeks_ahead(healing: Healing, view: WeatherView) -> tuple[float, ...]:
    sums = view.growth_sums(healing.start, healing.grass, healing.slow)
    first = max(0, (view.today - healing.start).days)
    marks = sums[[min(first + week * _WEEK, len(sums) - 1) for week in range(_WEEKS_SHOWN + 1)]]
    return tuple(np.diff(marks).tolist())


def _closes_on(healing: Healing, view: WeatherView, need: float) -> date | None:
    sums = view.growth_sums(healing.start, healing.grass, healing.slow)
    reached = int(np.searchsorted(sums, need - 1e-9))
    return healing.start + timedelta(days=reached) if reached < len(sums) else None
