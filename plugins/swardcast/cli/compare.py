"""`swardcast compare`: ways of doing a job beside each other, before anything is decided. Its results are private."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Any, Final

from swardcast.cli.common import add_club_options, moment_of, new_parser, records_to_plan, wrong_usage
from swardcast.cli.compare_asked import choices_asked, left_out, missing_pace, overlaps, when_asked
from swardcast.cli.compare_sort import CHANCE, IN_WORK, WORDS, column_option, fixture_column, sorted_rows
from swardcast.cli.planning_asked import add_work_options, day_option, week_option
from swardcast.cli.private_file import write_private
from swardcast.cli.private_tables import add_output_options, aligned, as_csv, flat, plain, show
from swardcast.errors import nearest
from swardcast.language.voice import Voice
from swardcast.outlook.fixtures import FixtureOutlook
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.columns import COLUMNS, cost_without
from swardcast.planning.compare import Compared, Comparison, compare
from swardcast.planning.done_this_year import DoneThisYear
from swardcast.planning.notes import notes_beside
from swardcast.planning.tables import fixture_key, tables_of, title_of
from swardcast.planning.work_in_words import choice_name, operations_in_words, source_in_words
from swardcast.records.folder import ClubRecords

__all__ = ["parser", "run"]

_WHICH: Final = ("own", "usual", "all")


def parser(name: str, what: str) -> argparse.ArgumentParser:
    """Describe the command's options."""
    asked = '--surfaces "greens 1-18" --week 2027-W34 --surfaces-a-day 6'
    options = new_parser(name, what, f"swardcast compare --club my-club {asked}")
    add_club_options(options)
    add_work_options(options, pace="pace of the work, where a choice has none of its own (default: the job's)")
    begins = options.add_mutually_exclusive_group()
    begins.add_argument("--day", type=day_option, help="first day of the work (default: the job's)")
    begins.add_argument("--week", type=week_option, help="week of the work, such as 2027-W34, or a day in it")
    options.add_argument(
        "--instead-of", metavar="ID", default="", help="a planned job in whose place the choices stand"
    )
    options.add_argument(
        "--choices",
        type=_which,
        metavar="{own,usual,all}",
        help="those of choices.yaml, the usual ones of the trade, or both (default: own, where there are any)",
    )
    options.add_argument(
        "--sort",
        type=column_option,
        metavar="COLUMN",
        default="number",
        help="a heading of the tables, a column of the CSV, or a fixture, as in chance_2027-09-18 (default: number)",
    )
    options.add_argument("--descending", action="store_true", help="the largest first")
    add_output_options(options)
    return options


def _which(text: str) -> str:
    """Read whose choices are wanted."""
    if text not in _WHICH:
        message = f"found {text!r}; expected one of: {', '.join(_WHICH)}. {nearest(text, _WHICH)}"
        raise argparse.ArgumentTypeError(message.rstrip())
    return text


def _missing(options: argparse.Namespace) -> str:
    """What has to be told and is not; a planned job tells it all."""
    if options.instead_of:
        return ""
    if options.surfaces is None:
        return "name surfaces, as in --surfaces 'greens 1-18', or a planned job, as in --instead-of ID"
    if options.day is None and options.week is None:
        return "name the first day of the work, as in --day 2027-08-23, or its week, as in --week 2027-W34"
    return ""


def run(options: argparse.Namespace) -> int:
    """Compare and show."""
    if missing := _missing(options):
        return wrong_usage("compare", missing)
    records = records_to_plan(options)
    as_of = moment_of(options, records)
    when = when_asked(options, records, as_of)
    which = options.choices or ""
    choices = choices_asked(which, when, records)
    if missing := missing_pace(when, choices):
        return wrong_usage("compare", missing)
    comparison = compare(records, as_of, WeatherBook(records.club, records.weather), when, choices)
    besides = overlaps(when, records, as_of)
    jobs = tuple(facts.job for facts in besides)
    rows = sorted_rows(comparison, options.sort, descending=options.descending)
    others = left_out(which, choices, records)
    comparison = replace(comparison, rows=rows, besides=jobs, left_out=others)
    for facts in besides:
        name, starts = facts.job.id, facts.starts
        print(
            f"Worth another look: {name!r} is planned there from {starts} and counts besides the choices;"
            f" --instead-of {name} puts them in its place.",
            file=sys.stderr,
        )
    if options.page is not None:
        from swardcast.outlets.committee_page import committee_page

        page = committee_page(comparison, records.planning, records.club)
        write_private(options.page, page, club=options.club)
    show(
        options,
        as_json=lambda: _as_json(comparison, records),
        as_csv=lambda: _as_csv(comparison),
        as_text=lambda: _as_text(comparison, records),
    )
    return 0


