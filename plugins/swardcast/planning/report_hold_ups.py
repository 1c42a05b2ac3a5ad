"""Hold-ups of a period: when work was held up, why, and for how many working days."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta

from swardcast.planning.blocked_days import WorkCalendar
from swardcast.records.log import Entry, PlanChange, Progress, Step
from swardcast.records.plan import Job

__all__ = ["HoldUp", "hold_ups_in"]


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldUp:
    """A hold-up.

    Args:
        job: the job.
        entry: the entry that tells it, with its cause as typed.
        ended_by: the entry with which work went on or the plan was changed, or None so far.
        working_days: working days lost, 0 where work went on on the same day; those so far where it has not ended.
    """

    job: Job
    entry: Progress
    ended_by: Progress | PlanChange | None
    working_days: int

    @property
    def began_on(self) -> date:
        """Its first day."""
        return self.entry.head.true_from.date()

    @property
    def ended_on(self) -> date | None:
        """The day on which it ended, or None so far."""
        return self.ended_by.head.true_from.date() if self.ended_by is not None else None


def hold_ups_in(
    entries: Iterable[Entry],
    jobs: Mapping[str, Job],
    days: tuple[date, date],
    today: date,
    calendar: WorkCalendar,
) -> tuple[HoldUp, ...]:
    """List the hold-ups that began in a period.

    Assumes that a hold-up ends when work goes on on any of its surfaces, since the others wait for their turn then. A
    second entry on a hold-up that goes on is no hold-up of its own.

    Args:
        entries: entries that stand, oldest first.
        jobs: jobs by id; entries on others are passed over.
        days: the first and the last day of the period.
        today: the day of the report.
        calendar: when the club works, known from the first of these days to today.

    Returns:
        Hold-ups by the moments at which they began.
    """
    found: list[HoldUp] = []
    for entry in entries:
        if not isinstance(entry, Progress | PlanChange) or entry.job not in jobs:
            continue
        waiting = [place for place, one in enumerate(found) if one.ended_by is None and _concerns(entry, one)]
        if isinstance(entry, Progress) and entry.step is Step.HELD_UP:
            if not waiting:
                found.append(HoldUp(job=jobs[entry.job], entry=entry, ended_by=None, working_days=0))
            continue
        for place in waiting:
            found[place] = replace(found[place], ended_by=entry)
    return tuple(
        replace(one, working_days=_working_days(one.began_on, one.ended_on or today, calendar))
        for one in found
        if days[0] <= one.began_on <= days[1]
    )


def _working_days(first: date, last: date, calendar: WorkCalendar) -> int:
    """Working days after a day up to another, so that none is lost where work goes on on the same day."""
    return sum(calendar.is_worked(first + timedelta(days=number)) for number in range(1, (last - first).days + 1))


def _concerns(entry: Progress | PlanChange, one: HoldUp) -> bool:
    """Whether an entry speaks of what is held up: of one of its surfaces, or of the job as a whole."""
    if entry.job != one.job.id:
        return False
    return isinstance(entry, PlanChange) or not set(entry.surfaces).isdisjoint(one.entry.surfaces)
