"""The demo's dates once more, by plain loops from the club's raw files: no array, no code of the package's science."""

from __future__ import annotations

import csv
import math
from datetime import date, datetime, timedelta
from pathlib import Path
from statistics import NormalDist, fmean, pstdev
from zoneinfo import ZoneInfo

import pytest

from swardcast.outlook.course import assess_course
from swardcast.outlook.states import Milestone
from swardcast.outlook.weather_book import WeatherBook
from swardcast.reading.folder import read_club_folder

DEMO = Path(__file__).parents[1] / "demo_content"
AS_OF = datetime(2027, 9, 14, 9, 30, tzinfo=ZoneInfo("Europe/London"))
TODAY = AS_OF.date()
RATE, SPREAD, WIDE_SPREAD = 0.34, 0.24, 0.40  # the formula sheet's fit; the wide one where nothing was fitted


def _daily_means(path: Path) -> dict[date, float]:
    with path.open(encoding="utf-8") as lines:
        return {
            date.fromisoformat(row["date"]): (float(row["tmin_c"]) + float(row["tmax_c"])) / 2
            for row in csv.DictReader(lines)
        }


def _place(day: date) -> int:
    return date(2000, day.month, day.day).timetuple().tm_yday - 1


class _SlowWeather:
    """Climate, fading and members by loops over dictionaries."""

    def __init__(self) -> None:
        self.history = _daily_means(DEMO / "weather" / "history" / "1997-2026.csv")
        self.observed = {d: t for d, t in _daily_means(DEMO / "weather" / "observed.csv").items() if d < TODAY}
        self.forecast = _daily_means(DEMO / "weather" / "forecast" / "2027-09-14T0600.csv")
        self.usual = self._climate()
        self.fading = self._fading()

    def _climate(self) -> list[float]:
        by_place: list[list[float]] = [[] for _ in range(366)]
        for day, value in self.history.items():
            by_place[_place(day)].append(value)
        usual = []
        for place in range(366):
            near = [value for step in range(-15, 16) for value in by_place[(place + step) % 366]]
            usual.append(fmean(near))
        return usual

    def anomaly(self, day: date, source: dict[date, float]) -> float:
        return source[day] - self.usual[_place(day)]

    def recent(self, day: date, source: dict[date, float]) -> float | None:
        known = [self.anomaly(d, source) for step in range(1, 6) if (d := day - timedelta(days=step)) in source]
        return fmean(known) if len(known) >= 3 else None

    def _fading(self) -> list[float]:
        anomalies = {day: self.anomaly(day, self.history) for day in self.history}
        recents = {day: self.recent(day, self.history) for day in self.history}
        fading = []
        for lead in range(14):
            top = bottom = 0.0
            for day, before in recents.items():
                after = anomalies.get(day + timedelta(days=lead))
                if before is not None and after is not None:
                    top += before * after
                    bottom += before * before
            fading.append(min(1.0, max(0.0, top / bottom)))
        return fading

    def members(self, days: int) -> list[list[float]]:
        now = self.recent(TODAY, self.observed)
        assert now is not None
        own: list[list[float]] = []
        for year in range(1997, 2027):
            begin = TODAY.replace(year=year)
            run = [begin + timedelta(days=step) for step in range(days)]
            if sum(day in self.history for day in run[:100]) < 90:
                continue
            shift = now - (self.recent(begin, self.history) or 0.0)
            anomalies = [self.anomaly(day, self.history) if day in self.history else 0.0 for day in run]
            own.append([a + (shift * self.fading[n] if n < 14 else 0.0) for n, a in enumerate(anomalies)])
        members = [[self.usual[_place(TODAY + timedelta(days=n))] + a for n, a in enumerate(m)] for m in own]
        for lead in range(days):
            told = self.forecast.get(TODAY + timedelta(days=lead))
            if told is None:
                continue
            there = [m[lead] for m in own]
            scale = min(1.0, (1.0 + 0.25 * lead) / pstdev(there))
            for number, member in enumerate(members):
                member[lead] = told + scale * (there[number] - fmean(there))
        return members


def _growth(temperature: float, optimum: float) -> float:
    return math.exp(-(((temperature - optimum) / 7.0) ** 2) / 2)


def _day_zero(*, area_m2: float, sand_t: float) -> float:
    """Grooves 2 mm at 25 mm and 3 mm deep, holes 13 mm (10 mm inside) at 50 mm and 60 mm deep; sand of 1.56 t/m3."""
    grooves, holes, bore = 2 / 25, math.pi * 13**2 / (4 * 50 * 50), math.pi * 10**2 / (4 * 50 * 50)
    surplus = sand_t * 1000 / area_m2 / 1.56 - grooves * 3 - bore * 60
    return 1 - math.exp(-surplus / 2.85) * (1 - grooves) * (1 - holes)


