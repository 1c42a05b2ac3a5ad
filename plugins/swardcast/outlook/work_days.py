"""The days of a job's work, and which surfaces are worked on together: what a calendar shows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from swardcast.outlook.states import JobOutlook, SurfaceWork, Work
from swardcast.outlook.working_days import working_day_after

__all__ = ["WorkPart", "work_parts"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WorkPart:
    """Surfaces of a job that are, or are to be, finished on the same day.

    Args:
        works: the job on each of them, in the plan's order.
        first_day: the first day of the work on them.
        last_day: the day on which they are finished.
    """

    works: tuple[SurfaceWork, ...]
    first_day: date
    last_day: date


def work_parts(outlook: JobOutlook, weekdays: Sequence[int]) -> tuple[WorkPart, ...]:
    """Part a job's work by days.

    Assumes that a day is enough for each surface where the plan finishes one or more a day; where it takes longer, the
    work on the next begins on the working day after the last one was finished, unless the log says otherwise.

    Args:
        outlook: how the job stands.
        weekdays: weekdays on which work is done, 0 for Monday.

    Returns:
        Its parts by their last days; surfaces on which it was called off are left out.
    """
    by_day: dict[date, list[SurfaceWork]] = {}
    for work in outlook.surfaces:
        if work.work is not Work.CALLED_OFF and work.finish.likely is not None:
            by_day.setdefault(work.finish.likely, []).append(work)
    parts: list[WorkPart] = []
    begins = outlook.starts
    for day, works in sorted(by_day.items()):
        started = min((work.started_at.date() for work in works if work.started_at is not None), default=begins)
        first = min(day, started) if outlook.job.surfaces_a_day < 1 else day
        parts.append(WorkPart(works=tuple(works), first_day=first, last_day=day))
        begins = working_day_after(day + timedelta(days=1), 0, weekdays)
    return tuple(parts)
