"""How a surface heals after a job: sums of the work, growth since, what was seen, days to each milestone."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, datetime, timedelta
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.outlook.ledger import SurfaceFacts
from swardcast.outlook.states import Milestone, Recovery
from swardcast.outlook.weather_book import WeatherView
from swardcast.records.club import Surface, SurfaceKind
from swardcast.records.log import Eye, Observation
from swardcast.records.translate import SurfaceSums
from swardcast.turf.growth import GRASSES
from swardcast.turf.healing import (
    HEALING_RATE_PER_GROWTH_DAY,
    HOLES_CLOSED,
    HealingRate,
    combined_disruption,
    disruption_left,
    observed_rate,
)
from swardcast.turf.milestones import Disruption, MilestoneDays, default_log_spread

__all__ = ["disturbed_at", "is_validated", "recovery_of"]

_EYE: Final = {Eye.BY_EYE: 0.10, Eye.COUNTED: 0.03}  # standard error of the share left: judgement
_WEEK: Final = 7


def is_validated(surface: Surface, sums: SurfaceSums) -> bool:
    """Tell whether healing of this work on this surface was among the fitted records: greens, usual tines."""
    return surface.kind is SurfaceKind.GREEN and sums.validated and bool(sums.openings)


def recovery_of(
    surface: Surface,
    facts: SurfaceFacts,
    sums: SurfaceSums,
    *,
    start: date,
    before: float,
    view: WeatherView,
) -> Recovery | None:
    """Compute how a surface heals from a day on.

    Args:
        surface: the surface.
        facts: what the log says of the job there.
        sums: what the work does to it.
        start: day 0, done or planned.
        before: share still disturbed by earlier work on that day, 0 to 1.
        view: the weather as known.

    Returns:
        The recovery, or None where there is no grass or nothing was disturbed.
    """
    if surface.grass is None or sums.day_zero <= 0:
        return None
    grass = GRASSES[surface.grass.value]
    spread = default_log_spread(grass, validated=is_validated(surface, sums))
    prior = HealingRate(per_growth_day=HEALING_RATE_PER_GROWTH_DAY, log_spread=spread)
    rate, shown = _corrected(prior, facts.observations, surface=surface, start=start, view=view)
    day_zero = combined_disruption(before, sums.day_zero)
    days = view.milestones(
        start,
        surface.grass,
        Disruption(
            day_zero=day_zero,
            half_width_mm=sums.half_width_mm,
            rate=rate,
            lag_log_spread=spread,
            opened=bool(sums.openings) or before > HOLES_CLOSED,
        ),
    )
    passed = start <= view.today
    return Recovery(
        start=start,
        sums=sums,
        before=before,
        day_zero=day_zero,
        prior=prior,
        rate=rate,
        growth_so_far=view.growth_between(start, view.today, surface.grass) if passed else None,
        growth_a_week=_week_ahead(max(start, view.today), surface, view),
        samples=_by_milestone(days),
        shown=shown,
    )


def _by_milestone(days: MilestoneDays) -> dict[Milestone, NDArray[np.float64]]:
    return {
        Milestone.SETTLED: days.settled,
        Milestone.HOLES_CLOSED: days.holes_closed,
        Milestone.BACK_TO_NORMAL: days.back_to_normal,
    }


def _week_ahead(start: date, surface: Surface, view: WeatherView) -> float:
    if surface.grass is None:
        return 0.0
    return view.growth_between(start, start + timedelta(days=_WEEK), surface.grass)


def _corrected(
    prior: HealingRate, observations: Iterable[Observation], *, surface: Surface, start: date, view: WeatherView
) -> tuple[HealingRate, tuple[tuple[datetime, float, float], ...]]:
    rate = prior
    shown: list[tuple[datetime, float, float]] = []
    for seen in observations:
        if seen.share_left is None or surface.grass is None:
            continue
        on = seen.head.true_from.date()
        growth = view.growth_between(start, min(on, view.today), surface.grass)
        rate = observed_rate(rate, share_left=seen.share_left, growth_days=growth, eye=_EYE[seen.how])
        shown.append((seen.head.true_from, seen.share_left, growth))
    return rate, tuple(shown)


def disturbed_at(recovery: Recovery, surface: Surface, day: date, view: WeatherView) -> float:
    """Estimate the share of a surface that is still disturbed on a day.

    Args:
        recovery: how it heals.
        surface: the surface.
        day: the day.
        view: the weather as known.

    Returns:
        A fraction from 0 to 1.
    """
    if surface.grass is None or day <= recovery.start:
        return recovery.day_zero
    growth = view.growth_between(recovery.start, day, surface.grass)
    return disruption_left(recovery.day_zero, growth, recovery.rate.per_growth_day)
