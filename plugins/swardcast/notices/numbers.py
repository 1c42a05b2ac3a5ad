"""A job in numbers: holes, share of the surface, sand; every number is the one that the sums used."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from swardcast.language.measures import bulk_density, distance, layers, length, sand_mass, sand_rate, seed_rate, spacing
from swardcast.language.voice import Voice, capital
from swardcast.notices.notice import Fact
from swardcast.notices.words import amount, percent
from swardcast.outlook.states import JobOutlook
from swardcast.quantities import Sand, SandBasis
from swardcast.records.operations import (
    Dressing,
    Grooving,
    HeightOfCut,
    Kind,
    Operation,
    ProductUse,
    SandInjection,
    Seeding,
    Stripping,
    Tining,
    Trenching,
)
from swardcast.records.translate import SurfaceSums, opening_of

__all__ = ["facts_in_numbers", "facts_of_work"]

_PRINTED_MM: Final = 0.05  # a layer that is printed as 0.0 mm is none


def facts_in_numbers(outlook: JobOutlook, voice: Voice) -> list[Fact]:
    """List the numbers of a job.

    Args:
        outlook: how the job stands.
        voice: the language and the day of the reader.

    Returns:
        Names and values; empty for work without numbers.
    """
    sums = [work.sums for work in outlook.surfaces]
    return [*facts_of_work(outlook, None, voice), *_holes(sums, voice), *_sand(sums, voice)]


def _as_done(outlook: JobOutlook) -> tuple[Operation, ...]:
    """The work as really done where it was the same on every surface, else as planned."""
    done = {work.operations for work in outlook.surfaces}
    return done.pop() if len(done) == 1 else outlook.job.operations


def facts_of_work(outlook: JobOutlook, kind: Kind | None, voice: Voice) -> Iterator[Fact]:
    """List the sizes of a job's operations.

    Args:
        outlook: how the job stands.
        kind: the only kind of work to list, or None for all.
        voice: the language and the day of the reader.

    Yields:
        Names and values.
    """
    for operation in _as_done(outlook):
        if kind is not None and operation.kind is not kind:
            continue
        match operation:
            case Tining():
                yield Fact(name=_named(operation.kind, operation.passes, voice), value=_holes_made(operation, voice))
            case Grooving():
                yield Fact(name=_named(operation.kind, operation.passes, voice), value=_grooves_cut(operation, voice))
            case Stripping():
                depth, share = length(operation.depth_mm, voice), percent(operation.share, voice)
                value = voice.say("numbers-stripped", depth=depth, share=share)
                yield Fact(name=_named(operation.kind, 1, voice), value=value)
            case Seeding() if operation.rate_g_per_m2 is not None:
                rate = seed_rate(operation.rate_g_per_m2, voice)
                value = voice.say("numbers-seeded", seed=operation.seed, rate=rate)
                yield Fact(name=voice.say("numbers-seed"), value=value)
            case Dressing() if operation.kind is Kind.BUNKER_SANDING:
                value = _sand_used(operation.sand, "numbers-in-each-bunker", voice)
                yield Fact(name=voice.say("numbers-sand"), value=value)
            case _:
                yield from _further(operation, voice)


def _further(operation: Operation, voice: Voice) -> Iterator[Fact]:
    """Work of which nothing is computed: the sizes as they were typed, where they were."""
    match operation:
        case SandInjection() if said := _injected(operation, voice):
            yield Fact(name=_named(operation.kind, 1, voice), value=said)
        case ProductUse():
            watered = voice.say("numbers-watered-in", words=operation.water_in) if operation.water_in else ""
            said = voice.clauses([part for part in (operation.product, operation.rate, watered) if part])
            yield Fact(name=_named(operation.kind, 1, voice), value=said)
        case HeightOfCut():
            said = voice.say("numbers-height-to", after=length(operation.to_mm, voice))
            if operation.from_mm is not None:
                before, after = length(operation.from_mm, voice), length(operation.to_mm, voice)
                said = voice.say("numbers-height-from-to", before=before, after=after)
            yield Fact(name=capital(voice.say("numbers-height")), value=said)
        case Trenching() if said := _trench(operation, voice):
            yield Fact(name=voice.say("numbers-trench"), value=said)
        case _:
            pass


def _injected(injection: SandInjection, voice: Voice) -> str:
    sizes, parts = [], []
    if injection.diameter_mm is not None:
        sizes.append(voice.say("numbers-wide", width=length(injection.diameter_mm, voice)))
    if injection.depth_mm is not None:
        sizes.append(voice.say("numbers-deep", depth=length(injection.depth_mm, voice)))
    if injection.across_mm is not None and injection.along_mm is not None:
        apart = spacing(injection.across_mm, injection.along_mm, voice)
        sizes.append(voice.say("numbers-apart", spacing=apart))
    if sizes:
        parts.append(voice.say("numbers-injected-holes", sizes=voice.listed(sizes)))
    if injection.sand is not None:
        sand = _sand_used(injection.sand, "numbers-on-each-surface", voice)
        parts.append(voice.say("numbers-injected-sand", sand=sand))
    return voice.clauses(parts)


def _trench(trench: Trenching, voice: Voice) -> str:
    sizes = []
    if trench.length_m is not None:
        sizes.append(voice.say("numbers-long", length=distance(trench.length_m, voice)))
    if trench.width_mm is not None:
        sizes.append(voice.say("numbers-wide", width=length(trench.width_mm, voice)))
    if trench.depth_mm is not None:
        sizes.append(voice.say("numbers-deep", depth=length(trench.depth_mm, voice)))
    return voice.listed(sizes)


def _named(kind: Kind, passes: int, voice: Voice) -> str:
    return voice.say("numbers-work", kind=capital(voice.name("kind", kind)), passes=passes)


def _holes_made(tining: Tining, voice: Voice) -> str:
    return voice.say(
        "numbers-tined",
        width=length(tining.diameter_mm, voice),
        depth=length(tining.depth_mm, voice),
        spacing=spacing(tining.across_mm, tining.along_mm, voice),
        share=_share(tining, voice),
    )


def _grooves_cut(grooving: Grooving, voice: Voice) -> str:
    return voice.say(
        "numbers-grooved",
        width=length(grooving.blade_mm, voice),
        depth=length(grooving.depth_mm, voice),
        spacing=length(grooving.spacing_mm, voice),
        share=_share(grooving, voice),
    )


def _share(operation: Operation, voice: Voice) -> str:
    opening = opening_of(operation)
    return percent(opening.area_fraction, voice) if opening else ""


def _sand_used(sand: Sand, each: str, voice: Voice) -> str:
    value = sand.amount
    match sand.basis:
        case SandBasis.TONNES_EACH:
            return voice.say(each, mass=sand_mass(value, voice))
        case SandBasis.TONNES_IN_ALL:
            return voice.say("numbers-in-all", mass=sand_mass(value, voice))
        case SandBasis.DEPTH_MM:
            return voice.say("numbers-deep", depth=length(value, voice))
        case SandBasis.KG_PER_M2:
            return sand_rate(value, voice)


def _holes(sums: list[SurfaceSums], voice: Voice) -> Iterator[Fact]:
    holes = [one.holes for one in sums if one.holes]
    if not holes:
        return
    value = in_all = amount(sum(holes), voice)
    if len(holes) > 1:
        value = voice.say("numbers-holes-of-several", each=amount(sum(holes) / len(holes), voice), all=in_all)
    yield Fact(name=voice.say("numbers-holes"), value=value)


def _sand(sums: list[SurfaceSums], voice: Voice) -> Iterator[Fact]:
    masses = [one.sand_t for one in sums if one.sand_t]
    if not masses:
        return
    mass, density = sand_mass(sum(masses), voice), bulk_density(sums[0].density_t_per_m3, voice)
    if len(masses) > 1:
        each = sand_mass(sum(masses) / len(masses), voice)
        value = voice.say("numbers-sand-of-several", mass=mass, each=each, density=density)
    else:
        value = voice.say("numbers-sand-of-one", mass=mass, density=density)
    yield Fact(name=voice.say("numbers-sand"), value=value)
    room = [one.infill_mm for one in sums]
    surplus = [one.surplus_mm for one in sums]
    if max(room) > 0:
        value = layers(min(room), max(room), voice)
        if max(surplus) < _PRINTED_MM:
            value = voice.say("numbers-layer-inside", inside=value)
        else:
            on_top = layers(min(surplus), max(surplus), voice)
            value = voice.say("numbers-layers", inside=value, on_top=on_top)
        yield Fact(name=voice.say("numbers-layer"), value=value)
