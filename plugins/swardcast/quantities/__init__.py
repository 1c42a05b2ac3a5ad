"""Quantities as the trade writes them, with their unit, turned into plain numbers.

Units convert here, at the edge; what a member reads is brought back to the units of the language by
`language.measures`, with the same factors (`units`).
"""

from swardcast.quantities.one_number import Dimension, QuantityError
from swardcast.quantities.patterns import parse_count, parse_spacing_mm, parse_tines
from swardcast.quantities.plain import (
    parse_area_m2,
    parse_days,
    parse_density_t_per_m3,
    parse_fraction,
    parse_length_mm,
    parse_mass_t,
    parse_minutes,
    parse_roll_mm,
    parse_seed_g_per_m2,
)
from swardcast.quantities.sand import Sand, SandBasis, parse_sand
from swardcast.quantities.temperatures import celsius_to_fahrenheit, fahrenheit_to_celsius, parse_temperature_c
from swardcast.quantities.units import AREA_M2, DENSITY_T_PER_M3, LENGTH_MM, MASS_KG, SEED_G_PER_M2

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
