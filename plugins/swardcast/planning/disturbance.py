"""How long a job, begun on a day, would disturb play: a function of the job, its surfaces and its first day.

`disturbances` is what everything that plans rests on: choices of work compare different operations on one day, a search
for days the same operations on many. Both ask for all jobs in one go, which is much faster.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime

import numpy as np
from numpy.typing import NDArray

from swardcast.outlook.job_ranges import sampled_recoveries, samples_of_last
from swardcast.outlook.states import JobOutlook, Milestone
from swardcast.outlook.weather_book import WeatherBook
from swardcast.outlook.what_if import assess_each_alone
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Job
from swardcast.turf.ensemble import HORIZON_DAYS

__all__ = ["Disturbance", "begun_on", "disturbances"]

Floats = NDArray[np.float64]

_HEALING = (Milestone.SETTLED, Milestone.HOLES_CLOSED, Milestone.BACK_TO_NORMAL)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Disturbance:
    """How long one job would disturb play.

    Args:
        outlook: how the job would stand, with the dates that its notice would tell.
        days: days from the job's first day until the last of its surfaces reaches each milestone, as equally likely
            values, shape (members, errors), infinite where the horizon does not bring it; nothing where healing is not
            computed, or nothing has to heal.
    """

    outlook: JobOutlook
    days: dict[Milestone, Floats]

    @property
    def starts(self) -> date:
        """The job's first day."""
        return self.outlook.starts

    def expected_days(self, milestone: Milestone = Milestone.BACK_TO_NORMAL) -> float | None:
        """Average the days of disturbance.

        Args:
            milestone: settled, holes closed or back to normal.

        Returns:
            Days from the first day of the work, 0 or more, of which what the horizon does not bring counts as the
            horizon; None where nothing is computed.
        """
        if milestone not in self.days:
            return None
        return float(np.minimum(self.days[milestone], HORIZON_DAYS).mean())

    def chance_on(self, days: Sequence[date], milestone: Milestone = Milestone.BACK_TO_NORMAL) -> Floats | None:
        """Estimate the chance that play is still disturbed on the morning of each of several days.

        Args:
            days: days; before the first day of the work nothing is disturbed by it.
            milestone: the milestone that ends the disturbance.

        Returns:
            Fractions from 0 to 1, shape (days,), or None where nothing is computed.
        """
        if milestone not in self.days:
            return None
        after = np.array([(day - self.starts).days for day in days], dtype=np.float64)
        ordered = np.sort(self.days[milestone], axis=None)
        reached = np.searchsorted(ordered, after, side="right") / ordered.size
        return np.asarray(np.where(after < 0, 0.0, 1.0 - reached))


def begun_on(job: Job, day: date, surfaces: Sequence[str] = ()) -> Job:
    """Plan a job for another day, or on other surfaces.

    Args:
        job: the job.
        day: its first day.
        surfaces: ids of its surfaces in the order of the work, or nothing for those it has.

    Returns:
        The job, announced at the latest on its first day.
    """
    chosen = tuple(surfaces) or job.surfaces
    return replace(job, starts=day, announced=min(job.announced, day), surfaces=chosen)


def disturbances(
    records: ClubRecords, as_of: datetime, book: WeatherBook, jobs: Sequence[Job], *, instead_of: str = ""
) -> tuple[Disturbance, ...]:
    """Work out how long each of several jobs would disturb play, as if it alone were added to the plan.

    Args:
        records: the club's records.
        as_of: the moment, aware; no job starts before its day.
        book: the club's weather.
        jobs: the jobs asked about, each with its operations, surfaces and first day.
        instead_of: id of the planned job in whose place they stand, or "".

    Returns:
        How long each would disturb play, in the same order.
    """
    outlooks = assess_each_alone(records, as_of, book, jobs, instead_of=instead_of)
    return tuple(Disturbance(outlook=outlook, days=_days(outlook)) for outlook in outlooks)


def _days(outlook: JobOutlook) -> dict[Milestone, Floats]:
    recoveries = sampled_recoveries(outlook.surfaces)
    if not recoveries or len(recoveries) < len(outlook.surfaces):
        return {}
    found = {}
    for milestone in _HEALING:
        samples, first = samples_of_last(recoveries, milestone)
        found[milestone] = samples + (first - outlook.starts).days
    reopening = outlook.dates[Milestone.REOPENING].likely
    if outlook.job.reopens_after is not None and reopening is not None:
        closed = float((reopening - outlook.starts).days)
        found[Milestone.BACK_TO_NORMAL] = np.maximum(found[Milestone.BACK_TO_NORMAL], closed)
    return found
