"""A job in numbers: holes, share of the surface, sand; every number is the one that the sums used."""

from __future__ import annotations

from collections.abc import Iterator

from swardcast.language.voice import Voice
from swardcast.notices.notice import Fact
from swardcast.notices.words import amount, percent, tonnes
from swardcast.outlook.states import JobOutlook
from swardcast.quantities import SandBasis
from swardcast.records.operations import Dressing, Grooving, Kind, Seeding, Stripping, Tining
from swardcast.records.translate import SurfaceSums, opening_of

__all__ = ["facts_in_numbers"]


def facts_in_numbers(outlook: JobOutlook, voice: Voice) -> list[Fact]:
    """List the numbers of a job.

    Args:
        outlook: how the job stands.
        voice: the language and the day of the reader.

    Returns:
        Names and values; empty for work without numbers.
    """
    sums = [work.sums for work in outlook.surfaces]
    return [*_work(outlook, voice), *_holes(sums, voice), *_sand(sums, voice)]


def _work(outlook: JobOutlook, voice: Voice) -> Iterator[Fact]:
    for operation in outlook.job.operations:
        opening = opening_of(operation)
        share = percent(opening.area_fraction, voice) if opening else ""
        match operation:
            case Tining():
                size = f"{operation.diameter_mm:g} mm wide, {operation.depth_mm:g} mm deep"
                pattern = f"{operation.across_mm:g} x {operation.along_mm:g} mm apart"
                yield Fact(
                    name=_named(operation.kind, operation.passes, voice),
                    value=f"holes {size}, {pattern}: {share} of the surface",
                )
            case Grooving():
                size = f"{operation.blade_mm:g} mm wide, {operation.depth_mm:g} mm deep"
                pattern = f"{operation.spacing_mm:g} mm apart"
                yield Fact(
                    name=_named(operation.kind, operation.passes, voice),
                    value=f"grooves {size}, {pattern}: {share} of the surface",
                )
            case Stripping():
                yield Fact(
                    name=operation.kind.value.capitalize(),
                    value=f"{operation.depth_mm:g} mm deep on {percent(operation.share, voice)} of the surface",
                )
            case Seeding() if operation.rate_g_per_m2 is not None:
                yield Fact(name="Seed", value=f"{operation.seed}, {operation.rate_g_per_m2:g} g on a square metre")
            case Dressing() if operation.kind is Kind.BUNKER_SANDING:
                yield Fact(name="Sand", value=_bunker_sand(operation, voice))
            case _:
                pass


def _named(kind: Kind, passes: int, voice: Voice) -> str:
    return kind.value.capitalize() + (f", {passes} passes" if passes > 1 else "")


def _bunker_sand(dressing: Dressing, voice: Voice) -> str:
    value = dressing.sand.amount
    match dressing.sand.basis:
        case SandBasis.TONNES_EACH:
            return f"{tonnes(value, voice)} in each bunker"
        case SandBasis.TONNES_IN_ALL:
            return f"{tonnes(value, voice)} in all"
        case SandBasis.DEPTH_MM:
            return f"{value:g} mm deep"
        case SandBasis.KG_PER_M2:
            return f"{value:g} kg on a square metre"


def _holes(sums: list[SurfaceSums], voice: Voice) -> Iterator[Fact]:
    holes = [one.holes for one in sums if one.holes]
    if not holes:
        return
    if len(holes) == 1:
        yield Fact(name="Holes", value=amount(holes[0], voice))
        return
    yield Fact(
        name="Holes",
        value=f"{amount(sum(holes) / len(holes), voice)} on each surface, {amount(sum(holes), voice)} in all",
    )


def _sand(sums: list[SurfaceSums], voice: Voice) -> Iterator[Fact]:
    masses = [one.sand_t for one in sums if one.sand_t]
    if not masses:
        return
    each = sum(masses) / len(masses)
    density = f"{sums[0].density_t_per_m3:g} t/m3"
    in_all = f"{tonnes(sum(masses), voice)} in all" + (
        f", {tonnes(each, voice)} on each surface" if len(masses) > 1 else ""
    )
    yield Fact(name="Sand", value=f"{in_all} (dry sand of {density})")
    room = [one.infill_mm for one in sums]
    surplus = [one.surplus_mm for one in sums]
    if max(room) > 0:
        value = f"{_span(room, voice)} goes into the holes and grooves, {_span(surplus, voice)} stays on top at first"
        yield Fact(name="As a layer", value=value)


def _span(depths: list[float], voice: Voice) -> str:
    low, high = f"{min(depths):.1f}", f"{max(depths):.1f}"
    return f"{low} mm" if low == high else f"{low} to {high} mm"
