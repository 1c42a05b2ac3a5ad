"""The course status as members heard of it, entry by entry."""

from __future__ import annotations

from pathlib import Path

import pytest

from swardcast.language.voice import Voice
from swardcast.notices.limits import limit_clause
from swardcast.outlook.play_story import PlayChange, play_changes
from tests.outlook.small_club import SmallClub, moment


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    club = SmallClub(tmp_path)
    club.job("spring", "06-01", surfaces="greens 1-3")
    return club


def morning(club: SmallClub, day: str, play: str, name: str, time: str = "07:00") -> None:
    club.log(name, day, "morning status", f"play: {{{play}}}", time=time)


def changes(club: SmallClub, day: str, time: str = "23:00") -> list[PlayChange]:
    return play_changes(club.records(), moment(day, time))


def told(club: SmallClub, day: str) -> list[tuple[str, dict[str, str]]]:
    return [(change.id, {name: play.value for name, play in change.play.items()}) for change in changes(club, day)]


def test_an_ordinary_morning_is_no_news(club: SmallClub) -> None:
    morning(club, "05-03", "the whole course: open", "m3")
    assert told(club, "05-03") == []


def test_a_closed_green_is_told_once_and_its_opening_again(club: SmallClub) -> None:
    for name, day, play in (("m3", "05-03", "closed"), ("m4", "05-04", "closed"), ("m5", "05-05", "open")):
        morning(club, day, f"green 1: {play}", name)
    assert told(club, "05-06") == [("m3", {"green-1": "closed"}), ("m5", {"green-1": "open"})]


def test_what_work_changes_is_told_with_the_job_and_not_twice(club: SmallClub) -> None:
    club.log("started", "06-01", "work started", "job: spring", "surfaces: green 1", time="07:00")
    morning(club, "06-01", "the whole course: open, green 1: closed", "m1", time="07:30")
    assert told(club, "06-01") == []


def test_a_withdrawn_morning_stays_in_the_feed_and_its_correction_is_news(club: SmallClub) -> None:
    morning(club, "05-03", "the whole course: open, greens 1-2: closed", "m3")
    club.log(
        "oh",
        "05-03",
        "correction",
        "corrects: m3",
        "instead: {at: 2027-05-03 07:00, kind: morning status, play: {the whole course: open, green 1: closed}}",
        time="08:00",
    )
    assert told(club, "05-03") == [("m3", {"green-1": "closed", "green-2": "closed"}), ("oh", {"green-2": "open"})]
    assert [change.corrects for change in changes(club, "05-03")] == [False, True]


def test_a_morning_withdrawn_without_another_is_told_though_nothing_is_known_now(club: SmallClub) -> None:
    morning(club, "05-03", "the whole course: closed", "m3")
    club.log("oh", "05-03", "correction", "corrects: m3", time="08:00")
    assert [(name, len(play)) for name, play in told(club, "05-03")] == [("m3", 4), ("oh", 0)]


def test_a_correction_of_work_is_told_with_the_job(club: SmallClub) -> None:
    morning(club, "06-01", "the whole course: open", "m1")
    club.done("spring", "06-01", "surfaces: green 1", name="done")
    club.log("oh", "06-01", "correction", "corrects: done", time="12:00")
    assert told(club, "06-01") == []


def limits_told(club: SmallClub, day: str) -> list[tuple[str, list[str]]]:
    return [
        (change.id, [limit_clause(held, Voice.english(moment("05-03").date())) for held in change.limits])
        for change in changes(club, day)
        if change.limits
    ]


def test_a_limit_is_told_when_it_is_new_another_or_lifted_and_not_each_morning(club: SmallClub) -> None:
    for name, day, said in (
        ("m3", "05-03", "trolleys: none today"),
        ("m4", "05-04", "trolleys: none today"),
        ("m5", "05-05", "trolleys: on paths only"),
        ("m6", "05-06", "frost delay: {what: wait, until: 9:30am}"),
        ("m7", "05-07", "frost delay: {what: wait, until: 9am}"),
        ("m8", "05-08", "preferred lies: {what: E-3, decided by: the Committee, until: 2027-05-20}"),
        ("m9", "05-09", "preferred lies: lifted"),
    ):
        club.log(name, day, "morning status", "play: {the whole course: open}", f"limits: {{{said}}}", time="07:00")
    assert limits_told(club, "05-31") == [
        ("m3", ["trolleys: none today"]),
        ("m5", ["trolleys: on paths only"]),
        ("m6", ["frost delay until 9:30am"]),
        ("m7", ["frost delay until 9am"]),
        ("m8", ["preferred lies until Thursday 20 May"]),
        ("m9", ["preferred lies lifted"]),
    ]


def test_a_withdrawn_note_on_the_course_is_told(club: SmallClub) -> None:
    club.log("n", "05-03", "note to members", time="07:00")
    club.log("oh", "05-03", "correction", "corrects: n", time="08:00")
    assert [(change.id, change.corrects) for change in changes(club, "05-03")] == [("oh", True)]


def test_done_said_again_to_open_a_green_is_told_as_course_status(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "06-01", surfaces="green 1", more="    follow up: 1 hour\n")
    club.log("started", "06-01", "work started", "job: spring", time="07:00")
    club.log("done", "06-01", "work done", "job: spring", time="10:00")
    club.log("opened", "06-01", "work done", "job: spring", "play: open with care", time="12:00")
    assert told(club, "06-01") == [("opened", {"green-1": "open with care"})]
