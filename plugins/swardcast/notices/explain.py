"""Where a surface's dates come from, step by step, so that a sceptic can follow with a pocket calculator."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from swardcast.language.voice import Voice
from swardcast.notices.dates_in_words import range_in_words
from swardcast.notices.ends import settles
from swardcast.notices.explain_sum import explain_sum
from swardcast.notices.hours import reopening_in_words
from swardcast.notices.play import play_in_words
from swardcast.notices.reasons import reason_in_words
from swardcast.outlook.dates import RestsOn
from swardcast.outlook.job_ranges import dated_milestones
from swardcast.outlook.pace_of_work import PLAN_COUNTS_AS
from swardcast.outlook.reopening import HeldUp, Hours
from swardcast.outlook.states import CourseOutlook, DateRange, Milestone, SurfaceOutlook, SurfaceWork, Work

__all__ = ["Explanation", "explain_surface"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """A part of an explanation: a heading and its lines, each with the source it came from or ""."""

    heading: str
    lines: tuple[tuple[str, str], ...]


def explain_surface(surface: SurfaceOutlook, outlook: CourseOutlook, voice: Voice) -> list[Explanation]:
    """Explain a surface's state and dates.

    Args:
        surface: the surface.
        outlook: the course at the moment.
        voice: the language and the day of the reader.

    Returns:
        Parts in order: play, then each job on the surface, oldest first.
    """
    reason = surface.reasons[0]
    play = voice.sentences([voice.sentence(play_in_words(surface.play, voice)), reason_in_words(reason, voice)])
    jobs = sorted(outlook.jobs.values(), key=lambda job: (job.starts, job.job.id))
    works = [work for job in jobs for work in job.surfaces if work.surface.id == surface.surface.id]
    return [
        Explanation(heading=voice.say("explain-play"), lines=((play, reason.source),)),
        *(
            Explanation(
                heading=voice.say("explain-job", title=work.job.title, work=_state(work, voice)),
                lines=tuple(_job(work, outlook.as_of, voice)),
            )
            for work in works
        ),
    ]


def _state(work: SurfaceWork, voice: Voice) -> str:
    if work.work is Work.HEALING and settles([work.surface]):
        return voice.say("work-settling")
    return voice.name("work", work.work)


def _job(work: SurfaceWork, as_of: datetime, voice: Voice) -> Iterator[tuple[str, str]]:
    for reason in work.reasons:
        yield reason_in_words(reason, voice), reason.source
    if work.recovery is not None and work.job.normal_after is None:
        yield from explain_sum(work, work.recovery, voice)
    for milestone in dated_milestones(work):
        given, name = work.dates[milestone], voice.name("milestone", milestone)
        if milestone is Milestone.REOPENING and work.hours is not None:
            for line in _pace_of_work(work.hours, voice):
                yield line, "computed"
            reopening = reopening_in_words([work], as_of, voice)
            yield voice.say("explain-date", milestone=name, date=reopening), "computed"
        else:
            yield _date(name, given, voice), "computed"


def _date(milestone: str, given: DateRange, voice: Voice) -> str:
    words = range_in_words(given, voice)
    if given.early is None or given.is_fact or given.rests_on is not RestsOn.SUM:  # only a sum has chances
        return voice.say("explain-date", milestone=milestone, date=words)
    return voice.say("explain-date.early", milestone=milestone, date=words, early=voice.day(given.early))


def _pace_of_work(hours: Hours | HeldUp, voice: Voice) -> Iterator[str]:
    if isinstance(hours, Hours) and hours.pace is not None:
        finished = round(hours.pace.seen - PLAN_COUNTS_AS)
        minutes = round(hours.pace.minutes)
        yield voice.say("explain-pace-of-work", minutes=minutes, finished=finished, plan=round(PLAN_COUNTS_AS))
