"""At which moments a job is looked at again: as long as it is followed, and no longer."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

from swardcast.outlook.nearby import Nearby
from swardcast.outlook.story_moments import Log, moments_of
from tests.outlook.small_club import SmallClub, moment


def _mornings_heard(club: SmallClub, as_of: datetime) -> list[str]:
    records = club.records()
    moments = moments_of(Log(Nearby(records)), records.jobs["nets"], as_of, lambda _: True)
    return [one.id for one in moments if one.id.endswith("-morning")]


def _opened_on(club: SmallClub, *days: str) -> None:
    for day in days:
        club.log(f"{day}-morning", day, "morning status", "play: {whole course: open}", time="07:00")


def test_a_morning_entry_counts_for_work_that_lasts_as_long_as_a_job_is_followed(tmp_path: Path) -> None:
    # 300 days after Monday 1 March, ten o'clock, is ten o'clock on 26 December.
    club = SmallClub(tmp_path)
    club.job("nets", "03-01", "winter protection")
    _opened_on(club, "02-28", "03-01", "06-01", "12-26", "12-27", "12-28")
    club.log("begun", "03-01", "work started", "job: nets")
    assert _mornings_heard(club, moment("12-31")) == ["03-01-morning", "06-01-morning", "12-26-morning"]


def test_a_later_entry_of_the_job_lets_mornings_count_again_from_then_on(tmp_path: Path) -> None:
    # What was passed over before it stays so, whatever was entered since: news may not depend on what came after it.
    club = SmallClub(tmp_path)
    club.job("nets", "03-01", "winter protection")
    _opened_on(club, "12-26", "12-27", "12-29")
    club.log("begun", "03-01", "work started", "job: nets")
    club.log("seen", "12-28", "observation", "job: nets", "surfaces: green 1", "turf cover: 80 %", "how: by eye")
    assert _mornings_heard(club, moment("12-31")) == ["12-26-morning", "12-29-morning"]


def test_other_work_hears_no_morning_entry(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("nets", "03-01")
    _opened_on(club, "03-02", "03-03")
    club.log("begun", "03-01", "work started", "job: nets")
    assert _mornings_heard(club, moment("12-31")) == []
