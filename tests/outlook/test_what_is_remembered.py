"""What is remembered from one moment to another never tells: a fresh mind says the same."""

from __future__ import annotations

import random
from datetime import date, datetime, timedelta

import pytest

from swardcast.outlook.learnt import Learnt
from swardcast.outlook.log_clock import LogClock
from swardcast.outlook.memory import assess_jobs
from swardcast.outlook.states import JobOutlook, Lesson
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.club import Grass, SurfaceKind
from swardcast.records.folder import ClubRecords


def _told(job: JobOutlook) -> list[object]:
    recoveries = [(one.recovery.layers, one.recovery.pace) for one in job.surfaces if one.recovery is not None]
    surfaces = [(one.work, one.dates, one.finish, one.hours, one.reasons) for one in job.surfaces]
    return [job.work, job.starts, job.dates, surfaces, recoveries]


@pytest.mark.parametrize("seed", range(2))
def test_a_moment_after_many_others_is_told_as_if_it_were_the_first(demo_records: ClubRecords, seed: int) -> None:
    """Moments just before and after entries, and nights between, in any order, with and without an entry's file."""
    draw = random.Random(seed)  # noqa: S311 - an example, no secret
    entries = [entry for entry in demo_records.entries if getattr(entry, "job", "")]
    asked = []
    for entry in draw.sample(entries, 6):
        later = timedelta(minutes=draw.choice((-1, 0, 1, 600, 60 * 24 * 9)))
        without = draw.choice(("", "", entry.head.file))
        asked.append((getattr(entry, "job", ""), entry.head.at + later, without))
    book = WeatherBook(demo_records.club, demo_records.weather)
    for _ in range(2):  # the second time all of it is remembered
        for job, at, without in draw.sample(asked, len(asked)):
            found = assess_jobs(demo_records, at, book, only=job, without=without)
            fresh = WeatherBook(demo_records.club, demo_records.weather)
            first = assess_jobs(demo_records, at, fresh, only=job, without=without)
            assert _told(found[job]) == _told(first[job]), (job, at, without)


def test_two_moments_are_alike_when_nothing_became_known_between_them(demo_records: ClubRecords) -> None:
    clock = LogClock(demo_records)
    at = sorted(entry.head.at for entry in demo_records.entries)[len(demo_records.entries) // 2]
    before, after = at - timedelta(seconds=1), at + timedelta(seconds=1)
    assert clock.known(at) == clock.known(after) != clock.known(before)
    assert demo_records.known_at(at) == demo_records.known_at(after) != demo_records.known_at(before)


def test_from_the_last_entry_and_announcement_on_all_is_known(demo_records: ClubRecords) -> None:
    """The last of the demo's jobs is announced on 1 September, its last entry is made on the 20th at 15:40."""
    clock, zone = LogClock(demo_records), demo_records.club.time_zone
    since = datetime(2027, 9, 20, 15, 40, tzinfo=zone)
    assert clock.known(since) == clock.known(since + timedelta(days=900)) != clock.known(since - timedelta(minutes=1))


def _lesson(job: str, day: int, log_pace: float = 0.1) -> Lesson:
    return Lesson(
        job=job,
        title=job,
        source=f"{job}-normal",
        normal_on=date(2027, 5, day),
        days_taken=20.0,
        days_computed=21.0,
        log_pace=log_pace,
    )


def test_work_learns_from_what_was_healed_before_it_on_surfaces_of_its_kind() -> None:
    green, cool = SurfaceKind.GREEN, Grass.COOL_SEASON
    early, late = _lesson("spring", 3), _lesson("may", 9)
    tee = (SurfaceKind.TEE, cool, _lesson("tees", 2))
    learnt = Learnt(((green, cool, early), tee, (green, cool, late)))
    assert learnt.before(green, cool, date(2027, 5, 9)).lessons == (early,)
    assert learnt.before(green, cool, date(2027, 5, 10)).lessons == (early, late)
    assert learnt.before(green, Grass.WARM_SEASON, date(2027, 5, 10)).lessons == ()


def test_the_same_lessons_are_one_prior_however_much_else_was_learnt() -> None:
    green, cool, day = SurfaceKind.GREEN, Grass.COOL_SEASON, date(2027, 6, 1)
    lesson = (green, cool, _lesson("spring", 3))
    learnt = Learnt((lesson,))
    later = Learnt((lesson, (SurfaceKind.TEE, cool, _lesson("tees", 2))), learnt.priors)
    assert later.before(green, cool, day) is learnt.before(green, cool, day)
