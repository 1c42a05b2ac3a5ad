"""The sum behind a schedule: a first day for each job, none in another's way, at the least cost in whole numbers.

Each first day of each job is a variable that is 0 or 1. HiGHS, by way of SciPy, finds the proven optimum (Huangfu and
Hall 2018, "Parallelizing the dual revised simplex method", Mathematical Programming Computation 10; from memory).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

__all__ = ["Ints", "Limit", "Model", "model_of"]

Ints = NDArray[np.int64]
_Marks = NDArray[np.bool_]

_INFEASIBLE: Final = 2  # a status of scipy.optimize.milp


@dataclass(frozen=True, slots=True, eq=False)
class Limit:
    """What a sum over the chosen days may come to at most.

    Args:
        costs: whole numbers, shape (variables,).
        most: the largest sum allowed.
    """

    costs: Ints
    most: int


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Model:
    """Variables and what binds them.

    Args:
        job_of: place of the job to which each variable belongs, shape (variables,); each job's follow one another.
        rows: variables of which at most a number may be chosen, shape (rows, variables).
        at_most: that number, shape (rows,).
    """

    job_of: Ints
    rows: _Marks
    at_most: Ints

    def least(self, costs: Ints, limits: Sequence[Limit] = ()) -> _Marks | None:
        """Choose one variable of each job so that the chosen cost least.

        Args:
            costs: whole numbers, shape (variables,).
            limits: what other sums may come to.

        Returns:
            The chosen variables, shape (variables,), or None where nothing satisfies all. Which of several as good ones
            is not settled.

        Raises:
            ArithmeticError: when the solver gives up, or its rounding has broken a rule.
        """
        from scipy.optimize import Bounds, LinearConstraint, milp  # noqa: PLC0415 - loaded late: a schedule alone needs it
        from scipy.sparse import csr_array, diags_array  # noqa: PLC0415 - likewise

        above = [self._above_least(limit.costs) for limit in limits]
        rests = [limit.most - total for limit, (_, total) in zip(limits, above, strict=True)]
        kept = np.ones(costs.size, dtype=np.bool_)
        for (more, _), rest in zip(above, rests, strict=True):
            kept &= more <= rest
        job_of = self.job_of[kept]
        if np.unique(job_of).size < np.unique(self.job_of).size:
            return None
        # The solver's variables say by which of its days a job has begun, not on which: rows of the days on which it is
        # under way then have two entries each, and halving what is left to search halves the season.
        is_last = np.append(job_of[1:] != job_of[:-1], [True])
        not_before = np.where(is_last[:-1], 0.0, -1.0)
        starts: Any = diags_array([np.ones(job_of.size), not_before], offsets=[0, -1], format="csr")
        bound = np.vstack([self.rows[:, kept], *(more[None, kept] for more, _ in above)])
        found = milp(
            self._above_least(costs)[0][kept] @ starts,
            integrality=np.ones(job_of.size),
            bounds=Bounds(is_last * 1.0, 1),
            constraints=[
                LinearConstraint(starts, 0, 1),
                LinearConstraint(csr_array(bound, dtype=np.float64) @ starts, -np.inf, np.append(self.at_most, rests)),
            ],
            options={"mip_rel_gap": 0.0},
        )
        if found.status == _INFEASIBLE:
            return None
        if found.x is None or found.status:
            message = f"the solver gave up: {found.message}"
            raise ArithmeticError(message)
        chosen = np.zeros(costs.size, dtype=np.bool_)
        chosen[kept] = starts @ found.x > 0.5  # noqa: PLR2004 - 0 or 1, but for its rounding
        self._check(chosen, limits)
        return chosen

    def _above_least(self, costs: Ints) -> tuple[Ints, int]:
        """What each variable costs above its job's cheapest, and what the cheapest of all jobs cost together."""
        begins = np.flatnonzero(np.diff(self.job_of, prepend=-1))
        least = np.minimum.reduceat(costs, begins)
        return costs - least[self.job_of], int(least.sum())

    def _check(self, chosen: _Marks, limits: Sequence[Limit]) -> None:
        """Hold what the solver rounded against what binds it, in whole numbers."""
        one_of_each = np.array_equal(self.job_of[chosen], np.unique(self.job_of))
        within = all(int(limit.costs[chosen].sum()) <= limit.most for limit in limits)
        if not one_of_each or not within or (self.rows[:, chosen].sum(axis=1) > self.at_most).any():
            message = "the solver's answer does not satisfy what it was asked"
            raise ArithmeticError(message)


def model_of(
    firsts: Sequence[Ints],
    lasts: Sequence[Ints],
    apart: Mapping[tuple[int, int], tuple[int | None, int | None]],
    crews: int,
) -> Model:
    """Say in rows which days of which jobs are in each other's way.

    The days of two jobs stand in one row for each day on which both would be under way or held off by the gap, instead
    of in a row for each two: the same schedules, but far fewer halves of days that the solver has to rule out.

    Args:
        firsts: for each job its first days as numbers, each later than the one before, at least one.
        lasts: for each of them the last day of the work, never before the first, never going back.
        apart: for the places of two jobs, the smaller one first: least days from the last day of the one to the first
            of the other, and the other way round, 1 or more; None where they may not come in that order, which is so
            in one order at most.
        crews: jobs that may be under way on one day, 1 or more.

    Returns:
        The model.
    """
    job_of = np.repeat(np.arange(len(firsts)), [days.size for days in firsts])
    first, last = np.concatenate(firsts), np.concatenate(lasts)
    found = dict(_rows_of_crews(first, last, crews))
    for (one, other), days in apart.items():
        if days != (1, 1) or crews > 1:
            found.update((marks, 1) for marks in _rows_of_two(job_of, first, last, (one, other), days))
    rows = [np.frombuffer(marks, dtype=np.bool_) for marks in found]
    kept = [(row, most) for row, most in zip(rows, found.values(), strict=True) if np.unique(job_of[row]).size > most]
    return Model(
        job_of=job_of,
        rows=np.array([row for row, _ in kept], dtype=np.bool_).reshape(len(kept), job_of.size),
        at_most=np.array([most for _, most in kept], dtype=np.int64),
    )


def _rows_of_crews(first: Ints, last: Ints, crews: int) -> Iterator[tuple[bytes, int]]:
    for day in np.unique(first):
        yield ((first <= day) & (day <= last)).tobytes(), crews


def _rows_of_two(
    job_of: Ints, first: Ints, last: Ints, jobs: tuple[int, int], days: tuple[int | None, int | None]
) -> Iterator[bytes]:
    """On each day, whichever of the two has begun still holds the other off: so at most one of them has."""
    held = [_held_off(job_of == job, last, own) for job, own in zip(jobs, days, strict=True)]
    is_forced = [
        own is None for own in reversed(days)
    ]  # it can only come before the other: no need for it to have begun
    for day in np.unique(first[np.isin(job_of, jobs)]):
        of_each = [(until > day) & (forced | (first <= day)) for until, forced in zip(held, is_forced, strict=True)]
        yield (of_each[0] | of_each[1]).tobytes()


def _held_off(is_own: _Marks, last: Ints, days: int | None) -> Ints:
    """The day from which the other job may begin after a job that begins on each of its days; for other jobs no day."""
    never = np.iinfo(np.int64)
    return np.where(is_own, never.max if days is None else last + days, never.min)
