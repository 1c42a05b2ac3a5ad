"""`swardcast log import FILE`: entries from a club's sheet or form, all that are new or none."""

from __future__ import annotations

import argparse
from pathlib import Path

from swardcast.cli.common import moment_of, print_json
from swardcast.cli.log_asking import say
from swardcast.cli.log_writing import read_first, show_and_write
from swardcast.entering.sheet_entries import take_rows
from swardcast.entering.wrong import AnswersNeedAttention, Wrong
from swardcast.errors import InputNeedsAttention, Problem
from swardcast.outlook.weather_book import WeatherBook
from swardcast.reading.sheet_block import read_log_sheet
from swardcast.reading.sheet_file import MOST_BYTES, sheet_rows_from
from swardcast.records.log_sheet import LogSheet

__all__ = ["add_options", "take_in"]


def add_options(options: argparse.ArgumentParser) -> None:
    """Add what the import takes besides what every kind takes."""
    options.add_argument("file", metavar="FILE", type=Path, help="the sheet: CSV, or a workbook (.xlsx)")


def take_in(options: argparse.Namespace) -> int:
    """Take the new rows of a sheet into the log.

    Args:
        options: the command's options.

    Returns:
        0 when they are written or there are none, else 1.
    """
    records = read_first(options.club)
    form = _form(options.club)
    now = moment_of(options, records)
    problems: list[Problem] = []
    with options.file.open("rb") as file:
        data = file.read(MOST_BYTES + 1)
    rows = sheet_rows_from(data, file=options.file.name, form=form, problems=problems)
    taken = take_rows(rows, form, records, now)
    wrongs = [_as_wrong(problem) for problem in problems]
    wrongs += [
        Wrong(option=f"{options.file.name}, {one.option}", found=one.found, expected=one.expected, hint=one.hint)
        for one in taken.wrongs
    ]
    if wrongs:
        raise AnswersNeedAttention(wrongs)
    for origin, entry in taken.changed:
        say(
            f"{options.file.name}, {origin}: changed since it was taken as {entry}, and not taken again."
            f" Put the log right: swardcast log correct {entry}"
        )
    if taken.known:
        say(f"{taken.known} {'row is' if taken.known == 1 else 'rows are'} in the log already.")
    if not taken.drafts:
        say("Nothing new.")
        if options.json:
            print_json({"written": False, "files": [], "changes": [], "new_items": []})
        return 0
    drafts = {f"{options.file.name}, {origin}": draft for origin, draft in taken.drafts.items()}
    return show_and_write(options, records, now, drafts, (), WeatherBook(records.club, records.weather))


def _form(club: Path) -> LogSheet:
    try:
        return read_log_sheet(club)
    except InputNeedsAttention as error:
        raise AnswersNeedAttention([_as_wrong(problem) for problem in error.problems]) from error


def _as_wrong(problem: Problem) -> Wrong:
    row = f"row {problem.line}" if problem.line is not None else ""
    place = ", ".join(part for part in (problem.file, row, problem.field) if part)
    return Wrong(option=place, found=problem.found, expected=problem.expected, hint=problem.hint)
