"""Play at many past moments, from one log in order: the same as from the records of each moment, read anew."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from swardcast.outlook.limits import LimitInForce, limits_in_force
from swardcast.outlook.past_play import PastPlay
from swardcast.outlook.play import latest_statements, statements
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Play, Withdrawal
from swardcast.records.standing import standing_entries
from tests.outlook.small_club import SmallClub, moment


def read_anew(records: ClubRecords, at: datetime) -> tuple[tuple[LimitInForce, ...], dict[str, Play]]:
    """Slow, and as the course status does it."""
    known = records.known_at(at)
    standing = standing_entries(known.entries)
    said = latest_statements(statements(known, standing))
    return limits_in_force(standing, at), {name: play for name, (play, _) in said.items()}


def looked_up(records: ClubRecords, past: PastPlay, at: datetime) -> tuple[tuple[LimitInForce, ...], dict[str, Play]]:
    return past.limits_at(at), past.plays_at(records.known_at(at), at)


def around_each_entry(records: ClubRecords) -> list[datetime]:
    steps = (timedelta(minutes=-1), timedelta(0), timedelta(hours=5))
    return sorted({entry.head.at + step for entry in records.entries for step in steps})


def test_at_every_moment_of_the_demo(demo_records: ClubRecords) -> None:
    past, moments = PastPlay(demo_records), around_each_entry(demo_records)
    assert len(moments) > 150
    for at in moments:
        assert looked_up(demo_records, past, at) == read_anew(demo_records, at)


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    club = SmallClub(tmp_path)
    club.job("spring", "06-01", surfaces="greens 1-3", announced="03-01")
    club.log("2027-05-03-morning", "05-03", "morning status", "play: {the whole course: open}", time="07:00")
    return club


def test_an_entry_that_was_taken_back_counts_until_then(club: SmallClub) -> None:
    club.log("2027-05-04-morning", "05-04", "morning status", "play: {green 1: closed}", time="07:00")
    club.log("2027-05-04-sorry", "05-04", "correction", "corrects: 2027-05-04-morning", time="09:00")
    records = club.records()
    past = PastPlay(records)
    for time, play in (("06:59", Play.OPEN), ("07:00", Play.CLOSED), ("08:59", Play.CLOSED), ("09:00", Play.OPEN)):
        at = moment("05-04", time)
        assert past.plays_at(records.known_at(at), at)["green-1"] is play
        assert looked_up(records, past, at) == read_anew(records, at)


def test_work_of_a_job_counts_until_the_job_is_withdrawn(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "05-04", surfaces="greens 1-3", announced="03-01")
    club.log("2027-05-03-morning", "05-03", "morning status", "play: {the whole course: open}", time="07:00")
    club.log("2027-05-04-started", "05-04", "work started", "job: spring", "surfaces: greens 1-3", time="08:00")
    records = club.records()
    withdrawal = Withdrawal(at=moment("05-05", "10:00"), because="entered twice", instead="", line=0)
    records = replace(records, jobs={"spring": replace(records.jobs["spring"], withdrawn=withdrawal)})
    past = PastPlay(records)
    plays = {}
    for day, time in (("05-04", "07:59"), ("05-04", "08:00"), ("05-05", "09:59"), ("05-05", "10:00")):
        at = moment(day, time)
        plays[day, time] = past.plays_at(records.known_at(at), at)["green-2"]
        assert looked_up(records, past, at) == read_anew(records, at)
    assert list(plays.values()) == [Play.OPEN, Play.CLOSED, Play.CLOSED, Play.OPEN]
