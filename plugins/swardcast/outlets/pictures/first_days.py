"""What each first day of a job costs, along a season."""

from __future__ import annotations

from typing import Final

from swardcast.outlets.pictures.axes import draw_marks
from swardcast.outlets.pictures.canvas import LETTER_WIDTH, LETTERS, LINE, WIDTH, Canvas, Scale, lanes
from swardcast.planning.date_picture import BestDay, FirstDay, FirstDays

__all__ = ["draw_first_days"]

_LEFT: Final = 40.0
_RIGHT: Final = WIDTH - 8.0
_TOP: Final = 30.0
_BOTTOM: Final = 250.0
_BLOCKED: Final = 7.0  # height of the bars of days out, which stand on the axis
_LANE: Final = 21.0
_APART: Final = 32.0
_BEST: Final = 6.0


def draw_first_days(picture: FirstDays) -> str:
    """Draw what first days cost.

    Args:
        picture: its facts and words.

    Returns:
        An `svg` element: a line of the expected cost in a shade of its range, broken where the work cannot begin; bars
        on the axis for those days; the best days as numbered diamonds; below the axis fixtures as numbered triangles.
    """
    canvas = Canvas()
    days = Scale.of_days(picture.first, picture.last, _LEFT, _RIGHT)
    costs = Scale(0.0, picture.marks[-1].value, _BOTTOM, _TOP)
    draw_marks(canvas, picture.marks, costs, (_LEFT, _RIGHT))
    canvas.words(picture.weighted_words, (0, LETTERS - 2))
    for fixture in picture.fixtures:
        canvas.line("guide", (days.within(fixture.first_day), _TOP), (days.within(fixture.first_day), _BOTTOM))
    for run in picture.runs:
        _run(canvas, run, days, costs)
    for first, last in picture.blocked:
        left, right = days(first.toordinal() - 0.5), days(last.toordinal() + 0.5)
        left, right = max(left, _LEFT), min(right, _RIGHT)
        canvas.box("range", (left, _BOTTOM - _BLOCKED), max(2.0, right - left), _BLOCKED)
    for tick in picture.ticks:
        canvas.line("axis", (days(tick.day), _BOTTOM), (days(tick.day), _BOTTOM + 5))
        if days(tick.day) + len(tick.words) * LETTER_WIDTH / 2 <= WIDTH:
            canvas.words(tick.words, (days(tick.day), _BOTTOM + LINE), anchor="middle")
    for best in picture.best:
        _best(canvas, best, days, costs)
    top = _BOTTOM + LINE + 8
    chosen = lanes((days.within(one.first_day) for one in picture.fixtures), _APART)
    for one, lane in zip(picture.fixtures, chosen, strict=True):
        canvas.fixture(one.number, (days.within(one.first_day), top + _LANE * lane), days.within(one.last_day))
    return canvas.svg(picture.told, top + _LANE * (max(chosen, default=-1) + 1) + 4)


def _run(canvas: Canvas, run: tuple[FirstDay, ...], days: Scale, costs: Scale) -> None:
    if len(run) == 1:
        (one,) = run
        canvas.line("whisker", (days(one.day), costs(one.low)), (days(one.day), costs(one.high)))
        canvas.dot("seen", (days(one.day), costs(one.weighted)), 3)
        return
    low = [(days(one.day), costs(one.low)) for one in run]
    high = [(days(one.day), costs(one.high)) for one in run]
    canvas.path("band", [*high, *reversed(low)], closed=True)
    canvas.path("edge", high)
    canvas.path("edge", low)
    canvas.path("line", [(days(one.day), costs(one.weighted)) for one in run])


def _best(canvas: Canvas, best: BestDay, days: Scale, costs: Scale) -> None:
    place = days(best.day), costs(best.weighted)
    canvas.diamond("inside", place, _BEST)
    canvas.words(best.number, (place[0], place[1] + _BEST + LETTERS - 3), anchor="middle")
