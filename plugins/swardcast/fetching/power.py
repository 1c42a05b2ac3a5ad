"""The daily record of NASA's POWER project: observed days and past years.

Chosen because a public research institute keeps it for the whole world from 1981 on, asks for no key, and puts no
condition on who may use it.

Licence: NASA's data are free and open, CC0 unless marked otherwise; NASA should be acknowledged
(https://www.earthdata.nasa.gov/engage/open-data-services-software/data-use-policy, read).
Attribution: the sentence in `RECORD.source.credit` is the one asked for (https://power.larc.nasa.gov/docs/referencing/,
read); the project would like to hear of uses.
Limits: at most 20 parameters a request for a point (https://power.larc.nasa.gov/docs/services/api/temporal/monthly/,
read; for the daily service from memory). No rate is published; 429 and 503 mean "later" (from memory).
Answer: documented at https://power.larc.nasa.gov/docs/services/api/temporal/daily/ (that page could not be read; the
form was taken from published answers of its version 2.9.7, and the meaning of the time standards from
https://power.larc.nasa.gov/docs/services/api/temporal/hourly/, read). A value that is missing is the `fill_value` of
the header, -999. The last few days are missing: the record lags, by some three days to a week (from memory).
Grid: temperatures are means of a cell of about 50 km (0.5 by 0.625 degrees,
https://power.larc.nasa.gov/docs/methodology/meteorology/, read), at the height of the cell, not of the course.
Days: local solar time, in bands of 15 degrees, which is within two hours or so of the club's clock also in summer;
lowest and highest of a day are then nearly always those of the clock's day (judgement).
"""

from __future__ import annotations

from datetime import date, datetime
from typing import Any, Final

from swardcast.fetching.service import (
    Days,
    FetchError,
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

__all__ = ["RECORD"]

_WHO: Final = "NASA POWER"
_LOWEST, _HIGHEST, _RAIN = "T2M_MIN", "T2M_MAX", "PRECTOTCORR"
_UNITS: Final = {_LOWEST: "C", _HIGHEST: "C", _RAIN: "mm/day"}


class _Geometry(Shape):
    coordinates: list[float]


class _Header(Shape):
    fill_value: float
    time_standard: str


class _Unit(Shape):
    units: str


class _Values(Shape):
    parameter: dict[str, dict[str, float | None]]


class _Answer(Shape):
    geometry: _Geometry
    header: _Header
    parameters: dict[str, _Unit]
    properties: _Values


def _question(place: Place, first: date, last: date, whole_years: bool) -> Question:  # noqa: FBT001 - as `RecordOf` asks
    del whole_years
    return Question(
        who=_WHO,
        address="https://power.larc.nasa.gov/api/temporal/daily/point",
        query={
            "parameters": ",".join(_UNITS),
            "community": "AG",
            "latitude": f"{place.latitude_deg:.4f}",
            "longitude": f"{place.longitude_deg:.4f}",
            "start": f"{first:%Y%m%d}",
            "end": f"{last:%Y%m%d}",
            "format": "JSON",
            "time-standard": "LST",
        },
    )


def _days(answer: Any, place: Place, first: date, last: date) -> Days:
    told = shaped(_Answer, answer, _WHO)
    if len(told.geometry.coordinates) < 2:  # noqa: PLR2004 - longitude and latitude
        message = f"{_WHO} answered without the place"
        raise FetchError(message)
    longitude, latitude = told.geometry.coordinates[:2]
    checked_place(latitude, longitude, place, _WHO)
    if told.header.time_standard != "LST":
        message = f"{_WHO} gave days of {told.header.time_standard} instead of local solar time"
        raise FetchError(message)
    for name, unit in _UNITS.items():
        if name not in told.properties.parameter:
            message = f"{_WHO} answered without {name}"
            raise FetchError(message)
        found = told.parameters.get(name)
        checked_unit(found.units if found is not None else None, unit, name, _WHO)

    def value(name: str, stamp: str) -> float | None:
        number = told.properties.parameter[name].get(stamp)
        return None if number is None or number == told.header.fill_value else number

    days: Days = {}
    for stamp in told.properties.parameter[_LOWEST]:
        day = _day(stamp)
        if not first <= day <= last:
            message = f"{_WHO} answered for {day}, which was not asked for"
            raise FetchError(message)
        days |= checked_day(day, value(_LOWEST, stamp), value(_HIGHEST, stamp), value(_RAIN, stamp), _WHO)
    return days


def _day(stamp: str) -> date:
    try:
        return datetime.strptime(stamp, "%Y%m%d").date()  # noqa: DTZ007 - a day has no zone
    except ValueError:
        message = f"{_WHO} answered for {stamp!r}, which is no day"
        raise FetchError(message) from None


RECORD: Final = RecordOf(
    name="nasa-power",
    source=WeatherSource(
        name="NASA POWER",
        used_for="past and recent days",
        credit=(
            "The data was obtained from the National Aeronautics and Space Administration (NASA) Langley Research "
            "Center (LaRC) Prediction of Worldwide Energy Resource (POWER) Project funded through the NASA Earth "
            "Science/Applied Science Program."
        ),
        address="https://power.larc.nasa.gov/",
        licence="CC0, NASA's policy of data use",
        licence_address="https://www.earthdata.nasa.gov/engage/open-data-services-software/data-use-policy",
    ),
    question=_question,
    days=_days,
)
"""Days of the POWER project."""
