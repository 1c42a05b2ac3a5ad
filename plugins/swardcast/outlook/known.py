"""Records as known at a moment, with what follows from them whatever the moment."""

from __future__ import annotations

from dataclasses import dataclass, field

from swardcast.outlook.bookkeeping import Ledger
from swardcast.outlook.ledger import JobFacts
from swardcast.outlook.work_dates import WorkDates
from swardcast.records.folder import ClubRecords
from swardcast.records.standing import StandingEntries, standing_among, standing_entries

__all__ = ["Known"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Known:
    """Records as known at a moment, and what follows from them alone.

    Args:
        records: the records.
        entries: their entries that stand.
        facts: what plan and log say of the jobs, in the plan's order.
        dates: dates of work that hang on nothing else, kept by `outlook.jobs`.
    """

    records: ClubRecords
    entries: StandingEntries
    facts: tuple[JobFacts, ...]
    dates: dict[JobFacts, dict[str, WorkDates]] = field(default_factory=dict)

    @classmethod
    def of(cls, records: ClubRecords, ledger: Ledger, spoken: StandingEntries | None = None) -> Known:
        """Gather it.

        Args:
            records: the records as known at a moment.
            ledger: what plan and log say of jobs, as gathered before.
            spoken: the entries of those of every moment, as `as_spoken` gives them, where that is known; else they are
                put in order here.

        Returns:
            What is known.
        """
        entries = standing_entries(records.entries) if spoken is None else standing_among(spoken, records.entries)
        facts = tuple(ledger.facts_of(job, entries) for job in records.jobs.values())
        return cls(records=records, entries=entries, facts=facts)

    def facts_of(self, job: str) -> JobFacts | None:
        """Give the facts of one job.

        Args:
            job: its id.

        Returns:
            Its facts, or None where it is not known.
        """
        return next((facts for facts in self.facts if facts.job.id == job), None)
