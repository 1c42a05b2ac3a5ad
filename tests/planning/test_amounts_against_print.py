"""Holes, shares, sand and a year's totals as the trade has printed them; each row names its source.

The small club has two greens of 500 m2 each.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from swardcast.planning.goals import times_a_year
from swardcast.quantities import Sand, SandBasis
from swardcast.reading.choices_file import usual_choices
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Kind
from swardcast.records.planning import YearlyGoal
from tests.planning.asked import blades, compared, comparison_of, sand, small_records, tines

INCH_MM = 25.4


@pytest.fixture
def records(tmp_path: Path) -> ClubRecords:
    return small_records(tmp_path / "club")


def test_a_common_coring_has_the_printed_holes_share_and_sand(records: ClubRecords) -> None:
    """Woods M., 2009, "Core aeration of putting greens ... how much is enough?", Asian Turfgrass Center: 5 x 5 cm has 400
    holes/m2, with 12 mm tines 4.5 %. Woods M., 2021, "Organic matter reduction by hollow-tines, solid-tines, and sand
    topdressing": 7 cm deep takes 3.167 mm of sand."""
    amounts = compared(records, tines(12, 50, 50, 70), sand(5)).amounts
    assert amounts.disturbed_fraction == pytest.approx(0.045, abs=0.0005)
    assert amounts.removed_fraction == pytest.approx(0.045, abs=0.0005)
    assert amounts.holes == pytest.approx(400 * 1000)
    assert [one.holes for one in amounts.surfaces] == pytest.approx([200_000, 200_000])
    assert [one.fits_mm for one in amounts.surfaces] == pytest.approx([3.167, 3.167], abs=0.0005)
    assert [one.surplus_mm for one in amounts.surfaces] == pytest.approx([1.833, 1.833], abs=0.0005)


def test_inside_diameter_counts_for_what_is_removed_and_outside_for_what_is_disturbed(records: ClubRecords) -> None:
    """A member's post of 20 August 2013 in a greenkeepers' association's forum prints 7.71 % for a tine of nominally 5/8 in
    that is 0.470 in wide inside, at 1.5 x 1.5 in."""
    tine = tines(0.625 * INCH_MM, 1.5 * INCH_MM, 1.5 * INCH_MM, 60, inside_mm=0.470 * INCH_MM)
    amounts = compared(records, tine).amounts
    assert amounts.removed_fraction == pytest.approx(0.0771, abs=0.00005)
    assert amounts.disturbed_fraction == pytest.approx(0.0771 * (0.625 / 0.470) ** 2, rel=0.001)


def test_solid_tines_disturb_and_remove_nothing(records: ClubRecords) -> None:
    """Common practice, no published source: tines of 8 mm worked 125 to 150 mm deep leave some 150,000 to 200,000 holes on
    one green and take in about 1 to 1.5 t of sand per green: as much as 2.5 kg/m2 on 500 m2, 1.25 t."""
    spikes = tines(8, 50, 50, 135, kind=Kind.SOLID_TINING)
    amounts = compared(records, spikes, sand(2.5, SandBasis.KG_PER_M2)).amounts
    assert amounts.removed_fraction == 0
    assert amounts.disturbed_fraction == pytest.approx(math.pi * 64 / 4 / 2500)
    assert 150_000 <= (amounts.surfaces[0].holes or 0) <= 200_000
    assert 1.0 <= (amounts.surfaces[0].sand_t or 0) <= 1.5
    assert amounts.surplus_t == pytest.approx(0)


def test_blades_take_the_printed_share_and_volume(records: ClubRecords) -> None:
    """Diegnau P., undated, "Linear aerification - is it for you?" (MSU Libraries): 3 mm blades at 1 in down to 1 3/4 in; by
    hand 11.8 % of the surface and 5.25 mm of the profile."""
    amounts = compared(records, blades(3, INCH_MM, 1.75 * INCH_MM), sand(10)).amounts
    assert amounts.disturbed_fraction == pytest.approx(0.1181, abs=0.00005)
    assert amounts.fits_t == pytest.approx(5.25 * 1.56 * 1000 / 1000, rel=0.001)


