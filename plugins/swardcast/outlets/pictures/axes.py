"""Axes of pictures for the committee: values up the side, days by name along the bottom."""

from __future__ import annotations

from collections.abc import Iterable

from swardcast.notices.pictures import Tick
from swardcast.outlets.pictures.canvas import HALF_LETTER, LETTER_WIDTH, LINE, WIDTH, Canvas, Scale
from swardcast.planning.axis_marks import AxisMark

__all__ = ["draw_marks", "draw_ticks"]


def draw_marks(
    canvas: Canvas, marks: Iterable[AxisMark], values: Scale, ends: tuple[float, float], *, axis: float = 0.0
) -> None:
    """Draw a line across the picture for each value up the side, and what stands to the left of it.

    Args:
        canvas: the picture.
        marks: the values.
        values: their places.
        ends: where the lines begin and end, the left end first.
        axis: the value at which the axis lies.
    """
    left, right = ends
    for mark in marks:
        place = values(mark.value)
        canvas.line("axis" if mark.value == axis else "grid", (left, place), (right, place))
        canvas.words(mark.words, (left - 6, place + HALF_LETTER), anchor="end")


def draw_ticks(canvas: Canvas, ticks: Iterable[Tick], days: Scale, bottom: float) -> None:
    """Draw days, without the names of those that would lie on the one before, or run over the edge.

    Args:
        canvas: the picture.
        ticks: the days, the first first.
        days: their places.
        bottom: how far below the top of the picture the axis is.
    """
    free = 0.0
    for tick in ticks:
        place, half = days(tick.day), len(tick.words) * LETTER_WIDTH / 2
        canvas.line("axis", (place, bottom), (place, bottom + 5))
        if place - half >= free and place + half <= WIDTH:
            canvas.words(tick.words, (place, bottom + LINE), anchor="middle")
            free = place + half
