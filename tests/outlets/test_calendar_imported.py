"""The calendar of every evening of the demo, imported one over the other: events change, none doubles, none is lost."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from itertools import pairwise

import pytest

from swardcast.compose import Bulletin
from swardcast.notices.calendar_age import age_of
from swardcast.notices.calendar_story import CalendarEvent, calendar_of
from swardcast.outlets.calendar import calendar_artifact
from swardcast.outlook.states import Work
from swardcast.outlook.story import JobStory, tell_story
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Correction
from tests.notices.calendar_events import as_told
from tests.outlets.calendar_client import Client, Kept, kept_in, unlike_a_later_file

FIRST, LAST = date(2027, 4, 19), date(2027, 12, 24)  # the first announcement; work of the autumn never entered
CHECKED = ("2027-08-24 18:00", "2027-09-14 09:30")
"""Moments that are composed whole as well, so that the shorter way below is known to give the same."""


def _until(story: JobStory, as_of: datetime) -> JobStory | None:
    changes = tuple(change for change in story.changes if change.at <= as_of)
    return replace(story, changes=changes) if changes else None


def _days_with_something_new(story: JobStory, records: ClubRecords) -> set[date]:
    """Days of a change and after it, of an entry that names a surface of the job, after a planned first or a last day."""
    found = {change.at.astimezone(records.club.time_zone).date() for change in story.changes}
    found |= {day + timedelta(days=1) for day in found}
    told = [change.news.back_to_normal.allow_until for change in story.changes]
    found |= {day + timedelta(days=1) for day in told if day is not None}
    found |= {change.outlook.starts + timedelta(days=1) for change in story.changes}
    for change, after in pairwise((*story.changes, None)):  # each day of work that goes on
        ends = after.at if after is not None else datetime.combine(LAST, time(18), tzinfo=records.club.time_zone)
        if change is not None and change.outlook.work is Work.UNDER_WAY:
            first = change.at.astimezone(records.club.time_zone).date()
            found |= {first + timedelta(days=number) for number in range((ends.date() - first).days + 1)}
    surfaces = set(story.job.surfaces)
    for entry in records.entries:
        named = getattr(entry, "surfaces", None) or [name for name, _ in getattr(entry, "play", None) or ()]
        if not surfaces.isdisjoint(named) or isinstance(entry, Correction):
            found.add(entry.head.at.date())
    return found


@pytest.fixture(scope="module")
def stories(demo_records: ClubRecords) -> list[JobStory]:
    """Every job's story up to the last day; that of any day before is its beginning (test_every_day_of_the_demo)."""
    end = datetime.combine(LAST, time(18), tzinfo=demo_records.club.time_zone)
    book = WeatherBook(demo_records.club, demo_records.weather)
    return [tell_story(demo_records, job, end, book) for job in demo_records.jobs.values()]


def _calendars(stories: list[JobStory], records: ClubRecords) -> Iterator[tuple[datetime, tuple[CalendarEvent, ...]]]:
    """Each evening's events; a job without anything new stays as it was."""
    days = {story.job.id: _days_with_something_new(story, records) for story in stories}
    held: dict[str, tuple[CalendarEvent, ...]] = {}
    book = WeatherBook(records.club, records.weather)
    for number in range((LAST - FIRST).days + 1):
        day = FIRST + timedelta(days=number)
        as_of = datetime.combine(day, time(18), tzinfo=records.club.time_zone)
        for story in stories:
            told = _until(story, as_of) if day in days[story.job.id] else None
            if told is not None:
                held[story.job.id] = calendar_of(told, records, as_of, book)
            elif story.job.id in held:
                age = age_of(story.job, records, as_of, book)
                older = held[story.job.id]
                held[story.job.id] = tuple(replace(one, sequence=age.count, changed_at=age.at) for one in older)
        yield as_of, tuple(event for story in stories for event in held.get(story.job.id, ()))


@dataclass(frozen=True)
class Evening:
    """A file, as it was and as it is read."""

    as_of: datetime
    data: bytes
    events: tuple[Kept, ...]


@pytest.fixture(scope="module")
def evenings(
    stories: list[JobStory], demo_records: ClubRecords, demo_bulletin_at: Callable[[str], Bulletin]
) -> list[Evening]:
    """The file of each evening on which it says another thing than the evening before."""
    whole = demo_bulletin_at(CHECKED[0])
    files: list[Evening] = []
    before: tuple[CalendarEvent, ...] = ()
    for as_of, events in _calendars(stories, demo_records):
        told = tuple(as_told(event) for event in events)
        if told != before:
            data = calendar_artifact(replace(whole, as_of=as_of, calendar=events)).data
            files.append(Evening(as_of, data, kept_in(data)))
        before = told
    return files


@pytest.mark.parametrize("moment", CHECKED)
def test_the_events_are_those_of_the_site(
    stories: list[JobStory],
    demo_records: ClubRecords,
    demo_bulletin_at: Callable[[str], Bulletin],
    moment: str,
) -> None:
    bulletin = demo_bulletin_at(moment)
    told = [_until(story, bulletin.as_of) for story in stories]
    book = WeatherBook(demo_records.club, demo_records.weather)
    events = [event for story in told if story for event in calendar_of(story, demo_records, bulletin.as_of, book)]
    assert tuple(events) == bulletin.calendar


def test_a_program_that_imports_each_evening_shows_what_the_last_file_says(evenings: list[Evening]) -> None:
    """So no event changed without becoming newer: the program would have kept the older one."""
    client = Client()
    for evening in evenings:
        client.take(evening.events)
        assert set(client.events.values()) == set(evening.events), evening.as_of
    assert len(evenings) > 40
    assert len(client.events) > 60


def test_a_program_that_missed_files_shows_the_same(evenings: list[Evening]) -> None:
    often, seldom = Client(), Client()
    for evening in evenings:
        often.take(evening.events)
    for evening in (*evenings[::7], evenings[-1]):
        seldom.take(evening.events)
    assert often.events == seldom.events


def test_an_older_file_that_is_imported_again_changes_nothing(evenings: list[Evening]) -> None:
    client = Client()
    client.take(evenings[-1].events)
    held = dict(client.events)
    for evening in evenings:
        client.take(evening.events)
    assert client.events == held


def test_no_event_is_dropped_grows_older_or_changes_without_becoming_newer(evenings: list[Evening]) -> None:
    changed = 0
    for before, now in pairwise(evenings):
        assert list(unlike_a_later_file(before.events, now.events, now.as_of.date())) == [], now.as_of
        assert all(event.stamp <= now.as_of for event in now.events)
        changed += len(set(now.events) - set(before.events))
    assert changed > 100


def test_no_event_is_shown_twice(evenings: list[Evening]) -> None:
    """Two live events of a job never have the same words, also after it was moved, held up and corrected."""
    for evening in evenings:
        live = Counter((event.uid.partition(".")[0], event.summary) for event in evening.events if event.is_live)
        assert [words for words, count in live.items() if count > 1] == [], evening.as_of


def test_cancelled_events_say_so_in_words(evenings: list[Evening]) -> None:
    cancelled = [event for event in evenings[-1].events if not event.is_live]
    assert cancelled
    said = ("Called off: ", "This no longer holds: ", "Moved: ")
    unsaid = [event.summary for event in cancelled if not event.summary.startswith(said)]
    assert all(summary.endswith("(planned, no start reported)") for summary in unsaid)  # nobody took it back
