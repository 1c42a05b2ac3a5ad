"""A job's story: the job replayed over the moments at which something became known, and what of it was told when.

`changes` decides what is worth telling; every move states its cause. Moments come from the records (entries, and
mornings on which a day's weather became known), never from the clock.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime, time, timedelta
from typing import Final

from swardcast.outlook.causes import Cause, entry_cause, weather_cause
from swardcast.outlook.changes import News, Told, matters, news_between
from swardcast.outlook.course import assess_jobs
from swardcast.outlook.states import DateRange, JobOutlook, Milestone, Work
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from swardcast.records.log import BackToNormal, Correction, Entry, GrowthHeldBack, NoteToMembers, Observation
from swardcast.records.plan import Job
from swardcast.records.standing import rank, withdrawn_ids

__all__ = ["JobChange", "JobStory", "tell_story"]

_MORNING: Final = time(7, 0)  # when a new day's weather counts as known to members
_FOLLOWED_AFTER_DONE_DAYS: Final = 120
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
    """A job's changes so far, oldest first; the last one carries the published date."""

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

    def told(self, outlook: JobOutlook, at: datetime) -> Told:
        """The job as a bulletin of that moment would tell it."""
        return Told(
            outlook=outlook,
            back_to_normal=outlook.dates[Milestone.BACK_TO_NORMAL],
            withdrawn=withdrawn_ids(entry for entry in self.corrections if entry.head.at <= at),
            notes=frozenset(entry.head.id for entry in self.notes if entry.head.at <= at),
        )

    def coming(self, at: datetime) -> list[Fixture]:
        """Fixtures that are not over."""
        today = at.astimezone(self.records.club.time_zone).date()
        return [fixture for fixture in self.records.fixtures if fixture.last_day >= today]

    def without(self, moment: _Moment) -> DateRange:
        """Back to normal as it would stand at a moment without its entry."""
        fewer = tuple(
            entry for entry in self.records.entries if moment.entry and entry.head.file != moment.entry.head.file
        )
        jobs = assess_jobs(replace(self.records, entries=fewer), moment.at, self.book, only=self.job.id)
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

    def hear(self, moment: _Moment, outlook: JobOutlook) -> None:
        job = self.about.job.id
        last = self.changes[-1] if self.changes else None
        before, self.heard = self.heard, outlook
        now = self.about.told(outlook, moment.at)
        news = news_between(self.told, now, self.about.coming(moment.at))
        if news is None:
            return
        self.told = replace(now, back_to_normal=news.back_to_normal)
        cause = (
            Cause.ANNOUNCED
            if last is None
            else self._cause(moment, last, now, learnt=_taught(before) != _taught(outlook))
        )
        self.changes.append(
            JobChange(
                id=f"{job}/{moment.id}",
                at=moment.at,
                revision=len(self.changes) + 1,
                news=news,
                cause=cause,
                outlook=outlook,
                because=str(getattr(moment.entry, "because", "")),
                entry=moment.entry if getattr(moment.entry, "job", job) == job else None,
            )
        )

    def _cause(self, moment: _Moment, last: JobChange, now: Told, *, learnt: bool) -> Cause:
        """Why it changed: the entry, if the date would not have moved without it; else the weather."""
        if last.outlook.starts != now.outlook.starts:
            return Cause.PLAN
        published, coming = last.news.back_to_normal, self.about.coming(moment.at)
        by_entry = moment.entry is not None and not matters(published, self.about.without(moment), coming)
        if by_entry or not matters(published, now.back_to_normal, coming):
            return entry_cause(moment.entry, self.about.job.id)
        if learnt:
            return Cause.LEARNT
        view, before = self.about.book.at(moment.at), self.about.book.at(last.at)
        return weather_cause(view, before, last.at.date(), published, now.back_to_normal)


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
    teller = _Teller(about=_About.of(records, job, book))
    over = False  # by the sum: then no weather changes it any more, but an entry may
    for moment in _moments(records, job, as_of):
        if over and moment.entry is None:
            continue
        outlook = assess_jobs(records, moment.at, book, only=job.id)[job.id]
        teller.hear(moment, outlook)
        over = outlook.work is Work.BACK_TO_NORMAL and (over or moment.entry is None)
    return JobStory(job=job, changes=tuple(teller.changes))


def _moments(records: ClubRecords, job: Job, as_of: datetime) -> Iterator[_Moment]:
    zone = records.club.time_zone
    announced = datetime.combine(job.announced, time(0, 0), tzinfo=zone)
    entries = [entry for entry in records.entries if entry.head.at <= as_of and _concerns(entry, job, records)]
    moments = [_Moment(at=announced, id="announced")]
    moments += [
        _Moment(at=entry.head.at, id=entry.head.id, entry=entry) for entry in entries if entry.head.at > announced
    ]
    worked = [entry.head.true_from.date() for entry in entries if not isinstance(entry, _NO_WORK)]
    if worked:
        last = min(as_of.astimezone(zone).date(), max(worked) + timedelta(days=_FOLLOWED_AFTER_DONE_DAYS))
        moments += _mornings(records, min(worked) + timedelta(days=1), last)
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


def _mornings(records: ClubRecords, first: date, last: date) -> list[_Moment]:
    """Mornings after a day whose weather was recorded: only those can move a date."""
    days = (first + timedelta(days=step) for step in range((last - first).days + 1))
    return [
        _Moment(at=datetime.combine(day, _MORNING, tzinfo=records.club.time_zone), id=f"weather-{day.isoformat()}")
        for day in days
        if day - timedelta(days=1) in records.weather.observed_c
    ]


def _taught(outlook: JobOutlook | None) -> set[str]:
    """The entries whose lessons the dates rest on."""
    recoveries = [work.recovery for work in outlook.surfaces if work.recovery is not None] if outlook else []
    return {lesson.source for recovery in recoveries for lesson in recovery.lessons}
