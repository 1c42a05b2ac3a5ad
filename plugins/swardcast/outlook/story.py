"""A job's story: the job replayed over the moments at which something became known, and what of it was told when.

`changes` decides what is worth telling; every move states its cause. Moments come from the records (`story_moments`),
never from the clock. What follows a moment depends on nothing but how the job stood then and what became known since,
so how it stood at the last one can be kept (`kept`), and a story taken up from there.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from typing import Final

from swardcast.outlook.about_job import AboutJob
from swardcast.outlook.causes import Cause, entry_cause, is_later, rests_on_weather, weather_cause
from swardcast.outlook.changes import News, Told, news_between
from swardcast.outlook.memory import Memory, assess_jobs, memory_of
from swardcast.outlook.moves import matters, moves
from swardcast.outlook.quiet_mornings import QuietMornings
from swardcast.outlook.recovery import Samples
from swardcast.outlook.states import DateRange, JobOutlook, ReasonKind, Work
from swardcast.outlook.story_moments import FOLLOWED_DAYS, Moment, moments_of
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Entry, MorningStatus
from swardcast.records.plan import Job

__all__ = ["JobChange", "JobStory", "tell_story"]

_GOING_ON: Final = (Work.UNDER_WAY, Work.HELD_UP)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class JobChange:
    """Something about a job that members should hear of.

    Args:
        id: name for life, from the record that brought it.
        at: when it became known.
        revision: 1 for the announcement, then 2, 3, ...
        news: what is new.
        cause: why.
        outlook: how the job stood.
        because: the cause in the manager's words, or "".
        entry: the entry of this job that brought it, or None for the weather and for other jobs.
    """

    id: str
    at: datetime
    revision: int
    news: News
    cause: Cause
    outlook: JobOutlook
    because: str
    entry: Entry | None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class JobStory:
    """A job's changes so far, oldest first; the last one carries the published date.

    Args:
        job: the job.
        changes: what was told.
    """

    job: Job
    changes: tuple[JobChange, ...]

    @property
    def published(self) -> DateRange:
        """The date for back to normal that stands on the site."""
        return self.changes[-1].news.back_to_normal


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Standing:
    """How a job's story stands after a moment: all that what follows has to know of it.

    Args:
        until: the last moment that was heard.
        heard_of: the day of the last entry, or of the announcement.
        is_over: whether it is over by the sum: then no weather changes it any more, but an entry may.
        changes: what was worth telling so far.
        heard: how the job stood when something was heard that may be worth telling: there, or some mornings before.
        told: what was last told.
        latest: a day not before the latest likely one that was held against fixtures, or None: no later fixture has a
            part in it.
    """

    until: datetime
    heard_of: date
    is_over: bool
    changes: tuple[JobChange, ...]
    heard: JobOutlook
    told: Told | None
    latest: date | None


@dataclass(slots=True)
class _Teller:
    """Hears how a job stands moment by moment.

    Args:
        about: the job.
        last: how its story stands, or None before the first moment.
        changes: what was worth telling so far.
        told: what was last told, or None.
        latest: the latest likely day that was held against fixtures, or None.
        mornings: tells those on which nothing is worth telling, after the last moment that was heard, or None.
    """

    about: AboutJob
    last: Standing | None
    changes: list[JobChange]
    told: Told | None
    latest: date | None
    mornings: QuietMornings | None = None

    @classmethod
    def taking_up(cls, last: Standing | None, about: AboutJob) -> _Teller:
        """Go on where a story stands."""
        if last is None:
            return cls(about, None, [], None, None)
        return cls(about, last, list(last.changes), last.told, last.latest)

    def is_quiet(self, at: datetime) -> bool:
        """Whether no morning changes anything any more.

        The job is over by the sum, or nobody reports on the work any more, or so long nothing was entered that it is
        followed no more.
        """
        if self.last is None:
            return False
        if self.last.is_over or self.last.heard.unreported is not None:
            return True
        return self.about.day(at) > self.last.heard_of + timedelta(days=FOLLOWED_DAYS)

    def passes_over(self, moment: Moment, memory: Memory) -> bool:
        """Take note of a morning on which nothing is certain to be worth telling, without asking how the job stands.

        Args:
            moment: the next moment.
            memory: what was worked out of the records.

        Returns:
            Whether it is one.
        """
        if moment.entry is not None or self.last is None or self.told is None:
            return False
        told, coming = self.told, self.about.coming(moment.at)
        if self.about.withdrawn(moment.at) != told.withdrawn or self.about.noted(moment.at) != told.notes:
            return False
        if self.mornings is None:
            self.mornings = QuietMornings(memory, self.last.heard, self.last.until)
        if not self.mornings.is_quiet(moment.at, told.back_to_normal, coming):
            return False
        latest = self.mornings.latest_likely(told.back_to_normal)
        self.latest = latest if self.latest is None else max(self.latest, latest)
        self.last = replace(self.last, until=moment.at, latest=self.latest)
        return True

    def hear(self, moment: Moment, outlook: JobOutlook) -> None:
        """Take note of how the job stands at the next moment."""
        self.mornings = None
        before, by_entry = self.last, moment.entry is not None
        self._tell(moment, outlook)
        was_over = before is not None and before.is_over
        self.last = Standing(
            until=moment.at,
            heard_of=self.about.day(moment.at) if before is None or by_entry else before.heard_of,
            is_over=outlook.work is Work.BACK_TO_NORMAL and (was_over or not by_entry),
            changes=tuple(self.changes),
            heard=outlook,
            told=self.told,
            latest=self.latest,
        )

    def _tell(self, moment: Moment, outlook: JobOutlook) -> None:
        job = self.about.job.id
        last = self.changes[-1] if self.changes else None
        before = self.last.heard if self.last is not None else None
        now = self.about.told(outlook, moment.at, self.told)
        self._compare(now.back_to_normal)
        today = self.about.day(moment.at)
        news = news_between(self.told, now, today, self.about.coming(moment.at), self.about.records.club.working_days)
        if news is None:
            return
        stays = self.told is not None and self.told.back_to_normal == news.back_to_normal
        told_on = self.told.told_on if self.told is not None and stays else today
        self.told = replace(now, back_to_normal=news.back_to_normal, told_on=told_on)
        cause, because = Cause.ANNOUNCED, str(getattr(moment.entry, "because", ""))
        if last is not None:
            cause, because = self._cause(moment, last, now, news, learnt=_taught(before) != _taught(outlook))
        self.changes.append(
            JobChange(
                id=f"{job}/{moment.id}",
                at=moment.at,
                revision=len(self.changes) + 1,
                news=news,
                cause=cause,
                outlook=outlook,
                because=because,
                entry=moment.entry if _is_of(moment.entry, job) else None,
            )
        )

    def _cause(self, moment: Moment, last: JobChange, now: Told, news: News, *, learnt: bool) -> tuple[Cause, str]:
        """Why it changed, with typed words: the entry, if the date would not have moved without it, or what else."""
        typed = str(getattr(moment.entry, "because", ""))
        if last.outlook.starts != now.outlook.starts:
            return Cause.PLAN, typed
        if moment.entry is None and news.is_of_surfaces_alone:
            return _goes_on(now.outlook)
        published, coming, today = last.news.back_to_normal, self.about.coming(moment.at), self.about.day(moment.at)
        entry, without = moment.entry, self.about.without
        by_entry = entry is not None and not matters(
            published, self._compare(without(moment, published)), today, coming
        )
        if by_entry or news.before is None:
            return entry_cause(moment.entry, self.about.job.id), typed
        if learnt:
            return Cause.LEARNT, typed
        if not rests_on_weather(published, now.back_to_normal):
            other = Cause.WORK if entry is None else entry_cause(entry, self.about.job.id)
            return self._unfinished(moment, last, now, explained=False) or (other, typed)
        view, before = self.about.book.at(moment.at), self.about.book.at(last.at)
        cause = weather_cause(view, before, last.at.date(), published, now.back_to_normal)
        return self._unfinished(moment, last, now, explained=cause is not Cause.WEATHER) or (cause, typed)

    def _compare(self, given: DateRange) -> DateRange:
        """Take note of a date that is held against fixtures, and what was told of it before with it."""
        told = self.told.back_to_normal if self.told is not None else given
        self.latest = max((day for day in (self.latest, told.likely, given.likely) if day is not None), default=None)
        return given

    def _unfinished(self, moment: Moment, last: JobChange, now: Told, *, explained: bool) -> tuple[Cause, str] | None:
        """That the work goes on, if the date had moved back in the weather of the day on which it was last told too.

        A smaller share in the move counts only where the weather does not explain it.
        """
        published = last.news.back_to_normal
        if now.outlook.work not in _GOING_ON or not is_later(published, now.back_to_normal):
            return None
        without_weather = self.about.in_weather_of(last.at, moment.at)
        if not is_later(published, without_weather) or (explained and not moves(published, without_weather)):
            return None
        return _goes_on(now.outlook)


def _goes_on(outlook: JobOutlook) -> tuple[Cause, str]:
    held = [r for work in outlook.surfaces for r in work.reasons if r.kind is ReasonKind.HELD_UP]
    if outlook.work is Work.HELD_UP and held:
        return Cause.STILL_HELD_UP, held[-1].words
    return Cause.WORK_TAKES_LONGER, ""


def tell_story(records: ClubRecords, job: Job, as_of: datetime, book: WeatherBook) -> JobStory:
    """Replay a job from its announcement to a moment.

    Args:
        records: the club's records.
        job: a job announced by then.
        as_of: the moment, aware.
        book: the club's weather.

    Returns:
        Its changes; the first is the announcement.
    """
    memory = memory_of(records, book)
    about = AboutJob.of(memory.log, job, book)
    name, recall = f"story/{job.id}", memory.recall
    stood = recall.up_to(name, job.id, as_of, Standing) if recall is not None else None
    teller, begin = _Teller.taking_up(stood, about), stood.until if stood is not None else None
    for moment in moments_of(memory.log, job, as_of, teller.is_quiet, begin):
        if not teller.passes_over(moment, memory):
            teller.hear(moment, assess_jobs(records, moment.at, book, only=job.id)[job.id])
    for change in teller.changes:
        _forget_samples(change.outlook, book)
    last = teller.last
    if recall is not None and last is not None and last.until != begin:
        recall.kept.keep(name, recall.digests.mark_of(job.id, last.until, last.latest), last)
    return JobStory(job=job, changes=tuple(teller.changes))


def _forget_samples(outlook: JobOutlook, book: WeatherBook) -> None:
    """Of news the samples are hardly ever asked, and they are most of it."""
    for work in outlook.surfaces:
        if work.recovery is not None and isinstance(work.recovery.samples, Samples):
            work.recovery.samples.forget(book)


def _is_of(entry: Entry | None, job: str) -> bool:
    """Whether an entry is told with the job: a morning entry is told as course status."""
    return not isinstance(entry, MorningStatus) and getattr(entry, "job", job) == job


def _taught(outlook: JobOutlook | None) -> set[str]:
    """The entries whose lessons the dates rest on."""
    recoveries = [work.recovery for work in outlook.surfaces if work.recovery is not None] if outlook else []
    return {lesson.source for recovery in recoveries for lesson in recovery.lessons}
