"""One number with its unit, as typed: what every quantity is read by, and what is said of one that cannot be read."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from swardcast.errors import SwardcastError, nearest

# At most 15 figures: no quantity has more, and beyond them a number has no exact value.
_FIGURES: Final = "[0-9]{1,15}"
NUMBER: Final = (
    rf"(?:{_FIGURES}\s+{_FIGURES}/{_FIGURES}|{_FIGURES}/{_FIGURES}"
    rf"|[0-9]{{1,3}}(?:,[0-9]{{3}}){{1,4}}(?:\.{_FIGURES})?|{_FIGURES}(?:\.{_FIGURES})?|\.{_FIGURES})"
)
QUANTITY: Final = re.compile(rf"^\s*(?P<number>{NUMBER})\s*(?P<unit>.*?)\s*$")
_BARE_TON: Final = re.compile(r"^tons?\b")


class QuantityError(SwardcastError):
    """A quantity that cannot be read.

    Args:
        found: the text as written.
        expected: what would have been right, with an example.
        hint: what to do, or "".
    """

    def __init__(self, found: object, expected: str, hint: str = "") -> None:
        self.found = found
        self.expected = expected
        self.hint = hint
        super().__init__(found, expected, hint)

    def __str__(self) -> str:
        sentence = f"found {self.found!r}; expected {self.expected}"
        return f"{sentence}. {self.hint}" if self.hint else sentence


@dataclass(frozen=True, slots=True)
class Dimension:
    """A kind of quantity: its units, and an example to show a reader who wrote something else."""

    name: str
    units: dict[str, float]
    example: str

    @property
    def expected(self) -> str:
        """What to write, for an error message."""
        return f"{self.name} with its unit, such as {self.example}"


def number(text: str) -> float:
    """Turn the figures of a quantity into a number.

    Args:
        text: what `NUMBER` matches: whole, with a decimal point, with commas between thousands, or with a fraction.

    Returns:
        The number, 0 or more.

    Raises:
        QuantityError: when the bottom of a fraction is 0.
    """
    whole = text.replace(",", "")
    if "/" not in whole:
        return float(whole)
    *integer, fraction = whole.split()
    numerator, denominator = fraction.split("/")
    if int(denominator) == 0:
        raise QuantityError(text, "a fraction with a bottom above zero, such as '1/2'")
    return sum(map(float, integer)) + int(numerator) / int(denominator)


@lru_cache(maxsize=256)  # a folder has few units, each typed many times; judgement
def unit_key(text: str) -> str:
    """Bring a unit as typed to the form in which `units` has it.

    Args:
        text: the unit as typed, such as "kg / m2" or "Square feet".

    Returns:
        Small letters, one space between words, none around a stroke; of an unknown unit, too.
    """
    key = re.sub(r"\s*/\s*", "/", text.strip().lower())
    key = re.sub(r"1,000\b", "1000", key)
    key = re.sub(r"\bsquare (feet|foot)\b", "ft2", re.sub(r"\bsquare (metres?|meters?)\b", "m2", key))
    return re.sub(r"\s+", " ", key)


def parsed(text: object, dimension: Dimension) -> float:
    """Read a number with its unit.

    Args:
        text: what was typed.
        dimension: the units that fit here.

    Returns:
        The number in the unit that is 1 in the dimension's table, 0 or more.

    Raises:
        QuantityError: when it is no number with one of these units.
    """
    if not isinstance(text, str):
        hint = f"A number needs its unit: write '{text} {next(iter(dimension.units))}' if that is what you mean."
        raise QuantityError(text, dimension.expected, hint if isinstance(text, int | float) else "")
    match = QUANTITY.match(text)
    if match is None or match["unit"].startswith(","):
        comma = match is not None  # the number ended at a comma
        hint = "Write a decimal with a point: '0.5', not '0,5'." if comma else ""
        raise QuantityError(text, dimension.expected, hint)
    unit = unit_key(match["unit"])
    if not unit:
        first = next(iter(dimension.units))
        hint = f"A number needs its unit: write '{text.strip()} {first}' if that is what you mean."
        raise QuantityError(text, dimension.expected, hint)
    if unit not in dimension.units:
        ton = "A ton is two different masses: write 't' for tonnes or 'US tons'." if _BARE_TON.match(unit) else ""
        raise QuantityError(text, dimension.expected, ton or nearest(unit, dimension.units))
    return number(match["number"]) * dimension.units[unit]
