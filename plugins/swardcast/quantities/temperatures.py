"""Temperatures of the air, as typed, and between the two scales."""

from __future__ import annotations

import re

from swardcast.quantities.one_number import QuantityError


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
