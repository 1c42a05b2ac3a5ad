"""The manager's own words are held against the measure of ours, and are only ever worth another look."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from swardcast.language.banned import banned_phrases
from swardcast.notices.own_words import own_words_remarks
from tests.outlook.small_club import SmallClub, moment

LONG = " ".join(["word"] + [f"number{number}" for number in range(30)])


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    return SmallClub(tmp_path)


@pytest.fixture
def remarks(club: SmallClub) -> Callable[[str], tuple[str, ...]]:
    def at(day: str) -> tuple[str, ...]:
        return own_words_remarks(club.records(), moment(day), banned_phrases("en-GB"))

    return at


def note(
    club: SmallClub, day: str, words: str, *fields: str, name: str = "a-note", kind: str = "note to members"
) -> None:
    club.log(name, day, kind, *fields)
    file = club.folder / "log" / "2027" / f"{name}.md"
    file.write_text(file.read_text(encoding="utf-8") + f"\n{words}\n", encoding="utf-8")


def test_the_words_of_a_job_are_told_with_file_line_and_field(
    club: SmallClub, remarks: Callable[[str], tuple[str, ...]]
) -> None:
    club.job("greens", "05-03", more=f"    own words: |\n      {LONG}.\n\n      It opens **soon**.\n")
    assert remarks("04-01") == (
        (
            "plan/greens.yaml, line 4: own words: sentence of 31 words: "
            "“word number0 number1 number2 number3 number4 number5 number6 number7 …”. Split it."
        ),
        (
            "plan/greens.yaml, line 4: own words: “soon”: “It opens soon”. "
            "Write instead: the day, or that no day is known yet."
        ),
    )


def test_the_reasons_of_a_job_are_looked_at_one_by_one(
    club: SmallClub, remarks: Callable[[str], tuple[str, ...]]
) -> None:
    more = "    own words: Fine.\n"
    club.job("greens", "05-03", more=more)
    file = club.folder / "plan/greens.yaml"
    text = file.read_text(encoding="utf-8")
    file.write_text(text + "      - One. Two.\n      - Three. There is thatch.\n", encoding="utf-8")
    assert remarks("04-01") == (
        (
            "plan/greens.yaml, line 4: why: “thatch”: “There is thatch”. "
            "Write instead: the layer of dead stems below the leaf."
        ),
    )


def test_a_job_of_last_season_is_left_alone(club: SmallClub, remarks: Callable[[str], tuple[str, ...]]) -> None:
    """Ninety days after 3 May come to 1 August."""
    club.job("greens", "05-03", more="    own words: Soon.\n")
    assert len(remarks("08-01")) == 1
    assert remarks("08-02") == ()


def test_an_entry_is_looked_at_for_a_fortnight_and_not_before_it_counts(
    club: SmallClub, remarks: Callable[[str], tuple[str, ...]]
) -> None:
    note(club, "05-03", "Back shortly.")
    said = (
        (
            "log/2027/a-note.md: own words: “shortly”: “Back shortly”. "
            "Write instead: the day or the hour, or that none is known yet."
        ),
    )
    assert [remarks(day) for day in ("05-02", "05-03", "05-16", "05-18")] == [(), said, said, ()]


def test_a_withdrawn_entry_is_left_alone_and_a_correction_is_told_once(
    club: SmallClub, remarks: Callable[[str], tuple[str, ...]]
) -> None:
    note(club, "05-03", "Back shortly.")
    instead = ("corrects: a-note", "instead:", "  at: 2027-05-03 10:00", "  kind: note to members")
    note(club, "05-04", "Open very soon.", *instead, name="not-so", kind="correction")
    (only,) = remarks("05-05")
    assert only.startswith("log/2027/not-so.md: own words: “soon”: “Open very soon”.")


def test_plain_words_are_passed_over_in_silence(club: SmallClub, remarks: Callable[[str], tuple[str, ...]]) -> None:
    club.job("greens", "05-03", more="    own words: We start at 7 a.m. and stop when it rains.\n")
    note(club, "05-03", "Dry and still. All went well.")
    assert remarks("05-04") == ()


def test_without_a_list_for_the_language_only_the_limits_count(club: SmallClub) -> None:
    club.job("greens", "05-03", more=f"    own words: Soon. {LONG}.\n")
    (only,) = own_words_remarks(club.records(), moment("05-01"), ())
    assert "sentence of 31 words" in only
