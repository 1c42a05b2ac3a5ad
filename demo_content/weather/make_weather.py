"""Make the weather of the demo club.

THIS WEATHER IS INVENTED. No station measured it and no service forecast it; it only has the look of a cold,
maritime east coast. Run the script again and it writes the same bytes: the seed is fixed, and the sums use
plain arithmetic and one square root only, which come out alike on every machine.

    python make_weather.py
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from math import sqrt
from pathlib import Path
from random import Random
from typing import Final

_SEED: Final = 20270823
_HERE: Final = Path(__file__).resolve().parent

# Invented climate: mean temperature (C), half the daily range (C) and chance of a wet day, January to December.
_MEAN_C: Final = (4.5, 4.6, 5.9, 7.7, 10.2, 12.9, 15.0, 15.5, 13.5, 10.6, 7.2, 5.0)
_HALF_RANGE_C: Final = (2.4, 2.6, 3.0, 3.4, 3.6, 3.6, 3.6, 3.5, 3.3, 2.9, 2.5, 2.3)
_WET: Final = (0.50, 0.44, 0.42, 0.40, 0.40, 0.41, 0.41, 0.43, 0.42, 0.48, 0.52, 0.51)

_PERSISTENCE: Final = 0.7  # share of a day's departure from the mean that the next day keeps
_SPREAD_C: Final = 2.2  # standard deviation of the departures
_YEAR_SPREAD_C: Final = 0.45  # standard deviation of whole years

_FIRST_YEAR, _LAST_YEAR = 1997, 2026
_OBSERVED: Final = (date(2027, 5, 1), date(2027, 9, 20))
_LAST_TOLD: Final = date(2027, 9, 30)  # forecasts look beyond the days observed

# The season that the demo's log tells of: first day, last day, departure from the mean (C).
_SEASON: Final = (
    (date(2027, 6, 28), date(2027, 7, 12), 1.0),
    (date(2027, 8, 16), date(2027, 9, 4), 1.3),
    (date(2027, 9, 5), date(2027, 9, 5), -1.0),
    (date(2027, 9, 6), date(2027, 9, 13), -4.0),
    (date(2027, 9, 14), date(2027, 9, 30), -0.4),
)
_CALM: Final = 0.4  # share of the usual day-to-day departure in those weeks, so that the story holds

# Rain of the weeks that the log tells of; days not named had none.
_RAIN_TOLD: Final = (date(2027, 8, 16), date(2027, 9, 20))
_RAIN_MM: Final = {
    date(2027, 8, 18): 2.2,
    date(2027, 8, 21): 0.6,
    date(2027, 8, 24): 4.8,
    date(2027, 8, 25): 31.6,
    date(2027, 8, 29): 1.4,
    date(2027, 9, 2): 3.0,
    date(2027, 9, 5): 5.2,
    date(2027, 9, 8): 1.8,
    date(2027, 9, 11): 7.4,
    date(2027, 9, 12): 18.2,
    date(2027, 9, 13): 2.6,
    date(2027, 9, 17): 1.2,
    date(2027, 9, 19): 6.0,
}

_FORECASTS: Final = ((date(2027, 8, 23), 8), (date(2027, 9, 6), 9), (date(2027, 9, 14), 10))


@dataclass(frozen=True, slots=True)
class _Day:
    on: date
    low_c: float
    high_c: float
    rain_mm: float


def _bell(chance: Random) -> float:
    """A near-normal number: twelve even ones added, which is exact on every machine."""
    return sum(chance.random() for _ in range(12)) - 6.0


def _between_months(values: tuple[float, ...], on: date) -> float:
    """Read a monthly value on a day, with straight lines between the middles of the months."""
    place = on.month - 1 + (on.day - 15.5) / 30.5
    before = int(place // 1)
    share = place - before
    return values[before % 12] * (1 - share) + values[(before + 1) % 12] * share


def _days(first: date, last: date) -> Iterator[date]:
    for number in range((last - first).days + 1):
        yield first + timedelta(days=number)


def _rain(chance: Random, on: date, *, wet_before: bool) -> float:
    wet = _between_months(_WET, on) + (0.18 if wet_before else -0.14)
    falls, amount, heavy = chance.random(), chance.random(), chance.random()
    if falls >= wet:
        return 0.0
    return 0.2 + (40.0 if heavy < 0.04 else 18.0) * amount * amount * amount * amount


def _invented(chance: Random, first: date, last: date, season: tuple[tuple[date, date, float], ...]) -> Iterator[_Day]:
    fresh = _SPREAD_C * sqrt(1 - _PERSISTENCE * _PERSISTENCE)
    departure, year, year_offset, rain = 0.0, 0, 0.0, 0.0
    for on in _days(first, last):
        if on.year != year:
            year, year_offset = on.year, _YEAR_SPREAD_C * _bell(chance)
        departure = _PERSISTENCE * departure + fresh * _bell(chance)
        half = _between_months(_HALF_RANGE_C, on) * (1 + 0.25 * _bell(chance))
        rain = _rain(chance, on, wet_before=rain > 0)
        told = [shift for start, end, shift in season if start <= on <= end]
        apart = told[0] + _CALM * departure if told else departure + year_offset
        mean = _between_months(_MEAN_C, on) + apart
        half = max(half, 0.6)
        yield _Day(on, mean - half, mean + half, rain)


def _with_told_rain(day: _Day) -> _Day:
    first, last = _RAIN_TOLD
    if not first <= day.on <= last:
        return day
    return _Day(day.on, day.low_c, day.high_c, _RAIN_MM.get(day.on, 0.0))


def _written(value: float) -> str:
    return f"{value + 0.0:.1f}".replace("-0.0", "0.0")


def _write(path: Path, lines: list[str]) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(("\n".join(lines) + "\n").encode())


def _with_rain(days: list[_Day]) -> list[str]:
    rows = [f"{day.on},{_written(day.low_c)},{_written(day.high_c)},{_written(day.rain_mm)}" for day in days]
    return ["date,tmin_c,tmax_c,rain_mm", *rows]


def _forecast(chance: Random, days: dict[date, _Day], issued: date, length: int) -> list[str]:
    """What a forecast might have said: the days as they came, with an error that grows with the lead."""
    rows, error = ["date,tmin_c,tmax_c"], 0.0
    for lead in range(length):
        day = days[issued + timedelta(days=lead)]
        error = 0.7 * error + (0.3 + 0.12 * lead) * _bell(chance)
        rows.append(f"{day.on},{_written(day.low_c + error)},{_written(day.high_c + error)}")
    return rows


def main() -> None:
    """Write all files beside this script."""
    past = list(_invented(Random(_SEED), date(_FIRST_YEAR, 1, 1), date(_LAST_YEAR, 12, 31), ()))
    _write(_HERE / "history" / f"{_FIRST_YEAR}-{_LAST_YEAR}.csv", _with_rain(past))

    season = [_with_told_rain(day) for day in _invented(Random(_SEED + 1), _OBSERVED[0], _LAST_TOLD, _SEASON)]
    _write(_HERE / "observed.csv", _with_rain([day for day in season if day.on <= _OBSERVED[1]]))

    by_day = {day.on: day for day in season}
    chance = Random(_SEED + 2)
    for issued, length in _FORECASTS:
        _write(_HERE / "forecast" / f"{issued}T0600.csv", _forecast(chance, by_day, issued, length))


if __name__ == "__main__":
    main()
