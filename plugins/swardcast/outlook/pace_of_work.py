"""How long a surface takes: what the plan says, weighed against what the log shows."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import NormalDist
from typing import Final

from swardcast.outlook.crews import Finish

__all__ = ["PLAN_COUNTS_AS", "PaceOfWork", "pace_of_work"]

PLAN_COUNTS_AS: Final = 1.0
"""Surfaces; the plan's pace weighs like this many that were seen to be finished at it: judgement."""
SPREAD: Final = 0.25
"""Standard deviation of the logarithm of the time for one surface, before the log shows any: judgement."""
SPREAD_COUNTS_AS: Final = 2.0
"""Entries; that spread weighs like this many that were seen: judgement."""
MOST_SPREAD: Final = 0.5
"""The same, at most; finishes entered minutes apart after hours of work are a habit of writing: judgement."""
_SAMPLES: Final = 15  # so that the 2nd, 8th and 14th are the 10, 50 and 90 % points
_POINTS: Final = tuple(NormalDist().inv_cdf((place + 0.5) / _SAMPLES) for place in range(_SAMPLES))


@dataclass(frozen=True, slots=True, kw_only=True)
class PaceOfWork:
    """The pace of a job.

    Args:
        minutes: working time for a surface, the middle of what is likely, above 0.
        spread: standard deviation of its logarithm from surface to surface.
        seen: surfaces that it rests on, the plan counted as `PLAN_COUNTS_AS`.
    """

    minutes: float
    spread: float
    seen: float

    def minutes_for(self, count: int) -> list[float]:
        """Tell the working time for some surfaces.

        Assumes a log-normal time: the pace itself is uncertain, and on top of it surfaces differ.

        Args:
            count: how many surfaces, 1 or more.

        Returns:
            15 equally likely times in minutes, shortest first.
        """
        spread = self.spread * math.sqrt(1 / self.seen + 1 / count)
        return [count * self.minutes * math.exp(spread * point) for point in _POINTS]


def pace_of_work(planned_minutes: float, finishes: Sequence[Finish]) -> PaceOfWork:
    """Weigh the plan's pace against what was seen.

    Args:
        planned_minutes: working time for a surface by the plan, above 0.
        finishes: what was finished and in what time.

    Returns:
        The pace; less time for the same surfaces never makes it slower.
    """
    seen = sum(finish.count for finish in finishes)
    spent = sum(finish.minutes for finish in finishes)
    variance = SPREAD_COUNTS_AS * SPREAD**2
    for finish in finishes:
        variance += finish.count * (finish.minutes / finish.count / (spent / seen) - 1) ** 2
    weight = SPREAD_COUNTS_AS + max(0, len(finishes) - 1)
    return PaceOfWork(
        minutes=(PLAN_COUNTS_AS * planned_minutes + spent) / (PLAN_COUNTS_AS + seen),
        spread=min(MOST_SPREAD, math.sqrt(variance / weight)),
        seen=PLAN_COUNTS_AS + seen,
    )
