"""Readings of the course over time as a picture: dots, the line of their daily means, the club's own target."""

from __future__ import annotations

from typing import Final

from swardcast.outlets.pictures.canvas import HALF_LETTER, LETTER_WIDTH, LINE, WIDTH, Canvas, Scale
from swardcast.planning.report_readings_picture import ReadingsPicture

__all__ = ["draw_readings"]

_RIGHT: Final = 350.0
_TOP: Final = 12.0
_BOTTOM: Final = 172.0
_DOT: Final = 4.0


def draw_readings(picture: ReadingsPicture) -> str:
    """Draw readings over time.

    Args:
        picture: its facts and words.

    Returns:
        An `svg` element.
    """
    canvas = Canvas()
    left = max(len(mark.words) for mark in picture.marks) * LETTER_WIDTH + 12
    days = Scale.of_days(picture.first, picture.last, left + _DOT, _RIGHT)
    low, high = picture.marks[0].value, picture.marks[-1].value
    values = Scale(low, high, _BOTTOM, _TOP)
    _aim(canvas, picture, values, left)
    for mark in picture.marks:
        place = values(mark.value)
        canvas.line("axis" if mark.value == low else "grid", (left, place), (_RIGHT, place))
        canvas.words(mark.words, (left - 6, place + HALF_LETTER), anchor="end")
    _ticks(canvas, picture, days)
    if picture.period_from is not None:
        canvas.line("as-of", (days(picture.period_from), _TOP - 6), (days(picture.period_from), _BOTTOM))
    canvas.path("whisker", [(days(one.on), values(one.value)) for one in picture.means])
    for dot in picture.dots:
        canvas.dot("seen", (days(dot.on), values(dot.value)), _DOT)
    return canvas.svg(picture.told, _BOTTOM + LINE + 8)


def _ticks(canvas: Canvas, picture: ReadingsPicture, days: Scale) -> None:
    """Days by name, without those that would lie on the one before, or run over the edge."""
    free = 0.0
    for tick in picture.ticks:
        place, half = days(tick.day), len(tick.words) * LETTER_WIDTH / 2
        canvas.line("axis", (place, _BOTTOM), (place, _BOTTOM + 5))
        if place - half >= free and place + half <= WIDTH:
            canvas.words(tick.words, (place, _BOTTOM + LINE), anchor="middle")
            free = place + half


def _aim(canvas: Canvas, picture: ReadingsPicture, values: Scale, left: float) -> None:
    """The target: an area between its ends, or a line where it has but one."""
    if picture.least is not None and picture.most is not None:
        top = values(picture.most)
        canvas.box("band", (left, top), _RIGHT - left, values(picture.least) - top)
        return
    for end in (picture.least, picture.most):
        if end is not None:
            canvas.line("level", (left, values(end)), (_RIGHT, values(end)))
