"""Work that nobody planned gets the dates that its notice would tell if it were planned."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime
from pathlib import Path

import pytest

from swardcast.outlook.memory import assess_jobs
from swardcast.outlook.states import JobOutlook, Milestone
from swardcast.outlook.weather_book import WeatherBook
from swardcast.outlook.what_if import assess_each_alone
from swardcast.records.folder import ClubRecords
from tests.outlook.small_club import HOLES, HOLES_AND_SAND, SmallClub, moment

PLANNED_THEN = [  # moments at which the job is announced and nothing of it was entered
    ("2027-04-20 08:00", "greens-solid-tining-2027"),
    ("2027-05-03 08:00", "tees-solid-tining-2027"),
    ("2027-06-05 08:00", "fairways-tining-2027"),
    ("2027-06-10 08:00", "greens-verticutting-2027"),
    ("2027-06-18 08:00", "practice-green-solid-tining-2027"),
    ("2027-08-12 08:00", "practice-green-renovation-2027"),
    ("2027-05-20 08:00", "greens-renovation-2027"),
    ("2027-08-18 09:30", "greens-renovation-2027"),
    ("2027-09-14 09:30", "greens-light-sanding-2027"),
    ("2027-09-14 09:30", "fairways-deep-tining-2027"),
]


def _told(outlook: JobOutlook) -> dict[Milestone, tuple[date | None, ...]]:
    return {name: (given.early, given.likely, given.allow_until) for name, given in outlook.dates.items()}


@pytest.mark.parametrize(("at", "job"), PLANNED_THEN)
def test_a_job_of_the_demo_asked_about_has_the_dates_of_its_notice(
    demo_records: ClubRecords, at: str, job: str
) -> None:
    as_of = datetime.fromisoformat(at).replace(tzinfo=demo_records.club.time_zone)
    planned = demo_records.jobs[job]
    book = WeatherBook(demo_records.club, demo_records.weather)
    (asked,) = assess_each_alone(
        demo_records, as_of, book, [replace(planned, id="asked", announced=as_of.date())], instead_of=job
    )
    notice = assess_jobs(demo_records, as_of, WeatherBook(demo_records.club, demo_records.weather))[job]
    assert _told(asked) == _told(notice)
    assert [work.dates for work in asked.surfaces] == [work.dates for work in notice.surfaces]


def test_at_least_one_of_them_comes_on_top_of_what_an_earlier_job_left(demo_records: ClubRecords) -> None:
    """Or the test above would say nothing about earlier work."""
    as_of = datetime.fromisoformat("2027-09-14 09:30").replace(tzinfo=demo_records.club.time_zone)
    job = demo_records.jobs["greens-light-sanding-2027"]
    book = WeatherBook(demo_records.club, demo_records.weather)
    (asked,) = assess_each_alone(demo_records, as_of, book, [replace(job, id="asked")], instead_of=job.id)
    assert any(work.recovery is not None and work.recovery.before > 0 for work in asked.surfaces)


@pytest.fixture
def small(tmp_path: Path) -> SmallClub:
    club = SmallClub(tmp_path / "club")
    club.job("holes", "06-14", *HOLES_AND_SAND)
    return club


def _asked(club: SmallClub, *starts: str, instead_of: str = "", operations: int = 2) -> tuple[JobOutlook, ...]:
    records = club.records()
    like = records.jobs["holes"]
    jobs = [
        replace(
            like,
            id=f"asked-{number}",
            starts=date.fromisoformat(f"2027-{day}"),
            operations=like.operations[:operations],
        )
        for number, day in enumerate(starts)
    ]
    book = WeatherBook(records.club, records.weather)
    return assess_each_alone(records, moment("06-07"), book, jobs, instead_of=instead_of)


def test_jobs_asked_about_together_know_nothing_of_each_other(small: SmallClub) -> None:
    """Two on the same day, then one a week later: the later one is as it is alone."""
    together = _asked(small, "06-21", "06-21", "06-28", instead_of="holes")
    (alone,) = _asked(small, "06-28", instead_of="holes")
    assert _told(together[0]) == _told(together[1])
    assert _told(together[2]) == _told(alone)


def test_planned_work_before_it_counts_and_later_work_does_not(small: SmallClub) -> None:
    """The planned holes of 14 June are half healed on the 18th; work of 10 June, before them, is not touched by them."""
    on_top, before = _asked(small, "06-18", "06-10")
    (alone,) = _asked(small, "06-18", instead_of="holes")
    (alone_before,) = _asked(small, "06-10", instead_of="holes")
    assert on_top.surfaces[0].recovery is not None
    assert on_top.surfaces[0].recovery.before > 0.01
    later, sooner = on_top.dates[Milestone.HOLES_CLOSED].likely, alone.dates[Milestone.HOLES_CLOSED].likely
    assert later is not None
    assert sooner is not None
    assert later > sooner
    assert _told(before) == _told(alone_before)


def test_a_job_that_members_have_not_heard_of_counts_for_the_manager(tmp_path: Path) -> None:
    club = SmallClub(tmp_path / "club")
    club.job("holes", "06-14", *HOLES_AND_SAND)
    club.job("secret", "06-16", HOLES, announced="06-12")
    (asked,) = _asked(club, "06-18", instead_of="holes")
    assert asked.surfaces[0].recovery is not None
    assert asked.surfaces[0].recovery.before > 0


def test_a_withdrawn_job_does_not_count(tmp_path: Path) -> None:
    club = SmallClub(tmp_path / "club")
    club.job("holes", "06-14", *HOLES_AND_SAND)
    club.job("gone", "06-16", HOLES, more="    withdrawn: {at: 2027-06-01 09:00, because: a mistake}\n")
    (asked,) = _asked(club, "06-18", instead_of="holes")
    assert asked.surfaces[0].recovery is not None
    assert asked.surfaces[0].recovery.before == 0


def test_without_past_years_there_are_no_dates_and_nothing_fails(tmp_path: Path) -> None:
    club = SmallClub(tmp_path / "club")
    club.job("holes", "06-14", *HOLES_AND_SAND)
    for history in (club.folder / "weather" / "history").iterdir():
        history.unlink()
    (asked,) = _asked(club, "06-21", instead_of="holes")
    assert asked.dates[Milestone.BACK_TO_NORMAL].likely is None
    assert asked.surfaces[0].sums.day_zero > 0
