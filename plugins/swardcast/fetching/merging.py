"""Fetched days -> the text of the club's files. Pure: nothing here knows a disk."""

from __future__ import annotations

import csv
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any, Final

import yaml

from swardcast.fetching.service import Days
from swardcast.quantities import LENGTH_MM
from swardcast.records.readings import DayOfWeather
from swardcast.records.weather import WeatherSource

__all__ = [
    "Merged",
    "days_csv",
    "forecast_csv",
    "history_name",
    "merged_observed",
    "missing_years",
    "sources_yaml",
    "thanked",
]

_HEADER: Final = "date,tmin_c,tmax_c,rain_mm"
_MISSING: Final = ("", "NA", "M", "-")
_ABOUT: Final = (
    "# Written by 'swardcast weather fetch'. The site names these services, because their licences ask for it.\n"
    "# Take an entry out when nothing of it is left in this folder.\n"
)


def _fahrenheit(degrees_c: float) -> float:
    return degrees_c * 9 / 5 + 32


def _cell(name: str, day: DayOfWeather) -> str:
    """A day's value for a column of ours, to the tenth; rain in inches to the hundredth."""
    match name:
        case "rain_mm" | "rain_in" if day.rain_mm is None:
            return ""
        case "rain_mm":
            return f"{day.rain_mm:.1f}"
        case "rain_in":
            return f"{(day.rain_mm or 0) / LENGTH_MM['in']:.2f}"
        case _:
            degrees_c = {"tmin": day.tmin_c, "tmax": day.tmax_c, "tmean": day.tmean_c}[name[:-2]]
            return f"{_fahrenheit(degrees_c) if name.endswith('_f') else degrees_c:.1f}"


def days_csv(days: Days) -> str:
    """Write days as a file with our own columns.

    Args:
        days: the days.

    Returns:
        The file, oldest day first.
    """
    names = _HEADER.split(",")[1:]
    rows = [",".join([day.isoformat(), *(_cell(name, days[day]) for name in names)]) for day in sorted(days)]
    return "\n".join([_HEADER, *rows, ""])


def forecast_csv(days: Days) -> str:
    """Write a forecast in the format that is read.

    Args:
        days: the days.

    Returns:
        The file, first day first.
    """
    rows = [f"{day},{_cell('tmin_c', days[day])},{_cell('tmax_c', days[day])}" for day in sorted(days)]
    return "\n".join(["date,tmin_c,tmax_c", *rows, ""])


@dataclass(frozen=True, slots=True, kw_only=True)
class Merged:
    """A file with days added.

    Args:
        text: the file.
        added: days that were added or filled, in order.
        kept: days that stand there with a part of their temperatures, and were left as they are.
    """

    text: str
    added: tuple[date, ...]
    kept: tuple[date, ...] = ()


def merged_observed(text: str, days: Days) -> Merged:
    """Add days to a file with our own columns; what was measured stays as it is, to the byte.

    Assumes that the file has been read without a problem.

    Args:
        text: the file, or "" when there is none.
        days: fetched days.

    Returns:
        The file with each day that it lacked. A row without any temperature gets them; a row with one of two keeps it.
    """
    if not text.strip():
        return Merged(text=days_csv(days), added=tuple(sorted(days))) if days else Merged(text=text, added=())
    ending = "\r\n" if "\r\n" in text else "\n"
    lines = text.splitlines()
    names = [name.lower().removeprefix("\ufeff") for name in _cells(lines[0])]
    rows = [_Row.of(line, names) for line in lines[1:]]
    added, kept, there = [], [], {row.day for row in rows if row.day is not None}
    for row in rows:
        if row.day in days and row.temperatures == 0:
            row.fill(days[row.day], names)
            added.append(row.day)
        elif row.day in days and row.is_partial(names):
            kept.append(row.day)
    new = [_Row(day=day, cells=[], temperatures=0, line=_line(day, days[day], names)) for day in sorted(days)]
    new = [row for row in new if row.day not in there]
    together = _in_order(rows, new)
    body = ending.join([lines[0], *(row.line for row in together), ""])
    days_added = sorted([*added, *(row.day for row in new if row.day is not None)])
    return Merged(text=body if days_added else text, added=tuple(days_added), kept=tuple(sorted(kept)))


def _cells(line: str) -> list[str]:
    return [cell.strip() for cell in next(csv.reader([line]), [])]


