"""The sums of a job on one surface against hand arithmetic and what is common practice."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.quantities import Sand, SandBasis
from swardcast.records.club import Grass
from swardcast.records.log import HeldBackBy
from swardcast.records.operations import Dressing, Grooving, Kind, Operation, OtherWork, Stripping, Tining
from swardcast.records.translate import USUAL_DAYS, SurfaceSums, opening_of, sand_depth_mm, surface_sums
from swardcast.turf.growth import BRAKES, GRASSES
from swardcast.turf.healing import HOLES_CLOSED, growth_days_needed
from tests.turf.law_by_hand import HandJob, needed_by_hand

GREEN_M2 = 500.0
DENSITY = 1.5  # t/m3, Woods 2017, 'Sand topdressing and growth potential': makes 1 mm 1.5 kg/m2


def _tines(  # the defaults are a common pattern
    kind: Kind, diameter_mm: float, *, inside_mm: float | None = None, spacing_mm: float = 50.0, depth_mm: float = 80.0,
    passes: int = 1,
) -> Tining:  # fmt: skip
    return Tining(
        kind=kind,
        diameter_mm=diameter_mm,
        inside_diameter_mm=inside_mm,
        across_mm=spacing_mm,
        along_mm=spacing_mm,
        depth_mm=depth_mm,
        passes=passes,
    )


def _scarify(blade_mm: float = 2.0, *, spacing_mm: float = 25.0, depth_mm: float = 2.0, passes: int = 1) -> Grooving:
    return Grooving(
        kind=Kind.SCARIFYING, blade_mm=blade_mm, spacing_mm=spacing_mm, depth_mm=depth_mm, passes=passes
    )  # fmt: skip


def _sand(amount: float, basis: SandBasis) -> Dressing:
    return Dressing(kind=Kind.TOPDRESSING, sand=Sand(amount, basis))


def _sums(*work: Operation, area_m2: float | None = GREEN_M2, all_m2: float | None = None) -> SurfaceSums:
    return surface_sums(work, area_m2=area_m2, all_area_m2=all_m2, density=DENSITY)


def test_a_hollow_tined_and_sanded_green_is_that_of_hand_arithmetic() -> None:
    # 12 mm outside, 10 mm inside, 50 x 50 mm, 80 mm deep, 6 kg/m2 of sand on 500 m2.
    job = _sums(_tines(Kind.HOLLOW_TINING, 12, inside_mm=10), _sand(6, SandBasis.KG_PER_M2))
    assert job.holes == pytest.approx(200_000)  # 1e6 / 2500 = 400 a square metre
    assert job.disturbed_fraction == pytest.approx(0.045239, abs=1e-6)  # pi x 144 / 10,000
    assert job.removed_fraction == pytest.approx(0.031416, abs=1e-6)  # pi x 100 / 10,000
    assert job.room_mm == pytest.approx(2.5133, abs=1e-4)  # 0.031416 x 80
    assert job.spread_mm == pytest.approx(4.0)  # 6 / 1.5
    assert job.infill_mm == pytest.approx(2.5133, abs=1e-4)
    assert job.surplus_mm == pytest.approx(1.4867, abs=1e-4)
    assert job.sand_t == pytest.approx(3.0)  # 6 kg x 500 m2
    assert job.density_t_per_m3 == DENSITY
    # exp(-1.4867 / 2.85) = 0.59355; open holes count a tenth: 1 - 0.59355 x 0.9 = 0.46581.
    assert job.day_zero == pytest.approx(0.4658, abs=1e-4)
    assert job.rim_growth_days == pytest.approx(6.667, abs=0.001)  # 6 mm at 0.9 mm a growth day
    assert (job.opened, job.validated) == (True, True)
    needed = needed_by_hand(0.02, HandJob(1.4867, ((1.0, 12.0),)))
    assert growth_days_needed(job.layers, 0.02) == pytest.approx(needed, abs=0.001)


def test_a_solid_tine_removes_nothing_and_half_of_its_hole_lasts() -> None:
    job = _sums(_tines(Kind.SOLID_TINING, 8, depth_mm=125))
    assert job.disturbed_fraction == pytest.approx(0.020106, abs=1e-6)  # pi x 64 / 10,000
    assert job.removed_fraction == 0
    assert job.room_mm == pytest.approx(2.5133, abs=1e-4)  # 0.020106 x 125
    assert job.day_zero == pytest.approx(0.05)  # half of a tenth, whatever the spacing; no sand on top
    assert job.rim_growth_days == pytest.approx(2.222, abs=0.001)  # half of 4 mm at 0.9 mm a growth day


def test_scarifying_opens_the_width_of_its_blades_and_makes_no_holes() -> None:
    # 2 mm at 25 mm, 2 mm deep: light scarifying works 1 to 2 mm into the surface (common practice, no published
    # source). 2 / 25 = 0.08; 0.08 x 2 = 0.16 mm of room. So shallow a cut counts 2 / 10 of a tenth.
    job = _sums(_scarify())
    assert (job.disturbed_fraction, job.removed_fraction, job.day_zero) == pytest.approx((0.08, 0.08, 0.02))
    assert job.room_mm == pytest.approx(0.16)
    assert job.holes == 0
    assert job.rim_growth_days == pytest.approx(0.222, abs=0.001)  # 0.2 x 1 mm at 0.9 mm a growth day


@pytest.mark.parametrize(
    ("depth_mm", "day_zero"), [(1, 0.01), (3, 0.03), (10, 0.1), (20, 0.1)], ids=lambda value: f"{value:g}"
)
def test_a_groove_counts_more_the_deeper_it_is_until_it_is_as_deep_as_a_hole(depth_mm: float, day_zero: float) -> None:
    # A tenth of the surface at 10 mm and below; above that in proportion.
    job = _sums(_scarify(depth_mm=depth_mm))
    assert job.day_zero == pytest.approx(day_zero)
    # A 2 mm blade heals like a hole of 12 mm: ln(D0 / 0.02) x 12 / 2.7.
    needed = max(0.0, math.log(day_zero / 0.02) * 12 / 2.7)
    assert growth_days_needed(job.layers, HOLES_CLOSED) == pytest.approx(needed, abs=1e-6)


@pytest.mark.parametrize(("depth_mm", "opened"), [(1.0, False), (2.0, False), (2.1, True)], ids=str)
def test_grooves_that_leave_no_more_than_two_in_a_hundred_do_not_open_the_turf(
    depth_mm: float, *, opened: bool
) -> None:
    # 2 mm of 10 mm is a fifth of a tenth: 2 %, the very share at which holes count as closed.
    job = _sums(_scarify(depth_mm=depth_mm))
    assert job.opened is opened
    assert (growth_days_needed(job.layers, HOLES_CLOSED) > 0) is opened


def test_fraise_mowing_strips_its_share_and_takes_no_sand() -> None:
    job = _sums(Stripping(kind=Kind.FRAISE_MOWING, depth_mm=15, share=0.8))
    assert (job.day_zero, job.removed_fraction, job.disturbed_fraction) == pytest.approx((0.8, 0.8, 0.0))
    assert (job.room_mm, job.holes, job.rim_growth_days, job.openings) == (0, 0, 0, ())
    assert (job.opened, job.validated) == (True, False)
    # ln(0.8 / 0.02) / 0.187 = 3.68888 / 0.187
    assert growth_days_needed(job.layers, HOLES_CLOSED) == pytest.approx(19.727, abs=0.001)


def test_of_two_fraise_mowings_the_wider_counts() -> None:
    work = [Stripping(kind=Kind.FRAISE_MOWING, depth_mm=15, share=share) for share in (0.3, 0.8)]
    assert _sums(*work).day_zero == _sums(*reversed(work)).day_zero == pytest.approx(0.8)


def test_fraise_mowing_beside_holes_and_sand_is_the_product_of_what_each_leaves() -> None:
    strip = Stripping(kind=Kind.FRAISE_MOWING, depth_mm=15, share=0.3)
    job = _sums(strip, _tines(Kind.SOLID_TINING, 12, depth_mm=50), _sand(3.5, SandBasis.DEPTH_MM))
    # Room pi x 144 / 10,000 x 50 = 2.2619, surplus 1.2381 hides 1 - exp(-1.2381 / 2.85) = 0.35235:
    # 1 - 0.64765 x 0.95 x 0.7 = 0.56931.
    assert job.day_zero == pytest.approx(0.56931, abs=1e-5)


def test_a_whole_job_adds_up_its_operations_and_passes() -> None:
    # Scarify twice, hollow-tine, solid-tine, 2 mm of sand, brush in.
    job = _sums(
        _scarify(passes=2),
        _tines(Kind.HOLLOW_TINING, 12, depth_mm=50),
        _tines(Kind.SOLID_TINING, 8, spacing_mm=100, depth_mm=100),
        _sand(2, SandBasis.DEPTH_MM),
        OtherWork(kind=Kind.BRUSHING_IN),
    )
    # 2 x 0.08 + 0.045239 + pi x 64 / 40,000 = 0.16 + 0.045239 + 0.005027.
    assert job.disturbed_fraction == pytest.approx(0.210266, abs=1e-6)
    assert job.removed_fraction == pytest.approx(0.205239, abs=1e-6)
    # 0.16 x 2 + 0.045239 x 50 + 0.005027 x 100 = 0.32 + 2.26195 + 0.50265.
    assert job.room_mm == pytest.approx(3.08460, abs=1e-4)
    assert (job.infill_mm, job.surplus_mm) == pytest.approx((2.0, 0.0))
    assert job.holes == pytest.approx(250_000)  # (400 + 100) x 500
    assert job.day_zero == pytest.approx(0.1)  # of several openings the widest counts, a tenth
    assert job.rim_growth_days == pytest.approx(6.667, abs=0.001)  # that of the 12 mm holes
    assert len(job.openings) == 3
    # The holes of 12 mm close last: ln 5 x 12 / 2.7.
    assert growth_days_needed(job.layers, HOLES_CLOSED) == pytest.approx(7.1531, abs=0.0001)


def test_two_passes_of_a_tine_make_twice_the_holes() -> None:
    once, twice = (_sums(_tines(Kind.SOLID_TINING, 8, passes=passes)) for passes in (1, 2))
    assert once.holes == pytest.approx(200_000)
    assert twice.holes == pytest.approx(400_000)
    assert twice.room_mm == pytest.approx(2 * once.room_mm)


def test_a_hollow_tine_without_an_inside_diameter_removes_what_it_disturbs() -> None:
    job = _sums(_tines(Kind.HOLLOW_TINING, 12))
    assert job.removed_fraction == job.disturbed_fraction


@pytest.mark.parametrize("basis", list(SandBasis))
def test_the_same_sand_told_in_four_ways_is_the_same_depth(basis: SandBasis) -> None:
    # 2 mm at 1.5 t/m3: 3 kg/m2; on 500 m2 1.5 t; on 18 such greens 27 t.
    amounts = {
        SandBasis.DEPTH_MM: 2.0, SandBasis.KG_PER_M2: 3.0, SandBasis.TONNES_EACH: 1.5, SandBasis.TONNES_IN_ALL: 27.0
    }  # fmt: skip
    job = _sums(_sand(amounts[basis], basis), all_m2=18 * GREEN_M2)
    assert job.spread_mm == pytest.approx(2.0)
    assert job.sand_t == pytest.approx(1.5)


def test_a_mass_on_a_green_of_unknown_area_has_no_depth() -> None:
    for basis in (SandBasis.TONNES_EACH, SandBasis.TONNES_IN_ALL):
        assert sand_depth_mm(Sand(1.4, basis), area_m2=None, all_area_m2=None, density=DENSITY) is None
    job = _sums(_tines(Kind.SOLID_TINING, 8), _sand(1.4, SandBasis.TONNES_EACH), area_m2=None)
    assert (job.holes, job.sand_t, job.spread_mm) == (None, None, 0)


def test_sand_for_a_bunker_is_no_sand_on_the_turf() -> None:
    job = _sums(Dressing(kind=Kind.BUNKER_SANDING, sand=Sand(20, SandBasis.TONNES_EACH)))
    assert (job.spread_mm, job.day_zero) == (0, 0)


def test_brushing_and_sanding_open_nothing() -> None:
    assert opening_of(OtherWork(kind=Kind.BRUSHING_IN)) is None
    assert opening_of(_sand(2, SandBasis.DEPTH_MM)) is None


@pytest.mark.parametrize(
    ("kind", "validated"),
    [(Kind.HOLLOW_TINING, True), (Kind.SOLID_TINING, True), (Kind.NEEDLE_TINING, False), (Kind.DEEP_TINING, False)],
    ids=lambda value: value.value if isinstance(value, Kind) else str(value),
)
def test_only_the_kinds_of_tine_among_the_recovery_records_count_as_validated(kind: Kind, *, validated: bool) -> None:
    # The records in turf/published_recoveries.py have hollow and solid tines and grooves.
    assert _sums(_tines(kind, 12)).validated is validated


@pytest.mark.parametrize(("diameter_mm", "validated"), [(6.35, True), (15.9, True), (16.1, False), (19.0, False)])
def test_a_tine_wider_than_any_in_the_records_is_not_validated(diameter_mm: float, *, validated: bool) -> None:
    # The widest of the published recoveries is 15.9 mm (Wisconsin, 6 September 2011).
    assert _sums(_tines(Kind.HOLLOW_TINING, diameter_mm)).validated is validated


def test_the_causes_that_a_log_may_name_are_those_that_growth_knows() -> None:
    assert {cause.value for cause in HeldBackBy} == set(BRAKES)


def test_only_a_regulator_and_a_frost_have_usual_days() -> None:
    # Two weeks: Volterrani et al. 2012, HortTechnology 22:479 (no effect left by week 3). A frost: its own day.
    assert {
        HeldBackBy.DULL_WEATHER: None,
        HeldBackBy.UNFED: None,
        HeldBackBy.GROWTH_REGULATOR: 14,
        HeldBackBy.FROST_ON_THE_LEAF: 1,
    } == USUAL_DAYS


def test_the_grasses_of_a_club_file_are_those_that_growth_knows() -> None:
    assert {grass.value for grass in Grass} == set(GRASSES)


@pytest.mark.parametrize("depth_mm", [125.0, 150.0])
@pytest.mark.parametrize("spacing_mm", [50.0, 55.0, 57.0])
def test_a_small_solid_tine_leaves_the_holes_and_takes_the_sand_that_are_usual(
    depth_mm: float, spacing_mm: float
) -> None:
    # Common practice, no published source: about 8 mm worked 125 to 150 mm deep leaves some 150,000 to 200,000 holes
    # on one green (here of 500 m2) and takes in about 1 to 1.5 t of sand. The order of magnitude is what counts:
    # straight-sided holes filled to the top hold up to half as much again, since solid-tine holes close in part.
    job = _sums(_tines(Kind.SOLID_TINING, 8, spacing_mm=spacing_mm, depth_mm=depth_mm))
    assert job.holes is not None
    assert 150_000 <= job.holes <= 200_000
    room_t = job.room_mm * DENSITY * GREEN_M2 / 1000
    assert 1.0 <= room_t <= 1.5 * 1.6


def test_thirty_tonnes_dress_the_greens_of_eighteen_holes_once() -> None:
    # Common practice, no published source: about 30 t for 18 greens, and 150 to 200 t a year. On 500 m2 each that is
    # 30 / 18 = 1.67 t a green, 3.3 kg/m2 or 2.2 mm; Woods 2017 (Japan, 17 courses) has a median of 7.7 mm a year and
    # Woods knows 35 mm at most, so five to seven such dressings are the right order of magnitude.
    job = _sums(_sand(30, SandBasis.TONNES_IN_ALL), all_m2=18 * GREEN_M2)
    assert job.sand_t == pytest.approx(1.667, abs=0.0005)
    assert 1 < job.spread_mm < 4
    assert 7.7 < 5 * job.spread_mm < 7 * job.spread_mm < 35


@given(st.floats(0, 10), st.floats(0, 10), st.sampled_from([8.0, 12.0, 19.0]))
def test_more_sand_never_fills_less_nor_disturbs_less(one: float, other: float, diameter_mm: float) -> None:
    less, more = (
        _sums(_tines(Kind.HOLLOW_TINING, diameter_mm), _sand(amount, SandBasis.DEPTH_MM))
        for amount in sorted((one, other))
    )
    assert less.infill_mm <= more.infill_mm <= more.room_mm
    assert less.day_zero <= more.day_zero
    assert math.isclose(more.infill_mm + more.surplus_mm, more.spread_mm, abs_tol=1e-12)
