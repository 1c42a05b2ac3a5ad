"""An amount of sand, told as a depth, a rate or a mass."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import Enum

from swardcast.quantities.one_number import QUANTITY, Dimension, number, parsed, unit_key
from swardcast.quantities.units import DEPTH_FROM_VOLUME_MM, KG_PER_M2, LENGTH_MM, MASS_KG


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
    every = {**LENGTH_MM, **DEPTH_FROM_VOLUME_MM, **KG_PER_M2, **MASS_KG}
    sand = Dimension("an amount of sand", every, "'1.4 t/green', '2 mm', '0.5 kg/m2' or '100 lb/1000 ft2'")
    match = QUANTITY.match(text) if isinstance(text, str) else None
    unit = unit_key(match["unit"]) if match else ""
    each = re.sub(r"(?:/| a | per | )(?:green|tee|bunker|fairway|surface|each)$", "", unit)
    if match and each != unit and each in MASS_KG:
        return Sand(number(match["number"]) * MASS_KG[each] / 1000.0, SandBasis.TONNES_EACH)
    if unit in MASS_KG:
        return Sand(parsed(text, sand) / 1000.0, SandBasis.TONNES_IN_ALL)
    if unit in KG_PER_M2:
        return Sand(parsed(text, sand), SandBasis.KG_PER_M2)
    return Sand(parsed(text, sand), SandBasis.DEPTH_MM)
