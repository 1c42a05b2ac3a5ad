"""The weather to come: members cut from past years, starting from how things stand today."""

from __future__ import annotations

import math
from dataclasses import dataclass
from datetime import date
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.turf.climate import WeatherPast, calendar_places, climate_of
from swardcast.turf.few_years import ENOUGH_YEARS, SPREAD_BETWEEN_YEARS_C, slow_share
from swardcast.turf.series import DailySeries, same_day_in

__all__ = [
    "HORIZON_DAYS",
    "Ensemble",
    "WeatherPast",
    "climate_of",
    "known_days_c",
    "members_from_monthly",
    "past_years",
    "weather_members",
]

Floats = NDArray[np.float64]

HORIZON_DAYS: Final = 200
"""How far ahead healing is sought, days; later than that counts as "not this season": judgement."""

_RECENT_DAYS: Final = 5  # how old the last observed day may be to tell how things stand today: judgement
_COMPLETE_DAYS: Final = 100  # days of a past year that count when it is asked whether it can serve as a member
_COMPLETE_SHARE: Final = 0.9  # share of those days that it must have; both judgement, gaps take the usual temperature
_SHIFTS_DAYS: Final = (-10, 0, 10)
_SHIFTS_OF_FEW_YEARS_DAYS: Final = (-20, -10, 0, 10, 20)
# A past year serves once for each of these starts, days from the calendar day: weather ten days apart is nearly
# another draw, and the anomalies, not the temperatures, are moved. Judgement, tried on a record up to 1975.

_LEAP_YEAR: Final = 2000
_DAYS_OF_A_LEAP_YEAR: Final = 366
_MONTH_STARTS: Final = [(date(_LEAP_YEAR, month, 1) - date(_LEAP_YEAR, 1, 1)).days for month in range(1, 13)]

