"""The order of the rows of `swardcast compare`: by a column of its CSV, a heading of its tables, or a fixture."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Mapping, Sequence
from datetime import date
from typing import Final

from swardcast.errors import SwardcastError, nearest
from swardcast.language.voice import Voice
from swardcast.outlook.closures import Touch
from swardcast.outlook.fixtures import FixtureOutlook
from swardcast.planning.columns import COLUMNS, COSTS, Value, cost_without, in_order
from swardcast.planning.compare import Compared, Comparison
from swardcast.planning.work_in_words import choice_name, operations_in_words, source_in_words
from swardcast.records.fixtures import Fixture

__all__ = ["CHANCE", "IN_WORK", "WORDS", "column_option", "fixture_column", "sorted_rows"]

CHANCE: Final = "chance"
"""What the column of a fixture's chance is called, before its day and its id."""
IN_WORK: Final = "in_work"
"""Likewise that of whether it falls into the work."""
WORDS: Final[Mapping[str, Callable[[Compared, Voice], str | None]]] = {
    "cost_without": lambda row, _: cost_without(row),
    "operations": operations_in_words,
    "source": source_in_words,
}
"""Columns that hold words, after those with values."""
_HEADINGS: Final = {
    "number": "number",
    "choice": "choice",
    "pace": "surfaces_a_day",
    "holes-each": "holes_each",
    "holes": "holes",
    "disturbed": "disturbed_fraction",
    "removed": "removed_fraction",
    "removed-depth": "removed_depth_mm",
    "fits": "fits_mm",
    "surplus": "surplus_mm",
    "sand": "sand_t",
    "cost": "cost",
    "organic": "organic_after_fraction",
    "settled": "settled_likely",
    "closed": "closed_likely",
    "normal": "normal_likely",
    "days": "days_likely",
    "touched": "fixtures_touched",
    "goal-disturbed": "times_disturbed",
    "goal-removed": "times_removed",
    "goal-sand": "times_sand",
    "days-a-year": "days_a_year",
    "operations": "operations",
    "source": "source",
}
"""The column behind each heading of the tables, by the end of its phrase's name."""
_OF_FIXTURES: Final[Mapping[str, Callable[[FixtureOutlook], Value]]] = {
    CHANCE: lambda met: met.not_normal,
    IN_WORK: lambda met: (Touch.NO, Touch.PERHAPS, Touch.YES).index(met.in_work),
}


def fixture_column(what: str, fixture: Fixture) -> str:
    """Name the column of a fixture.

    Args:
        what: what it holds.
        fixture: the fixture.

    Returns:
        Its name in the CSV, such as "chance_2027-09-18_autumn-medal-2027".
    """
    return f"{what}_{fixture.first_day}_{fixture.id}"


def column_option(text: str) -> str:
    """Read the name of a column, or a heading; which fixtures there are is known only later."""
    columns = (*COLUMNS, *WORDS)
    if text in columns or any(text.startswith(f"{what}_") for what in _OF_FIXTURES):
        return text
    headings = _headings()
    if (column := headings.get(_alike(text))) is not None:
        return column
    expected = (
        f"{', '.join(columns)}, a heading of the tables, or {CHANCE}_ or {IN_WORK}_ and a fixture's name, day or id"
    )
    hint = nearest(text, columns) or nearest(f"{text.partition('_')[0]}_", (f"{CHANCE}_",))
    hint = hint or nearest(_alike(text), tuple(headings))
    message = f"found {text!r}; expected one of: {expected}. {hint}"
    raise argparse.ArgumentTypeError(message.rstrip())


def _alike(words: str) -> str:
    return " ".join(words.replace("\u2019", "'").casefold().split())


def _headings() -> dict[str, str]:
    voice = Voice.english(date(2027, 1, 1))  # no heading here tells a day
    return {_alike(voice.say(f"planning-column-{name}")): column for name, column in _HEADINGS.items()}


def sorted_rows(comparison: Comparison, name: str, *, descending: bool) -> tuple[Compared, ...]:
    """Sort a comparison.

    Args:
        comparison: the comparison.
        name: a column's name, as `column_option` gives it.
        descending: whether the largest comes first.

    Returns:
        The rows.

    Raises:
        SwardcastError: when no fixture of the comparison has that name, or several have.
    """
    return in_order(comparison.rows, _value(comparison, name), descending=descending, of_cost=name in COSTS)


def _value(comparison: Comparison, name: str) -> Callable[[Compared], Value]:
    voice = Voice.english(comparison.as_of.date())
    if name == "choice":
        return lambda row: choice_name(row, voice)
    if name in WORDS:
        return lambda row: WORDS[name](row, voice)
    if name in COLUMNS:
        return COLUMNS[name]
    what = next(what for what in _OF_FIXTURES if name.startswith(f"{what}_"))
    place = _place_of(name, what, comparison.fixtures)
    return lambda row: _OF_FIXTURES[what](row.meets[place])


def _place_of(name: str, what: str, fixtures: Sequence[Fixture]) -> int:
    """Which fixture is meant: by its name, its id, or as much of them or of its column as tells it from others."""
    if not fixtures:
        message = f"--sort: found {name!r}; no competition or visitors' day falls into those weeks"
        raise SwardcastError(message)
    known = [(fixture_column(what, one), f"{what}_{one.id}", f"{what}_{one.name}") for one in fixtures]
    typed = _alike(name)
    whole = [place for place, names in enumerate(known) if typed in map(_alike, names)]
    begun = [
        place
        for place, names in enumerate(known)
        if typed != f"{what}_" and any(_alike(one).startswith(typed) for one in names)
    ]
    found = whole or begun
    if len(found) == 1:
        return found[0]
    if found:
        said = ", ".join(known[place][0] for place in found)
        message = f"--sort: {name!r} begins the names of several fixtures; write more of one of: {said}"
        raise SwardcastError(message)
    short = [one.partition("@")[0] for names in known for one in names]
    days = [f"{what}_{fixture.first_day}" for fixture in fixtures]
    hint = nearest(name, (*days, *short, *(one for names in known for one in names)))
    columns = ", ".join(column for column, *_ in known)
    message = f"--sort: found {name!r}; expected one of: {columns}. {hint}".rstrip()
    raise SwardcastError(message)
