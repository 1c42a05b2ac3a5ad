"""What machines leave: passes, spacings, and tines with their pattern."""

from __future__ import annotations

import re
from typing import Final

from swardcast.quantities.one_number import NUMBER, QuantityError
from swardcast.quantities.plain import parse_length_mm

_SPACING: Final = re.compile(
    rf"^\s*(?P<across>{NUMBER})\s*(?P<unit1>[a-z\"]*)\s*(?:x|×|by)\s*(?P<along>{NUMBER})\s*(?P<unit2>[a-z\"]*)\s*$",
    re.IGNORECASE,
)
_MOST_PASSES: Final = 50


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
        if match is not None or re.match(rf"^\s*{NUMBER}\s*(?:x|×|by)", str(text)):
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
