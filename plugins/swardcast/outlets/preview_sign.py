"""The signs of the course status as shapes for a picture: those of the theme's `_macros.html`, in the same 32 units."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from math import pi, sin
from typing import TYPE_CHECKING, Final

from swardcast.records.plan import Play

if TYPE_CHECKING:
    from PIL.Image import Image
    from PIL.ImageDraw import ImageDraw

__all__ = ["SIGN_COLOURS", "sign_mask"]

SIGN_COLOURS: Final[Mapping[Play, str]] = {
    Play.OPEN: "#21573c",
    Play.OPEN_WITH_CARE: "#7a4700",
    Play.TEMPORARY_GREEN: "#1c4c8c",
    Play.CLOSED: "#8f1d17",
    Play.NOT_KNOWN: "#4d473d",
}
"""The colours of the theme by day (tested)."""

_UNITS: Final = 32
_SMOOTH: Final = 4  # drawn so much larger, then made smaller: Pillow's shapes have hard edges
_DRAW: Final = 255
_CUT: Final = 0


@cache
def sign_mask(play: Play, size_px: int) -> Image:
    """Draw the sign of a state of play.

    Args:
        play: the state.
        size_px: width and height, px, more than 0.

    Returns:
        A picture of one channel: 255 where the sign is, 0 where it is not; it is kept, so leave it as it is.
    """
    from PIL import Image, ImageDraw  # noqa: PLC0415 - loaded late

    large = size_px * _SMOOTH
    mask = Image.new("L", (large, large), _CUT)
    _SHAPES[play](_Pen(ImageDraw.Draw(mask), large / _UNITS))
    return mask.resize((size_px, size_px), Image.Resampling.LANCZOS)


class _Pen:
    """Draws in the sign's units."""

    def __init__(self, draw: ImageDraw, scale: float) -> None:
        self._draw = draw
        self._scale = scale

    def disc(self, x: float, y: float, radius: float, fill: int = _DRAW) -> None:
        scale = self._scale
        self._draw.ellipse(
            ((x - radius) * scale, (y - radius) * scale, (x + radius) * scale, (y + radius) * scale), fill=fill
        )

    def polygon(self, points: list[tuple[float, float]], fill: int = _DRAW) -> None:
        self._draw.polygon([(x * self._scale, y * self._scale) for x, y in points], fill=fill)

    def line(self, x1: float, y1: float, x2: float, y2: float, width: float) -> None:
        """A line with round ends."""
        scale = self._scale
        self._draw.line((x1 * scale, y1 * scale, x2 * scale, y2 * scale), fill=_DRAW, width=round(width * scale))
        self.disc(x1, y1, width / 2)
        self.disc(x2, y2, width / 2)

    def arc(self, radius: float, first_deg: float, last_deg: float, width: float) -> None:
        """A part of a ring about the middle; `radius` is that of the line's middle."""
        scale, edge = self._scale, radius + width / 2
        box = ((16 - edge) * scale, (16 - edge) * scale, (16 + edge) * scale, (16 + edge) * scale)
        self._draw.arc(box, first_deg, last_deg, fill=_DRAW, width=round(width * scale))


def _open(pen: _Pen) -> None:
    pen.disc(16, 16, 13)
    pen.polygon([(13, 7), (23, 11.5), (16, 15), (16, 25), (13, 25)], _CUT)


def _open_with_care(pen: _Pen) -> None:
    pen.disc(16, 16, 13)
    across = [number / 4 for number in range(_UNITS * 4 + 1)]
    wave = [(x, -2 * sin(pi * (x - 3.4) / 6.3)) for x in across]
    pen.polygon([*((x, 13 + y) for x, y in wave), *((x, 19 + y) for x, y in reversed(wave))], _CUT)


def _temporary_green(pen: _Pen) -> None:
    pen.disc(12.5, 12.5, 10.5)
    pen.disc(12.5, 12.5, 7.5, _CUT)
    pen.disc(25, 25, 6)
    pen.disc(26, 24, 2, _CUT)


def _closed(pen: _Pen) -> None:
    for x in (4.5, 27.5):
        pen.line(x, 4.5, x, 27.5, 4)
    pen.line(5, 9.5, 27, 22.5, 4)
    pen.line(27, 9.5, 5, 22.5, 4)


def _not_known(pen: _Pen) -> None:
    dashes, share = 8, 5.4 / (5.4 + 4.025)
    step = 360 / dashes
    for number in range(dashes):
        pen.arc(12, number * step, (number + share) * step, 4)


_SHAPES: Final[Mapping[Play, Callable[[_Pen], None]]] = {
    Play.OPEN: _open,
    Play.OPEN_WITH_CARE: _open_with_care,
    Play.TEMPORARY_GREEN: _temporary_green,
    Play.CLOSED: _closed,
    Play.NOT_KNOWN: _not_known,
}
