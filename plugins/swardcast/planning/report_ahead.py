"""What lies ahead of a report: jobs of the period that follows, and the fixtures that they meet."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from swardcast.notices.fixtures import meets_nothing
from swardcast.notices.spans import first_day_of_work
from swardcast.outlook.closures import Touch
from swardcast.outlook.fixtures import FixtureOutlook, fixtures_ahead
from swardcast.outlook.states import JobOutlook, Work
from swardcast.records.fixtures import Fixture

__all__ = ["Ahead", "jobs_ahead"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Ahead:
    """A job of the period that follows.

    Args:
        outlook: how it stands.
        meets: the fixtures that it may still disturb, the first first.
    """

    outlook: JobOutlook
    meets: tuple[FixtureOutlook, ...]


def jobs_ahead(
    outlooks: Iterable[JobOutlook], fixtures: Sequence[Fixture], first: date, last: date, today: date
) -> tuple[Ahead, ...]:
    """List the jobs of the period that follows.

    Args:
        outlooks: jobs, by their first day.
        fixtures: the club's fixtures, the first first.
        first: the first day of that period.
        last: its last day.
        today: the day of the report.

    Returns:
        Jobs whose first day, as it stands now, lies in it, without those called off.
    """
    return tuple(
        Ahead(outlook=outlook, meets=tuple(_met(outlook, fixtures, today)))
        for outlook in outlooks
        if outlook.work is not Work.CALLED_OFF
        and not outlook.is_put_off
        and first <= first_day_of_work(outlook) <= last
    )


def _met(outlook: JobOutlook, fixtures: Sequence[Fixture], today: date) -> Iterable[FixtureOutlook]:
    """Those that the job may find disturbed; the one after it, which reassures members, is left out."""
    for one in fixtures_ahead(outlook, fixtures, today):
        if not meets_nothing(one, outlook) and not (one.in_work is Touch.NO and one.in_range is Touch.NO):
            yield one
