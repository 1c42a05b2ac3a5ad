"""What was promised on the day of each job, beside the day on which the log calls it back to normal."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from enum import Enum

from swardcast.outlook.ledger import JobFacts, job_facts
from swardcast.outlook.memory import assess_jobs, memory_of
from swardcast.outlook.states import DateRange, Milestone
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Entry
from swardcast.records.log_by_job import LogByJob
from swardcast.records.plan import Job
from swardcast.records.standing import StandingEntries, standing_entries

__all__ = ["Kept", "Outcome", "track_record"]


class Outcome(Enum):
    """What came of a promised range."""

    KEPT = "kept"
    MISSED = "missed"
    SOONER = "sooner"


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """A promise, and what came of it.

    Args:
        job: the job.
        done_on: the day on which the last of its surfaces was finished.
        promised: back to normal as computed at that moment, for the last of its surfaces.
        normal_on: the day on which the log calls the last of them back to normal, or None so far.
    """

    job: Job
    done_on: date
    promised: DateRange
    normal_on: date | None

    @property
    def is_judged(self) -> bool:
        """Whether there is both a date and an end to compare it with."""
        return self.promised.is_given and not self.promised.is_fact and self.normal_on is not None

    @property
    def is_inside(self) -> bool:
        """Whether the end came from the early day to the last day to allow for."""
        early, last = self.promised.early, self.promised.allow_until
        return self.normal_on is not None and last is not None and (early or last) <= self.normal_on <= last

    @property
    def outcome(self) -> Outcome:
        """Whether the end came inside the range, after it or before it; only of a promise that is judged."""
        if self.is_inside:
            return Outcome.KEPT
        return Outcome.MISSED if (self.late_days or 0) > 0 else Outcome.SOONER

    @property
    def days_past_the_range(self) -> int:
        """Days from the day to allow for to the end, 0 when it came by then."""
        last = self.promised.allow_until
        return max(0, (self.normal_on - last).days) if self.normal_on is not None and last is not None else 0

    @property
    def late_days(self) -> int | None:
        """Days from the likely day to the end, below 0 when it came sooner; None when not to be judged."""
        if self.normal_on is None or self.promised.likely is None:
            return None
        return (self.normal_on - self.promised.likely).days


def track_record(records: ClubRecords, as_of: datetime, book: WeatherBook) -> tuple[Kept, ...]:
    """Recompute, from the records alone, what was promised on the day of each finished job.

    Assumes that a promise is what the program says at the first moment at which every surface was entered as done,
    knowing only what had been entered by then; a later correction or a new start does not change it. Work whose date is
    a rule of thumb promises nothing that is computed.

    Args:
        records: the club's records.
        as_of: the moment, aware.
        book: the club's weather.

    Returns:
        Jobs whose work is finished and whose date is computed, oldest first.
    """
    known = records.known_at(as_of)
    log = LogByJob(known.entries)
    kept = (_kept(records, job, log.of(job.id), book) for job in known.jobs.values() if job.normal_after is None)
    return tuple(sorted((one for one in kept if one is not None), key=lambda one: (one.done_on, one.job.id)))


def _kept(records: ClubRecords, job: Job, about: Sequence[Entry], book: WeatherBook) -> Kept | None:
    """Follow a job entry by entry: the promise as the log stood then, the days as it stands now."""
    moments = sorted({entry.head.at for entry in about if getattr(entry, "job", "") == job.id})
    promised_at = next((at for at in moments if _is_done(_facts_at(job, about, at))), None)
    if promised_at is None:
        return None
    standing = standing_entries(about)
    by_then = (StandingEntries(entry for entry in standing if entry.head.at <= at) for at in moments)
    seen = [facts for told in by_then if _is_done(facts := job_facts(job, told))]
    if not seen:
        return None
    done = [surface.done.head.true_from.date() for surface in seen[0].surfaces.values() if surface.done]
    ended = next((facts for facts in seen if all(surface.normal for surface in facts.surfaces.values())), None)
    normal = [surface.normal for surface in ended.surfaces.values()] if ended is not None else []
    return Kept(
        job=job,
        done_on=max(done),
        promised=_promised(records, job.id, promised_at, book),
        normal_on=max((entry.head.true_from.date() for entry in normal if entry), default=None),
    )


def _promised(records: ClubRecords, job: str, at: datetime, book: WeatherBook) -> DateRange:
    """The date alone is kept, not all of how the job stood: nothing else of it is asked again."""

    def promise() -> DateRange:
        return assess_jobs(records, at, book, only=job)[job].dates[Milestone.BACK_TO_NORMAL]

    return memory_of(records, book).again(f"promised/{job}", job, at, DateRange, promise)


def _facts_at(job: Job, about: Sequence[Entry], at: datetime) -> JobFacts:
    known = (entry for entry in about if entry.head.at_s <= at.timestamp())
    return job_facts(job, standing_entries(known))


def _is_done(facts: JobFacts) -> bool:
    return facts.called_off is None and all(surface.done for surface in facts.surfaces.values())
