"""A mark changes with all that has a part in what was told by a moment, and with nothing else."""

from __future__ import annotations

import random
from collections.abc import Iterable
from dataclasses import replace
from datetime import date, datetime, timedelta
from hashlib import sha256
from typing import Any, Protocol

import pytest

from swardcast.language.house_phrases import with_house_phrases
from swardcast.outlook import known_digests
from swardcast.outlook.called_normal import CalledNormal
from swardcast.outlook.kept import Mark
from swardcast.outlook.memory import memory_of
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from swardcast.records.log import BackToNormal, Entry, EntryHead, Observation
from swardcast.records.plan import Withdrawal
from swardcast.records.standing import as_entered
from tests.conftest import DEMO_AS_OF

JOB = "practice-green-renovation-2027"
OTHER = "tees-returfing-2027"
UNTIL = DEMO_AS_OF.replace(month=8, day=28, hour=7, minute=0)
LATEST = date(2027, 9, 20)
LATER = UNTIL + timedelta(days=3)
EARLIER = UNTIL - timedelta(days=3)


def mark(records: ClubRecords, job: str = JOB) -> Mark:
    return memory_of(records, WeatherBook(records.club, records.weather)).digests.mark_of(job, UNTIL, LATEST)


def words(records: ClubRecords) -> Mark:
    return memory_of(records, WeatherBook(records.club, records.weather)).digests.mark_of_words(JOB, UNTIL)


def with_entry(
    records: ClubRecords, at: datetime, kind: type = Observation, job: str = OTHER, **more: Any
) -> ClubRecords:
    head = EntryHead(id=f"{at.date()}-new", at=at, true_from=at, by="", words="", file="log/new.md", line=1)
    if kind is Observation:
        more |= {"share_left": 0.1, "turf_cover": None, "green_speed_mm": None, "how": None, "readings": ()}
    entry: Entry = kind(head=head, job=job, surfaces=records.jobs[job].surfaces, **more)
    return replace(records, entries=as_entered((*records.entries, entry)))


def with_job(records: ClubRecords, name: str, **changed: Any) -> ClubRecords:
    return replace(records, jobs={**records.jobs, name: replace(records.jobs[name], **changed)})


def with_observed(records: ClubRecords, day: date) -> ClubRecords:
    weather = records.weather
    return replace(records, weather=replace(weather, observed_c={**weather.observed_c, day: 40.0}))


def with_fixture(records: ClubRecords, day: date) -> ClubRecords:
    fixture = Fixture(id="cup", series="cup", name="The Cup", first_day=day, last_day=day)
    return replace(records, fixtures=tuple(sorted((*records.fixtures, fixture), key=lambda one: one.first_day)))


def withdrawn(at: datetime) -> Withdrawal:
    return Withdrawal(at=at, because="It was a mistake", instead="", line=1)


def test_an_entry_of_any_job_counts_from_its_moment_on(demo_records: ClubRecords) -> None:
    assert mark(with_entry(demo_records, EARLIER)) != mark(demo_records)
    assert mark(with_entry(demo_records, LATER)) == mark(demo_records)


def test_a_withdrawal_counts_from_its_moment_on(demo_records: ClubRecords) -> None:
    assert mark(with_job(demo_records, OTHER, withdrawn=withdrawn(EARLIER))) != mark(demo_records)
    assert mark(with_job(demo_records, OTHER, withdrawn=withdrawn(LATER))) == mark(demo_records)
    one, other = (withdrawn(EARLIER - timedelta(days=days)) for days in (0, 1))
    assert mark(with_job(demo_records, OTHER, withdrawn=one)) != mark(with_job(demo_records, OTHER, withdrawn=other))


def test_a_job_counts_from_its_announcement_on(demo_records: ClubRecords) -> None:
    assert mark(with_job(demo_records, OTHER, title="Another title")) != mark(demo_records)
    assert mark(with_job(demo_records, "path-10-2027", title="Another title")) == mark(demo_records)


def test_the_order_of_announced_jobs_counts(demo_records: ClubRecords) -> None:
    jobs = list(demo_records.jobs.items())
    places = {name: place for place, (name, _) in enumerate(jobs)}
    one, other = places[JOB], places[OTHER]
    jobs[one], jobs[other] = jobs[other], jobs[one]
    assert mark(replace(demo_records, jobs=dict(jobs))) != mark(demo_records)


def test_a_day_of_weather_counts_from_the_next_day_on(demo_records: ClubRecords) -> None:
    assert mark(with_observed(demo_records, date(2027, 8, 27))) != mark(demo_records)
    assert mark(with_observed(demo_records, date(2027, 8, 28))) == mark(demo_records)


@pytest.mark.parametrize(("day", "counts"), [(date(2026, 12, 31), True), (date(2027, 1, 1), False)])
def test_a_past_year_counts_from_the_next_year_on(demo_records: ClubRecords, day: date, *, counts: bool) -> None:
    weather = replace(demo_records.weather, history_c={**demo_records.weather.history_c, day: 40.0})
    assert (mark(replace(demo_records, weather=weather)) != mark(demo_records)) is counts


