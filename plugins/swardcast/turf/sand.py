"""Sand: how much fits into the holes, how much stays on top, and what it weighs."""

from __future__ import annotations

import math
from typing import Final

__all__ = [
    "DEFAULT_DENSITY_T_PER_M3",
    "HIDING_DEPTH_MM",
    "depth_mm_from_kg_per_m2",
    "dry_t_from_moist",
    "hidden_fraction",
    "infill_mm",
    "kg_per_m2_from_depth",
    "moist_t_from_dry",
    "surplus_mm",
    "tonnes_on_area",
]

DEFAULT_DENSITY_T_PER_M3: Final = 1.56
"""Bulk density of dry topdressing sand, t/m3; print runs from 1.5 to 1.72.

Source: Woods 2021, "Sand and organic matter have different bulk densities", Asian Turfgrass Center.
"""

HIDING_DEPTH_MM: Final = 2.85
"""Surplus sand that hides 63 % of the leaf, mm; used from 0 to 3 mm.

Judgement, set so that 2.4 mm of surplus hides 57 % of the surface, which leaves near to the 38.3 % of green
cover that Iowa State saw on day 0 after heavy sand.
"""


def infill_mm(area_fraction: float, depth_mm: float) -> float:
    """Work out how much sand fills the holes or grooves, spread over the whole surface.

    Assumes straight sides and holes filled to the top.

    Args:
        area_fraction: share of the surface that is open, 0 or more.
        depth_mm: depth of the holes, 0 or more.

    Returns:
        Millimetres of sand over the whole surface (1 mm = 1 L/m2).

    Source: arithmetic, V = A x depth; checked against Woods 2021, "Organic matter reduction by hollow-tines,
        solid-tines, and sand topdressing" (12 mm at 5 x 5 cm, 7 cm deep: 3.167 mm).
    """
    return area_fraction * depth_mm


def surplus_mm(spread_mm: float, room_mm: float) -> float:
    """Work out how much sand stays on top once the holes are full.

    Args:
        spread_mm: sand spread, 0 or more.
        room_mm: room in the holes and grooves, 0 or more.

    Returns:
        Millimetres on the surface, 0 or more.
    """
    return max(0.0, spread_mm - room_mm)


def hidden_fraction(surplus: float) -> float:
    """Estimate the share of the leaf that surplus sand hides on the day it is spread.

    Args:
        surplus: sand on the surface, mm, 0 or more.

    Returns:
        A fraction from 0 to 1.

    Source: judgement, 1 - exp(-surplus / 2.85 mm); see `HIDING_DEPTH_MM`.
    """
    return 1 - math.exp(-surplus / HIDING_DEPTH_MM)


def kg_per_m2_from_depth(depth_mm: float, density_t_per_m3: float = DEFAULT_DENSITY_T_PER_M3) -> float:
    """Turn a depth of sand into a mass for each square metre.

    Args:
        depth_mm: depth, 0 or more.
        density_t_per_m3: bulk density of the sand, 1.5 to 1.72 in print.

    Returns:
        Kilograms per square metre.

    Source: arithmetic; checked against Woods 2017, "Sand topdressing and growth potential" (6 mm at 1.5: 9 kg/m2).
    """
    return depth_mm * density_t_per_m3


def depth_mm_from_kg_per_m2(kg_per_m2: float, density_t_per_m3: float = DEFAULT_DENSITY_T_PER_M3) -> float:
    """Turn a mass of sand for each square metre into a depth.

    Args:
        kg_per_m2: rate, 0 or more.
        density_t_per_m3: bulk density of the sand, above 0.

    Returns:
        Millimetres.

    Source: arithmetic; checked against Woods 2017, "Sand topdressing to match grass growth".
    """
    return kg_per_m2 / density_t_per_m3


def tonnes_on_area(kg_per_m2: float, area_m2: float) -> float:
    """Work out the mass of sand that an area takes.

    Args:
        kg_per_m2: rate, 0 or more.
        area_m2: area, 0 or more.

    Returns:
        Metric tonnes.
    """
    return kg_per_m2 * area_m2 / 1000.0


def dry_t_from_moist(moist_t: float, water_fraction: float) -> float:
    """Work out how much dry sand there is in moist sand as it was weighed.

    Args:
        moist_t: mass as weighed, tonnes, 0 or more.
        water_fraction: mass of the water over that of the dry sand, 0 or more.

    Returns:
        Tonnes of dry sand.

    Source: w = (m_moist - m_dry) / m_dry, the water content of ASTM D2216 (mass of the water over that of the solids)
        and ISO 17892-1 (loss on drying over the dry mass left), as their published scopes give it; ISO 11465:1993 has
        the same (from memory).
    """
    return moist_t / (1 + water_fraction)


def moist_t_from_dry(dry_t: float, water_fraction: float) -> float:
    """Work out what dry sand weighs with its water.

    Args:
        dry_t: mass of the dry sand, tonnes, 0 or more.
        water_fraction: mass of the water over that of the dry sand, 0 or more.

    Returns:
        Tonnes as weighed.

    Source: as `dry_t_from_moist`, turned round.
    """
    return dry_t * (1 + water_fraction)
