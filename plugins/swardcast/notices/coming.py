"""Work that comes next, in words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from swardcast.language.voice import Voice, capital
from swardcast.notices.ends import end_of, has_no_day, published_in_words
from swardcast.notices.words import places_in_brief
from swardcast.outlook.states import CourseOutlook, JobOutlook, Work
from swardcast.outlook.story import JobStory

__all__ = ["ComingWork", "coming_work"]


@dataclass(frozen=True, slots=True, kw_only=True)
class ComingWork:
    """Work that comes next; `is_silent` where its day is over and nobody has reported that it began."""

    headline: str
    where: str
    when: str
    normal: str
    notice_id: str
    is_silent: bool


def coming_work(outlook: CourseOutlook, stories: Mapping[str, JobStory], voice: Voice) -> Iterable[ComingWork]:
    """Tell all planned work, as many jobs as the list of notices has to come.

    Args:
        outlook: how the course stands.
        stories: published dates by job.
        voice: the language and the day of the reader.

    Yields:
        The first first; after them those of which no day holds.
    """
    planned = [job for job in outlook.jobs.values() if job.work is Work.PLANNED]
    for job in sorted(planned, key=lambda job: (has_no_day(job, voice), job.starts, job.job.id)):
        published = published_in_words(stories[job.job.id].published, job, voice)
        yield ComingWork(
            headline=job.job.title,
            where=capital(places_in_brief((work.surface for work in job.surfaces), voice)),
            when=_when(job, voice),
            normal=voice.say("coming-normal", end=end_of(job).value, when=published),
            notice_id=job.job.id,
            is_silent=has_no_day(job, voice) and not job.is_put_off,
        )


def _when(job: JobOutlook, voice: Voice) -> str:
    if job.is_put_off:
        return voice.say("when-put-off")
    day = voice.day(job.starts)
    if has_no_day(job, voice):
        return voice.say("coming-late", day=day)
    return voice.say("coming-from", day=day, when="today" if job.starts == voice.near else "later")
