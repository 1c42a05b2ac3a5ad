"""Readings of the course over time as a picture: dots, the line of their daily means, the club's own target."""

from __future__ import annotations

from typing import Final

from swardcast.outlets.pictures.axes import draw_marks, draw_ticks
from swardcast.outlets.pictures.canvas import LETTER_WIDTH, LINE, Canvas, Scale
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
    draw_marks(canvas, picture.marks, values, (left, _RIGHT), axis=low)
    draw_ticks(canvas, picture.ticks, days, _BOTTOM)
    if picture.period_from is not None:
        canvas.line("as-of", (days(picture.period_from), _TOP - 6), (days(picture.period_from), _BOTTOM))
    canvas.path("whisker", [(days(one.on), values(one.value)) for one in picture.means])
    for dot in picture.dots:
        canvas.dot("seen", (days(dot.on), values(dot.value)), _DOT)
    return canvas.svg(picture.told, _BOTTOM + LINE + 8)


def _aim(canvas: Canvas, picture: ReadingsPicture, values: Scale, left: float) -> None:
    """The target: an area between its ends, or a line where it has but one."""
    if picture.least is not None and picture.most is not None:
        top = values(picture.most)
        canvas.box("band", (left, top), _RIGHT - left, values(picture.least) - top)
        return
    for end in (picture.least, picture.most):
        if end is not None:
            canvas.line("level", (left, values(end)), (_RIGHT, values(end)))
