"""The block `weather` of club.yaml -> how the club's weather comes in."""

from __future__ import annotations

import re
from enum import Enum
from typing import Annotated, Final

from pydantic import BeforeValidator, ValidationError, model_validator

from swardcast.errors import nearest
from swardcast.reading.schema import Lines, Model, Text, one_of, within, wrong
from swardcast.reading.stamps import stamp_pattern
from swardcast.reading.yaml_text import Located
from swardcast.records.readings import RainCount
from swardcast.records.weather_setup import SERVICES, Clock, StationFile, WeatherSetup

__all__ = ["DELIMITERS", "ENCODINGS", "Decimals", "Parted", "Saved", "WeatherBlock", "weather_setup_from"]

_ADDRESS: Final = re.compile(r"^https?://[^\s/?#]+(/[^\s?#]*)?$", re.IGNORECASE)


class _Degrees(Enum):
    CELSIUS = "celsius"
    FAHRENHEIT = "fahrenheit"


class _RainUnit(Enum):
    MM = "mm"
    INCHES = "inches"


class Parted(Enum):
    """What parts the values of a text file."""

    COMMA = "comma"
    SEMICOLON = "semicolon"
    TAB = "tab"


class Decimals(Enum):
    """The sign before decimals."""

    POINT = "point"
    COMMA = "comma"


class _Row(Enum):
    DAY = "a day"
    READING = "a reading"


class Saved(Enum):
    """How a text file is saved."""

    UTF_8 = "utf-8"
    UTF_16 = "utf-16"
    WINDOWS = "windows-1252"


DELIMITERS: Final = {Parted.COMMA: ",", Parted.SEMICOLON: ";", Parted.TAB: "\t"}
ENCODINGS: Final = {Saved.UTF_8: "utf-8-sig", Saved.UTF_16: "utf-16", Saved.WINDOWS: "cp1252"}


def _clock(value: object) -> Clock:
    words = {clock.value.lower(): clock for clock in Clock}
    chosen = words.get(str(value).strip().lower())
    if chosen is None:
        names = [clock.value for clock in Clock]
        raise wrong(value, f"one of: {', '.join(names)}", nearest(str(value), names))
    return chosen


def _service(value: object) -> str:
    if value not in SERVICES:
        raise wrong(value, f"one of: {', '.join(SERVICES)}", nearest(str(value), SERVICES))
    return str(value)


def _address(value: object) -> str:
    if not _ADDRESS.fullmatch(str(value)):
        raise wrong(value, "the address of your copy of the service, such as 'https://weather.example'")
    return str(value).rstrip("/")


class _Columns(Model):
    day: Text
    time: Text | None = None
    temperature: Text | None = None
    lowest: Text | None = None
    highest: Text | None = None
    rain: Text | None = None

    @model_validator(mode="after")
    def _enough(self) -> _Columns:
        if self.temperature is None and (self.lowest is None or self.highest is None):
            named = [name for name in ("lowest", "highest") if getattr(self, name) is not None]
            found = f"only {' and '.join(['day', *named])}"
            raise wrong(found, "also 'temperature', or 'lowest' with 'highest'")
        return self


class _StationFile(Model):
    columns: _Columns
    temperatures_in: Annotated[_Degrees, one_of(_Degrees)] = _Degrees.CELSIUS
    rain_in: Annotated[_RainUnit, one_of(_RainUnit)] = _RainUnit.MM
    day_is_written: Text = "year-month-day"
    time_is_written: Text = "hour:minute"
    values_are_parted_by: Annotated[Parted, one_of(Parted)] = Parted.COMMA
    decimals: Annotated[Decimals, one_of(Decimals)] = Decimals.POINT
    missing: Lines = []
    each_row_is: Annotated[_Row, one_of(_Row)] | None = None
    rain_is_counted: Annotated[RainCount, one_of(RainCount)] = RainCount.EACH_ROW
    clock: Annotated[Clock, BeforeValidator(_clock)] = Clock.LOCAL
    saved_as: Annotated[Saved, one_of(Saved)] = Saved.UTF_8

    @model_validator(mode="after")
    def _stamps_are_whole(self) -> _StationFile:
        pattern = stamp_pattern(self.written)
        if self.each_row_is is _Row.READING and not pattern.has_time:
            raise wrong("readings without a time", "'hour' in 'day is written', or a column 'time'")
        return self

    @property
    def written(self) -> str:
        """Day and time as one text, as the reader joins them."""
        return self.day_is_written + (f" {self.time_is_written}" if self.columns.time is not None else "")

    def record(self) -> StationFile:
        """Make the record."""
        has_time = stamp_pattern(self.written).has_time
        return StationFile(
            day=self.columns.day,
            time=self.columns.time,
            temperature=self.columns.temperature,
            lowest=self.columns.lowest,
            highest=self.columns.highest,
            rain=self.columns.rain,
            fahrenheit=self.temperatures_in is _Degrees.FAHRENHEIT,
            inches=self.rain_in is _RainUnit.INCHES,
            written=self.written,
            delimiter=DELIMITERS[self.values_are_parted_by],
            decimal_comma=self.decimals is Decimals.COMMA,
            missing=tuple(self.missing),
            readings=has_time if self.each_row_is is None else self.each_row_is is _Row.READING,
            rain_count=self.rain_is_counted,
            clock=self.clock,
            encoding=ENCODINGS[self.saved_as],
        )


class WeatherBlock(Model):
    """The fields of the block `weather`."""

    station_file: _StationFile | None = None
    service: Annotated[str, BeforeValidator(_service)] = SERVICES[0]
    service_address: Annotated[str, BeforeValidator(_address)] = ""
    observed_days: Annotated[int, within(0, 366, "at most a year of days")] = 14
    history_years: Annotated[int, within(0, 80, "at most 80 years")] = 0


def weather_setup_from(document: Located) -> WeatherSetup | None:
    """Read the block `weather` of the club file.

    Assumes that `club_from` tells what is wrong with it.

    Args:
        document: the YAML of club.yaml.

    Returns:
        The setup, also when there is no such block; None when something in it is wrong.
    """
    told = document.value.get("weather") if isinstance(document.value, dict) else None
    try:
        block = WeatherBlock.model_validate(told if told is not None else {})
    except ValidationError:
        return None
    return WeatherSetup(
        station_file=block.station_file.record() if block.station_file is not None else None,
        service=block.service,
        service_address=block.service_address,
        observed_days=block.observed_days,
        history_years=block.history_years,
    )
