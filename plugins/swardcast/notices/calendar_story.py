"""A job's story -> its events in a calendar, each with its history: when it changed last, and how often before.

A calendar program keeps what it has imported. It takes an event again when that is newer (`calendar_age`), and never
hears of one that is left out. So each event is that of the last moment at which something was told, and an event that
is taken back stays, cancelled. An event that is over keeps the words that it had.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from typing import Final

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
from swardcast.notices.calendar_age import Age, age_of
from swardcast.notices.calendar_tellings import NO_MORE, tellings
from swardcast.notices.matter import Matter
from swardcast.notices.notice import text_of
from swardcast.notices.own_parts import answer_in_own_words
from swardcast.notices.withdrawn import WithdrawnNotice
from swardcast.outlook.memory import memory_of
from swardcast.outlook.states import Work
from swardcast.outlook.story import JobChange, JobStory
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import label_counts

__all__ = ["STILL_THERE", "CalendarEvent", "calendar_of", "calendar_of_withdrawn", "may_still_be_there"]

STILL_THERE: Final = timedelta(days=400)
"""How long what is over stays in the calendar: a year, so that the same work last year can be looked up; judgement."""


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
        sequence: the count of its age.
        created_at: when it was first told.
        changed_at: the last moment that counts for its age: from then on it was as it is.
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
    telling: Telling
    created_at: datetime


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
    age, last, recall = age_of(story.job, records, as_of, book), story.changes[-1], memory_of(records, book).recall

    def tell() -> tuple[CalendarEvent, ...]:
        return _in_order(_event(version, age) for version in _versions(story, records, as_of, book).values())

    if recall is None or last.outlook.work not in NO_MORE:
        return tell()
    # Nothing is told after the last change of what is over, so all but the age rests on what was known then.
    mark = recall.digests.mark_of_words(story.job.id, last.at)
    events = recall.again(f"calendar/{story.job.id}", mark, tuple, tell)
    return tuple(replace(event, sequence=age.count, changed_at=age.at) for event in events)


def may_still_be_there(story: JobStory, today: date) -> bool:
    """Tell whether any event of a job can still stand in the calendar; of work long over there is none to be made.

    Assumes that no event is on a later day than was ever told of the job in a revision of its notice, but for what a
    date may move without one (`outlook.changes`): days, where `STILL_THERE` is allowed for it once more.

    Args:
        story: the job's changes up to the moment.
        today: the day, in the club's local time.

    Returns:
        Whether it can.
    """
    last = story.changes[-1]
    if last.outlook.work not in NO_MORE or today - last.at.date() <= 2 * STILL_THERE:
        return True
    return today - max(map(_latest_day, story.changes)) <= 2 * STILL_THERE


def _latest_day(change: JobChange) -> date:
    outlook = change.outlook
    ranges = [
        *outlook.dates.values(),
        *(one for work in outlook.surfaces for one in (*work.dates.values(), work.finish)),
    ]
    days = (day for one in ranges for day in (one.early, one.likely, one.allow_until) if day is not None)
    return max(days, default=outlook.starts)


def calendar_of_withdrawn(
    notice: WithdrawnNotice, records: ClubRecords, as_of: datetime, book: WeatherBook
) -> tuple[CalendarEvent, ...]:
    """Tell the events of a job whose notice was withdrawn: all cancelled, since programs never hear of one left out.

    Args:
        notice: the notice.
        records: the club's records.
        as_of: the moment, aware; the notice is withdrawn by then.
        book: the club's weather.

    Returns:
        Every event that was ever told of it, in the order of their days.
    """
    versions = _versions(notice.story, records, notice.revised_at - timedelta.resolution, book)
    age = age_of(notice.story.job, records, as_of, book)
    voice = records.club.voice(notice.revised_at.date())
    told = (voice.say("news-told-at", moment=voice.moment(notice.revised_at)),)
    return _in_order(
        replace(
            _event(version, age),
            standing=Standing.CANCELLED,
            span=_in_a_day(version.draft.span),
            summary=voice.say("calendar-withdrawn", event=version.draft.taken_back),
            sentences=(*notice.as_told, *told),
        )
        for version in versions.values()
    )


def _in_order(events: Iterable[CalendarEvent]) -> tuple[CalendarEvent, ...]:
    return tuple(sorted(events, key=lambda event: (_first_day(event), event.id)))


def _versions(story: JobStory, records: ClubRecords, as_of: datetime, book: WeatherBook) -> Mapping[str, _Version]:
    """Events as last told, by id."""
    versions: dict[str, _Version] = {}
    for telling in tellings(story, records, as_of, book):
        drafts = _with_cancelled({draft.id: draft for draft in drafts_of(telling)}, versions, telling)
        changed = {name for name, draft in drafts.items() if name not in versions or versions[name].draft != draft}
        if not (changed or telling.is_revision):
            continue
        for name, draft in drafts.items():
            if name in changed or not _keeps_its_words(draft, telling):
                created_at = versions[name].created_at if name in versions else telling.matter.as_of
                versions[name] = _Version(draft=draft, telling=telling, created_at=created_at)
    return versions


def _keeps_its_words(draft: Draft, telling: Telling) -> bool:
    return draft.standing is Standing.CANCELLED or draft.span.last_day < telling.day


def _with_cancelled(
    drafts: Mapping[str, Draft], versions: Mapping[str, _Version], telling: Telling
) -> dict[str, Draft]:
    """Events that were told before and are no more are cancelled, never left out."""
    found = dict(drafts)
    for name, version in versions.items():
        if name not in drafts:
            found[name] = _cancelled(version.draft, telling.matter, drafts.values())
    return found


def _cancelled(was: Draft, matter: Matter, others: Iterable[Draft]) -> Draft:
    """Many programs show a cancelled event like any other, so its summary says so too, and it lasts a day at most."""
    if was.standing is Standing.CANCELLED:
        return was
    told = {name for draft in others if draft.occasion is was.occasion for name in draft.surfaces}
    if was.surfaces <= told:  # its surfaces stand in another event, perhaps on the same day
        summary = matter.voice.say("calendar-moved", event=was.taken_back)
    elif any(work.work is Work.CALLED_OFF for work in matter.story.changes[-1].outlook.surfaces):
        work = matter.voice.say("calendar-work", places=was.places, title=matter.job.title)
        summary = matter.voice.say("calendar-called-off", event=work)
    elif was.occasion is Occasion.WORK and matter.has_no_day and not matter.outlook.is_put_off:
        # Nobody took it back; its day is not known any more.
        summary = matter.voice.say("calendar-work-in-state", work=was.taken_back, state="not-started")
    else:
        summary = matter.voice.say("calendar-taken-back", event=was.taken_back)
    return replace(was, standing=Standing.CANCELLED, summary=summary, span=_in_a_day(was.span))


def _in_a_day(span: DaySpan | MomentSpan) -> DaySpan | MomentSpan:
    return DaySpan(first=span.first, last=span.first) if isinstance(span, DaySpan) else span


def _event(version: _Version, age: Age) -> CalendarEvent:
    matter, draft = version.telling.matter, version.draft
    return CalendarEvent(
        id=draft.id,
        notice_id=matter.job.id,
        occasion=draft.occasion,
        standing=draft.standing,
        span=draft.span,
        summary=draft.summary,
        sentences=tuple(_sentences(version.telling, draft)),
        categories=_categories(matter),
        sequence=age.count,
        created_at=version.created_at,
        changed_at=age.at,
    )


def _sentences(telling: Telling, draft: Draft) -> Iterator[str]:
    matter, voice = telling.matter, telling.matter.voice
    if draft.occasion is not Occasion.WORK:
        yield matter.voice.sentence(matter.job.title.rstrip("."))
    if draft.names != draft.places:
        yield matter.voice.sentence(draft.names)
    yield from _answer(matter, draft)
    if telling.is_by_clock or matter.as_of.time() == time(0):  # nobody told it at that hour
        yield voice.say("calendar-told-on", day=voice.day(matter.as_of.date()))
    else:
        yield voice.say("news-told-at", moment=voice.moment(matter.as_of))


def _answer(matter: Matter, draft: Draft) -> Iterator[str]:
    """The short answer; of what is a fact, or does not hold, nothing that would be old when it is read."""
    voice, is_fact = matter.voice, draft.standing is Standing.CONFIRMED
    if is_fact and draft.occasion is Occasion.WORK:
        yield voice.say("calendar-work-done")
    if is_fact and label_counts(matter.job.operations):
        yield voice.say("answer-label")  # the short answer has it, too
    is_called_off = matter.outlook.work is Work.CALLED_OFF
    if not is_fact and (draft.standing is Standing.TENTATIVE or is_called_off):
        yield text_of(answer_in_own_words(matter) or short_answer(matter))


def _categories(matter: Matter) -> tuple[str, ...]:
    surfaces = dict.fromkeys(work.surface.kind for work in matter.outlook.surfaces)
    kind = capital(matter.voice.name("kind", matter.kinds[0]))
    return (kind, *(matter.voice.name("site-surface", one) for one in surfaces))


def _first_day(event: CalendarEvent) -> str:
    span = event.span
    return (span.first if isinstance(span, DaySpan) else span.starts.date()).isoformat()
