"""The columns of a schedule: names that machines know, with plain values."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from typing import Final

from swardcast.planning.compare import count_touched
from swardcast.planning.programme import Placed, Together
from swardcast.planning.schedule import Schedule
from swardcast.planning.start_days import StartDay
from swardcast.records.plan import Job

__all__ = ["TOGETHER_COLUMNS", "JobInSchedule", "jobs_in_schedules"]

Value = float | str | date | None


@dataclass(frozen=True, slots=True, kw_only=True)
class JobInSchedule:
    """One job of one of the trade-offs.

    Args:
        number: number of the trade-off, from 1; the first has the fewest weighted days.
        schedule: the trade-off.
        with_all: its weighted days when all its jobs are done.
        has_costs: whether the end of any of its jobs is known; without, its sums are none.
        job: the job.
        alone: its first day there, reckoned as if the other jobs were not planned.
        placed: the same with all of them, for the first trade-off alone.
    """

    number: int
    schedule: Schedule
    with_all: float
    has_costs: bool
    job: Job
    alone: StartDay
    placed: Placed | None


def jobs_in_schedules(together: Together) -> tuple[JobInSchedule, ...]:
    """List each job of each trade-off.

    Args:
        together: what was found.

    Returns:
        Jobs by trade-off, in the order in which they were named.
    """
    placed = {one.job.id: one for one in together.placed}
    days = {job: {day.day: day for day in run} for job, run in together.days.items()}
    return tuple(
        JobInSchedule(
            number=number,
            schedule=schedule,
            with_all=with_all,
            has_costs=together.has_costs,
            job=job,
            alone=days[job.id][schedule.first_days[job.id]],
            placed=placed[job.id] if number == 1 else None,
        )
        for number, (schedule, with_all) in enumerate(zip(together.trade_offs, together.with_all, strict=True), start=1)
        for job in together.asked.jobs
    )


def _together(value: Callable[[StartDay], Value]) -> Callable[[JobInSchedule], Value]:
    return lambda one: value(one.placed.together) if one.placed is not None else None


TOGETHER_COLUMNS: Final[dict[str, Callable[[JobInSchedule], Value]]] = {
    "schedule": lambda one: one.number,
    "schedule_weighted_days": lambda one: one.schedule.weighted_days if one.has_costs else None,
    "schedule_days": lambda one: one.schedule.plain_days if one.has_costs else None,
    "schedule_weighted_days_done_together": lambda one: one.with_all if one.has_costs else None,
    "job": lambda one: one.job.id,
    "first_day": lambda one: one.alone.day,
    "last_work_day": lambda one: one.alone.work_days[-1],
    "weighted_days_alone": lambda one: one.alone.cost.weighted_days if one.alone.cost is not None else None,
    "days_alone": lambda one: one.alone.cost.days if one.alone.cost is not None else None,
    "kept_until": lambda one: one.placed.kept_until if one.placed is not None else None,
    "weighted_days": _together(lambda day: day.cost.weighted_days if day.cost is not None else None),
    "weighted_days_low": _together(lambda day: day.cost.low if day.cost is not None else None),
    "weighted_days_high": _together(lambda day: day.cost.high if day.cost is not None else None),
    "days": _together(lambda day: day.cost.days if day.cost is not None else None),
    "likely": _together(lambda day: day.ends.likely if day.ends is not None else None),
    "allow_until": _together(lambda day: day.ends.allow_until if day.ends is not None else None),
    "fixtures_touched": _together(lambda day: count_touched(day.meets)),
}
