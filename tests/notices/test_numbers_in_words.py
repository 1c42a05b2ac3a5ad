"""A job's own sizes as a member reads them, in millimetres or in inches."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from swardcast.language.catalogue import BUILT_IN, built_in
from swardcast.language.voice import Voice
from swardcast.notices.numbers import facts_of_work
from swardcast.notices.words import percent
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
    Tining,
    Trenching,
)
from tests.outlook.small_club import SmallClub, moment

TINES = Tining(
    kind=Kind.HOLLOW_TINING, diameter_mm=12.7, inside_diameter_mm=None, across_mm=50.8, along_mm=50.8, depth_mm=76.2,
    passes=2,
)  # fmt: skip
BLADES = Grooving(kind=Kind.SCARIFYING, blade_mm=2, spacing_mm=25, depth_mm=3, passes=1)
FEED = ProductUse(
    kind=Kind.GRANULAR_FEED, product="slow nitrogen", re_entry="when dry", signs="at the 1st", label_read_by="A",
    label_read_on=date(2027, 5, 31), rate="30 g/m2", water_in="that evening",
)  # fmt: skip
IN_ALL = Sand(10.0, SandBasis.TONNES_IN_ALL)


@pytest.fixture(scope="module")
def job(tmp_path_factory: pytest.TempPathFactory) -> JobOutlook:
    club = SmallClub(Path(tmp_path_factory.mktemp("club")))
    club.job("spring", "06-01")
    return club.course(moment("05-30")).jobs["spring"]


def _with(job: JobOutlook, operations: tuple[Operation, ...]) -> JobOutlook:
    works = tuple(replace(work, operations=operations) for work in job.surfaces)
    return replace(job, job=replace(job.job, operations=operations), surfaces=works)


@pytest.mark.parametrize(
    ("operation", "british", "american"),
    [
        # Two passes of 12.7 mm holes: 2 x pi x 12.7² / (4 x 50.8²) = 9.8 % by hand; 2 mm of 25 mm are 8.0 %.
        (
            TINES,
            "Hollow tining, 2 passes: aeration holes 12.7 mm wide, 76.2 mm deep, 50.8 x 50.8 mm apart: 9.8 % of the surface",
            "Core aeration, 2 passes: aeration holes 1/2 in wide, 3 in deep, 2 x 2 in apart: 9.8% of the surface",
        ),
        (
            BLADES,
            "Scarifying: grooves 2 mm wide, 3 mm deep, 25 mm apart: 8.0 % of the surface",
            "Dethatching: grooves 0.079 in wide, 0.118 in deep, 1 in apart: 8.0% of the surface",
        ),
        (
            Seeding(kind=Kind.OVERSEEDING, seed="browntop bent", rate_g_per_m2=8),
            "Seed: browntop bent, 8 g on a square metre",
            "Seed: browntop bent, 1.64 lb per 1,000 sq ft",
        ),
        (
            HeightOfCut(kind=Kind.CUTTING_HEIGHT, from_mm=3.5, to_mm=4.5),
            "Cutting height: from 3.5 mm to 4.5 mm",
            "Mowing height: from 0.138 in to 0.177 in",
        ),
        (
            HeightOfCut(kind=Kind.CUTTING_HEIGHT, from_mm=None, to_mm=3.175),
            "Cutting height: to 3.175 mm",
            "Mowing height: to 1/8 in",
        ),
        (
            Trenching(kind=Kind.DRAINAGE_TRENCHING, length_m=180, width_mm=150, depth_mm=600),
            "Trench: 180 m long, 150 mm wide, 600 mm deep",
            "Trench: 590 ft long, 6 in wide, 24 in deep",
        ),
        (Trenching(kind=Kind.IRRIGATION_WORK, depth_mm=300), "Trench: 300 mm deep", "Trench: 12 in deep"),
        (
            SandInjection(kind=Kind.SAND_INJECTION, diameter_mm=12.7, depth_mm=250, sand=IN_ALL),
            "Sand injection: narrow holes 12.7 mm wide, 250 mm deep; sand, 10 tonnes in all",
            "Sand injection: narrow holes 1/2 in wide, 10 in deep; sand, 11 tons in all",
        ),
        (
            SandInjection(kind=Kind.SAND_INJECTION, sand=Sand(1.0, SandBasis.TONNES_EACH)),
            "Sand injection: sand, 1 tonne on each surface",
            "Sand injection: sand, 1.1 tons on each surface",
        ),
        (
            Dressing(kind=Kind.BUNKER_SANDING, sand=Sand(100.0, SandBasis.DEPTH_MM)),
            "Sand: 100 mm deep",
            "Sand: 4 in deep",
        ),
        (
            FEED,  # as typed, in any language
            "Granular feed: slow nitrogen; 30 g/m2; watered in: that evening",
            "Granular fertilizer: slow nitrogen; 30 g/m2; watered in: that evening",
        ),
    ],
)  # fmt: skip
def test_sizes_of_work(job: JobOutlook, operation: Operation, british: str, american: str) -> None:
    only = _with(job, (operation,))
    said = []
    for tag in BUILT_IN:
        (fact,) = facts_of_work(only, None, Voice(catalogue=built_in(tag), near=date(2027, 5, 30)))
        said.append(f"{fact.name}: {fact.value}".replace("\u00a0", " "))
    assert said == [british, american]


def test_work_whose_sizes_nobody_typed_has_no_numbers(job: JobOutlook) -> None:
    empty = (Trenching(kind=Kind.IRRIGATION_WORK), SandInjection(kind=Kind.SAND_INJECTION))
    only = _with(job, empty)
    assert list(facts_of_work(only, None, Voice.english(date(2027, 5, 30)))) == []


def test_a_share_never_has_a_decimal_that_rounding_brought() -> None:
    """9.97 % is printed with no decimal, as 10 % is."""
    voice = Voice.english(date(2027, 9, 14))
    assert [percent(share, voice).replace("\u00a0", " ") for share in (0.053, 0.0997, 0.1)] == ["5.3 %", "10 %", "10 %"]
