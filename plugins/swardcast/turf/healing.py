"""Healing: how much of a surface is disturbed after the work, and how much growth mends it."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from swardcast.turf.sand import hidden_fraction

__all__ = [
    "BACK_TO_NORMAL_LAG_DAYS",
    "COVER_COMPLETE",
    "HEALING_RATE_PER_GROWTH_DAY",
    "HOLES_CLOSED",
    "LOG_SPREAD",
    "LOG_SPREAD_NOT_FITTED",
    "SETTLED",
    "SOLID_LASTING_SHARE",
    "HealingRate",
    "Opening",
    "combined_disruption",
    "day_zero_disruption",
    "disruption_left",
    "growth_days_needed",
    "observed_rate",
]

HEALING_RATE_PER_GROWTH_DAY: Final = 0.34
"""Share of the disruption that a growth day mends, per growth day; bootstrap 10-90 % 0.31 to 0.36.

Fitted on 26 published recoveries by maximum likelihood; used for D from 0.01 to 0.9.
"""
LOG_SPREAD: Final = 0.24
"""Log-normal spread of the true recovery about the computed one (leave-one-out on the same 26 recoveries)."""

LOG_SPREAD_NOT_FITTED: Final = 0.40
"""Spread where nothing was fitted (warm-season grass, meadow-grass, deep tining, fairways, tees): judgement."""

SETTLED: Final = 0.05
"""Share of the surface still disturbed when most putts roll without being turned: judgement."""
HOLES_CLOSED: Final = 0.02
"""Share still disturbed when holes count as closed: judgement."""
COVER_COMPLETE: Final = 0.01
"""Share still disturbed at complete cover: judgement, after the 99 % cover of Ervin & Nichols 2010."""

BACK_TO_NORMAL_LAG_DAYS: Final = 13.0
"""Calendar days from holes closed to rolling as before; bootstrap 10-90 % 11 to 15, from 5 records only."""

SOLID_LASTING_SHARE: Final = 0.5
"""Share of a solid tine's hole that lasts, since nothing is removed and part closes by itself: judgement."""

RIM_GROWTH_MM_PER_GROWTH_DAY: Final = 0.9
"""Growth of a hole's rim, mm per growth day; pitch marks of 16 to 29 mm mend in 10 to 18 days (0.5 to 1.0 mm/day),
Young, Richardson & Karcher 2010, ASA abstract 76-14, and Bigelow et al. 2008, European Turfgrass Society p. 49."""

_STEP, _STEPS = 0.05, 160  # grid of the observation's weight: 8 prior spreads either side


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """Holes or grooves that one operation leaves in a surface.

    Args:
        area_fraction: share of the surface, 0 to 1.
        lasting_share: 1 where material was removed or cut, 0.5 for solid tines.
        half_width_mm: radius of a hole or half the width of a groove, 0 or more.
        room_mm: sand it takes, as a depth over the whole surface, 0 or more.
    """

    area_fraction: float
    lasting_share: float
    half_width_mm: float
    room_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class HealingRate:
    """How fast a surface heals, and how well that is known.

    Args:
        per_growth_day: rate, above 0.
        log_spread: standard deviation of the logarithm of the true rate, 0 or more.
    """

    per_growth_day: float = HEALING_RATE_PER_GROWTH_DAY
    log_spread: float = LOG_SPREAD


def day_zero_disruption(openings: Iterable[Opening], surplus_mm: float) -> float:
    """Estimate the share of a surface that is disturbed on the day of the work.

    Assumes that holes, grooves and sand fall on each other at random.

    Args:
        openings: what each operation left.
        surplus_mm: sand that stays on the surface, 0 or more.

    Returns:
        D0, a fraction from 0 to 1.

    Source: Swardcast's healing model: D0 = 1 - (1 - c) x product of (1 - K A); fitted on the records in
        tests/scenarios.
    """
    clear = 1 - hidden_fraction(surplus_mm)
    for opening in openings:
        clear *= 1 - min(1.0, opening.lasting_share * opening.area_fraction)
    return 1 - clear


