"""A picture with all that belongs to it: the drawing, its caption, the key of its signs, the same in figures."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from markupsafe import Markup

from swardcast.language.voice import Voice
from swardcast.notices.pictures import Sign, Told
from swardcast.outlets.pictures.canvas import Canvas
from swardcast.outlets.rendering import rendered

__all__ = ["figure_html"]

_WIDE: Final = 24.0
_HIGH: Final = 16.0


def figure_html(told: Told, drawing: str, voice: Voice, *, heading: str = "") -> Markup:
    """Render a picture.

    Args:
        told: the picture in words.
        drawing: its `svg` element, as drawn by a sibling of this module.
        voice: the language and the day of the reader.
        heading: a heading, which makes it a part of a notice's page, or "".

    Returns:
        HTML; every text is escaped.
    """
    signs = {row.sign: Markup(_sign(row.sign)) for row in told.key}  # noqa: S704 - shapes without words
    html = rendered(
        "figure.html",
        voice,
        told=told,
        drawing=Markup(drawing),  # noqa: S704 - the library has escaped its words
        signs=signs,
        heading=heading,
    )
    return Markup(html)  # noqa: S704 - escaped above


def _sign(sign: Sign) -> str:
    canvas = Canvas()
    _SIGNS[sign](canvas)
    return canvas.sign(_WIDE, _HIGH)


def _usual(canvas: Canvas) -> None:
    canvas.box("band", (1, 2), 22, 12)
    canvas.line("edge", (1, 2), (23, 2))
    canvas.line("edge", (1, 14), (23, 14))
    canvas.line("line", (1, 8), (23, 8))


def _range(canvas: Canvas) -> None:
    canvas.box("range", (1, 3), 22, 10)


def _promised(canvas: Canvas) -> None:
    _range(canvas)
    canvas.line("likely", (12, 3), (12, 13))


def _normal(canvas: Canvas) -> None:
    _range(canvas)
    canvas.diamond("inside", (12, 8), 8)


def _expected(canvas: Canvas) -> None:
    canvas.box("open", (6, 4), 12, 11)
    canvas.line("whisker", (12, 1), (12, 11))


_SIGNS: Final[dict[Sign, Callable[[Canvas], None]]] = {
    Sign.SEEN: lambda canvas: canvas.dot("seen", (12, 8), 5),
    Sign.SEEN_ELSEWHERE: lambda canvas: canvas.dot("seen-elsewhere", (12, 8), 4.5),
    Sign.CAME: lambda canvas: canvas.diamond("inside", (12, 8), 8),
    Sign.WORK: lambda canvas: canvas.box("work", (1, 4), 22, 8),
    Sign.WAITING: lambda canvas: canvas.line("whisker", (1, 8), (23, 8)),
    Sign.NORMAL: _normal,
    Sign.PROMISED: _promised,
    Sign.FIXTURE: lambda canvas: canvas.triangle("fixture", (12, 3), 5.5),
    Sign.GREW: lambda canvas: canvas.box("work", (6, 1), 12, 14),
    Sign.NOT_RECORDED: lambda canvas: canvas.box("no-record", (6, 1), 12, 14),
    Sign.EXPECTED: _expected,
    Sign.USUAL: _usual,
    Sign.INSIDE: lambda canvas: canvas.diamond("inside", (12, 8), 8),
    Sign.OUTSIDE: lambda canvas: canvas.cross("outside", (12, 8), 6),
    Sign.HEALING: _range,
    Sign.ALLOWANCE: lambda canvas: canvas.box("open", (1, 3), 22, 10),
    Sign.CHOICE: lambda canvas: canvas.dot("seen", (12, 8), 4.5),
    Sign.AS_PLANNED: lambda canvas: canvas.diamond("inside", (12, 8), 7),
    Sign.AIM: lambda canvas: canvas.box("band", (1, 3), 22, 10),
    Sign.BEST_DAY: lambda canvas: canvas.diamond("inside", (12, 8), 6),
    Sign.NO_WORK: lambda canvas: canvas.box("range", (1, 5), 22, 6),
}
