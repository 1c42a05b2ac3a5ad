"""What a log and a plan leave open, so that the manager may have forgotten it: typed facts, no words."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Final

from swardcast.outlook.ledger import JobFacts, job_facts
from swardcast.outlook.play import OPEN
from swardcast.outlook.states import Unreported
from swardcast.outlook.unreported import awaited_dates
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import ProductUse
from swardcast.records.plan import Job
from swardcast.records.standing import standing_entries

__all__ = ["labels_while_open", "never_begun", "not_reported"]

_NOTICED_AFTER: Final = timedelta(
    days=7
)  # a manager who comes to the log once a week has entered it by then: judgement


def _facts(records: ClubRecords, as_of: datetime) -> list[JobFacts]:
    entries = standing_entries(records.known_at(as_of).entries)
    return [job_facts(job, entries) for job in records.jobs.values()]


def never_begun(records: ClubRecords, as_of: datetime) -> tuple[JobFacts, ...]:
    """List jobs whose planned day is over by more than a week, of which no entry says that they began.

    Args:
        records: the club's records.
        as_of: the moment, aware.

    Returns:
        What plan and log say of them, in the plan's order; nothing of jobs called off or postponed.
    """
    today = as_of.astimezone(records.club.time_zone).date()
    return tuple(facts for facts in _facts(records, as_of) if facts.is_overdue(today - _NOTICED_AFTER))


def not_reported(records: ClubRecords, as_of: datetime) -> tuple[tuple[JobFacts, Unreported], ...]:
    """List begun work of which members read that nobody reports on it any more.

    Args:
        records: the club's records.
        as_of: the moment, aware.

    Returns:
        What plan and log say of it, and when it was due; in the plan's order.
    """
    local, entries = as_of.astimezone(records.club.time_zone), standing_entries(records.known_at(as_of).entries)
    dated = ((facts, awaited_dates(facts, records, entries, local)[1]) for facts in _facts(records, as_of))
    return tuple((facts, silence) for facts, silence in dated if silence is not None)


def labels_while_open(records: ClubRecords, as_of: datetime) -> tuple[tuple[Job, ProductUse], ...]:
    """List products that are to be used on surfaces which stay open by plan: what their labels say may forbid it.

    Args:
        records: the club's records.
        as_of: the moment, aware.

    Returns:
        Jobs that are neither done nor called off, each with a product of it, in the plan's order.
    """
    return tuple(
        (facts.job, use)
        for facts in _facts(records, as_of)
        if facts.job.while_working in OPEN and facts.called_off is None
        if any(there.done is None for there in facts.surfaces.values())
        for use in facts.job.operations
        if isinstance(use, ProductUse)
    )
