"""The moments at which a calendar has something to tell of a job: they come from the records, never from the clock."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import datetime, time, timedelta
from typing import Final

from swardcast.notices.calendar import Telling, closes_meanwhile
from swardcast.notices.calendar_age import age_of
from swardcast.notices.matter import Matter
from swardcast.outlook.job_ranges import without_called_off
from swardcast.outlook.ledger import job_facts
from swardcast.outlook.memory import assess_jobs, job_stood, records_near
from swardcast.outlook.play import OPEN, statements
from swardcast.outlook.states import JobOutlook, Work
from swardcast.outlook.story import JobChange, JobStory
from swardcast.outlook.weather_book import WeatherBook
from swardcast.outlook.work_dates import opened_surfaces
from swardcast.records.folder import ClubRecords
from swardcast.records.standing import standing_entries

__all__ = ["NO_MORE", "tellings"]

NO_MORE: Final = (Work.BACK_TO_NORMAL, Work.CALLED_OFF)
"""Work of which nothing is told any more unless its notice is revised."""

_FOLLOWED: Final = timedelta(days=120)
"""How long work that goes on is followed since what was last told; longer work is told again: judgement."""


def tellings(story: JobStory, records: ClubRecords, as_of: datetime, book: WeatherBook) -> Iterator[Telling]:
    """Find the revisions of the notice, and between them what can be seen without one.

    That is work overdue, surfaces opened or closed again, work whose day went by and which goes on, and healing whose
    day went by. The last one is how the job stands at the last moment that counts for its age, so that the calendar
    says what the notice says, whatever else time brings.

    Args:
        story: the job's changes up to the moment.
        records: the club's records.
        as_of: the moment, aware.
        book: the club's weather.

    Yields:
        Moments, the first before.
    """
    near = records_near(records, story.job.id, book)
    following = (*story.changes[1:], None)
    for number, (change, after) in enumerate(zip(story.changes, following, strict=True), start=1):
        until = after.at if after is not None else as_of + timedelta.resolution
        told = JobStory(job=story.job, changes=story.changes[:number])
        yield _telling(told, change.outlook, near, change.at, is_revision=True)
        opened = frozenset(_openings(change, near, until))
        moments = {*_goes_on(change, records, until), *_healed_from(change, records), *opened}
        for at in sorted(at for at in {*moments, *_overdue_from(change, records)} if change.at < at < until):
            # Of work that is overdue the days of the plan stand, and that they are over.
            is_overdue = at not in moments
            stood = change.outlook if is_overdue else job_stood(records, story.job.id, at, book)
            yield _telling(told, stood, near, at, is_by_clock=at not in opened)
    last, now = story.changes[-1], age_of(story.job, records, as_of, book).at
    if last.outlook.work not in NO_MORE and last.at < now:
        # Of work that is overdue the days of the plan stand, and that they are over.
        is_planned = last.outlook.work is Work.PLANNED
        stood = last.outlook if is_planned else assess_jobs(records, now, book, only=story.job.id)[story.job.id]
        yield _telling(story, stood, near, now, is_by_clock=True)


def _goes_on(change: JobChange, records: ClubRecords, until: datetime) -> Iterator[datetime]:
    """The first moments of days on which begun work is still not entered as done, though it was told for days before.

    The notice, too, then tells it for a later day, and makes no noise about it.
    """
    left = [work.finish.likely for work in change.outlook.surfaces if work.done_at is None]
    told = [day for day in left if day is not None]
    if change.outlook.work is not Work.UNDER_WAY or change.outlook.job.lasts or not told:
        return
    zone = records.club.time_zone
    last = min(until.astimezone(zone).date(), change.at.astimezone(zone).date() + _FOLLOWED)
    for number in range(1, (last - min(told)).days + 1):
        yield datetime.combine(min(told) + timedelta(days=number), time(0), tzinfo=zone)


def _telling(
    told: JobStory,
    stood: JobOutlook,
    records: ClubRecords,
    at: datetime,
    *,
    is_revision: bool = False,
    is_by_clock: bool = False,
) -> Telling:
    known, local = records.known_at(at), at.astimezone(records.club.time_zone)
    matter = Matter(
        outlook=without_called_off(stood),
        story=told,
        records=known,
        limits=(),
        holes_out_of_play=frozenset(),  # no event tells how holes are played
        as_of=local,
        voice=records.club.voice(local.date()),
    )
    return Telling(matter=matter, opened=_opened(matter), is_revision=is_revision, is_by_clock=is_by_clock)


def _opened(matter: Matter) -> Mapping[str, datetime]:
    done = any(work.done_at is not None for work in matter.outlook.surfaces)
    if not done or not closes_meanwhile(matter):
        return {}
    entries = standing_entries(matter.records.entries)
    opened = opened_surfaces(job_facts(matter.job, entries), matter.records, entries)
    return {name: at.astimezone(matter.records.club.time_zone) for name, at in opened.items()}


def _overdue_from(change: JobChange, records: ClubRecords) -> Iterator[datetime]:
    """The first moment of the day after the planned one: if nothing was entered by then, its dates hold no more."""
    if change.outlook.work is Work.PLANNED:
        day = change.outlook.starts + timedelta(days=1)
        yield datetime.combine(day, time(0), tzinfo=records.club.time_zone)


def _healed_from(change: JobChange, records: ClubRecords) -> Iterator[datetime]:
    """The first moment of the day after the one to allow until: its surfaces should be back to normal by then."""
    last = change.news.back_to_normal.allow_until
    if change.outlook.work is Work.HEALING and last is not None:
        yield datetime.combine(last + timedelta(days=1), time(0), tzinfo=records.club.time_zone)


def _openings(change: JobChange, records: ClubRecords, until: datetime) -> Iterator[datetime]:
    """Entries that open finished surfaces, a morning entry as a rule, or take them out of play again."""
    finished = {work.surface.id for work in change.outlook.surfaces if work.done_at is not None}
    is_open: dict[str, bool] = {}
    if change.outlook.work in NO_MORE:
        return
    for entry in records.entries if finished else ():
        said = {name: play in OPEN for one in statements(records, [entry]) for name, play in one.play.items()}
        news = {name for name, opens in said.items() if name in finished and opens is not is_open.get(name)}
        is_open |= said
        if news and change.at < entry.head.at < until:
            yield entry.head.at
