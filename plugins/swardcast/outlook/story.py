"""A job's story: the job replayed over the moments at which something became known, and what of it was told when.

`changes` decides what is worth telling; every move states its cause. Moments come from the records (entries, mornings
on which a day's weather became known, and every morning once the work has begun), never from the clock.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime, time, timedelta
from typing import Final

from swardcast.outlook.causes import Cause, entry_cause, is_later, weather_cause
from swardcast.outlook.changes import News, Told, news_between
from swardcast.outlook.course import assess_jobs
from swardcast.outlook.moves import matters, moves
from swardcast.outlook.states import DateRange, JobOutlook, Milestone, ReasonKind, Work
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from swardcast.records.log import (
    ANNOUNCED,
    BackToNormal,
    Correction,
    Entry,
    GrowthHeldBack,
    MorningStatus,
    NoteToMembers,
    Observation,
    Progress,
    morning_name,
)
from swardcast.records.operations import label_counts
from swardcast.records.plan import Job
from swardcast.records.standing import rank, withdrawn_ids

__all__ = ["FOLLOWED_DAYS", "JobChange", "JobStory", "tell_story"]

FOLLOWED_DAYS: Final = 300
"""Days since the last entry for which a job is followed, through a winter: as far as the weather is kept."""

_MORNING: Final = time(7, 0)  # when a new day's weather counts as known to members
_GOING_ON: Final = (Work.UNDER_WAY, Work.HELD_UP)
_NO_WORK: Final = (Observation, GrowthHeldBack, NoteToMembers)


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


@dataclass(frozen=True, slots=True, kw_only=True)
class _Moment:
    at: datetime
    id: str
    entry: Entry | None = None


@dataclass(frozen=True, slots=True)
class _About:
    """What the records say about a job at a moment, besides how it stands."""

    records: ClubRecords
    job: Job
    book: WeatherBook

    corrections: Sequence[Correction]
    notes: Sequence[NoteToMembers]

    @classmethod
    def of(cls, records: ClubRecords, job: Job, book: WeatherBook) -> _About:
        """Seek once what every moment asks for."""
        entries = records.entries
        corrections = [e for e in entries if isinstance(e, Correction) and _concerns(e, job, records)]
        notes = [e for e in entries if isinstance(e, NoteToMembers) and e.job == job.id]
        return cls(records, job, book, corrections, notes)

    def told(self, outlook: JobOutlook, at: datetime, before: Told | None) -> Told:
        """The job as a bulletin of that moment would tell it."""
        return Told(
            outlook=outlook,
            back_to_normal=self.normal(outlook, at, before.back_to_normal if before else None),
            withdrawn=withdrawn_ids(entry for entry in self.corrections if entry.head.at <= at),
            notes=frozenset(entry.head.id for entry in self.notes if entry.head.at <= at),
        )

    def normal(self, outlook: JobOutlook, at: datetime, published: DateRange | None) -> DateRange:
        """Back to normal; of work without a day, not begun on it or not reported on any more, none moves so far."""
        no_day = outlook.work is Work.PLANNED and (outlook.is_put_off or outlook.starts < self.day(at))
        no_day = no_day or outlook.unreported is not None
        return published if no_day and published is not None else outlook.dates[Milestone.BACK_TO_NORMAL]

    def coming(self, at: datetime) -> list[Fixture]:
        """Fixtures that are not over."""
        return [fixture for fixture in self.records.fixtures if fixture.last_day >= self.day(at)]

    def day(self, at: datetime) -> date:
        """The local day of a moment."""
        return at.astimezone(self.records.club.time_zone).date()

    def without(self, moment: _Moment, published: DateRange) -> DateRange:
        """Back to normal as it would stand at a moment without its entry."""
        file = moment.entry.head.file if moment.entry is not None else ""
        jobs = assess_jobs(self.records, moment.at, self.book, only=self.job.id, without=file)
        return self.normal(jobs[self.job.id], moment.at, published)

    def in_weather_of(self, then: datetime, at: datetime) -> DateRange:
        """Back to normal as it would stand at a moment with no more known of the weather than before."""
        jobs = assess_jobs(self.records, at, self.book, only=self.job.id, weather_of=then)
        return jobs[self.job.id].dates[Milestone.BACK_TO_NORMAL]


@dataclass(slots=True)
class _Teller:
    """Hears how a job stands moment by moment.

    Args:
        about: the job.
        changes: what was worth telling so far.
        heard: how the job stood at the moment before, or None.
        told: what was last told, or None.
    """

    about: _About
    changes: list[JobChange] = field(default_factory=list)
    heard: JobOutlook | None = None
    told: Told | None = None

    def stands_still(self, last_entry: date, at: datetime) -> bool:
        """Whether nobody reports on the work any more, or so long nothing was entered that it is followed no more."""
        if self.heard is not None and self.heard.unreported is not None:
            return True
        return self.about.day(at) > last_entry + timedelta(days=FOLLOWED_DAYS)

    def hear(self, moment: _Moment, outlook: JobOutlook) -> None:
        job = self.about.job.id
        last = self.changes[-1] if self.changes else None
        before, self.heard = self.heard, outlook
        now = self.about.told(outlook, moment.at, self.told)
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

    def _cause(self, moment: _Moment, last: JobChange, now: Told, news: News, *, learnt: bool) -> tuple[Cause, str]:
        """Why it changed, with typed words: the entry, if the date would not have moved without it, or what else."""
        typed = str(getattr(moment.entry, "because", ""))
        if last.outlook.starts != now.outlook.starts:
            return Cause.PLAN, typed
        if moment.entry is None and news.is_of_surfaces_alone:
            return _goes_on(now.outlook)
        published, coming, today = last.news.back_to_normal, self.about.coming(moment.at), self.about.day(moment.at)
        entry, without = moment.entry, self.about.without
        by_entry = entry is not None and not matters(published, without(moment, published), today, coming)
        if by_entry or news.before is None:
            return entry_cause(moment.entry, self.about.job.id), typed
        if learnt:
            return Cause.LEARNT, typed
        view, before = self.about.book.at(moment.at), self.about.book.at(last.at)
        cause = weather_cause(view, before, last.at.date(), published, now.back_to_normal)
        return self._unfinished(moment, last, now, explained=cause is not Cause.WEATHER) or (cause, typed)

    def _unfinished(self, moment: _Moment, last: JobChange, now: Told, *, explained: bool) -> tuple[Cause, str] | None:
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
    about = _About.of(records, job, book)
    teller = _Teller(about=about)
    over = False  # by the sum: then no weather changes it any more, but an entry may
    heard_of = about.day(as_of)
    for moment in _moments(records, job, as_of):
        if moment.entry is None and (over or teller.stands_still(heard_of, moment.at)):
            continue
        if moment.entry is not None or teller.heard is None:
            heard_of = about.day(moment.at)
        outlook = assess_jobs(records, moment.at, book, only=job.id)[job.id]
        teller.hear(moment, outlook)
        over = outlook.work is Work.BACK_TO_NORMAL and (over or moment.entry is None)
    return JobStory(job=job, changes=tuple(teller.changes))


def _moments(records: ClubRecords, job: Job, as_of: datetime) -> Iterator[_Moment]:
    zone = records.club.time_zone
    announced = datetime.combine(job.announced, time(0, 0), tzinfo=zone)
    entries = [entry for entry in records.entries if entry.head.at <= as_of and _concerns(entry, job, records)]
    moments = [_Moment(at=announced, id=ANNOUNCED)]
    moments += [
        _Moment(at=entry.head.at, id=entry.head.id, entry=entry) for entry in entries if entry.head.at > announced
    ]
    worked = [entry.head.true_from.date() for entry in entries if not isinstance(entry, _NO_WORK)]
    begun = [entry.head.true_from.date() for entry in entries if isinstance(entry, Progress)]
    if begun and (job.lasts or label_counts(job.operations)):  # then a morning entry may end it
        moments += [
            _Moment(at=entry.head.at, id=entry.head.id, entry=entry)
            for entry in records.entries
            if isinstance(entry, MorningStatus) and min(begun) <= entry.head.at.astimezone(zone).date()
        ]
    if worked:
        last = as_of.astimezone(zone).date()
        moments += _mornings(records, min(worked) + timedelta(days=1), last, begun=min(begun, default=last))
    # What another job teaches can move a plan, until its own work begins.
    until = min(worked) if worked else as_of.astimezone(zone).date()
    moments += [
        _Moment(at=entry.head.at, id=entry.head.id, entry=entry)
        for entry in records.entries
        if isinstance(entry, BackToNormal)
        and entry.job != job.id
        and announced < entry.head.at
        and entry.head.true_from.date() <= until
    ]
    # Of several entries at a minute, the one that says most is what members are told: done, rather than started.
    known = (moment for moment in moments if moment.at <= as_of)
    yield from sorted(
        known, key=lambda moment: (moment.at.timestamp(), -rank(moment.entry) if moment.entry else 0, moment.id)
    )


def _concerns(entry: Entry, job: Job, records: ClubRecords) -> bool:
    if getattr(entry, "job", None) == job.id:
        return True
    if isinstance(entry, GrowthHeldBack):
        return not set(entry.surfaces).isdisjoint(job.surfaces)
    corrected = getattr(entry, "corrects", None)
    if corrected is None:
        return False
    return any(other.head.id == corrected and _concerns(other, job, records) for other in records.entries)


def _is_of(entry: Entry | None, job: str) -> bool:
    """Whether an entry is told with the job: a morning entry is told as course status."""
    return not isinstance(entry, MorningStatus) and getattr(entry, "job", job) == job


def _mornings(records: ClubRecords, first: date, last: date, *, begun: date) -> list[_Moment]:
    """Mornings after a day whose weather was recorded, and all after the day on which the work began.

    Work that goes on takes a day longer with each day, and what heals without a record grows as in past years.
    """
    days = (first + timedelta(days=step) for step in range((last - first).days + 1))
    return [
        _Moment(at=datetime.combine(day, _MORNING, tzinfo=records.club.time_zone), id=morning_name(day))
        for day in days
        if day > begun or day - timedelta(days=1) in records.weather.observed_c
    ]


def _taught(outlook: JobOutlook | None) -> set[str]:
    """The entries whose lessons the dates rest on."""
    recoveries = [work.recovery for work in outlook.surfaces if work.recovery is not None] if outlook else []
    return {lesson.source for recovery in recoveries for lesson in recovery.lessons}
