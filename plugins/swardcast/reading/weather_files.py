"""weather/*.csv -> daily mean temperatures and rain; forecasts by their time of issue."""

from __future__ import annotations

import csv
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import date, datetime
from io import StringIO
from typing import Final

from swardcast.errors import Problem, nearest
from swardcast.moments import FIRST_YEAR, LAST_YEAR, day_from
from swardcast.quantities import LENGTH_MM, fahrenheit_to_celsius
from swardcast.reading.plain_words import shown
from swardcast.records.weather import COLDEST_C, MOST_RAIN_MM, WARMEST_C

__all__ = [
    "MOST_PROBLEMS_SOUGHT",
    "DailyWeather",
    "NumberedRows",
    "daily_weather_from",
    "first_problems",
    "has_own_columns",
    "issued_at_from",
    "number_from",
]

_MOST_PROBLEMS_A_FILE: Final = 10
MOST_PROBLEMS_SOUGHT: Final = 1000
"""A file with as many is no weather: the rest of it is not read. Judgement."""
_MOST_COLUMNS: Final = 50
"""More are none that somebody named: judgement."""
_NEEDED: Final = "a column date, and tmin_c with tmax_c, or tmean_c"
_ISSUE: Final = re.compile(r"^([0-9]{4}-[0-9]{2}-[0-9]{2})(?:T([0-9]{2})([0-9]{2}))?$")
_MISSING: Final = ("NA", "M", "-")
_NUMBER: Final = re.compile(r"^[+-]?(?:[0-9]{1,9}(?:\.[0-9]{0,30})?|\.[0-9]{1,30})$")


def _rain_in(inches: float) -> float:
    return inches * LENGTH_MM["in"]


def _as_it_is(value: float) -> float:
    return value


_OF_AIR: Final = (COLDEST_C, WARMEST_C, "C")
_OF_RAIN: Final = (0.0, MOST_RAIN_MM, "mm")
_COLUMNS: Final[dict[str, tuple[str, Callable[[float], float], tuple[float, float, str]]]] = {
    "tmin_c": ("tmin", _as_it_is, _OF_AIR),
    "tmax_c": ("tmax", _as_it_is, _OF_AIR),
    "tmean_c": ("tmean", _as_it_is, _OF_AIR),
    "tmin_f": ("tmin", fahrenheit_to_celsius, _OF_AIR),
    "tmax_f": ("tmax", fahrenheit_to_celsius, _OF_AIR),
    "tmean_f": ("tmean", fahrenheit_to_celsius, _OF_AIR),
    "rain_mm": ("rain", _as_it_is, _OF_RAIN),
    "rain_in": ("rain", _rain_in, _OF_RAIN),
}
"""What a column holds, as what it is kept, and between which values."""


@dataclass(slots=True)
class DailyWeather:
    """Daily values of one or more files, and the days whose readings do not last throughout."""

    tmean_c: dict[date, float] = field(default_factory=dict)
    lowest_c: dict[date, float] = field(default_factory=dict)
    rain_mm: dict[date, float] = field(default_factory=dict)
    incomplete: set[date] = field(default_factory=set)


def issued_at_from(stem: str, zone: Callable[[datetime], datetime]) -> datetime | None:
    """Read the time of issue from a forecast file's name, such as "2027-09-01T0600" or "2027-09-01".

    Args:
        stem: the name without its ending; without a time, 6 in the morning is meant.
        zone: makes a local time aware.

    Returns:
        The moment, or None when the name is no day.
    """
    match = _ISSUE.fullmatch(stem)
    if match is None:
        return None
    try:
        issued = datetime.fromisoformat(f"{match[1]}T{match[2] or '06'}:{match[3] or '00'}")
    except ValueError:
        return None
    return zone(issued) if day_from(match[1]) is not None else None


def daily_weather_from(text: str, *, file: str, into: DailyWeather, problems: list[Problem]) -> None:
    """Read one CSV of daily weather.

    Args:
        text: the file; its first line names the columns, with the unit in the name.
        file: its path for problems.
        into: where the days are added.
        problems: where problems are added, at most ten for each file.
    """
    odd: list[Problem] = []
    rows = NumberedRows(text)
    try:
        columns = _columns(next(iter(rows), (1, []))[1], file, odd)
        if columns:
            for line, row in rows:
                if any(map(str.strip, row)):
                    _read_row(row, columns, line=line, file=file, into=into, odd=odd)
                if len(odd) >= MOST_PROBLEMS_SOUGHT:
                    break
    except csv.Error as error:
        odd.append(
            Problem(
                file=file,
                line=rows.line,
                found=f"text that is no CSV ({error})",
                expected="values with commas between them",
            )
        )
    first_problems(odd, file, problems)


def has_own_columns(text: str) -> bool:
    """Tell whether a file has our own columns, so that it is no station's export.

    Args:
        text: the file.

    Returns:
        True when its first line names only columns of ours, a date among them.
    """
    names = [name.strip().lower() for name in text.removeprefix("\ufeff").partition("\n")[0].split(",")]
    return "date" in names and len(names) > 1 and all(name in ("date", *_COLUMNS) for name in names)


def first_problems(odd: list[Problem], file: str, problems: list[Problem]) -> None:
    """Keep the first ten problems of a file and count the rest.

    Args:
        odd: all of them.
        file: the file.
        problems: where they are added.
    """
    problems.extend(odd[:_MOST_PROBLEMS_A_FILE])
    if len(odd) > _MOST_PROBLEMS_A_FILE:
        at_least = "at least " if len(odd) >= MOST_PROBLEMS_SOUGHT else ""
        problems.append(
            Problem(
                file=file,
                found=f"{at_least}{len(odd) - _MOST_PROBLEMS_A_FILE} more such lines",
                expected="lines like the good ones",
            )
        )


