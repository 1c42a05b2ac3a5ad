"""Each surface of each job in the plan and in the log: when it is planned, when it was done, when it is to be done."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime
from enum import Enum

from swardcast.outlook.ledger import JobFacts, as_really_done, job_facts
from swardcast.outlook.unreported import awaited_dates
from swardcast.outlook.what_if import as_the_manager_knows
from swardcast.outlook.working_days import finishing_days
from swardcast.records.club import Surface
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Progress
from swardcast.records.operations import Operation
from swardcast.records.plan import Job
from swardcast.records.standing import StandingEntries, standing_entries

__all__ = ["Stage", "StageOfWork", "stages_of"]


class Stage(Enum):
    """How far a piece of work is; what is planned is counted once more as done or still to do."""

    PLANNED = "planned"
    DONE = "done"
    TO_COME = "to come"


@dataclass(frozen=True, slots=True, kw_only=True)
class StageOfWork:
    """A job on one surface, at one of its stages.

    Args:
        stage: which one.
        job: the job.
        surface: the surface.
        day: the day on which it is planned to be finished, was finished or is likely to be; None where nobody knows.
        operations: what is planned, or what was really done as far as the log tells.
        told_by: the entry that tells how it was really done, or None.
        is_overdue: whether it is to come, and the day on which it should have been done is over.
        is_called_off: whether it is planned and never to come, since it was called off.
    """

    stage: Stage
    job: Job
    surface: Surface
    day: date | None
    operations: tuple[Operation, ...]
    told_by: Progress | None = None
    is_overdue: bool = False
    is_called_off: bool = False

    def source_of(self, operation: Operation) -> str:
        """The entry that tells how an operation was really done, by its id, or ""."""
        told_by = self._teller_of(operation)
        return told_by.head.id if told_by is not None else ""

    def together(self, operation: Operation) -> tuple[str, ...]:
        """Ids of the surfaces that a mass in all is meant for: those of the entry that tells it, or of the job."""
        told_by = self._teller_of(operation)
        return told_by.surfaces if told_by is not None else self.job.surfaces

    def _teller_of(self, operation: Operation) -> Progress | None:
        """The entry that tells this very operation; one that is planned may look the same."""
        is_told = self.told_by is not None and any(one is operation for one in self.told_by.as_done)
        return self.told_by if is_told else None


def stages_of(records: ClubRecords, as_of: datetime) -> tuple[StageOfWork, ...]:
    """Lay out plan and log, as the manager knows them at a moment.

    Corrections are obeyed: an entry withdrawn or replaced counts no more. Work called off is planned and not to come.

    Args:
        records: the club's records.
        as_of: the moment, aware.

    Returns:
        What is planned on each surface, and what is done there or to come; jobs in the plan's order.
    """
    known = as_the_manager_knows(records, as_of)
    entries = standing_entries(known.entries)
    local = as_of.astimezone(known.club.time_zone)
    return tuple(
        stage for job in known.jobs.values() for stage in _stages(job_facts(job, entries), known, entries, local)
    )


def _stages(facts: JobFacts, known: ClubRecords, entries: StandingEntries, local: datetime) -> Iterator[StageOfWork]:
    job = facts.job
    dates, _ = awaited_dates(facts, known, entries, local)
    days = finishing_days(facts.starts, len(job.surfaces), a_day=job.surfaces_a_day, weekdays=known.club.working_days)
    has_no_day = facts.put_off is not None
    for name, planned in zip(job.surfaces, days, strict=True):
        surface, here = known.surfaces[name], facts.surfaces[name]
        yield StageOfWork(
            stage=Stage.PLANNED,
            job=job,
            surface=surface,
            day=None if has_no_day and not here.done else planned,
            operations=job.operations,
            is_called_off=here.done is None and facts.called_off is not None,
        )
        if here.done is None and facts.called_off is not None:
            continue
        likely = dates[name].finish.likely
        waits = has_no_day and here.done is None
        is_late = here.done is None and not waits and likely is not None and likely < local.date()
        yield StageOfWork(
            stage=Stage.DONE if here.done is not None else Stage.TO_COME,
            job=job,
            surface=surface,
            day=None if waits else local.date() if is_late else likely,
            operations=as_really_done(job.operations, here.as_done),
            told_by=here.told_by,
            is_overdue=is_late,
        )
