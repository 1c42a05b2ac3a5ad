"""A comparison as tables of words."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from swardcast.language.voice import Voice
from swardcast.notices.fixtures import fixture_in_words
from swardcast.notices.pictures import Table
from swardcast.notices.words import few_words_for
from swardcast.outlook.states import Milestone
from swardcast.planning.columns import COLUMNS
from swardcast.planning.compare import Compared, Comparison
from swardcast.planning.goals import TimesAYear
from swardcast.planning.notes import pace_of, paces_of
from swardcast.planning.sand_words import mass_or_none
from swardcast.planning.words import (
    cost_in_words,
    days_a_year_in_words,
    depths_or_none,
    fits_in_words,
    layer_or_none,
    meeting_in_words,
    number_or_none,
    range_cell,
    share_or_none,
    times_in_words,
    touched_in_words,
)
from swardcast.planning.work_in_words import choice_name, operations_in_words, source_in_words
from swardcast.records.planning import Planning

__all__ = ["fixture_key", "tables_of", "title_of"]

_Cell = Callable[[Compared], str]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Told:
    """What the cells of one comparison are said with."""

    comparison: Comparison
    planning: Planning
    voice: Voice


def title_of(comparison: Comparison, voice: Voice) -> str:
    """Say what the comparison is about.

    Args:
        comparison: the comparison.
        voice: the language and the club's own names of sets.

    Returns:
        A title.
    """
    return voice.say("planning-title", places=few_words_for(comparison.surfaces, voice))


def tables_of(comparison: Comparison, planning: Planning, voice: Voice) -> tuple[Table, ...]:
    """Lay a comparison out in words: what is done, what it comes to, how it heals, which fixtures it meets.

    Args:
        comparison: the comparison, its rows in the order wanted.
        planning: the club's prices and aims.
        voice: the language and the day of the reader.

    Returns:
        Tables whose rows begin with the choice's number; that of the year's aim and that of fixtures only where there
        are any. What no choice has, such as holes in bunkers, has no column.
    """
    told = _Told(comparison=comparison, planning=planning, voice=voice)
    tables = [
        _table(voice.say("planning-table-choices"), dict(_done(told)), told),
        _table(voice.say("planning-table-work"), dict(_work(told)), told),
        _table(voice.say("planning-table-healing"), dict(_healing(told)), told),
    ]
    if goals := dict(_goals(told)):
        tables.insert(2, _table(voice.say("planning-table-goals"), goals, told))
    if comparison.fixtures:
        tables.append(_table(voice.say("planning-table-fixtures"), dict(_meetings(told)), told))
    return tuple(tables)


def _table(caption: str, cells: dict[str, _Cell], told: _Told) -> Table:
    voice = told.voice
    named: dict[str, _Cell] = {
        voice.say("planning-column-number"): lambda row: voice.number(row.number),
        voice.say("planning-column-choice"): lambda row: choice_name(row, voice),
        **cells,
    }
    rows = tuple(tuple(cell(row) for cell in named.values()) for row in told.comparison.rows)
    return Table(caption=caption, columns=tuple(named), rows=rows)


def _done(told: _Told) -> Iterator[tuple[str, _Cell]]:
    voice = told.voice
    yield voice.say("planning-column-operations"), lambda row: operations_in_words(row, voice)
    if len(paces_of(told.comparison)) > 1:
        yield voice.say("planning-column-pace"), lambda row: voice.figure(pace_of(row, told.comparison))
    yield voice.say("planning-column-source"), lambda row: source_in_words(row, voice)


def _work(told: _Told) -> Iterator[tuple[str, _Cell]]:
    voice = told.voice

    def number(column: str) -> _Cell:
        def said(row: Compared) -> str:
            value = COLUMNS[column](row)
            return number_or_none(value if isinstance(value, float | int) else None, voice)

        return said

    amounts = [row.amounts for row in told.comparison.rows]
    if any(one.disturbed_fraction is not None for one in amounts):
        yield voice.say("planning-column-disturbed"), lambda row: share_or_none(row.amounts.disturbed_fraction, voice)
        yield voice.say("planning-column-removed"), lambda row: share_or_none(row.amounts.removed_fraction, voice)
    if any(one.removed_depths_mm for one in amounts):
        yield voice.say("planning-column-removed-depth"), lambda row: depths_or_none(row, voice)
    if any(one.holes != 0 and one.disturbed_fraction is not None for one in amounts):
        yield voice.say("planning-column-holes-each"), number("holes_each")
        yield voice.say("planning-column-holes"), number("holes")
    if any(one.room_mm != 0 for one in amounts):
        yield voice.say("planning-column-fits"), lambda row: fits_in_words(row, voice)
    yield (
        voice.say("planning-column-surplus"),
        lambda row: layer_or_none(row.amounts.mean_mm(lambda one: one.surplus_mm), voice),
    )
    yield voice.say("planning-column-sand"), lambda row: mass_or_none(row.amounts.sand_t, voice)
    if told.planning.currency:
        yield (
            voice.say("planning-column-cost"),
            lambda row: cost_in_words(row, told.planning.currency, voice),
        )
    if told.comparison.reading is not None:
        yield voice.say("planning-column-organic"), lambda row: _organic(row, voice)


def _goals(told: _Told) -> Iterator[tuple[str, _Cell]]:
    """Times a year for each aim, and times that are left where the year has brought some of it."""
    voice, comparison = told.voice, told.comparison
    goal, done = told.planning.goal.of(comparison.surfaces), comparison.done

    def aim(name: str, wanted: object, times: Callable[[TimesAYear], float | None]) -> Iterator[tuple[str, _Cell]]:
        if wanted is None:
            return
        yield voice.say(f"planning-column-goal-{name}"), lambda row: times_in_words(times(row.times), voice)
        if done.jobs:
            left = voice.say(f"planning-column-left-{name}", year=str(done.year))
            yield left, lambda row: times_in_words(times(row.times_left), voice)

    yield from aim("disturbed", goal.disturbed_fraction, lambda times: times.disturbed)
    yield from aim("removed", goal.removed_fraction, lambda times: times.removed)
    yield from aim("sand", goal.sand, lambda times: times.sand)
    if any(row.days_a_year is not None for row in comparison.rows):
        yield voice.say("planning-column-days-a-year"), lambda row: days_a_year_in_words(row.days_a_year, voice)


def _organic(row: Compared, voice: Voice) -> str:
    if row.organic_after is None:
        return voice.say("planning-not-known")
    return voice.say("percent", number=voice.number(100 * row.organic_after, decimals=1))


def _healing(told: _Told) -> Iterator[tuple[str, _Cell]]:
    voice = told.voice
    yield voice.say("planning-column-settled"), lambda row: range_cell(row, Milestone.SETTLED, voice)
    yield voice.say("planning-column-closed"), lambda row: range_cell(row, Milestone.HOLES_CLOSED, voice)
    yield voice.say("planning-column-normal"), lambda row: range_cell(row, Milestone.BACK_TO_NORMAL, voice)
    yield voice.say("planning-column-days"), lambda row: _days(row, voice)
    if told.comparison.fixtures:
        yield voice.say("planning-column-touched"), lambda row: touched_in_words(row.fixtures_touched, voice)


def _days(row: Compared, voice: Voice) -> str:
    given = row.range_of(Milestone.BACK_TO_NORMAL)
    likely, until = row.days_until(given.likely), row.days_until(given.allow_until)
    if likely is None or until is None:
        return voice.say("planning-not-known")
    if row.is_usual_time:
        first = row.days_until(given.early)
        return voice.say("planning-usually", first=voice.number(first or likely), last=voice.number(until))
    return voice.say("planning-likely-until", likely=voice.number(likely), until=voice.number(until))


def _meetings(told: _Told) -> Iterator[tuple[str, _Cell]]:
    def met(place: int) -> _Cell:
        return lambda row: meeting_in_words(row.meets[place], told.voice)

    for place in range(len(told.comparison.fixtures)):
        yield _letter(place), met(place)


def fixture_key(comparison: Comparison, voice: Voice) -> tuple[tuple[str, str], ...]:
    """Name the fixtures of a comparison by the letters that stand for them.

    Args:
        comparison: the comparison.
        voice: the language and the day of the reader.

    Returns:
        Letters and names.
    """
    return tuple(
        (_letter(place), fixture_in_words(fixture, voice)) for place, fixture in enumerate(comparison.fixtures)
    )


def _letter(place: int) -> str:
    """A, B, ... Z, AA, AB: so that a fixture is not taken for a choice."""
    letter = chr(ord("A") + place % 26)
    return letter if place < 26 else _letter(place // 26 - 1) + letter  # noqa: PLR2004 - the alphabet
