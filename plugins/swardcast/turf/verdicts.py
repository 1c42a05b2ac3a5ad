"""What a replay says of the predictions: coverage, error, bias, score and skill, for each month and need."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from swardcast.turf.backtest import Replay
from swardcast.turf.ensemble import HORIZON_DAYS
from swardcast.turf.scores import skill, within

__all__ = ["Verdict", "verdict_of", "verdicts"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """How a set of predictions did; days not reached count as the horizon throughout.

    Args:
        known_days: days of healing that were over when they were made, or None where several are pooled.
        month: start month, or None.
        need: growth days needed, or None.
        cases: how many predictions.
        usual_days: median of the days it took.
        not_reached: share of cases in which the need was not reached within the horizon.
        no_date: share of cases for which no "allow until" would have been told.
        coverage: share of cases within early and allow until, ends included; 0.8 is meant. An "allow until" that is
            not reached within the horizon is an open end.
        in_time: share of cases reached by the "allow until", or with an open end; 0.9 is meant.
        mean_error_days: mean absolute error of the likely day.
        bias_days: mean of likely less true; above 0 where it was promised too late.
        range_days: mean length of the range.
        crps_days: mean score, days.
        skill_always: share of the error saved against "always n days".
        skill_climatology: share of the score saved against past years that know nothing of the weather since.
    """

    known_days: int | None
    month: int | None
    need: float | None
    cases: int
    usual_days: float
    not_reached: float
    no_date: float
    coverage: float
    in_time: float
    mean_error_days: float
    bias_days: float
    range_days: float
    crps_days: float
    skill_always: float | None
    skill_climatology: float | None


def verdict_of(
    cases: NDArray[np.void], *, known_days: int | None = None, month: int | None = None, need: float | None = None
) -> Verdict:
    """Judge a set of predictions.

    Args:
        cases: rows of a replay, at least one.
        known_days: what they have in common, or None.
        month: the same.
        need: the same.

    Returns:
        The verdict.

    Raises:
        ValueError: when there is no case.
    """
    if not len(cases):
        message = "no case to judge"
        raise ValueError(message)
    truth, likely = cases["truth"], cases["likely"]
    score = float(cases["crps"].mean())
    return Verdict(
        known_days=known_days,
        month=month,
        need=need,
        cases=len(cases),
        usual_days=float(np.median(truth)),
        not_reached=float(np.mean(truth >= HORIZON_DAYS)),
        no_date=float(np.mean(cases["allow_until"] >= HORIZON_DAYS)),
        coverage=float(within(cases["early"], cases["allow_until"], truth).mean()),
        in_time=float(within(np.zeros(len(cases)), cases["allow_until"], truth).mean()),
        mean_error_days=float(np.abs(likely - truth).mean()),
        bias_days=float((likely - truth).mean()),
        range_days=float((cases["allow_until"] - cases["early"]).mean()),
        crps_days=score,
        skill_always=skill(score, float(np.abs(cases["always"] - truth).mean())),
        skill_climatology=skill(score, float(cases["climatology_crps"].mean())),
    )


def verdicts(played: Replay, *, fewest_cases: int = 1) -> Sequence[Verdict]:
    """Judge each prediction time, start month and need by itself.

    Args:
        played: the replay.
        fewest_cases: a set with fewer cases is not judged, 1 or more.

    Returns:
        Verdicts by prediction time, month and need.
    """
    return list(_verdicts(played.cases, max(1, fewest_cases)))


def _verdicts(cases: NDArray[np.void], fewest_cases: int) -> Iterator[Verdict]:
    for known_days in np.unique(cases["known_days"]):
        then = cases[cases["known_days"] == known_days]
        for month in np.unique(then["month"]):
            there = then[then["month"] == month]
            for need in np.unique(there["need"]):
                chosen = there[there["need"] == need]
                if len(chosen) >= fewest_cases:
                    yield verdict_of(chosen, known_days=int(known_days), month=int(month), need=float(need))
