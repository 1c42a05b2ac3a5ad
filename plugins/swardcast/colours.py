"""A club's two colours, and the further ones that follow from them so that everything can be read.

Contrast is that of WCAG 2.2 (W3C, 2023): at least 4.5 : 1 for text (success criterion 1.4.3) and 3 : 1 for graphics
(1.4.11). Where another colour is sought, lightness alone is moved in OKLCH (CSS Color 4, W3C), which keeps the hue.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from coloraide import Color

__all__ = [
    "BAND_INK",
    "GRAPHICS_RATIO",
    "PAPER",
    "PAPER_BY_NIGHT",
    "TEXT_RATIO",
    "USUAL_PALETTE",
    "ColourError",
    "Palette",
    "contrast_ratio",
    "palette_from",
]

TEXT_RATIO: Final = 4.5
GRAPHICS_RATIO: Final = 3.0
PAPER: Final = "#fbf7ec"
"""What the theme writes on, by day."""
PAPER_BY_NIGHT: Final = "#1b1916"
"""The same on dark screens."""
BAND_INK: Final = "#fffaf0"
"""The club's name on its colour, by day and by night."""
_BY_NIGHT_RATIO: Final = 7.0
"""What we choose ourselves may have the higher contrast of WCAG 2.2, 1.4.6."""

_WRITTEN: Final = re.compile(r"^#[0-9a-f]{6}$")
_HALVINGS: Final = 10  # finer than the steps of "#rrggbb"


class ColourError(ValueError):
    """A colour that cannot be used.

    Args:
        of_second: whether the second colour is meant.
        found: what stands there, with the contrast that it has.
        expected: what is needed.
        hint: the nearest colour that would do, or how a colour is written.
    """

    def __init__(self, *, of_second: bool, found: str, expected: str, hint: str) -> None:
        self.of_second, self.found, self.expected, self.hint = of_second, found, expected, hint
        super().__init__(f"found {found}; expected {expected}. {hint}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Palette:
    """The colours of a club as the site uses them, each as "#rrggbb".

    Args:
        band: behind the club's name; links and rules on light paper.
        band_ink: the name on it.
        stripe: below the band, or "" without a second colour.
        link_by_night: links and rules on dark paper.
    """

    band: str
    band_ink: str
    stripe: str
    link_by_night: str


USUAL_PALETTE: Final = Palette(band="#5d2b5a", band_ink=BAND_INK, stripe="", link_by_night="#cb91c5")
"""Of a club that names no colours; a test works it out again."""


def palette_from(colour: str, second: str = "") -> Palette:
    """Work out a club's palette.

    Assumes nothing; what cannot be read on the theme's paper is refused.

    Args:
        colour: the club's colour as "#rrggbb".
        second: its second colour, or "".

    Returns:
        The palette. In it each text has a contrast of at least 4.5, each graphic one of at least 3.

    Raises:
        ColourError: when a colour is written otherwise, or has too little contrast.

    Source: WCAG 2.2, 1.4.3 and 1.4.11.
    """
    band, stripe = _written(colour, of_second=False), _written(second, of_second=True) if second else ""
    # The band's ink is lighter than the paper, so that a colour that can be read on paper can be written on.
    if contrast_ratio(band, PAPER) < TEXT_RATIO:
        raise _too_little(band, PAPER, TEXT_RATIO, "the paper (links have it)", of_second=False)
    if stripe and contrast_ratio(stripe, band) < GRAPHICS_RATIO:
        raise _too_little(stripe, band, GRAPHICS_RATIO, f"the first colour {band}", of_second=True)
    by_night = _nearest_with(band, PAPER_BY_NIGHT, _BY_NIGHT_RATIO)
    return Palette(band=band, band_ink=BAND_INK, stripe=stripe, link_by_night=by_night)


def contrast_ratio(one: str, other: str) -> float:
    """Tell the contrast of two colours.

    Args:
        one: "#rrggbb".
        other: "#rrggbb".

    Returns:
        1 for the same colour to 21 for black on white.

    Source: WCAG 2.2, definition of "contrast ratio".
    """
    return _colour(one).contrast(other, method="wcag21")


def _colour(text: str) -> Color:
    # Loading it takes about 0.1 s, longer than everything else of a short command: only for a club with colours.
    from coloraide import Color  # noqa: PLC0415

    return Color(text)


def _written(text: str, *, of_second: bool) -> str:
    if not _WRITTEN.match(text.lower()):
        expected = "a colour as '#' and six digits from 0 to f, such as '#5d2b5a'"
        raise ColourError(of_second=of_second, found=repr(text), expected=expected, hint="")
    return text.lower()


def _too_little(colour: str, against: str, ratio: float, said: str, *, of_second: bool) -> ColourError:
    # Cut, not rounded: 4.46 must not read as the 4.5 that is needed.
    found = int(contrast_ratio(colour, against) * 10) / 10
    return ColourError(
        of_second=of_second,
        found=f"{colour!r}, whose contrast with {said} is {found:.1f} : 1",
        expected=f"at least {ratio:.1f} : 1",
        hint=f"The nearest colour that would do is {_nearest_with(colour, against, ratio)!r}.",
    )


def _nearest_with(colour: str, against: str, ratio: float) -> str:
    """Find the nearest lightness of a hue that has a contrast; nothing is moved where it has it already."""
    if contrast_ratio(colour, against) >= ratio:
        return colour
    tries = [found for end in (0.0, 1.0) if (found := _moved_towards(end, colour, against, ratio)) is not None]
    return min(tries)[1]  # black or white has 4.5 with any colour, and 7 with either paper


def _moved_towards(end: float, colour: str, against: str, ratio: float) -> tuple[float, str] | None:
    """Halve the way from a colour's lightness to black (0) or white (1) until the least step that will do is found."""
    start = _colour(colour).convert("oklch")

    def moved(share: float) -> str:
        lightness = start["lightness"] + share * (end - start["lightness"])
        return start.clone().set("lightness", lightness).convert("srgb").fit(method="oklch-chroma").to_string(hex=True)

    if contrast_ratio(moved(1), against) < ratio:
        return None
    low, high = 0.0, 1.0
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (low, middle) if contrast_ratio(moved(middle), against) >= ratio else (middle, high)
    return high * abs(end - start["lightness"]), moved(high)
