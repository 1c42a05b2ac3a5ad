"""Sand as pictures: what lies in the store, and a year's sand beside amounts in print."""

from __future__ import annotations

from typing import Final

from swardcast.outlets.pictures.axes import draw_marks, draw_ticks
from swardcast.outlets.pictures.canvas import LETTERS, LINE, WIDTH, Canvas, Scale, shortened
from swardcast.planning.sand_pictures import PrintPicture, PrintRow, StorePicture

__all__ = ["draw_sand_in_print", "draw_sand_store"]

_LEFT: Final = 42.0
_RIGHT: Final = WIDTH - 6.0
_TOP: Final = 48.0
_HIGH: Final = 210.0
_DOT: Final = 4.5
_DIAMOND: Final = 5.5
_BAR: Final = 12.0
_PRINT_LEFT: Final = 6.0
_PRINT_RIGHT: Final = WIDTH - 14.0


def draw_sand_store(picture: StorePicture) -> str:
    """Draw what lies in the store as a stepped line.

    Args:
        picture: its facts and words.

    Returns:
        An `svg` element: the line from day to day, broken lines for the room and for what is kept back, dots for counts
        and diamonds for deliveries.
    """
    canvas = Canvas()
    bottom = _TOP + _HIGH
    days = Scale.of_days(picture.first, picture.last, _LEFT, _RIGHT)
    masses = Scale(picture.masses[0].value, picture.masses[-1].value, bottom, _TOP)
    draw_marks(canvas, picture.masses, masses, (_LEFT, _RIGHT))
    canvas.words(picture.axis_words, (0, LETTERS - 2))
    if picture.as_of is not None:
        place = days(picture.as_of.day)
        canvas.line("as-of", (place, _TOP - 4), (place, bottom))
        canvas.words(picture.as_of.words, (place, _TOP - 8), anchor="middle")
    draw_ticks(canvas, picture.ticks, days, bottom)
    for level in picture.levels:
        canvas.line("level", (_LEFT, masses(level.value)), (_RIGHT, masses(level.value)))
        canvas.words(level.words, (_RIGHT, masses(level.value) - 4), anchor="end")
    points = [(days(picture.steps[0][0]), masses(picture.steps[0][1]))]
    for day, mass in picture.steps[1:]:
        points += [(days(day), points[-1][1]), (days(day), masses(mass))]
    canvas.path("line", [*points, (_RIGHT, points[-1][1])])
    for day, mass in picture.counts:
        canvas.dot("seen", (days(day), masses(mass)), _DOT)
    for day, mass in picture.deliveries:
        canvas.diamond("inside", (days(day), masses(mass)), _DIAMOND)
    return canvas.svg(picture.told, bottom + LINE + 8)


def draw_sand_in_print(picture: PrintPicture) -> str:
    """Draw amounts in print as bars and dots below each other, and the club's own as one line through all.

    Args:
        picture: its facts and words.

    Returns:
        An `svg` element.
    """
    canvas = Canvas()
    scale = Scale(0.0, picture.layers[-1].value, _PRINT_LEFT, _PRINT_RIGHT)
    top = LINE if picture.here_mm is not None else 4.0
    bottom = top + len(picture.rows) * (LINE + _BAR + 6) + 4
    for mark in picture.layers:
        canvas.line("grid", (scale(mark.value), top), (scale(mark.value), bottom))
        canvas.words(mark.words, (scale(mark.value), bottom + LINE), anchor="middle")
    canvas.line("axis", (_PRINT_LEFT, bottom), (_PRINT_RIGHT, bottom))
    if picture.here_mm is not None:
        canvas.line("level", (scale(picture.here_mm), top), (scale(picture.here_mm), bottom))
        canvas.words(picture.here_words, (scale(picture.here_mm), top - 5), anchor="middle")
    for place, row in enumerate(picture.rows):
        _print_row(canvas, row, scale, top + place * (LINE + _BAR + 6))
    return canvas.svg(picture.told, bottom + LINE + 8)


def _print_row(canvas: Canvas, row: PrintRow, scale: Scale, top: float) -> None:
    canvas.words(shortened(row.words, WIDTH), (_PRINT_LEFT, top + LINE - 4))
    upper = top + LINE + 1
    if row.high_mm > row.low_mm:
        canvas.box("range", (scale(row.low_mm), upper), scale(row.high_mm) - scale(row.low_mm), _BAR)
    else:
        canvas.dot("seen", (scale(row.low_mm), upper + _BAR / 2), _DOT)
