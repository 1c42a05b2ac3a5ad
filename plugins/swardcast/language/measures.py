"""Quantities in the units of a language: metric, or customary as the United States write them.

The language's phrase `language-measures` says which. Never a precision that was not there: a quantity that was typed in
these units comes back as typed, and one that was converted has two figures, or three where the first is a 1.
"""

from __future__ import annotations

import math
from enum import Enum
from typing import Final

from swardcast.language.catalogue import PhraseError
from swardcast.language.voice import Voice
from swardcast.quantities import (
    AREA_M2,
    DENSITY_T_PER_M3,
    LENGTH_MM,
    MASS_KG,
    SEED_G_PER_M2,
    celsius_to_fahrenheit,
)

__all__ = [
    "System",
    "area",
    "bulk_density",
    "distance",
    "layer",
    "layers",
    "length",
    "roll",
    "sand_mass",
    "sand_rate",
    "seed_mass",
    "seed_rate",
    "spacing",
    "system_of",
    "temperature",
]

_INCH_MM: Final = LENGTH_MM["in"]
_FOOT_MM: Final = LENGTH_MM["ft"]
_INCHES_IN_A_FOOT: Final = 12
_LB_PER_1000_FT2_KG_PER_M2: Final = MASS_KG["lb"] / (1000 * AREA_M2["ft2"])
_MOST_TYPED_FIGURES: Final = 4  # more than these nobody types: judgement
_SAME: Final = 1e-6  # of a number, for what conversion there and back leaves: far below any typed figure
_PARTS_OF_AN_INCH: Final = (1, 2, 4, 8, 16)  # tines are sold and rules are marked so: common practice, no source
_A_FRACTION_FITS: Final = 0.02  # of the length; half a millimetre of an inch, which no tine keeps to: judgement


class System(Enum):
    """Systems of units."""

    METRIC = "metric"
    CUSTOMARY = "customary"


def system_of(voice: Voice) -> System:
    """Tell which units the language has.

    Args:
        voice: the language.

    Returns:
        The system.

    Raises:
        PhraseError: when its phrase `language-measures` names none.
    """
    said = voice.say("language-measures")
    try:
        return System(said)
    except ValueError:
        known = " or ".join(repr(system.value) for system in System)
        message = f"phrase 'language-measures' in the language {voice.catalogue.tag}: found {said!r}; expected {known}"
        raise PhraseError(message) from None


def _is_metric(voice: Voice) -> bool:
    return system_of(voice) is System.METRIC


def length(length_mm: float, voice: Voice) -> str:
    """Say the size of a tine or a blade, a spacing, a depth or a height of cut: "13 mm", "1/2 in".

    Args:
        length_mm: 0 or more, mm.
        voice: the language.

    Returns:
        Millimetres, or inches: halves to sixteenths within 2 %, else a decimal.
    """
    return voice.say("measure-length", number=_length(length_mm, voice))


def spacing(across_mm: float, along_mm: float, voice: Voice) -> str:
    """Say a pattern of holes: "50 x 50 mm", "2 x 2 in".

    Args:
        across_mm: from tine to tine, mm.
        along_mm: in the direction of travel, mm.
        voice: the language.

    Returns:
        Both lengths with their unit.
    """
    return voice.say("measure-spacing", across=_length(across_mm, voice), along=_length(along_mm, voice))


def layer(depth_mm: float, voice: Voice, *, decimals: int = 1) -> str:
    """Say a layer of sand as computed: "1.4 mm", "0.06 in".

    Args:
        depth_mm: 0 or more, mm.
        voice: the language.
        decimals: of millimetres, 1 or 2; inches have one more.

    Returns:
        The layer; one of inches too thin to print is "less than" the thinnest.
    """
    number = _layer(depth_mm, voice, decimals)
    thinnest = 10.0 ** -(decimals + 1)
    if not _is_metric(voice) and 0 < depth_mm / _INCH_MM < thinnest / 2:
        step = voice.say("measure-layer", number=voice.number(thinnest, decimals=decimals + 1))
        return voice.say("measure-less-than", step=step)
    return voice.say("measure-layer", number=number)


def layers(thinnest_mm: float, thickest_mm: float, voice: Voice) -> str:
    """Say a span of layers of sand: "0.8 to 1.2 mm", or one where both read alike.

    Args:
        thinnest_mm: 0 or more, mm.
        thickest_mm: as much or more, mm.
        voice: the language.

    Returns:
        The span.
    """
    low, high = _layer(thinnest_mm, voice, 1), _layer(thickest_mm, voice, 1)
    if low == high:
        return layer(thickest_mm, voice)
    return voice.say("measure-layer-from-to", low=low, high=high)


def distance(distance_m: float, voice: Voice) -> str:
    """Say how long a trench or a path is: "120 m", "390 ft".

    Args:
        distance_m: 0 or more, m.
        voice: the language.

    Returns:
        Metres or feet.
    """
    feet = distance_m * LENGTH_MM["m"] / _FOOT_MM
    return voice.say("measure-distance", number=_plain(distance_m if _is_metric(voice) else feet, voice))


def area(area_m2: float, voice: Voice) -> str:
    """Say an area: "500 m2", "5,400 sq ft".

    Args:
        area_m2: 0 or more, square metres.
        voice: the language.

    Returns:
        Square metres or square feet.
    """
    return voice.say("measure-area", number=_plain(area_m2 if _is_metric(voice) else area_m2 / AREA_M2["ft2"], voice))


