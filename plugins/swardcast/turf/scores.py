"""How good predictions in the shape of a distribution were: CRPS, coverage, skill."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

__all__ = ["crps", "skill", "within"]

Floats = NDArray[np.float64]

_TINY: Final = 1e-12  # a reference that is never wrong cannot be beaten


def crps(members: Floats, truth: Floats) -> Floats:
    """Score equally likely values against what came: the continuous ranked probability score.

    Assumes finite values; what lies beyond a horizon is cut to it first, for all competitors alike.

    Args:
        members: equally likely values, shape (..., members), any unit, at least one member.
        truth: what came, shape (...), the same unit.

    Returns:
        Scores, shape (...), same unit, 0 or more; 0 is perfect, and one member alone scores its absolute error.

    Raises:
        ValueError: when there is no member.

    Source: Gneiting & Raftery 2007, "Strictly proper scoring rules, prediction, and estimation", Journal of the
        American Statistical Association 102, 359-378, eq. 21, from memory: mean |X - y| - mean |X - X'| / 2.
    """
    count = members.shape[-1]
    if count == 0:
        message = "a score needs at least one member"
        raise ValueError(message)
    ordered = np.sort(members, axis=-1)
    far = np.abs(ordered - np.asarray(truth)[..., np.newaxis]).mean(axis=-1)
    # The sum of |x_i - x_j| over all pairs, from the ordered values: each counts by its rank.
    ranks = 2 * np.arange(1, count + 1) - count - 1
    apart = (ordered * ranks).sum(axis=-1) / count**2
    return np.asarray(np.maximum(far - apart, 0.0), dtype=np.float64)


def skill(score: float, reference: float) -> float | None:
    """Compare a score with a reference's: the share of the reference's error that is saved.

    Args:
        score: mean score, 0 or more, smaller is better.
        reference: the reference's mean score on the same cases.

    Returns:
        1 - score / reference: 1 perfect, 0 no better, below 0 worse; None when the reference is never wrong.
    """
    return None if reference < _TINY else 1.0 - score / reference


def within(low: Floats, high: Floats, truth: Floats) -> NDArray[np.bool_]:
    """Tell which truths lie in their range, ends included.

    Args:
        low: lower ends, any shape.
        high: upper ends, same shape.
        truth: what came, same shape.

    Returns:
        True where `low` <= `truth` <= `high`.
    """
    slack = 1e-9  # two ways to sum the same growth differ in the last digit
    return np.asarray((low - slack <= truth) & (truth <= high + slack), dtype=np.bool_)
