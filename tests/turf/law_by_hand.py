"""The law of healing once more, written from its formula and with scipy's root finder: what tests compare with.

D(G) = 1 - (1 - c exp(-0.40 G)) (1 - 0.10 max_i K_i exp(-2.70 G / d_i)) (1 - s exp(-0.187 G)), with
c = 1 - exp(-surplus / 2.85 mm). A job on top of another brings three more factors. Nothing of the package is used.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from scipy.optimize import brentq

__all__ = ["HandJob", "left_by_hand", "needed_by_hand"]


@dataclass(frozen=True)
class HandJob:
    """What one job leaves on day 0, and how much growth it has had by then.

    Args:
        surplus_mm: sand on the leaf.
        holes: lasting share and diameter in mm of each opening.
        stripped: share of the surface.
        ahead: growth days that this job had before day 0, at the pace of that time.
    """

    surplus_mm: float = 0.0
    holes: tuple[tuple[float, float], ...] = ()
    stripped: float = 0.0
    ahead: float = 0.0


def left_by_hand(growth: float, jobs: Sequence[HandJob]) -> float:
    """The share still disturbed."""
    clear = 1.0
    for job in jobs:
        since = growth + job.ahead
        clear *= 1 - (1 - math.exp(-job.surplus_mm / 2.85)) * math.exp(-0.40 * since)
        clear *= 1 - 0.10 * max((share * math.exp(-2.70 * since / wide) for share, wide in job.holes), default=0.0)
        clear *= 1 - job.stripped * math.exp(-0.187 * since)
    return 1 - clear


def needed_by_hand(threshold: float, *jobs: HandJob) -> float:
    """Growth days until no more than the threshold is left."""
    if left_by_hand(0.0, jobs) <= threshold:
        return 0.0
    return float(brentq(lambda growth: left_by_hand(growth, jobs) - threshold, 0.0, 500.0, xtol=1e-12))
