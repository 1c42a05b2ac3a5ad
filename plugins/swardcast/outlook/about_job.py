"""What the records say about a job at a moment, besides how it stands."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime

from swardcast.outlook.changes import Told
from swardcast.outlook.memory import assess_jobs
from swardcast.outlook.states import DateRange, JobOutlook, Milestone, Work
from swardcast.outlook.story_moments import Log, Moment
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Correction, NoteToMembers
from swardcast.records.plan import Job
from swardcast.records.standing import withdrawn_ids

__all__ = ["AboutJob"]


@dataclass(frozen=True, slots=True)
class AboutJob:
    """What the records say about a job at a moment, besides how it stands.

    Args:
        records: the club's records.
        job: the job.
        book: the club's weather.
        corrections: the job's corrections, of all moments.
        notes: the manager's notes on it, of all moments.
    """

    records: ClubRecords
    job: Job
    book: WeatherBook
    corrections: Sequence[Correction]
    notes: Sequence[NoteToMembers]

    @classmethod
    def of(cls, log: Log, job: Job, book: WeatherBook) -> AboutJob:
        """Seek once what every moment asks for."""
        entries = log.concerning(job)
        corrections = [e for e in entries if isinstance(e, Correction)]
        notes = [e for e in entries if isinstance(e, NoteToMembers) and e.job == job.id]
        return cls(log.records, job, book, corrections, notes)

    def told(self, outlook: JobOutlook, at: datetime, before: Told | None) -> Told:
        """The job as a bulletin of that moment would tell it."""
        return Told(
            outlook=outlook,
            back_to_normal=self.normal(outlook, at, before.back_to_normal if before else None),
            withdrawn=self.withdrawn(at),
            notes=self.noted(at),
        )

    def withdrawn(self, at: datetime) -> frozenset[str]:
        """The job's entries that were withdrawn by a moment."""
        return withdrawn_ids(entry for entry in self.corrections if entry.head.at <= at)

    def noted(self, at: datetime) -> frozenset[str]:
        """The manager's notes on the job by a moment."""
        return frozenset(entry.head.id for entry in self.notes if entry.head.at <= at)

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

    def without(self, moment: Moment, published: DateRange) -> DateRange:
        """Back to normal as it would stand at a moment without its entry."""
        file = moment.entry.head.file if moment.entry is not None else ""
        jobs = assess_jobs(self.records, moment.at, self.book, only=self.job.id, without=file)
        return self.normal(jobs[self.job.id], moment.at, published)

    def in_weather_of(self, then: datetime, at: datetime) -> DateRange:
        """Back to normal as it would stand at a moment with no more known of the weather than before."""
        jobs = assess_jobs(self.records, at, self.book, only=self.job.id, weather_of=then)
        return jobs[self.job.id].dates[Milestone.BACK_TO_NORMAL]
