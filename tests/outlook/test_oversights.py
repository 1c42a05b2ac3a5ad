"""What the manager may have forgotten is pointed out: work that nobody entered, a product on a green that stays open."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import pytest

from swardcast.compose import compose_bulletin
from swardcast.language.voice import Voice
from swardcast.notices.oversights import oversights
from tests.outlook.small_club import SmallClub, moment

LABEL = "re-entry: Keep off until the leaf is dry., signs: at each green, label read by: AB, label read on: 2027-05-20"
SPRAY = f"plant protection: {{product: a treatment, {LABEL}}}"


def _remarks(club: SmallClub, as_of: datetime) -> list[str]:
    return [said.replace("\u00a0", " ") for said in oversights(club.records(), as_of, Voice.english(as_of.date()))]


def test_a_job_that_nobody_began_is_pointed_out_after_a_week(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "06-01")
    assert _remarks(club, moment("06-08")) == []
    said = (
        "Spring work was planned from Tuesday 1 June; enter what happened, or move or call it off"
        " [plan/spring.yaml, line 4]"
    )
    assert _remarks(club, moment("06-09")) == [said]
    assert said in [one.replace("\u00a0", " ") for one in compose_bulletin(club.records(), moment("06-09")).remarks]


@pytest.mark.parametrize(
    ("kind", "fields"),
    [
        ("work started", ["surfaces: green 1"]),
        ("work done", []),
        ("change of plan", ["change: called off", "because: rain"]),
        ("change of plan", ["change: postponed to", "starts: 2027-07-01", "because: rain"]),
    ],
)
def test_an_entry_ends_the_remark(tmp_path: Path, kind: str, fields: list[str]) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "06-01")
    club.log("late", "06-09", kind, "job: spring", *fields)
    assert _remarks(club, moment("06-09")) == []


def test_a_job_that_was_withdrawn_is_not_asked_about(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "06-01", more="    withdrawn: {at: 2027-06-12 09:00, because: a slip}\n")
    assert len(_remarks(club, moment("06-11"))) == 1
    assert _remarks(club, moment("06-13")) == []


@pytest.mark.parametrize("play", ["open", "open with care"])
def test_a_product_on_a_green_that_stays_open_is_asked_about(tmp_path: Path, play: str) -> None:
    club = SmallClub(tmp_path)
    club.job("spray", "06-01", SPRAY, play=play)
    label = 'the label of the plant protection says "Keep off until the leaf is dry"'
    said = f"Spray work: {label} while greens 1 and 2 stay {play}: is that right? [plan/spray.yaml, line 4]"
    assert _remarks(club, moment("05-25")) == [said]
    club.done("spray", "06-01")
    assert _remarks(club, moment("06-01")) == []


def test_a_product_on_a_closed_green_is_in_order(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spray", "06-01", SPRAY, more="    follow up: 4 to 6 hours\n")
    assert _remarks(club, moment("05-25")) == []
