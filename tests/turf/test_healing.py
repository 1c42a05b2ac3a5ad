"""Healing: day-zero disruption and growth days against hand arithmetic, limits, directions, observations."""

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
    HEALING_RATE_PER_GROWTH_DAY,
    HOLES_CLOSED,
    LOG_SPREAD,
    SETTLED,
    SOLID_LASTING_SHARE,
    HealingRate,
    Opening,
    combined_disruption,
    day_zero_disruption,
    disruption_left,
    growth_days_needed,
)
from swardcast.turf.milestones import Disruption, days_at, milestone_days
from swardcast.turf.sand import infill_mm

K = 0.34  # per growth day, as fitted on tests/scenarios/healing_records.yaml (test_fit_of_the_healing_model.py)

shares = st.floats(0, 1)
diameters_mm = st.floats(5, 25)
surpluses_mm = st.floats(0, 5)


def _tine(diameter_mm: float, lasting_share: float = 1.0, spacing_mm: float = 50.8) -> Opening:
    area = hole_area_fraction(diameter_mm=diameter_mm, across_mm=spacing_mm, along_mm=spacing_mm)
    return Opening(
        area_fraction=area,
        lasting_share=lasting_share,
        half_width_mm=diameter_mm / 2,
        room_mm=infill_mm(area, 75),
    )


def _needed(day_zero: float, threshold: float, half_width_mm: float = 0.0) -> float:
    return growth_days_needed(day_zero, threshold, rate_per_growth_day=K, half_width_mm=half_width_mm)


def _closed_after(tine: Opening, surplus_mm: float) -> float:
    return _needed(day_zero_disruption([tine], surplus_mm), HOLES_CLOSED, tine.half_width_mm)


def test_the_constants_are_those_of_the_published_fit() -> None:
    # Judgement for the thresholds and the solid tine; k, spread and lag from the refit in this folder.
    assert (HEALING_RATE_PER_GROWTH_DAY, LOG_SPREAD, BACK_TO_NORMAL_LAG_DAYS) == (0.34, 0.24, 13.0)
    assert (SETTLED, HOLES_CLOSED, COVER_COMPLETE, SOLID_LASTING_SHARE) == (0.05, 0.02, 0.01, 0.5)


# Hand arithmetic, tines at 50.8 x 50.8 mm. Area: 12.7 mm pi/64 = 0.049087; 6.35 mm pi/256 = 0.012272; 12 mm
# 0.043825. Hidden: c = 1 - exp(-2.4/2.85) = 0.56920, 1 - exp(-0.3/2.85) = 0.09991.
DAY_ZERO = [
    # 1 - 0.43080 x 0.950913
    pytest.param([_tine(12.7)], 2.4, 0.59035, id="12.7 mm hollow, heavy sand"),
    # 1 - 0.90009 x 0.950913
    pytest.param([_tine(12.7)], 0.3, 0.14409, id="12.7 mm hollow, light sand"),
    # 1 - 0.43080 x 0.987728
    pytest.param([_tine(6.35)], 2.4, 0.57449, id="6.35 mm hollow, heavy sand"),
    # 1 - 0.43080 x (1 - 0.5 x 0.043825) = 1 - 0.43080 x 0.978088
    pytest.param([_tine(12.0, 0.5)], 2.4, 0.57864, id="12 mm solid, heavy sand"),
    # 2 mm grooves at 25 mm open 0.08: 1 - 0.43080 x 0.950913 x 0.92
    pytest.param([_tine(12.7), Opening(area_fraction=0.08, lasting_share=1, half_width_mm=1, room_mm=0)], 2.4, 0.62312,
                 id="12.7 mm hollow and grooves, heavy sand"),
    pytest.param([_tine(12.7)], 0.0, 0.04909, id="12.7 mm hollow, no surplus"),
    pytest.param([], 2.4, 0.56920, id="sand alone"),
    pytest.param([], 0.0, 0.0, id="no work"),
]  # fmt: skip


