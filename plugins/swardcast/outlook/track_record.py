"""What was promised on the day of each job, beside the day on which the log calls it back to normal."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime

from swardcast.outlook.course import assess_jobs
from swardcast.outlook.ledger import JobFacts, job_facts, standing_entries
from swardcast.outlook.states import DateRange, Milestone
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Job

__all__ = ["Kept", "track_record"]


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
        return self.promised.is_given and self.normal_on is not None

    @property
    def is_inside(self) -> bool:
        """Whether the end came from the early day to the last day to allow for."""
        early, last = self.promised.early, self.promised.allow_until
        return self.normal_on is not None and last is not None and (early or last) <= self.normal_on <= last

    @property
    def late_days(self) -> int | None:
        """Days from the likely day to the end, below 0 when it came sooner; None when not to be judged."""
        if self.normal_on is None or self.promised.likely is None:
            return None
        return (self.normal_on - self.promised.likely).days


def track_record(records: ClubRecords, as_of: datetime, book: WeatherBook) -> tuple[Kept, ...]:
    """Recompute, from the records alone, what was promised on the day of each finished job.

    Assumes that a promise is what the program says at the moment when the last surface was entered as done, knowing
    only what had been entered by then. Work whose date is a rule of thumb promises nothing that is computed.

    Args:
        records: the club's records.
        as_of: the moment, aware.
        book: the club's weather.

    Returns:
        Jobs whose work is finished and whose date is computed, oldest first.
    """
    known = records.known_at(as_of)
    entries = standing_entries(known.entries)
    kept = []
    for job in known.jobs.values():
        facts = job_facts(job, entries)
        finished = _finished_at(facts)
        if finished is None or job.normal_after is not None:
            continue
        promised = assess_jobs(records, finished[0], book, only=job.id)[job.id].dates[Milestone.BACK_TO_NORMAL]
        normal = [surface.normal for surface in facts.surfaces.values() if surface.normal is not None]
        ended = len(normal) == len(facts.surfaces)
        kept.append(
            Kept(
                job=job,
                done_on=finished[1],
                promised=promised,
                normal_on=max(entry.head.true_from.date() for entry in normal) if ended else None,
            )
        )
    return tuple(sorted(kept, key=lambda one: (one.done_on, one.job.id)))


def _finished_at(facts: JobFacts) -> tuple[datetime, date] | None:
    """When the last surface was entered as done, and the day on which it was; None while some are not."""
    done = [surface.done for surface in facts.surfaces.values()]
    if facts.called_off is not None or not done or None in done:
        return None
    entries = [entry for entry in done if entry is not None]
    return max(entry.head.at for entry in entries), max(entry.head.true_from.date() for entry in entries)
