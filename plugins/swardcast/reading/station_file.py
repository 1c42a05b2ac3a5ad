"""A weather station's own export -> days, by the form that club.yaml tells."""

from __future__ import annotations

import csv
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from itertools import chain, islice
from typing import Final
from zoneinfo import ZoneInfo

from swardcast.errors import Problem, nearest
from swardcast.quantities import LENGTH_MM, fahrenheit_to_celsius
from swardcast.reading.stamps import StampPattern, stamp_pattern
from swardcast.reading.weather_files import (
    MOST_PROBLEMS_SOUGHT,
    DailyWeather,
    NumberedRows,
    first_problems,
    number_from,
)
from swardcast.records.readings import DayOfWeather, Reading, days_of_readings
from swardcast.records.weather import COLDEST_C, MOST_RAIN_MM, WARMEST_C
from swardcast.records.weather_setup import Clock, StationFile

__all__ = ["station_weather_from"]

_MOST_PREAMBLE: Final = 60  # lines above the header that a station may write about itself; judgement
_DELIMITERS: Final = {",": "comma", ";": "semicolon", "\t": "tab"}
_ALWAYS_MISSING: Final = ("", "NA", "M", "-")


def station_weather_from(
    text: str, *, file: str, form: StationFile, zone: ZoneInfo, into: DailyWeather, problems: list[Problem]
) -> None:
    """Read one export of a weather station.

    Assumes that a reading belongs to the day that its stamp names. Lines above the header and columns that the form
    does not name are passed over.

    Args:
        text: the file.
        file: its path for problems.
        form: how the station writes.
        zone: the club's time zone.
        into: where the days are added.
        problems: where problems are added, at most ten for each file and the count of the rest.
    """
    odd: list[Problem] = []
    rows = NumberedRows(text, form.delimiter)
    try:
        top = list(islice(rows, _MOST_PREAMBLE))
        header = _header(top, form, file, odd)
        if header is not None:
            below = chain(top[header.place + 1 :], rows)
            _ExportReader(file=file, form=form, zone=zone, header=header, odd=odd).read(below, into)
    except csv.Error as error:
        line, found = rows.line, f"text that is no CSV ({error})"
        odd.append(Problem(file=file, line=line, found=found, expected="values in columns"))
    first_problems(odd, file, problems)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Header:
    place: int
    line: int
    places: dict[str, int]


def _wanted(form: StationFile) -> dict[str, str]:
    """The station's column by our word for it."""
    named = {word: getattr(form, word) for word in ("day", "time", "temperature", "lowest", "highest", "rain")}
    return {word: column for word, column in named.items() if column is not None}


def _plain(name: str) -> str:
    return " ".join(name.replace("\ufeff", "").split()).lower()


def _header(
    top: Sequence[tuple[int, Sequence[str]]], form: StationFile, file: str, odd: list[Problem]
) -> _Header | None:
    """Find the line with most of the columns; every column that it lacks is a problem of its own."""
    lines, rows = [line for line, _ in top], [row for _, row in top]
    wanted = _wanted(form)
    best, best_count, best_cells = 0, 0, [""]
    for place, row in enumerate(rows):
        cells = [_plain(cell) for cell in row]
        count = sum(_plain(column) in cells for column in wanted.values())
        if count > best_count:
            best, best_count, best_cells = place, count, cells
    if best_count == 0:
        odd.append(
            Problem(
                file=file,
                line=1,
                found=f"no line with the columns {', '.join(map(repr, wanted.values()))}",
                expected=f"them near the top, parted by a {_DELIMITERS[form.delimiter]}, as club.yaml says",
                hint=_other_delimiter(rows, form) or _nearest_cell(rows, wanted),
            )
        )
        return None
    for word, column in wanted.items():
        if (times := best_cells.count(_plain(column))) != 1:
            found = f"no column {column!r}" if times == 0 else f"the column {column!r} {times} times"
            shown = [cell.strip() for cell in rows[best] if cell.strip()]
            odd.append(
                Problem(
                    file=file,
                    line=lines[best],
                    field=f"weather.station file.columns.{word}",
                    found=found,
                    expected=f"one of: {', '.join(shown)}" if times == 0 else "it once",
                    hint=nearest(column, shown) if times == 0 else "",
                )
            )
    if odd:
        return None
    return _Header(
        place=best, line=lines[best], places={word: best_cells.index(_plain(column)) for word, column in wanted.items()}
    )


