"""The curve of healing as a picture: share of the surface still disturbed, from the first day of work on."""

from __future__ import annotations

import math
from typing import Final

from swardcast.notices.healing_picture import HealingPicture
from swardcast.outlets.pictures.canvas import HALF_LETTER, LETTER_WIDTH, LINE, Canvas, Scale, lanes

__all__ = ["draw_healing"]

_LEAST_LEFT: Final = 46.0
_RIGHT: Final = 354.0
_TOP: Final = 28.0
_BOTTOM: Final = 228.0
_BELOW: Final = 250.0  # where the lanes below the axis begin
_LANE: Final = 21.0
_APART: Final = 32.0  # of two numbers of fixtures in one lane


def draw_healing(picture: HealingPicture) -> str:
    """Draw the curve.

    Args:
        picture: its facts and words.

    Returns:
        An `svg` element. The axis of shares is one of square roots, so that the end of healing can be seen.
    """
    canvas = Canvas()
    left = max(_LEAST_LEFT, max(len(mark.words) for mark in picture.marks) * LETTER_WIDTH + 8)
    days = Scale.of_days(picture.first, picture.last, left, _RIGHT)
    roots = Scale(0.0, math.sqrt(picture.top), _BOTTOM, _TOP)
    fixtures = lanes((days.within(one.first_day) for one in picture.fixtures), _APART)
    _axes(canvas, picture, days, roots)
    for mark in picture.fixtures:
        canvas.line("guide", (days.within(mark.first_day), _TOP), (days.within(mark.first_day), _BOTTOM))
    _curve(canvas, picture, days, roots)
    _levels(canvas, picture, days, roots)
    if picture.as_of is not None:
        place = days(picture.as_of.day)
        canvas.line("as-of", (place, _TOP - 6), (place, _BOTTOM))
        canvas.words(picture.as_of.words, (place, _TOP - 11), anchor="middle")
    for one in picture.seen:
        middle = days(one.day), roots(math.sqrt(min(one.share, picture.top)))
        canvas.dot("seen" if one.is_of_the_last else "seen-elsewhere", middle, 5 if one.is_of_the_last else 4.5)
    _fixtures(canvas, picture, days, fixtures)
    bottom = _BELOW + _LANE * (max(fixtures, default=-1) + 1)
    return canvas.svg(picture.told, _normal(canvas, picture, days, bottom))


def _axes(canvas: Canvas, picture: HealingPicture, days: Scale, roots: Scale) -> None:
    free = _BOTTOM + LINE
    levels = {level.share for level in picture.levels}
    taken: list[float] = []
    for mark in sorted(picture.marks, key=lambda one: (one.share not in levels, one.share)):
        place = roots(math.sqrt(mark.share))
        if mark.share not in levels:
            canvas.line("grid", (days.start, place), (days.end, place))
        if all(abs(place - other) >= LINE - 6 for other in taken):
            taken.append(place)
            canvas.words(mark.words, (days.start - 5, place + HALF_LETTER), anchor="end")
    canvas.line("axis", (days.start, _BOTTOM), (days.end, _BOTTOM))
    for tick in picture.ticks:
        place = days(tick.day)
        canvas.line("axis", (place, _BOTTOM), (place, _BOTTOM + 5))
        if place + len(tick.words) * LETTER_WIDTH / 2 <= _RIGHT + 6:
            canvas.words(tick.words, (place, free), anchor="middle")
    canvas.box(
        "work", (days(picture.first), _BOTTOM - 7), days.within(picture.work_until.toordinal() + 1.0) - days.start, 7
    )


def _curve(canvas: Canvas, picture: HealingPicture, days: Scale, roots: Scale) -> None:
    places = [days(one.day) for one in picture.curve]
    low, likely, high = (
        [(place, roots(math.sqrt(share))) for place, share in zip(places, shares, strict=True)]
        for shares in zip(*((one.low, one.likely, one.high) for one in picture.curve), strict=True)
    )
    if len(places) == 1:
        return
    canvas.path("band", [*high, *reversed(low)], closed=True)
    canvas.path("edge", high)
    canvas.path("edge", low)
    canvas.path("line", likely)


def _levels(canvas: Canvas, picture: HealingPicture, days: Scale, roots: Scale) -> None:
    for level in picture.levels:
        place = roots(math.sqrt(level.share))
        canvas.line("level", (days.start, place), (days.end, place))
        canvas.words(level.on_axis, (days.end, place - 4), anchor="end")


def _fixtures(canvas: Canvas, picture: HealingPicture, days: Scale, chosen: list[int]) -> None:
    for mark, lane in zip(picture.fixtures, chosen, strict=True):
        first, last = days.within(mark.first_day), days.within(mark.last_day)
        canvas.fixture(mark.number, (first, _BELOW + 6 + _LANE * lane), last)


def _normal(canvas: Canvas, picture: HealingPicture, days: Scale, top: float) -> float:
    """The bar of back to normal, with its words before it; gives the height of the whole picture."""
    likely, until = picture.normal.likely, picture.normal.allow_until
    if likely is None or until is None:
        return top + 6
    early, last, middle = days.within(picture.normal.early or likely), days.within(until), top + 14
    if last > early:
        canvas.box("range", (early, middle - 5), last - early, 10)
    canvas.diamond("inside", (days.within(likely), middle), 8)
    wide = len(picture.normal_words) * LETTER_WIDTH
    if early - 12 - wide >= 0:
        canvas.words(picture.normal_words, (early - 12, middle + HALF_LETTER), anchor="end")
        return middle + 14
    canvas.words(picture.normal_words, (early, middle + HALF_LETTER + LINE))
    return middle + HALF_LETTER + LINE + 6
