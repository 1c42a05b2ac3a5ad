"""A place's climate and its past years, learnt once from its record."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.turf.series import DailySeries, same_day_in

__all__ = ["FADE_DAYS", "PAST_YEARS", "WeatherPast", "calendar_places", "climate_of"]

Floats = NDArray[np.float64]

FADE_DAYS: Final = 14
"""Days for which the fading of an anomaly is measured; nothing is left after that: judgement."""

PAST_YEARS: Final = 30
"""Years before a moment that serve as its past, where a record has more: the length of a climate normal (World
Meteorological Organization, 2017, Guidelines on the Calculation of Climate Normals, WMO-No. 1203; from memory)."""

_SMOOTHING_DAYS: Final = 31  # window of the running means: the climate of a calendar day, the slow part: judgement
_LEAD_IN_DAYS: Final = 40  # kept free before the record, for members that begin sooner
_RUN_ON_DAYS: Final = 3 * 366  # how far a record goes on after its end with its own first years
_RECENT_DAYS: Final = 3652  # ten years
_RECENT_WEIGHT: Final = 0.5
# Share of the last ten years' departure from the whole record that is taken to last: judgement. A slow warming is real,
# but ten years may also differ by chance. On a record up to 1975 (tests/turf/long_records.py) 0.6 foretold best.
_MONTH_STARTS: Final = np.array([0, 31, 60, 91, 121, 152, 182, 213, 244, 274, 305, 335])  # of a leap year, from 0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WeatherPast:
    """A place's climate and its past years, made once and used for every date.

    Args:
        history: daily means over many years.
        climate_c: smoothed mean of each calendar day, C, shape (366,).
        fading: share of a day's anomaly that is left after 1, 2, ... days, shape (14,).
        level_c: how much warmer than the whole history the years to come are taken to be, C.
        anomaly_c: each day of the record less the usual, C; 0 where missing. This and the two below have some empty
            days first, and go on after the record's end with the same calendar days of its first years.
        slow_c: mean anomaly of the month around each day, C.
        known: 1 for a day that was recorded, else 0.
    """

    history: DailySeries
    climate_c: Floats
    fading: Floats
    level_c: float
    anomaly_c: Floats
    slow_c: Floats
    known: Floats

    def usual_c(self, start: date, days: int) -> Floats:
        """Tell the usual temperature of a run of days.

        Args:
            start: first day.
            days: how many.

        Returns:
            Temperatures, C, shape (days,).
        """
        return self.climate_c[calendar_places(start, days)]

    @staticmethod
    def cut(values: Floats, places: NDArray[np.intp], days: int = 1) -> Floats:
        """Cut runs of days out of `anomaly_c`, `slow_c` or `known`.

        Args:
            values: one of these three.
            places: where the runs begin, days counted from the history's first, shape (runs,).
            days: how long they are, at most some two years.

        Returns:
            Values, shape (runs, days); 0 where neither the record nor its going on has anything.
        """
        windows = np.lib.stride_tricks.sliding_window_view(values, days)
        return np.asarray(windows[places + _LEAD_IN_DAYS])


def climate_of(history: DailySeries) -> WeatherPast:
    """Learn a place's climate, and how fast an unusual spell fades there, from its past years.

    Assumes a year or more of days; calendar days that no year has are filled from their neighbours.

    Args:
        history: daily means over one or more years.

    Returns:
        The climate of each calendar day, the fading of anomalies, and the past laid out for members.

    Source: fading by ordinary least squares, through the origin, of the anomaly n days later on a day's anomaly; a
        textbook method, learnt from the club's own past.
    """
    places = calendar_places(history.first, len(history.tmean_c))
    known = ~np.isnan(history.tmean_c)
    counts = np.bincount(places[known], minlength=366).astype(np.float64)
    sums = np.bincount(places[known], weights=history.tmean_c[known], minlength=366).astype(np.float64)
    climate = _running_mean_round_the_year(sums) / np.maximum(_running_mean_round_the_year(counts), 1e-9)
    anomaly = np.where(known, history.tmean_c - climate[places], 0.0)
    laid_out = _laid_out(history)
    round_again = np.append(anomaly, 0.0)[laid_out]
    return WeatherPast(
        history=history,
        climate_c=climate,
        fading=_fading(anomaly, known),
        level_c=_level(anomaly, known),
        anomaly_c=round_again,
        slow_c=_running_mean(round_again),
        known=np.append(known, False)[laid_out].astype(np.float64),
    )


def calendar_places(start: date, days: int) -> NDArray[np.intp]:
    """Number the calendar days of a run.

    Args:
        start: first day.
        days: how many.

    Returns:
        0 for 1 January to 365 for 31 December, 29 February always counted, shape (days,).
    """
    run = np.datetime64(start) + np.arange(days)
    months = run.astype("datetime64[M]")
    day_of_month = (run - months).astype(np.intp)
    month = months.astype(np.intp) % 12
    return np.asarray(_MONTH_STARTS[month] + day_of_month, dtype=np.intp)


def _laid_out(history: DailySeries) -> NDArray[np.intp]:
    """Places in the record, with a lead-in, a going on with the first years, and the last place for "no such day"."""
    count = len(history.tmean_c)
    after = history.after_last
    again = ((same_day_in(after, history.first.year + more) - history.first).days for more in (0, 1))
    begin = next((place for place in again if 0 <= place < count), count)
    run_on = np.minimum(begin + np.arange(_RUN_ON_DAYS), count)
    return np.concatenate([np.full(_LEAD_IN_DAYS, count), np.arange(count), run_on, [count]])


def _running_mean_round_the_year(values: Floats) -> Floats:
    half = _SMOOTHING_DAYS // 2
    wrapped = np.concatenate([values[-half:], values, values[:half]])
    return np.asarray(np.convolve(wrapped, np.full(_SMOOTHING_DAYS, 1 / _SMOOTHING_DAYS), mode="valid"))


def _running_mean(values: Floats) -> Floats:
    return np.asarray(np.convolve(values, np.full(_SMOOTHING_DAYS, 1 / _SMOOTHING_DAYS), mode="same"))


def _fading(anomaly: Floats, known: NDArray[np.bool_]) -> Floats:
    """A missing day has the anomaly 0, so it adds nothing to either sum."""
    fading = np.zeros(FADE_DAYS)
    for place in range(FADE_DAYS):
        before, after = anomaly[: -place - 1], anomaly[place + 1 :]
        strength = float(np.sum(before**2 * known[place + 1 :]))
        if strength > 0:
            fading[place] = min(1.0, max(0.0, float(np.sum(before * after)) / strength))
    return fading


def _level(anomaly: Floats, known: NDArray[np.bool_]) -> float:
    if len(anomaly) <= _RECENT_DAYS:
        return 0.0
    return _RECENT_WEIGHT * float(anomaly[-_RECENT_DAYS:].sum()) / max(int(known[-_RECENT_DAYS:].sum()), 1)
