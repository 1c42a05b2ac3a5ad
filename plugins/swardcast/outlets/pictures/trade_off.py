"""Choices of work as points: how much of the surface is worked, and for how long it disturbs."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from swardcast.outlets.pictures.axes import draw_marks
from swardcast.outlets.pictures.canvas import LETTER_WIDTH, LETTERS, LINE, WIDTH, Canvas, Scale
from swardcast.planning.trade_off import TradeOff, TradeOffPoint

__all__ = ["draw_trade_off"]

Box = tuple[float, float, float, float]

_LEFT: Final = 34.0
_RIGHT: Final = WIDTH - 14.0
_TOP: Final = 30.0
_HIGH: Final = 250.0
_INSIDE: Final = 16.0  # from the side to where nothing is worked, so that numbers stand free of the axis
_DOT: Final = 4.5
_PLANNED: Final = 7.0
_BESIDE: Final = 8.0  # from the middle of a point to its number


def draw_trade_off(picture: TradeOff) -> str:
    """Draw choices as numbered points, each with a line up to the day to allow until, and join what is to be traded.

    Args:
        picture: its facts and words.

    Returns:
        An `svg` element. A number that would lie on another mark is left out: the tables have all.
    """
    canvas = Canvas()
    bottom = _TOP + _HIGH
    shares = Scale(0.0, picture.shares[-1].value, _LEFT + _INSIDE, _RIGHT)
    days = Scale(0.0, picture.days[-1].value, bottom, _TOP)
    draw_marks(canvas, picture.days, days, (_LEFT, _RIGHT))
    for mark in picture.shares:
        canvas.line("axis", (shares(mark.value), bottom), (shares(mark.value), bottom + 4))
        canvas.words(mark.words, (shares(mark.value), bottom + LINE), anchor="middle")
    canvas.words(picture.days_words, (0, LETTERS - 2))
    canvas.words(picture.share_words, (_RIGHT, bottom + 2 * LINE), anchor="end")
    places = [(shares(point.share), days(point.likely_days)) for point in picture.points]
    if len(front := picture.front) > 1:
        canvas.path("level", [(shares(point.share), days(point.likely_days)) for point in front])
    for point, (x, y) in zip(picture.points, places, strict=True):
        canvas.line("whisker", (x, y), (x, days(point.until_days)))
    for point, place in zip(picture.points, places, strict=True):
        if point.is_planned:
            canvas.diamond("inside", place, _PLANNED)
        else:
            canvas.dot("seen", place, _DOT)
    lines = [(x, days(point.until_days), x, y) for point, (x, y) in zip(picture.points, places, strict=True)]
    _numbers(canvas, picture.points, places, lines)
    return canvas.svg(picture.told, bottom + 2 * LINE + 8)


def _numbers(
    canvas: Canvas, points: Sequence[TradeOffPoint], places: Sequence[tuple[float, float]], lines: Sequence[Box]
) -> None:
    taken: list[Box] = [(x - _DOT, y - _DOT, x + _DOT, y + _DOT) for x, y in places]
    taken += lines
    for place in sorted(range(len(points)), key=lambda place: not points[place].is_planned):
        number, own = points[place].number, taken[place]
        others = [box for box in taken if box is not own]
        for box in _boxes_beside(places[place], len(number) * LETTER_WIDTH):
            if box[0] >= _LEFT and box[2] <= WIDTH and not any(_meet(box, other) for other in others):
                canvas.words(number, (box[0], box[3] - 1))
                taken.append(box)
                break


def _boxes_beside(middle: tuple[float, float], wide: float) -> Iterable[Box]:
    """Right, left, below and above a point."""
    x, y = middle
    half = LETTERS / 2 - 2
    yield x + _BESIDE, y - half, x + _BESIDE + wide, y + half
    yield x - _BESIDE - wide, y - half, x - _BESIDE, y + half
    yield x - wide / 2, y + _BESIDE - 2, x + wide / 2, y + _BESIDE - 2 + 2 * half
    yield x + 3, y - _BESIDE - 2 * half, x + 3 + wide, y - _BESIDE
    yield x - 3 - wide, y - _BESIDE - 2 * half, x - 3, y - _BESIDE


def _meet(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