def test_a_forecast_counts_from_its_issue_on(demo_records: ClubRecords) -> None:
    for at, counts in ((EARLIER, True), (LATER, False)):
        told = replace(demo_records.weather.forecasts[-1], issued_at=at)
        forecasts = tuple(sorted((*demo_records.weather.forecasts, told), key=lambda one: one.issued_at))
        records = replace(demo_records, weather=replace(demo_records.weather, forecasts=forecasts))
        assert (mark(records) != mark(demo_records)) is counts


def test_a_fixture_counts_as_far_as_a_date_was_held_against_it(demo_records: ClubRecords) -> None:
    assert mark(with_fixture(demo_records, LATEST - timedelta(days=1))) != mark(demo_records)
    assert mark(with_fixture(demo_records, LATEST)) == mark(demo_records)
    assert mark(with_fixture(demo_records, date(2027, 5, 1))) == mark(demo_records)  # over before the announcement
    assert words(with_fixture(demo_records, LATEST)) != words(demo_records)


def test_words_count_where_something_was_worded_and_for_no_story(demo_records: ClubRecords) -> None:
    phrases = with_house_phrases("en-GB", {"own.ftl": "news-note = a word from the course manager\n"})
    club = replace(demo_records.club, catalogue=phrases)
    assert mark(replace(demo_records, club=club)) == mark(demo_records)
    assert words(replace(demo_records, club=club)) != words(demo_records)


def long_ago(records: ClubRecords, surfaces: tuple[str, ...]) -> ClubRecords:
    """With work of two years before on some surfaces, so far away that nothing depends on it."""
    day = date(2025, 4, 1)
    job = replace(records.jobs[OTHER], id="long-ago", announced=day, starts=day, surfaces=surfaces)
    return replace(records, jobs={**records.jobs, "long-ago": job})


def test_a_later_entry_that_brings_old_work_near_counts(demo_records: ClubRecords) -> None:
    records = long_ago(demo_records, demo_records.jobs[JOB].surfaces)
    assert mark(with_entry(records, LATER, job="long-ago")) != mark(records)


def test_a_later_entry_that_brings_old_work_near_a_job_that_taught_counts(demo_records: ClubRecords) -> None:
    teacher = next(
        one.job
        for one in demo_records.entries
        if isinstance(one, BackToNormal) and one.head.at < EARLIER and one.job != JOB
    )
    apart = tuple(set(demo_records.jobs[teacher].surfaces) - set(demo_records.jobs[JOB].surfaces))[:1]
    records = long_ago(demo_records, apart)
    assert mark(with_entry(records, LATER, job="long-ago")) != mark(records)


def test_a_later_call_of_a_job_that_taught_counts_where_it_reaches_back(demo_records: ClubRecords) -> None:
    call = next(one for one in demo_records.entries if isinstance(one, BackToNormal) and one.head.at < EARLIER)
    later = with_entry(demo_records, LATER, BackToNormal, call.job)
    assert mark(later) != mark(demo_records)


class OneLesson(Protocol):
    """What the sum asks of each lesson."""

    called: CalledNormal

    def known_at(self, at: float) -> int: ...


class PlainSum:
    """Each lesson asked anew at each moment from its first call on, and added up."""

    def __init__(self, lessons: Iterable[OneLesson]) -> None:
        self.lessons = list(lessons)

    def known_at(self, at: float) -> bytes:
        total = sum(one.known_at(at) for one in self.lessons if one.called.first <= at)
        return sha256(str(total % 2**256).encode()).digest()


def entered_late(records: ClubRecords, draw: random.Random) -> ClubRecords:
    """With each entry made up to a month after it was true, a tenth of them never, and a second call months later."""
    call = next(one for one in records.entries if isinstance(one, BackToNormal))
    called_twice = with_entry(records, call.head.at + timedelta(days=100), BackToNormal, call.job)
    kept = [one for one in called_twice.entries if draw.random() < 0.9]
    late = (
        replace(one, head=replace(one.head, at=one.head.true_from + timedelta(minutes=draw.randrange(43_200))))
        for one in kept
    )
    return replace(long_ago(records, records.jobs[OTHER].surfaces[:1]), entries=as_entered(late))


@pytest.mark.parametrize("seed", range(3))
def test_lessons_added_up_step_by_step_give_the_sum_of_all_at_every_moment(
    demo_records: ClubRecords, monkeypatch: pytest.MonkeyPatch, seed: int
) -> None:
    records = entered_late(demo_records, random.Random(seed))  # noqa: S311 - an example, no secret
    moments = [one.head.at + timedelta(seconds=s) for one in records.entries for s in (-1, 0, 1)]

    def marks() -> list[Mark]:
        digests = memory_of(records, WeatherBook(records.club, records.weather)).digests
        return [digests.mark_of(JOB, at, None) for at in moments]

    step_by_step = marks()
    monkeypatch.setattr(known_digests, "_Lessons", PlainSum)
    assert step_by_step == marks()
