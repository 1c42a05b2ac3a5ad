"""Organic matter diluted by sand, against printed mass balances; each row names its source.

Woods 2021b: Woods M., 23 April 2021, "Organic matter reduction by hollow-tines, solid-tines, and sand topdressing",
Asian Turfgrass Center. Woods 2021c: Woods M., 3 October 2021, "Sand and organic matter have different bulk densities",
Asian Turfgrass Center.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.turf.organic_matter import diluted_fraction, filled_fraction, layer_density_t_per_m3
from swardcast.turf.sand import infill_mm

SHARES = st.floats(0.001, 0.6)
FILLED = st.floats(0.0, 0.5)
DEPTHS = st.floats(0.0, 10.0)


@pytest.mark.parametrize(("organic", "printed"), [(0.048, 1.2), (0.031, 1.3)])
def test_a_layer_is_as_dense_as_printed(organic: float, printed: float) -> None:
    """Woods 2021c: 4.8 % gives 1.2 and 3.1 % gives 1.3 g/cm3, both rounded to one decimal there."""
    assert layer_density_t_per_m3(organic) == pytest.approx(printed, abs=0.05)


def test_the_densities_of_nothing_but_organic_matter_and_nothing_but_sand_are_the_limits() -> None:
    assert layer_density_t_per_m3(1.0) == pytest.approx(0.22)
    assert layer_density_t_per_m3(0.0) == pytest.approx(1.56)


def test_replacing_a_part_of_the_top_layer_by_sand_dilutes_it_as_printed() -> None:
    """Woods 2021b: the top 2 cm hold 6.7 %; 12 mm tines at 5 x 5 cm take 4.5 % of it out, sand goes in: 6.3 %."""
    filled = filled_fraction(0.045239, 70.0, 20.0, 1.0)
    assert diluted_fraction(0.067, layer_mm=20.0, filled=filled, on_top_mm=0.0) == pytest.approx(0.063, abs=0.0005)


def test_a_millimetre_of_sand_on_top_dilutes_as_printed_and_so_does_a_second_one() -> None:
    """Woods 2021b: 6.7 % in the top 2 cm becomes 6.2 % with 1 mm of sand, and 5.8 % with another."""
    once = diluted_fraction(0.067, layer_mm=20.0, filled=0.0, on_top_mm=1.0)
    assert once == pytest.approx(0.062, abs=0.0005)
    assert diluted_fraction(once, layer_mm=20.0, filled=0.0, on_top_mm=1.0) == pytest.approx(0.058, abs=0.0005)


def test_the_rule_of_thumb_by_volume_differs_since_sand_is_heavier_than_mat() -> None:
    """Woods 2019, "Three reasons why sand topdressing is best expressed as a depth": 8 % plus 1 mm in 20, about 7.6 %,
    a rule of thumb by volume. By mass it is 7.42 %: our sum differs from this print, and why is in its own words."""
    by_mass = diluted_fraction(0.08, layer_mm=20.0, filled=0.0, on_top_mm=1.0)
    assert by_mass == pytest.approx(0.0742, abs=0.00005)
    assert by_mass < 0.076


def test_holes_deeper_than_the_layer_count_in_the_layer_alone() -> None:
    """By hand: 5 % of the surface, 70 mm deep, in a layer of 20 mm: 5 % of it; 10 mm deep: half of that."""
    assert filled_fraction(0.05, 70.0, 20.0, 1.0) == pytest.approx(0.05)
    assert filled_fraction(0.05, 10.0, 20.0, 1.0) == pytest.approx(0.025)
    assert filled_fraction(0.05, 70.0, 20.0, 0.4) == pytest.approx(0.02)


def test_without_sand_nothing_is_diluted() -> None:
    """Woods 2021b: cores taken out and holes that collapse leave the share of organic matter as it was."""
    assert diluted_fraction(0.067, layer_mm=20.0, filled=0.0, on_top_mm=0.0) == pytest.approx(0.067)


def test_a_layer_of_sand_as_thick_as_the_sample_leaves_none_in_it() -> None:
    assert diluted_fraction(0.067, layer_mm=20.0, filled=0.1, on_top_mm=25.0) == 0.0


@given(SHARES, FILLED, DEPTHS, DEPTHS)
def test_more_sand_never_leaves_more_organic_matter(before: float, filled: float, less: float, more: float) -> None:
    thin, thick = sorted((less, more))
    after = [diluted_fraction(before, layer_mm=20.0, filled=filled, on_top_mm=depth) for depth in (thin, thick)]
    assert after[1] <= after[0] + 1e-12
    assert after[0] <= before + 1e-12


@given(SHARES, FILLED)
def test_filled_holes_dilute_like_as_much_sand_on_top(before: float, filled: float) -> None:
    """A homogeneous layer knows no difference: Woods 2021b finds 3.312 % for filled holes and 3.318 % for cores."""
    in_holes = diluted_fraction(before, layer_mm=20.0, filled=filled, on_top_mm=0.0)
    on_top = diluted_fraction(before, layer_mm=20.0, filled=0.0, on_top_mm=20.0 * filled)
    assert in_holes == pytest.approx(on_top, rel=1e-12)


def test_the_sand_that_a_published_coring_takes() -> None:
    """Woods 2021b: 12 mm, 5 x 5 cm, 7 cm deep: 3.167 mm."""
    assert infill_mm(0.0452389, 70.0) == pytest.approx(3.167, abs=0.0005)
