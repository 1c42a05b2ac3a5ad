"""The healing model fitted again on the 26 published recoveries, by loops, a calendar and a likelihood of its own.

Days are interval-censored and log-normal about the computed day, with the spread of 0.24 as given (fitted freely in
the sample it is about 0.10, since wide intervals reward overconfidence). The law in use is fitted with its sand
(0.40 per growth day) and its weight of open holes (0.10) as given; the single law, which heals everything at one rate,
D = D0 exp(-k G) with D0 = 1 - (1 - c) prod(1 - K A), is written here only, to be compared with.

The sheet that we work from states a mean absolute error of 2.7 days when each record is left out in turn. That is not
reached, with either law. What was measured here, 19 dated records, width s fitted along / given as 7.0:

| | rate | lag, days | s, C | left out, days | bias, days | inside, of 26 | spread left out |
|---|---|---|---|---|---|---|---|
| law in use | 3.19 / 2.70 mm | 13.4 / 12.8 | 6.85 / 7 |  2.88 / 2.88 | -0.5 / -0.1 | 18 / 19 | 0.34 / 0.23 |
| single law | 0.337 / 0.326 | 13.1 / 12.8 | 6.92 / 7 | 2.85 / 2.80 | -0.2 / 0.0 | 19 / 20 | 0.28 / 0.22 |

The first record (Virginia) is printed as 15 to 17 days, but its autumn half was torn, so that this is an upper bound.
Read as 1 to 17 days, with the middle of 9 as for all others, the law in use misses by 2.99 / 3.01 days on average, the
single law by 3.15 / 3.16; when only days beyond the 17th count there, 2.75 / 2.76 and 2.79 / 2.79. So the law in use is
no better on these records, nearly all of which are of one size of hole; it is used for the ratio of sizes that
Landreth et al. 2007 measured (test_healing.py).

The fit feels the calendar: where a day meets the monthly normals half a day sooner, on months of equal length, the law in
use comes out at 2.48 mm and 12.4 days with s given.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from functools import cache
from typing import Final

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.optimize import brentq, minimize
from scipy.special import log_ndtr

from swardcast.turf.growth import GRASSES
from swardcast.turf.healing import BACK_TO_NORMAL_LAG_DAYS, HOLE_RATE_MM_PER_GROWTH_DAY
from swardcast.turf.pace import LOG_SPREAD
from swardcast.turf.published_recoveries import PUBLISHED_RECOVERIES, PublishedRecovery, Seen
from swardcast.turf.station_normals import MONTHLY_MEANS_C

Floats = NDArray[np.float64]
Law = Callable[[PublishedRecovery, float], float]
Records = tuple[PublishedRecovery, ...]

DAYS: Final = 420  # a winter and the spring after it
THRESHOLD: Final = {
    Seen.SETTLED: 0.05, Seen.HOLES_CLOSED: 0.02, Seen.BACK_TO_NORMAL: 0.02, Seen.COMPLETE_COVER: 0.01
}  # fmt: skip
PRINTED: Final = PUBLISHED_RECOVERIES
UPPER_BOUND: Final = (replace(PRINTED[0], from_day=1), *PRINTED[1:])


@dataclass(frozen=True)
class Constants:
    """What is fitted: a law's rate, days from closed to normal, width of the growth curve."""

    rate: float
    lag: float
    s: float


def law_in_use(record: PublishedRecovery, kappa: float) -> float:
    """Growth days needed: sand at 0.40, holes at kappa over their width with a weight of 0.10."""
    holes = tuple((opening.lasting_share, opening.heals_as_mm) for opening in record.openings)
    return max(_root(record.surplus_mm, holes, kappa, THRESHOLD[record.seen]), _rim(record))


def single_law(record: PublishedRecovery, rate: float) -> float:
    """Growth days needed when sand and open ground heal at one rate."""
    clear = math.exp(-record.surplus_mm / 2.85)
    for opening in record.openings:
        clear *= 1 - opening.lasting_share * opening.area_fraction
    return max(math.log((1 - clear) / THRESHOLD[record.seen]) / rate, _rim(record))


@cache
def _root(surplus_mm: float, holes: tuple[tuple[float, float], ...], kappa: float, threshold: float) -> float:
    sand = 1 - math.exp(-surplus_mm / 2.85)

    def too_much(growth: float) -> float:
        opened = 0.10 * max(share * math.exp(-kappa * growth / wide) for share, wide in holes)
        return 1 - (1 - sand * math.exp(-0.40 * growth)) * (1 - opened) - threshold

    return float(brentq(too_much, 0.0, 1000.0))


def _rim(record: PublishedRecovery) -> float:
    if record.seen is Seen.SETTLED:
        return 0.0
    return max(opening.lasting_share * opening.half_width_mm / 0.9 for opening in record.openings)