def _corrected(rate: float, spread: float, seen: list[tuple[float, float, float]]) -> tuple[float, float]:
    """Bayes' rule by a plain sum over candidate rates, twice as fine as the package's grid."""
    for share, growth, eye in seen:
        steps = [n * 0.025 for n in range(-320, 321)]
        weights = []
        for step in steps:
            foretold = math.exp(-rate * math.exp(step * spread) * growth)
            weights.append(math.exp(-(step**2) / 2 - ((share - foretold) / eye) ** 2 / 2))
        mean = sum(w * x for w, x in zip(weights, steps, strict=True)) / sum(weights)
        variance = sum(w * (x - mean) ** 2 for w, x in zip(weights, steps, strict=True)) / sum(weights)
        rate *= math.exp(mean * spread)
        spread *= min(1.0, math.sqrt(variance))
    return rate, spread


def _quantile(values: list[float], share: float) -> float:
    return sorted(values)[math.ceil(share * len(values) - 1e-9) - 1]


def _slow_dates(
    weather: _SlowWeather,
    *,
    start: date,
    day_zero: float,
    optimum: float,
    spread: float,
    seen: list[tuple[date, float, float]],
) -> dict[Milestone, tuple[date, date, date]]:
    past = [weather.observed[start + timedelta(days=n)] for n in range((TODAY - start).days)]
    gained = [sum(_growth(t, optimum) for t in past[: (day - start).days]) for day, _, _ in seen]
    rate, posterior = _corrected(RATE, spread, [(s, g, e) for (_, s, e), g in zip(seen, gained, strict=True)])
    values: dict[Milestone, list[float]] = {
        Milestone.SETTLED: [],
        Milestone.HOLES_CLOSED: [],
        Milestone.BACK_TO_NORMAL: [],
    }
    for member in weather.members(180):
        days = [*past, *member]
        for point in range(25):
            z = NormalDist().inv_cdf((point + 0.5) / 25)
            for milestone, threshold in ((Milestone.SETTLED, 0.05), (Milestone.HOLES_CLOSED, 0.02)):
                need, total, reached = math.log(day_zero / threshold) / rate * math.exp(z * posterior), 0.0, math.inf
                for number, temperature in enumerate(days):
                    growth = _growth(temperature, optimum)
                    if total + growth >= need:
                        reached = number + (need - total) / growth
                        break
                    total += growth
                values[milestone].append(reached)
            values[Milestone.BACK_TO_NORMAL].append(values[Milestone.HOLES_CLOSED][-1] + 13 * math.exp(z * spread))

    def day(days: float) -> date:
        return start + timedelta(days=math.ceil(days - 1e-9))

    return {
        milestone: (day(_quantile(v, 0.1)), day(_quantile(v, 0.5)), day(_quantile(v, 0.9)))
        for milestone, v in values.items()
    }


CASES = {
    # start, sand (t), optimum of the grass (C), spread, seen: day, share left, error of the eye (0.10) or count (0.03)
    "green-9": (date(2027, 8, 24), 2.6, 20.0, SPREAD, [(date(2027, 9, 1), 0.12, 0.10), (date(2027, 9, 3), 0.07, 0.03)]),
    "green-13": (
        date(2027, 8, 26),
        3.2,
        20.0,
        SPREAD,
        [(date(2027, 9, 6), 0.08, 0.10), (date(2027, 9, 13), 0.04, 0.03)],
    ),
    "green-16": (date(2027, 8, 27), 2.6, 18.0, WIDE_SPREAD, []),
}


@pytest.mark.parametrize("name", CASES)
def test_the_dates_of_a_demo_green_come_out_the_same_by_plain_loops(name: str) -> None:
    """An independent count must give the very same days; areas and work are read off the demo's own files."""
    records = read_club_folder(DEMO)
    start, sand_t, optimum, spread, seen = CASES[name]
    area = records.surfaces[name].area_m2
    assert area is not None
    expected = _slow_dates(
        _SlowWeather(),
        start=start,
        day_zero=_day_zero(area_m2=area, sand_t=sand_t),
        optimum=optimum,
        spread=spread,
        seen=seen,
    )
    outlook = assess_course(records, AS_OF, WeatherBook(records.club, records.weather))
    current = outlook.surfaces[name].current
    assert current is not None
    assert current.job.id == "greens-renovation-2027"
    for milestone, dates in expected.items():
        given = current.dates[milestone]
        assert (given.early, given.likely, given.allow_until) == dates, milestone
