"""Quantities as the trade writes them, with their unit, turned into plain numbers.

Every factor is the exact one of NIST Special Publication 811 (Thompson & Taylor 2008, "Guide for the
Use of the International System of Units", appendix B.8), or follows from the exact inch (25.4 mm) and
the exact avoirdupois pound (0.45359237 kg). Units convert here, at the edge; what a member reads is brought back to the
units of the language by `language.measures`, with the same factors.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import Enum
from functools import lru_cache
from typing import Final

from swardcast.errors import SwardcastError, nearest

__all__ = [
    "AREA_M2",
    "DENSITY_T_PER_M3",
    "LENGTH_MM",
    "MASS_KG",
    "SEED_G_PER_M2",
    "Dimension",
    "QuantityError",
    "Sand",
    "SandBasis",
    "celsius_to_fahrenheit",
    "fahrenheit_to_celsius",
    "parse_area_m2",
    "parse_count",
    "parse_days",
    "parse_density_t_per_m3",
    "parse_fraction",
    "parse_length_mm",
    "parse_mass_t",
    "parse_minutes",
    "parse_roll_mm",
    "parse_sand",
    "parse_seed_g_per_m2",
    "parse_spacing_mm",
    "parse_temperature_c",
    "parse_tines",
]

_INCH_MM: Final = 25.4  # exact, NIST SP 811
_FOOT_M: Final = 0.3048  # exact, NIST SP 811
_POUND_KG: Final = 0.45359237  # exact, NIST SP 811
_FT2_M2: Final = _FOOT_M**2  # 0.09290304, exact
_ACRE_M2: Final = 43_560 * _FT2_M2  # international acre of 43,560 square feet
_FT3_L: Final = _FOOT_M**3 * 1000.0  # litres in a cubic foot
_US_TON_KG: Final = 2000 * _POUND_KG  # short ton, exact

LENGTH_MM: Final = {
    "mm": 1.0, "millimetre": 1.0, "millimetres": 1.0, "millimeter": 1.0, "millimeters": 1.0,
    "cm": 10.0, "m": 1000.0,
    "in": _INCH_MM, "inch": _INCH_MM, "inches": _INCH_MM, '"': _INCH_MM,
    "ft": 12 * _INCH_MM, "foot": 12 * _INCH_MM, "feet": 12 * _INCH_MM, "yd": 36 * _INCH_MM,
}  # fmt: skip
AREA_M2: Final = {
    "m2": 1.0, "m²": 1.0, "sq m": 1.0, "ha": 10_000.0,
    "ft2": _FT2_M2, "ft²": _FT2_M2, "sq ft": _FT2_M2,
    "yd2": 9 * _FT2_M2, "sq yd": 9 * _FT2_M2, "acre": _ACRE_M2, "acres": _ACRE_M2,
}  # fmt: skip
MASS_KG: Final = {
    "t": 1000.0, "tonne": 1000.0, "tonnes": 1000.0, "kg": 1.0, "g": 0.001,
    "lb": _POUND_KG, "lbs": _POUND_KG, "us ton": _US_TON_KG, "us tons": _US_TON_KG,
}  # fmt: skip
DENSITY_T_PER_M3: Final = {
    "t/m3": 1.0, "t/m³": 1.0, "g/cm3": 1.0, "g/cm³": 1.0, "kg/l": 1.0, "kg/m3": 0.001, "kg/m³": 0.001,
    "lb/ft3": _POUND_KG / _FT3_L,
}  # fmt: skip
SEED_G_PER_M2: Final = {
    "g/m2": 1.0, "g/m²": 1.0, "kg/ha": 0.1, "lb/1000 ft2": _POUND_KG * 1000 / (1000 * _FT2_M2),
    "lb/acre": _POUND_KG * 1000 / _ACRE_M2,
}  # fmt: skip

_DEPTH_FROM_VOLUME_MM: Final = {
    "l/m2": 1.0, "l/m²": 1.0, "m3/ha": 0.1, "m³/ha": 0.1,
    "ft3/1000 ft2": _FT3_L / (1000 * _FT2_M2), "yd3/1000 ft2": 27 * _FT3_L / (1000 * _FT2_M2),
}  # 1 mm = 1 L/m2  # fmt: skip
_KG_PER_M2: Final = {
    "kg/m2": 1.0, "kg/m²": 1.0, "g/m2": 0.001, "t/ha": 0.1,
    "lb/1000 ft2": _POUND_KG / (1000 * _FT2_M2), "lb/ft2": _POUND_KG / _FT2_M2,
    "us tons/acre": _US_TON_KG / _ACRE_M2, "us ton/acre": _US_TON_KG / _ACRE_M2,
}  # fmt: skip

# At most 15 figures: no quantity has more, and beyond them a number has no exact value.
_FIGURES: Final = "[0-9]{1,15}"
_NUMBER: Final = (
    rf"(?:{_FIGURES}\s+{_FIGURES}/{_FIGURES}|{_FIGURES}/{_FIGURES}"
    rf"|[0-9]{{1,3}}(?:,[0-9]{{3}}){{1,4}}(?:\.{_FIGURES})?|{_FIGURES}(?:\.{_FIGURES})?|\.{_FIGURES})"
)
_QUANTITY: Final = re.compile(rf"^\s*(?P<number>{_NUMBER})\s*(?P<unit>.*?)\s*$")
_SPACING: Final = re.compile(
    rf"^\s*(?P<across>{_NUMBER})\s*(?P<unit1>[a-z\"]*)\s*(?:x|×|by)\s*(?P<along>{_NUMBER})\s*(?P<unit2>[a-z\"]*)\s*$",
    re.IGNORECASE,
)
_FEET_AND_INCHES: Final = re.compile(
    r"^\s*(?P<feet>[0-9]{1,6})\s*(?:ft|feet|foot)\s*(?P<inches>[0-9]{1,6}(?:\.[0-9]{1,6})?)\s*(?:in|inch|inches)\s*$"
)
_BARE_TON: Final = re.compile(r"^tons?\b")
_MOST_PASSES: Final = 50


class QuantityError(SwardcastError):
    """A quantity that cannot be read.

    Args:
        found: the text as written.
        expected: what would have been right, with an example.
        hint: what to do, or "".
    """

    def __init__(self, found: object, expected: str, hint: str = "") -> None:
        self.found = found
        self.expected = expected
        self.hint = hint
        super().__init__(found, expected, hint)

    def __str__(self) -> str:
        sentence = f"found {self.found!r}; expected {self.expected}"
        return f"{sentence}. {self.hint}" if self.hint else sentence


@dataclass(frozen=True, slots=True)
class Dimension:
    """A kind of quantity: its units, and an example to show a reader who wrote something else."""

    name: str
    units: dict[str, float]
    example: str

    @property
    def expected(self) -> str:
        """What to write, for an error message."""
        return f"{self.name} with its unit, such as {self.example}"


_LENGTH: Final = Dimension("a length", LENGTH_MM, "'13 mm' or '1/2 in'")
_ROLL: Final = Dimension("a roll", LENGTH_MM, "'9 ft 4 in' or '2.8 m'")
_AREA: Final = Dimension("an area", AREA_M2, "'500 m2' or '5,400 ft2'")
_MASS: Final = Dimension("a mass", MASS_KG, "'1.4 t' or '25 kg'")
_DENSITY: Final = Dimension("a bulk density", DENSITY_T_PER_M3, "'1.56 t/m3' or '100 lb/ft3'")
_SEED: Final = Dimension("a seed rate", SEED_G_PER_M2, "'8 g/m2' or '1 lb/1000 ft2'")
_DAYS: Final = Dimension("a number of days", {"days": 1.0, "day": 1.0, "weeks": 7.0, "week": 7.0}, "'3 days'")
_MINUTES: Final = Dimension(
    "a time",
    {"minutes": 1.0, "minute": 1.0, "min": 1.0, "hours": 60.0, "hour": 60.0, "h": 60.0},
    "'45 minutes' or '1.5 hours'",
)
_PERCENT: Final = Dimension("a share", {"%": 0.01, "percent": 0.01, "per cent": 0.01}, "'40 %'")


def _number(text: str) -> float:
    whole = text.replace(",", "")
    if "/" not in whole:
        return float(whole)
    *integer, fraction = whole.split()
    numerator, denominator = fraction.split("/")
    if int(denominator) == 0:
        raise QuantityError(text, "a fraction with a bottom above zero, such as '1/2'")
    return sum(map(float, integer)) + int(numerator) / int(denominator)


@lru_cache(maxsize=256)  # a folder has few units, each typed many times; judgement
def _unit_key(text: str) -> str:
    key = re.sub(r"\s*/\s*", "/", text.strip().lower())
    key = re.sub(r"1,000\b", "1000", key)
    key = re.sub(r"\bsquare (feet|foot)\b", "ft2", re.sub(r"\bsquare (metres?|meters?)\b", "m2", key))
    return re.sub(r"\s+", " ", key)


def _parse(text: object, dimension: Dimension) -> float:
    if not isinstance(text, str):
        hint = f"A number needs its unit: write '{text} {next(iter(dimension.units))}' if that is what you mean."
        raise QuantityError(text, dimension.expected, hint if isinstance(text, int | float) else "")
    match = _QUANTITY.match(text)
    if match is None or match["unit"].startswith(","):
        comma = match is not None  # the number ended at a comma
        hint = "Write a decimal with a point: '0.5', not '0,5'." if comma else ""
        raise QuantityError(text, dimension.expected, hint)
    unit = _unit_key(match["unit"])
    if not unit:
        first = next(iter(dimension.units))
        hint = f"A number needs its unit: write '{text.strip()} {first}' if that is what you mean."
        raise QuantityError(text, dimension.expected, hint)
    if unit not in dimension.units:
        ton = "A ton is two different masses: write 't' for tonnes or 'US tons'." if _BARE_TON.match(unit) else ""
        raise QuantityError(text, dimension.expected, ton or nearest(unit, dimension.units))
    return _number(match["number"]) * dimension.units[unit]


def parse_length_mm(text: object) -> float:
    """Read a length such as "13 mm", "1/2 in" or "2.5 cm".

    Args:
        text: the length with its unit.

    Returns:
        Millimetres, 0 or more.

    Raises:
        QuantityError: when there is no number, no unit, or a unit that is no length.

    Source: Thompson & Taylor 2008, NIST SP 811, appendix B.8 (1 in = 25.4 mm).
    """
    return _parse(text, _LENGTH)


def parse_roll_mm(text: object) -> float:
    """Read a green speed: the length of the roll, such as "9 ft 4 in" or "2.8 m".

    Args:
        text: the length with its unit, or feet and inches.

    Returns:
        Millimetres, 0 or more.

    Raises:
        QuantityError: when there is no number, no unit, or a unit that is no length.
    """
    match = _FEET_AND_INCHES.match(text) if isinstance(text, str) else None
    if match is None:
        return _parse(text, _ROLL)
    return float(match["feet"]) * LENGTH_MM["ft"] + float(match["inches"]) * LENGTH_MM["in"]


def parse_area_m2(text: object) -> float:
    """Read an area such as "500 m2" or "5,400 ft2".

    Args:
        text: the area with its unit.

    Returns:
        Square metres, 0 or more.

    Raises:
        QuantityError: when it is no area with a unit.

    Source: Thompson & Taylor 2008, NIST SP 811, appendix B.8 (1 ft2 = 0.09290304 m2).
    """
    return _parse(text, _AREA)


def parse_mass_t(text: object) -> float:
    """Read a mass such as "1.4 t", "25 kg" or "3 US tons".

    Args:
        text: the mass with its unit; a bare "ton" is refused, since it is two different masses.

    Returns:
        Metric tonnes, 0 or more.

    Raises:
        QuantityError: when it is no mass with a unit.

    Source: Thompson & Taylor 2008, NIST SP 811, appendix B.8 (1 lb = 0.45359237 kg).
    """
    return _parse(text, _MASS) / 1000.0


def parse_density_t_per_m3(text: object) -> float:
    """Read a bulk density such as "1.56 t/m3" or "100 lb/ft3".

    Args:
        text: the density with its unit.

    Returns:
        Tonnes per cubic metre.

    Raises:
        QuantityError: when it is no density with a unit, or is outside 0.5 to 2.5 t/m3 (no sand is).

    Source: Thompson & Taylor 2008, NIST SP 811, appendix B.8 (1 lb/ft3 = 16.01846 kg/m3).
    """
    density = _parse(text, _DENSITY)
    if not 0.5 <= density <= 2.5:  # noqa: PLR2004 - the bound is named in the message
        raise QuantityError(text, "a bulk density between 0.5 and 2.5 t/m3; dry sand is 1.5 to 1.72")
    return density


def parse_seed_g_per_m2(text: object) -> float:
    """Read a seed rate such as "8 g/m2" or "1 lb/1000 ft2".

    Args:
        text: the rate with its unit.

    Returns:
        Grams per square metre, 0 or more.

    Raises:
        QuantityError: when it is no rate with a unit.

    Source: Thompson & Taylor 2008, NIST SP 811, appendix B.8.
    """
    return _parse(text, _SEED)


def parse_days(text: object) -> float:
    """Read a number of days such as "3 days" or "2 weeks".

    Args:
        text: the number with its unit.

    Returns:
        Days, 0 or more.

    Raises:
        QuantityError: when it is no number of days or weeks.
    """
    return _parse(text, _DAYS)


def parse_minutes(text: object) -> float:
    """Read a time such as "45 minutes" or "1.5 hours".

    Args:
        text: the number with its unit.

    Returns:
        Minutes, 0 or more.

    Raises:
        QuantityError: when it is no number of minutes or hours.
    """
    return _parse(text, _MINUTES)


def parse_fraction(text: object) -> float:
    """Read a share such as "40 %".

    Args:
        text: the share in percent, with its sign.

    Returns:
        A fraction from 0 to 1.

    Raises:
        QuantityError: when it is no percentage, or is above 100 %.
    """
    fraction = _parse(text, _PERCENT)
    if fraction > 1:
        raise QuantityError(text, "a share from 0 % to 100 %")
    return fraction


def parse_temperature_c(text: object) -> float:
    """Read an air temperature such as "14 C", "14 °C" or "57 F".

    Args:
        text: the temperature with its unit.

    Returns:
        Degrees Celsius.

    Raises:
        QuantityError: when it has no C or F, or is outside -60 to 60 C (no air near a course is).

    Source: Thompson & Taylor 2008, NIST SP 811, appendix B.8 (C = (F - 32) / 1.8).
    """
    expected = "an air temperature with its unit, such as '14 C' or '57 F'"
    match = re.match(r"^\s*([+-]?[0-9]{1,6}(?:\.[0-9]{1,6})?)\s*°?\s*([CF])\s*$", str(text), re.IGNORECASE)
    if match is None:
        raise QuantityError(text, expected)
    value = float(match[1])
    celsius = value if match[2].upper() == "C" else fahrenheit_to_celsius(value)
    if not -60 <= celsius <= 60:  # noqa: PLR2004 - the bound is named in the message
        raise QuantityError(text, "an air temperature between -60 C and 60 C")
    return celsius


def fahrenheit_to_celsius(temperature_f: float) -> float:
    """Turn degrees Fahrenheit into degrees Celsius.

    Args:
        temperature_f: degrees Fahrenheit.

    Returns:
        Degrees Celsius.

    Source: Thompson & Taylor 2008, NIST SP 811, appendix B.8 (C = (F - 32) / 1.8).
    """
    return (temperature_f - 32.0) / 1.8


def celsius_to_fahrenheit(temperature_c: float) -> float:
    """Turn degrees Celsius into degrees Fahrenheit.

    Args:
        temperature_c: degrees Celsius.

    Returns:
        Degrees Fahrenheit.

    Source: Thompson & Taylor 2008, NIST SP 811, appendix B.8 (C = (F - 32) / 1.8).
    """
    return 1.8 * temperature_c + 32.0


def parse_count(text: object) -> int:
    """Read how many passes a machine made, such as "2" or "2 passes".

    Args:
        text: a whole number, with or without the word.

    Returns:
        1 to 50.

    Raises:
        QuantityError: when it is no whole number from 1 to 50.
    """
    match = re.match(r"^\s*([0-9]{1,6})\s*(?:pass|passes)?\s*$", str(text))
    if match is None or not 1 <= int(match[1]) <= _MOST_PASSES:
        raise QuantityError(text, f"a whole number of passes from 1 to {_MOST_PASSES}, such as '2'")
    return int(match[1])


def parse_spacing_mm(text: object) -> tuple[float, float]:
    """Read a hole pattern such as "50 x 50 mm" or "1.5 in x 2 in".

    Args:
        text: spacing across (between tines) by spacing along (direction of travel), with a unit.

    Returns:
        Millimetres across and along, each above 0.

    Raises:
        QuantityError: when one of the two numbers or the unit is missing.
    """
    expected = "spacing across by spacing along with their unit, such as '50 x 50 mm'"
    match = _SPACING.match(str(text))
    if match is None or not match["unit2"]:
        hint = ""
        if match is not None or re.match(rf"^\s*{_NUMBER}\s*(?:x|×|by)", str(text)):
            hint = "The unit goes at the end: '50 x 50 mm'."
        raise QuantityError(text, expected, hint)
    along = parse_length_mm(f"{match['along']} {match['unit2']}")
    across = parse_length_mm(f"{match['across']} {match['unit1'] or match['unit2']}")
    if not across or not along:
        raise QuantityError(text, expected)
    return across, along


def parse_tines(text: object) -> tuple[float, float, float]:
    """Read tines and their pattern in one, such as "12.7 mm at 50.8 x 50.8 mm".

    Args:
        text: diameter, "at", spacing.

    Returns:
        Millimetres of diameter, across and along.

    Raises:
        QuantityError: when a part is missing or has no unit.
    """
    diameter, at, spacing = str(text).partition(" at ")
    if not at:
        raise QuantityError(text, "a diameter and a spacing, such as '12.7 mm at 50.8 x 50.8 mm'")
    across_mm, along_mm = parse_spacing_mm(spacing)
    return parse_length_mm(diameter), across_mm, along_mm


class SandBasis(Enum):
    """What an amount of sand is told in."""

    DEPTH_MM = "depth_mm"
    KG_PER_M2 = "kg_per_m2"
    TONNES_EACH = "tonnes_each"
    TONNES_IN_ALL = "tonnes_in_all"


@dataclass(frozen=True, slots=True)
class Sand:
    """An amount of sand as it was written: a depth, a rate, a mass for each surface, or a mass in all.

    Args:
        amount: 0 or more, in the unit that `basis` names.
        basis: what the amount is told in.
    """

    amount: float
    basis: SandBasis


def parse_sand(text: object) -> Sand:
    """Read an amount of sand such as "1.4 t/green", "2 mm", "0.5 kg/m2" or "1 ft3/1000 ft2".

    Args:
        text: the amount with its unit; "/green", "/tee", "each" mark a mass for each surface.

    Returns:
        The amount and what it is told in: depth (mm), rate (kg/m2) or mass (tonnes).

    Raises:
        QuantityError: when it is no amount of sand with a unit.

    Source: 1 mm = 1 L/m2 (arithmetic); Thompson & Taylor 2008, NIST SP 811, appendix B.8.
    """
    every = {**LENGTH_MM, **_DEPTH_FROM_VOLUME_MM, **_KG_PER_M2, **MASS_KG}
    sand = Dimension("an amount of sand", every, "'1.4 t/green', '2 mm', '0.5 kg/m2' or '100 lb/1000 ft2'")
    match = _QUANTITY.match(text) if isinstance(text, str) else None
    unit = _unit_key(match["unit"]) if match else ""
    each = re.sub(r"(?:/| a | per | )(?:green|tee|bunker|fairway|surface|each)$", "", unit)
    if match and each != unit and each in MASS_KG:
        return Sand(_number(match["number"]) * MASS_KG[each] / 1000.0, SandBasis.TONNES_EACH)
    if unit in MASS_KG:
        return Sand(_parse(text, sand) / 1000.0, SandBasis.TONNES_IN_ALL)
    if unit in _KG_PER_M2:
        return Sand(_parse(text, sand), SandBasis.KG_PER_M2)
    return Sand(_parse(text, sand), SandBasis.DEPTH_MM)
