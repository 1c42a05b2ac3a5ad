"""Records and a moment -> the bulletin: everything that the site and its feeds say. Pure."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.bulletins import FeedItem, items_of_story, news_that_stands
from swardcast.notices.calendar_story import (
    CalendarEvent,
    calendar_of,
    calendar_of_withdrawn,
    may_still_be_there,
)
from swardcast.notices.compose_notice import compose_notice
from swardcast.notices.course_news import items_of_notes, items_of_play
from swardcast.notices.growth_picture import GrowthPicture, growth_picture
from swardcast.notices.healing_picture import HealingPicture, healing_picture
from swardcast.notices.matter import Matter
from swardcast.notices.notice import Notice
from swardcast.notices.oversights import oversights
from swardcast.notices.play import holes_out_of_play
from swardcast.notices.promises_picture import PromisesPicture, promises_picture
from swardcast.notices.reasons import remarks_on
from swardcast.notices.record_years import TrackRecord, compose_record_by_years
from swardcast.notices.season import Season, compose_season
from swardcast.notices.status import CourseStatus, compose_status
from swardcast.notices.sums import JobSums, job_sums
from swardcast.notices.track_record import Comparisons, compose_published
from swardcast.notices.why import WhyPage, compose_why
from swardcast.notices.withdrawn import WithdrawnNotice, item_of_withdrawal, withdrawn_notices
from swardcast.outlook.course import assess_course
from swardcast.outlook.job_ranges import without_called_off
from swardcast.outlook.limits import LimitInForce
from swardcast.outlook.memory import as_members_see
from swardcast.outlook.play_story import play_changes
from swardcast.outlook.states import CourseOutlook, JobOutlook
from swardcast.outlook.story import JobStory, tell_story
from swardcast.outlook.track_record import Kept, track_record
from swardcast.outlook.weather_book import WeatherBook
from swardcast.outlook.week_growth import usual_grass, week_of_growth
from swardcast.records.club import Club
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Entry
from swardcast.records.log_by_job import LogByJob
from swardcast.records.operations import Kind
from swardcast.records.plan import Play
from swardcast.records.standing import counts_until
from swardcast.records.weather import WeatherSource

__all__ = ["Bulletin", "Pictures", "compose_bulletin", "compose_pictures", "season_of"]


_LATEST: Final = 5
"""News on the course status: judgement."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Bulletin:
    """Everything that is published, for one club at one moment.

    Args:
        club: the club.
        as_of: the moment, in the club's local time.
        outlook: how the course stands.
        status: the same in words.
        notices: one for each announced job, in the plan's order.
        withdrawn: those that were withdrawn; they stand in no list, only at their own addresses.
        items: what members should hear of, newest first.
        calendar: events of the members' calendar, job by job in the plan's order, without those of jobs long over.
        sums: the sums of everything that is healing.
        why: a page for each kind of work.
        kept: the club's own promises and what came of them.
        track_record: the same in words, by years.
        published: the published recoveries beside what is computed for them.
        weather_sources: services whose weather the dates rest on, which their licences ask us to name.
        remarks: what the manager should look at again; members do not see it.
        records: the club's records as known at the moment; those of every earlier moment can be made from them.
        stories: what members heard of each announced job, by its id; of withdrawn ones what they heard until then.
    """

    club: Club
    as_of: datetime
    outlook: CourseOutlook
    status: CourseStatus
    notices: tuple[Notice, ...]
    withdrawn: tuple[WithdrawnNotice, ...]
    items: tuple[FeedItem, ...]
    calendar: tuple[CalendarEvent, ...]
    sums: tuple[JobSums, ...]
    why: tuple[WhyPage, ...]
    kept: tuple[Kept, ...]
    track_record: TrackRecord
    published: Comparisons
    weather_sources: tuple[WeatherSource, ...]
    remarks: tuple[str, ...]
    records: ClubRecords
    stories: Mapping[str, JobStory]

    @property
    def addressed(self) -> tuple[Notice | WithdrawnNotice, ...]:
        """All notices that answer at an address of their own."""
        return (*self.notices, *self.withdrawn)

    @property
    def news_that_stands(self) -> tuple[FeedItem, ...]:
        """The items without those that were withdrawn or corrected since, for lists that are read as true."""
        return news_that_stands(self.items, self.records, self.as_of)

    @property
    def latest_news(self) -> tuple[FeedItem, ...]:
        """Those of them that stand on the course status, newest first; of one moment, the work that begins first."""

        def place(item: FeedItem) -> tuple[float, date]:
            job = self.outlook.jobs.get(item.notice_id)
            return -item.at.timestamp(), date.min if job is None else job.starts

        return tuple(sorted(self.news_that_stands, key=place)[:_LATEST])

    @property
    def counts_until(self) -> datetime:
        """The moment from which what is told here is too old to rely on: as an entry of that moment would be."""
        return counts_until(self.as_of, self.club)

    @property
    def voice(self) -> Voice:
        """The club's language, to a reader of that moment."""
        return self.club.voice(self.as_of.date())


