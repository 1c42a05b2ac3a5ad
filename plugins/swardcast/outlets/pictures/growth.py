"""The week's growth as a picture: bars day by day, beside what past years brought."""

from __future__ import annotations

from typing import Final

from swardcast.notices.growth_picture import GrowthPicture
from swardcast.outlets.pictures.canvas import HALF_LETTER, LINE, Canvas, Scale, stepped

__all__ = ["draw_growth"]

_LEFT: Final = 34.0
_RIGHT: Final = 356.0
_TOP: Final = 28.0
_BOTTOM: Final = 178.0
_GAP: Final = 3.0  # on either side of a bar


def draw_growth(picture: GrowthPicture) -> str:
    """Draw the growth of two weeks.

    Args:
        picture: its facts and words.

    Returns:
        An `svg` element.
    """
    canvas = Canvas()
    first, last = picture.days[0].day, picture.days[-1].day
    days = Scale(float(first.toordinal()), last.toordinal() + 1.0, _LEFT, _RIGHT)
    amounts = Scale(0.0, 1.0, _BOTTOM, _TOP)
    for mark in picture.marks:
        canvas.line("grid", (_LEFT, amounts(mark.value)), (_RIGHT, amounts(mark.value)))
        canvas.words(mark.words, (_LEFT - 5, amounts(mark.value) + HALF_LETTER), anchor="end")
    places = [*(days(one.day) for one in picture.days), _RIGHT]
    high = stepped(places, [amounts(one.usual_high) for one in picture.days])
    low = stepped(places, [amounts(one.usual_low) for one in picture.days])
    canvas.path("band", [*high, *reversed(low)], closed=True)
    _bars(canvas, picture, places, amounts)
    canvas.path("edge", high)
    canvas.path("edge", low)
    canvas.path("line", stepped(places, [amounts(one.usual) for one in picture.days]))
    canvas.line("axis", (_LEFT, _BOTTOM), (_RIGHT, _BOTTOM))
    place = days(picture.as_of.day)
    canvas.line("as-of", (place, _TOP - 6), (place, _BOTTOM))
    canvas.words(picture.as_of.words, (place, _TOP - 11), anchor="middle")
    middle = (places[1] - places[0]) / 2
    for tick in picture.ticks:
        canvas.line("axis", (days(tick.day) + middle, _BOTTOM), (days(tick.day) + middle, _BOTTOM + 5))
        canvas.words(tick.words, (days(tick.day) + middle, _BOTTOM + LINE + 3), anchor="middle")
    return canvas.svg(picture.told, _BOTTOM + LINE + 11)


def _bars(canvas: Canvas, picture: GrowthPicture, places: list[float], amounts: Scale) -> None:
    for one, left, right in zip(picture.days, places[:-1], places[1:], strict=True):
        top = amounts(one.growth)
        look = "work" if one.is_observed else "open" if one.day >= picture.as_of.day else "no-record"
        canvas.box(look, (left + _GAP, top), right - left - 2 * _GAP, _BOTTOM - top)
        if one.high > one.low:
            middle = (left + right) / 2
            canvas.line("whisker", (middle, amounts(one.low)), (middle, amounts(one.high)))
