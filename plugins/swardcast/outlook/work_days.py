"""The days of a job's work, and which surfaces are worked on together: what a calendar shows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from swardcast.outlook.states import JobOutlook, ReasonKind, SurfaceWork, Work
from swardcast.outlook.working_days import working_day_after

__all__ = ["WorkPart", "work_parts"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WorkPart:
    """Surfaces of a job that are, or are to be, finished on the same day, or were held up on it.

    Args:
        works: the job on each of them, in the plan's order.
        first_day: the first day of the work on them.
        last_day: the day on which they are finished, or were held up.
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
        Its parts by their last days. Left out are surfaces on which it was called off and, while all of it is held up
        or postponed to no day that is known, those not begun: no day can be told of them before the work goes on.
    """
    by_day: dict[tuple[date, bool], list[SurfaceWork]] = {}
    has_no_day = outlook.work is Work.HELD_UP or outlook.is_put_off
    for work in outlook.surfaces:
        day = _day_of(work)
        if day is not None and not (has_no_day and work.work is Work.PLANNED):
            by_day.setdefault((day, work.work is Work.HELD_UP), []).append(work)
    parts: list[WorkPart] = []
    begins = outlook.starts
    for (day, _), works in sorted(by_day.items(), key=lambda part: part[0]):
        started = min((work.started_at.date() for work in works if work.started_at is not None), default=begins)
        first = min(day, started) if outlook.job.surfaces_a_day < 1 else day
        parts.append(WorkPart(works=tuple(works), first_day=first, last_day=day))
        begins = working_day_after(day + timedelta(days=1), 0, weekdays)
    return tuple(parts)


def _day_of(work: SurfaceWork) -> date | None:
    if work.work is Work.CALLED_OFF:
        return None
    held = [reason.at for reason in work.reasons if reason.kind is ReasonKind.HELD_UP]
    since = held[-1] if held and work.work is Work.HELD_UP else None
    return since.date() if isinstance(since, datetime) else work.finish.likely
