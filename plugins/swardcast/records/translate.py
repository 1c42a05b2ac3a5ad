"""Operations in the trade's words become turf values: openings, room for sand, sand on the surface."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final

from swardcast.quantities import Sand, SandBasis
from swardcast.records.club import Club
from swardcast.records.log import HeldBackBy
from swardcast.records.operations import Dressing, Grooving, Kind, Operation, SandInjection, Stripping, Tining
from swardcast.turf import geometry, sand
from swardcast.turf.growth import BRAKES
from swardcast.turf.healing import (
    HOLES_CLOSED,
    SOLID_LASTING_SHARE,
    Layers,
    Opening,
    disruption_left,
    groove_opening,
    growth_days_needed,
    layers_of,
    rim_growth_days,
    tine_opening,
)

__all__ = [
    "USUAL_DAYS",
    "WIDEST_FITTED_MM",
    "SurfaceSums",
    "density_of",
    "masses_as_rates",
    "opening_of",
    "opens_mm",
    "removes_mm",
    "sand_depth_mm",
    "surface_sums",
]

USUAL_DAYS: Final = {cause: BRAKES[cause.value].usual_days for cause in HeldBackBy}
"""How long growth is usually held back, days, by its cause; None where only the club can say."""

WIDEST_FITTED_MM: Final = 16.0
"""Widest tine whose healing counts as fitted, mm: the published recoveries have 6.35 to 15.9 mm."""

_CUT_AWAY = {Kind.HOLLOW_TINING}
_NOT_VALIDATED = {Kind.DEEP_TINING, Kind.NEEDLE_TINING, Kind.FRAISE_MOWING}
_DEEP_GROOVE_MM = 10.0  # a groove so deep or deeper heals like a hole; a shallow one cuts mostly leaf: judgement


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceSums:
    """The sums of one job on one surface.

    Args:
        openings: what each operation opens.
        holes: holes on the whole surface, or None where its area is not known.
        disturbed_fraction: share of the surface opened by tines and blades, passes added.
        removed_fraction: share of the surface taken out, passes added.
        room_mm: sand that the holes and grooves take.
        spread_mm: sand spread.
        infill_mm: sand that goes into the holes: the lesser of the two.
        surplus_mm: sand that stays on top.
        sand_t: sand spread on the whole surface, or None where its area is not known.
        density_t_per_m3: bulk density used.
        layers: what is disturbed, by how it heals.
        day_zero: share of the surface disturbed on the day, D0.
        rim_growth_days: growth that the widest hole needs at least.
        opened: whether the turf was opened or stripped so far that it counts; sand alone leaves it whole.
        validated: whether this kind of work was among the fitted records.
    """

    openings: tuple[Opening, ...]
    holes: float | None
    disturbed_fraction: float
    removed_fraction: float
    room_mm: float
    spread_mm: float
    infill_mm: float
    surplus_mm: float
    sand_t: float | None
    density_t_per_m3: float
    layers: Layers
    day_zero: float
    rim_growth_days: float
    opened: bool
    validated: bool


def density_of(club: Club) -> float:
    """Tell the bulk density of a club's dry sand.

    Args:
        club: the club.

    Returns:
        Tonnes in a cubic metre: the club's own, or the usual one.
    """
    return club.sand_density_t_per_m3 or sand.DEFAULT_DENSITY_T_PER_M3


def opening_of(operation: Operation) -> Opening | None:
    """Describe what an operation opens.

    Args:
        operation: any operation.

    Returns:
        The opening, or None for work that opens nothing.
    """
    match operation:
        case Tining():
            bore = operation.inside_diameter_mm or operation.diameter_mm
            return tine_opening(
                operation.diameter_mm,
                operation.across_mm,
                operation.along_mm,
                lasting_share=1.0 if operation.kind in _CUT_AWAY else SOLID_LASTING_SHARE,
                passes=operation.passes,
                room_mm=sand.infill_mm(_holes_fraction(operation, bore), operation.depth_mm),
            )
        case Grooving():
            return groove_opening(
                operation.blade_mm,
                operation.spacing_mm,
                lasting_share=min(1.0, operation.depth_mm / _DEEP_GROOVE_MM),
                passes=operation.passes,
                room_mm=sand.infill_mm(_grooves_fraction(operation), operation.depth_mm),
            )
        case _:
            return None


def opens_mm(operation: Operation) -> float:
    """Tell how deep an operation opens the turf.

    Args:
        operation: any operation.

    Returns:
        Depth of its holes or grooves, mm; 0 for work that opens nothing.
    """
    match operation:
        case Tining() | Grooving():
            return operation.depth_mm
        case _:
            return 0.0


def removes_mm(operation: Operation) -> float:
    """Tell how deep an operation takes turf and soil out.

    Args:
        operation: any operation.

    Returns:
        Depth of its cores, grooves or cut, mm; 0 for work that takes nothing out.
    """
    match operation:
        case Tining() | Grooving() | Stripping() if _removed_fraction(operation) > 0:
            return operation.depth_mm
        case _:
            return 0.0


def sand_depth_mm(amount: Sand, *, area_m2: float | None, all_area_m2: float | None, density: float) -> float | None:
    """Turn an amount of sand into the depth on one surface.

    Args:
        amount: the amount as written.
        area_m2: area of this surface, or None.
        all_area_m2: area of all surfaces of the job, for a mass in all, or None.
        density: bulk density, t/m3.

    Returns:
        Millimetres, or None where an area that is needed is not known.
    """
    match amount.basis:
        case SandBasis.DEPTH_MM:
            return amount.amount
        case SandBasis.KG_PER_M2:
            return sand.depth_mm_from_kg_per_m2(amount.amount, density)
        case SandBasis.TONNES_EACH:
            return sand.depth_mm_from_kg_per_m2(amount.amount * 1000 / area_m2, density) if area_m2 else None
        case SandBasis.TONNES_IN_ALL:
            return sand.depth_mm_from_kg_per_m2(amount.amount * 1000 / all_area_m2, density) if all_area_m2 else None


def masses_as_rates(operations: tuple[Operation, ...], areas_m2: Sequence[float | None]) -> tuple[Operation, ...]:
    """Turn masses of sand in all into rates, the same on each of the surfaces that they are meant for.

    Args:
        operations: any operations.
        areas_m2: areas of these surfaces, each above 0, or None.

    Returns:
        The operations in their order; a mass stays one where an area is not known.
    """
    if None in areas_m2:
        return operations
    area_m2 = sum(area for area in areas_m2 if area is not None)
    return tuple(_as_rate(operation, area_m2) for operation in operations)


def _as_rate(operation: Operation, area_m2: float) -> Operation:
    match operation:
        case (
            Dressing(sand=Sand(basis=SandBasis.TONNES_IN_ALL)) | SandInjection(sand=Sand(basis=SandBasis.TONNES_IN_ALL))
        ) if operation.sand is not None:
            return replace(operation, sand=Sand(operation.sand.amount * 1000 / area_m2, SandBasis.KG_PER_M2))
        case _:
            return operation


@lru_cache(maxsize=1024)
def surface_sums(
    operations: tuple[Operation, ...], *, area_m2: float | None, all_area_m2: float | None, density: float
) -> SurfaceSums:
    """Add up what a job's operations do to one surface.

    Args:
        operations: the operations, in order.
        area_m2: area of the surface, or None.
        all_area_m2: area of all surfaces of the job, or None.
        density: bulk density of the sand, t/m3.

    Returns:
        The sums.
    """
    openings = tuple(opening for opening in map(opening_of, operations) if opening is not None)
    spread = sum(
        sand_depth_mm(operation.sand, area_m2=area_m2, all_area_m2=all_area_m2, density=density) or 0.0
        for operation in operations
        if isinstance(operation, Dressing) and operation.kind is Kind.TOPDRESSING
    )
    room = sum(opening.room_mm for opening in openings)
    surplus = sand.surplus_mm(spread, room)
    tines = [operation for operation in operations if isinstance(operation, Tining)]
    holes = sum(_holes_per_m2(operation) for operation in tines)
    stripped = max((operation.share for operation in operations if isinstance(operation, Stripping)), default=0.0)
    layers = layers_of(openings, surplus, stripped)
    return SurfaceSums(
        openings=openings,
        holes=holes * area_m2 if area_m2 else None,
        disturbed_fraction=sum(opening.area_fraction for opening in openings),
        removed_fraction=sum(map(_removed_fraction, operations)),
        room_mm=room,
        spread_mm=spread,
        infill_mm=min(spread, room),
        surplus_mm=surplus,
        sand_t=sand.tonnes_on_area(sand.kg_per_m2_from_depth(spread, density), area_m2) if area_m2 else None,
        density_t_per_m3=density,
        layers=layers,
        day_zero=disruption_left(layers),
        rim_growth_days=rim_growth_days(openings),
        opened=growth_days_needed(layers_of(openings, 0.0, stripped), HOLES_CLOSED) > 0,
        validated=not any(operation.kind in _NOT_VALIDATED for operation in operations)
        and max((tine.diameter_mm for tine in tines), default=0.0) <= WIDEST_FITTED_MM,
    )


def _holes_fraction(tines: Tining, diameter_mm: float) -> float:
    return geometry.hole_area_fraction(
        diameter_mm=diameter_mm, across_mm=tines.across_mm, along_mm=tines.along_mm, passes=tines.passes
    )


def _grooves_fraction(blades: Grooving) -> float:
    return geometry.groove_area_fraction(width_mm=blades.blade_mm, spacing_mm=blades.spacing_mm, passes=blades.passes)


def _holes_per_m2(tines: Tining) -> float:
    return tines.passes * geometry.holes_per_m2(across_mm=tines.across_mm, along_mm=tines.along_mm)


def _removed_fraction(operation: Operation) -> float:
    match operation:
        case Tining() if operation.kind in _CUT_AWAY:
            return _holes_fraction(operation, operation.inside_diameter_mm or operation.diameter_mm)
        case Grooving():
            return _grooves_fraction(operation)
        case Stripping():
            return operation.share
        case _:
            return 0.0