@dataclass(slots=True)
class _Row:
    day: date | None
    cells: list[str]
    temperatures: int
    line: str

    @classmethod
    def of(cls, line: str, names: Sequence[str]) -> _Row:
        cells = _cells(line)
        known = dict(zip(names, cells, strict=False))
        try:
            day = date.fromisoformat(known.get("date", ""))
        except ValueError:
            day = None
        given = sum(name.startswith("t") and cell.upper() not in _MISSING for name, cell in known.items())
        return cls(day=day, cells=cells, temperatures=given, line=line)

    def is_partial(self, names: Sequence[str]) -> bool:
        """Tell whether the row gives no mean: some of its temperatures are missing."""
        given = {name[:-2] for name, cell in zip(names, self.cells, strict=False) if cell.upper() not in _MISSING}
        return not ("tmean" in given or {"tmin", "tmax"} <= given)

    def fill(self, day: DayOfWeather, names: Sequence[str]) -> None:
        """Put temperatures into a row that has none; rain that was measured stays."""
        for place, name in enumerate(names):
            if name != "date" and self.cells[place].upper() in _MISSING:
                self.cells[place] = _cell(name, day)
        self.line = ",".join(self.cells)


def _line(day: date, weather: DayOfWeather, names: Sequence[str]) -> str:
    return ",".join(day.isoformat() if name == "date" else _cell(name, weather) for name in names)


def _in_order(rows: Sequence[_Row], new: Sequence[_Row]) -> list[_Row]:
    """Put new rows between the old ones by day when those are in order, else behind them."""
    days = [row.day for row in rows if row.day is not None]
    if days != sorted(days):
        return [*rows, *new]
    together: list[_Row] = []
    waiting = list(new)
    for row in rows:
        while row.day is not None and waiting and waiting[0].day is not None and waiting[0].day < row.day:
            together.append(waiting.pop(0))
        together.append(row)
    return [*together, *waiting]


def missing_years(history: Iterable[date], today: date, years: int) -> tuple[date, date] | None:
    """Find which of the past whole years are missing.

    Args:
        history: days that are there.
        today: the day.
        years: how many whole years before this one are wanted.

    Returns:
        The first and the last day that are missing, or None when none is.
    """
    first, last = date(today.year - years, 1, 1), date(today.year - 1, 12, 31)
    there = {day for day in history if first <= day <= last}
    if len(there) == (last - first).days + 1 or years == 0:
        return None
    wanted = [first + timedelta(days=place) for place in range((last - first).days + 1)]
    lacking = [day for day in wanted if day not in there]
    return lacking[0], lacking[-1]


def history_name(service: str, days: Days) -> str:
    """Name a file of past days: by its years when they are whole, else by its days.

    Args:
        service: the service's short name.
        days: at least one day.

    Returns:
        A name such as "nasa-power-1997-2026.csv".
    """
    first, last = min(days), max(days)
    whole = (first.month, first.day, last.month, last.day) == (1, 1, 12, 31)
    return f"{service}-{first:%Y}-{last:%Y}.csv" if whole else f"{service}-{first:%Y%m%d}-{last:%Y%m%d}.csv"


def thanked(before: Iterable[WeatherSource], now: Iterable[WeatherSource]) -> tuple[WeatherSource, ...]:
    """Add the services of a run to those that are thanked already.

    Args:
        before: those that are there.
        now: those of the run; one of the same name and use takes the place of the older.

    Returns:
        All of them, by name and use.
    """
    by_use = {(source.name, source.used_for): source for source in (*before, *now)}
    return tuple(by_use[key] for key in sorted(by_use))


def sources_yaml(sources: Iterable[WeatherSource]) -> str:
    """Write the record of what was fetched from whom.

    Args:
        sources: the services.

    Returns:
        The file, or "" when there is none to thank.
    """
    entries = [_entry(source) for source in sources]
    if not entries:
        return ""
    text: str = yaml.safe_dump({"sources": entries}, sort_keys=False, allow_unicode=True, width=110)
    return _ABOUT + text


def _entry(source: WeatherSource) -> Mapping[str, Any]:
    entry = {
        "name": source.name,
        "used for": source.used_for,
        "credit": source.credit,
        "address": source.address,
        "licence": source.licence,
        "licence address": source.licence_address,
    }
    if source.fresh_until is not None:
        entry["fresh until"] = source.fresh_until.isoformat()
    if source.last_modified:
        entry["last modified"] = source.last_modified
    return entry
