"""Readings taken on the course as numbers: what each is called, and the meter in whose unit it speaks."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import Enum
from typing import Final

from swardcast.quantities import QuantityError, parse_fraction, parse_length_mm, parse_roll_mm

__all__ = ["READINGS", "Measured", "Meter", "gravities_of", "measured"]

_GRAVITIES: Final = re.compile(r"^\s*(\d+(?:\.\d+)?)\s*(?:g|gravities)\s*$", re.IGNORECASE)


class Meter(Enum):
    """What a reading counts, with its unit."""

    SHARE = "share, as a fraction"
    ROLL = "length of the roll, mm"
    LENGTH = "length, mm"
    HAMMER = "gravities of a drop hammer"


READINGS: Final = {
    "green speed": Meter.ROLL,
    "firmness": Meter.LENGTH,
    "moisture": Meter.SHARE,
    "height of cut": Meter.LENGTH,
    "organic matter": Meter.SHARE,
}
"""Readings that an observation may hold, by name; firmness is read by a drop hammer as well."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """A reading as a number.

    Args:
        value: the number.
        meter: what it counts; only readings of one meter compare.
    """

    value: float
    meter: Meter


def gravities_of(text: object) -> float | None:
    """Read what a drop hammer shows, such as "95 gravities".

    Args:
        text: the reading as typed.

    Returns:
        Gravities, or None where it is no such reading.
    """
    match = _GRAVITIES.match(str(text))
    return float(match[1]) if match is not None else None


def measured(name: str, text: object) -> Measured:
    """Read a reading.

    Args:
        name: one of `READINGS`.
        text: the reading as typed, with its unit.

    Returns:
        The number.

    Raises:
        QuantityError: when it has no unit, or not one of this reading.
    """
    meter = READINGS[name]
    if name == "firmness" and (gravities := gravities_of(text)) is not None:
        return Measured(value=gravities, meter=Meter.HAMMER)
    match meter:
        case Meter.SHARE:
            return Measured(value=parse_fraction(text), meter=meter)
        case Meter.ROLL:
            return Measured(value=parse_roll_mm(text), meter=meter)
        case Meter.LENGTH:
            return Measured(value=parse_length_mm(text), meter=meter)
        case _:
            raise QuantityError(text, "a reading with its unit")
