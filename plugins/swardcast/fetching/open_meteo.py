"""Open-Meteo: past days and forecast from one openly licensed service, whose program anybody may run.

Chosen as the second service because it gives days of the club's own time zone on a grid of some 10 km, has yesterday
already this morning, and can be run by oneself for good (AGPL 3.0; `service address` in club.yaml).

Licence: CC BY 4.0: credit, a link to the licence, and that changes were made
(https://open-meteo.com/en/licence, read).
Terms (https://open-meteo.com/en/terms, read): free only for non-commercial use, under 10,000 calls a day, 5,000 an
hour and 600 a minute. A site with subscriptions or advertisements counts as commercial: a club that is not sure asks
them, runs its own copy, or takes the service `institutes`. A request for many years counts as many calls (from
memory).
Answer (https://open-meteo.com/en/docs and https://open-meteo.com/en/docs/historical-weather-api, read): with
`timezone` the days are those of the local clock; the point of the answer is the centre of its grid cell; an error is
400 with `reason`. Whole past years come from one reanalysis (`era5_seamless`, five days late), as that page advises
for long comparisons; recent days from its usual mixture, without delay.
Days: `temperature_2m_min` and `temperature_2m_max` are extremes of the hours of a day of the local clock.
"""

from __future__ import annotations

from datetime import date
from typing import Any, Final

from swardcast.fetching.service import (
    Days,
    FetchError,
    ForecastOf,
    Place,
    Question,
    RecordOf,
    Shape,
    checked_day,
    checked_place,
    checked_unit,
    shaped,
)
from swardcast.records.weather import WeatherSource

__all__ = ["FORECAST", "RECORD"]

_WHO: Final = "Open-Meteo"
_FORECAST_DAYS: Final = 16  # the most that the service gives
_DAILY: Final = "temperature_2m_min,temperature_2m_max,precipitation_sum"


class _Units(Shape):
    temperature_2m_min: str
    temperature_2m_max: str
    precipitation_sum: str


class _Daily(Shape):
    time: list[str]
    temperature_2m_min: list[float | None]
    temperature_2m_max: list[float | None]
    precipitation_sum: list[float | None]


class _Answer(Shape):
    latitude: float
    longitude: float
    timezone: str
    daily_units: _Units
    daily: _Daily


def _query(place: Place) -> dict[str, str]:
    return {
        "latitude": f"{place.latitude_deg:.4f}",
        "longitude": f"{place.longitude_deg:.4f}",
        "elevation": f"{place.elevation_m:.0f}",
        "daily": _DAILY,
        "timezone": place.zone.key,
        "temperature_unit": "celsius",
        "precipitation_unit": "mm",
    }


def _past(place: Place, first: date, last: date, whole_years: bool) -> Question:  # noqa: FBT001 - as `RecordOf` asks
    one_reanalysis = {"models": "era5_seamless"} if whole_years else {}
    return Question(
        who=_WHO,
        address="https://archive-api.open-meteo.com/v1/archive",
        query={**_query(place), "start_date": first.isoformat(), "end_date": last.isoformat(), **one_reanalysis},
    )


def _to_come(place: Place) -> Question:
    return Question(
        who=_WHO,
        address="https://api.open-meteo.com/v1/forecast",
        query={**_query(place), "forecast_days": str(_FORECAST_DAYS)},
    )


def _days(answer: Any, place: Place) -> Days:
    told = shaped(_Answer, answer, _WHO)
    checked_place(told.latitude, told.longitude, place, _WHO)
    if told.timezone != place.zone.key:
        message = f"{_WHO} gave days of the time zone {told.timezone!r} instead of {place.zone.key!r}"
        raise FetchError(message)
    for name, unit in (
        ("temperature_2m_min", "°C"), ("temperature_2m_max", "°C"), ("precipitation_sum", "mm")
    ):  # fmt: skip
        checked_unit(getattr(told.daily_units, name), unit, name, _WHO)
    columns = (told.daily.time, told.daily.temperature_2m_min, told.daily.temperature_2m_max)
    if len({len(column) for column in (*columns, told.daily.precipitation_sum)}) != 1:
        message = f"{_WHO} gave more values of one kind than of another"
        raise FetchError(message)
    days: Days = {}
    for stamp, lowest, highest, rain in zip(*columns, told.daily.precipitation_sum, strict=True):
        days |= checked_day(_day(stamp), lowest, highest, rain, _WHO)
    return days


def _day(stamp: str) -> date:
    try:
        return date.fromisoformat(stamp)
    except ValueError:
        message = f"{_WHO} answered for {stamp!r}, which is no day"
        raise FetchError(message) from None


def _past_days(answer: Any, place: Place, first: date, last: date) -> Days:
    days = _days(answer, place)
    strangers = [day for day in days if not first <= day <= last]
    if strangers:
        message = f"{_WHO} answered for {strangers[0]}, which was not asked for"
        raise FetchError(message)
    return days


def _days_to_come(answer: Any, place: Place, today: date) -> Days:
    return {day: weather for day, weather in _days(answer, place).items() if day >= today}


def _source(used_for: str) -> WeatherSource:
    return WeatherSource(
        name="Open-Meteo",
        used_for=used_for,
        credit="Weather data by Open-Meteo.com, brought to means of days.",
        address="https://open-meteo.com/",
        licence="CC BY 4.0",
        licence_address="https://creativecommons.org/licenses/by/4.0/",
    )


RECORD: Final = RecordOf(name="open-meteo", source=_source("past and recent days"), question=_past, days=_past_days)
"""Past days."""
FORECAST: Final = ForecastOf(source=_source("the forecast"), question=_to_come, days=_days_to_come)
"""Days to come."""
