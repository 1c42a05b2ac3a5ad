"""Units against an independent library and NIST SP 811; what may be written, and what is said when it may not."""

from collections.abc import Callable
from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.quantities import (
    AREA_M2,
    DENSITY_T_PER_M3,
    LENGTH_MM,
    MASS_KG,
    SEED_G_PER_M2,
    QuantityError,
    SandBasis,
    fahrenheit_to_celsius,
    parse_area_m2,
    parse_count,
    parse_days,
    parse_density_t_per_m3,
    parse_fraction,
    parse_length_mm,
    parse_mass_t,
    parse_sand,
    parse_seed_g_per_m2,
    parse_spacing_mm,
    parse_temperature_c,
    parse_tines,
)

REFERENCE: Any = pint.UnitRegistry()

# Our spelling, and the same unit for the pint library (pint.readthedocs.io), which has its own table of factors.
LENGTHS = {
    "mm": "mm", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm", "cm": "cm", "m": "m",
    "in": "inch", "inch": "inch", "inches": "inch", '"': "inch", "ft": "foot", "foot": "foot", "feet": "foot",
    "yd": "yard",
}  # fmt: skip
AREAS = {
    "m2": "m^2", "m²": "m^2", "sq m": "m^2", "ha": "hectare", "ft2": "foot^2", "ft²": "foot^2", "sq ft": "foot^2",
    "yd2": "yard^2", "sq yd": "yard^2", "acre": "acre", "acres": "acre",
}  # fmt: skip
MASSES = {
    "t": "tonne", "tonne": "tonne", "tonnes": "tonne", "kg": "kg", "g": "g", "lb": "pound", "lbs": "pound",
    "us ton": "short_ton", "us tons": "short_ton",
}  # fmt: skip
DENSITIES = {
    "t/m3": "tonne/m^3", "t/m³": "tonne/m^3", "g/cm3": "g/cm^3", "g/cm³": "g/cm^3", "kg/l": "kg/liter",
    "kg/m3": "kg/m^3", "kg/m³": "kg/m^3", "lb/ft3": "pound/foot^3",
}  # fmt: skip
SEEDS = {
    "g/m2": "g/m^2", "g/m²": "g/m^2", "kg/ha": "kg/hectare", "lb/1000 ft2": "pound/(1000*foot^2)",
    "lb/acre": "pound/acre",
}  # fmt: skip
TABLES = [
    pytest.param(LENGTH_MM, LENGTHS, "mm", id="lengths"),
    pytest.param(AREA_M2, AREAS, "m^2", id="areas"),
    pytest.param(MASS_KG, MASSES, "kg", id="masses"),
    pytest.param(DENSITY_T_PER_M3, DENSITIES, "tonne/m^3", id="densities"),
    pytest.param(SEED_G_PER_M2, SEEDS, "g/m^2", id="seed rates"),
]
# pint's acre is that of the US survey foot, 4 parts in a million larger than 43,560 international square feet.
SURVEY_ACRE = 1e-5


def _reference(unit: str, target: str) -> float:
    return float(REFERENCE.parse_expression(unit).to(target).magnitude)


@pytest.mark.parametrize(("ours", "theirs", "target"), TABLES)
def test_every_unit_has_the_factor_of_the_reference_library(
    ours: dict[str, float], theirs: dict[str, str], target: str
) -> None:
    assert set(ours) == set(theirs)
    for unit, factor in ours.items():
        tolerance = SURVEY_ACRE if "acre" in unit else 1e-12
        assert factor == pytest.approx(_reference(theirs[unit], target), rel=tolerance), unit


@pytest.mark.parametrize(
    ("ours", "printed"),
    # Thompson & Taylor 2008, NIST SP 811, appendix B.8; the figures from memory, to the digits printed there.
    [
        (parse_length_mm("1 in"), 25.4),  # exact
        (parse_length_mm("1 ft"), 304.8),  # exact
        (parse_length_mm("1 yd"), 914.4),  # exact
        (parse_area_m2("1 ft2"), 0.09290304),  # exact
        (parse_area_m2("1 yd2"), 0.8361274),
        (parse_mass_t("1 lb") * 1000, 0.45359237),  # exact
        (parse_mass_t("1 US ton") * 1000, 907.1847),
        (parse_density_t_per_m3("100 lb/ft3"), 1.601846),
        (parse_sand("1 lb/ft2").amount, 4.882428),
        (parse_sand("1 yd3/1000 ft2").amount, 764.5549 / 92.90304),
    ],
    ids=["inch", "foot", "yard", "square foot", "square yard", "pound", "short ton", "lb/ft3", "lb/ft2", "cubic yard"],
)
def test_a_factor_is_the_printed_one(ours: float, printed: float) -> None:
    assert ours == pytest.approx(printed, rel=5e-7)


