"""`swardcast compare --sort`: by what a fixture meets, and what is said of names that are not there."""

from __future__ import annotations

import csv
from collections.abc import Callable
from io import StringIO

import pytest

from tests.cli.conftest import Done
from tests.conftest import DEMO

INSTEAD = ("--club", str(DEMO), "--as-of", "2027-08-18 09:30", "--instead-of", "greens-renovation-2027")
MEDAL = "chance_2027-09-18_autumn-medal-2027@quillhaven.example"
Command = Callable[..., Done]


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
    ],
)
def test_a_fixture_is_named_by_its_id_or_by_as_much_of_its_column_as_tells_it_from_others(
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
        ("chance_autum-medal", "Did you mean 'chance_autumn-medal-2027'?"),
        ("chance_", "found 'chance_'; expected one of: chance_2027-09-01_twilight"),
    ],
)
def test_a_fixture_that_is_not_there_or_not_the_only_one_is_told(swardcast: Command, name: str, said: str) -> None:
    done = swardcast("compare", *INSTEAD, "--sort", name)
    assert (done.code, done.out) == (1, "")
    assert said in done.err


def test_where_no_fixture_falls_into_those_weeks_there_is_no_chance_to_sort_by(swardcast: Command) -> None:
    asked = ("--surfaces", "practice green", "--day", "2027-12-20", "--sort", "chance_2027-12-24")
    done = swardcast("compare", *INSTEAD[:4], *asked)
    assert done.code == 1
    assert "no competition or visitors' day falls into those weeks" in done.err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--sort", "chanec_2027-09-18"), "Did you mean 'chance_'?"),
        (("--sort", "cost_in_al"), "or chance_ and a fixture's day or id."),
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
