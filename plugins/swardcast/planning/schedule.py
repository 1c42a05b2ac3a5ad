"""First days for several jobs together at the least cost in all, and every trade-off between two ways of counting it.

Costs are counted in whole steps, so that two schedules cost the same or do not, and there are finitely many trade-offs.
These are found one after the other, each with the second cost below the last one's: the epsilon-constraint method
(Haimes, Lasdon and Wismer 1971, "On a bicriterion formulation of the problems of integrated system identification and
system optimization", IEEE Transactions on Systems, Man, and Cybernetics; from memory).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

import numpy as np

from swardcast.planning.schedule_model import Ints, Limit, Model, model_of

__all__ = [
    "Gap",
    "Schedule",
    "Schedules",
    "StartDays",
    "Wish",
    "is_possible",
    "schedules",
]

_WEIGHTED_STEPS: Final = 100
"""Weighted days are rounded to a hundredth before they are compared: judgement, far below what is known of them."""
_PLAIN_STEPS: Final = 10
"""Plain days are rounded to a tenth: judgement, since nobody would trade anything for less."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StartDays:
    """The days on which one job can start, and what each costs.

    Args:
        job: id of the job.
        first_days: days on which it can start, each later than the one before.
        last_days: for each the last day that is kept free for the work, never before the first day, never going back.
        weighted_days: for each the expected disturbed days, weighted by how much each day matters; 0 or more.
        plain_days: for each the expected disturbed days; 0 or more.
    """

    job: str
    first_days: tuple[date, ...]
    last_days: tuple[date, ...]
    weighted_days: tuple[float, ...]
    plain_days: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """What has to lie between two jobs when one comes after the other.

    Args:
        earlier: id of the job that comes first.
        later: id of the other.
        least_days: days from the last day kept for the one to the first day of the other, 1 or more; 1 is the next day.
        in_order: whether the later may not come before the earlier. Where it may, and no gap is told for that order,
            the other follows on the next day at the soonest.
    """

    earlier: str
    later: str
    least_days: int
    in_order: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """What days are wanted for.

    Args:
        jobs: the jobs with their days, at least one.
        gaps: what has to lie between two of them: at most one for two jobs in one order, and one order left open.
        crews: how many jobs may be under way on one day, 1 or more. Two jobs with a gap between them never are.
    """

    jobs: tuple[StartDays, ...]
    gaps: tuple[Gap, ...] = ()
    crews: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Schedule:
    """A first day for each job.

    Args:
        first_days: by id of the job, in the order wished.
        weighted_days: the jobs' weighted days added up, each rounded to a hundredth.
        plain_days: the jobs' disturbed days added up, each rounded to a tenth.
    """

    first_days: Mapping[str, date]
    weighted_days: float
    plain_days: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Schedules:
    """What was found.

    Args:
        shown: trade-offs, the one with the fewest weighted days first; then ever more of these, and ever fewer
            plain days.
        in_all: how many trade-offs there are.
    """

    shown: tuple[Schedule, ...]
    in_all: int


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Sums:
    """A wish in numbers; each array has a value for each first day of each job."""

    wish: Wish
    model: Model
    weighted: Ints
    plain: Ints
    place: Ints


def schedules(wish: Wish, *, most: int) -> Schedules:
    """Find the schedule with the fewest weighted days, and all that trade some of these for plain ones.

    Args:
        wish: the jobs, their days and what has to lie between them.
        most: how many to show at most, 1 or more; from 2 on both ends are among those shown, and the others stand at
            even steps between them.

    Returns:
        Of schedules that cost the same the one whose first job starts soonest, then its second, and so on; none where
        the jobs cannot all be done.
    """
    sums = _sums(wish)
    if sums is None:
        return Schedules(shown=(), in_all=0)
    found = []
    limits: list[Limit] = []
    while (costs := _least(sums, (sums.weighted, sums.plain), limits)) is not None:
        found.append(costs)
        limits = [Limit(sums.plain, costs[1] - 1)]
    places = np.rint(np.linspace(0, len(found) - 1, min(most, len(found)))).astype(np.int64)
    return Schedules(shown=tuple(_soonest(sums, found[place]) for place in places), in_all=len(found))


def is_possible(wish: Wish) -> bool:
    """Say whether all jobs can be done.

    Args:
        wish: the jobs, their days and what has to lie between them.

    Returns:
        Whether there is a first day for each.
    """
    sums = _sums(wish)
    return sums is not None and sums.model.least(np.zeros_like(sums.place)) is not None


def _sums(wish: Wish) -> _Sums | None:
    """The wish in numbers, or None where a job cannot start at all."""
    if not all(job.first_days for job in wish.jobs):
        return None
    places = {job.job: place for place, job in enumerate(wish.jobs)}
    apart: dict[tuple[int, int], tuple[int | None, int | None]] = {}
    for gap in wish.gaps:
        one, other = places[gap.earlier], places[gap.later]
        there, back = apart.get((min(one, other), max(one, other)), (1, 1))
        if one < other:
            apart[one, other] = gap.least_days, None if gap.in_order else back
        else:
            apart[other, one] = None if gap.in_order else there, gap.least_days
    return _Sums(
        wish=wish,
        model=model_of(
            [_numbers(job.first_days) for job in wish.jobs],
            [_numbers(job.last_days) for job in wish.jobs],
            apart,
            wish.crews,
        ),
        weighted=np.concatenate([_steps(job.weighted_days, _WEIGHTED_STEPS) for job in wish.jobs]),
        plain=np.concatenate([_steps(job.plain_days, _PLAIN_STEPS) for job in wish.jobs]),
        place=np.concatenate([np.arange(len(job.first_days)) for job in wish.jobs]),
    )


def _numbers(days: Sequence[date]) -> Ints:
    return np.array([day.toordinal() for day in days], dtype=np.int64)


def _steps(days: Sequence[float], a_day: int) -> Ints:
    return np.asarray(np.rint(np.array(days) * a_day), dtype=np.int64)


def _least(sums: _Sums, aims: Sequence[Ints], limits: Sequence[Limit]) -> tuple[int, ...] | None:
    """What each aim comes to, one after the other, each as little as the ones before it allow."""
    costs: list[int] = []
    for aim in aims:
        before = [Limit(one, cost) for one, cost in zip(aims, costs, strict=False)]
        chosen = sums.model.least(aim, [*limits, *before])
        if chosen is None:
            return None
        costs.append(int(aim[chosen].sum()))
    return tuple(costs)


def _soonest(sums: _Sums, costs: Sequence[int]) -> Schedule:
    """Of the schedules that cost so much, the one that comes soonest, job by job."""
    limits = [Limit(sums.weighted, costs[0]), Limit(sums.plain, costs[1])]
    jobs = sums.wish.jobs
    days = [np.where(sums.model.job_of == number, sums.place, 0) for number in range(len(jobs))]
    places = _least(sums, days, limits)
    if places is None:
        raise ArithmeticError("the solver does not find again what it found")
    return Schedule(
        first_days={job.job: job.first_days[place] for job, place in zip(jobs, places, strict=True)},
        weighted_days=costs[0] / _WEIGHTED_STEPS,
        plain_days=costs[1] / _PLAIN_STEPS,
    )
