"""What a log and a plan leave open, so that the manager may have forgotten it: typed facts, no words."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Final

from swardcast.outlook.ledger import JobFacts, job_facts
from swardcast.outlook.play import OPEN
from swardcast.outlook.states import Unreported
from swardcast.outlook.unreported import awaited_dates, awaits_reports
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import ProductUse
from swardcast.records.plan import Job
from swardcast.records.standing import standing_entries

__all__ = ["LeftOpen"]

_NOTICED_AFTER: Final = timedelta(
    days=7
)  # a manager who comes to the log once a week has entered it by then: judgement


class LeftOpen:
    """What is left open at a moment; the facts of each job are gathered once.

    Args:
        records: the club's records.
        as_of: the moment, aware.
    """

    def __init__(self, records: ClubRecords, as_of: datetime) -> None:
        self._records, self._local = records, as_of.astimezone(records.club.time_zone)
        self._entries = standing_entries(records.known_at(as_of).entries)
        jobs = (job for job in records.jobs.values() if not job.is_withdrawn(as_of))
        self._facts = [job_facts(job, self._entries) for job in jobs]

    def never_begun(self) -> tuple[JobFacts, ...]:
        """List jobs whose planned day is over by more than a week, of which no entry says that they began.

        Returns:
            What plan and log say of them, in the plan's order; nothing of jobs called off or postponed.
        """
        day = self._local.date() - _NOTICED_AFTER
        return tuple(facts for facts in self._facts if facts.is_overdue(day))

    def not_reported(self) -> tuple[tuple[JobFacts, Unreported], ...]:
        """List begun work of which members read that nobody reports on it any more.

        Returns:
            What plan and log say of it, and when it was due; in the plan's order.
        """
        awaited = (facts for facts in self._facts if awaits_reports(facts))
        dated = ((facts, awaited_dates(facts, self._records, self._entries, self._local)[1]) for facts in awaited)
        return tuple((facts, silence) for facts, silence in dated if silence is not None)

    def labels_while_open(self) -> tuple[tuple[Job, ProductUse], ...]:
        """List products that are to be used on surfaces which stay open by plan: what their labels say may forbid it.

        Returns:
            Jobs that are neither done nor called off, each with a product of it, in the plan's order.
        """
        return tuple(
            (facts.job, use)
            for facts in self._facts
            if facts.job.while_working in OPEN and facts.called_off is None
            if any(there.done is None for there in facts.surfaces.values())
            for use in facts.job.operations
            if isinstance(use, ProductUse)
        )
