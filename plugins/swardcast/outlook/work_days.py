"""The days of a job's work, and which surfaces are worked on together: what a calendar shows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from swardcast.outlook.states import JobOutlook, ReasonKind, SurfaceWork, Work
from swardcast.outlook.working_days import finishing_days, working_day_after
from swardcast.records.plan import Job

__all__ = ["WorkPart", "work_parts"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WorkPart:
    """Surfaces of a job that are, or are to be, finished on the same day, or were held up on it.

    Surfaces that the plan has on different days never share a part, so that a part keeps its surfaces when days move.

    Args:
        number: its name among the job's parts, 1 or more: that of the day of the plan, counted from 1, for the part
            with the first of that day's surfaces; for what is parted from them, the place of its own first surface in
            the plan, counted on from the last day. So it hangs on the surfaces alone, and not on how things went.
        works: the job on each of them, in the plan's order.
        first_day: the first day of the work on them.
        last_day: the day on which they are finished, or were held up.
    """

    number: int
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
    planned = _days_of_the_plan(outlook.job, weekdays)
    firsts = {planned[work.surface.id]: work for work in reversed(outlook.surfaces) if work.work is not Work.CALLED_OFF}
    places = {name: place for place, name in enumerate(outlook.job.surfaces, start=1)}
    by_day: dict[tuple[date, bool, int], list[SurfaceWork]] = {}
    has_no_day = outlook.work is Work.HELD_UP or outlook.is_put_off
    for work in outlook.surfaces:
        day = _day_of(work)
        if day is not None and not (has_no_day and work.work is Work.PLANNED):
            by_day.setdefault((day, work.work is Work.HELD_UP, planned[work.surface.id]), []).append(work)
    parts: list[WorkPart] = []
    begins = outlook.starts
    for (day, _, home), works in sorted(by_day.items(), key=lambda part: part[0]):
        number = home if firsts[home] in works else max(planned.values()) + places[works[0].surface.id]
        started = min((work.started_at.date() for work in works if work.started_at is not None), default=begins)
        first = min(day, started) if outlook.job.surfaces_a_day < 1 else day
        parts.append(WorkPart(number=number, works=tuple(works), first_day=first, last_day=day))
        begins = working_day_after(day + timedelta(days=1), 0, weekdays)
    return tuple(parts)


def _days_of_the_plan(job: Job, weekdays: Sequence[int]) -> dict[str, int]:
    """On which day of the work, counted from 1, the plan finishes each surface; no entry changes that."""
    days = finishing_days(job.starts, len(job.surfaces), a_day=job.surfaces_a_day, weekdays=weekdays)
    ranks = {day: rank for rank, day in enumerate(dict.fromkeys(days), start=1)}
    return {name: ranks[day] for name, day in zip(job.surfaces, days, strict=True)}


def _day_of(work: SurfaceWork) -> date | None:
    if work.work is Work.CALLED_OFF:
        return None
    held = [reason.at for reason in work.reasons if reason.kind is ReasonKind.HELD_UP]
    since = held[-1] if held and work.work is Work.HELD_UP else None
    return since.date() if isinstance(since, datetime) else work.finish.likely