def combined_disruption(old: float, new: float) -> float:
    """Add a second job's disruption to a surface that has not healed.

    Args:
        old: share still disturbed, 0 to 1.
        new: share that the new work disturbs, 0 to 1.

    Returns:
        A fraction from 0 to 1, at least the larger of the two.

    Source: arithmetic, 1 - (1 - D_old)(1 - D_new).
    """
    return 1 - (1 - old) * (1 - new)


def disruption_left(day_zero: float, growth_days: float, rate_per_growth_day: float) -> float:
    """Estimate the share of a surface that is still disturbed.

    Args:
        day_zero: D0, 0 to 1.
        growth_days: growth since the work, 0 or more.
        rate_per_growth_day: healing rate, above 0.

    Returns:
        A fraction from 0 to `day_zero`.

    Source: Swardcast's healing model: D = D0 exp(-k G).
    """
    return day_zero * math.exp(-rate_per_growth_day * growth_days)


def growth_days_needed(
    day_zero: float, threshold: float, *, rate_per_growth_day: float, half_width_mm: float = 0.0
) -> float:
    """Work out the growth that brings the disruption down to a threshold.

    Assumes the rim of a large hole must also grow in; that seldom binds below 19 mm.

    Args:
        day_zero: D0, 0 to 1.
        threshold: share still disturbed at the milestone, above 0.
        rate_per_growth_day: healing rate, above 0.
        half_width_mm: the widest hole's radius, 0 or more; give 0 for milestones that do not wait for the rim.

    Returns:
        Growth days, 0 or more.

    Source: Swardcast's healing model: ln(D0 / threshold) / k, and at least radius / 0.9 mm per growth day.
    """
    if day_zero <= threshold:
        return 0.0
    by_cover = math.log(day_zero / threshold) / rate_per_growth_day
    return max(by_cover, half_width_mm / RIM_GROWTH_MM_PER_GROWTH_DAY)


def observed_rate(prior: HealingRate, *, share_left: float, growth_days: float, eye: float) -> HealingRate:
    """Let what was seen on the course correct the healing rate, no further than its weight allows.

    Args:
        prior: what was believed before.
        share_left: share of the day-0 disruption that is still there, 0 to 1.
        growth_days: growth from the work to the observation; with none, nothing can be learnt.
        eye: standard error of the share: 0.10 for a guess by eye, 0.03 for a counted sample (judgement).

    Returns:
        The rate after the observation, with a spread no wider than before.

    Source: Bayes' rule on a grid of log k: a normal prior, a normal error of the share seen (Gelman et al. 2013,
        Bayesian Data Analysis, 3rd ed., grid approximation). The closed form that weighs an observation by the error
        at the share seen, e = eye / (u (-ln u)), was left: it trusts a surprising look so little that worse news can
        bring an earlier date.
    """
    if growth_days <= 0 or prior.log_spread <= 0:
        return prior
    steps = [place * _STEP for place in range(-_STEPS, _STEPS + 1)]  # of log k, in prior spreads
    log_weights = []
    for step in steps:
        foretold = math.exp(-prior.per_growth_day * math.exp(step * prior.log_spread) * growth_days)
        log_weights.append(-0.5 * step**2 - 0.5 * ((share_left - foretold) / eye) ** 2)
    most = max(log_weights)
    weights = [math.exp(log_weight - most) for log_weight in log_weights]
    total = sum(weights)
    mean = sum(w * step for w, step in zip(weights, steps, strict=True)) / total
    variance = sum(w * (step - mean) ** 2 for w, step in zip(weights, steps, strict=True)) / total
    return HealingRate(
        per_growth_day=prior.per_growth_day * math.exp(mean * prior.log_spread),
        log_spread=prior.log_spread * min(1.0, math.sqrt(variance)),
    )
