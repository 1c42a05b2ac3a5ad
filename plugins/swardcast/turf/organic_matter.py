"""Organic matter in the top of a root zone: how dense such a layer is, and how far sand dilutes it."""

from __future__ import annotations

from typing import Final

from swardcast.turf.sand import DEFAULT_DENSITY_T_PER_M3

__all__ = [
    "MINERAL_DENSITY_T_PER_M3",
    "ORGANIC_DENSITY_T_PER_M3",
    "diluted_fraction",
    "filled_fraction",
    "layer_density_t_per_m3",
]

ORGANIC_DENSITY_T_PER_M3: Final = 0.22
"""Bulk density of organic matter, t/m3; Woods 2021, "Sand and organic matter have different bulk densities", Asian
Turfgrass Center (which prints it as kg/m3, a slip)."""

MINERAL_DENSITY_T_PER_M3: Final = 1.56
"""Bulk density of the sand in the layer, t/m3; same source."""


def layer_density_t_per_m3(organic_fraction: float) -> float:
    """Work out the bulk density of a layer from its organic matter.

    Args:
        organic_fraction: organic matter as a share of the dry mass, 0 to 1.

    Returns:
        Tonnes in a cubic metre, from 0.22 to 1.56.

    Source: Woods 2021, "Sand and organic matter have different bulk densities", Asian Turfgrass Center:
        100 / (OM / 0.22 + (100 - OM) / 1.56); prints 1.2 for 4.8 % and 1.3 for 3.1 %.
    """
    return 1 / (organic_fraction / ORGANIC_DENSITY_T_PER_M3 + (1 - organic_fraction) / MINERAL_DENSITY_T_PER_M3)


def filled_fraction(area_fraction: float, depth_mm: float, layer_mm: float, filled_share: float) -> float:
    """Work out which share of a layer is sand in holes or grooves.

    Assumes straight sides, and where they are not filled to the top, sand at all depths alike.

    Args:
        area_fraction: share of the surface that takes sand, 0 to 1.
        depth_mm: depth of the holes or grooves, 0 or more.
        layer_mm: thickness of the layer from the surface down, above 0.
        filled_share: share of the room that is filled, 0 to 1.

    Returns:
        A fraction from 0 to 1.

    Source: arithmetic.
    """
    return area_fraction * min(depth_mm, layer_mm) / layer_mm * filled_share


def diluted_fraction(
    organic_fraction: float,
    *,
    layer_mm: float,
    filled: float,
    on_top_mm: float,
    sand_density_t_per_m3: float = DEFAULT_DENSITY_T_PER_M3,
) -> float:
    """Work out the organic matter in the top layer after sand was worked in and spread.

    Assumes that the layer is alike throughout; that sand in the holes takes the place of what was cored out, or pushes
    it down and out of the layer; that sand on top stays, so that as much of the old layer is below the new one; and
    that no organic matter grows or decays. Taking cores out without sand changes nothing.

    Args:
        organic_fraction: organic matter before, as a share of the dry mass, 0 to 1.
        layer_mm: thickness of the layer that is sampled, above 0.
        filled: share of the layer that is sand in holes and grooves, 0 to 1.
        on_top_mm: sand that stays on the surface, 0 or more.
        sand_density_t_per_m3: bulk density of the sand spread.

    Returns:
        Organic matter after, as a share of the dry mass; not above that before.

    Source: mass balance of Woods 2021, "Organic matter reduction by hollow-tines, solid-tines, and sand topdressing",
        Asian Turfgrass Center: 6.7 % in the top 20 mm becomes 6.3 % where 4.5 % of it is replaced by sand, 6.2 % with
        1 mm of sand on top, 5.8 % with a second one.
    """
    old_share = (1 - min(1.0, filled)) * (1 - min(1.0, on_top_mm / layer_mm))
    old_mass = old_share * layer_density_t_per_m3(organic_fraction)
    return organic_fraction * old_mass / (old_mass + (1 - old_share) * sand_density_t_per_m3)
