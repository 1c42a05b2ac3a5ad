"""When to do a job, as tables of words."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterator, Sequence
from datetime import date, timedelta
from itertools import groupby
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.pictures import Table
from swardcast.outlook.states import Milestone
from swardcast.planning.blocked_days import is_weekday_off
from swardcast.planning.compare import count_touched
from swardcast.planning.date_fixtures import touched_table
from swardcast.planning.date_words import blocked_in_words, end_cell, reasons_in_words, weighted_cell
from swardcast.planning.dates import Dates
from swardcast.planning.start_days import StartDay
from swardcast.planning.weather_chances import WeatherChances
from swardcast.planning.words import touched_in_words
from swardcast.records.planning import Planning

__all__ = ["END_COLUMNS", "date_reasons", "date_tables", "date_title", "has_frost"]

END_COLUMNS: Final = {
    Milestone.SETTLED: "planning-column-settled",
    Milestone.HOLES_CLOSED: "planning-column-closed",
    Milestone.BACK_TO_NORMAL: "planning-column-normal",
}
"""The phrase that heads the column of ends."""
_MOST_RUNS: Final = 12  # runs of days that a cell names, before it counts the days: judgement


def date_title(dates: Dates, voice: Voice) -> str:
    """Say what it is about.

    Args:
        dates: what was found.
        voice: the language.

    Returns:
        A title.
    """
    return voice.say("startdays-title", job=dates.asked.name)


def date_tables(dates: Dates, planning: Planning, voice: Voice) -> tuple[Table, ...]:
    """Lay out in words when to do a job: the best times and their fixtures, every week's best day, the days out.

    Args:
        dates: what was found.
        planning: what the club keeps to itself.
        voice: the language and the day of the reader.

    Returns:
        Tables; those of the best times, of the fixtures that these touch and of the days out only where there are any.
    """
    tables = []
    if dates.best:
        tables.append(_best(dates, voice))
        by_number = {voice.number(number): time.window.best for number, time in enumerate(dates.best, start=1)}
        if (fixtures := touched_table(by_number, voice)) is not None:
            tables.append(fixtures)
    tables.append(_weeks(dates, voice))
    out = _blocked(dates, planning, voice)
    return (*tables, out) if out.rows else tuple(tables)


def date_reasons(dates: Dates, planning: Planning, voice: Voice) -> tuple[tuple[str, str], ...]:
    """Say of each of the best times what speaks for it.

    Args:
        dates: what was found.
        planning: what the club keeps to itself.
        voice: the language and the day of the reader.

    Returns:
        Numbers as in the table of the best times, with a paragraph each.
    """
    return tuple(
        (voice.number(number), reasons_in_words(time, dates, planning, voice))
        for number, time in enumerate(dates.best, start=1)
    )


def _best(dates: Dates, voice: Voice) -> Table:
    names = (
        voice.say("planning-column-number"),
        voice.say("startdays-column-window"),
        voice.say("startdays-column-best"),
    )
    rows = []
    for number, time in enumerate(dates.best, start=1):
        first, last = time.window.days[0].day, time.window.days[-1].day
        said = (voice.number(number), _run(first, last, voice), voice.day(time.window.best.day))
        rows.append((*said, *_cells(time.window.best, dates, voice)))
    columns = (*names, *_columns(dates, voice))
    return Table(caption=voice.say("startdays-table-best"), columns=columns, rows=tuple(rows))


def _weeks(dates: Dates, voice: Voice) -> Table:
    """A row for each week; one for several on end in which no work can begin."""
    rows = []
    columns = _columns(dates, voice)
    weeks = [list(week) for _, week in groupby(dates.days, key=lambda one: one.day - timedelta(days=one.day.weekday()))]
    for has_best, run in groupby(weeks, key=lambda week: _cheapest(week) is not None):
        found = list(run)
        if not has_best:
            begins = _run(found[0][0].day, found[-1][-1].day, voice)
            rows.append((begins, voice.say("startdays-none"), *("" for _ in columns)))
            continue
        for week in found:
            best = _cheapest(week)
            if best is not None:
                rows.append((voice.short_day(week[0].day), voice.day(best.day), *_cells(best, dates, voice)))
    names = (voice.say("startdays-column-week"), voice.say("startdays-column-best"))
    return Table(caption=voice.say("startdays-table-weeks"), columns=(*names, *columns), rows=tuple(rows))


def _cheapest(days: Sequence[StartDay]) -> StartDay | None:
    """The one that costs least, the earliest of several; the first possible one where no cost is known."""
    possible = [day for day in days if day.is_possible]
    return min(possible, key=lambda day: day.cost.weighted_days if day.cost is not None else 0.0, default=None)


def _columns(dates: Dates, voice: Voice) -> tuple[str, ...]:
    named = [
        voice.say("startdays-column-weighted"),
        voice.say("startdays-column-days"),
        voice.say(END_COLUMNS[dates.asked.until]),
        voice.say("planning-column-touched"),
    ]
    if dates.chances:
        named.append(voice.say("startdays-column-dry"))
        if has_frost(dates):
            named.append(voice.say("startdays-column-frost"))
        named.append(voice.say("startdays-column-spare"))
    return tuple(named)


def _cells(day: StartDay, dates: Dates, voice: Voice) -> Iterator[str]:
    yield weighted_cell(day.cost, voice)
    yield voice.say("planning-not-known") if day.cost is None else voice.number(day.cost.days)
    yield end_cell(day.ends, voice)
    yield touched_in_words(count_touched(day.meets), voice)
    if not dates.chances:
        return
    chances = dates.chances.get(day.day)
    yield _years(chances.dry if chances is not None else None, chances, voice)
    if has_frost(dates):
        yield _years(chances.frost if chances is not None else None, chances, voice)
    spare = chances.often_enough if chances is not None else None
    yield voice.say("planning-not-known") if spare is None else voice.number(spare)


def has_frost(dates: Dates) -> bool:
    """Tell whether frost is worth a column: in summer it would hold naught alone.

    Args:
        dates: what was found.

    Returns:
        Whether the morning of any possible first day was frosty in a past year.
    """
    return any(chances.frost for chances in dates.chances.values())


def _years(count: int | None, chances: WeatherChances | None, voice: Voice) -> str:
    if count is None or chances is None or not chances.years:
        return voice.say("planning-not-known")
    return voice.say("startdays-years-of", count=voice.number(count), years=voice.number(chances.years))


def _blocked(dates: Dates, planning: Planning, voice: Voice) -> Table:
    """Days out by reason: those that are out themselves, and those from which the work would run into one."""
    themselves: dict[str, list[date]] = defaultdict(list)
    from_days: dict[str, list[date]] = defaultdict(list)
    for day in dates.days:
        for reason in () if is_weekday_off(day.blocked) else day.blocked:
            where = from_days if reason.runs_into else themselves
            said = blocked_in_words(reason, planning, voice)
            if day.day not in where[said]:
                where[said].append(day.day)
    off = [day.day for day in dates.days if is_weekday_off(day.blocked)]
    rows = [
        (said, _runs(themselves[said], off, voice), _runs(from_days[said], off, voice))
        for said in dict.fromkeys([*themselves, *from_days])
    ]
    if off:
        count = voice.say("startdays-count", days=len(off))
        rows.append((voice.say("startdays-because-weekday"), count, voice.say("planning-none")))
    columns = (
        voice.say("startdays-column-reason"),
        voice.say("startdays-column-blocked"),
        voice.say("startdays-column-runs-into"),
    )
    return Table(caption=voice.say("startdays-table-blocked"), columns=columns, rows=tuple(rows))


def _runs(days: Sequence[date], off: Collection[date], voice: Voice) -> str:
    """Days in runs, over weekdays off between them; how many they are where the runs are many."""
    runs: list[list[date]] = []
    for day in days:
        if runs and _is_next(runs[-1][-1], day, off):
            runs[-1].append(day)
        else:
            runs.append([day])
    if not runs:
        return voice.say("planning-none")
    if len(runs) > _MOST_RUNS:
        return voice.say("startdays-count", days=len(days))
    return voice.listed([_run(run[0], run[-1], voice) for run in runs])


def _is_next(one: date, other: date, off: Collection[date]) -> bool:
    between = (one + timedelta(days=place) for place in range(1, (other - one).days))
    return all(day in off for day in between)


def _run(first: date, last: date, voice: Voice) -> str:
    if first == last:
        return voice.short_day(first)
    return voice.say("startdays-span", first=voice.short_day(first), last=voice.short_day(last))
