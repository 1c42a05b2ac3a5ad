"""`swardcast compare --sort`: by what a fixture meets, and what is said of names that are not there."""

from __future__ import annotations

import csv
import re
from collections.abc import Callable
from datetime import datetime
from io import StringIO

import pytest

from swardcast.cli.compare_sort import column_option, sorted_rows
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.compare import Comparison, When, compare
from swardcast.records.folder import ClubRecords
from tests.cli.conftest import Done
from tests.conftest import DEMO

INSTEAD = ("--club", str(DEMO), "--as-of", "2027-08-18 09:30", "--instead-of", "greens-renovation-2027")
MEDAL = "chance_2027-09-18_autumn-medal-2027@quillhaven.example"
Command = Callable[..., Done]


@pytest.fixture(scope="module")
def comparison(demo_records: ClubRecords) -> Comparison:
    as_of = datetime(2027, 8, 18, 9, 30, tzinfo=demo_records.club.time_zone)
    job = demo_records.jobs["greens-renovation-2027"]
    when = When(
        surfaces=job.surfaces,
        starts=job.starts,
        surfaces_a_day=job.surfaces_a_day,
        spare_days=job.spare_days,
        instead_of=job,
    )
    book = WeatherBook(demo_records.club, demo_records.weather)
    return compare(demo_records, as_of, book, when, demo_records.planning.choices)


def _rows(swardcast: Command, *words: str) -> list[dict[str, str]]:
    done = swardcast("compare", *INSTEAD, "--format", "csv", *words)
    assert done.code == 0, done.err
    return list(csv.DictReader(StringIO(done.out)))


def test_the_choices_are_sorted_by_the_chance_of_a_fixture_and_one_without_a_chance_comes_last(
    swardcast: Command,
) -> None:
    """The contractor's time was typed, so that it has no chance."""
    for way in ([], ["--descending"]):
        rows = _rows(swardcast, "--sort", MEDAL, *way)
        chances = [float(row[MEDAL]) for row in rows[:-1]]
        assert len(set(chances)) > 3
        assert chances == sorted(chances, reverse=bool(way))
        assert (rows[-1]["choice"], rows[-1][MEDAL]) == ("Contractor with drill and fill", "")


@pytest.mark.parametrize(
    "name",
    [
        "chance_autumn-medal-2027@quillhaven.example",
        "chance_autumn",
        "chance_2027-09-18",
        "chance_2027-09-18_autumn-medal",
        "chance_Autumn medal",
        "chance_autumn m",
    ],
)
def test_a_fixture_is_named_by_its_name_its_id_or_as_much_of_its_column_as_tells_it_from_others(
    swardcast: Command, name: str
) -> None:
    assert _rows(swardcast, "--sort", name) == _rows(swardcast, "--sort", MEDAL)


@pytest.mark.parametrize(
    ("name", "said"),
    [
        (
            "chance_2027-09-29",
            "'chance_2027-09-29' begins the names of several fixtures; write more of one of: chance_2027",
        ),
        ("chance_autum-medal", "found 'chance_autum-medal'; expected one of: chance_2027-09-01_twilight"),
        ("chance_autum-medal", "Did you mean 'chance_Autumn medal'?"),
        ("chance_", "found 'chance_'; expected one of: chance_2027-09-01_twilight"),
    ],
)
def test_a_fixture_that_is_not_there_or_not_the_only_one_is_told(swardcast: Command, name: str, said: str) -> None:
    done = swardcast("compare", *INSTEAD, "--sort", name)
    assert (done.code, done.out) == (1, "")
    assert said in done.err


def test_the_choices_are_sorted_by_any_column_that_the_csv_has(
    swardcast: Command, demo_records: ClubRecords, comparison: Comparison
) -> None:
    """Numbers and days go up, words by the alphabet, what falls into the work after what does not; none comes last."""
    shown = {row["number"]: row for row in _rows(swardcast)}
    order = ["no", "perhaps", "yes"]
    moved = set()
    for name in shown["1"]:
        rows = [shown[str(row.number)] for row in sorted_rows(comparison, column_option(name), descending=False)]
        told = [row[name] for row in rows if row[name]]
        assert [row[name] for row in rows] == [*told, *[""] * (len(shown) - len(told))]
        if name.startswith("in_work_"):
            assert told == sorted(told, key=order.index)
        elif name in ("cost", "work_cost", "sand_cost"):
            whole = [row[name] for row in rows if not row["cost_without"]]
            assert told[: len(whole)] == sorted(whole, key=float)  # a part of a cost comes after whole ones
        elif all(re.fullmatch(r"[\d.]+", one) for one in told):
            assert told == sorted(told, key=float)
        else:
            assert told == sorted(told, key=str.casefold)
        if [row["number"] for row in rows] != sorted(shown):
            moved.add(name)
    assert len(moved) > 30


@pytest.mark.parametrize(
    ("heading", "column"),
    [
        ("Left on top", "surplus_mm"),
        ("cost", "cost"),
        ("Days until normal", "days_likely"),
        ("FIXTURES  TOUCHED", "fixtures_touched"),
        ("Likely days a year", "days_a_year"),
    ],
)
def test_the_heading_of_a_table_names_its_column(heading: str, column: str) -> None:
    assert column_option(heading) == column


def test_every_heading_of_the_demos_tables_is_one_to_sort_by(swardcast: Command) -> None:
    """All but the letters of fixtures, and what is left of the year, whose headings hold the year."""
    lines = swardcast("compare", *INSTEAD).out.splitlines()
    heads = [re.split(r"  +", line.strip()) for line in lines if line.startswith("  No.  ")]
    named = {head for row in heads[:-1] for head in row if not head.startswith("Still in")}
    assert len(named) > 20
    for head in named:
        assert column_option(head)


def test_where_no_fixture_falls_into_those_weeks_there_is_no_chance_to_sort_by(swardcast: Command) -> None:
    asked = ("--surfaces", "practice green", "--day", "2027-12-20", "--sort", "chance_2027-12-24")
    done = swardcast("compare", *INSTEAD[:4], *asked)
    assert done.code == 1
    assert "no competition or visitors' day falls into those weeks" in done.err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--sort", "chanec_2027-09-18"), "Did you mean 'chance_'?"),
        (("--sort", "cost_in_al"), "a heading of the tables, or chance_ or in_work_ and a fixture's name, day or id."),
        (("--sort", "left on tap"), "Did you mean 'left on top'?"),
        (("--choices", "owm"), "found 'owm'; expected one of: own, usual, all. Did you mean 'own'?"),
        (("--choices", "ussual"), "Did you mean 'usual'?"),
    ],
)
def test_a_misspelt_option_is_wrong_usage_and_has_its_nearest_spelling(
    swardcast: Command, words: tuple[str, ...], said: str
) -> None:
    done = swardcast("compare", *INSTEAD, *words)
    assert done.code == 2
    assert said in done.err