FORECAST_ERROR_C: Final = 1.0
"""Error of a forecast daily mean on the first day, C, standard deviation: judgement."""
FORECAST_ERROR_GROWTH_C: Final = 0.25
"""Growth of that error with each further day, C per day: judgement."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Ensemble:
    """Temperatures from one day on: those that were observed, then members that differ.

    Args:
        first: the first day.
        tmean_c: shape (members, days), C.
        observed_days: how many days at the start were observed and are the same in all members.
        past_years: how many past years the members were cut from.
    """

    first: date
    tmean_c: Floats
    observed_days: int
    past_years: int


def weather_members(
    past: WeatherPast,
    observed: DailySeries | None,
    forecast: DailySeries | None,
    *,
    start: date,
    today: date,
    days: int,
) -> Ensemble:
    """Lay out the weather from a day on: observed, then forecast, then members cut from the past years.

    Assumes each past year is as likely as another, at the level of the last years. A year serves three times, from
    the calendar day and from ten days before and after, and five times where fewer than ten years are known. A member
    starts from the anomaly of the last day observed rather than its own year's, and returns to its own as that fades.
    The fewer the years, the more of another year's slow part is added to a member or taken from it. Days that were
    not observed take the usual temperature; a year that runs over the end of the record goes on with its first.

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

    Source: for an autoregressive anomaly the replaced start is the exact conditional sample; the spread after
        `few_years.prediction_factor`. How often its ranges hold is measured in tests/turf.
    """
    if start > today:
        message = f"an ensemble starts at the latest today, {today}, not on {start}"
        raise ValueError(message)
    known_days = min(days, (today - start).days)
    begins = past_years(past, today)
    future = np.zeros((0, days - known_days))
    if len(begins):
        own = _anomalies(past, observed, begins, today, days - known_days)
        future = _with_forecast(own, forecast, past.usual_c(today, days - known_days), today)
    known = known_days_c(observed, past, start, known_days)
    return Ensemble(
        first=start,
        tmean_c=np.hstack([np.broadcast_to(known, (len(future), known_days)), future]),
        observed_days=known_days,
        past_years=len(begins),
    )


def members_from_monthly(monthly_c: Floats, start: date, days: int) -> Ensemble:
    """Lay out a usual year from twelve monthly means, as a single member.

    Args:
        monthly_c: mean temperature of January to December, C, shape (12,).
        start: first day wanted.
        days: how many days.

    Returns:
        An ensemble of one member.

    Source: linear between the middles of the months, each day read at noon, the usual practice for monthly normals.
    """
    starts = np.array(_MONTH_STARTS)
    ends = np.append(starts[1:], _DAYS_OF_A_LEAP_YEAR)
    noons = calendar_places(start, days) + 0.5
    usual = np.interp(noons, (starts + ends) / 2, monthly_c, period=_DAYS_OF_A_LEAP_YEAR)
    return Ensemble(first=start, tmean_c=usual[np.newaxis, :], observed_days=0, past_years=0)


def known_days_c(series: DailySeries | None, past: WeatherPast, start: date, days: int) -> Floats:
    """Cut out a run of observed days and put the usual temperature where a day is missing.

    Args:
        series: days observed, or None.
        past: the place's past.
        start: first day wanted.
        days: how many, 0 or more.

    Returns:
        Temperatures, C, shape (days,).
    """
    values = series.between(start, days) if series is not None else np.full(days, np.nan)
    return np.asarray(np.where(np.isnan(values), past.usual_c(start, days), values))


def past_years(past: WeatherPast, today: date) -> NDArray[np.intp]:
    """Tell which past years serve as members on a calendar day: those with enough of the days after it.

    Args:
        past: the place's past.
        today: first day that is not observed.

    Returns:
        Where each of them begins, in days of the record, shape (years,).
    """
    history = past.history
    years = range(history.first.year, min(today.year, history.after_last.year + 1))
    places = np.array([(same_day_in(today, year) - history.first).days for year in years], dtype=np.intp)
    begins = places[(places >= 0) & (places < len(history.tmean_c))]
    known = past.cut(past.known, begins, _COMPLETE_DAYS)
    return np.asarray(begins[known.mean(axis=1) >= _COMPLETE_SHARE])


def _last_anomaly(series: DailySeries | None, past: WeatherPast, today: date) -> tuple[float, int] | None:
    """The anomaly of the last day observed and how many days ago that is; None when that is too long ago."""
    if series is None:
        return None
    first = date.fromordinal(today.toordinal() - _RECENT_DAYS)
    anomaly = series.between(first, _RECENT_DAYS) - past.usual_c(first, _RECENT_DAYS)
    known = np.flatnonzero(~np.isnan(anomaly))
    return (float(anomaly[known[-1]]), _RECENT_DAYS - int(known[-1])) if len(known) else None


def _anomalies(
    past: WeatherPast, observed: DailySeries | None, begins: NDArray[np.intp], today: date, days: int
) -> Floats:
    """Anomalies of the members from today on, shape (years x shifts, days)."""
    shifts = np.array(_SHIFTS_DAYS if len(begins) >= ENOUGH_YEARS else _SHIFTS_OF_FEW_YEARS_DAYS)
    rows = (begins[:, np.newaxis] + shifts).ravel()
    own = past.cut(past.anomaly_c, rows, days) + past.level_c
    fading = np.zeros(days)
    now = _last_anomaly(observed, past, today)
    if now is not None:
        anomaly, ago = now
        left = past.fading[ago - 1 :][:days]
        fading[: len(left)] = left
        own += (anomaly - past.level_c - past.cut(past.anomaly_c, rows - ago)) * fading
    signs = np.tile(shifts / np.sqrt(np.mean(shifts**2)), len(begins))[:, np.newaxis]
    return np.asarray(own + signs * (1 - fading) * _wider(past, begins, shifts, days))


def _wider(past: WeatherPast, begins: NDArray[np.intp], shifts: NDArray[np.intp], days: int) -> Floats:
    """What is added to a member or taken from it, because so many years do not show all that can come."""
    if len(begins) == 1:
        return np.full((len(shifts), days), math.sqrt(2) * SPREAD_BETWEEN_YEARS_C)  # two years' chance apart
    others = (np.roll(begins, -1)[:, np.newaxis] + shifts).ravel()
    return slow_share(len(begins)) * past.cut(past.slow_c, others, days)


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
