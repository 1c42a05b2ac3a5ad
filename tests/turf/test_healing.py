"""Healing: what a job disturbs and the growth that mends it, against hand arithmetic, print, limits and directions."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.turf.geometry import hole_area_fraction
from swardcast.turf.growth import GRASSES, growth_fraction
from swardcast.turf.healing import (
    BACK_TO_NORMAL_LAG_DAYS,
    COVER_COMPLETE,
    GROOVE_AS_A_HOLE,
    HOLE_RATE_MM_PER_GROWTH_DAY,
    HOLES_CLOSED,
    OPEN_HOLES_WEIGHT,
    RIM_GROWTH_MM_PER_GROWTH_DAY,
    SAND_RATE_PER_GROWTH_DAY,
    SETTLED,
    SOLID_LASTING_SHARE,
    STRIPPED_RATE_PER_GROWTH_DAY,
    Layers,
    Opening,
    disruption_left,
    growth_at_pace,
    growth_days_needed,
    layers_left,
    layers_of,
    rim_growth_days,
)
from swardcast.turf.milestones import Disruption, complete_cover_days, milestone_days
from tests.turf.law_by_hand import HandJob, left_by_hand, needed_by_hand

THRESHOLDS = (SETTLED, HOLES_CLOSED, COVER_COMPLETE)
HEAVY_MM, LIGHT_MM = 2.4, 0.3

shares = st.floats(0, 1)
surpluses_mm = st.floats(0, 5)
growths = st.floats(0, 60)
holes = st.lists(st.tuples(st.floats(0.05, 1), st.floats(2, 40)), max_size=3)
jobs = st.builds(
    HandJob, surplus_mm=surpluses_mm, holes=holes.map(tuple), stripped=shares | st.just(0.0)
)  # what a club may do to a surface


def _opening(lasting_share: float, heals_as_mm: float, *, spacing_mm: float = 50.8) -> Opening:
    area = hole_area_fraction(diameter_mm=heals_as_mm, across_mm=spacing_mm, along_mm=spacing_mm)
    return Opening(
        area_fraction=area,
        lasting_share=lasting_share,
        half_width_mm=heals_as_mm / 2,
        heals_as_mm=heals_as_mm,
        room_mm=0.0,
    )


def _layers(job: HandJob, *, spacing_mm: float = 50.8) -> Layers:
    openings = [_opening(share, wide, spacing_mm=spacing_mm) for share, wide in job.holes]
    return layers_of(openings, job.surplus_mm, job.stripped)


def _hollow(diameter_mm: float, surplus_mm: float = 0.0) -> HandJob:
    return HandJob(surplus_mm=surplus_mm, holes=((1.0, diameter_mm),))


def test_the_constants_are_those_that_the_documents_state() -> None:
    # Judgement: sand, weight of open holes, groove, solid tine and thresholds. Fitted: 2.70 and 13 (refit in this
    # folder). 0.187 is 0.34 x 0.55 by hand; 0.9 mm is after the pitch marks of the test on the rim below.
    assert (SAND_RATE_PER_GROWTH_DAY, HOLE_RATE_MM_PER_GROWTH_DAY, OPEN_HOLES_WEIGHT) == (0.40, 2.70, 0.10)
    assert round(STRIPPED_RATE_PER_GROWTH_DAY, 9) == 0.187
    assert (GROOVE_AS_A_HOLE, SOLID_LASTING_SHARE, RIM_GROWTH_MM_PER_GROWTH_DAY) == (6.0, 0.5, 0.9)
    assert (*THRESHOLDS, BACK_TO_NORMAL_LAG_DAYS) == (0.05, 0.02, 0.01, 13.0)


# Day 0 and growth days to 0.05, 0.02 and 0.01. Where one part heals alone the numbers are by pocket calculator,
# ln(amount / threshold) / rate; where two heal together scipy.optimize.brentq found the root, and it was put back:
# 12.7 mm under heavy sand, G = 10.3566: 0.56920 exp(-4.14264) = 0.009040; 0.1 exp(-2.20180) = 0.011060;
# 1 - 0.990960 x 0.988940 = 0.0200. Heavy sand hides 1 - exp(-2.4/2.85) = 0.56920, light 1 - exp(-0.3/2.85) = 0.09991.
BY_HAND = [
    # 1 - 0.43080 x 0.9
    pytest.param(_hollow(12.7, HEAVY_MM), 0.61228, (7.3762, 10.3566, 12.7849), id="12.7 mm hollow, heavy sand"),
    # 1 - 0.90009 x 0.9
    pytest.param(_hollow(12.7, LIGHT_MM), 0.18992, (4.8123, 8.4364, 11.3550), id="12.7 mm hollow, light sand"),
    pytest.param(_hollow(6.35, HEAVY_MM), 0.61228, (6.4145, 8.6958, 10.4183), id="6.35 mm hollow, heavy sand"),
    pytest.param(_hollow(6.35, LIGHT_MM), 0.18992, (3.3301, 5.5734, 7.2636), id="6.35 mm hollow, light sand"),
    # 12.7 / 2.7 = 4.70370 growth days for each factor e: x ln 2, ln 5 and ln 10
    pytest.param(_hollow(12.7), 0.1, (3.2604, 7.5703, 10.8307), id="12.7 mm hollow, no sand"),
    pytest.param(_hollow(6.35), 0.1, (1.6302, 3.7852, 5.4153), id="6.35 mm hollow, no sand"),
    # ln 11.384 = 2.43221, ln 28.460 = 3.34850 and ln 56.920 = 4.04164, over 0.40
    pytest.param(HandJob(surplus_mm=HEAVY_MM), 0.56920, (6.0805, 8.3712, 10.1041), id="heavy sand alone"),
    # half of the hole lasts: 0.1 x 0.5 = 0.05; ln 2.5 and ln 5 x 12 / 2.7
    pytest.param(HandJob(holes=((0.5, 12.0),)), 0.05, (0.0, 4.0724, 7.1531), id="12 mm solid, no sand"),
    pytest.param(
        HandJob(surplus_mm=HEAVY_MM, holes=((0.5, 12.0),)), 0.59074, (6.6814, 9.2822, 11.3322), id="12 mm solid, heavy"
    ),
    # a groove of 2 mm heals like a hole of 12 mm: ln 2, ln 5, ln 10 x 12 / 2.7
    pytest.param(HandJob(holes=((1.0, 12.0),)), 0.1, (3.0807, 7.1531, 10.2337), id="2 mm grooves, deep"),
    # cut 3 mm deep three tenths of it count: ln 1.5 and ln 3 x 12 / 2.7
    pytest.param(HandJob(holes=((0.3, 12.0),)), 0.03, (0.0, 1.8021, 4.8827), id="2 mm grooves, shallow"),
    # beside 12.7 mm holes a groove of 2 mm closes sooner and changes nothing; one of 3 mm, like a hole of 18 mm, later
    pytest.param(
        HandJob(surplus_mm=HEAVY_MM, holes=((1.0, 12.7), (1.0, 12.0))), 0.61228, (7.3762, 10.3566, 12.7849),
        id="hollow and 2 mm grooves, heavy sand",
    ),
    pytest.param(HandJob(holes=((1.0, 12.7), (1.0, 18.0))), 0.1, (4.6210, 10.7296, 15.3506), id="hollow, 3 mm grooves"),
    # ln 20, ln 50 and ln 100, over 0.187
    pytest.param(HandJob(stripped=1.0), 1.0, (16.0200, 20.9199, 24.6266), id="all of the turf stripped"),
    pytest.param(HandJob(stripped=0.3), 0.3, (9.5816, 14.4816, 18.1882), id="three tenths stripped"),
    # 1 - 0.43080 x 0.7
    pytest.param(
        HandJob(surplus_mm=HEAVY_MM, stripped=0.3), 0.69844, (10.5259, 14.8841, 18.3847), id="stripped, heavy sand"
    ),
    pytest.param(HandJob(), 0.0, (0.0, 0.0, 0.0), id="no work"),
]  # fmt: skip


@pytest.mark.parametrize(("job", "day_zero", "growth_days"), BY_HAND)
def test_day_zero_and_the_growth_needed_are_those_of_hand_arithmetic(
    job: HandJob, day_zero: float, growth_days: tuple[float, ...]
) -> None:
    layers = _layers(job)
    assert disruption_left(layers) == pytest.approx(day_zero, abs=0.00001)
    assert [growth_days_needed(layers, at) for at in THRESHOLDS] == pytest.approx(list(growth_days), abs=0.0001)


@given(jobs, growths, st.floats(0.3, 3))
def test_what_is_left_is_that_of_the_formula_for_any_job(job: HandJob, growth: float, pace: float) -> None:
    left = disruption_left(_layers(job), growth, pace)
    assert left == pytest.approx(left_by_hand(growth * pace, [job]), abs=5e-6)  # parts below a millionth are dropped
    assert 0 <= left <= 1


@given(jobs, st.sampled_from(THRESHOLDS))
def test_the_growth_needed_is_the_root_that_another_finder_gives(job: HandJob, threshold: float) -> None:
    # Parts below a millionth are dropped: at a threshold of 0.01 that is worth up to 3e-6 / (0.01 x 0.0675 a day, the
    # slowest rate here, 2.7 / 40).
    assert growth_days_needed(_layers(job), threshold) == pytest.approx(needed_by_hand(threshold, job), abs=0.006)


def test_two_jobs_one_on_the_other_heal_together_by_hand_arithmetic() -> None:
    # Light sand and 12.7 mm holes; five growth days later the same again. The first has left
    # 0.09991 exp(-2) = 0.013522 of sand and 0.1 exp(-1.062992) = 0.034542 of holes, so on the second day 0
    # 1 - 0.986478 x 0.965458 x 0.90009 x 0.9 = 0.228478; brentq gives 9.5602 growth days to 0.02.
    first = _layers(_hollow(12.7, LIGHT_MM))
    old = layers_left(first, 5.0)
    both = (*_layers(_hollow(12.7, LIGHT_MM)), *old)
    assert disruption_left(old) == pytest.approx(0.047597, abs=1e-6)
    assert disruption_left(both) == pytest.approx(0.228478, abs=1e-6)
    expected = needed_by_hand(0.02, _hollow(12.7, LIGHT_MM), HandJob(LIGHT_MM, ((1.0, 12.7),), ahead=5.0))
    assert expected == pytest.approx(9.5602, abs=0.0001)
    assert growth_days_needed(both, 0.02) == pytest.approx(expected, abs=1e-6)


def test_a_surface_that_heals_slowly_has_more_left_when_the_next_job_comes() -> None:
    # At half the pace ten growth days do what five do: 0.047597 as above.
    assert disruption_left(layers_left(_layers(_hollow(12.7, LIGHT_MM)), 10.0, 0.5)) == pytest.approx(
        0.047596, abs=1e-6
    )


@given(jobs, jobs, growths, st.sampled_from(THRESHOLDS))
def test_work_on_a_surface_that_has_not_healed_never_heals_it_earlier(
    old: HandJob, new: HandJob, growth: float, threshold: float
) -> None:
    left = layers_left(_layers(old), growth)
    both = (*_layers(new), *left)
    alone = max(growth_days_needed(_layers(new), threshold), growth_days_needed(left, threshold))
    assert growth_days_needed(both, threshold) >= alone - 1e-6
    together = 1 - (1 - disruption_left(_layers(new))) * (1 - disruption_left(left))  # chance, both by random
    assert disruption_left(both) == pytest.approx(together, abs=1e-9)


def test_heavy_sand_leaves_about_the_green_cover_that_was_photographed() -> None:
    # Iowa State University saw 38.3 % of green cover on day 0 after coring and heavy sand (author and year not at
    # hand). Here sand and open holes leave 38.8 %; the depth that hides is judgement, hence 5 points.
    assert 1 - disruption_left(_layers(_hollow(12.7, HEAVY_MM))) == pytest.approx(0.383, abs=0.05)


def test_small_holes_heal_in_half_the_time_of_holes_twice_as_wide() -> None:
    # Landreth, Karcher & Richardson 2007, USGA Turfgrass and Environmental Research Online 6(19), abstract:
    # quarter-inch holes healed in half the time of half-inch ones.
    for threshold in THRESHOLDS:
        small, large = (growth_days_needed(_layers(_hollow(wide)), threshold) for wide in (6.35, 12.7))
        assert small / large == pytest.approx(0.5, abs=1e-6)


def test_under_heavy_sand_small_holes_are_ahead_by_less() -> None:
    # Sand takes its own time whatever the tine; by hand 8.6958 / 10.3566 = 0.840 for holes closed. Landreth et al.
    # 2007 (as above) do not say how much sand lay on top.
    small, large = (growth_days_needed(_layers(_hollow(wide, HEAVY_MM)), HOLES_CLOSED) for wide in (6.35, 12.7))
    assert small / large == pytest.approx(0.840, abs=0.001)
    assert 0.5 < small / large < 1


@given(st.floats(15, 200), st.floats(15, 200), st.floats(2, 14), surpluses_mm)
def test_the_spacing_of_holes_makes_no_difference(one: float, other: float, wide: float, surplus: float) -> None:
    # Landreth, Karcher & Richardson 2007, as above: the spacing made no difference.
    job = _hollow(wide, surplus)
    assert _layers(job, spacing_mm=one) == _layers(job, spacing_mm=other)


def test_pitch_marks_that_were_watched_mend_in_the_days_that_the_law_gives() -> None:
    # Pitch marks of 16 to 29 mm mend in 10 to 18 days in the season: Young, Richardson & Karcher 2010, ASA abstract
    # 76-14, and Bigelow et al. 2008, European Turfgrass Society p. 49. By hand ln 5 x 16 / 2.7 = 9.54 and
    # ln 5 x 29 / 2.7 = 17.29 growth days, and a summer day is nearly one.
    small, large = (growth_days_needed(_layers(_hollow(wide)), HOLES_CLOSED) for wide in (16.0, 29.0))
    assert (small, large) == pytest.approx((9.54, 17.29), abs=0.01)
    assert 9 <= small < large <= 18


def test_a_wide_hole_waits_for_its_rim_however_fast_the_surface_heals() -> None:
    # Radius 10 mm at 0.9 mm a growth day: 11.11. The law gives ln 5 x 20 / 2.7 = 11.92, at a pace of 1.5 7.95.
    layers, rim = _layers(_hollow(20.0)), rim_growth_days([_opening(1.0, 20.0), _opening(0.5, 30.0)])
    assert rim == pytest.approx(11.111, abs=0.001)
    assert growth_at_pace(layers, HOLES_CLOSED, 1.0, rim) == pytest.approx(11.92, abs=0.01)
    assert growth_at_pace(layers, HOLES_CLOSED, 1.5, rim) == rim
    assert growth_at_pace(layers, COVER_COMPLETE, 1.5, rim) == pytest.approx(math.log(10) * 20 / 2.7 / 1.5)
    # Putts roll true before the holes are closed: ln 2 x 20 / 2.7 = 5.13, at 1.5 3.42.
    assert growth_at_pace(layers, SETTLED, 1.5, rim) == pytest.approx(3.42, abs=0.01)


@pytest.mark.parametrize(
    ("openings", "expected"),
    # Lasting radius over 0.9: 6.35 / 0.9 = 7.056; half of a solid tine's lasts: 0.5 x 6 / 0.9 = 3.333.
    [([_opening(1.0, 12.7)], 7.056), ([_opening(0.5, 12.0)], 3.333), ([], 0.0)],
    ids=["hollow", "solid", "sand alone"],
)
def test_the_rim_needs_its_lasting_radius_over_its_fastest_growth(openings: list[Opening], expected: float) -> None:
    assert rim_growth_days(openings) == pytest.approx(expected, abs=0.001)


def test_a_surface_that_is_less_disturbed_than_the_milestone_needs_no_growth() -> None:
    # A shallow groove of 0.15 of a hole's weight is 0.015, below 0.02; then no rim holds it up either.
    layers = _layers(HandJob(holes=((0.15, 18.0),)))
    assert growth_days_needed(layers, HOLES_CLOSED) == 0
    assert growth_at_pace(layers, HOLES_CLOSED, 1.0, 30.0) == 0
    assert growth_days_needed((), COVER_COMPLETE) == 0


def test_work_that_disturbs_nothing_has_no_layers() -> None:
    assert layers_of([], 0.0) == ()
    assert layers_left(_layers(_hollow(12.7, HEAVY_MM)), 500.0) == ()


@given(jobs, growths, growths)
def test_what_is_left_never_rises_with_growth(job: HandJob, one: float, other: float) -> None:
    less, more = sorted((one, other))
    assert disruption_left(_layers(job), more) <= disruption_left(_layers(job), less) + 1e-12


@given(jobs, surpluses_mm, st.sampled_from(THRESHOLDS))
def test_more_surplus_sand_never_heals_earlier(job: HandJob, other: float, threshold: float) -> None:
    less, more = (
        growth_days_needed(_layers(HandJob(surplus, job.holes, job.stripped)), threshold)
        for surplus in sorted((job.surplus_mm, other))
    )
    assert less <= more + 1e-4  # parts below a millionth are dropped


@given(st.floats(2, 40), st.floats(2, 40), surpluses_mm, st.sampled_from([0.5, 1.0]), st.sampled_from(THRESHOLDS))
def test_a_wider_tine_never_heals_earlier_under_the_same_surplus(
    one: float, other: float, surplus_mm: float, lasting: float, threshold: float
) -> None:
    # With the same sand *spread* a wider tine may heal earlier, since it takes in more of it.
    narrow, wide = (
        growth_days_needed(_layers(HandJob(surplus_mm, ((lasting, diameter),))), threshold)
        for diameter in sorted((one, other))
    )
    assert narrow <= wide + 1e-9


@given(jobs, shares, st.sampled_from(THRESHOLDS))
def test_more_stripped_turf_never_heals_earlier(job: HandJob, other: float, threshold: float) -> None:
    less, more = (
        growth_days_needed(_layers(HandJob(job.surplus_mm, job.holes, stripped)), threshold)
        for stripped in sorted((job.stripped, other))
    )
    assert less <= more + 1e-4  # parts below a millionth are dropped


@given(st.floats(2, 40), surpluses_mm, st.sampled_from(THRESHOLDS))
def test_a_solid_tine_never_heals_later_than_a_hollow_one(wide: float, surplus_mm: float, threshold: float) -> None:
    solid, hollow = (
        growth_days_needed(_layers(HandJob(surplus_mm, ((lasting, wide),))), threshold) for lasting in (0.5, 1.0)
    )
    assert solid <= hollow + 1e-9


@given(st.floats(-5, 20), st.floats(-5, 20), jobs)
def test_a_warmer_spell_below_the_optimum_never_heals_later(one: float, other: float, job: HandJob) -> None:
    colder, warmer = sorted((one, other))
    growth = growth_fraction(np.array([[colder], [warmer]]) * np.ones((1, 200)), GRASSES["cool-season"].curve)
    disruption = Disruption(layers=_layers(job))
    days = [milestone_days(row[np.newaxis], disruption) for row in growth]
    for name in ("settled", "holes_closed", "back_to_normal"):
        assert np.all(getattr(days[1], name) <= getattr(days[0], name) + 1e-9)
    covered = [complete_cover_days(row[np.newaxis], disruption) for row in growth]
    assert np.all(covered[1] <= covered[0] + 1e-9)
