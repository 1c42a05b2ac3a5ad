"""What a way of doing a job comes to on all its surfaces: holes, sand that fits, surplus, tonnes, cost."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from swardcast.outlook.states import SurfaceWork
from swardcast.records.club import SurfaceKind
from swardcast.records.operations import NOT_COMPUTED, Grooving, Kind, Operation, SandInjection, Stripping, Tining
from swardcast.records.planning import Choice, Planning
from swardcast.records.translate import sand_depth_mm
from swardcast.turf.sand import kg_per_m2_from_depth, tonnes_on_area

__all__ = ["Amounts", "Cost", "SurfaceAmounts", "amounts_of", "cost_of"]


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceAmounts:
    """What the work comes to on one surface.

    Args:
        id: the surface.
        kind: what it is.
        holes: holes, or None where its area is not known, or nothing is computed.
        spread_mm: sand spread, or shot into the turf.
        fits_mm: sand that goes into the holes and grooves, or was shot in.
        surplus_mm: sand that stays on top at first.
        sand_t: all this sand, or None where its area is not known.
    """

    id: str
    kind: SurfaceKind
    holes: float | None
    spread_mm: float
    fits_mm: float
    surplus_mm: float
    sand_t: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Amounts:
    """What the work comes to on all surfaces.

    Args:
        surfaces: each surface, in the order of the work.
        disturbed_fraction: share of the surface opened by tines and blades or stripped, passes added; None where some
            of the work is of a kind of which nothing is computed.
        removed_fraction: share of the surface taken out, passes added, or None.
        room_mm: sand that the holes and grooves would take.
        holes: holes in all, or None where an area is not known.
        sand_t: sand in all, or None.
        fits_t: of it what goes into the holes and grooves, or None.
        surplus_t: of it what stays on top at first, or None.
    """

    surfaces: tuple[SurfaceAmounts, ...]
    disturbed_fraction: float | None
    removed_fraction: float | None
    room_mm: float
    holes: float | None
    sand_t: float | None
    fits_t: float | None
    surplus_t: float | None

    def mean_mm(self, layer: Callable[[SurfaceAmounts], float]) -> float:
        """Average a layer over the surfaces.

        Args:
            layer: which one.

        Returns:
            Millimetres, each surface counted alike.
        """
        return sum(map(layer, self.surfaces)) / len(self.surfaces)


def amounts_of(works: Sequence[SurfaceWork]) -> Amounts:
    """Add up what the notices' own sums give for each surface.

    Args:
        works: one job on its surfaces, at least one.

    Returns:
        The amounts.
    """
    sums = [work.sums for work in works]
    areas = [work.surface.area_m2 for work in works]
    surfaces = tuple(_on_one(work, _in_all(areas)) for work in works)
    density = sums[0].density_t_per_m3
    operations = works[0].operations
    is_computed = all(one.kind not in NOT_COMPUTED for one in operations)
    stripped = max((one.share for one in operations if isinstance(one, Stripping)), default=0.0)
    return Amounts(
        surfaces=surfaces,
        disturbed_fraction=sums[0].disturbed_fraction + stripped if is_computed else None,
        removed_fraction=sums[0].removed_fraction if is_computed else None,
        room_mm=sums[0].room_mm,
        holes=_in_all(one.holes for one in surfaces),
        sand_t=_in_all(one.sand_t for one in surfaces),
        fits_t=_in_all(_tonnes(one.fits_mm, area, density) for one, area in zip(surfaces, areas, strict=True)),
        surplus_t=_in_all(_tonnes(one.surplus_mm, area, density) for one, area in zip(surfaces, areas, strict=True)),
    )


def _on_one(work: SurfaceWork, all_area_m2: float | None) -> SurfaceAmounts:
    sums, area_m2 = work.sums, work.surface.area_m2
    density = sums.density_t_per_m3
    injected_mm = sum(
        sand_depth_mm(one.sand, area_m2=area_m2, all_area_m2=all_area_m2, density=density) or 0.0
        for one in work.operations
        if isinstance(one, SandInjection) and one.sand is not None
    )
    spread_mm = sums.spread_mm + injected_mm
    return SurfaceAmounts(
        id=work.surface.id,
        kind=work.surface.kind,
        holes=sums.holes if all(one.kind not in NOT_COMPUTED for one in work.operations) else None,
        spread_mm=spread_mm,
        fits_mm=sums.infill_mm + injected_mm,
        surplus_mm=sums.surplus_mm,
        sand_t=_tonnes(spread_mm, area_m2, density),
    )


def _in_all(values: Iterable[float | None]) -> float | None:
    given = list(values)
    known = [value for value in given if value is not None]
    return sum(known) if len(known) == len(given) else None


def _tonnes(layer_mm: float, area_m2: float | None, density_t_per_m3: float) -> float | None:
    return None if area_m2 is None else tonnes_on_area(kg_per_m2_from_depth(layer_mm, density_t_per_m3), area_m2)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost:
    """What the work costs, in the club's currency.

    Args:
        sand: cost of the sand, or None where its price or its mass is not known.
        work: cost of the work as far as it was typed, or None where nothing was.
        without: kinds of work whose cost nobody typed, though that of others was.
    """

    sand: float | None
    work: float | None
    without: tuple[Kind, ...] = ()

    @property
    def in_all(self) -> float | None:
        """Sand and work together; None where the sand's cost is not known, or nothing of it all is."""
        if self.sand is None or (not self.sand and self.work is None and self.without):
            return None
        return self.sand + (self.work or 0.0)


def cost_of(choice: Choice, amounts: Amounts, planning: Planning) -> Cost | None:
    """Work out what a choice costs.

    Args:
        choice: the choice; its own cost for a surface goes before those of kinds of work.
        amounts: what it comes to.
        planning: the club's prices.

    Returns:
        The cost, or None where the club tells no currency.
    """
    if not planning.currency:
        return None
    sand: float | None = 0.0
    if any(one.spread_mm > 0 for one in amounts.surfaces):
        priced = planning.sand_price_per_t is not None and amounts.sand_t is not None
        sand = (amounts.sand_t or 0.0) * (planning.sand_price_per_t or 0.0) if priced else None
    if choice.cost_per_surface is not None:
        return Cost(sand=sand, work=choice.cost_per_surface * len(amounts.surfaces))
    asked = [(planning.work_costs.get(one.kind, {}), work) for one in amounts.surfaces for work in choice.operations]
    typed = [costs[work.kind] * _times(work) for costs, work in asked if work.kind in costs]
    without = dict.fromkeys(work.kind for costs, work in asked if planning.work_costs and work.kind not in costs)
    return Cost(sand=sand, work=sum(typed) if typed else None, without=tuple(without))


def _times(operation: Operation) -> int:
    """How often it is gone over."""
    match operation:
        case Tining() | Grooving():
            return operation.passes
        case _:
            return 1
