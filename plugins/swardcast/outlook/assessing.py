"""Jobs as they stand in records that are known: the one place where the assessor is set to work on a plan."""

from __future__ import annotations

from datetime import datetime

from swardcast.outlook.believed import Course
from swardcast.outlook.jobs import JobAssessor
from swardcast.outlook.ledger import Ledger
from swardcast.outlook.states import JobOutlook
from swardcast.outlook.weather_book import WeatherView
from swardcast.records.folder import ClubRecords

__all__ = ["assess_known"]


def assess_known(
    known: ClubRecords, as_of: datetime, view: WeatherView | None, only: str, course: Course, ledger: Ledger
) -> dict[str, JobOutlook]:
    """Assess the jobs of records as known at a moment.

    Args:
        known: the records as known then; of one job alone, those near it.
        as_of: the moment, aware.
        view: the weather as known, or None.
        only: id of the one job wanted, or "" for all; earlier jobs in the records are passed over.
        course: what is known of the course besides the jobs.
        ledger: what plan and log say of jobs, as gathered before.

    Returns:
        Jobs by id, in the plan's order.
    """
    facts = [ledger.facts_of(job, course.entries) for job in known.jobs.values()]
    local = as_of.astimezone(known.club.time_zone)
    return JobAssessor(records=known, as_of=local, view=view, course=course).assess(facts, only)