def compose_bulletin(records: ClubRecords, as_of: datetime, book: WeatherBook | None = None) -> Bulletin:
    """Work out and word everything that is published at a moment, from what members may see.

    Assumes checked records. The same records and moment give the same bulletin.

    Args:
        records: the club's records.
        as_of: the moment, aware; what became known later does not exist.
        book: the weather of these records, prepared before, or None; what it remembers is not worked out again.

    Returns:
        The bulletin.
    """
    book = book or WeatherBook(records.club, records.weather)
    records = as_members_see(records, book)
    outlook = assess_course(records, as_of, book)
    voice, english = records.club.voice(outlook.as_of.date()), Voice.english(outlook.as_of.date())
    known = records.known_at(as_of)
    stories, events = dict[str, JobStory](), list[CalendarEvent]()
    for name, job in outlook.jobs.items():
        stories[name] = tell_story(records, job.job, as_of, book)
        if may_still_be_there(stories[name], outlook.as_of.date()):
            events += calendar_of(stories[name], records, as_of, book)
    course, log = _course_of(outlook), LogByJob(known.entries)
    notices = [
        compose_notice(_matter(job, stories[name], known, course, outlook.as_of, log.of(name)))
        for name, job in outlook.jobs.items()
    ]
    items = [*items_of_play(play_changes(records, as_of), records, voice), *items_of_notes(known, voice)]
    for notice in notices:
        kind = voice.name("kind", Kind(notice.category))
        items += items_of_story(stories[notice.id], records, kind, voice)
    withdrawn, kept = tuple(withdrawn_notices(records, as_of, book)), track_record(records, as_of, book)
    for gone in withdrawn:
        item = item_of_withdrawal(gone, voice)
        items += [*items_of_story(gone.story, records, item.category, voice), item]
    return Bulletin(
        club=records.club,
        as_of=outlook.as_of,
        outlook=outlook,
        status=compose_status(outlook, stories, records.club, voice, known.fixtures),
        notices=tuple(notices),
        withdrawn=withdrawn,
        items=tuple(_newest_first(items)),
        calendar=(
            *events,
            *(event for gone in withdrawn for event in calendar_of_withdrawn(gone, records, as_of, book)),
        ),
        sums=job_sums(outlook, stories, voice),
        why=compose_why(outlook, stories, voice),
        kept=kept,
        track_record=compose_record_by_years(kept, voice),
        published=compose_published(voice),
        weather_sources=records.weather.sources,
        remarks=(*remarks_on(outlook, english), *oversights(known, as_of, english)),
        records=records.heard_by(as_of),
        stories=stories | {gone.id: gone.story for gone in withdrawn},
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Pictures:
    """The facts of all pictures, ready to be drawn; only the site shows them.

    Args:
        healing: the curve of healing, by id of the notice that has one.
        growth: the week's growth, or None where no weather of past years is known or no surface has grass.
        promises: promised ranges and what happened, or None where no job can be judged.
    """

    healing: Mapping[str, HealingPicture]
    growth: GrowthPicture | None
    promises: PromisesPicture | None


def compose_pictures(bulletin: Bulletin, records: ClubRecords, book: WeatherBook) -> Pictures:
    """Lay out what the pictures of a bulletin show, from the same sums as its dates.

    Args:
        bulletin: the bulletin.
        records: the records that it was composed from.
        book: the weather that it was composed with.

    Returns:
        The facts of the pictures.
    """
    records, view, voice = as_members_see(records, book), book.at(bulletin.as_of), bulletin.voice
    healing = {matter.job.id: healing_picture(matter, view) for matter in _matters(bulletin)}
    grass = usual_grass(records.surfaces.values())
    return Pictures(
        healing={name: picture for name, picture in healing.items() if picture is not None},
        growth=None if view is None or grass is None else growth_picture(week_of_growth(view, grass), voice),
        promises=promises_picture(bulletin.kept, voice),
    )


def season_of(bulletin: Bulletin) -> Season:
    """Lay out what is planned when, from the same matter as the notices.

    Args:
        bulletin: the bulletin.

    Returns:
        The season, month by month.
    """
    return compose_season(_matters(bulletin), bulletin.records.fixtures, bulletin.voice)


def _matters(bulletin: Bulletin) -> Iterator[Matter]:
    """What the bulletin's notices are made of, in the plan's order."""
    course = _course_of(bulletin.outlook)
    for name, job in bulletin.outlook.jobs.items():
        yield _matter(job, bulletin.stories[name], bulletin.records, course, bulletin.as_of)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Course:
    """What a notice has to know of the course besides its job."""

    limits: tuple[LimitInForce, ...]
    holes_out_of_play: frozenset[int]
    plays: Mapping[str, Play] = field(default_factory=dict)


def _course_of(outlook: CourseOutlook) -> _Course:
    out_of_play = holes_out_of_play((one.surface, one.last_play) for one in outlook.surfaces.values())
    plays = {name: surface.play for name, surface in outlook.surfaces.items()}
    return _Course(limits=outlook.limits, holes_out_of_play=out_of_play, plays=plays)


def _matter(
    job: JobOutlook,
    story: JobStory,
    known: ClubRecords,
    course: _Course,
    as_of: datetime,
    log: tuple[Entry, ...] = (),
) -> Matter:
    return Matter(
        outlook=without_called_off(job),
        story=story,
        records=known,
        limits=course.limits,
        holes_out_of_play=course.holes_out_of_play,
        plays=course.plays,
        as_of=as_of,
        voice=known.club.voice(as_of.date()),
        log=log,
    )


def _newest_first(items: Iterable[FeedItem]) -> list[FeedItem]:
    return sorted(items, key=lambda item: (item.at, item.id), reverse=True)
