"""The units in which the trade writes quantities, and their factors.

Every factor is the exact one of NIST Special Publication 811 (Thompson & Taylor 2008, "Guide for the
Use of the International System of Units", appendix B.8), or follows from the exact inch (25.4 mm) and
the exact avoirdupois pound (0.45359237 kg).
"""

from __future__ import annotations

from typing import Final

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

DEPTH_FROM_VOLUME_MM: Final = {
    "l/m2": 1.0, "l/m²": 1.0, "m3/ha": 0.1, "m³/ha": 0.1,
    "ft3/1000 ft2": _FT3_L / (1000 * _FT2_M2), "yd3/1000 ft2": 27 * _FT3_L / (1000 * _FT2_M2),
}  # 1 mm = 1 L/m2  # fmt: skip
KG_PER_M2: Final = {
    "kg/m2": 1.0, "kg/m²": 1.0, "g/m2": 0.001, "t/ha": 0.1,
    "lb/1000 ft2": _POUND_KG / (1000 * _FT2_M2), "lb/ft2": _POUND_KG / _FT2_M2,
    "us tons/acre": _US_TON_KG / _ACRE_M2, "us ton/acre": _US_TON_KG / _ACRE_M2,
}  # fmt: skip