def _as_text(comparison: Comparison, records: ClubRecords) -> Iterator[str]:
    voice = Voice.english(comparison.as_of.date())
    yield f"{title_of(comparison, voice)}, as of {voice.moment(comparison.as_of)}"
    for place, table in enumerate(tables_of(comparison, records.planning, voice)):
        yield ""
        yield from aligned(table, name_column=1 if place else None)  # the first has whole names
    for letter, fixture in fixture_key(comparison, voice):
        yield f"  {letter}: {plain(fixture)}"
    yield ""
    yield from map(plain, notes_beside(comparison, records.planning, voice))


def _as_csv(comparison: Comparison) -> str:
    voice = Voice.english(comparison.as_of.date())
    names = [fixture_column(what, one) for one in comparison.fixtures for what in (IN_WORK, CHANCE)]
    rows = []
    for row in comparison.rows:
        values = [choice_name(row, voice) if name == "choice" else flat(COLUMNS[name](row)) for name in COLUMNS]
        words = [plain(said) if (said := words_of(row, voice)) is not None else None for words_of in WORDS.values()]
        met = [value for one in row.meets for value in (one.in_work.value, flat(one.not_normal))]
        rows.append([*values, *words, *met])
    return as_csv([*COLUMNS, *WORDS, *names], rows)


def _as_json(comparison: Comparison, records: ClubRecords) -> dict[str, Any]:
    when, reading = comparison.when, comparison.reading
    return {
        "as_of": comparison.as_of.isoformat(timespec="minutes"),
        "starts": when.starts.isoformat(),
        "surfaces": list(when.surfaces),
        "surfaces_a_day": when.surfaces_a_day,
        "instead_of": when.instead_of.id if when.instead_of is not None else None,
        "density_t_per_m3": comparison.density_t_per_m3,
        "currency": records.planning.currency or None,
        "organic_matter_fraction": reading.fraction if reading is not None else None,
        "organic_layer_mm": records.planning.organic_layer_mm,
        "done_this_year": _done_json(comparison.done),
        "past_years": comparison.past_years,
        "choices": [_row_json(row, comparison) for row in comparison.rows],
    }


def _done_json(done: DoneThisYear) -> dict[str, Any]:
    return {
        "year": done.year,
        "jobs": list(done.jobs),
        "disturbed_fraction": flat(done.disturbed_fraction),
        "removed_fraction": flat(done.removed_fraction),
        "sand_mm": flat(done.sand_mm),
        "is_whole": done.is_whole,
    }


def _row_json(row: Compared, comparison: Comparison) -> dict[str, Any]:
    voice = Voice.english(comparison.as_of.date())
    return {
        **{name: flat(COLUMNS[name](row)) for name in COLUMNS},
        "choice": choice_name(row, voice),
        "as_planned": row.is_planned,
        "operations": plain(operations_in_words(row, voice)),
        "source": source_in_words(row, voice),
        "cost_without": cost_without(row),
        "surfaces": [
            {
                "id": one.id,
                "holes": flat(one.holes),
                "fits_mm": flat(one.fits_mm),
                "surplus_mm": flat(one.surplus_mm),
                "sand_t": flat(one.sand_t),
            }
            for one in row.amounts.surfaces
        ],
        "fixtures": _fixtures_json(row.meets),
    }


def _fixtures_json(meets: Sequence[FixtureOutlook]) -> list[dict[str, Any]]:
    return [
        {
            "id": met.fixture.id,
            "name": met.fixture.name,
            "first_day": met.fixture.first_day.isoformat(),
            "in_work": met.in_work.value,
            "chance_not_normal": flat(met.not_normal),
            "chance_unsettled": flat(met.unsettled),
        }
        for met in meets
    ]
