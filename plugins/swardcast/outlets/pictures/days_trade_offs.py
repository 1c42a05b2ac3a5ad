"""Trade-offs between first days for several jobs: days disturbed along the bottom, weighted days up the side."""

from __future__ import annotations

from typing import Final

from swardcast.outlets.pictures.axes import draw_marks
from swardcast.outlets.pictures.canvas import LETTER_WIDTH, LETTERS, LINE, WIDTH, Canvas, Scale
from swardcast.planning.together_picture import DaysTradeOffs

__all__ = ["draw_days_trade_offs"]

_LEFT: Final = 56.0
_RIGHT: Final = WIDTH - 26.0
_TOP: Final = 38.0
_HIGH: Final = 200.0
_DOT: Final = 4.5
_BEST: Final = 7.0
_BESIDE: Final = 6.0  # from the middle of a point to its number, which stands to the right of it and above


def draw_days_trade_offs(picture: DaysTradeOffs) -> str:
    """Draw trade-offs as numbered points.

    Args:
        picture: its facts and words.

    Returns:
        An `svg` element. A number that would lie on the one before is left out: the table has all.
    """
    canvas, bottom = Canvas(), _TOP + _HIGH
    plain = Scale(picture.plain_marks[0].value, picture.plain_marks[-1].value, _LEFT, _RIGHT)
    weighted = Scale(picture.weighted_marks[0].value, picture.weighted_marks[-1].value, bottom, _TOP)
    draw_marks(canvas, picture.weighted_marks, weighted, (_LEFT, _RIGHT), axis=picture.weighted_marks[0].value)
    for mark in picture.plain_marks:
        x = plain(mark.value)
        canvas.line("axis", (x, bottom), (x, bottom + 4))
        canvas.words(mark.words, (x, bottom + LINE), anchor="middle")
    canvas.words(picture.weighted_words, (0, LETTERS - 2))
    canvas.words(picture.plain_words, (_RIGHT, bottom + 2 * LINE), anchor="end")
    best, *others = places = [(plain(point.plain_days), weighted(point.weighted_days)) for point in picture.points]
    canvas.diamond("inside", best, _BEST)
    for place in others:
        canvas.dot("seen", place, _DOT)
    before = (WIDTH * 2, 0.0)
    for point, (x, y) in zip(picture.points, places, strict=True):
        if before[0] - x >= len(point.number) * LETTER_WIDTH or abs(y - before[1]) >= LETTERS:
            canvas.words(point.number, (x + _BESIDE, y - _BESIDE))
            before = (x, y)
    return canvas.svg(picture.told, bottom + 2 * LINE + 8)
