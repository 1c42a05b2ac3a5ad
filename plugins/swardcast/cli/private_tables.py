"""How private commands show their results: tables aligned for a terminal, and plain values for CSV and JSON."""

from __future__ import annotations

import argparse
import csv
import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import date
from io import StringIO
from pathlib import Path
from typing import Final

from swardcast.cli.common import print_json
from swardcast.notices.pictures import Table

__all__ = ["add_output_options", "aligned", "as_csv", "flat", "plain", "show"]

_WIDEST_NAME: Final = 32  # letters of a name in a terminal, where it stands in every table


def add_output_options(parser: argparse.ArgumentParser) -> None:
    """Add --format, --json and --page."""
    parser.add_argument("--format", choices=("table", "csv", "json"), default="table", help="(default: table)")
    parser.add_argument("--json", action="store_true", help="the same as --format json")
    parser.add_argument("--page", metavar="FILE", type=Path, help="also write a page for the committee, to be printed")


def show(
    options: argparse.Namespace,
    *,
    as_json: Callable[[], object],
    as_csv: Callable[[], str],
    as_text: Callable[[], Iterable[str]],
) -> None:
    """Print a result in the format that the options name.

    Args:
        options: the command's options, with those of `add_output_options`.
        as_json: gives it for a machine.
        as_csv: gives it as CSV.
        as_text: gives its lines for a terminal.
    """
    match "json" if options.json else options.format:
        case "json":
            print_json(as_json())
        case "csv":
            print(as_csv(), end="")
        case _:
            for line in as_text():
                print(line)


def aligned(table: Table, *, name_column: int | None = None) -> Iterator[str]:
    """Lay out a table for a terminal.

    Args:
        table: the table.
        name_column: place of a column whose long names are cut, or None.

    Yields:
        Lines: the caption, the names of the columns, the rows.
    """
    rows = [[plain(cell) for cell in row] for row in (table.columns, *table.rows)]
    if name_column is not None:
        for row in rows:
            if len(row[name_column]) > _WIDEST_NAME:
                row[name_column] = row[name_column][: _WIDEST_NAME - 1].rstrip() + "…"
    widths = [max(len(row[place]) for row in rows) for place in range(len(rows[0]))]
    yield table.caption
    for row in rows:
        yield "  " + "  ".join(f"{cell:{width}}" for cell, width in zip(row, widths, strict=True)).rstrip()


def plain(cell: str) -> str:
    """Words with plain blanks, for a terminal or a file."""
    return cell.replace("\u00a0", " ")


def as_csv(columns: Sequence[str], rows: Iterable[Sequence[object]]) -> str:
    """Write rows of values as CSV.

    Args:
        columns: names of the columns.
        rows: values, as long as the names.

    Returns:
        Text with a header, lines ended by a newline.
    """
    text = StringIO(newline="")
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(columns)
    writer.writerows(rows)
    return text.getvalue()


def flat(value: float | str | date | None) -> str | float | None:
    """A value as a machine reads it; never is told in words, since no number says it."""
    match value:
        case date():
            return value.isoformat()
        case float() if math.isinf(value):
            return "never"
        case float():
            return round(value, 4)
        case _:
            return value
