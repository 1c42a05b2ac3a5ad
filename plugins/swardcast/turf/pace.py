"""Pace: how fast a surface heals compared with the fitted model, and how well that is known."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from statistics import NormalDist
from typing import Final

__all__ = [
    "ERROR_POINTS",
    "LOG_SPREAD",
    "LOG_SPREAD_NOT_FITTED",
    "Pace",
    "Sighting",
    "after_healed_jobs",
    "after_sightings",
    "standard_errors",
    "usual_pace",
]

LOG_SPREAD: Final = 0.24
"""Log-normal spread of the true recovery about the computed one (leave-one-out on the 26 published recoveries)."""

LOG_SPREAD_NOT_FITTED: Final = 0.40
"""Spread where nothing was fitted (warm-season grass, meadow-grass, deep tining, fairways, tees): judgement."""

ERROR_POINTS: Final = 15
"""How many equally likely values of the model's own error are carried; with 15 the 10th, 50th and 90th percentile fall
on values (as with 5 or 25). Fewer understate the spread."""

_OF_THE_CLUB: Final = 0.5
"""Share of the error's variance that belongs to a course (soil, feed, height of cut) and so comes back with its next
job; the rest belongs to the job: judgement."""
_SAYING_SO: Final = 0.15
"""Error, as a logarithm, of the day on which a manager calls a surface back to normal: judgement."""

_RARE: Final = 0.05  # share of the pace's distribution on either side that a look is not expected from: judgement
_WIDEST: Final = 2.0  # standard errors of a look, or of a healed job, beyond which it counts no further: judgement

_STEP, _STEPS = 0.05, 160  # grid of log pace: 8 prior spreads either side


@dataclass(frozen=True, slots=True)
class Pace:
    """How fast a surface heals, as equally likely values.

    Args:
        logs: logarithms of the pace, fastest first; 0 is the fitted pace.
    """

    logs: tuple[float, ...]

    @property
    def middle(self) -> float:
        """The middle value, 1 for the fitted pace."""
        return math.exp(self.logs[len(self.logs) // 2])

    @property
    def log_spread(self) -> float:
        """Standard deviation of the logarithm."""
        mean = sum(self.logs) / len(self.logs)
        return math.sqrt(sum((value - mean) ** 2 for value in self.logs) / len(self.logs))


@dataclass(frozen=True, slots=True, kw_only=True)
class Sighting:
    """Something seen on a surface that tells how much of the first disruption is left.

    Args:
        share_left: share of the day-0 disruption that is still there, 0 to 1.
        growth_days: growth from the work to the sighting, 0 or more.
        error: standard error of the share, above 0.
        foretold: the share left after so many growth days at the fitted pace; never rises, and is hashable, so that
            the same sightings are weighed once.
    """

    share_left: float
    growth_days: float
    error: float
    foretold: Callable[[float], float]


@cache
def standard_errors() -> tuple[float, ...]:
    """Give the equally likely values of a standard normal error, lowest first, shape (15,)."""
    normal = NormalDist()
    return tuple(normal.inv_cdf((point + 0.5) / ERROR_POINTS) for point in range(ERROR_POINTS))


@cache
def usual_pace(log_spread: float, log_middle: float = 0.0) -> Pace:
    """Make the pace that is believed before anything is seen.

    Args:
        log_spread: standard deviation of the logarithm, 0 or more.
        log_middle: logarithm of the middle, 0 for the fitted pace.

    Returns:
        A log-normal pace.
    """
    return Pace(tuple(log_middle - log_spread * error for error in standard_errors()))


@lru_cache(maxsize=1024)
def after_sightings(
    log_spread: float, log_middle: float, sightings: tuple[Sighting, ...]
) -> tuple[Pace, tuple[bool, ...]]:
    """Let what was seen on the course correct the pace, no further than its weight allows.

    Assumes normal errors of the shares seen, independent of each other. A sighting beyond what could be expected
    counts as the nearest share that could, so that one slip of the pen never rules; if more sightings say the same,
    each moves the pace further.

    Args:
        log_spread: standard deviation of the prior's logarithm, 0 or more.
        log_middle: logarithm of the prior's middle.
        sightings: what was seen, oldest first; a sighting before any growth teaches nothing.

    Returns:
        The pace after all sightings, and for each sighting whether it was beyond what could be expected.

    Source: Bayes' rule on a grid of the logarithm: a normal prior, a normal error of the share seen (Gelman et al.
        2013, Bayesian Data Analysis, 3rd ed., grid approximation). The closed form that weighs an observation by the
        error at the share seen, e = eye / (u (-ln u)), was left: it trusts a surprising look so little that worse
        news can bring an earlier date. Here worse news moves no date earlier (monotone likelihood ratio; the limits
        move with the pace).
    """
    wild = [False] * len(sightings)
    if log_spread <= 0 or not any(seen.growth_days > 0 for seen in sightings):
        return usual_pace(log_spread, log_middle), tuple(wild)
    steps = [place * _STEP for place in range(_STEPS, -_STEPS - 1, -1)]  # fastest first, in prior spreads
    weights = [math.exp(-0.5 * step**2) for step in steps]
    for number, seen in enumerate(sightings):
        if seen.growth_days <= 0:
            continue
        foretold = [seen.foretold(math.exp(log_middle + step * log_spread) * seen.growth_days) for step in steps]
        share, wild[number] = _credible(seen, foretold, weights)
        misses = [0.5 * ((share - left) / seen.error) ** 2 for left in foretold]
        least = min(misses)
        weights = [weight * math.exp(least - miss) for weight, miss in zip(weights, misses, strict=True)]
    places = _quantiles(steps, weights)
    return Pace(tuple(log_middle + log_spread * place for place in places)), tuple(wild)


def _credible(seen: Sighting, foretold: Sequence[float], weights: Sequence[float]) -> tuple[float, bool]:
    """The share seen, kept within what the pace so far and the look's own error allow; and whether it was beyond."""
    total, below = sum(weights), 0.0
    fast = slow = foretold[-1]
    for left, weight in zip(reversed(foretold), reversed(weights), strict=True):  # slowest first: most is left
        below += weight
        if below <= _RARE * total:
            slow = left
        if below <= (1 - _RARE) * total:
            fast = left
    share = min(max(seen.share_left, fast - _WIDEST * seen.error), slow + _WIDEST * seen.error)
    return share, share != seen.share_left