def test_an_acre_is_43560_square_feet() -> None:
    # 43,560 x 0.09290304 = 4046.8564224 by arithmetic (international acre).
    assert parse_area_m2("1 acre") == pytest.approx(4046.8564224, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [
        ("13 mm", 13.0), ("2.5 cm", 25.0), (".5 m", 500.0), ("1/2 in", 12.7), ("1 1/2 in", 38.1), ('5/8"', 15.875),
        ("3/4 inch", 19.05), ("  0.470  in ", 11.938), ("2 FEET", 609.6), ("1,000 mm", 1000.0), ("0 mm", 0.0),
    ],
)  # fmt: skip
def test_a_length_is_read_in_either_system(text: str, millimetres: float) -> None:
    assert parse_length_mm(text) == pytest.approx(millimetres)


@pytest.mark.parametrize(
    ("text", "square_metres"),
    # 5,400 x 0.09290304 = 501.676416 by hand.
    [("500 m2", 500.0), ("5,400 ft2", 501.676416), ("5400 square feet", 501.676416), ("0.05 ha", 500.0),
     ("600 sq yd", 501.676416), ("500 square metres", 500.0)],
)  # fmt: skip
def test_an_area_is_read_in_either_system(text: str, square_metres: float) -> None:
    assert parse_area_m2(text) == pytest.approx(square_metres)


@pytest.mark.parametrize(
    ("text", "amount", "basis"),
    [
        ("1.4 t/green", 1.4, SandBasis.TONNES_EACH),
        ("1.4 t a green", 1.4, SandBasis.TONNES_EACH),
        ("1,400 kg per green", 1.4, SandBasis.TONNES_EACH),
        ("30 t", 30.0, SandBasis.TONNES_IN_ALL),
        ("33 US tons", 29.9370965, SandBasis.TONNES_IN_ALL),  # 33 x 0.90718474 by hand
        ("2 mm", 2.0, SandBasis.DEPTH_MM),
        ("1/8 in", 3.175, SandBasis.DEPTH_MM),
        ("2 L/m2", 2.0, SandBasis.DEPTH_MM),  # a litre on a square metre is a millimetre
        ("20 m3/ha", 2.0, SandBasis.DEPTH_MM),  # 20 m3 on 10,000 m2
        ("1 ft3/1000 ft2", 0.3048, SandBasis.DEPTH_MM),  # a thousandth of a foot
        ("0.5 kg/m2", 0.5, SandBasis.KG_PER_M2),
        ("100 lb/1000 ft2", 0.4882428, SandBasis.KG_PER_M2),  # a tenth of 4.882428 kg/m2 (NIST SP 811, from memory)
        ("100 lb / 1,000 ft2", 0.4882428, SandBasis.KG_PER_M2),
        ("81 t/ha", 8.1, SandBasis.KG_PER_M2),
        ("16 US tons/acre", 3.586723, SandBasis.KG_PER_M2),  # 16 x 907.18474 / 4046.8564224 by hand
    ],
)
def test_an_amount_of_sand_is_read_with_what_it_is_told_in(text: str, amount: float, basis: SandBasis) -> None:
    sand = parse_sand(text)
    assert sand.amount == pytest.approx(amount, rel=1e-6)
    assert sand.basis is basis


@pytest.mark.parametrize(
    ("text", "across_mm", "along_mm"),
    [("50 x 50 mm", 50, 50), ("1.5 in x 2 in", 38.1, 50.8), ("1 1/3 x 1 1/2 in", 33.8667, 38.1), ("50 by 60mm", 50, 60),
     ('2" × 2"', 50.8, 50.8), ("5 cm x 2 in", 50, 50.8)],
)  # fmt: skip
def test_a_spacing_is_read_across_and_along(text: str, across_mm: float, along_mm: float) -> None:
    assert parse_spacing_mm(text) == pytest.approx((across_mm, along_mm), rel=1e-5)


def test_tines_and_their_pattern_are_read_in_one() -> None:
    assert parse_tines("12.7 mm at 50.8 x 50.8 mm") == (12.7, 50.8, 50.8)
    assert parse_tines("1/2 in at 2 x 2 in") == pytest.approx((12.7, 50.8, 50.8))


def test_other_quantities_are_read() -> None:
    assert parse_seed_g_per_m2("8 g/m2") == 8
    assert parse_seed_g_per_m2("1 lb/1000 ft2") == pytest.approx(4.882428, rel=1e-6)  # NIST SP 811, from memory
    assert (parse_days("3 days"), parse_days("2 weeks")) == (3, 14)
    assert parse_fraction("40 %") == pytest.approx(0.4)
    assert (parse_count("2"), parse_count("3 passes")) == (2, 3)
    assert parse_density_t_per_m3("1.56 t/m3") == 1.56


