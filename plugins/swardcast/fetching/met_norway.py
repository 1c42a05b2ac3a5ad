"""The open global forecast of the Norwegian Meteorological Institute, Locationforecast 2.0.

Chosen because a national weather institute gives it for the whole world for nine to ten days, without a key, to any
user, under a licence that lets a club keep and publish what it makes of it.

Licence: Norwegian Licence for Open Government Data 2.0 and CC BY 4.0: credit, a link to the licence, and that changes
were made (https://api.met.no/doc/License, read in the institute's published documentation).
Terms (https://api.met.no/doc/TermsOfService, read): name the program in the User-Agent and a way to reach its user,
or be blocked (403); do not ask again before `Expires`, and then with `If-Modified-Since`; at most four decimals in
coordinates; HTTPS; answers compressed; at most 20 requests a second; 429 means slow down, 203 means that this version
of the service is about to end. They ask not to fetch on the hour: choose an odd minute for a timer.
Answer (https://api.met.no/doc/ForecastJSON, read; variables at
https://api.met.no/doc/locationforecast/datamodel, read): GeoJSON, times in UTC, first hour by hour, later every six
hours; `air_temperature` at an instant, and its extremes in `next_6_hours`.
Days: brought to days of the club's local time by `records.readings`: the lowest and highest of the instants within
the day and of the six-hour spans that lie wholly within it. A day that the forecast does not cover from midnight to
midnight is left out, so today is seldom in it.
"""

from __future__ import annotations

from datetime import date, datetime, timedelta
from typing import Any, Final

from swardcast.fetching.service import (
    Days,
    FetchError,
    ForecastOf,
    Place,
    Question,
    Shape,
    checked_day,
    checked_place,
    checked_unit,
    shaped,
)
from swardcast.records.readings import Reading, bounds_of_day, days_of_readings
from swardcast.records.weather import WeatherSource

__all__ = ["FORECAST"]

_WHO: Final = "MET Norway"
_STEP: Final = timedelta(hours=6)
"""The longest step between two instants of the forecast (its documentation)."""


class _Details(Shape):
    air_temperature: float | None = None
    air_temperature_min: float | None = None
    air_temperature_max: float | None = None


class _Part(Shape):
    details: _Details = _Details()


class _Data(Shape):
    instant: _Part
    next_6_hours: _Part | None = None


class _Step(Shape):
    time: str
    data: _Data


class _Meta(Shape):
    updated_at: str
    units: dict[str, str]


class _Properties(Shape):
    meta: _Meta
    timeseries: list[_Step]


class _Geometry(Shape):
    coordinates: list[float]


class _Answer(Shape):
    geometry: _Geometry
    properties: _Properties


def _question(place: Place) -> Question:
    return Question(
        who=_WHO,
        address="https://api.met.no/weatherapi/locationforecast/2.0/complete",
        query={
            "lat": f"{place.latitude_deg:.4f}",
            "lon": f"{place.longitude_deg:.4f}",
            "altitude": f"{place.elevation_m:.0f}",
        },
        names_contact=True,
    )


def _days(answer: Any, place: Place, today: date) -> Days:
    told = shaped(_Answer, answer, _WHO)
    if len(told.geometry.coordinates) < 2:  # noqa: PLR2004 - longitude and latitude
        message = f"{_WHO} answered without the place"
        raise FetchError(message)
    longitude, latitude = told.geometry.coordinates[:2]
    checked_place(latitude, longitude, place, _WHO)
    checked_unit(told.properties.meta.units.get("air_temperature"), "celsius", "temperatures", _WHO)
    readings = [reading for step in told.properties.timeseries for reading in _readings(step)]
    instants = [reading.at for reading in readings if reading.until is None]
    if not instants:
        return {}
    first, last = min(instants), max(instants)
    days: Days = {}
    for day, made in days_of_readings(readings, place.zone, longest_gap=_STEP).days.items():
        start, end = bounds_of_day(day, place.zone)
        if day >= today and first <= start and end <= last:
            days |= checked_day(day, made.tmin_c, made.tmax_c, None, _WHO)
    return days


def _readings(step: _Step) -> list[Reading]:
    at = _moment(step.time)
    found = []
    now = step.data.instant.details.air_temperature
    if now is not None:
        found.append(Reading(at=at, lowest_c=now, highest_c=now))
    ahead = step.data.next_6_hours.details if step.data.next_6_hours is not None else _Details()
    if ahead.air_temperature_min is not None and ahead.air_temperature_max is not None:
        found.append(
            Reading(at=at, until=at + _STEP, lowest_c=ahead.air_temperature_min, highest_c=ahead.air_temperature_max)
        )
    return found


def _moment(text: str) -> datetime:
    try:
        moment = datetime.fromisoformat(text)
    except ValueError:
        moment = None
    if moment is None or moment.utcoffset() != timedelta():
        message = f"{_WHO} gave the time {text!r}, which is no moment of UTC"
        raise FetchError(message)
    return moment


FORECAST: Final = ForecastOf(
    source=WeatherSource(
        name="MET Norway",
        used_for="the forecast",
        credit="Based on data from MET Norway, brought to means of days.",
        address="https://api.met.no/",
        licence="CC BY 4.0",
        licence_address="https://creativecommons.org/licenses/by/4.0/",
    ),
    question=_question,
    days=_days,
)
"""The forecast of the Norwegian Meteorological Institute."""