@cache
def _tmean_c(number: int) -> Floats:
    """Noon of each day between the middles of the calendar's own months, shape (events, days)."""
    record = PRINTED[number]
    means = [float(np.mean([MONTHLY_MEANS_C[name][month] for name in record.stations])) for month in range(12)]
    middles = [(_middle(year, month), means[month - 1]) for year in range(2014, 2018) for month in range(1, 13)]
    starts = [date(2015, month, day).toordinal() + 0.5 for month, day in record.starts]
    days, values = zip(*middles, strict=True)
    return np.array([np.interp(start + np.arange(DAYS), days, values) for start in starts]) + record.warmer_by_c


def _middle(year: int, month: int) -> float:
    after = date(year + month // 12, month % 12 + 1, 1)
    return (date(year, month, 1).toordinal() + after.toordinal()) / 2


def _computed_days(number: int, record: PublishedRecovery, law: Law, constants: Constants) -> float:
    growth = np.exp(-(((_tmean_c(number) - 20) / constants.s) ** 2) / 2) * record.growth_factor
    growth[:, list(record.frost_days)] = 0
    need = law(record, constants.rate)
    closed = float(np.mean([_day_of(need, np.cumsum(event)) for event in growth]))
    return max(closed, 0.25) + (constants.lag if record.seen is Seen.BACK_TO_NORMAL else 0.0)


def _day_of(need: float, sums: Floats) -> float:
    day = int(np.searchsorted(sums, need))
    if day == DAYS:
        return float(DAYS)
    before = float(sums[day - 1]) if day else 0.0
    return day + (need - before) / (float(sums[day]) - before)


def _log_likelihood(record: PublishedRecovery, days: float, spread: float) -> float:
    """Logarithm of the chance that the true day lies in the interval that was seen."""
    low, high = (math.log(day / days) / spread for day in (record.from_day, record.to_day))
    if low > 0:  # the lower tail keeps its digits
        low, high = -high, -low
    upper, lower = (float(log_ndtr(place)) for place in (high, low))
    return max(upper + math.log1p(-math.exp(min(lower - upper, -1e-12))), -60.0)


def _cost(records: Records, law: Law, constants: Constants, without: int | None = None) -> float:
    return -sum(
        record.weight * _log_likelihood(record, _computed_days(number, record, law, constants), LOG_SPREAD)
        for number, record in enumerate(records)
        if number != without
    )


def _fit(records: Records, law: Law, guess: Constants, *, given_s: float | None, without: int | None) -> Constants:
    def constants(logs: Floats) -> Constants:
        rate, lag, *width = np.exp(logs).tolist()
        return Constants(rate=rate, lag=lag, s=given_s or width[0])

    def cost(logs: Floats) -> float:
        trial = constants(logs)
        return _cost(records, law, trial, without) if 2 < trial.s < 25 else 1e6

    start = np.log([guess.rate, guess.lag] + ([] if given_s else [guess.s]))
    simplex = np.vstack([start, start + np.diag([0.08, 0.08, 0.04][: len(start)])])
    options = {"xatol": 2e-3, "fatol": 1e-3, "maxfev": 250, "initial_simplex": simplex}
    return constants(minimize(cost, start, method="Nelder-Mead", options=options).x)


@cache
def _fitted(law: Law, records: Records, given_s: float | None) -> Constants:
    guess = Constants(rate=2.2 if law is law_in_use else 0.28, lag=11.0, s=6.5)  # away from what is expected
    return _fit(records, law, guess, given_s=given_s, without=None)


@cache
def _left_out(law: Law, records: Records, given_s: float | None) -> tuple[float, ...]:
    """Each record's day computed from constants that were fitted without it."""
    guess = _fitted(law, records, given_s)
    return tuple(
        _computed_days(number, record, law, _fit(records, law, guess, given_s=given_s, without=number))
        for number, record in enumerate(records)
    )


def _errors(records: Records, days: tuple[float, ...]) -> Floats:
    """Distance from the middle of the interval, for the records that say when."""
    return np.array([day - (r.from_day + r.to_day) / 2 for r, day in zip(records, days, strict=True) if r.is_dated])


def _mean_miss(law: Law, records: Records, given_s: float | None) -> float:
    return float(np.abs(_errors(records, _left_out(law, records, given_s))).mean())


WIDTHS = pytest.mark.parametrize("given_s", [None, 7.0], ids=["width fitted", "width 7 given"])


def test_there_are_26_records_of_which_19_say_when_and_five_come_from_trials() -> None:
    assert len(PRINTED) == 26
    assert sum(record.is_dated for record in PRINTED) == 19
    assert sum(record.is_trial for record in PRINTED) == 5


@WIDTHS
def test_the_fitted_rate_of_holes_lies_in_its_bootstrap_range(given_s: float | None) -> None:
    assert 2.4 <= _fitted(law_in_use, PRINTED, given_s).rate <= 3.5
    assert 2.4 <= HOLE_RATE_MM_PER_GROWTH_DAY <= 3.5


def test_the_rate_in_use_is_the_one_that_is_fitted_with_the_width_in_use() -> None:
    assert pytest.approx(_fitted(law_in_use, PRINTED, 7.0).rate, abs=0.05) == HOLE_RATE_MM_PER_GROWTH_DAY


@WIDTHS
def test_the_fitted_days_from_closed_to_normal_lie_in_their_bootstrap_range(given_s: float | None) -> None:
    assert 11 <= _fitted(law_in_use, PRINTED, given_s).lag <= 15
    assert pytest.approx(_fitted(law_in_use, PRINTED, given_s).lag, abs=0.6) == BACK_TO_NORMAL_LAG_DAYS


def test_the_fitted_width_of_the_growth_curve_is_wider_than_the_published_one() -> None:
    # Published 5.5 (Gelernter & Stowell 2005). It hangs on the two autumn records of Washington State, hence a range.
    assert 6.3 <= _fitted(law_in_use, PRINTED, None).s <= 7.5
    assert GRASSES["cool-season"].curve.width_c == pytest.approx(_fitted(law_in_use, PRINTED, None).s, abs=0.3)


@WIDTHS
def test_the_single_law_has_the_rate_that_stripped_turf_starts_from(given_s: float | None) -> None:
    # Stripped turf grows back at 0.34 x 0.55; the bootstrap range of that 0.34 is 0.31 to 0.36.
    assert 0.31 <= _fitted(single_law, PRINTED, given_s).rate <= 0.36


def test_the_constants_in_use_are_as_likely_as_the_fitted_ones() -> None:
    used = Constants(HOLE_RATE_MM_PER_GROWTH_DAY, BACK_TO_NORMAL_LAG_DAYS, GRASSES["cool-season"].curve.width_c)
    # 3.9 is half the 95 % point of chi-squared with three free constants (7.81, table); measured 0.2.
    assert _cost(PRINTED, law_in_use, used) - _cost(PRINTED, law_in_use, _fitted(law_in_use, PRINTED, None)) < 3.9


@WIDTHS
def test_the_law_in_use_foretells_left_out_records_as_well_as_the_single_law_to_a_tenth_of_a_day(
    given_s: float | None,
) -> None:
    in_use, single = (_mean_miss(law, PRINTED, given_s) for law in (law_in_use, single_law))
    assert in_use <= single + 0.1
    assert in_use <= 3.0


@WIDTHS
def test_it_foretells_them_no_worse_when_the_first_record_is_read_as_an_upper_bound(given_s: float | None) -> None:
    in_use, single = (_mean_miss(law, UPPER_BOUND, given_s) for law in (law_in_use, single_law))
    assert in_use <= single


@WIDTHS
def test_records_that_are_left_out_are_foretold_without_bias(given_s: float | None) -> None:
    assert abs(_errors(PRINTED, _left_out(law_in_use, PRINTED, given_s)).mean()) <= 1.0


@WIDTHS
def test_most_records_that_are_left_out_lie_in_the_interval_that_was_seen(given_s: float | None) -> None:
    days = _left_out(law_in_use, PRINTED, given_s)
    inside = [r.from_day <= round(day) <= r.to_day for r, day in zip(PRINTED, days, strict=True)]
    assert sum(inside) >= 17
    # Of the seven that say only "later than" or a very wide interval, five were right.
    assert sum(fits for r, fits in zip(PRINTED, inside, strict=True) if not r.is_dated) >= 4


@WIDTHS
def test_the_spread_of_records_that_are_left_out_is_about_the_one_in_use(given_s: float | None) -> None:
    days = _left_out(law_in_use, PRINTED, given_s)
    spreads = np.arange(0.10, 0.60, 0.01)
    likelihoods = [
        sum(r.weight * _log_likelihood(r, day, float(spread)) for r, day in zip(PRINTED, days, strict=True))
        for spread in spreads
    ]
    assert 0.18 <= float(spreads[int(np.argmax(likelihoods))]) <= 0.36
    assert 0.18 <= LOG_SPREAD <= 0.36


def test_the_law_in_use_beats_the_rule_that_it_always_takes_so_many_days() -> None:
    # "Always n days" for holes closed and for normal, each record foretold by the mean of the others.
    days = _left_out(law_in_use, PRINTED, None)
    errors: Mapping[str, list[float]] = {"rule": [], "law": []}
    for record, day in zip(PRINTED, days, strict=True):
        others = [
            (r.from_day + r.to_day) / 2 for r in PRINTED if r.is_dated and r.seen is record.seen and r is not record
        ]
        if record.is_dated and len(others) > 1:
            middle = (record.from_day + record.to_day) / 2
            errors["rule"].append(abs(float(np.mean(others)) - middle))
            errors["law"].append(abs(day - middle))
    assert len(errors["rule"]) >= 15
    assert np.mean(errors["law"]) < np.mean(errors["rule"])
