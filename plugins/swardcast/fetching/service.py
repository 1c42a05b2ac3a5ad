"""What an adapter of a weather service is: questions as addresses, answers as days. Pure; only `asking` asks."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any, Final, TypeVar
from zoneinfo import ZoneInfo

from pydantic import BaseModel, ConfigDict, ValidationError

from swardcast.errors import SwardcastError
from swardcast.records.readings import DayOfWeather
from swardcast.records.weather import COLDEST_C, MOST_RAIN_MM, WARMEST_C, WeatherSource

__all__ = [
    "Answer",
    "Days",
    "FetchError",
    "ForecastOf",
    "Place",
    "Question",
    "RecordOf",
    "Service",
    "Shape",
    "checked_day",
    "checked_place",
    "checked_unit",
    "shaped",
]

Days = dict[date, DayOfWeather]

_FARTHEST_DEG: Final = 0.5
"""How far the point of an answer may lie from the club, degrees; judgement: half a cell of the coarsest grid asked
(0.5 by 0.625 degrees, MERRA-2) is nearer, another town is farther."""


class FetchError(SwardcastError):
    """Weather could not be fetched; says in one sentence why."""


class Shape(BaseModel):
    """The part of an answer that is used; what else stands in it does not matter."""

    model_config = ConfigDict(extra="ignore", frozen=True, strict=True)


ShapeT = TypeVar("ShapeT", bound=Shape)


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """For whom weather is asked.

    Args:
        latitude_deg: -90 to 90.
        longitude_deg: -180 to 180.
        elevation_m: height above the sea.
        zone: the club's time zone.
        contact: e-mail of the club, or the address of its site.
    """

    latitude_deg: float
    longitude_deg: float
    elevation_m: float
    zone: ZoneInfo
    contact: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One request.

    Args:
        who: the service as people know it.
        address: without its query.
        query: names and values.
        names_contact: the service wants to know whom to write to.
        not_modified_since: the service's own date of the answer that is there already, or "".
    """

    who: str
    address: str
    query: Mapping[str, str]
    names_contact: bool = False
    not_modified_since: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What a service said.

    Args:
        body: its JSON; None when nothing is new since the date of the question.
        fresh_until: do not ask again before, or None.
        last_modified: the service's own date of the answer, or "".
        will_end: the service says that this version of it will end.
    """

    body: Any
    fresh_until: datetime | None = None
    last_modified: str = ""
    will_end: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordOf:
    """A service's record of past days.

    Args:
        name: begins the names of history files.
        source: whom to thank.
        question: place, first and last day, and whether they are whole past years -> the request.
        days: answer, place, first and last day -> days; one that the service does not have is left out.
    """

    name: str
    source: WeatherSource
    question: Callable[[Place, date, date, bool], Question]
    days: Callable[[Any, Place, date, date], Days]


@dataclass(frozen=True, slots=True, kw_only=True)
class ForecastOf:
    """A service's forecast.

    Args:
        source: whom to thank.
        question: place -> the request.
        days: answer, place and today -> whole days from today on.
    """

    source: WeatherSource
    question: Callable[[Place], Question]
    days: Callable[[Any, Place, date], Days]


@dataclass(frozen=True, slots=True, kw_only=True)
class Service:
    """Where a club's weather is fetched from.

    Args:
        record: observed days and past years.
        forecast: the days to come.
    """

    record: RecordOf
    forecast: ForecastOf


def shaped(shape: type[ShapeT], answer: Any, who: str) -> ShapeT:
    """Check the form of an answer.

    Args:
        shape: the form.
        answer: what the service's JSON said.
        who: the service, for the message.

    Returns:
        The part of the answer that is used.

    Raises:
        FetchError: when it has another form; names the first place that is odd.
    """
    try:
        return shape.model_validate(answer)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        place = ".".join(str(part) for part in first["loc"]) or "its whole answer"
        message = f"{who} answered in a form that is not the documented one: {place} is wrong or missing"
        raise FetchError(message) from None


def checked_place(latitude_deg: float, longitude_deg: float, place: Place, who: str) -> None:
    """Refuse an answer for another place.

    Args:
        latitude_deg: of the answer.
        longitude_deg: of the answer.
        place: the club.
        who: the service, for the message.

    Raises:
        FetchError: when the two are farther apart than a cell of a weather grid.
    """
    east = (longitude_deg - place.longitude_deg + 180) % 360 - 180
    if not (abs(latitude_deg - place.latitude_deg) <= _FARTHEST_DEG and abs(east) <= _FARTHEST_DEG):
        message = (
            f"{who} answered for another place: latitude {latitude_deg:g}, longitude {longitude_deg:g} "
            f"instead of {place.latitude_deg:g}, {place.longitude_deg:g}"
        )
        raise FetchError(message)


def checked_unit(found: str | None, expected: str, what: str, who: str) -> None:
    """Refuse an answer in another unit.

    Args:
        found: the unit that the answer names.
        expected: the unit that was asked for.
        what: whose unit.
        who: the service, for the message.

    Raises:
        FetchError: when they differ.
    """
    if found != expected:
        message = f"{who} gave {what} in {found or 'no unit'} instead of {expected}"
        raise FetchError(message)


def checked_day(day: date, lowest_c: float | None, highest_c: float | None, rain_mm: float | None, who: str) -> Days:
    """Make a day from a service's values.

    Args:
        day: the day.
        lowest_c: lowest temperature, C, or None where the service has none.
        highest_c: highest temperature, C, or None.
        rain_mm: rain, mm, or None.
        who: the service, for the message.

    Returns:
        The day, or nothing when a temperature is missing.

    Raises:
        FetchError: when a value is one that weather does not have.
    """
    if lowest_c is None or highest_c is None:
        return {}
    if not COLDEST_C <= lowest_c <= highest_c <= WARMEST_C:
        message = f"{who} gave {lowest_c:g} to {highest_c:g} C for {day}, which no weather has"
        raise FetchError(message)
    if rain_mm is not None and not 0 <= rain_mm <= MOST_RAIN_MM:
        message = f"{who} gave {rain_mm:g} mm of rain for {day}, which no weather has"
        raise FetchError(message)
    return {day: DayOfWeather(tmin_c=lowest_c, tmax_c=highest_c, rain_mm=rain_mm)}
