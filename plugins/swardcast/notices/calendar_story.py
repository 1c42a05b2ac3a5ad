"""A job's story -> its events in a calendar, each with its history: when it changed last, and how often before.

A calendar program keeps what it has imported. It takes an event again when its sequence has risen, and never hears of
one that is left out. So each event is that of the last moment at which something was told; the sequence counts those
moments; and an event that is taken back stays, cancelled. An event that is over keeps the words that it had.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from swardcast.language.voice import capital
from swardcast.notices.answer import short_answer
from swardcast.notices.calendar import (
    DaySpan,
    Draft,
    MomentSpan,
    Occasion,
    Standing,
    Telling,
    drafts_of,
)
from swardcast.notices.calendar_tellings import tellings
from swardcast.notices.matter import Matter
from swardcast.notices.notice import text_of
from swardcast.notices.own_parts import answer_in_own_words
from swardcast.notices.withdrawn import WithdrawnNotice
from swardcast.outlook.states import Work
from swardcast.outlook.story import JobStory
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import label_counts

__all__ = ["CalendarEvent", "calendar_of", "calendar_of_withdrawn"]


@dataclass(frozen=True, slots=True, kw_only=True)
class CalendarEvent:
    """An event of the calendar.

    Args:
        id: name for life.
        notice_id: the notice that it belongs to.
        occasion: what it is about.
        standing: how sure it is, or that it does not take place.
        span: when it is.
        summary: the event in a line.
        sentences: the job's title where the summary does not have it, the short answer, and when that was told.
        categories: the kind of work and the kinds of surface, in words.
        sequence: how often the job was told anew before, when this event last changed; 0 for its announcement.
        created_at: when it was first told.
        changed_at: when it last changed.
    """

    id: str
    notice_id: str
    occasion: Occasion
    standing: Standing
    span: DaySpan | MomentSpan
    summary: str
    sentences: tuple[str, ...]
    categories: tuple[str, ...]
    sequence: int
    created_at: datetime
    changed_at: datetime


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Version:
    draft: Draft
    sequence: int
    telling: Telling
    created_at: datetime


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _History:
    """Events as last told, by id, and how often the job was told."""

    versions: Mapping[str, _Version]
    sequence: int


def calendar_of(story: JobStory, records: ClubRecords, as_of: datetime, book: WeatherBook) -> tuple[CalendarEvent, ...]:
    """Tell the events of a job with their history.

    Args:
        story: the job's changes up to the moment.
        records: the club's records.
        as_of: the moment, aware.
        book: the club's weather.

    Returns:
        Its events in the order of their days, those that were taken back among them.
    """
    history = _history(story, records, as_of, book)
    return _in_order(_event(version) for version in history.versions.values())


def calendar_of_withdrawn(
    notice: WithdrawnNotice, records: ClubRecords, book: WeatherBook
) -> tuple[CalendarEvent, ...]:
    """Tell the events of a job whose notice was withdrawn: all cancelled, since programs never hear of one left out.

    Args:
        notice: the notice.
        records: the club's records.
        book: the club's weather.

    Returns:
        Every event that was ever told of it, in the order of their days.
    """
    history = _history(notice.story, records, notice.revised_at - timedelta.resolution, book)
    voice = records.club.voice(notice.revised_at.date())
    told = (voice.say("news-told-at", moment=voice.moment(notice.revised_at)),)
    return _in_order(
        replace(
            _event(version),
            standing=Standing.CANCELLED,
            summary=voice.say("calendar-withdrawn", event=version.draft.taken_back),
            sentences=(*notice.as_told, *told),
            sequence=history.sequence,
            changed_at=notice.revised_at,
        )
        for version in history.versions.values()
    )


def _in_order(events: Iterable[CalendarEvent]) -> tuple[CalendarEvent, ...]:
    return tuple(sorted(events, key=lambda event: (_first_day(event), event.id)))


def _history(story: JobStory, records: ClubRecords, as_of: datetime, book: WeatherBook) -> _History:
    versions: dict[str, _Version] = {}
    sequence = 0
    for telling in tellings(story, records, as_of, book):
        drafts = _with_cancelled({draft.id: draft for draft in drafts_of(telling)}, versions, telling)
        changed = {name for name, draft in drafts.items() if name not in versions or versions[name].draft != draft}
        if not (changed or telling.is_revision):
            continue
        for name, draft in drafts.items():
            if name in changed or not _keeps_its_words(draft, telling):
                created_at = versions[name].created_at if name in versions else telling.matter.as_of
                versions[name] = _Version(draft=draft, sequence=sequence, telling=telling, created_at=created_at)
        sequence += 1
    return _History(versions=versions, sequence=sequence)


def _keeps_its_words(draft: Draft, telling: Telling) -> bool:
    return draft.standing is Standing.CANCELLED or draft.span.last_day < telling.day


def _with_cancelled(
    drafts: Mapping[str, Draft], versions: Mapping[str, _Version], telling: Telling
) -> dict[str, Draft]:
    """Events that were told before and are no more are cancelled, never left out."""
    found = dict(drafts)
    for name, version in versions.items():
        if name not in drafts:
            found[name] = _cancelled(version.draft, telling.matter)
    return found


def _cancelled(was: Draft, matter: Matter) -> Draft:
    """Many programs show a cancelled event like any other, so its summary says so too."""
    if was.standing is Standing.CANCELLED:
        return was
    if any(work.work is Work.CALLED_OFF for work in matter.story.changes[-1].outlook.surfaces):
        work = matter.voice.say("calendar-work", places=was.places, title=matter.job.title)
        summary = matter.voice.say("calendar-called-off", event=work)
    else:
        summary = matter.voice.say("calendar-taken-back", event=was.taken_back)
    return replace(was, standing=Standing.CANCELLED, summary=summary)


def _event(version: _Version) -> CalendarEvent:
    matter, draft = version.telling.matter, version.draft
    return CalendarEvent(
        id=draft.id,
        notice_id=matter.job.id,
        occasion=draft.occasion,
        standing=draft.standing,
        span=draft.span,
        summary=draft.summary,
        sentences=tuple(_sentences(matter, draft)),
        categories=_categories(matter),
        sequence=version.sequence,
        created_at=version.created_at,
        changed_at=matter.as_of,
    )


def _sentences(matter: Matter, draft: Draft) -> Iterator[str]:
    if draft.occasion is not Occasion.WORK:
        yield matter.voice.sentence(matter.job.title.rstrip("."))
    if draft.names != draft.places:
        yield matter.voice.sentence(draft.names)
    if draft.occasion is not Occasion.REOPENING or draft.standing is not Standing.CONFIRMED:
        yield text_of(answer_in_own_words(matter) or short_answer(matter))
    elif label_counts(matter.job.operations):
        yield matter.voice.say("answer-label")  # the short answer has it, too
    yield matter.voice.say("news-told-at", moment=matter.voice.moment(matter.as_of))


def _categories(matter: Matter) -> tuple[str, ...]:
    surfaces = dict.fromkeys(work.surface.kind for work in matter.outlook.surfaces)
    kind = capital(matter.voice.name("kind", matter.kinds[0]))
    return (kind, *(matter.voice.name("site-surface", one) for one in surfaces))


def _first_day(event: CalendarEvent) -> str:
    span = event.span
    return (span.first if isinstance(span, DaySpan) else span.starts.date()).isoformat()
