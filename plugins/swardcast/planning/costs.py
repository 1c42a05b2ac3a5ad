"""What a way of doing a job costs: its sand, and the work as far as it was typed."""

from __future__ import annotations

from dataclasses import dataclass

from swardcast.planning.amounts import Amounts
from swardcast.records.operations import Dressing, Grooving, Kind, Operation, SandInjection, Tining
from swardcast.records.planning import Choice, Planning

__all__ = ["Cost", "cost_of", "sand_cost"]


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
    """Work out what a choice costs; its sand is paid for as weighed, with the water that the club's sand has.

    Args:
        choice: the choice; its own cost for a surface goes before those of kinds of work.
        amounts: what it comes to.
        planning: the club's prices.

    Returns:
        The cost, or None where the club tells no currency.
    """
    if not planning.currency:
        return None
    needs_sand = [one for one in choice.operations if isinstance(one, Dressing | SandInjection)]
    sand_without = tuple(dict.fromkeys(one.kind for one in needs_sand if one.sand is None))
    sand_t = amounts.sand_t if not sand_without else amounts.typed_sand_t
    sand: float | None = 0.0
    if any(one.sand is not None for one in needs_sand):
        sand = sand_cost(None if sand_t is None else planning.sand_store.weighed_t(sand_t), planning)
    if choice.cost_per_surface is not None:
        work_cost = choice.cost_per_surface * len(amounts.surfaces)
        return Cost(sand=sand, work=work_cost, sand_without=sand_without)
    asked = [(planning.work_costs.get(one.kind, {}), done) for one in amounts.surfaces for done in choice.operations]
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
