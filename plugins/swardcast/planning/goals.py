"""How often a choice would have to be made in a year to reach what the club wants in a year, and what is left of it."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from swardcast.planning.amounts import Amounts
from swardcast.planning.done_this_year import DoneThisYear
from swardcast.records.planning import YearlyGoal
from swardcast.records.translate import sand_depth_mm
from swardcast.turf.geometry import passes_to_reach

__all__ = ["TimesAYear", "goal_sand_mm", "times_a_year"]

_ROUNDING: Final = 1e-9  # three times a third of the goal reach it


@dataclass(frozen=True, slots=True, kw_only=True)
class TimesAYear:
    """Times a year for each goal.

    None where the club has no such goal or nothing is computed, infinite where the choice never reaches it.

    Args:
        disturbed: for the share of the surface disturbed.
        removed: for the share of the surface removed.
        sand: for the sand spread.
    """

    disturbed: float | None
    removed: float | None
    sand: float | None

    @property
    def most(self) -> float | None:
        """Times that reach each goal of which something is computed; None where there is no such goal."""
        return max((times for times in (self.disturbed, self.removed, self.sand) if times is not None), default=None)


def times_a_year(
    goal: YearlyGoal, amounts: Amounts, *, density_t_per_m3: float, done: DoneThisYear | None = None
) -> TimesAYear:
    """Work out how often the work would have to be done.

    Args:
        goal: what the club wants in a year.
        amounts: what the work comes to each time; of sand the mean over the surfaces counts.
        density_t_per_m3: bulk density of the sand.
        done: what the year has brought already, or None to count a whole year.

    Returns:
        Whole times for each goal; 0 where it is reached already.

    Source: `turf.geometry.passes_to_reach`, rounded up: a part of a pass cannot be made.
    """
    disturbed, removed, sand_mm = (done.disturbed_fraction, done.removed_fraction, done.sand_mm) if done else (0, 0, 0)
    goal_mm = goal_sand_mm(goal, density_t_per_m3=density_t_per_m3)
    return TimesAYear(
        disturbed=_times(goal.disturbed_fraction, disturbed, amounts.disturbed_fraction),
        removed=_times(goal.removed_fraction, removed, amounts.removed_fraction),
        sand=_times(goal_mm, sand_mm, amounts.mean_mm(lambda one: one.spread_mm)),
    )


def goal_sand_mm(goal: YearlyGoal, *, density_t_per_m3: float) -> float | None:
    """Tell the layer of sand that is wanted in a year.

    Args:
        goal: what the club wants in a year.
        density_t_per_m3: bulk density of the sand.

    Returns:
        Millimetres, or None where no sand is wanted.
    """
    if goal.sand is None:
        return None
    return sand_depth_mm(goal.sand, area_m2=None, all_area_m2=None, density=density_t_per_m3)


def _times(goal: float | None, done: float, each_time: float | None) -> float | None:
    if goal is None or each_time is None:
        return None
    left = goal - done
    if left <= goal * _ROUNDING:
        return 0.0
    return float(math.ceil(passes_to_reach(left, each_time) - _ROUNDING)) if each_time > 0 else math.inf
