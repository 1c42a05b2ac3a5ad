"""How a club's weather comes in: the form of its station's files, and the service that is asked for the rest."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import Final

from swardcast.records.readings import RainCount

__all__ = ["SERVICES", "Clock", "StationFile", "WeatherSetup"]

SERVICES: Final = ("institutes", "open-meteo")
"""Names of the services that can be asked, the usual one first; `fetching.services` has an adapter for each."""


class Clock(Enum):
    """The clock of a station, in the words of club.yaml."""

    LOCAL = "local time"
    WINTER = "winter time"
    UTC = "UTC"


@dataclass(frozen=True, slots=True, kw_only=True)
class StationFile:
    """The form of a station's files.

    Args:
        day: the station's name of the column with the day, or with day and time.
        time: its column with the time alone, or None.
        temperature: its column with the temperature, or None.
        lowest: its column with the lowest temperature, or None.
        highest: its column with the highest temperature, or None.
        rain: its column with rain, or None.
        fahrenheit: temperatures are in Fahrenheit instead of C.
        inches: rain is in inches instead of mm.
        written: how day and time are written, such as "day/month/year hour:minute".
        delimiter: the character between two values.
        decimal_comma: decimals have a comma instead of a point.
        missing: marks for a missing value.
        readings: rows are readings through the day, not days.
        rain_count: how rain is counted, for readings.
        clock: the station's clock, for readings.
        encoding: how the text is saved, as Python names it.
    """

    day: str
    time: str | None = None
    temperature: str | None = None
    lowest: str | None = None
    highest: str | None = None
    rain: str | None = None
    fahrenheit: bool = False
    inches: bool = False
    written: str = "year-month-day"
    delimiter: str = ","
    decimal_comma: bool = False
    missing: tuple[str, ...] = ()
    readings: bool = False
    rain_count: RainCount = RainCount.EACH_ROW
    clock: Clock = Clock.LOCAL
    encoding: str = "utf-8-sig"


@dataclass(frozen=True, slots=True, kw_only=True)
class WeatherSetup:
    """What the block `weather` of club.yaml says.

    Args:
        station_file: the form of the station's files, or None when they have our own columns.
        service: the service to ask, one of `SERVICES`.
        service_address: address of a copy of the service, or "" for the service itself.
        observed_days: how many days before today are asked for.
        history_years: how many whole past years are asked for.
    """

    station_file: StationFile | None = None
    service: str = SERVICES[0]
    service_address: str = ""
    observed_days: int = 14
    history_years: int = 0