class NumberedRows:
    """Rows of a text file, each with the line on which it begins; one with an open quotation mark takes several.

    Args:
        text: the file.
        delimiter: what parts its values.
    """

    def __init__(self, text: str, delimiter: str = ",") -> None:
        self._reader = csv.reader(StringIO(text, newline=""), delimiter=delimiter)
        self.line = 1

    def __iter__(self) -> Iterator[tuple[int, list[str]]]:
        for row in self._reader:
            line, self.line = self.line, self._reader.line_num + 1  # that of the next row, which may be no CSV
            yield line, row


def _columns(header: list[str], file: str, odd: list[Problem]) -> list[str]:
    names = [name.strip().lower().removeprefix("\ufeff") for name in header]
    known = ["date", *_COLUMNS]
    if len(names) == 1 and ";" in names[0]:
        odd.append(
            Problem(
                file=file,
                line=1,
                found="columns parted by semicolons",
                expected="columns parted by commas, decimals with a point",
            )
        )
        return []
    if not any(names):
        odd.append(Problem(file=file, line=1, found="no columns", expected=_NEEDED))
        return []
    if len(names) > _MOST_COLUMNS:
        odd.append(Problem(file=file, line=1, found=f"{len(names):,} columns", expected=_NEEDED))
        return []
    for place, name in enumerate(names):
        if name in names[:place]:
            odd.append(
                Problem(file=file, line=1, found=f"the column {name!r} a second time", expected="each column once")
            )
        if name not in known:
            odd.append(
                Problem(
                    file=file,
                    line=1,
                    found=f"the unknown column {name!r}",
                    expected=f"columns of: {', '.join(known)}",
                    hint=nearest(name, known),
                )
            )
    quantities = {_COLUMNS[name][0] for name in names if name in _COLUMNS}
    if "date" not in names or not ({"tmean"} <= quantities or {"tmin", "tmax"} <= quantities):
        odd.append(
            Problem(
                file=file,
                line=1,
                found=", ".join(names) or "no columns",
                expected=_NEEDED,
            )
        )
    return [] if odd else names


def number_from(cell: str) -> float | None:
    """Read a number as a weather file has it.

    Args:
        cell: figures with a point; neither "nan" nor "1e3", which programs alone take for numbers.

    Returns:
        The number, or None when it is none.
    """
    return float(cell) if _NUMBER.fullmatch(cell) else None


def _read_row(
    row: list[str], columns: list[str], *, line: int, file: str, into: DailyWeather, odd: list[Problem]
) -> None:
    if len(row) != len(columns):
        odd.append(
            Problem(file=file, line=line, found=f"{len(row)} values", expected=f"{len(columns)}, one for each column")
        )
        return
    cells = dict(zip(columns, map(str.strip, row), strict=True))
    before = len(odd)
    day = day_from(cells.pop("date"))
    if day is None:
        found = repr(row[columns.index("date")])
        expected = f"a day that exists, from {FIRST_YEAR} to {LAST_YEAR}, such as '2027-08-23'"
        odd.append(Problem(file=file, line=line, field="date", found=found, expected=expected))
    values: dict[str, float] = {}
    for name, cell in cells.items():
        quantity, convert, _ = _COLUMNS[name]
        value = number_from(cell)
        if value is not None:
            values[quantity] = convert(value)
        elif cell and cell.upper() not in _MISSING:
            odd.append(_no_number(cell, name, line=line, file=file))
    odd += [
        Problem(file=file, line=line, field=name, found=found, expected=expected)
        for name, found, expected in _oddities(values, cells, day, into)
    ]
    if day is None or len(odd) > before:
        return
    if "tmin" in values and "tmax" in values:
        into.tmean_c[day] = (values["tmin"] + values["tmax"]) / 2
        into.lowest_c[day] = values["tmin"]
    elif "tmean" in values:
        into.tmean_c[day] = values["tmean"]
    if "rain" in values:
        into.rain_mm[day] = values["rain"]


def _no_number(cell: str, name: str, *, line: int, file: str) -> Problem:
    hint = "Write a decimal with a point: '4.5', not '4,5'." if "," in cell else ""
    expected = "a number, or nothing for a missing value"
    return Problem(file=file, line=line, field=name, found=shown(cell), expected=expected, hint=hint)


def _oddities(
    values: dict[str, float], cells: dict[str, str], day: date | None, into: DailyWeather
) -> Iterator[tuple[str, str, str]]:
    """What cannot be in a row whose values are numbers: its column, what was found and what was expected."""
    if day is not None and (day in into.tmean_c or day in into.rain_mm):
        yield "date", f"{day} a second time", "each day once"
    beyond = False
    for name, cell in cells.items():
        quantity, _, (low, high, unit) = _COLUMNS[name]
        value = values.get(quantity, low)
        if not low <= value <= high:
            beyond = True
            converted = f", which is {value:g} {unit}" if name.endswith(("_f", "_in")) else ""
            yield name, f"{shown(cell)}{converted}", f"{low:g} to {high:g} {unit}"
    if not beyond and values.get("tmin", COLDEST_C) > values.get("tmax", WARMEST_C):
        found = f"a minimum of {values['tmin']:g} C above the maximum of {values['tmax']:g} C"
        yield next(name for name in cells if _COLUMNS[name][0] == "tmin"), found, "the lower of the two first"
