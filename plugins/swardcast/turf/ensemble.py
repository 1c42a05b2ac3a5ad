"""The weather to come, as one member for each past year, starting from how things stand today."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.turf.series import DailySeries, same_day_in

__all__ = ["HORIZON_DAYS", "Ensemble", "WeatherPast", "climate_of", "members_from_monthly", "weather_members"]

Floats = NDArray[np.float64]

HORIZON_DAYS: Final = 200
"""How far ahead healing is sought, days; later than that counts as "not this season": judgement."""

_RECENT_DAYS: Final = 5  # days whose mean anomaly stands for "today's": judgement
_FADE_DAYS: Final = 14  # leads for which the fading of an anomaly is measured; nothing is left after that
_SMOOTHING_DAYS: Final = 31  # window of the running mean that makes the climate of a calendar day: judgement
_COMPLETE_DAYS: Final = 100  # days of a past year that count when it is asked whether it can serve as a member
_COMPLETE_SHARE: Final = 0.9  # share of those days that it must have; both judgement, gaps take the usual temperature
_FEWEST_RECENT: Final = 3
_LEAP_YEAR: Final = 2000  # gives every calendar day a place from 0 to 365

FORECAST_ERROR_C: Final = 1.0
"""Error of a forecast daily mean on the first day, C, standard deviation: judgement."""
FORECAST_ERROR_GROWTH_C: Final = 0.25
"""Growth of that error with each further day, C per day: judgement."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WeatherPast:
    """A place's climate and its past years, made once and used for every date.

    Args:
        history: daily means over many years.
        climate_c: smoothed mean of each calendar day, C, shape (366,).
        fading: share of today's anomaly that is left after 1, 2, ... days, shape (14,).
    """

    history: DailySeries
    climate_c: Floats
    fading: Floats

    def usual_c(self, start: date, days: int) -> Floats:
        """Tell the usual temperature of a run of days.

        Args:
            start: first day.
            days: how many.

        Returns:
            Temperatures, C, shape (days,).
        """
        return self.climate_c[_calendar_places(start, days)]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Ensemble:
    """Temperatures from one day on: those that were observed, then members that differ.

    Args:
        first: the first day.
        tmean_c: shape (members, days), C.
        observed_days: how many days at the start were observed and are the same in all members.
    """

    first: date
    tmean_c: Floats
    observed_days: int


def climate_of(history: DailySeries) -> WeatherPast:
    """Learn a place's climate, and how fast an unusual spell fades there, from its past years.

    Assumes a year or more of days; calendar days that no year has are filled from their neighbours.

    Args:
        history: daily means over one or more years.

    Returns:
        The climate of each calendar day and the fading of anomalies.

    Source: fading by ordinary least squares, through the origin, of the anomaly n days later on the mean anomaly
        of the 5 days before; a textbook method, learnt from the club's own past.
    """
    places = _calendar_places(history.first, len(history.tmean_c))
    known = ~np.isnan(history.tmean_c)
    counts = np.bincount(places[known], minlength=366).astype(np.float64)
    sums = np.bincount(places[known], weights=history.tmean_c[known], minlength=366).astype(np.float64)
    climate = _running_mean_round_the_year(sums) / np.maximum(_running_mean_round_the_year(counts), 1e-9)
    anomaly = history.tmean_c - climate[places]
    return WeatherPast(history=history, climate_c=climate, fading=_fading(anomaly))


def weather_members(
    past: WeatherPast,
    observed: DailySeries | None,
    forecast: DailySeries | None,
    *,
    start: date,
    today: date,
    days: int,
) -> Ensemble:
    """Lay out the weather from a day on: observed, then forecast, then one member for each past year.

    Assumes each past year is as likely as another. A member starts from today's anomaly rather than its own
    year's, and returns to its own as the anomaly fades. Days that were not observed take the usual temperature.

    Args:
        past: the place's past.
        observed: days up to yesterday, or None.
        forecast: days from today on, or None.
        start: first day wanted, not after `today`.
        today: first day that is not observed.
        days: how many days from `start` on.

    Returns:
        The ensemble; it has no member when no past year is complete enough.

    Raises:
        ValueError: when `start` is after `today`.
    """
    if start > today:
        message = f"an ensemble starts at the latest today, {today}, not on {start}"
        raise ValueError(message)
    known_days = min(days, (today - start).days)
    future = _future_members(past, observed, forecast, today, days - known_days)
    known = _filled(observed, past, start, known_days)
    return Ensemble(
        first=start,
        tmean_c=np.hstack([np.broadcast_to(known, (len(future), known_days)), future]),
        observed_days=known_days,
    )


def members_from_monthly(monthly_c: Floats, start: date, days: int) -> Ensemble:
    """Lay out a usual year from twelve monthly means, as a single member.

    Args:
        monthly_c: mean temperature of January to December, C, shape (12,).
        start: first day wanted.
        days: how many days.

    Returns:
        An ensemble of one member.

    Source: linear between mid-months (day 15.2 of a month of 30.4 days), the usual practice for monthly normals.
    """
    middles = (np.arange(12) + 0.5) * 366 / 12
    places = _calendar_places(start, days).astype(np.float64)
    usual = np.interp(places, middles, monthly_c, period=366)
    return Ensemble(first=start, tmean_c=usual[np.newaxis, :], observed_days=0)


