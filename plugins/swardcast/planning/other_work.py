"""Work that stays where it is planned while days are sought for another: the crew may have both on its hands."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime

from swardcast.outlook.what_if import facts_as_known
from swardcast.planning.blocked_days import days_of_work
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Job

__all__ = ["planned_within"]


def planned_within(records: ClubRecords, as_of: datetime, spans: Sequence[tuple[date, date]]) -> tuple[Job, ...]:
    """List the jobs that nobody has begun and whose days of work fall into some days.

    Args:
        records: the club's records, without the jobs whose days are sought.
        as_of: the moment, aware.
        spans: first and last days.

    Returns:
        Jobs of any surfaces, in the order of the plan.
    """
    found = []
    for facts in facts_as_known(records, as_of).values():
        if facts.called_off or facts.put_off or facts.is_begun:
            continue
        last = days_of_work(facts.job, facts.starts, records.club.working_days)[-1]
        if any(facts.starts <= end and last >= begin for begin, end in spans):
            found.append(facts.job)
    return tuple(found)
