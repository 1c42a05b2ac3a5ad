"""Quantities in the reader's units; expected numbers come from pint, an independent library of units."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date
from fractions import Fraction
from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.language import measures
from swardcast.language.catalogue import PhraseError, built_in
from swardcast.language.house_phrases import with_house_phrases
from swardcast.language.voice import Voice
from swardcast.quantities import parse_length_mm

UNITS: Any = pint.UnitRegistry()
DAY = date(2027, 9, 14)
BRITISH = Voice(catalogue=built_in("en-GB"), near=DAY)
AMERICAN = Voice(catalogue=built_in("en-US"), near=DAY)


def converted(value: float, unit: str, to: str) -> float:
    return float(UNITS.Quantity(value, UNITS(unit).units).to(UNITS(to).units).magnitude)


def number_in(said: str) -> float:
    """The number before a unit, mixed fractions included."""
    written = re.match(r"[\d,./ ]*\d", said)
    assert written is not None, said
    return float(sum(Fraction(part.replace(",", "")) for part in written[0].split()))


def test_british_lengths_are_as_typed() -> None:
    said = [measures.length(mm, BRITISH) for mm in (13, 0.8, 12.7, 50.8, 9.525, 1200)]
    assert said == ["13 mm", "0.8 mm", "12.7 mm", "50.8 mm", "9.525 mm", "1,200 mm"]


def test_a_length_typed_in_inches_has_no_more_figures_in_millimetres_than_it_had() -> None:
    assert measures.length(parse_length_mm("17/32 in"), BRITISH) == "13.5 mm"  # 13.49375


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("1/2 in", "1/2 in"), ("3/8 in", "3/8 in"), ("1 1/2 in", "1 1/2 in"), ("2 in", "2 in"), ("1/8 in", "1/8 in"),
        ("0.115 in", "0.115 in"), ("13/16 in", "13/16 in"), ("0.02 in", "0.02 in"),
    ],
)  # fmt: skip
def test_a_length_typed_in_inches_comes_back_as_typed(typed: str, said: str) -> None:
    assert measures.length(parse_length_mm(typed), AMERICAN) == said


@pytest.mark.parametrize(
    ("millimetres", "said"),
    # By hand: 13 / 25.4 = 0.512, 2.3 % from 1/2, so a decimal; 50 / 25.4 = 1.969, 1.6 % from 2; 300 / 25.4 = 11.81,
    # 1.6 % from 12; 40 / 25.4 = 1.575, 0.8 % from 1 9/16; 2 / 25.4 = 0.079.
    [(13, "0.51 in"), (50, "2 in"), (300, "12 in"), (40, "1 9/16 in"), (2, "0.079 in"), (12.7, "1/2 in"), (0, "0 in")],
)
def test_a_metric_length_in_american_is_a_plain_fraction_where_one_fits(millimetres: float, said: str) -> None:
    assert measures.length(millimetres, AMERICAN) == said


@given(st.floats(0.3, 3000))
def test_no_length_in_inches_is_far_from_what_it_was(millimetres: float) -> None:
    """A fraction within 2 %; two figures of which the first is at least 2 within 2.5 % (0.05 of 2)."""
    said = number_in(measures.length(millimetres, AMERICAN))
    assert said == pytest.approx(converted(millimetres, "mm", "inch"), rel=0.0251)


def test_a_pattern_of_holes() -> None:
    assert measures.spacing(50, 50, BRITISH) == "50 x 50 mm"
    assert measures.spacing(50.8, 38.1, AMERICAN) == "2 x 1 1/2 in"


def test_layers_of_sand() -> None:
    assert [measures.layer(1.44, BRITISH), measures.layer(1.444, BRITISH, decimals=2)] == ["1.4 mm", "1.44 mm"]
    assert measures.layer(2.0, AMERICAN) == "0.08 in"  # 0.0787
    assert measures.layer(2.0, AMERICAN, decimals=2) == "0.079 in"
    assert [measures.layer(0.1, AMERICAN), measures.layer(0, AMERICAN)] == ["less than 0.01 in", "0.00 in"]
    assert measures.layers(0.8, 1.2, BRITISH) == "0.8 to 1.2 mm"
    assert measures.layers(1.21, 1.22, BRITISH) == "1.2 mm"
    assert measures.layers(0.8, 1.2, AMERICAN) == "0.03 to 0.05 in"
    assert measures.layers(0.05, 0.1, AMERICAN) == "less than 0.01 in"


@pytest.mark.parametrize(
    ("said", "metric", "unit", "to", "british"),
    [
        (measures.distance, 120, "m", "ft", "120 m"),
        (measures.area, 500, "m**2", "ft**2", "500 m2"),
        (measures.sand_mass, 25, "tonne", "US_ton", "25 tonnes"),
        (measures.sand_mass, 1.4, "tonne", "US_ton", "1.4 tonnes"),
        (measures.sand_rate, 2, "kg/m**2", "lb/ft**2", "2 kg on a square metre"),
        (measures.seed_rate, 8, "g/m**2", "lb/ft**2", "8 g on a square metre"),
        (measures.bulk_density, 1.56, "tonne/m**3", "lb/ft**3", "1.56 t/m3"),
    ],
)  # fmt: skip
def test_each_quantity_in_both_systems(
    said: Callable[[float, Voice], str], metric: float, unit: str, to: str, british: str
) -> None:
    """American within 5 %: one decimal of 1.5 tons is the coarsest."""
    assert said(metric, BRITISH) == british
    thousand = 1000 if to == "lb/ft**2" else 1
    assert number_in(said(metric, AMERICAN)) == pytest.approx(thousand * converted(metric, unit, to), rel=0.05)


def test_american_quantities_in_words() -> None:
    said = [
        measures.distance(120, AMERICAN),
        measures.area(500, AMERICAN),
        measures.sand_mass(25, AMERICAN),
        measures.sand_rate(2, AMERICAN),
        measures.seed_rate(8, AMERICAN),
        measures.bulk_density(1.6, AMERICAN),
        measures.temperature(20, AMERICAN),
    ]
    # pint: 393.7 ft, 5,382 ft2, 27.56 US tons, 409.6 and 1.639 lb per 1,000 ft2, 99.88 lb/ft3, 68 F.
    assert said == [
        "390 ft", "5,400 sq ft", "28 tons", "410 lb per 1,000 sq ft", "1.64 lb per 1,000 sq ft", "100 lb/ft3", "68 °F",
    ]  # fmt: skip


def test_a_whole_number_that_was_typed_is_not_rounded() -> None:
    assert measures.area(converted(23_456, "ft**2", "m**2"), AMERICAN) == "23,456 sq ft"
    assert measures.distance(1234, BRITISH) == "1,234 m"


def test_one_tonne_is_singular_and_one_point_four_are_not() -> None:
    assert [measures.sand_mass(t, BRITISH) for t in (1.0, 1.4, 0.5)] == ["1 tonne", "1.4 tonnes", "0.5 tonnes"]
    assert [measures.sand_mass(t, BRITISH) for t in (0.0, 0.026)] == ["0 tonnes", "0.03 tonnes"]  # 26 kg are not none
    assert measures.sand_mass(converted(1, "US_ton", "tonne"), AMERICAN) == "1 ton"


@pytest.mark.parametrize("celsius", [-40, -3.4, 0, 14, 37.8])
def test_temperatures_in_whole_degrees(celsius: float) -> None:
    expected = UNITS.Quantity(celsius, UNITS.degC).to(UNITS.degF).magnitude
    assert measures.temperature(celsius, AMERICAN) == f"{expected:.0f} °F"
    assert measures.temperature(celsius, BRITISH) == f"{celsius:.0f} °C"


def test_green_speeds_are_feet_and_inches_in_both() -> None:
    for voice in (BRITISH, AMERICAN):
        said = [measures.roll(converted(inches, "inch", "mm"), voice) for inches in (112, 119.6, 108)]
        assert said == ["9 ft 4 in", "10 ft 0 in", "9 ft 0 in"]


def test_a_house_may_choose_the_system_and_a_wrong_one_is_told() -> None:
    metric = {"own.ftl": "language-measures = metric\nmeasure-length = { $number } mm\n"}
    voice = Voice(catalogue=with_house_phrases("en-US", metric), near=DAY)
    assert measures.length(13, voice) == "13 mm"
    wrong = Voice(catalogue=with_house_phrases("en-US", {"own.ftl": "language-measures = imperial\n"}), near=DAY)
    with pytest.raises(PhraseError, match="found 'imperial'; expected 'metric' or 'customary'"):
        measures.length(13, wrong)
