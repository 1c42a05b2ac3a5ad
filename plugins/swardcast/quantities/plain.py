"""Quantities of one number: lengths, areas, masses, densities, rates of seed, times and shares."""

from __future__ import annotations

import re
from typing import Final

from swardcast.quantities.one_number import Dimension, QuantityError, parsed
from swardcast.quantities.units import AREA_M2, DENSITY_T_PER_M3, LENGTH_MM, MASS_KG, SEED_G_PER_M2

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
_FEET_AND_INCHES: Final = re.compile(
    r"^\s*(?P<feet>[0-9]{1,6})\s*(?:ft|feet|foot)\s*(?P<inches>[0-9]{1,6}(?:\.[0-9]{1,6})?)\s*(?:in|inch|inches)\s*$"
)


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
    return parsed(text, _LENGTH)


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
        return parsed(text, _ROLL)
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
    return parsed(text, _AREA)


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
    return parsed(text, _MASS) / 1000.0


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
    density = parsed(text, _DENSITY)
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
    return parsed(text, _SEED)


def parse_days(text: object) -> float:
    """Read a number of days such as "3 days" or "2 weeks".

    Args:
        text: the number with its unit.

    Returns:
        Days, 0 or more.

    Raises:
        QuantityError: when it is no number of days or weeks.
    """
    return parsed(text, _DAYS)


def parse_minutes(text: object) -> float:
    """Read a time such as "45 minutes" or "1.5 hours".

    Args:
        text: the number with its unit.

    Returns:
        Minutes, 0 or more.

    Raises:
        QuantityError: when it is no number of minutes or hours.
    """
    return parsed(text, _MINUTES)


def parse_fraction(text: object) -> float:
    """Read a share such as "40 %".

    Args:
        text: the share in percent, with its sign.

    Returns:
        A fraction from 0 to 1.

    Raises:
        QuantityError: when it is no percentage, or is above 100 %.
    """
    fraction = parsed(text, _PERCENT)
    if fraction > 1:
        raise QuantityError(text, "a share from 0 % to 100 %")
    return fraction
