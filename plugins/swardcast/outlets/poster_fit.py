"""What fits on a poster: how many lines a text takes on paper, worked out without the printer's letters.

Nobody knows which letters a reader's machine will print. So a text is measured with widths that are generous for the
usual upright letters without serifs: what fits here fits there, with a little air. A word is never parted: a longer
word makes the type smaller.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

__all__ = ["FULL_SCALE", "SCALES", "Block", "Style", "fits", "headline_size"]

FULL_SCALE: Final = 100
SCALES: Final = (100, 92, 84, 76, 68, 60, 52, 44, 36, 28, 20, 14, 10, 7, 5)
"""Sizes of the whole type, in per cent; `static/poster.css` has a class for each."""

_POINTS_A_MM: Final = 72 / 25.4
_WIDTH_PT: Final = 186 * _POINTS_A_MM
"""What A4 (210 x 297 mm, ISO 216) and US Letter (215.9 x 279.4 mm, ANSI/ASME Y14.1) have in common inside margins of
12 mm, which usual printers keep to: 186 x 255 mm."""
_HEIGHT_PT: Final = 255 * _POINTS_A_MM
_AIR: Final = 0.98  # of the height that is used: for what letters do not tell

# Widths in parts of the type's size. The style sheet asks first for letters that nearly every machine has in the same
# widths; the figures are theirs from memory, rounded up a little. `tests/outlets/test_poster_printed.py` prints them.
_BLANK: Final = 0.28
_FULL: Final = 1.3
_LARGE: Final = 0.74
_BROAD: Final = 0.95
_SMALL: Final = 0.57
_WIDTHS: Final = {
    **dict.fromkeys("ijl|'’‘", 0.24),
    **dict.fromkeys("ftrI.,:;!()[]/-", 0.34),
    **dict.fromkeys('cksvxyzJ“”"*', 0.52),
    **dict.fromkeys("wFTLZ", 0.74),
    **dict.fromkeys("mMW@%&—…+=", _BROAD),
}
_BOLD: Final = 1.08
_HEADLINES: Final = ((44, 2), (38, 2), (32, 3))
_LONG_HEADLINES: Final = (26, 20, 16, 12, 9)


@dataclass(frozen=True, slots=True, kw_only=True)
class Style:
    """How a text is set; the same figures stand in `static/poster.css`.

    Args:
        size_pt: size of the type, in points.
        line: distance of lines, in parts of the size.
        after_pt: space after each block, in points.
        bold: whether it is bold.
        width: part of the page's width, 0-1.
    """

    size_pt: float
    line: float = 1.2
    after_pt: float = 0.0
    bold: bool = False
    width: float = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A text on the poster.

    Args:
        text: the words.
        style: how they are set.
    """

    text: str
    style: Style


def headline_size(text: str) -> int:
    """Choose the size of the headline: the largest of few lines; below 26 points only for a long word.

    Args:
        text: the headline.

    Returns:
        Size in points at full scale.
    """
    for size, most_lines in _HEADLINES:
        lines = _lines(text, Style(size_pt=size, bold=True), 1.0)
        if lines is not None and lines <= most_lines:
            return size
    fitting = (size for size in _LONG_HEADLINES if _lines(text, Style(size_pt=size, bold=True), 1.0) is not None)
    return next(fitting, _LONG_HEADLINES[-1])


def fits(blocks: Sequence[Block], scale: int, fixed_pt: float) -> bool:
    """Tell whether texts fit one below the other on one page.

    Args:
        blocks: the texts.
        scale: per cent of their full size.
        fixed_pt: height of what does not scale, in points.

    Returns:
        Whether they do, with no word longer than a line.
    """
    part = scale / FULL_SCALE
    height = fixed_pt
    for block in blocks:
        lines = _lines(block.text, block.style, part)
        if lines is None:
            return False
        height += part * (lines * block.style.size_pt * block.style.line + block.style.after_pt)
    return height <= _AIR * _HEIGHT_PT


@lru_cache(maxsize=2048)  # a choice asks for what the one before it asked for, but for one text
def _lines(text: str, style: Style, part: float) -> int | None:
    """Count lines, filled word by word; None where a word is longer than a line."""
    room = style.width * _WIDTH_PT / (part * style.size_pt * (_BOLD if style.bold else 1.0))
    lines, used = 1, 0.0
    for word in _words(text):
        width = sum(map(_width, word))
        if width > room:
            return None
        if used and used + _BLANK + width > room:
            lines, used = lines + 1, width
        else:
            used += width + (_BLANK if used else 0.0)
    return lines


def _words(text: str) -> list[str]:
    """Words between blanks; each broad letter of East Asia is one, since a line may end after any of them."""
    parted = "".join(f" {letter} " if unicodedata.east_asian_width(letter) in "WF" else letter for letter in text)
    return parted.split()


@lru_cache(maxsize=4096)
def _width(letter: str) -> float:
    if unicodedata.category(letter) in ("Mn", "Cf"):
        return 0.0
    if unicodedata.east_asian_width(letter) in "WF":
        return _FULL
    if letter in _WIDTHS:
        return _WIDTHS[letter]
    if letter.isascii():
        return _LARGE if letter.isupper() else _SMALL
    name = unicodedata.name(letter, "")
    if name.startswith(("LATIN SMALL", "GREEK SMALL", "CYRILLIC SMALL", "HEBREW LETTER", "ARABIC LETTER")):
        return _LARGE
    return _BROAD if letter.isalnum() else _FULL