@pytest.mark.parametrize(
    ("text", "celsius"),
    # (57 - 32) / 1.8 = 13.889; -40 is the same in both; 212 F boils at 100 C (checked below by the bare conversion).
    [("14 C", 14), ("-5 °C", -5), ("57 F", 13.889), ("57 °f", 13.889), ("-40 F", -40), ("+3.5C", 3.5)],
)
def test_a_temperature_is_read_in_either_scale(text: str, celsius: float) -> None:
    assert parse_temperature_c(text) == pytest.approx(celsius, abs=0.0005)


def test_water_freezes_at_32_and_boils_at_212_fahrenheit() -> None:
    assert (fahrenheit_to_celsius(32), fahrenheit_to_celsius(212)) == pytest.approx((0, 100))


@given(st.integers(0, 9), st.integers(0, 15), st.sampled_from([2, 4, 8, 16]))
def test_a_mixed_fraction_of_inches_is_its_sum(whole: int, top: int, bottom: int) -> None:
    assert parse_length_mm(f"{whole} {top}/{bottom} in") == pytest.approx(25.4 * (whole + top / bottom))


LENGTH = "; expected a length with its unit, such as '13 mm' or '1/2 in'"
MASS = "; expected a mass with its unit, such as '1.4 t' or '25 kg'"
SPACING = "; expected spacing across by spacing along with their unit, such as '50 x 50 mm'"
TINES = "; expected a diameter and a spacing, such as '12.7 mm at 50.8 x 50.8 mm'"
SAND = "; expected an amount of sand with its unit, such as '1.4 t/green', '2 mm', '0.5 kg/m2' or '100 lb/1000 ft2'"
DENSITY = "; expected a bulk density between 0.5 and 2.5 t/m3; dry sand is 1.5 to 1.72"
TEMPERATURE = "; expected an air temperature with its unit, such as '14 C' or '57 F'"
PASSES = "; expected a whole number of passes from 1 to 50, such as '2'"
NO_UNIT_MM = ". A number needs its unit: write '13 mm' if that is what you mean."


@pytest.mark.parametrize(
    ("read", "text", "message"),
    [
        (parse_length_mm, "13", f"found '13'{LENGTH}{NO_UNIT_MM}"),
        (parse_length_mm, 13, f"found 13{LENGTH}{NO_UNIT_MM}"),
        (parse_length_mm, "0,5 in", f"found '0,5 in'{LENGTH}. Write a decimal with a point: '0.5', not '0,5'."),
        (parse_length_mm, "13 milimetres", f"found '13 milimetres'{LENGTH}. Did you mean 'millimetres'?"),
        (parse_length_mm, "13 kg", f"found '13 kg'{LENGTH}"),
        (parse_length_mm, "half an inch", f"found 'half an inch'{LENGTH}"),
        (parse_length_mm, "-3 mm", f"found '-3 mm'{LENGTH}"),
        (parse_length_mm, None, f"found None{LENGTH}"),
        (
            parse_mass_t,
            "3 tons",
            f"found '3 tons'{MASS}. A ton is two different masses: write 't' for tonnes or 'US tons'.",
        ),
        (parse_temperature_c, "90 C", "found '90 C'; expected an air temperature between -60 C and 60 C"),
        (parse_temperature_c, "14", f"found '14'{TEMPERATURE}"),
        (parse_spacing_mm, "50 x 50", f"found '50 x 50'{SPACING}. The unit goes at the end: '50 x 50 mm'."),
        (parse_spacing_mm, "50 mm", f"found '50 mm'{SPACING}"),
        (parse_spacing_mm, "0 x 50 mm", f"found '0 x 50 mm'{SPACING}"),
        (parse_tines, "12.7 mm", f"found '12.7 mm'{TINES}"),
        (parse_sand, "13", f"found '13'{SAND}{NO_UNIT_MM}"),
        (parse_density_t_per_m3, "3 t/m3", f"found '3 t/m3'{DENSITY}"),
        (parse_fraction, "120 %", "found '120 %'; expected a share from 0 % to 100 %"),
        (parse_count, "0", f"found '0'{PASSES}"),
        (parse_count, "51 passes", f"found '51 passes'{PASSES}"),
    ],
)
def test_what_cannot_be_read_is_told_with_what_would_have_been_right(
    read: Callable[[object], object], text: object, message: str
) -> None:
    with pytest.raises(QuantityError) as caught:
        read(text)
    assert str(caught.value) == message


@pytest.mark.parametrize("text", ["3 ton", "3 tons", "1.4 ton/green", "3 tons/acre"])
def test_a_bare_ton_is_refused_since_it_is_two_different_masses(text: str) -> None:
    with pytest.raises(QuantityError, match=f"found '{text}'"):
        parse_sand(text)


def test_a_fraction_over_nothing_is_refused() -> None:
    with pytest.raises(QuantityError, match="expected a fraction with a bottom above zero, such as '1/2'"):
        parse_length_mm("1/0 in")
