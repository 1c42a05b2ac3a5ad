"""The weather of a club folder: observed and past days, forecasts, and the services that are thanked."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

from swardcast.errors import InputNeedsAttention, Problem
from swardcast.language.catalogue import BUILT_IN
from swardcast.reading.club_file import club_from
from swardcast.reading.files import SOURCES, Files
from swardcast.reading.languages import catalogue_in
from swardcast.reading.sources_file import sources_from
from swardcast.reading.station_file import station_weather_from
from swardcast.reading.weather_block import weather_setup_from
from swardcast.reading.weather_files import DailyWeather, daily_weather_from, has_own_columns, issued_at_from
from swardcast.records.club import Club
from swardcast.records.weather import Forecast, Weather
from swardcast.records.weather_setup import WeatherSetup

__all__ = ["WeatherFolder", "club_in", "read_weather_folder", "weather_in"]


@dataclass(frozen=True, slots=True, kw_only=True)
class WeatherFolder:
    """What is needed to fetch weather.

    Args:
        club: the club.
        setup: the block `weather` of club.yaml.
        weather: all weather that is there.
    """

    club: Club
    setup: WeatherSetup
    weather: Weather


def read_weather_folder(folder: Path) -> WeatherFolder:
    """Read the club and its weather alone; a slip in the plan or the log keeps nobody from fetching weather.

    Args:
        folder: the folder that holds club.yaml.

    Returns:
        The club, how its weather comes in, and what is there.

    Raises:
        InputNeedsAttention: with every problem that was found in them.
    """
    problems: list[Problem] = []
    files = Files(folder, problems)
    club = club_in(files, problems)
    weather = weather_in(files, club, problems)
    setup = _setup(files)
    if problems or club is None or setup is None:
        raise InputNeedsAttention(problems)
    return WeatherFolder(club=club, setup=setup, weather=weather)


def club_in(files: Files, problems: list[Problem]) -> Club | None:
    """Read club.yaml and the phrases of the club's language.

    Args:
        files: the club's files.
        problems: where problems are added.

    Returns:
        The club, or None when its file is faulty.
    """
    document = files.club_file()
    club = club_from(document, files, file="club.yaml", problems=problems) if document is not None else None
    if document is None:
        return None
    told = document.value.get("language", BUILT_IN[0]) if isinstance(document.value, dict) else None
    if club is None and told not in BUILT_IN:
        return None
    language = club.language if club is not None else str(told)
    catalogue = catalogue_in(files, language, document.line(("language",)), problems)
    return replace(club, catalogue=catalogue) if club is not None else None


def _setup(files: Files) -> WeatherSetup | None:
    document = files.club_file()
    return weather_setup_from(document) if document is not None else None


def weather_in(files: Files, club: Club | None, problems: list[Problem]) -> Weather:
    """Read everything below weather/.

    Args:
        files: the club's files.
        club: the club, or None when its file is faulty.
        problems: where problems are added.

    Returns:
        The weather, as far as it could be read.
    """
    zone = club.time_zone if club is not None else ZoneInfo("UTC")
    setup = _setup(files)
    observed, history, fetched = DailyWeather(), DailyWeather(), DailyWeather()
    exports = _Exports(files, setup, zone, problems)
    for name, _ in files.below("weather", "observed.csv"):
        exports.read(name, observed)
    for name, _ in files.below("weather", "observed-fetched.csv"):
        _read_days(files, name, fetched, problems)
    for name, _ in files.below("weather/history", "*.csv"):
        exports.read(name, history)
    forecasts = []
    for name, path in files.below("weather/forecast", "*.csv"):
        issued = issued_at_from(path.stem, lambda moment: moment.replace(tzinfo=zone))
        if issued is None:
            problems.append(
                Problem(
                    file=name,
                    found=f"the name {path.stem!r}",
                    expected="the day and time of issue, such as '2027-09-01T0600.csv'",
                )
            )
            continue
        days = DailyWeather()
        _read_days(files, name, days, problems)
        forecasts.append(Forecast(issued_at=issued, tmean_c=days.tmean_c))
    sources = [files.yaml(name) for name, _ in files.below("weather", "sources.yaml")]
    return Weather(
        observed_c=fetched.tmean_c | observed.tmean_c,
        rain_mm=fetched.rain_mm | observed.rain_mm,
        history_c=history.tmean_c,
        history_lowest_c=history.lowest_c,
        history_rain_mm=history.rain_mm,
        forecasts=tuple(sorted(forecasts, key=_issue)),
        sources=sources_from(sources[0], file=SOURCES, problems=problems) if sources and sources[0] else (),
        incomplete=tuple(sorted(observed.incomplete | history.incomplete)),
    )


def _issue(forecast: Forecast) -> datetime:
    return forecast.issued_at


def _read_days(files: Files, name: str, into: DailyWeather, problems: list[Problem]) -> None:
    text = files.text(name)
    if text is not None:
        daily_weather_from(text, file=name, into=into, problems=problems)


class _Exports:
    """Reads observed and past days: in our own columns, or as the club's station writes them."""

    def __init__(self, files: Files, setup: WeatherSetup | None, zone: ZoneInfo, problems: list[Problem]) -> None:
        self._files, self._setup, self._zone, self._problems = files, setup, zone, problems

    def read(self, name: str, into: DailyWeather) -> None:
        """Add a file's days; how a file is to be read is not known when the block that tells it is faulty."""
        if self._setup is None:
            return
        form = self._setup.station_file
        text = self._files.text(name, form=form)
        if text is None:
            return
        if form is None or has_own_columns(text):
            daily_weather_from(text, file=name, into=into, problems=self._problems)
        else:
            station_weather_from(text, file=name, form=form, zone=self._zone, into=into, problems=self._problems)
