"""The columns of a comparison: names that machines and `--sort` know, with plain values."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from datetime import date
from statistics import fmean
from typing import Final

from swardcast.outlook.states import DateRange, Milestone
from swardcast.planning.compare import Compared

__all__ = ["COLUMNS", "COSTS", "Value", "cost_without", "in_order"]

Value = float | str | date | None


def _holes_each(row: Compared) -> float | None:
    holes = [one.holes for one in row.amounts.surfaces if one.holes is not None]
    return fmean(holes) if len(holes) == len(row.amounts.surfaces) else None


def _deepest_removed(row: Compared) -> float | None:
    depths = row.amounts.removed_depths_mm
    return None if depths is None else max(depths, default=0.0)


def _computed(row: Compared, milestone: Milestone) -> DateRange | None:
    """A usual time has no chances, so that none of its days is a likely one or one to allow until."""
    given = row.range_of(milestone)
    return given if given.is_given and not row.is_usual_time else None


def _likely(milestone: Milestone) -> Callable[[Compared], Value]:
    return lambda row: given.likely if (given := _computed(row, milestone)) is not None else None


def _until(milestone: Milestone) -> Callable[[Compared], Value]:
    return lambda row: given.allow_until if (given := _computed(row, milestone)) is not None else None


def _usual(row: Compared) -> DateRange | None:
    return row.range_of(Milestone.BACK_TO_NORMAL) if row.is_usual_time else None


def _days(of_milestone: Callable[[Milestone], Callable[[Compared], Value]]) -> Callable[[Compared], Value]:
    day = of_milestone(Milestone.BACK_TO_NORMAL)

    def days(row: Compared) -> Value:
        found = day(row)
        return row.days_until(found) if isinstance(found, date) else None

    return days


COLUMNS: Final[dict[str, Callable[[Compared], Value]]] = {
    "number": lambda row: row.number,
    "choice": lambda row: row.choice.name,
    "surfaces_a_day": lambda row: row.disturbance.outlook.job.surfaces_a_day,
    "holes_each": _holes_each,
    "holes": lambda row: row.amounts.holes,
    "disturbed_fraction": lambda row: row.amounts.disturbed_fraction,
    "removed_fraction": lambda row: row.amounts.removed_fraction,
    "removed_depth_mm": _deepest_removed,
    "spread_mm": lambda row: row.amounts.mean_mm(lambda one: one.spread_mm),
    "room_mm": lambda row: row.amounts.room_mm,
    "fits_mm": lambda row: row.amounts.mean_mm(lambda one: one.fits_mm),
    "surplus_mm": lambda row: row.amounts.mean_mm(lambda one: one.surplus_mm),
    "sand_t": lambda row: row.amounts.sand_t,
    "fits_t": lambda row: row.amounts.fits_t,
    "surplus_t": lambda row: row.amounts.surplus_t,
    "sand_cost": lambda row: row.cost.sand if row.cost else None,
    "work_cost": lambda row: row.cost.work if row.cost else None,
    "cost": lambda row: row.cost.in_all if row.cost else None,
    "organic_after_fraction": lambda row: row.organic_after,
    "settled_likely": _likely(Milestone.SETTLED),
    "settled_allow_until": _until(Milestone.SETTLED),
    "closed_likely": _likely(Milestone.HOLES_CLOSED),
    "closed_allow_until": _until(Milestone.HOLES_CLOSED),
    "normal_likely": _likely(Milestone.BACK_TO_NORMAL),
    "normal_allow_until": _until(Milestone.BACK_TO_NORMAL),
    "usual_from": lambda row: usual.early if (usual := _usual(row)) is not None else None,
    "usual_to": lambda row: usual.allow_until if (usual := _usual(row)) is not None else None,
    "days_likely": _days(_likely),
    "days_allow_until": _days(_until),
    "expected_days": lambda row: row.disturbance.expected_days(),
    "fixtures_touched": lambda row: row.fixtures_touched,
    "times_disturbed": lambda row: row.times.disturbed,
    "times_removed": lambda row: row.times.removed,
    "times_sand": lambda row: row.times.sand,
    "times_left_disturbed": lambda row: row.times_left.disturbed,
    "times_left_removed": lambda row: row.times_left.removed,
    "times_left_sand": lambda row: row.times_left.sand,
    "days_a_year": lambda row: row.days_a_year,
}
"""Values of a row, by name; None where they are not known or were not asked for, infinite for "never"."""


COSTS: Final = frozenset({"sand_cost", "work_cost", "cost"})
"""Those that are money."""


def cost_without(row: Compared) -> str | None:
    """Name what a cost leaves out.

    Args:
        row: the choice.

    Returns:
        Kinds of work, as a plan has them, and sand of which nobody typed how much; None where nothing is left out.
    """
    if row.cost is None:
        return None
    sand = [f"sand of {kind.value}" for kind in row.cost.sand_without]
    return ", ".join([*(kind.value for kind in row.cost.without), *sand]) or None


def in_order(
    rows: Sequence[Compared], value: Callable[[Compared], Value], *, descending: bool = False, of_cost: bool = False
) -> tuple[Compared, ...]:
    """Sort a comparison by a value.

    Args:
        rows: the rows.
        value: the value of a row, as those of `COLUMNS`.
        descending: whether the largest comes first.
        of_cost: whether it is a cost, so that one that leaves something out comes after those that are whole.

    Returns:
        The rows; those without a value come last either way, and equal ones keep their order.
    """

    def is_part(row: Compared) -> bool:
        return of_cost and cost_without(row) is not None

    known = [row for row in rows if value(row) is not None]
    ordered = sorted(known, key=lambda row: _as_key(value(row)), reverse=descending)
    return (
        *(row for row in ordered if not is_part(row)),
        *(row for row in ordered if is_part(row)),
        *(row for row in rows if value(row) is None),
    )


def _as_key(value: Value) -> tuple[float, str]:
    match value:
        case str():
            return 0.0, value.casefold()
        case date():
            return float(value.toordinal()), ""
        case None:
            return math.inf, ""
        case _:
            return float(value), ""