def _other_delimiter(rows: Sequence[Sequence[str]], form: StationFile) -> str:
    for other, name in _DELIMITERS.items():
        for row in rows:
            cells = [_plain(cell) for cell in form.delimiter.join(row).split(other)]
            if other != form.delimiter and _plain(form.day) in cells and len(cells) > 1:
                return f"They stand there parted by a {name}: write 'values are parted by: {name}'."
    return ""


def _nearest_cell(rows: Sequence[Sequence[str]], wanted: dict[str, str]) -> str:
    cells = {cell.strip() for row in rows for cell in row if cell.strip()}
    return next((hint for column in wanted.values() if (hint := nearest(column, sorted(cells)))), "")


class _ExportReader:
    def __init__(self, *, file: str, form: StationFile, zone: ZoneInfo, header: _Header, odd: list[Problem]) -> None:
        self._file, self._form, self._zone, self._header, self._odd = file, form, zone, header, odd
        self._pattern: StampPattern = stamp_pattern(form.written)
        self._missing = {mark.upper() for mark in (*_ALWAYS_MISSING, *form.missing)}
        self._missing_numbers = {value for mark in form.missing if (value := number_from(mark)) is not None}

    def read(self, rows: Iterable[tuple[int, Sequence[str]]], into: DailyWeather) -> None:
        readings = list(self._readings(rows))
        if self._form.readings:
            made = days_of_readings(readings, self._zone, rain=self._form.rain_count)
            days = made.days
            into.incomplete.update(made.incomplete)
            if readings and not days and not self._odd:
                self._say(None, "", "no day with readings throughout", "a reading at least every 3 hours of a day")
        else:
            days = {}
            for reading in readings:
                self._keep_day(reading, days, into)
        for day, of_day in days.items():
            if day in into.tmean_c:
                self._say(None, "day", f"{day} a second time", "each day in one file only")
                continue
            into.tmean_c[day] = of_day.tmean_c
            into.lowest_c[day] = of_day.tmin_c
            if of_day.rain_mm is not None:
                into.rain_mm[day] = of_day.rain_mm

    def _keep_day(self, reading: Reading, days: dict[date, DayOfWeather], into: DailyWeather) -> None:
        day = reading.at.date()
        if reading.lowest_c is not None and reading.highest_c is not None:
            days[day] = DayOfWeather(tmin_c=reading.lowest_c, tmax_c=reading.highest_c, rain_mm=reading.rain_mm)
        elif reading.rain_mm is not None:
            into.rain_mm[day] = reading.rain_mm

    def _readings(self, rows: Iterable[tuple[int, Sequence[str]]]) -> Iterator[Reading]:
        seen: dict[datetime, int] = {}
        enough = max(self._header.places.values())
        below_header = True
        for line, row in rows:
            if len(self._odd) >= MOST_PROBLEMS_SOUGHT:
                return
            if not any(cell.strip() for cell in row):
                continue
            cells = {word: row[place].strip() for word, place in self._header.places.items() if place < len(row)}
            if below_header and not any(sign.isdigit() for sign in cells.get("day", "")):
                continue  # a line of units, as some stations write below the names
            below_header = False
            if len(row) <= enough:
                found = f"{len(row)} values" if len(row) > 1 else "1 value"
                self._say(line, "", found, f"at least {enough + 1}, as in the header on line {self._header.line}")
                continue
            at = self._moment(cells, line, seen)
            if at is not None and (reading := self._reading(cells, at, line)) is not None:
                yield reading

    def _moment(self, cells: dict[str, str], line: int, seen: dict[datetime, int]) -> datetime | None:
        text = f"{cells['day']} {cells['time']}" if "time" in cells else cells["day"]
        stamp = self._pattern.read(text)
        if stamp is None:
            expected = (
                f"a day{' and time' if self._pattern.has_time else ''} that exists, such as {self._pattern.sample!r}"
            )
            self._say(line, self._form.day, repr(text), expected, "See 'day is written' in club.yaml.")
            return None
        if not self._form.readings:
            stamp = stamp.replace(hour=0, minute=0, second=0, tzinfo=self._zone)
        times = seen[stamp] = seen.get(stamp, 0) + 1
        at = self._on_our_clock(stamp, fold=times - 1)
        if times > 1 + (at.utcoffset() != self._on_our_clock(stamp, fold=0).utcoffset()):
            self._say(line, self._form.day, f"{text} a second time", "each once")
            return None
        return at

    def _on_our_clock(self, stamp: datetime, *, fold: int) -> datetime:
        """Make a stamp aware; an hour that the clocks repeat is the summer one first, then the winter one."""
        if stamp.tzinfo is not None:
            return stamp
        match self._form.clock:
            case Clock.UTC:
                return stamp.replace(tzinfo=UTC)
            case Clock.WINTER:
                return (stamp - _winter_offset(stamp, self._zone)).replace(tzinfo=UTC)
            case Clock.LOCAL:
                return stamp.replace(tzinfo=self._zone, fold=min(1, fold))

    def _reading(self, cells: dict[str, str], at: datetime, line: int) -> Reading | None:
        before = len(self._odd)
        temperature = self._temperature(cells, "temperature", line)
        lowest = self._temperature(cells, "lowest", line)
        highest = self._temperature(cells, "highest", line)
        rain = self._number(cells, "rain", line)
        if rain is not None and self._form.inches:
            rain *= LENGTH_MM["in"]
        if rain is not None and not 0 <= rain <= MOST_RAIN_MM:
            self._say(line, self._name("rain"), f"{rain:g} mm", f"0 to {MOST_RAIN_MM:g} mm")
        if lowest is None or highest is None:
            lowest = highest = temperature
        elif lowest > highest:
            found = f"a lowest of {lowest:g} C above the highest of {highest:g} C"
            self._say(line, self._name("lowest"), found, "the lower of the two there")
        if len(self._odd) > before:
            return None
        return Reading(at=at, lowest_c=lowest, highest_c=highest, rain_mm=rain)

    def _temperature(self, cells: dict[str, str], word: str, line: int) -> float | None:
        value = self._number(cells, word, line)
        if value is None:
            return None
        degrees_c = fahrenheit_to_celsius(value) if self._form.fahrenheit else value
        if not COLDEST_C <= degrees_c <= WARMEST_C:
            shown = f"{value:g} F" if self._form.fahrenheit else f"{value:g} C"
            hint = (
                "" if self._form.fahrenheit else "If your station writes Fahrenheit, say 'temperatures in: Fahrenheit'."
            )
            missing = "If it marks a missing value, add it to 'missing'."
            self._say(line, self._name(word), shown, f"{COLDEST_C:g} to {WARMEST_C:g} C", f"{hint} {missing}".strip())
        return degrees_c

    def _number(self, cells: dict[str, str], word: str, line: int) -> float | None:
        cell = cells.get(word, "")
        if cell.upper() in self._missing:
            return None
        value = number_from(cell.replace(",", ".") if self._form.decimal_comma else cell)
        if value is None:
            hint = "If decimals have a comma, say 'decimals: comma'." if "," in cell else ""
            self._say(
                line, self._name(word), repr(cell), "a number", hint or "A mark for a missing value goes to 'missing'."
            )
            return None
        return None if value in self._missing_numbers else value

    def _name(self, word: str) -> str:
        return str(_wanted(self._form)[word])

    def _say(self, line: int | None, field: str, found: str, expected: str, hint: str = "") -> None:
        self._odd.append(Problem(file=self._file, line=line, field=field, found=found, expected=expected, hint=hint))


def _winter_offset(stamp: datetime, zone: ZoneInfo) -> timedelta:
    """The zone's offset without summer time: the smaller one of January and July."""
    offsets = [datetime(stamp.year, month, 1, tzinfo=zone).utcoffset() or timedelta() for month in (1, 7)]
    return min(offsets)
