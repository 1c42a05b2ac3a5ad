"""What a way of doing a job costs: its sand, and the work as far as it was typed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from swardcast.planning.amounts import Amounts
from swardcast.records.club import SurfaceKind
from swardcast.records.operations import Dressing, Grooving, Kind, Operation, SandInjection, Tining
from swardcast.records.planning import Choice, Planning

__all__ = ["Cost", "cost_of", "cost_of_work", "sand_cost"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost:
    """What the work costs, in the club's currency.

    Args:
        sand: cost of the sand, or None where its price or its mass is not known.
        work: cost of the work as far as it was typed, or None where nothing was.
        without: kinds of work whose cost nobody typed.
        sand_without: kinds of work that need sand of which nobody typed how much.
    """

    sand: float | None
    work: float | None
    without: tuple[Kind, ...] = ()
    sand_without: tuple[Kind, ...] = ()

    @property
    def is_whole(self) -> bool:
        """Whether it is the cost of all that is done."""
        return self.in_all is not None and self.leaves_nothing_out

    @property
    def in_all(self) -> float | None:
        """Sand and work together; None where the sand's cost is not known, or nothing of it all is."""
        if self.sand is None or (not self.sand and self.work is None and not self.leaves_nothing_out):
            return None
        return self.sand + (self.work or 0.0)

    @property
    def leaves_nothing_out(self) -> bool:
        """Whether everything that costs was typed."""
        return not self.without and not self.sand_without


def sand_cost(weighed_t: float | None, planning: Planning) -> float | None:
    """Work out what sand costs.

    Args:
        weighed_t: tonnes as weighed, as they are paid for, or None where that is not known.
        planning: the club's prices.

    Returns:
        Its cost in the club's currency, or None where nobody told a price or the mass is not known.
    """
    if planning.sand_price_per_t is None or weighed_t is None:
        return None
    return weighed_t * planning.sand_price_per_t


def cost_of(choice: Choice, amounts: Amounts, planning: Planning) -> Cost | None:
    """Work out what a choice costs.

    Args:
        choice: the choice; its own cost for a surface goes before those of kinds of work.
        amounts: what it comes to.
        planning: the club's prices.

    Returns:
        The cost, or None where the club tells no currency.
    """
    return cost_of_work(
        choice.operations,
        [one.kind for one in amounts.surfaces],
        planning,
        sand_t=amounts.sand_t,
        typed_sand_t=amounts.typed_sand_t,
        per_surface=choice.cost_per_surface,
    )


def cost_of_work(
    operations: Sequence[Operation],
    kinds: Sequence[SurfaceKind],
    planning: Planning,
    *,
    sand_t: float | None,
    typed_sand_t: float | None,
    per_surface: float | None = None,
) -> Cost | None:
    """Work out what work costs; its sand is paid for as weighed, with the water that the club's sand has.

    Args:
        operations: what is done.
        kinds: the kind of each surface on which it is done.
        planning: the club's prices.
        sand_t: dry sand in all, tonnes, or None where it is not known.
        typed_sand_t: that of the work of which somebody typed how much, or None likewise.
        per_surface: cost of the work on one surface, sand left out, which goes before those of kinds of work, or None.

    Returns:
        The cost, or None where the club tells no currency.
    """
    if not planning.currency:
        return None
    needs_sand = [one for one in operations if isinstance(one, Dressing | SandInjection)]
    sand_without = tuple(dict.fromkeys(one.kind for one in needs_sand if one.sand is None))
    priced_t = typed_sand_t if sand_without else sand_t
    sand: float | None = 0.0
    if any(one.sand is not None for one in needs_sand):
        sand = sand_cost(None if priced_t is None else planning.sand_store.weighed_t(priced_t), planning)
    if per_surface is not None:
        return Cost(sand=sand, work=per_surface * len(kinds), sand_without=sand_without)
    asked = [(planning.work_costs.get(kind, {}), done) for kind in kinds for done in operations]
    typed = [costs[done.kind] * _times(done) for costs, done in asked if done.kind in costs]
    without = dict.fromkeys(done.kind for costs, done in asked if done.kind not in costs)
    work = sum(typed) if typed else None
    return Cost(sand=sand, work=work, without=tuple(without), sand_without=sand_without)


def _times(operation: Operation) -> int:
    """How often it is gone over."""
    match operation:
        case Tining() | Grooving():
            return operation.passes
        case _:
            return 1
