"""What a build says of the site that it replaces: only what the records cannot tell, and nothing from day to day."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta
from functools import partial
from pathlib import Path

import pytest

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.notices.as_told import NoticesAsTold
from swardcast.outlets.calendar import calendar_artifact
from swardcast.outlets.feed_content import in_full, in_short
from swardcast.outlets.feeds import feed_pages
from swardcast.outlets.json_feed import json_artifacts
from swardcast.outlets.replaced_site import remarks_on_replaced, replaced_site
from swardcast.records.folder import ClubRecords
from tests.conftest import bytes_in
from tests.outlook.small_club import SmallClub, moment


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    club = SmallClub(tmp_path / "club")
    club.job("spring", "05-10")
    club.job("summer", "07-12", surfaces="green 3")
    return club


@pytest.fixture
def live(tmp_path: Path) -> Callable[[Bulletin], Path]:
    """Publish the two files that are read."""

    def publish(bulletin: Bulletin) -> Path:
        folder = tmp_path / "live"
        pages = feed_pages(
            bulletin,
            partial(in_full, bulletin=bulletin, notices=NoticesAsTold(bulletin.records, bulletin.stories)),
            partial(in_short, bulletin=bulletin),
        )
        for artifact in (calendar_artifact(bulletin), *json_artifacts(pages)):
            path = folder / artifact.path
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(artifact.data)
        return folder

    return publish


def _remarks(folder: Path, bulletin: Bulletin, records: ClubRecords) -> tuple[str, ...]:
    site = replaced_site(folder)
    assert site is not None
    return remarks_on_replaced(site, bulletin, records)


def _after(
    club: SmallClub, live: Callable[[Bulletin], Path], day: str, change: Callable[[], object], then: str = ""
) -> tuple[str, ...]:
    """What is said when the club changes between two builds."""
    folder = live(compose_bulletin(club.records(), moment(day, "12:00")))
    change()
    records = club.records()
    return _remarks(folder, compose_bulletin(records, moment(then or day, "13:00")), records)


def test_days_that_were_edited_in_the_plan_are_named(club: SmallClub, live: Callable[[Bulletin], Path]) -> None:
    (said,) = _after(club, live, "05-03", lambda: club.job("spring", "05-12"))
    assert said.startswith("Spring work: its days were changed in the plan without a word")
    assert said.endswith("enter the new one as a change of plan [plan/spring.yaml, line 4]")


@pytest.mark.parametrize("time", ["12:30", "09:00"], ids=["in between", "dated back"])
def test_days_that_were_changed_by_an_entry_are_news(
    club: SmallClub, live: Callable[[Bulletin], Path], time: str
) -> None:
    fields = ("job: spring", "change: postponed to", "starts: 2027-05-12", "because: rain")
    assert _after(club, live, "05-03", lambda: club.log("later", "05-03", "change of plan", *fields, time=time)) == ()


def test_a_job_that_is_gone_from_the_plan_is_named_once(club: SmallClub, live: Callable[[Bulletin], Path]) -> None:
    club.log("note", "05-02", "note to members", "job: spring", "---", "Soon.")
    path = club.folder / "log/2027/note.md"
    path.write_text("---\nat: 2027-05-02 09:00\nkind: note to members\njob: spring\n---\nSoon.\n", encoding="utf-8")

    def delete() -> None:
        (club.folder / "plan/spring.yaml").unlink()
        path.unlink()

    (said,) = _after(club, live, "05-03", delete)
    assert said.startswith("job spring is no longer in the plan")
    assert "`withdrawn`" in said


def test_a_job_that_was_withdrawn_is_no_surprise(club: SmallClub, live: Callable[[Bulletin], Path]) -> None:
    gone = "    withdrawn: {at: 2027-05-03 12:30, because: entered twice}\n"
    assert _after(club, live, "05-03", lambda: club.job("spring", "05-10", more=gone)) == ()


def test_a_job_that_is_announced_later_than_it_was_is_named(club: SmallClub, live: Callable[[Bulletin], Path]) -> None:
    (said,) = _after(club, live, "05-03", lambda: club.job("spring", "05-10", announced="05-05"))
    assert said.startswith("Spring work was published, and is announced on 2027-05-05 only")


def test_an_entry_that_was_deleted_is_named(club: SmallClub, live: Callable[[Bulletin], Path]) -> None:
    club.done("spring", "05-10")
    (said,) = _after(club, live, "05-11", (club.folder / "log/2027/spring-done.md").unlink)
    assert said.startswith("Spring work: the entry spring-done was published and is gone from the log")


def test_an_entry_that_was_put_right_by_a_correction_is_no_surprise(
    club: SmallClub, live: Callable[[Bulletin], Path]
) -> None:
    club.done("spring", "05-10")
    correct = partial(club.log, "not-done", "05-11", "correction", "corrects: spring-done")
    assert _after(club, live, "05-11", correct) == ()


def test_an_entry_that_is_typed_late_is_no_surprise(club: SmallClub, live: Callable[[Bulletin], Path]) -> None:
    assert _after(club, live, "05-11", lambda: club.done("spring", "05-10")) == ()


def test_an_earlier_moment_and_another_club_are_not_compared(club: SmallClub, live: Callable[[Bulletin], Path]) -> None:
    def delete() -> None:
        (club.folder / "plan/spring.yaml").unlink()

    assert _after(club, live, "05-03", delete, then="05-02") == ()
    records = club.records()
    other = replace(records, club=replace(records.club, site="https://dune.example"))
    assert (
        _remarks(live(compose_bulletin(records, moment("05-03"))), compose_bulletin(other, moment("05-04")), other)
        == ()
    )


def test_files_that_are_none_of_ours_say_nothing(tmp_path: Path) -> None:
    assert replaced_site(tmp_path) is None
    (tmp_path / "feeds").mkdir()
    for calendar, feed in ((b"", b"{}"), (b"BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n", b"[]"), (b"\xff", b"x")):
        (tmp_path / "calendar.ics").write_bytes(calendar)
        (tmp_path / "feeds/status.json").write_bytes(feed)
        assert replaced_site(tmp_path) is None


@pytest.mark.parametrize("first", [date(2027, 8, 22), date(2027, 9, 6)])
def test_from_day_to_day_nothing_is_said(
    evenings: dict[date, Bulletin], demo_records: ClubRecords, live: Callable[[Bulletin], Path], first: date
) -> None:
    """Ten days each, in which work is held up, postponed, corrected and ended."""
    for number in range(10):
        day = first + timedelta(days=number)
        assert _remarks(live(evenings[day]), evenings[day + timedelta(days=1)], demo_records) == (), day


def test_the_build_says_it_and_the_site_does_not_depend_on_it(
    club: SmallClub, tmp_path: Path, run_swardcast: Callable[..., subprocess.CompletedProcess[str]]
) -> None:
    def build(output: Path, as_of: str) -> str:
        done = run_swardcast("build", "--club", str(club.folder), "--output", str(output), "--as-of", as_of)
        assert done.returncode == 0, done.stderr
        return done.stderr

    over, alone = tmp_path / "site", tmp_path / "alone"
    assert "without a word" not in build(over, "2027-05-03 12:00")
    club.job("spring", "05-12")
    said = build(over, "2027-05-03 13:00")
    assert said.count("Worth another look: Spring work: its days were changed in the plan without a word") == 1
    assert "without a word" not in build(alone, "2027-05-03 13:00")
    assert bytes_in(alone) == bytes_in(over)
    assert "without a word" not in build(over, "2027-05-03 14:00")
