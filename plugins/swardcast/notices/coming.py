"""Work that comes next, in words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.words import is_overdue, places_in_words, published_in_words
from swardcast.outlook.states import CourseOutlook, Work
from swardcast.outlook.story import JobStory

__all__ = ["ComingWork", "coming_work"]

_NEXT_SHOWN: Final = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class ComingWork:
    """Work that comes next."""

    headline: str
    where: str
    when: str
    normal: str
    notice_id: str


def coming_work(outlook: CourseOutlook, stories: Mapping[str, JobStory], voice: Voice) -> Iterable[ComingWork]:
    """Tell the planned work that comes next.

    Args:
        outlook: how the course stands.
        stories: published dates by job.
        voice: the language and the day of the reader.

    Yields:
        The next few jobs, the first first.
    """
    planned = [job for job in outlook.jobs.values() if job.work is Work.PLANNED]
    for job in sorted(planned, key=lambda job: (job.starts, job.job.id))[:_NEXT_SHOWN]:
        starts = voice.day(job.starts)
        published = published_in_words(stories[job.job.id].published, job, voice)
        yield ComingWork(
            headline=job.job.title,
            where=capital(places_in_words((work.surface for work in job.surfaces), voice)),
            when=voice.say("coming-late", day=starts)
            if is_overdue(job, voice)
            else voice.say("coming-from", day=starts),
            normal=voice.say("coming-normal", when=published),
            notice_id=job.job.id,
        )