@pytest.mark.parametrize(("openings", "surplus_mm", "expected"), DAY_ZERO)
def test_day_zero_disruption_is_that_of_hand_arithmetic(
    openings: list[Opening], surplus_mm: float, expected: float
) -> None:
    assert day_zero_disruption(openings, surplus_mm) == pytest.approx(expected, abs=0.00001)


def test_heavy_sand_leaves_about_the_green_cover_that_was_photographed() -> None:
    # Iowa State University saw 38.3 % of green cover on day 0 after coring and heavy sand (author and year not at
    # hand); 12.7 mm hollow tines and 2.4 mm of surplus leave 41 %. The curve is judgement, hence 5 points.
    assert 1 - day_zero_disruption([_tine(12.7)], 2.4) == pytest.approx(0.383, abs=0.05)


@pytest.mark.parametrize(
    ("day_zero", "threshold", "expected"),
    # ln(D0 / threshold) / 0.34: ln 11.807 = 2.46869; ln 29.5175 = 3.38498; ln 59.035 = 4.07813; light sand
    # ln 2.8818 = 1.05841; ln 7.2045 = 1.97471; ln 14.409 = 2.66786.
    [
        (0.59035, SETTLED, 7.261),
        (0.59035, HOLES_CLOSED, 9.956),
        (0.59035, COVER_COMPLETE, 11.995),
        (0.14409, SETTLED, 3.113),
        (0.14409, HOLES_CLOSED, 5.808),
        (0.14409, COVER_COMPLETE, 7.847),
    ],
    ids=["heavy settled", "heavy closed", "heavy complete", "light settled", "light closed", "light complete"],
)
def test_growth_days_needed_are_those_of_hand_arithmetic(day_zero: float, threshold: float, expected: float) -> None:
    assert _needed(day_zero, threshold) == pytest.approx(expected, abs=0.001)


def test_a_surface_that_is_less_disturbed_than_the_milestone_needs_no_growth() -> None:
    assert _needed(0.02, HOLES_CLOSED, half_width_mm=30) == 0
    assert _needed(0.0, SETTLED) == 0


def test_a_very_wide_hole_waits_for_its_rim() -> None:
    # Radius 27 mm at 0.9 mm per growth day is 30 growth days by hand; by cover ln(0.1 / 0.02) / 0.34 = 4.73.
    # Pitch marks of 16 to 29 mm mend in 10 to 18 days: Young, Richardson & Karcher 2010, ASA abstract 76-14.
    assert _needed(0.1, HOLES_CLOSED, half_width_mm=27) == pytest.approx(30.0)
    assert _needed(0.1, HOLES_CLOSED) == pytest.approx(4.734, abs=0.001)


def test_a_threshold_of_nothing_left_is_never_reached() -> None:
    with pytest.raises(ZeroDivisionError):
        _needed(0.5, 0.0)


def test_disruption_left_after_the_growth_needed_is_the_threshold() -> None:
    # exp(-0.34 x 9.956) x 0.59035 = 0.03388 x 0.59035 = 0.0200 by hand.
    assert disruption_left(0.59035, 9.956, K) == pytest.approx(0.02, abs=0.00001)
    assert disruption_left(0.59035, 0.0, K) == 0.59035


def test_work_on_a_surface_that_has_not_healed_adds_up_by_hand_arithmetic() -> None:
    # 1 - 0.7 x 0.6 = 0.58; an undisturbed surface takes the new figure, a wholly disturbed one stays so.
    assert combined_disruption(0.3, 0.4) == pytest.approx(0.58)
    assert combined_disruption(0.0, 0.4) == pytest.approx(0.4)
    assert combined_disruption(1.0, 0.4) == 1


