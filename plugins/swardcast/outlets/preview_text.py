"""Text for a picture: which of it the font can write, and how large it may be to fit."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING, Final
from unicodedata import category, normalize

if TYPE_CHECKING:
    from PIL.ImageFont import FreeTypeFont

__all__ = ["BOLD", "REGULAR", "Fitted", "fit", "font_at", "writable"]

REGULAR: Final = 400
BOLD: Final = 700
_NO_CHARACTER: Final = "\U0010ffff"  # no font has it, so it is written as what is missing
_ELLIPSIS: Final = "\u2026"


@cache
def font_at(size_px: int, weight: int) -> FreeTypeFont:
    """Load the font.

    Args:
        size_px: height of a line's letters, px, more than 0.
        weight: `REGULAR` or `BOLD`.

    Returns:
        Source Sans 3 (SIL Open Font License 1.1): Latin with every accent, Greek and Cyrillic.
    """
    from PIL import ImageFont  # noqa: PLC0415 - loaded late

    path = files("fontpkg_source_sans_3") / "files" / "SourceSans3[wght].ttf"
    # The basic layout is the same on every machine; the other one needs libraries that some do not have.
    font = ImageFont.truetype(str(path), size_px, layout_engine=ImageFont.Layout.BASIC)
    font.set_variation_by_axes([weight])
    return font


@cache
def _shape(character: str) -> tuple[tuple[int, int], bytes]:
    mask = font_at(32, REGULAR).getmask(character)
    return mask.size, bytes(mask)


def writable(text: str) -> str | None:
    """Give a text as the font can write it.

    Args:
        text: any text.

    Returns:
        The text on one line, without pictures and signs that the font lacks; None where it lacks a letter or a digit.
    """
    kept = []
    for character in normalize("NFC", text):
        if character.isspace():
            kept.append(" ")
        elif category(character) in ("Cc", "Cf", "Cs", "Co", "Cn"):
            continue
        elif _shape(character) != _shape(_NO_CHARACTER):
            kept.append(character)
        elif category(character)[0] in "LN":
            return None
    return " ".join("".join(kept).split())


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitted:
    """A text broken into lines.

    Args:
        lines: the lines.
        size_px: size of the font.
        weight: weight of the font.
        line_px: from line to line.
    """

    lines: tuple[str, ...]
    size_px: int
    weight: int
    line_px: int

    @property
    def height_px(self) -> int:
        """Height of all lines."""
        return self.line_px * len(self.lines)


def fit(text: str, *, width_px: int, height_px: int, sizes_px: Sequence[int], weight: int) -> Fitted:
    """Break a text into lines at the largest size at which it fits.

    Where it fits at none, the smallest is taken, and words that find no place make room for an ellipsis.

    Args:
        text: what `writable` gives.
        width_px: width, px.
        height_px: height, px; at least one line of the smallest size.
        sizes_px: sizes to try, the largest first.
        weight: weight of the font.

    Returns:
        Lines that are nowhere wider or higher than that.
    """
    for size in sizes_px:
        line_px = _line_px(size)
        most = height_px // line_px
        lines = _lines(text, _measure(size, weight), width_px, most)
        if len(lines) <= most:
            break
    else:
        last = max(0, most - 1)
        lines = (*lines[:last], _shortened(lines[last], _measure(size, weight), width_px))
    return Fitted(lines=lines, size_px=size, weight=weight, line_px=line_px)


def _line_px(size_px: int) -> int:
    return round(size_px * 1.2)


def _measure(size_px: int, weight: int) -> Callable[[str], float]:
    return font_at(size_px, weight).getlength


def _lines(text: str, measure: Callable[[str], float], width_px: int, most: int) -> tuple[str, ...]:
    """Break a text into lines; of those that are too many only the first one is made."""
    lines: list[str] = []
    line = ""
    for word in (part for whole in text.split() for part in _parts(whole, measure, width_px)):
        longer = f"{line} {word}".strip()
        if line and measure(longer) > width_px:
            lines.append(line)
            longer = word
            if len(lines) > most:
                return tuple(lines)
        line = longer
    return (*lines, line)


def _parts(word: str, measure: Callable[[str], float], width_px: int) -> list[str]:
    """A word that is wider than a line is broken where the line ends."""
    if measure(word) <= width_px:
        return [word]
    parts, part = [], ""
    for character in word:
        if part and measure(part + character) > width_px:
            parts.append(part)
            part = ""
        part += character
    return [*parts, part]


def _shortened(text: str, measure: Callable[[str], float], width_px: int) -> str:
    words = text.split()
    while len(words) > 1 and measure(" ".join(words) + _ELLIPSIS) > width_px:
        words.pop()
    last = " ".join(words)
    while last and measure(last + _ELLIPSIS) > width_px:
        last = last[:-1]
    return last + _ELLIPSIS
