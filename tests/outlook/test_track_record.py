"""Promises are recomputed from what was known on the day; nothing entered later improves them."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from swardcast.outlook.track_record import Kept, track_record
from swardcast.outlook.weather_book import WeatherBook
from tests.outlook.small_club import SmallClub, moment

LATER = moment("07-01")


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    """Done on 1 April; computed by hand in test_lessons.py: 10.36 growth days and 13 days, so day 24; normal on day 34."""
    small = SmallClub(tmp_path)
    small.job("spring", "04-01")
    small.done("spring", "04-01")
    small.normal("spring", "05-05")
    return small


def _kept(club: SmallClub, as_of: str = "07-01") -> tuple[Kept, ...]:
    records = club.records()
    return track_record(records, moment(as_of), WeatherBook(records.club, records.weather))


def test_a_job_is_judged_by_the_dates_of_its_own_day(club: SmallClub) -> None:
    (one,) = _kept(club)
    assert (one.done_on, one.promised.likely, one.normal_on) == (date(2027, 4, 1), date(2027, 4, 25), date(2027, 5, 5))
    assert one.late_days == 10
    assert not one.is_inside  # by hand: 23.36 x exp(1.2816 x 0.24) = 31.8 days, 3 May at the latest


def test_a_correction_entered_after_the_end_does_not_turn_the_promise_into_the_end(club: SmallClub) -> None:
    club.log(
        "again", "05-20", "correction", "corrects: spring-done", "instead:", "  at: 2027-04-01 09:00",
        "  kind: work done", "  job: spring",
    )  # fmt: skip
    (one,) = _kept(club)
    assert (one.promised.likely, one.promised.is_fact, one.late_days) == (date(2027, 4, 25), False, 10)


def test_starting_the_work_anew_does_not_take_a_miss_off_the_record(club: SmallClub) -> None:
    club.log("anew", "05-20", "work started", "job: spring")
    (one,) = _kept(club)
    assert (one.late_days, one.is_inside) == (10, False)


def test_what_was_seen_after_the_work_does_not_change_what_was_promised(club: SmallClub) -> None:
    before = _kept(club)
    club.log("look", "04-06", "observation", "job: spring", "disruption left: 95 %", "how: counted")
    assert _kept(club) == before


def test_a_range_of_somebodys_experience_is_not_judged(club: SmallClub) -> None:
    more = "    normal after: {from: 2 to 4 weeks, source: the course manager's experience}\n"
    club.job("other", "05-10", more=more)
    club.done("other", "05-10")
    assert [one.job.id for one in _kept(club)] == ["spring"]


def test_a_job_whose_surfaces_are_not_all_normal_waits_for_the_last(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "04-01")
    club.done("spring", "04-01")
    club.normal("spring", "04-20", "surfaces: green 1", name="first")
    (one,) = _kept(club)
    assert (one.normal_on, one.is_judged) == (None, False)
    club.normal("spring", "04-28", "surfaces: green 2", name="second")
    (one,) = _kept(club)
    assert (one.normal_on, one.is_inside) == (date(2027, 4, 28), True)
