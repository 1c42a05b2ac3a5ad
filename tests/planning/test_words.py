"""Cells of a comparison in words: every sort of work, every way of not knowing, in both Englishes."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from swardcast.language.catalogue import built_in
from swardcast.language.voice import Voice
from swardcast.outlook.closures import Touch
from swardcast.outlook.fixtures import Basis, FixtureOutlook
from swardcast.outlook.states import DateRange, Milestone
from swardcast.planning.notes import notes_beside
from swardcast.planning.tables import fixture_key, tables_of, title_of
from swardcast.planning.words import (
    meeting_in_words,
    number_or_none,
    range_cell,
    share_or_none,
    times_in_words,
)
from swardcast.planning.work_in_words import choice_name, operations_in_words
from swardcast.quantities import Sand, SandBasis
from swardcast.records.operations import Kind, OtherWork, SandInjection, Stripping
from swardcast.records.planning import Planning, YearlyGoal
from tests.planning.asked import blades, choice, compared, comparison_of, fixture, sand, small_records, tines

BRITISH = Voice.english(date(2027, 6, 7))
AMERICAN = Voice(catalogue=built_in("en-US"), near=date(2027, 6, 7))


def _plain(words: str) -> str:
    return words.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("operation", "british", "american"),
    [
        (
            tines(12.7, 50.8, 50.8, 63.5),
            "hollow tining 12.7 mm at 50.8 x 50.8 mm, 63.5 mm deep",
            "1/2 in at 2 x 2 in, 2 1/2 in deep",
        ),
        (
            tines(6.35, 38.1, 38.1, 50.8, passes=2),
            "hollow tining 6.35 mm at 38.1 x 38.1 mm, 50.8 mm deep, 2 passes",
            "1/4 in at 1 1/2 x 1 1/2 in, 2 in deep, 2 passes",
        ),
        (
            tines(12.7, 50.8, 50.8, 63.5, inside_mm=9.525),
            "hollow tining 12.7 mm (9.525 mm inside) at 50.8 x 50.8 mm, 63.5 mm deep",
            "1/2 in (3/8 in inside) at 2 x 2 in, 2 1/2 in deep",
        ),
        (blades(2, 25.4, 12.7), "scarifying 2 mm every 25.4 mm, 12.7 mm deep", "every 1 in, 1/2 in deep"),
        (sand(2), "topdressing 2.0 mm", "0.08 in"),
        (sand(100), "topdressing 100 mm", "4 in"),
        (sand(1.4, SandBasis.TONNES_EACH), "topdressing 1.4 tonnes on each", "1.5 tons on each"),
        (sand(20, SandBasis.TONNES_IN_ALL), "topdressing 20 tonnes in all", "22 tons in all"),
        (sand(2.5, SandBasis.KG_PER_M2), "topdressing 2.5 kg on a square metre", "510 lb per 1,000 sq ft"),
        (OtherWork(kind=Kind.ROLLING), "rolling", "rolling"),
        (
            Stripping(kind=Kind.FRAISE_MOWING, depth_mm=6.35, share=0.4),
            "fraise mowing 6.35 mm deep on 40 % of the surface",
            "1/4 in deep on 40% of the surface",
        ),
        (
            SandInjection(
                kind=Kind.SAND_INJECTION,
                diameter_mm=19.05,
                across_mm=152.4,
                along_mm=152.4,
                depth_mm=203.2,
                sand=Sand(2, SandBasis.TONNES_EACH),
            ),
            "sand injection, 19.05 mm wide, 203.2 mm deep, 152.4 x 152.4 mm apart, 2 tonnes on each",
            "3/4 in wide, 8 in deep, 6 x 6 in apart, 2.2 tons on each",
        ),
    ],
    ids=[
        "tines",
        "two passes",
        "tines wider outside",
        "blades",
        "a layer",
        "a thick layer",
        "tonnes each",
        "tonnes in all",
        "a rate",
        "without sizes",
        "stripping",
        "injection",
    ],
)
def test_work_is_said_with_its_sizes_in_the_units_of_the_language(
    tmp_path: Path, operation: object, british: str, american: str
) -> None:
    row = compared(small_records(tmp_path / "club"), operation)  # type: ignore[arg-type]
    assert _plain(operations_in_words(row, BRITISH)) == british
    assert american in _plain(operations_in_words(row, AMERICAN))


def test_a_choice_without_a_name_goes_by_its_work(tmp_path: Path) -> None:
    records = small_records(tmp_path / "club")
    (row,) = comparison_of(records, choice(tines(12, 50, 50, 60), sand(2), name="")).rows
    assert choice_name(row, BRITISH) == "Hollow tining and topdressing"


@pytest.mark.parametrize(
    ("met", "said"),
    [
        ({"in_work": Touch.YES}, "work"),
        ({"in_work": Touch.PERHAPS}, "perhaps work"),
        ({"not_normal": 0.04}, "hardly"),
        ({"not_normal": 0.3}, "3 in 10"),
        ({"not_normal": 1.0}, "10 in 10"),
        ({"in_range": Touch.PERHAPS}, "perhaps"),
        ({"in_range": Touch.NO}, "–"),
        ({}, "not known"),
    ],
)
def test_what_a_fixture_meets_is_said_in_few_letters(met: dict[str, object], said: str) -> None:
    usual = {"in_work": Touch.NO, "basis": Basis.COMPUTED, "not_normal": None, "unsettled": None, "in_range": None}
    one = FixtureOutlook(fixture=fixture(date(2027, 6, 20)), **{**usual, **met})  # type: ignore[arg-type]
    assert meeting_in_words(one, BRITISH) == said


def test_nothing_none_and_not_known_are_told_apart() -> None:
    assert (number_or_none(0, BRITISH), number_or_none(None, BRITISH)) == ("–", "not known")
    assert number_or_none(194_556, BRITISH) == "195,000"
    assert (share_or_none(0.0, BRITISH), share_or_none(None, BRITISH)) == ("–", "not known")
    assert (times_in_words(float("inf"), BRITISH), times_in_words(3.0, BRITISH)) == ("never", "3")


def test_no_date_says_why(tmp_path: Path) -> None:
    records = small_records(tmp_path / "club")
    (far,) = comparison_of(
        records, choice(sand(2)), when=replace(comparison_of(records, choice(sand(2))).when, starts=date(2028, 9, 1))
    ).rows
    assert range_cell(far, Milestone.BACK_TO_NORMAL, BRITISH) == "over a year ahead"


def test_dates_of_work_with_few_published_recoveries_have_a_star_and_the_notices_own_reason(tmp_path: Path) -> None:
    """Deep tines and wide ones were not among the fitted recoveries; usual hollow tines were."""
    records = small_records(tmp_path / "club")
    deep = choice(tines(12, 75, 75, 250, kind=Kind.DEEP_TINING))
    usual = choice(tines(12, 50, 50, 60), sand(3))
    found = comparison_of(records, usual, deep)
    said = [range_cell(row, Milestone.BACK_TO_NORMAL, BRITISH) for row in found.rows]
    assert [one.endswith("*") for one in said] == [False, True]
    reason = "Few recoveries of such grass or work have been published, so we give a wider range."
    assert reason in " ".join(notes_beside(found, records.planning, BRITISH))
    assert reason not in " ".join(notes_beside(comparison_of(records, usual), records.planning, BRITISH))


def test_a_date_that_a_notice_tells_in_months_is_told_in_months(tmp_path: Path) -> None:
    """Early to allow until more than eight weeks apart, over the ends of two months."""
    (row,) = comparison_of(small_records(tmp_path / "club"), choice(tines(12, 50, 50, 60), sand(3))).rows
    wide = DateRange(early=date(2027, 7, 20), likely=date(2027, 8, 20), allow_until=date(2027, 10, 5))
    dates = {**row.disturbance.outlook.dates, Milestone.BACK_TO_NORMAL: wide}
    outlook = replace(row.disturbance.outlook, dates=dates)
    slow = replace(row, disturbance=replace(row.disturbance, outlook=outlook))
    assert range_cell(slow, Milestone.BACK_TO_NORMAL, BRITISH) == "some time from July to October"


def test_every_table_has_as_many_cells_as_headings_whatever_is_known(tmp_path: Path) -> None:
    goal = YearlyGoal(disturbed_fraction=0.15, removed_fraction=0.1)
    plain = small_records(tmp_path / "a")
    full = small_records(
        tmp_path / "b",
        planning=Planning(currency="EUR", sand_price_per_t=30.0, goal=goal),
        fixtures=(fixture(date(2027, 6, 20)),),
    )
    for records, count in ((plain, 3), (full, 5)):
        found = comparison_of(records, choice(tines(12, 50, 50, 60), sand(3)), choice(sand(1)))
        for voice in (BRITISH, AMERICAN):
            tables = tables_of(found, records.planning, voice)
            assert len(tables) == count
            assert all(len(row) == len(table.columns) for table in tables for row in table.rows)
            assert all(table.columns[0] == "No." for table in tables)


def test_notes_say_what_the_figures_rest_on(tmp_path: Path) -> None:
    records = small_records(
        tmp_path / "club", planning=Planning(currency="EUR", goal=YearlyGoal(removed_fraction=0.1)), density=1.5
    )
    said = " ".join(notes_beside(comparison_of(records, choice(sand(3))), records.planning, BRITISH))
    for words in (
        "1 way, begun on Monday 14 June.",
        "They rest on 3 past years of the club's weather.",
        "Sand is dry and weighs 1.5",
        "There is no reading of organic matter in the log, so none is worked out.",
        "Nobody typed a price of sand, so what needs sand has no cost.",
        "The aim for a year is 10",
        "No competition or visitors' day is known in those weeks.",
    ):
        assert words in _plain(said)


def test_notes_say_how_sand_passes_and_fixtures_are_counted(tmp_path: Path) -> None:
    records = small_records(tmp_path / "club", fixtures=(fixture(date(2027, 6, 20)),))
    twice = comparison_of(records, choice(tines(8, 50, 50, 60, passes=2)))
    once = comparison_of(records, choice(tines(8, 50, 50, 60)))
    with_twice, with_once = (" ".join(notes_beside(one, records.planning, BRITISH)) for one in (twice, once))
    assert "Passes are added as if no hole met another. Two passes take no longer here than one" in with_twice
    assert "Passes" not in with_once
    for said in (with_once, with_twice):
        assert "Shares of the surface count its area, however deep or shallow the work is." in said
        assert "The sand in the holes is what would fit at most." in said
        assert (
            "It counts as touched in days that the work may take, and as long as that is above 1 chance in 10." in said
        )


def test_holes_close_only_where_something_was_opened(tmp_path: Path) -> None:
    records = small_records(tmp_path / "club")
    sanded, cored = comparison_of(records, choice(sand(1)), choice(tines(12, 50, 50, 60))).rows
    assert range_cell(sanded, Milestone.HOLES_CLOSED, BRITISH) == "–"
    assert range_cell(cored, Milestone.HOLES_CLOSED, BRITISH) != "–"


def test_fixtures_go_by_letters_beyond_the_alphabet_too(tmp_path: Path) -> None:
    days = tuple(fixture(date(2027, 6, 14), f"Medal {number:02}") for number in range(28))
    found = comparison_of(small_records(tmp_path / "club", fixtures=days), choice(sand(3)))
    letters = [letter for letter, _ in fixture_key(found, BRITISH)]
    assert letters[:2] == ["A", "B"]
    assert letters[25:] == ["Z", "AA", "AB"]
    assert len(set(letters)) == 28


def test_the_title_names_the_surfaces(tmp_path: Path) -> None:
    found = comparison_of(small_records(tmp_path / "club"), choice(sand(3)))
    assert title_of(found, BRITISH) == "Ways of doing the work on greens 1 and 2"
