"""What a way of doing a job comes to on all its surfaces: holes, sand that fits, surplus, tonnes."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Protocol

from swardcast.quantities import SandBasis
from swardcast.records.club import Surface, SurfaceKind
from swardcast.records.operations import NOT_COMPUTED, Dressing, Kind, Operation, SandInjection, Stripping
from swardcast.records.translate import SurfaceSums, removes_mm, sand_depth_mm
from swardcast.turf.geometry import hole_area_fraction, holes_per_m2
from swardcast.turf.sand import infill_mm, kg_per_m2_from_depth, surplus_mm, tonnes_on_area

__all__ = ["Amounts", "SurfaceAmounts", "Worked", "amounts_of", "disturbed_by", "in_all", "removed_by", "spread_by"]


class Worked(Protocol):
    """Work on one surface, as far as amounts need it; a `SurfaceWork` is such work."""

    @property
    def surface(self) -> Surface:
        """The surface."""

    @property
    def operations(self) -> tuple[Operation, ...]:
        """The work as planned, or as really done."""

    @property
    def sums(self) -> SurfaceSums:
        """What that work does to the surface."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceAmounts:
    """What the work comes to on one surface.

    Args:
        id: the surface.
        kind: what it is.
        holes: holes, or None where its area or the spacing is not known, or nothing is computed.
        spread_mm: sand spread, shot into the turf or put into a bunker; None where its amount or the area is not known.
        fits_mm: sand that would fit into the holes and grooves at most, or None where their room is not known.
        surplus_mm: sand that stays on top at first, or None.
        sand_t: all this sand, or None where its amount or the area is not known.
    """

    id: str
    kind: SurfaceKind
    holes: float | None
    spread_mm: float | None
    fits_mm: float | None
    surplus_mm: float | None
    sand_t: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Amounts:
    """What the work comes to on all surfaces.

    Args:
        surfaces: each surface, in the order of the work.
        disturbed_fraction: share of the surface opened by tines and blades or stripped, passes added; None where some
            of the work is of a kind of which nothing is computed.
        removed_fraction: share of the surface taken out, passes added, or None.
        removed_depths_mm: how deep it is taken out, each depth once, in the order of the work, or None.
        room_mm: sand that the holes and grooves would take, or None where sizes were not typed.
        holes: holes in all, or None where an area or a spacing is not known.
        sand_t: sand in all, or None.
        typed_sand_t: sand in all of the work of which somebody typed how much, or None.
        fits_t: of it what goes into the holes and grooves, or None.
        surplus_t: of it what stays on top at first, or None.
    """

    surfaces: tuple[SurfaceAmounts, ...]
    disturbed_fraction: float | None
    removed_fraction: float | None
    removed_depths_mm: tuple[float, ...] | None
    room_mm: float | None
    holes: float | None
    sand_t: float | None
    typed_sand_t: float | None
    fits_t: float | None
    surplus_t: float | None

    def mean_mm(self, layer: Callable[[SurfaceAmounts], float | None]) -> float | None:
        """Average a layer over the surfaces.

        Args:
            layer: which one.

        Returns:
            Millimetres, each surface counted alike; None where one of them is not known.
        """
        whole = in_all(map(layer, self.surfaces))
        return None if whole is None else whole / len(self.surfaces)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Shot:
    """What sand injection opens, as far as its sizes were typed."""

    holes_per_m2: float | None = 0.0
    fraction: float | None = 0.0
    room_mm: float | None = 0.0


def amounts_of(works: Sequence[Worked]) -> Amounts:
    """Add up what the notices' own sums give for each surface, and what sand injection and bunkers add to them.

    Args:
        works: one job on its surfaces, at least one.

    Returns:
        The amounts.
    """
    sums = works[0].sums
    areas = [work.surface.area_m2 for work in works]
    operations = works[0].operations
    sanding = [one for one in operations if isinstance(one, Dressing | SandInjection)]
    shot = _shot(operations)
    surfaces = tuple(_on_one(work, in_all(areas), shot) for work in works)
    removed_fraction = removed_by(operations, sums)
    depths = dict.fromkeys(depth for depth in map(removes_mm, operations) if depth)
    density = sums.density_t_per_m3
    return Amounts(
        surfaces=surfaces,
        disturbed_fraction=disturbed_by(operations, sums),
        removed_fraction=removed_fraction,
        removed_depths_mm=None if removed_fraction is None else tuple(depths),
        room_mm=in_all((sums.room_mm, shot.room_mm)),
        holes=in_all(one.holes for one in surfaces),
        sand_t=_sand_t(sanding, areas, density),
        typed_sand_t=_sand_t([one for one in sanding if one.sand is not None], areas, density),
        fits_t=in_all(_tonnes(one.fits_mm, area, density) for one, area in zip(surfaces, areas, strict=True)),
        surplus_t=in_all(_tonnes(one.surplus_mm, area, density) for one, area in zip(surfaces, areas, strict=True)),
    )


def disturbed_by(operations: Sequence[Operation], sums: SurfaceSums) -> float | None:
    """Tell the share of a surface that work opens or strips.

    Args:
        operations: what is done.
        sums: what its tines and blades do there.

    Returns:
        The share, passes added; None where some of the work is of a kind of which nothing is computed.
    """
    if not _is_measured(operations):
        return None
    stripped = max((one.share for one in operations if isinstance(one, Stripping)), default=0.0)
    return in_all((sums.disturbed_fraction, stripped, _shot(operations).fraction))