def _calendar_places(start: date, days: int) -> NDArray[np.intp]:
    """Number the calendar day of each day of a run, 0 for 1 January to 365 for 31 December of a leap year."""
    run = np.datetime64(start) + np.arange(days)
    months = run.astype("datetime64[M]")
    day_of_month = (run - months).astype(np.intp)
    month = months.astype(np.intp) % 12
    month_starts = np.array([(date(_LEAP_YEAR, m, 1) - date(_LEAP_YEAR, 1, 1)).days for m in range(1, 13)])
    return np.asarray(month_starts[month] + day_of_month, dtype=np.intp)


def _running_mean_round_the_year(values: Floats) -> Floats:
    half = _SMOOTHING_DAYS // 2
    wrapped = np.concatenate([values[-half:], values, values[:half]])
    return np.asarray(np.convolve(wrapped, np.full(_SMOOTHING_DAYS, 1 / _SMOOTHING_DAYS), mode="valid"))


def _recent_mean(anomaly: Floats) -> Floats:
    """Mean anomaly of the 5 days that end the day before each day; NaN where fewer than 3 of them are known."""
    known = ~np.isnan(anomaly)
    window = np.ones(_RECENT_DAYS)
    sums = np.convolve(np.where(known, anomaly, 0.0), window)[: len(anomaly)]
    counts = np.convolve(known.astype(np.float64), window)[: len(anomaly)]
    means = np.where(counts >= _FEWEST_RECENT, sums / np.maximum(counts, 1), np.nan)
    return np.concatenate([[np.nan], means[:-1]])


def _fading(anomaly: Floats) -> Floats:
    recent = _recent_mean(anomaly)
    fading = np.zeros(_FADE_DAYS)
    for lead in range(_FADE_DAYS):
        before, after = recent[: len(recent) - lead], anomaly[lead:]
        both = ~(np.isnan(before) | np.isnan(after))
        strength = float(np.sum(before[both] ** 2))
        if strength > 0:
            fading[lead] = min(1.0, max(0.0, float(np.sum(before[both] * after[both])) / strength))
    return fading


def _filled(series: DailySeries | None, past: WeatherPast, start: date, days: int) -> Floats:
    """Cut out a run of days and put the usual temperature where a day is missing."""
    values = series.between(start, days) if series is not None else np.full(days, np.nan)
    return np.asarray(np.where(np.isnan(values), past.usual_c(start, days), values))


def _anomaly_before(series: DailySeries | None, past: WeatherPast, day: date) -> float | None:
    if series is None:
        return None
    first = date.fromordinal(day.toordinal() - _RECENT_DAYS)
    anomaly = series.between(first, _RECENT_DAYS) - past.usual_c(first, _RECENT_DAYS)
    known = anomaly[~np.isnan(anomaly)]
    return float(known.mean()) if len(known) >= _FEWEST_RECENT else None


def _future_members(
    past: WeatherPast, observed: DailySeries | None, forecast: DailySeries | None, today: date, days: int
) -> Floats:
    usual = past.usual_c(today, days)
    years = _past_years(past.history, today)
    if not years:
        return np.zeros((0, days))
    own = np.vstack([_filled(past.history, past, begin, days) - past.usual_c(begin, days) for begin in years])
    now = _anomaly_before(observed, past, today)
    if now is not None:
        before = [_anomaly_before(past.history, past, begin) for begin in years]
        shift = np.array([0.0 if anomaly is None else now - anomaly for anomaly in before])
        leads = min(days, _FADE_DAYS)
        own[:, :leads] += shift[:, np.newaxis] * past.fading[:leads]
    return _with_forecast(own, forecast, usual, today)


def _past_years(history: DailySeries, today: date) -> list[date]:
    begins = (
        same_day_in(today, year) for year in range(history.first.year, min(today.year, history.after_last.year + 1))
    )
    return [begin for begin in begins if np.mean(~np.isnan(history.between(begin, _COMPLETE_DAYS))) >= _COMPLETE_SHARE]


def _with_forecast(own: Floats, forecast: DailySeries | None, usual: Floats, today: date) -> Floats:
    """Replace the members' first days by the forecast, each with an error in the shape of its own anomaly."""
    tmean = usual + own
    if forecast is None or own.shape[1] == 0:
        return np.asarray(tmean)
    told = forecast.between(today, own.shape[1])
    spread = own.std(axis=0)
    for lead in np.flatnonzero(~np.isnan(told)):
        error = FORECAST_ERROR_C + FORECAST_ERROR_GROWTH_C * float(lead)
        scale = min(1.0, error / spread[lead]) if spread[lead] > 0 else 0.0
        tmean[:, lead] = told[lead] + scale * (own[:, lead] - own[:, lead].mean())
    return np.asarray(tmean)
