"""Work that stays where it is planned while days are sought for another: the crew may have both on its hands."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime

from swardcast.outlook.what_if import facts_as_known
from swardcast.planning.blocked_days import days_of_work
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Job

__all__ = ["PlannedWork", "planned_work", "within"]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedWork:
    """A job that nobody has begun.

    Args:
        job: the job.
        first: its first day of work.
        last: its last.
    """

    job: Job
    first: date
    last: date


def planned_work(records: ClubRecords, as_of: datetime) -> tuple[PlannedWork, ...]:
    """List the jobs that nobody has begun, with their days of work.

    Args:
        records: the club's records.
        as_of: the moment, aware.

    Returns:
        Jobs of any surfaces, in the order of the plan.
    """
    return tuple(
        PlannedWork(
            job=facts.job,
            first=facts.starts,
            last=days_of_work(facts.job, facts.starts, records.club.working_days)[-1],
        )
        for facts in facts_as_known(records, as_of).values()
        if not (facts.called_off or facts.put_off or facts.is_begun)
    )


def within(works: Iterable[PlannedWork], spans: Sequence[tuple[date, date]]) -> tuple[Job, ...]:
    """List the jobs whose days of work fall into some days.

    Args:
        works: work, without the jobs whose days are sought.
        spans: first and last days.

    Returns:
        Jobs, in the same order.
    """
    return tuple(one.job for one in works if any(one.first <= end and one.last >= begin for begin, end in spans))