@pytest.mark.parametrize(
    ("density", "depth_mm", "printed_kg_per_m2"),
    [(1.5, 6.0, 9.0), (1.5, 0.488, 0.732), (1.5, 5.4, 8.1)],
    ids=["Woods 2017: 6 mm, 9 kg/m2", "Woods 2017: 150 lb/1000 ft2, about 0.5 mm", "Hempfling 2017: 81 t/ha, 5.4 mm"],
)
def test_tonnes_are_depth_times_density_times_area(
    tmp_path: Path, density: float, depth_mm: float, printed_kg_per_m2: float
) -> None:
    """Woods M., 3 September 2017, "Sand topdressing and growth potential"; 20 August 2017, "Sand topdressing to match grass
    growth"; Hempfling et al. 2017, Crop Science 57:602, quoted in Woods 2020: each at 1.5 t/m3. On 1,000 m2 as many kg/m2
    are as many tonnes."""
    amounts = compared(small_records(tmp_path / "club", density=density), sand(depth_mm)).amounts
    assert amounts.sand_t == pytest.approx(printed_kg_per_m2, rel=0.001)


PROGRAMMES = [  # inside diameter, across, along in mm; times a year
    ("1.2 cm at 5.1 x 5.1 cm, twice", 12, 51, 51, 2),
    ("1.2 cm at 3.8 x 3.4 cm, once", 12, 38, 34, 1),
    ("0.9 cm at 3.8 x 3.4 cm, twice", 9, 38, 34, 2),
    ("0.6 cm at 3.8 x 3.4 cm, four times", 6, 38, 34, 4),
]


@pytest.mark.parametrize(
    ("diameter_mm", "across_mm", "along_mm", "times"),
    [row[1:] for row in PROGRAMMES],
    ids=[row[0] for row in PROGRAMMES],
)
def test_the_programmes_of_a_published_trial_work_nearly_the_same_area_in_a_year(
    records: ClubRecords, diameter_mm: float, across_mm: float, along_mm: float, times: int
) -> None:
    """PhD dissertation, Clemson University, Plant & Environmental Science, TigerPrints all_dissertations/1154, abstract
    (author and year not seen): four programmes made to work alike, told by the inside diameter. By hand 8.7 to 9.9 % a
    year are removed."""
    tine = tines(diameter_mm + 3, across_mm, along_mm, 60, inside_mm=diameter_mm)
    each = compared(records, tine).amounts.removed_fraction
    assert each is not None
    assert 0.086 < times * each < 0.099


def test_the_close_pattern_of_that_trial_works_twice_as_much_each_time(records: ClubRecords) -> None:
    """The same abstract calls it twice; by hand 2.013."""
    close = compared(records, tines(16, 38, 34, 60, inside_mm=12)).amounts.removed_fraction
    usual = compared(records, tines(16, 51, 51, 60, inside_mm=12)).amounts.removed_fraction
    assert close is not None
    assert usual is not None
    assert close / usual == pytest.approx(2, abs=0.02)


def test_usual_choices_after_that_trial_remove_what_it_removed_and_disturb_more(records: ClubRecords) -> None:
    """The same abstract, by hand pi d^2 / (4 x 38 x 34): 12, 9 and 6 mm inside take 8.75, 4.92 and 2.19 %. Outside a tine
    is wider, so that it opens more than it takes out."""
    named = {one.name: one for one in usual_choices() if "inside, close" in one.name}
    rows = comparison_of(records, *named.values()).rows
    removed = {row.choice.name: row.amounts.removed_fraction for row in rows}
    assert removed == {
        "Hollow 12 mm inside, close": pytest.approx(0.0875, abs=0.0001),
        "Hollow 9 mm inside, close": pytest.approx(0.0492, abs=0.0001),
        "Hollow 6 mm inside, close": pytest.approx(0.0219, abs=0.0001),
    }
    assert all((row.amounts.disturbed_fraction or 0) > 1.5 * (row.amounts.removed_fraction or 0) for row in rows)


