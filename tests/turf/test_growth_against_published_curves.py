"""Growth against the two published curves, the healing curve and what every such curve must do.

The values are arithmetic on the published formula, worked outside the code: exp(-((T - T0) / s)^2 / 2).
"""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.turf.growth import GRASSES, PUBLISHED_COOL, PUBLISHED_WARM, GrowthCurve, growth_fraction

HEALING = GRASSES["cool-season"].curve

# Gelernter & Stowell 2005, "Improved overseeding programs 1. The role of weather", Golf Course Management; in Celsius
# Woods 2014, Asian Turfgrass Center: cool-season T0 20, s 5.5; warm-season T0 31, s 7, no fall above T0.
COOL = [(5, 0.0243), (8, 0.0925), (10, 0.1915), (12, 0.3472), (15, 0.6615), (18, 0.9360), (20, 1.0), (25, 0.6615)]
WARM = [(15, 0.0734), (20, 0.2909), (25, 0.6926), (28, 0.9123), (31, 1.0), (35, 1.0), (42, 1.0)]
# The same formula with s = 7.0, the width that the recovery records want (turf/published_recoveries.py).
HEAL = [(5, 0.1007), (8, 0.2301), (10, 0.3604), (12, 0.5205), (15, 0.7748), (18, 0.9600), (20, 1.0), (25, 0.7748)]

temperatures = st.floats(-60, 60)
curves = st.sampled_from([PUBLISHED_COOL, PUBLISHED_WARM, *(grass.curve for grass in GRASSES.values())])


def _growth(temperature_c: float, curve: GrowthCurve) -> float:
    return float(growth_fraction(np.array([temperature_c]), curve)[0])


@pytest.mark.parametrize(("temperature_c", "expected"), COOL, ids=str)
def test_the_cool_season_curve_gives_the_published_growth(temperature_c: float, expected: float) -> None:
    assert _growth(temperature_c, PUBLISHED_COOL) == pytest.approx(expected, abs=0.00005)


@pytest.mark.parametrize(("temperature_c", "expected"), WARM, ids=str)
def test_the_warm_season_curve_gives_the_published_growth_and_never_falls(
    temperature_c: float, expected: float
) -> None:
    assert _growth(temperature_c, PUBLISHED_WARM) == pytest.approx(expected, abs=0.00005)


@pytest.mark.parametrize(("temperature_c", "expected"), HEAL, ids=str)
def test_the_healing_curve_gives_the_arithmetic_of_its_wider_bell(temperature_c: float, expected: float) -> None:
    assert _growth(temperature_c, HEALING) == pytest.approx(expected, abs=0.00005)


@pytest.mark.parametrize(
    ("temperature_f", "curve"),
    # Gelernter & Stowell, 'Predicting turf performance', Grounds Maintenance magazine, undated: growth reaches 100 %
    # of its potential at 68 F (cool-season) and is best at about 88 F (warm-season).
    [(68, PUBLISHED_COOL), (88, PUBLISHED_WARM)],
    ids=["cool-season at 68 F", "warm-season at 88 F"],
)
def test_growth_is_at_its_best_at_the_temperature_in_fahrenheit_that_was_printed(
    temperature_f: float, curve: GrowthCurve
) -> None:
    assert _growth((temperature_f - 32) / 1.8, curve) == pytest.approx(1.0, abs=0.001)


def test_the_two_published_curves_cross_at_24_84_degrees() -> None:
    # By hand: (T - 20) / 5.5 = (31 - T) / 7, so T = (7 x 20 + 5.5 x 31) / 12.5 = 310.5 / 12.5 = 24.84.
    assert _growth(24.84, PUBLISHED_COOL) == pytest.approx(_growth(24.84, PUBLISHED_WARM), abs=1e-9)
    assert _growth(24.0, PUBLISHED_COOL) > _growth(24.0, PUBLISHED_WARM)
    assert _growth(26.0, PUBLISHED_COOL) < _growth(26.0, PUBLISHED_WARM)


def test_meadow_grass_grows_best_at_18_degrees() -> None:
    # Woods, July 2014, 'Growth potential (GP) and optimum temperatures', Asian Turfgrass Center blog: practitioners
    # set annual meadow-grass to 18 C.
    meadow_grass = GRASSES["annual meadow-grass"].curve
    assert _growth(18, meadow_grass) == 1
    assert _growth(20, meadow_grass) < 1


def test_only_the_cool_season_grass_claims_a_fit_on_records() -> None:
    # The records in turf/published_recoveries.py are of cool-season greens.
    assert [name for name, grass in GRASSES.items() if grass.fitted] == ["cool-season"]


@given(temperatures, curves)
def test_growth_lies_between_none_and_the_best_day(temperature_c: float, curve: GrowthCurve) -> None:
    assert 0 <= _growth(temperature_c, curve) <= 1


@given(st.floats(0, 40))
def test_cool_season_growth_is_the_same_as_far_below_the_optimum_as_above(distance_c: float) -> None:
    for curve in (PUBLISHED_COOL, HEALING):
        below, above = (_growth(curve.optimum_c + sign * distance_c, curve) for sign in (-1, 1))
        assert below == pytest.approx(above, rel=1e-9)


@given(st.floats(-20, 20), st.floats(-20, 20))
def test_below_the_optimum_a_warmer_day_never_grows_less(one: float, other: float) -> None:
    colder, warmer = sorted((one, other))
    for curve in (PUBLISHED_COOL, PUBLISHED_WARM, HEALING):
        assert _growth(colder, curve) <= _growth(warmer, curve)


def test_a_frozen_day_grows_next_to_nothing() -> None:
    # By hand: exp(-(20 / 5.5)^2 / 2) = exp(-6.61) = 0.0013; exp(-(31 / 7)^2 / 2) = exp(-9.81) = 0.00006.
    assert _growth(0, PUBLISHED_COOL) == pytest.approx(0.0013, abs=0.00005)
    assert _growth(0, PUBLISHED_WARM) == pytest.approx(0.000055, abs=0.000005)


def test_a_day_without_a_temperature_has_no_growth_figure() -> None:
    for curve in (PUBLISHED_COOL, PUBLISHED_WARM):
        growth = growth_fraction(np.array([15.0, math.nan, 20.0]), curve)
        assert np.isnan(growth).tolist() == [False, True, False]


def test_growth_keeps_the_shape_of_what_it_is_given() -> None:
    assert growth_fraction(np.full((3, 7), 12.0), PUBLISHED_COOL).shape == (3, 7)