def sand_mass(mass_t: float, voice: Voice) -> str:
    """Say a mass of sand: "1.4 tonnes", "25 tonnes", "28 tons".

    Args:
        mass_t: 0 or more, tonnes.
        voice: the language.

    Returns:
        Tonnes, or tons of 2,000 pounds; below ten with one decimal, below a tenth with one figure.
    """
    value = mass_t if _is_metric(voice) else mass_t * 1000 / MASS_KG["us ton"]
    shown = round(value, 1) if value < 10 else round(value)  # noqa: PLR2004 - below ten a decimal tells
    if 0 < value < 0.1:  # noqa: PLR2004 - a few barrows are not none
        shown = _to_figures(value, 1)
    return voice.say("measure-sand-mass", number=voice.figure(shown), count=shown)


def sand_rate(rate_kg_per_m2: float, voice: Voice) -> str:
    """Say how much sand is spread: "2 kg on a square metre", "410 lb per 1,000 sq ft".

    Args:
        rate_kg_per_m2: 0 or more, kg on a square metre.
        voice: the language.

    Returns:
        The rate.
    """
    value = rate_kg_per_m2 if _is_metric(voice) else rate_kg_per_m2 / _LB_PER_1000_FT2_KG_PER_M2
    return voice.say("measure-sand-rate", number=_plain(value, voice))


def seed_rate(rate_g_per_m2: float, voice: Voice) -> str:
    """Say how much seed is sown: "8 g on a square metre", "1.64 lb per 1,000 sq ft".

    Args:
        rate_g_per_m2: 0 or more, g on a square metre.
        voice: the language.

    Returns:
        The rate.
    """
    value = rate_g_per_m2 if _is_metric(voice) else rate_g_per_m2 / SEED_G_PER_M2["lb/1000 ft2"]
    return voice.say("measure-seed-rate", number=_plain(value, voice))


def seed_mass(mass_kg: float, voice: Voice) -> str:
    """Say a mass of seed: "3.8 kg", "53 kg", "116 lb"; below ten with one decimal.

    Args:
        mass_kg: 0 or more, kg.
        voice: the language.

    Returns:
        The mass with its unit.
    """
    value = mass_kg if _is_metric(voice) else mass_kg / MASS_KG["lb"]
    decimals = 1 if value < 10 else 0  # noqa: PLR2004 - below ten a decimal tells
    return voice.say("measure-seed-mass", number=voice.number(value, decimals=decimals))


def bulk_density(density_t_per_m3: float, voice: Voice) -> str:
    """Say a bulk density: "1.6 t/m3", "100 lb/ft3".

    Args:
        density_t_per_m3: tonnes in a cubic metre.
        voice: the language.

    Returns:
        The density.
    """
    value = density_t_per_m3 if _is_metric(voice) else density_t_per_m3 / DENSITY_T_PER_M3["lb/ft3"]
    return voice.say("measure-density", number=_plain(value, voice))


def temperature(temperature_c: float, voice: Voice) -> str:
    """Say a temperature of the air: "20 °C", "68 °F".

    Args:
        temperature_c: degrees Celsius.
        voice: the language.

    Returns:
        Whole degrees.
    """
    value = temperature_c if _is_metric(voice) else celsius_to_fahrenheit(temperature_c)
    return voice.say("measure-temperature", number=voice.number(value))


def roll(roll_mm: float, voice: Voice) -> str:
    """Say a green speed, the length of the roll: "9 ft 4 in" in every language.

    Args:
        roll_mm: 0 or more, mm.
        voice: the language.

    Returns:
        Feet and whole inches; no speed meter reads finer (judgement).
    """
    feet, inches = divmod(round(roll_mm / _INCH_MM), _INCHES_IN_A_FOOT)
    return voice.say("measure-roll", feet=voice.number(feet), inches=voice.number(inches))


def _length(length_mm: float, voice: Voice) -> str:
    if _is_metric(voice):
        return _plain(length_mm, voice)
    inches = length_mm / _INCH_MM
    return _in_fractions(inches, voice) or _plain(inches, voice)


def _layer(depth_mm: float, voice: Voice, decimals: int) -> str:
    if _is_metric(voice):
        return voice.number(depth_mm, decimals=decimals)
    return voice.number(depth_mm / _INCH_MM, decimals=decimals + 1)


def _in_fractions(inches: float, voice: Voice) -> str:
    """The coarsest fraction of an inch that fits, or "": 12 for 11.8, not 11 13/16."""
    for parts in _PARTS_OF_AN_INCH:
        count = round(inches * parts)
        if abs(count / parts - inches) <= _A_FRACTION_FITS * inches and count:
            whole, top = divmod(count, parts)
            if not top:
                return voice.number(whole)
            fraction = voice.say("measure-fraction", top=voice.number(top), bottom=voice.number(parts))
            return (
                voice.say("measure-mixed-number", whole=voice.number(whole), fraction=fraction) if whole else fraction
            )
    return ""


def _plain(value: float, voice: Voice) -> str:
    if value == 0:
        return voice.number(0)
    for figures in range(1, _MOST_TYPED_FIGURES + 1):
        typed = _to_figures(value, figures)
        if abs(typed - value) <= _SAME * value:
            return voice.figure(typed)
    if abs(round(value) - value) <= _SAME * value:
        return voice.number(round(value))
    begins_with_one = f"{value:e}".startswith("1")
    return voice.figure(_to_figures(value, 3 if begins_with_one else 2))


def _to_figures(value: float, figures: int) -> float:
    return round(value, figures - 1 - math.floor(math.log10(value)))
