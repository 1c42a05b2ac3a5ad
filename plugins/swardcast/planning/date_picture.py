"""What each first day of a job costs, ready to be drawn."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.fixtures import fixture_in_words
from swardcast.notices.pictures import FixtureMark, KeyRow, Sign, Table, Tick, Told, day_ticks, numbered
from swardcast.planning.axis_marks import AxisMark, even_marks
from swardcast.planning.blocked_days import is_weekday_off
from swardcast.planning.dates import Dates
from swardcast.planning.start_days import Cost, StartDay
from swardcast.records.fixtures import Fixture

__all__ = ["BestDay", "FirstDay", "FirstDays", "first_days"]

_STEPS: Final = (5, 10, 20, 50, 100, 200, 500)
_OFTEN: Final = 3  # a fixture that comes back more often than that is left out, so that the others are seen: judgement
_MOST_FIXTURES: Final = 12  # that find room beside each other: judgement


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstDay:
    """One first day.

    Args:
        day: the day.
        weighted: expected weighted days.
        low: the low end of their range.
        high: the high end.
    """

    day: date
    weighted: float
    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BestDay:
    """The best day of one of the best times.

    Args:
        number: its number in the table.
        day: the day.
        weighted: expected weighted days.
    """

    number: str
    day: date
    weighted: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstDays:
    """First days along a season.

    Args:
        told: the picture in words.
        first: the first day asked about.
        last: the last one.
        runs: first days with nothing but weekdays off between them.
        blocked: the first and last of days beside each other on which the work cannot begin.
        best: the best days.
        fixtures: competitions and visitors' days that do not come back often.
        ticks: days that are named along the bottom.
        marks: weighted days that are named up the side, from 0 to beyond the highest.
        weighted_words: what the side counts.
    """

    told: Told
    first: date
    last: date
    runs: tuple[tuple[FirstDay, ...], ...]
    blocked: tuple[tuple[date, date], ...]
    best: tuple[BestDay, ...]
    fixtures: tuple[FixtureMark, ...]
    ticks: tuple[Tick, ...]
    marks: tuple[AxisMark, ...]
    weighted_words: str


def first_days(dates: Dates, fixtures: Sequence[Fixture], voice: Voice) -> FirstDays | None:
    """Lay out what each first day costs.

    Args:
        dates: what was found.
        fixtures: the club's fixtures.
        voice: the language and the day of the reader.

    Returns:
        The picture, or None where no day has a cost.
    """
    runs = tuple(_runs(dates.days))
    if not runs:
        return None
    shown = _seldom(fixtures, dates)
    highest = max(day.high for run in runs for day in run)
    best = tuple(
        BestDay(number=voice.number(number), day=time.window.best.day, weighted=time.window.best.cost.weighted_days)
        for number, time in enumerate(dates.best, start=1)
        if time.window.best.cost is not None
    )
    return FirstDays(
        told=_told(dates, runs, best, shown, voice),
        first=dates.asked.first,
        last=dates.asked.last,
        runs=runs,
        blocked=tuple(_blocked(dates.days)),
        best=best,
        fixtures=numbered(shown[0]),
        ticks=day_ticks(dates.asked.first, dates.asked.last, voice),
        marks=tuple(AxisMark(value=value, words=voice.number(value)) for value in even_marks(highest, _STEPS)),
        weighted_words=voice.say("startdays-picture-weighted"),
    )


def _runs(days: Sequence[StartDay]) -> Iterator[tuple[FirstDay, ...]]:
    run: list[FirstDay] = []
    for day in days:
        if day.cost is not None:
            run.append(_point(day.day, day.cost))
        elif not is_weekday_off(day.blocked) and run:
            yield tuple(run)
            run = []
    if run:
        yield tuple(run)


def _point(day: date, cost: Cost) -> FirstDay:
    return FirstDay(day=day, weighted=cost.weighted_days, low=cost.low, high=cost.high)


def _blocked(days: Sequence[StartDay]) -> Iterator[tuple[date, date]]:
    first: date | None = None
    last = days[0].day
    for day in days:
        if is_weekday_off(day.blocked):
            continue
        if day.blocked:
            first, last = first or day.day, day.day
        elif first is not None:
            yield first, last
            first = None
    if first is not None:
        yield first, last


def _seldom(fixtures: Sequence[Fixture], dates: Dates) -> tuple[tuple[Fixture, ...], bool]:
    """Fixtures of the days asked about that do not come back often, and whether others are left out."""
    near = [one for one in fixtures if dates.asked.first <= one.last_day and one.first_day <= dates.asked.last]
    often = Counter(one.series for one in near)
    seldom = [one for one in near if often[one.series] <= _OFTEN][:_MOST_FIXTURES]
    return tuple(seldom), len(seldom) < len(near)


def _told(
    dates: Dates,
    runs: Sequence[Sequence[FirstDay]],
    best: Sequence[BestDay],
    fixtures: tuple[tuple[Fixture, ...], bool],
    voice: Voice,
) -> Told:
    points = [day for run in runs for day in run]
    least = min(points, key=lambda day: day.weighted)
    summary = voice.say(
        "startdays-picture-summary",
        low=voice.number(least.weighted),
        high=voice.number(max(day.weighted for day in points)),
        best=voice.day(least.day),
    )
    shown, are_left_out = fixtures
    caption = [summary, voice.say("startdays-picture-reads"), voice.say("startdays-picture-gaps")]
    if are_left_out:
        caption.append(voice.say("startdays-picture-often"))
    key = [
        KeyRow(sign=Sign.BEST_DAY, number=one.number, words=voice.say("startdays-picture-best", day=voice.day(one.day)))
        for one in best
    ]
    if any(_blocked(dates.days)):
        key.append(KeyRow(sign=Sign.NO_WORK, words=voice.say("startdays-picture-blocked")))
    key += [
        KeyRow(sign=Sign.FIXTURE, number=mark.number, words=fixture_in_words(fixture, voice))
        for mark, fixture in zip(numbered(shown), shown, strict=True)
    ]
    table = Table(
        caption=voice.say("startdays-picture-table"),
        columns=(
            voice.say("startdays-column-day"),
            voice.say("startdays-column-weighted"),
            voice.say("startdays-column-low"),
            voice.say("startdays-column-high"),
        ),
        rows=tuple(
            (voice.day(day.day), *(voice.number(value) for value in (day.weighted, day.low, day.high)))
            for day in points
        ),
    )
    return Told(
        name="first-days",
        title=voice.say("startdays-picture-title"),
        description=summary,
        caption=(voice.sentences(caption),),
        key=tuple(key),
        tables=(table,),
    )
