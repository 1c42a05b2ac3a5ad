"""Predictions replayed over a long record: each from the years before it, then held against what came."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date, timedelta
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.turf.climate import WeatherPast, climate_of
from swardcast.turf.ensemble import HORIZON_DAYS, weather_members
from swardcast.turf.growth import GrowthCurve, growth_fraction
from swardcast.turf.milestones import ALLOW_UNTIL, EARLY, LIKELY, days_until_growth
from swardcast.turf.scores import crps
from swardcast.turf.series import DailySeries, same_day_in

__all__ = ["FIELDS", "Question", "Replay", "days_from_each_day", "replay", "years_to_predict"]

Floats = NDArray[np.float64]

_FEWEST_KNOWN_SHARE: Final = 0.9  # share of the days until the need is reached that must be recorded: judgement
_SHOWN_DAYS: Final = 30  # days before the start that a prediction is shown besides those since: more than it looks at

FIELDS: Final = {
    "year": "start year",
    "month": "start month",
    "known_days": "days of healing that were over when the prediction was made",
    "need": "growth days needed",
    "truth": "days it took; the horizon where the need was not reached",
    "early": "10 % day",
    "likely": "50 % day",
    "allow_until": "90 % day; the horizon where more than 10 % of the members do not reach the need",
    "crps": "score of the prediction, days",
    "always": "the fixed number of days learnt from the years before",
    "climatology_crps": "score of the days that the past years took from the same start day, days",
}
"""What is kept of each case; days count from the start and are cut to the horizon."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """What is asked of a record.

    Args:
        curve: growth against temperature.
        needs: growth days needed, each above 0.
        months: start months, 1 to 12.
        days_of_month: start days within a month, 1 to 28.
        known_days: for each prediction, how many days of healing are over when it is made, 0 or more.
        training_years: how many years before the year of the prediction are known, 1 or more.
        first_year: first start year, or None for the first that has enough years before it.
    """

    curve: GrowthCurve
    needs: tuple[float, ...]
    months: tuple[int, ...] = tuple(range(1, 13))
    days_of_month: tuple[int, ...] = (1, 6, 11, 16, 21, 26)
    known_days: tuple[int, ...] = (0, 5, 10)
    training_years: int = 30
    first_year: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Replay:
    """Predictions and what came.

    Args:
        cases: one row for each start day, need and prediction, with the fields of `FIELDS`.
        left_out: pairs of start day and need that could not be judged, for gaps, because the record ends within the
            horizon or because no past year was complete enough.
    """

    cases: NDArray[np.void]
    left_out: int


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Known:
    """What is known on 1 January of a year: the years before, and how long healing took in them."""

    first: date
    past: WeatherPast
    days: Floats  # from each day of the years before, shape (days, needs)
    always: Floats  # for each need the median over all start days of the year, in all the years before

    def climatology(self, start: date) -> Floats:
        """Days it took in each of the years before from the same calendar day on, shape (years, needs)."""
        places = [(same_day_in(start, year) - self.first).days for year in range(self.first.year, start.year)]
        return self.days[[place for place in places if 0 <= place < len(self.days)]]


@dataclass(slots=True)
class _Replaying:
    record: DailySeries
    question: Question
    left_out: int = 0
    _known: dict[int, _Known] = field(default_factory=dict)

    def known_in(self, year: int) -> _Known:
        if year not in self._known:
            self._known = {one: known for one, known in self._known.items() if one >= year - 1}
            self._known[year] = self._learn(date(year - self.question.training_years, 1, 1), date(year, 1, 1))
        return self._known[year]

    def _learn(self, first: date, end: date) -> _Known:
        days = (end - first).days
        past = climate_of(DailySeries(first=first, tmean_c=self.record.between(first, days)))
        told = np.concatenate([past.history.tmean_c, np.full(HORIZON_DAYS, np.nan)])  # as if nothing else were known
        filled = np.where(np.isnan(told), past.usual_c(first, len(told)), told)
        taken = days_from_each_day(filled, self.question)
        return _Known(first=first, past=past, days=taken, always=np.asarray(np.median(taken, axis=0)))

    def truths(self, year: int) -> Floats:
        """Days it took from each day of a year, shape (days, needs); NaN where that cannot be told."""
        first = date(year, 1, 1)
        count = (date(year + 1, 1, 1) - first).days
        told = self.record.between(first, count + HORIZON_DAYS)
        gaps = np.isnan(told)
        filled = np.where(gaps, self.known_in(year).past.usual_c(first, len(told)), told)
        truths = days_from_each_day(filled, self.question)
        gone = np.concatenate([[0], np.cumsum(gaps)])
        starts = np.arange(count)[:, np.newaxis]
        until = starts + np.maximum(1, np.ceil(truths).astype(np.intp))
        truths[(gone[until] - gone[starts]) / (until - starts) > 1 - _FEWEST_KNOWN_SHARE] = np.nan
        recorded = [
            first + timedelta(days=place) >= self.record.first
            and first + timedelta(days=place + HORIZON_DAYS) <= self.record.after_last
            for place in range(count)
        ]
        truths[~np.array(recorded)] = np.nan
        return truths

    def rows(self) -> Iterator[tuple[float, ...]]:
        for year in years_to_predict(self.record, self.question):
            truths = self.truths(year)
            for month in self.question.months:
                for day in self.question.days_of_month:
                    start = date(year, month, day)
                    yield from self._predictions(start, truths[(start - date(year, 1, 1)).days])

    def _predictions(self, start: date, truth: Floats) -> Iterator[tuple[float, ...]]:
        judged = ~np.isnan(truth)
        self.left_out += int(np.sum(~judged))
        known = self.known_in(start.year)
        climatology = known.climatology(start)
        for known_days in self.question.known_days if judged.any() else ():
            members = self._members(start, start + timedelta(days=known_days))
            if not len(members) or not len(climatology):
                self.left_out += int(np.sum(judged))
                return
            asked = judged & (np.nan_to_num(truth) > known_days)
            told = (
                np.array(self.question.needs)[asked],
                truth[asked],
                *np.quantile(members, [EARLY, LIKELY, ALLOW_UNTIL], axis=0, method="inverted_cdf")[:, asked],
                crps(members[:, asked].T, truth[asked]),
                known.always[asked],
                crps(climatology[:, asked].T, truth[asked]),
            )
            yield from ((start.year, start.month, known_days, *row) for row in zip(*told, strict=True))

    def _members(self, start: date, today: date) -> Floats:
        """Days to each need as foretold on a day, shape (members, needs)."""
        first = start - timedelta(days=_SHOWN_DAYS)
        observed = DailySeries(first=first, tmean_c=self.record.between(first, (today - first).days))
        past = self.known_in(today.year).past
        ensemble = weather_members(past, observed, None, start=start, today=today, days=HORIZON_DAYS)
        growth = growth_fraction(ensemble.tmean_c, self.question.curve)
        if not len(growth):
            return np.zeros((0, len(self.question.needs)))
        return np.minimum(days_until_growth(growth, np.array(self.question.needs)), HORIZON_DAYS)


def replay(record: DailySeries, question: Question) -> Replay:
    """Predict from the years before each start day, and hold the predictions against what came.

    Assumes the record alone: no forecast is used, and the healing model's own error is no part of it. A start day
    counts when the record runs on to the horizon and has 9 in 10 of the days until the need is reached. A need that is
    not reached within the horizon counts as reached there: for the prediction, its rivals and the truth alike. A need
    that was reached before a prediction is made is no case for it, as nothing is left to predict.

    Args:
        record: daily means over more years than the training takes.
        question: what to predict, and when.

    Returns:
        One row for each case; no row when the record is too short.

    Source: cutting all competitors to the horizon leaves the score proper: it is the CRPS with the weight 0 beyond
        the horizon; Gneiting & Ranjan 2011, "Comparing density forecasts using threshold- and quantile-weighted
        scoring rules", Journal of Business & Economic Statistics 29, 411-422 (from memory).
    """
    replaying = _Replaying(record=record, question=question)
    rows = list(replaying.rows())
    whole = ("year", "month", "known_days")
    kinds = np.dtype([(name, np.int64 if name in whole else np.float64) for name in FIELDS])
    return Replay(cases=np.array(rows, dtype=kinds), left_out=replaying.left_out)


def years_to_predict(record: DailySeries, question: Question) -> range:
    """Name the years that have enough whole years before them.

    Args:
        record: daily means.
        question: says how many years before are wanted, and which is the first year.

    Returns:
        Years, possibly none.
    """
    first_whole = record.first.year + (record.first > date(record.first.year, 1, 1))
    first = max(first_whole + question.training_years, question.first_year or first_whole)
    return range(first, record.after_last.year + (record.after_last > date(record.after_last.year, 1, 1)))


def days_from_each_day(tmean_c: Floats, question: Question) -> Floats:
    """Count the days until each need is reached, from every day on that has the horizon before it.

    Args:
        tmean_c: daily means without gaps, C, shape (days,).
        question: curve and needs.

    Returns:
        Days with fractions, cut to the horizon, shape (days - horizon, needs).
    """
    growth = growth_fraction(tmean_c, question.curve)
    sums = np.concatenate([[0.0], np.cumsum(growth)])
    starts = np.arange(len(growth) - HORIZON_DAYS)[:, np.newaxis]
    wanted = sums[starts] + np.array(question.needs)
    place = np.minimum(np.searchsorted(sums[1:], wanted.ravel()).reshape(wanted.shape), len(growth) - 1)
    part = 1.0 - (sums[place + 1] - wanted) / np.maximum(growth[place], 1e-12)
    return np.asarray(np.minimum(place - starts + np.clip(part, 0.0, 1.0), HORIZON_DAYS))
