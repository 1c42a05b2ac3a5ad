"""A word on play counts until the end of its day, or for as long as the club says; page, file and story agree."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.outlets.status_file import status_artifacts
from swardcast.reading.folder import read_club_folder
from swardcast.records.standing import counts_until
from tests.reading.breaking import assert_said, replace

BLOCK = "language: en-GB\n"


def _bulletin(club: Path, moment: str) -> Bulletin:
    records = read_club_folder(club)
    return compose_bulletin(records, datetime.fromisoformat(moment).replace(tzinfo=records.club.time_zone))


@pytest.fixture
def club_of(club: Path) -> Callable[[str], Path]:
    def of(age: str) -> Path:
        replace(club / "club.yaml", BLOCK, f"{BLOCK}entry counts for: {age}\n")
        return club

    return of


def test_without_a_limit_it_counts_until_midnight_of_the_club(club: Path) -> None:
    """The demo's morning entry of 14 September was made at 6:50am."""
    last, next_day = _bulletin(club, "2027-09-14 23:59").status, _bulletin(club, "2027-09-15 00:00").status
    assert last.fresh
    assert last.counts_until == datetime(2027, 9, 15, tzinfo=ZoneInfo("Europe/London"))
    assert (next_day.fresh, next_day.counts_until) == (False, None)


def test_with_a_limit_it_counts_no_longer_than_that(club_of: Callable[[str], Path]) -> None:
    """6:50am and 10 hours are 4:50pm."""
    club = club_of("10 hours")
    before, after = _bulletin(club, "2027-09-14 16:49"), _bulletin(club, "2027-09-14 16:50")
    assert before.status.fresh
    assert not after.status.fresh
    assert after.status.sentence == (
        "We do not know how the course is now. The last morning report was made at 6:50am on Tuesday 14 September."
    )
    assert {line.play_key for line in after.status.lines} == {"not-known"}
    then = {line.surfaces: line.play for line in after.status.lines}
    assert {line.surfaces: line.once_over for line in before.status.lines} == then
    assert {line.counts_until for line in before.status.lines} == {before.status.counts_until}
    (file,) = (json.loads(one.data) for one in status_artifacts(before) if one.path == "status.json")
    assert file["fresh_until"] == "2027-09-14T16:50:00+01:00"
    assert file["sentence_once_over"].startswith(
        "We do not know how the course is now. This was true at 6:50am on Tuesday 14 September 2027: The course is open"
    )


def test_a_limit_never_carries_an_entry_into_the_next_day(club_of: Callable[[str], Path]) -> None:
    club = club_of("24 hours")
    assert _bulletin(club, "2027-09-14 23:59").status.fresh
    assert not _bulletin(club, "2027-09-15 00:00").status.fresh


def test_hours_are_hours_also_where_the_clocks_change(club_of: Callable[[str], Path]) -> None:
    """On 31 October 2027 London's clocks go back an hour at 2am (EU and UK rule: last Sunday of October)."""
    told = read_club_folder(club_of("6 hours")).club
    said = datetime(2027, 10, 31, 0, 30, tzinfo=told.time_zone)
    assert counts_until(said, told).isoformat() == "2027-10-31T05:30:00+00:00"


@pytest.mark.parametrize("age", ["30 minutes", "2 days", "soon"])
def test_an_age_that_cannot_be_is_told(club_of: Callable[[str], Path], age: str) -> None:
    expected = "a time from 1 to 24 hours, such as '10 hours'; an entry never counts beyond its day"
    says = f"line «entry counts», entry counts for: found {age!r}; expected {expected}"
    assert_said(club_of(age), "club.yaml", (says,))