def _quantiles(steps: Sequence[float], weights: Sequence[float]) -> list[float]:
    """Middles of 15 equal shares of a weighted grid; each grid point stands for its cell, evenly."""
    total = sum(weights)
    asked = [(point + 0.5) / ERROR_POINTS * total for point in range(ERROR_POINTS)]
    found: list[float] = []
    below = 0.0
    for step, weight in zip(steps, weights, strict=True):
        while len(found) < ERROR_POINTS and asked[len(found)] <= below + weight:
            inside = (asked[len(found)] - below) / weight
            found.append(step + _STEP * (0.5 - inside))
        below += weight
    return found + [steps[-1]] * (ERROR_POINTS - len(found))


def after_healed_jobs(log_spread: float, log_paces: Iterable[float]) -> tuple[float, float]:
    """Let a course's own healed jobs correct what is believed of its next one.

    Assumes that half of the error's variance belongs to the course and comes back, and half to the job. A job further
    off than twice the spread counts as one at twice the spread.

    Args:
        log_spread: standard deviation of the logarithm before anything was known of the course, 0 or more.
        log_paces: logarithm of the pace at which each healed job really healed.

    Returns:
        The prior for the next job: middle and standard deviation of its logarithm.

    Source: normal mean with known variances (Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., section 2.5).
    """
    most = _WIDEST * log_spread
    healed = [min(most, max(-most, log_pace)) for log_pace in log_paces]
    of_the_club = _OF_THE_CLUB * log_spread**2
    of_the_job = log_spread**2 - of_the_club
    if not healed or of_the_club <= 0:
        return 0.0, log_spread
    precision = 1 / of_the_club + len(healed) / (of_the_job + _SAYING_SO**2)
    middle = sum(healed) / (of_the_job + _SAYING_SO**2) / precision
    return middle, math.sqrt(1 / precision + of_the_job)