def test_the_law_hardly_feels_the_tine_under_heavy_sand_though_a_trial_did() -> None:
    # Landreth, Karcher & Richardson 2007, USGA TERO 6(19), abstract: quarter-inch holes healed in half the time of
    # half-inch ones. Our law differs, because under heavy sand nearly all of D0 is sand: by hand
    # ln(0.57449 / 0.02) / ln(0.59035 / 0.02) = 3.3578 / 3.3850 = 0.992. A known weakness, kept in sight here.
    ratio = _closed_after(_tine(6.35), 2.4) / _closed_after(_tine(12.7), 2.4)
    assert ratio == pytest.approx(0.992, abs=0.001)
    assert ratio > 0.5
    # Without surplus sand the tine counts: ln(0.012272 / 0.01) / ln(0.049087 / 0.01) = 0.2047 / 1.5910 = 0.129.
    small, large = (_needed(day_zero_disruption([_tine(d)], 0.0), COVER_COMPLETE) for d in (6.35, 12.7))
    assert small / large == pytest.approx(0.129, abs=0.001)


@given(diameters_mm, surpluses_mm, surpluses_mm)
def test_more_surplus_sand_never_heals_earlier(diameter_mm: float, one: float, other: float) -> None:
    less, more = sorted((one, other))
    assert _closed_after(_tine(diameter_mm), less) <= _closed_after(_tine(diameter_mm), more)


@given(diameters_mm, diameters_mm, surpluses_mm)
def test_a_wider_tine_never_heals_earlier_under_the_same_surplus(one: float, other: float, surplus_mm: float) -> None:
    # With the same sand *spread* a wider tine may heal earlier, since it takes in more of it.
    narrow, wide = sorted((one, other))
    assert _closed_after(_tine(narrow), surplus_mm) <= _closed_after(_tine(wide), surplus_mm)


@given(diameters_mm, surpluses_mm)
def test_a_solid_tine_never_heals_later_than_a_hollow_one(diameter_mm: float, surplus_mm: float) -> None:
    assert _closed_after(_tine(diameter_mm, 0.5), surplus_mm) <= _closed_after(_tine(diameter_mm), surplus_mm)


@given(shares, shares)
def test_work_never_makes_a_surface_whole_again(old: float, new: float) -> None:
    together = combined_disruption(old, new)
    assert max(old, new) - 1e-12 <= together <= 1


@given(st.lists(st.tuples(st.floats(0, 3), shares), max_size=5), surpluses_mm)
def test_day_zero_disruption_is_a_share_however_many_holes_overlap(
    holes: list[tuple[float, float]], surplus_mm: float
) -> None:
    openings = [Opening(area_fraction=a, lasting_share=s, half_width_mm=5, room_mm=0) for a, s in holes]
    assert 0 <= day_zero_disruption(openings, surplus_mm) <= 1


@given(st.floats(-5, 20), st.floats(-5, 20), st.floats(0.03, 1.0))
def test_a_warmer_spell_below_the_optimum_never_heals_later(one: float, other: float, day_zero: float) -> None:
    colder, warmer = sorted((one, other))
    temperatures = np.array([[colder], [warmer]]) * np.ones((1, 200))
    growth = growth_fraction(temperatures, GRASSES["cool-season"].curve)
    closed = [milestone_days(row[np.newaxis], Disruption(day_zero=day_zero)).holes_closed for row in growth]
    assert np.all(closed[1] <= closed[0] + 1e-9)


@given(st.lists(st.floats(-5, 30), min_size=1, max_size=8), shares, st.floats(0.01, 0.6))
def test_likely_lies_between_early_and_allow_until_and_no_day_is_negative(
    temperatures: list[float], day_zero: float, spread: float
) -> None:
    growth = growth_fraction(np.array(temperatures)[:, np.newaxis] * np.ones(150), GRASSES["cool-season"].curve)
    days = milestone_days(growth, Disruption(day_zero=day_zero, rate=HealingRate(log_spread=spread)))
    for samples in (days.settled, days.holes_closed, days.back_to_normal, days.complete_cover):
        assert np.all(samples >= 0)
        early, likely, until = (math.inf if day is None else day for day in days_at(samples, 0.1, 0.5, 0.9))
        assert early <= likely <= until
    assert np.all(days.settled <= days.holes_closed)
    assert np.all(days.holes_closed <= days.complete_cover)
    assert np.all(days.holes_closed <= days.back_to_normal)
