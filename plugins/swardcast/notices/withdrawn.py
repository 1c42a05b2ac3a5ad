"""Notices that were withdrawn: what stays at their addresses, and the item of the feed that says so."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, time, timedelta
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.bulletins import FeedItem
from swardcast.notices.kinds import most_noticed_first
from swardcast.notices.words import as_clause
from swardcast.outlook.story import JobStory, tell_story
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.log import WITHDRAWN
from swardcast.records.plan import Job, Withdrawal

__all__ = ["WithdrawnNotice", "item_of_withdrawal", "withdrawn_notices"]

_JUST_BEFORE: Final = timedelta.resolution


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WithdrawnNotice:
    """A notice that members could read until it was withdrawn.

    Args:
        id: the job's id.
        headline: the job, and that its notice was withdrawn.
        short_answer: when and why it was withdrawn, and that another notice has its place.
        as_told: the same, sentence by sentence, as it was said at that moment.
        in_short: wordings of a message, the fullest first.
        instead: id of the notice to be read instead, or "" where there is none any more.
        instead_title: title of that notice's job, or "".
        issued_at: when it was first public, local time.
        revised_at: when it was withdrawn, local time.
        story: what members had heard of it by then.
    """

    id: str
    headline: str
    short_answer: str
    as_told: tuple[str, ...]
    in_short: tuple[str, ...]
    instead: str
    instead_title: str
    issued_at: datetime
    revised_at: datetime
    story: JobStory


def withdrawn_notices(records: ClubRecords, as_of: datetime, book: WeatherBook) -> Iterator[WithdrawnNotice]:
    """Word every notice that was public and is withdrawn by a moment.

    Args:
        records: the club's records.
        as_of: the moment, aware.
        book: the club's weather.

    Yields:
        Notices in the plan's order; none of a job that was withdrawn before it was announced.
    """
    zone = records.club.time_zone
    voice = records.club.voice(as_of.astimezone(zone).date())
    for job in records.jobs.values():
        if job.withdrawn is None or not job.is_withdrawn(as_of):
            continue
        issued_at = datetime.combine(job.announced, time(0), tzinfo=zone)
        if job.is_withdrawn(issued_at):
            continue
        yield _notice(job, job.withdrawn, issued_at, voice, records, book)


def _notice(
    job: Job, withdrawn: Withdrawal, issued_at: datetime, voice: Voice, records: ClubRecords, book: WeatherBook
) -> WithdrawnNotice:
    at = withdrawn.at.astimezone(records.club.time_zone)
    instead = records.jobs.get(withdrawn.instead)
    headline = voice.say("withdrawn-headline", title=job.title)
    return WithdrawnNotice(
        id=job.id,
        headline=headline,
        short_answer=voice.sentences(_sentences(withdrawn, at, instead, voice)),
        as_told=tuple(_sentences(withdrawn, at, instead, voice.on(at.date()))),
        in_short=(voice.sentence(headline), voice.sentence(voice.say("news-withdrawn"))),
        instead=withdrawn.instead,
        instead_title=instead.title if instead is not None else "",
        issued_at=issued_at,
        revised_at=at,
        story=tell_story(records, job, at - _JUST_BEFORE, book),
    )


def _sentences(withdrawn: Withdrawal, at: datetime, instead: Job | None, voice: Voice) -> list[str]:
    because = as_clause(withdrawn.because)
    said = [voice.say("withdrawn-because", moment=voice.moment(at), because=because)]
    if instead is not None:
        said.append(voice.say("withdrawn-instead", title=instead.title))
    return said


def item_of_withdrawal(notice: WithdrawnNotice, voice: Voice) -> FeedItem:
    """Tell members of a feed that a notice was withdrawn.

    Args:
        notice: the notice.
        voice: the language.

    Returns:
        The item; a later bulletin words it the same.
    """
    job = notice.story.job
    main = most_noticed_first(operation.kind for operation in job.operations)[0]
    return FeedItem(
        id=f"{job.id}/{WITHDRAWN}",
        at=notice.revised_at,
        title=capital(voice.say("news-title-whole", job=job.title, news=voice.say("news-withdrawn"))),
        sentences=notice.as_told,
        notice_id=job.id,
        category=voice.name("kind", main),
        kinds=frozenset(work.surface.kind for work in notice.story.changes[-1].outlook.surfaces),
    )
