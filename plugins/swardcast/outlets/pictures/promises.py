"""The track record as a picture: promised ranges on one line each, and what happened."""

from __future__ import annotations

from typing import Final

from swardcast.notices.promises_picture import PromiseBar, PromisesPicture
from swardcast.outlets.pictures.canvas import HALF_LETTER, LETTER_WIDTH, LINE, WIDTH, Canvas, Scale, shortened

__all__ = ["draw_promises"]

_LEFT: Final = 20.0
_BESIDE: Final = 14.0  # from a bar to its verdict
_TOP: Final = 6.0
_ROW: Final = 44.0
_BAR: Final = 12.0


def draw_promises(picture: PromisesPicture) -> str:
    """Draw promised ranges and what happened.

    Args:
        picture: its facts and words.

    Returns:
        An `svg` element.
    """
    canvas = Canvas()
    verdict = max(len(bar.verdict) for bar in picture.bars) * LETTER_WIDTH  # room for it beside the longest bar
    days = Scale(picture.first_days, picture.last_days, _LEFT, WIDTH - verdict - _BESIDE)
    bottom = _TOP + _ROW * len(picture.bars) + 4
    for mark in picture.marks:
        canvas.line("axis" if mark.days == 0 else "grid", (days(mark.days), _TOP), (days(mark.days), bottom))
    for row, bar in enumerate(picture.bars):
        _bar(canvas, bar, days, _TOP + _ROW * row)
    canvas.line("axis", (days.start, bottom), (days.end, bottom))
    for mark in picture.marks:
        canvas.words(mark.words, (days(mark.days), bottom + LINE), anchor="middle")
    canvas.words(picture.before, (0, bottom + 2 * LINE))
    canvas.words(picture.after, (days.end + _LEFT, bottom + 2 * LINE), anchor="end")
    return canvas.svg(picture.told, bottom + 2 * LINE + 8)


def _bar(canvas: Canvas, bar: PromiseBar, days: Scale, top: float) -> None:
    canvas.words(shortened(bar.title, WIDTH), (0, top + LINE - 4))
    middle = top + LINE + 4 + _BAR / 2
    early, until = days(bar.early_days), days(bar.allow_until_days)
    canvas.box("range", (early, middle - _BAR / 2), until - early, _BAR)
    canvas.line("likely", (days(0), middle - _BAR / 2), (days(0), middle + _BAR / 2))
    came = days(bar.came_days)
    if bar.is_inside:
        canvas.diamond("inside", (came, middle), 8)
    else:
        canvas.cross("outside", (came, middle), 6)
    canvas.words(bar.verdict, (max(until, came) + _BESIDE, middle + HALF_LETTER))
