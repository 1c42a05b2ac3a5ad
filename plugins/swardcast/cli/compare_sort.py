"""The order of the rows of `swardcast compare`: by a column of its CSV, the chances of fixtures included."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Sequence
from typing import Final

from swardcast.errors import SwardcastError, nearest
from swardcast.language.voice import Voice
from swardcast.planning.columns import COLUMNS, COSTS, Value, in_order
from swardcast.planning.compare import Compared, Comparison
from swardcast.planning.work_in_words import choice_name
from swardcast.records.fixtures import Fixture

__all__ = ["CHANCE", "column_option", "fixture_column", "sorted_rows"]

CHANCE: Final = "chance"
"""What the column of a fixture's chance is called, before its day and its id."""


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
    """Read the name of a column; which fixtures there are is known only later."""
    if text not in COLUMNS and not text.startswith(f"{CHANCE}_"):
        expected = f"{', '.join(COLUMNS)}, or {CHANCE}_ and a fixture's day or id"
        hint = nearest(text, COLUMNS) or nearest(f"{text.partition('_')[0]}_", (f"{CHANCE}_",))
        message = f"found {text!r}; expected one of: {expected}. {hint}"
        raise argparse.ArgumentTypeError(message.rstrip())
    return text


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
    if name == "choice":
        voice = Voice.english(comparison.as_of.date())
        return lambda row: choice_name(row, voice)
    if name in COLUMNS:
        return COLUMNS[name]
    place = _place_of(name, comparison.fixtures)
    return lambda row: row.meets[place].not_normal


def _place_of(name: str, fixtures: Sequence[Fixture]) -> int:
    """Which fixture is meant: by its id, or by as much of its id or its column as tells it from others."""
    if not fixtures:
        message = f"--sort: found {name!r}; no competition or visitors' day falls into those weeks"
        raise SwardcastError(message)
    columns = [fixture_column(CHANCE, fixture) for fixture in fixtures]
    ids = [f"{CHANCE}_{fixture.id}" for fixture in fixtures]
    whole = [place for place, known in enumerate(zip(columns, ids, strict=True)) if name in known]
    begun = [
        place
        for place, known in enumerate(zip(columns, ids, strict=True))
        if name != f"{CHANCE}_" and any(one.startswith(name) for one in known)
    ]
    found = whole or begun
    if len(found) == 1:
        return found[0]
    if found:
        said = ", ".join(columns[place] for place in found)
        message = f"--sort: {name!r} begins the names of several fixtures; write more of one of: {said}"
        raise SwardcastError(message)
    short = [one.partition("@")[0] for one in (*columns, *ids)]
    days = [f"{CHANCE}_{fixture.first_day}" for fixture in fixtures]
    hint = nearest(name, (*days, *short, *columns, *ids))
    message = f"--sort: found {name!r}; expected one of: {', '.join(columns)}. {hint}".rstrip()
    raise SwardcastError(message)
