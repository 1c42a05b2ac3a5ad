"""A season as a picture: work and healing of each job in a row."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Final

from swardcast.notices.season_bars import SeasonBars, SeasonRow
from swardcast.outlets.pictures.canvas import LETTER_WIDTH, LINE, WIDTH, Canvas, Scale, broken, lanes

__all__ = ["draw_season"]

_LEFT: Final = 6.0
_RIGHT: Final = 354.0
_BELOW_NAME: Final = 22.0  # the bar, and the space to the next row
_BAR: Final = 12.0
_LANE: Final = 21.0
_APART: Final = 32.0
_AS_OF: Final = 25.0  # room for the words of the day above the rows
_DAY: Final = timedelta(days=1)


def draw_season(bars: SeasonBars) -> str:
    """Draw the work and healing of a season.

    Args:
        bars: its facts and words.

    Returns:
        An `svg` element: for each job its name, a full bar for the days of work, a shaded one until the likely day, an
        open one until the day to allow for, or all along where only months are told, with the head of an arrow where it
        goes on past the edge; a line where it is not finished and nobody is at work; below the axis competitions and
        visitors' days as numbered triangles.
    """
    canvas = Canvas()
    days = Scale.of_days(bars.first, bars.last, _LEFT, _RIGHT)
    top = _AS_OF if bars.as_of is not None else 4.0
    names = [_name(row) for row in bars.rows]
    bottom = top + sum(LINE * len(lines) + _BELOW_NAME for lines in names) + 4
    for tick in bars.ticks:
        canvas.line("grid", (days(tick.day), top), (days(tick.day), bottom))
    for fixture in bars.fixtures:
        canvas.line("guide", (days.within(fixture.first_day), top), (days.within(fixture.first_day), bottom))
    if bars.as_of is not None:
        place = days(bars.as_of.day)
        canvas.line("as-of", (place, top - 4), (place, bottom))
        canvas.words(bars.as_of.words, (place, top - 8), anchor="middle")
    upper = top
    for row, lines in zip(bars.rows, names, strict=True):
        _row(canvas, row, lines, days, upper)
        upper += LINE * len(lines) + _BELOW_NAME
    canvas.line("axis", (_LEFT, bottom), (_RIGHT, bottom))
    free = 0.0
    for tick in bars.ticks:
        half = len(tick.words) * LETTER_WIDTH / 2
        canvas.line("axis", (days(tick.day), bottom), (days(tick.day), bottom + 5))
        if days(tick.day) - half >= free - half and days(tick.day) + half <= WIDTH + half / 2:
            canvas.words(tick.words, (days(tick.day), bottom + LINE), anchor="middle")
            free = days(tick.day) + 2 * half
    return canvas.svg(bars.told, _fixtures(canvas, bars, days, bottom + LINE))


def _name(row: SeasonRow) -> tuple[str, ...]:
    room = WIDTH - (len(row.words) + 2) * LETTER_WIDTH if row.words else WIDTH
    return broken(row.name, room, WIDTH)


def _row(canvas: Canvas, row: SeasonRow, lines: tuple[str, ...], days: Scale, top: float) -> None:
    for number, line in enumerate(lines):
        canvas.words(line, (0, top + LINE * (number + 1) - 4))
    if row.words:
        canvas.words(row.words, (WIDTH, top + LINE - 4), anchor="end")
    upper = top + LINE * len(lines) + 3
    if row.heals_from is not None:
        _healing(canvas, row, days.within(row.heals_from), days, upper)
    for first, last in row.waits:
        middle = upper + _BAR / 2
        canvas.line("whisker", (days.within(first), middle), (days.within(last + _DAY), middle))
    for first, last in row.work:
        start = days.within(first)
        canvas.box("work", (start, upper), max(2.5, days.within(last + _DAY) - start), _BAR)


def _healing(canvas: Canvas, row: SeasonRow, start: float, days: Scale, upper: float) -> None:
    """Where some surfaces heal while others are worked on, the bars of the work lie on it."""
    for look, until in (("range", row.likely), ("open", row.in_months_until or row.allow_until)):
        if until is not None and start < days.end:
            _bar(canvas, look, start, until, days, upper)
            start = max(start, days.within(until))


def _bar(canvas: Canvas, look: str, start: float, until: date, days: Scale, upper: float) -> None:
    """A bar, with the head of an arrow at the edge where it goes on after the picture."""
    lower, end = upper + _BAR, days.within(until)
    if days(until) <= days.end:
        if end > start:
            canvas.box(look, (start, upper), end - start, _BAR)
        return
    neck = max(start, end - _BAR / 2)
    arrow = ((start, upper), (neck, upper), (end, (upper + lower) / 2), (neck, lower), (start, lower))
    canvas.path(look, arrow, closed=True)


def _fixtures(canvas: Canvas, bars: SeasonBars, days: Scale, top: float) -> float:
    """Numbered triangles below the axis; gives the height of the whole picture."""
    chosen = lanes((days.within(one.first_day) for one in bars.fixtures), _APART)
    for mark, lane in zip(bars.fixtures, chosen, strict=True):
        first, last = days.within(mark.first_day), days.within(mark.last_day)
        canvas.fixture(mark.number, (first, top + 10 + _LANE * lane), last)
    return top + 12 + _LANE * (max(chosen, default=-1) + 1)
