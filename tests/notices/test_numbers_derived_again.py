"""Every number of the part "In numbers", derived again from the sizes in the plan and the areas of the surfaces.

By hand, geometry only. A round hole takes pi d² / 4, and each pass makes one in across x along; a groove takes its width
out of each spacing. Room is that share times the depth, by the inside of a hollow tine. A layer of 1 mm on a square metre
is a litre, so that mm times t/m3 gives kg/m2. Passes and kinds of work add up.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from datetime import datetime
from pathlib import Path
from typing import Final

import pytest
import yaml

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.notices.notice import Notice
from swardcast.quantities import Sand, SandBasis
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Progress, Step
from swardcast.records.operations import (
    Dressing,
    Grooving,
    HeightOfCut,
    Kind,
    Operation,
    ProductUse,
    Seeding,
    Stripping,
    Tining,
    Trenching,
)
from swardcast.records.plan import Job, Part
from tests.conftest import DEMO
from tests.outlook.small_club import SmallClub, moment

MOMENTS: Final = ("2027-04-20 08:00", "2027-08-24 10:00", "2027-09-14 09:30", "2027-12-06 08:00")
NUMBER: Final = re.compile(r"(?<!\w)\d[\d,]*(?:\.\d+)?(?!\w)")


def numbers_of(notice: Notice) -> list[str]:
    """Each number of the part as printed, in order; the 3 of "t/m3" is none."""
    facts = [fact for section in notice.sections if section.part is Part.IN_NUMBERS for fact in section.facts]
    return [number for fact in facts for number in NUMBER.findall(f"{fact.name}: {fact.value}")]


def demo_areas_m2() -> dict[str, float]:
    found: dict[str, float] = {}
    for kind, there in yaml.safe_load((DEMO / "surfaces.yaml").read_text(encoding="utf-8")).items():
        for hole, given in there.get("holes", {}).items():
            found[f"{kind.removesuffix('s')}-{hole}"] = _in_m2(given["area"] if isinstance(given, dict) else given)
        for given in there.get("named", ()):
            found[given["id"]] = _in_m2(given["area"])
    return found


def _in_m2(text: str) -> float:
    number, unit = text.split()
    assert unit == "m2"
    return float(number)


def as_typed(*values: float | None) -> list[str]:
    return [f"{value:,g}" for value in values if value is not None]


def in_percent(share: float) -> str:
    return f"{100 * share:.1f}" if share < 0.1 else f"{100 * share:.0f}"


def in_two_figures(count: float) -> str:
    return f"{float(f'{count:.1e}'):,.0f}"


def in_tonnes(mass_t: float) -> str:
    return f"{round(mass_t, 1):g}" if mass_t < 10 else f"{mass_t:,.0f}"


def sizes_of(operation: Operation) -> Iterator[str]:
    match operation:
        case Tining(diameter_mm=wide, across_mm=across, along_mm=along, depth_mm=deep, passes=passes):
            yield from as_typed(passes if passes > 1 else None, wide, deep, across, along)
            yield in_percent(passes * math.pi * wide**2 / 4 / (across * along))
        case Grooving(blade_mm=wide, spacing_mm=apart, depth_mm=deep, passes=passes):
            yield from as_typed(passes if passes > 1 else None, wide, deep, apart)
            yield in_percent(passes * wide / apart)
        case Stripping(depth_mm=deep, share=share):
            yield from [*as_typed(deep), in_percent(share)]
        case Seeding(rate_g_per_m2=rate):
            yield from as_typed(rate)
        case HeightOfCut(from_mm=before, to_mm=after):
            yield from as_typed(before, after)
        case Trenching(length_m=long, width_mm=wide, depth_mm=deep):
            yield from as_typed(long, wide, deep)
        case ProductUse(product=product, rate=rate, water_in=water) if rate or water:
            yield from NUMBER.findall(f"{product}; {rate}; {water}")
        case Dressing(kind=Kind.BUNKER_SANDING, sand=sand):
            yield from as_typed(sand.amount)
        case _:
            return


def room_mm(operations: Iterable[Operation]) -> float:
    room = 0.0
    for operation in operations:
        match operation:
            case Tining(across_mm=across, along_mm=along, depth_mm=deep, passes=passes):
                bore = operation.inside_diameter_mm or operation.diameter_mm
                room += passes * math.pi * bore**2 / 4 / (across * along) * deep
            case Grooving(blade_mm=wide, spacing_mm=apart, depth_mm=deep, passes=passes):
                room += passes * wide / apart * deep
            case _:
                pass
    return room


def sand_t(sand: Sand, area_m2: float, all_m2: float, density: float) -> float:
    match sand.basis:
        case SandBasis.TONNES_EACH:
            return sand.amount
        case SandBasis.TONNES_IN_ALL:
            return sand.amount * area_m2 / all_m2
        case SandBasis.KG_PER_M2:
            return sand.amount * area_m2 / 1000
        case SandBasis.DEPTH_MM:
            return sand.amount * density * area_m2 / 1000


def derived(
    job: Job, work: Mapping[str, Sequence[Operation]], areas_m2: Mapping[str, float], density: float
) -> list[str]:
    """The numbers of a job; `work` is what was really done on each surface, or planned for it."""
    found = [number for operation in job.operations for number in sizes_of(operation)]
    all_m2 = sum(areas_m2[name] for name in work)
    holes, masses, inside, on_top = [], [], [], []
    for name, operations in work.items():
        area = areas_m2[name]
        tines = [one for one in operations if isinstance(one, Tining)]
        holes.append(sum(one.passes * area * 1e6 / (one.across_mm * one.along_mm) for one in tines))
        spread = [one for one in operations if isinstance(one, Dressing) and one.kind is Kind.TOPDRESSING]
        masses.append(sum(sand_t(one.sand, area, all_m2, density) for one in spread))
        layer, room = masses[-1] * 1000 / density / area, room_mm(operations)
        inside.append(min(layer, room))
        on_top.append(max(0.0, layer - room))
    several = len(work) > 1
    if sum(holes):
        found += [in_two_figures(sum(holes) / len(holes))] * several + [in_two_figures(sum(holes))]
    if sum(masses):
        found += [in_tonnes(sum(masses))] + [in_tonnes(sum(masses) / len(masses))] * several + as_typed(density)
        for layers in (inside, on_top) if max(inside) > 0 else ():
            if layers is inside or max(on_top) >= 0.05:  # printed as more than 0.0
                found += dict.fromkeys(f"{layer:.1f}" for layer in (min(layers), max(layers)))
    return found


def really_done(records: ClubRecords, job: Job, as_of: datetime) -> dict[str, list[Operation]]:
    """What the log says of work as it was done stands in the place of the plan."""
    work = {name: list(job.operations) for name in job.surfaces}
    for entry in records.entries:
        if isinstance(entry, Progress) and entry.step is Step.DONE and entry.job == job.id and entry.head.at <= as_of:
            for name in entry.surfaces:
                for really in entry.as_done:
                    work[name] = [really if one.kind is really.kind else one for one in work[name]]
    return work


@pytest.mark.parametrize("when", MOMENTS)
def test_every_number_of_the_demo(
    demo_bulletin_at: Callable[[str], Bulletin], demo_records: ClubRecords, when: str
) -> None:
    bulletin, areas = demo_bulletin_at(when), demo_areas_m2()
    standards = yaml.safe_load((DEMO / "club.yaml").read_text(encoding="utf-8"))["standards"]
    density = float(standards["sand density"].removesuffix(" t/m3"))
    for notice in bulletin.notices:
        job = demo_records.jobs[notice.id]
        assert numbers_of(notice) == derived(job, really_done(demo_records, job, bulletin.as_of), areas, density), (
            job.id
        )
    assert any(map(numbers_of, bulletin.notices))


SYNTHETIC: Final = {
    # 2 x pi x 12² / 4 / 2500 = 9.0 %, 800 holes a m2; room by the bore of 9 mm: 5.09 % of 60 mm = 3.1 mm; 2 t on 500 m2 of
    # 1.56 t/m3 are 2.6 mm, on 250 m2 5.1 mm.
    "passes": (
        "greens 1-2 and tee 1",
        ["hollow tining: {diameter: 12 mm, inside diameter: 9 mm, spacing: 50 x 50 mm, depth: 60 mm, passes: 2}", "topdressing: {sand: 2 t each}"],
        "2 12 60 50 50 9.0 330,000 1,000,000 6 2 1.56 2.6 3.1 0.0 2.1",
    ),
    # 10 t on 1,250 m2 are 8 kg/m2, so 5.1 mm, of which 3 / 30 x 10 = 1 mm goes into the grooves; 10 / 3 = 3.3 t on average.
    "in-all": (
        "greens 1-2 and tee 1",
        ["scarifying: {blade: 3 mm, spacing: 30 mm, depth: 10 mm}", "topdressing: {sand: 10 t}"],
        "3 10 30 10 10 3.3 1.56 1.0 4.1",
    ),
    # pi x 6² / 4 / 625 = 4.5 %, room 4.5 mm; 2 kg/m2 are 1.3 mm, 1 t on 500 m2: all of it goes in.
    "needles": (
        "green 1",
        ["needle tining: {diameter: 6 mm, spacing: 25 x 25 mm, depth: 100 mm}", "topdressing: {sand: 2 kg/m2}"],
        "6 100 25 25 4.5 800,000 1 1.56 1.3",
    ),
    # 1.5 / 15 twice = 20 %; two kinds of holes: 100 + 400 a m2 on 500 m2; pi x 20² / 4 / 10,000 = 3.1 %.
    "two-tines": (
        "green 1",
        [
            "verticutting: {blade: 1.5 mm, spacing: 15 mm, depth: 2 mm, passes: 2}",
            "deep tining: {diameter: 20 mm, spacing: 100 x 100 mm, depth: 250 mm}",
            "solid tining: {diameter: 8 mm, spacing: 50 x 50 mm, depth: 90 mm}",
        ],
        "2 1.5 2 15 20 20 250 100 100 3.1 8 90 50 50 2.0 250,000",
    ),
    # 1.5 mm on 500 m2: 750 litres, 1.2 t each, 2.3 t in all; without a hole no layer is told.
    "sand-alone": ("greens 1-2", ["topdressing: {sand: 1.5 mm}"], "2.3 1.2 1.56"),
}  # fmt: skip
"""Surfaces, operations and the numbers by hand; a green of this club has 500 m2 and a tee 250 m2."""


@pytest.fixture(scope="module")
def synthetic(tmp_path_factory: pytest.TempPathFactory) -> dict[str, tuple[Job, Notice]]:
    club = SmallClub(Path(tmp_path_factory.mktemp("synthetic")))
    for name, (surfaces, operations, _) in SYNTHETIC.items():
        club.job(name, "06-01", *operations, surfaces=surfaces)
    records = club.records()
    notices = compose_bulletin(records, moment("05-01")).notices
    return {notice.id: (records.jobs[notice.id], notice) for notice in notices}


@pytest.mark.parametrize("name", SYNTHETIC)
def test_every_number_of_a_made_up_job(synthetic: Mapping[str, tuple[Job, Notice]], name: str) -> None:
    job, notice = synthetic[name]
    assert numbers_of(notice) == SYNTHETIC[name][2].split()
    areas = {"green-1": 500.0, "green-2": 500.0, "tee-1": 250.0}
    assert derived(job, dict.fromkeys(job.surfaces, job.operations), areas, 1.56) == SYNTHETIC[name][2].split()