def removed_by(operations: Sequence[Operation], sums: SurfaceSums) -> float | None:
    """Tell the share of a surface that work takes out.

    Args:
        operations: what is done.
        sums: what its tines and blades do there.

    Returns:
        The share, passes added; None where sand is injected, which may drill or push aside, or nothing is computed.
    """
    is_known = _is_measured(operations) and not any(isinstance(one, SandInjection) for one in operations)
    return sums.removed_fraction if is_known else None


def spread_by(
    operations: Iterable[Operation], *, area_m2: float | None, all_area_m2: float | None, density_t_per_m3: float
) -> float | None:
    """Tell the layer of sand that work brings to a surface: on top, into the turf or into a bunker.

    Args:
        operations: what is done.
        area_m2: area of the surface, or None.
        all_area_m2: area of all surfaces of the job, for a mass in all, or None.
        density_t_per_m3: bulk density of the sand.

    Returns:
        Millimetres, or None where an amount or an area is not known.
    """
    return in_all(
        None
        if one.sand is None
        else sand_depth_mm(one.sand, area_m2=area_m2, all_area_m2=all_area_m2, density=density_t_per_m3)
        for one in operations
        if isinstance(one, Dressing | SandInjection)
    )


def _is_measured(operations: Iterable[Operation]) -> bool:
    return all(one.kind not in NOT_COMPUTED or isinstance(one, SandInjection) for one in operations)


def _shot(operations: Iterable[Operation]) -> _Shot:
    all_shots = [_shot_by(one) for one in operations if isinstance(one, SandInjection)]
    return _Shot(
        holes_per_m2=in_all(one.holes_per_m2 for one in all_shots),
        fraction=in_all(one.fraction for one in all_shots),
        room_mm=in_all(one.room_mm for one in all_shots),
    )


def _shot_by(injection: SandInjection) -> _Shot:
    if injection.across_mm is None or injection.along_mm is None:
        return _Shot(holes_per_m2=None, fraction=None, room_mm=None)
    holes = holes_per_m2(across_mm=injection.across_mm, along_mm=injection.along_mm)
    if injection.diameter_mm is None:
        return _Shot(holes_per_m2=holes, fraction=None, room_mm=None)
    fraction = hole_area_fraction(
        diameter_mm=injection.diameter_mm, across_mm=injection.across_mm, along_mm=injection.along_mm
    )
    room = None if injection.depth_mm is None else infill_mm(fraction, injection.depth_mm)
    return _Shot(holes_per_m2=holes, fraction=fraction, room_mm=room)


def _on_one(work: Worked, all_area_m2: float | None, shot: _Shot) -> SurfaceAmounts:
    sums, area_m2 = work.sums, work.surface.area_m2
    density = sums.density_t_per_m3

    def layer_mm(kind: Kind) -> float | None:
        alike = [one for one in work.operations if one.kind is kind]
        return spread_by(alike, area_m2=area_m2, all_area_m2=all_area_m2, density_t_per_m3=density)

    spread, injected, in_bunker = map(layer_mm, (Kind.TOPDRESSING, Kind.SAND_INJECTION, Kind.BUNKER_SANDING))
    fits = surplus = None
    if spread is not None:
        fits, surplus = sums.infill_mm, sums.surplus_mm
    if injected is None or shot.room_mm is None:
        fits = surplus = None
    elif fits is not None and surplus is not None:
        fits += min(injected, shot.room_mm)
        surplus += surplus_mm(injected, shot.room_mm)
    holes = in_all((sums.holes, None if shot.holes_per_m2 is None or not area_m2 else shot.holes_per_m2 * area_m2))
    return SurfaceAmounts(
        id=work.surface.id,
        kind=work.surface.kind,
        holes=holes if _is_measured(work.operations) else None,
        spread_mm=in_all((spread, injected, in_bunker)),
        fits_mm=fits,
        surplus_mm=in_all((surplus, in_bunker)),
        sand_t=_sand_t_on(work.operations, area_m2, all_area_m2, density),
    )


def _sand_t(sanding: Iterable[Dressing | SandInjection], areas: Sequence[float | None], density: float) -> float | None:
    """Sand on all surfaces: a mass that was typed needs no area."""
    all_area_m2 = in_all(areas)
    masses: list[float | None] = []
    for one in sanding:
        if one.sand is not None and one.sand.basis is SandBasis.TONNES_IN_ALL:
            masses.append(one.sand.amount)
        else:
            masses.append(in_all(_sand_t_on((one,), area, all_area_m2, density) for area in areas))
    return in_all(masses)


def _sand_t_on(
    operations: Iterable[Operation], area_m2: float | None, all_area_m2: float | None, density: float
) -> float | None:
    masses: list[float | None] = []
    for one in operations:
        if not isinstance(one, Dressing | SandInjection):
            continue
        if one.sand is None:
            masses.append(None)
        elif one.sand.basis is SandBasis.TONNES_EACH:
            masses.append(one.sand.amount)
        else:
            depth = sand_depth_mm(one.sand, area_m2=area_m2, all_area_m2=all_area_m2, density=density)
            masses.append(_tonnes(depth, area_m2, density))
    return in_all(masses)


def in_all(values: Iterable[float | None]) -> float | None:
    """Add up, where all is known.

    Args:
        values: numbers, or None.

    Returns:
        The sum, or None where one of them is not known.
    """
    given = list(values)
    known = [value for value in given if value is not None]
    return sum(known, 0.0) if len(known) == len(given) else None


def _tonnes(layer_mm: float | None, area_m2: float | None, density_t_per_m3: float) -> float | None:
    if layer_mm is None or area_m2 is None:
        return None
    return tonnes_on_area(kg_per_m2_from_depth(layer_mm, density_t_per_m3), area_m2)
