"""How much wider a range must be drawn when only some past years are known."""

from __future__ import annotations

import math
from typing import Final

__all__ = ["ENOUGH_YEARS", "SPREAD_BETWEEN_YEARS_C", "prediction_factor", "slow_share"]

ENOUGH_YEARS: Final = 10
"""Past years from which on no reader needs to be told that they are few: judgement."""

SPREAD_BETWEEN_YEARS_C: Final = 1.5
"""How much the means of the same month of two years differ from their mean, C, standard deviation, used only where a
single year is known: judgement. A record from South Carolina up to 1975 gives 1.6, ten years of maxima from Melbourne
1.1 (tests/turf/long_records.py has both)."""

_NORMAL_90: Final = 1.2815515655446004
"""0.9 quantile of the standard normal distribution."""

_STUDENT_90: Final = (3.0777, 1.8856, 1.6377, 1.5332, 1.4759, 1.4398, 1.4149, 1.3968, 1.3830)
"""0.9 quantiles of Student's t for 1 to 9 degrees of freedom, as in any table of it."""


def _student_90(degrees: int) -> float:
    """0.9 quantile of Student's t; above 9 degrees by the first terms of its expansion (Abramowitz & Stegun 26.7.5)."""
    if degrees <= len(_STUDENT_90):
        return _STUDENT_90[degrees - 1]
    z = _NORMAL_90
    return z + (z**3 + z) / (4 * degrees) + (5 * z**5 + 16 * z**3 + 3 * z) / (96 * degrees**2)


def prediction_factor(years: int) -> float:
    """Tell how much wider than a normal range with a known spread the range of one more year must be.

    Assumes that the years are independent draws from a normal distribution of unknown mean and spread.

    Args:
        years: past years, 2 or more.

    Returns:
        A factor above 1 on the sample's standard deviation.

    Raises:
        ValueError: for fewer than 2 years, of which no spread can be learnt.

    Source: prediction interval for one more observation, t(n - 1) s sqrt(1 + 1 / n); textbook, after "Student" 1908,
        Biometrika 6, 1-25 (from memory). Here at 80 %.
    """
    if years < 2:  # noqa: PLR2004 - two make the first difference
        message = f"{years} year(s) have no spread between them"
        raise ValueError(message)
    return _student_90(years - 1) / _NORMAL_90 * math.sqrt(1 + 1 / years)


def slow_share(years: int) -> float:
    """Tell which share of another year's slow part must be added to a member, one way or the other.

    Assumes that it comes on top of the spread that the members have already, which is sqrt((n - 1) / n) of the sample's
    standard deviation.

    Args:
        years: past years, 2 or more.

    Returns:
        A factor on the other year's slow part, above 0: 0.35 for 30 years, 1.8 for 3.

    Raises:
        ValueError: for fewer than 2 years.

    Source: arithmetic on `prediction_factor`: 1 + share^2 = factor^2 n / (n - 1).
    """
    return math.sqrt(prediction_factor(years) ** 2 * years / (years - 1) - 1)
