"""Dates in a line of the course status: of its own surfaces, the first and the last where these lie apart."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from functools import partial
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.dates_in_words import first_and_last_in_words, range_in_words
from swardcast.notices.ends import end_of, has_no_date_until_done, is_over_with_the_work, published_in_words
from swardcast.notices.hours import Ending, reopening_as_dates, reopening_in_words
from swardcast.outlook.changes import is_only_computed
from swardcast.outlook.job_ranges import open_works, range_of_all
from swardcast.outlook.states import DateRange, JobOutlook, Milestone, SurfaceOutlook, SurfaceWork, Work
from swardcast.outlook.story import JobStory
from swardcast.records.club import SurfaceKind
from swardcast.records.plan import Play

__all__ = ["StatusDate", "status_dates"]

_OUT_OF_PLAY: Final = (Play.TEMPORARY_GREEN, Play.CLOSED)


@dataclass(frozen=True, slots=True, kw_only=True)
class StatusDate:
    """A milestone of some surfaces, and when it is reached.

    Args:
        name: its name in words.
        value: when, in words.
        milestone: which one; where the surfaces stay in play during the work, their reopening is the end of it.
        given: the same as dates, or None where the words give none.
    """

    name: str
    value: str
    milestone: Milestone
    given: DateRange | None


def status_dates(
    surfaces: Sequence[SurfaceOutlook], outlook: JobOutlook, story: JobStory, as_of: datetime, voice: Voice
) -> Iterable[StatusDate]:
    """Date what surfaces of one line wait for.

    Args:
        surfaces: surfaces on which the job goes on or heals, alike in play, last play and work; at least one.
        outlook: how the job stands.
        story: published dates of the job.
        as_of: the moment of the reader, local.
        voice: the language and the day of the reader.

    Yields:
        Milestones with their dates, the first first.
    """
    works = [surface.current for surface in surfaces if surface.current is not None]
    in_play = surfaces[0].last_play not in _OUT_OF_PLAY  # as last said: a night opens and closes nothing
    again = partial(StatusDate, milestone=Milestone.REOPENING, given=reopening_as_dates(works, as_of, voice))
    if any(work.done_at is None for work in works):
        ends = Ending.DONE if in_play else Ending.OPEN
        yield again(name=ends.name_in(voice), value=reopening_in_words(works, as_of, voice, ends=ends))
    elif not in_play and (story.job.reopens_after or any(work.hours for work in works)):
        yield again(name=voice.say("hours-open-again"), value=reopening_in_words(works, as_of, voice, is_closed=True))
    elif is_over_with_the_work(outlook):
        value = published_in_words(story.published, outlook, voice)
        yield StatusDate(
            name=end_of(outlook).name_in(voice), value=value, milestone=Milestone.REOPENING, given=story.published
        )
    if is_over_with_the_work(outlook):
        return  # nothing comes after that
    settled = _settled(surfaces)
    is_over = all(work.work is Work.BACK_TO_NORMAL for work in works)
    if settled is not None and settled.is_given and not is_over:
        name, value = voice.say("status-putts-roll-true"), range_in_words(settled, voice)
        yield StatusDate(name=name, value=value, milestone=Milestone.SETTLED, given=settled)
    yield _normal(works, story, outlook, voice)


def _settled(surfaces: Sequence[SurfaceOutlook]) -> DateRange | None:
    """When most putts roll true again; on greens still to be worked on they do now, and the work would be its cause."""
    if any(surface.surface.kind is not SurfaceKind.GREEN for surface in surfaces):
        return None
    if any(surface.current and not surface.current.has_begun for surface in surfaces):
        return None
    ranges = [s.current.dates[Milestone.SETTLED] for s in surfaces if s.current and s.current.recovery]
    given = [one for one in ranges if one.allow_until is not None and one.likely is not None]
    if not given or len(given) < len(surfaces):
        return None
    return max(given, key=lambda one: (one.allow_until or date.min, one.likely or date.min))


def _normal(works: Sequence[SurfaceWork], story: JobStory, outlook: JobOutlook, voice: Voice) -> StatusDate:
    """Back to normal on these surfaces; the words for a date that holds no more are those of the whole job."""
    said = partial(StatusDate, name=voice.say("status-normal"), milestone=Milestone.BACK_TO_NORMAL)
    if outlook.work is Work.BACK_TO_NORMAL:  # no entry says so: that its day is past
        return said(value=published_in_words(story.published, outlook, voice), given=None)
    due = [work.dates[Milestone.BACK_TO_NORMAL].allow_until for work in works if is_only_computed(work)]
    if len(due) == len(works):  # while others of the job still heal
        by = voice.day(max(day for day in due if day is not None))
        return said(value=voice.say("normal-by-sum", by=by), given=None)
    if has_no_date_until_done(story.published, outlook, voice):
        return said(value=published_in_words(story.published, outlook, voice), given=None)
    last = _last_of(works, story.published, outlook)
    if last is story.published:
        words = published_in_words(story.published, outlook, voice)
    else:
        words = range_in_words(last, voice)
    apart = "" if any(work.unreported for work in works) else first_and_last_in_words(_likely_days(works), last, voice)
    return said(value=apart or words, given=last)


def _last_of(works: Sequence[SurfaceWork], published: DateRange, outlook: JobOutlook) -> DateRange:
    """The published date where the last surface of the job is among these; else their own, never a later one."""
    if not published.is_given or published.is_fact or any(work.unreported is not None for work in works):
        return published
    own = range_of_all(works, Milestone.BACK_TO_NORMAL)
    of_job = range_of_all(outlook.surfaces, Milestone.BACK_TO_NORMAL)
    if None in (own.likely, own.allow_until, published.likely, published.allow_until):
        return published
    waits = any(work.unreported is not None for work in outlook.surfaces)  # the last of the job has no day of its own
    if not waits and (None in (of_job.likely, of_job.allow_until) or len(works) == len(open_works(outlook.surfaces))):
        return published
    own_days = _days(own)
    is_last = not waits and any(day >= job_day for day, job_day in zip(own_days, _days(of_job), strict=True))
    is_later = any(day > told for day, told in zip(own_days, _days(published), strict=True))
    is_rougher = published.is_wide and not own.is_wide  # months, of which days here would say more than is known
    return published if is_last or is_later or is_rougher else own


def _days(given: DateRange) -> tuple[date, date]:
    return given.likely or date.max, given.allow_until or date.max


def _likely_days(works: Sequence[SurfaceWork]) -> list[date]:
    """The likely day of each surface; none where one is not computed, since a usual range has no such days."""
    dated = [
        work.dates[Milestone.BACK_TO_NORMAL].likely for work in works if work.recovery and not work.job.normal_after
    ]
    return [day for day in dated if day is not None] if len(dated) == len(works) else []