def test_the_smallest_usual_core_takes_out_the_printed_volume(records: ClubRecords) -> None:
    """Woods M., 8 March 2021, "...common maintenance practice doesn't reduce organic matter at all": cores of 4 mm, 3 cm long
    at 3 x 3 cm are 422 cm3/m2, printed from a rounded core; exactly 418.9, or 0.4189 mm."""
    (small,) = [one for one in usual_choices() if one.name.startswith("Hollow 4 mm")]
    (row,) = comparison_of(records, small).rows
    assert row.amounts.room_mm == pytest.approx(0.4189, abs=0.0001)
    assert row.amounts.room_mm == pytest.approx(0.422, rel=0.01)


def test_a_published_years_sand_adds_up(records: ClubRecords) -> None:
    """Wang R., Hempfling J.W., Clarke B.B., Murphy J.A., 2018, Agronomy Journal, abstract: 2.4 L/m2 in autumn, 2.4 in spring
    and 1.2 in summer, up to 6.0 L/m2 a year; 1 L/m2 is 1 mm."""
    rounds = [compared(records, sand(depth_mm)).amounts for depth_mm in (2.4, 2.4, 1.2)]
    assert sum(one.mean_mm(lambda each: each.spread_mm) or 0 for one in rounds) == pytest.approx(6.0)
    assert sum(one.sand_t or 0 for one in rounds) == pytest.approx(6.0 * 1.56)


def test_six_dressings_of_twenty_tonnes_are_the_years_layer_of_a_course(tmp_path: Path) -> None:
    """Rixon S. (STRI), undated, "Straight talking", Pitchcare: about 120 t a year for 18 holes in 6 dressings of 20 t. On 1 ha
    of greens, by hand at 1.5 t/m3, they are 12 kg/m2 or 8.0 mm; our 1,000 m2 get a tenth of each dressing."""
    each = compared(small_records(tmp_path / "club", density=1.5), sand(2, SandBasis.TONNES_IN_ALL)).amounts
    layer_mm = each.mean_mm(lambda one: one.spread_mm)
    assert layer_mm is not None
    assert 6 * layer_mm == pytest.approx(8.0)
    assert times_a_year(YearlyGoal(sand=Sand(8.0, SandBasis.DEPTH_MM)), each, density_t_per_m3=1.5).sand == 6


@pytest.mark.parametrize(
    ("diameter_in", "printed", "whole"),
    [(0.5, 22, 23), (0.75, 10, 11)],
    ids=["1/2 in tines: 22 and a bit", "3/4 in tines: 10 and a bit"],
)
def test_the_passes_to_half_of_the_surface_are_those_printed_and_the_part_that_is_left(
    records: ClubRecords, diameter_in: float, printed: int, whole: int
) -> None:
    """Minner D.D., reprinted SportsTurf October 2011 p. 19: on 3 in centres 22 and 10 passes for half of the surface, none on
    another ("100 % efficiency"). The prints leave out a part of a pass: exactly it is 22.9 and 10.2, so that the whole
    passes that reach it are 23 and 11."""
    amounts = compared(records, tines(diameter_in * INCH_MM, 3 * INCH_MM, 3 * INCH_MM, 60)).amounts
    assert amounts.disturbed_fraction is not None
    assert math.floor(0.5 / amounts.disturbed_fraction) == printed
    assert times_a_year(YearlyGoal(disturbed_fraction=0.5), amounts, density_t_per_m3=1.56).disturbed == whole


def test_five_per_cent_twice_are_ten_a_year(records: ClubRecords) -> None:
    """Woods M., 3 May 2021, "An especially lucid abstract about core aeration": 5 % removed in spring and in autumn."""
    tine = tines(math.sqrt(0.05 * 4 * 2500 / math.pi), 50, 50, 60)
    amounts = compared(records, tine).amounts
    assert times_a_year(YearlyGoal(removed_fraction=0.10), amounts, density_t_per_m3=1.56).removed == 2


def test_a_choice_that_removes_nothing_never_reaches_an_aim_for_it(records: ClubRecords) -> None:
    amounts = compared(records, tines(8, 50, 50, 100, kind=Kind.SOLID_TINING)).amounts
    times = times_a_year(YearlyGoal(removed_fraction=0.1, disturbed_fraction=0.02), amounts, density_t_per_m3=1.56)
    assert times.removed == math.inf
    assert times.disturbed == 1
    assert times.sand is None
