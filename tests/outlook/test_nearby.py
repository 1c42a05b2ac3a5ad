"""What one job can depend on: records cut down to that give the same outlook as all of them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from swardcast.compose import Bulletin
from swardcast.outlook.bookkeeping import Ledger
from swardcast.outlook.jobs import JobAssessor
from swardcast.outlook.known import Known
from swardcast.outlook.memory import as_members_see, assess_jobs, course_known
from swardcast.outlook.nearby import Nearby
from swardcast.outlook.weather_book import WeatherBook
from swardcast.reading.folder import read_club_folder
from swardcast.records.folder import ClubRecords
from swardcast.records.privacy import for_members
from tests.conftest import DEMO_AS_OF
from tests.many_years import demo_of_years

JOB = "greens-renovation-2027"


@pytest.fixture(scope="module")
def old_club(tmp_path_factory: pytest.TempPathFactory) -> ClubRecords:
    """The demo after four more years: 110 jobs."""
    return read_club_folder(demo_of_years(tmp_path_factory.mktemp("years") / "club", notices=110))


def test_what_is_near_a_job_does_not_grow_with_the_years(
    old_club: ClubRecords, demo_records: ClubRecords, tmp_path: Path
) -> None:
    young, old = Nearby(demo_records).of(JOB), Nearby(old_club).of(JOB)
    years = {name.rpartition("-c")[2] if "-c" in name else "0" for name in old.jobs}
    assert years <= {"0", "1", "2"}  # its own year, the one before, and the winter before that
    assert set(young.jobs) < set(old.jobs)
    assert len(old.jobs) <= 2.5 * len(young.jobs)
    older = Nearby(read_club_folder(demo_of_years(tmp_path / "older", notices=150))).of(JOB)
    assert (len(older.jobs), len(older.entries)) == (len(old.jobs), len(old.entries))


def test_all_that_shares_a_surface_in_its_time_is_near(old_club: ClubRecords) -> None:
    near = Nearby(old_club).of(JOB)
    job = old_club.jobs[JOB]
    first, last = job.announced - timedelta(days=400), job.starts
    for other in old_club.jobs.values():
        if set(other.surfaces) & set(job.surfaces) and first <= other.starts <= last:
            assert other.id in near.jobs
    own = {entry.head.id for entry in old_club.entries if getattr(entry, "job", "") == JOB}
    corrected = {entry.head.id for entry in old_club.entries if getattr(entry, "corrects", "") in own}
    assert corrected
    assert own | corrected <= {entry.head.id for entry in near.entries}


@pytest.mark.parametrize("day", ["2027-07-16 18:00", "2027-08-25 18:00", "2027-09-14 09:30"])
def test_a_job_stands_near_others_as_it_stands_among_all(old_club: ClubRecords, day: str) -> None:
    """The dates of each job of the demo's year, cut down against all 110 jobs assessed together."""
    as_of = datetime.fromisoformat(day).replace(tzinfo=DEMO_AS_OF.tzinfo)
    book = WeatherBook(old_club.club, old_club.weather)
    known = old_club.known_at(as_of)
    course = course_known(known, as_of, book)
    ledger = Ledger(known.club, known.surfaces)
    everything = Known.of(known, ledger)
    together = JobAssessor(known=everything, as_of=as_of, view=book.at(as_of), course=course, ledger=ledger).assess()
    compared = 0
    for name, job in together.items():
        if "-c" in name:
            continue
        alone = assess_jobs(old_club, as_of, book, only=name)[name]
        assert (alone.work, alone.dates, alone.starts) == (job.work, job.dates, job.starts), name
        mine, theirs = ([(one.work, one.dates, one.reasons) for one in each.surfaces] for each in (alone, job))
        assert mine == theirs, name
        compared += 1
    assert compared >= 6


def test_years_before_change_nothing_of_a_story_but_what_they_teach(
    old_club: ClubRecords, demo_records: ClubRecords, demo_bulletin_at: Callable[[str], Bulletin]
) -> None:
    """Work that heals nothing learns nothing: its news are those of the demo without any year before."""
    from swardcast.outlook.story import tell_story

    book = WeatherBook(old_club.club, old_club.weather)
    bulletin = demo_bulletin_at("2027-09-14 09:30")
    for name in ("bunkers-resanding-2027", "path-10-2027", "tees-returfing-2027"):
        story = tell_story(old_club, old_club.jobs[name], DEMO_AS_OF, book)
        before = bulletin.stories[name]
        assert [(one.id, one.at, one.news) for one in story.changes] == [(o.id, o.at, o.news) for o in before.changes]


def test_a_file_left_out_is_left_out_of_what_is_near(demo_records: ClubRecords) -> None:
    book = WeatherBook(demo_records.club, demo_records.weather)
    held = next(entry for entry in demo_records.entries if "held" in entry.head.id)
    fewer = replace(demo_records, entries=tuple(one for one in demo_records.entries if one is not held))
    at = held.head.at
    left_out = assess_jobs(demo_records, at, book, only=JOB, without=held.head.file)[JOB]
    never_there = assess_jobs(fewer, at, WeatherBook(demo_records.club, demo_records.weather), only=JOB)[JOB]
    assert (left_out.work, left_out.dates) == (never_there.work, never_there.dates)
    assert assess_jobs(demo_records, at, book, only=JOB)[JOB].work is not left_out.work


def test_what_members_see_is_taken_out_once_for_all_moments(demo_records: ClubRecords) -> None:
    """So that a later moment finds what an earlier one has worked out."""
    book = WeatherBook(demo_records.club, demo_records.weather)
    seen = as_members_see(demo_records, book)
    assert seen == for_members(demo_records)
    assert as_members_see(demo_records, book) is seen


def test_the_club_of_many_years_has_as_many_notices_as_asked_for(tmp_path: Path) -> None:
    assert len(read_club_folder(demo_of_years(tmp_path / "club", notices=60)).jobs) == 60
