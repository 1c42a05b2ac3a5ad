"""The demo's dates once more, by plain loops from the club's own files: no array, no code of the package's science.

The package only reads plan and log; sums, healing, looks, lessons, members and dates are recounted here. What the
numerical rule is worth is tested elsewhere (tests/turf/test_pace.py); here the grid of the logarithm is the same.
"""

from __future__ import annotations

import csv
import math
from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from functools import cache
from itertools import accumulate, pairwise
from pathlib import Path
from statistics import NormalDist
from zoneinfo import ZoneInfo

import pytest

from swardcast.outlook.course import assess_course
from swardcast.outlook.states import CourseOutlook, Milestone
from swardcast.outlook.weather_book import WeatherBook
from swardcast.quantities import Sand, SandBasis
from swardcast.reading.folder import read_club_folder
from swardcast.records.club import Grass, SurfaceKind
from swardcast.records.folder import ClubRecords
from swardcast.records.log import BackToNormal, Correction, Entry, Eye, GrowthHeldBack, Observation, Progress, Step
from swardcast.records.operations import Dressing, Grooving, Kind, Operation, Tining
from tests.slow_weather import SlowWeather

DEMO = Path(__file__).parents[1] / "demo_content"
AS_OF = datetime(2027, 9, 14, 9, 30, tzinfo=ZoneInfo("Europe/London"))
TODAY = AS_OF.date()
JOB = "greens-renovation-2027"
SPREAD = {Grass.COOL_SEASON: 0.24, Grass.ANNUAL_MEADOW_GRASS: 0.40}  # the wider one where nothing was fitted
BEST_C = {Grass.COOL_SEASON: 20.0, Grass.ANNUAL_MEADOW_GRASS: 18.0}
ERRORS = [NormalDist().inv_cdf((point + 0.5) / 15) for point in range(15)]
GRID = [place * 0.05 for place in range(-160, 161)]  # of the logarithm, in spreads; slowest first
HORIZON = 200


@dataclass(frozen=True)
class Work:
    """What one job does to a surface: sand's share of the leaf, and lasting share and width of each opening."""

    sand: float
    openings: tuple[tuple[float, float], ...]
    rim: float

    def left(self, growth: float) -> float:
        holes = max((share * math.exp(-2.70 * growth / wide) for share, wide in self.openings), default=0.0)
        return 1 - (1 - self.sand * math.exp(-0.40 * growth)) * (1 - 0.10 * holes)

    def needed(self, threshold: float) -> float:
        """By halving an interval."""
        if self.left(0.0) <= threshold + 1e-9:
            return 0.0
        low, high = 0.0, 128.0
        while high - low > 1e-10:
            middle = (low + high) / 2
            low, high = (middle, high) if self.left(middle) > threshold else (low, middle)
        return high

    @property
    def lag(self) -> float:
        """Days from holes closed to back to normal at the fitted pace; none where only sand was spread."""
        return 13.0 if 0.10 * max((share for share, _ in self.openings), default=0.0) > 0.02 + 1e-9 else 0.0


@cache
def _records() -> ClubRecords:
    return read_club_folder(DEMO)


@cache
def _outlook() -> CourseOutlook:
    records = _records()
    return assess_course(records, AS_OF, WeatherBook(records.club, records.weather))


def _daily_means(name: str) -> dict[date, float]:
    with (DEMO / "weather" / name).open(encoding="utf-8") as lines:
        return {
            date.fromisoformat(row["date"]): (float(row["tmin_c"]) + float(row["tmax_c"])) / 2
            for row in csv.DictReader(lines)
        }


OBSERVED = {day: value for day, value in _daily_means("observed.csv").items() if day < TODAY}


@cache
def _members() -> list[list[float]]:
    weather = SlowWeather(
        _daily_means("history/1997-2026.csv"), OBSERVED, _daily_means("forecast/2027-09-14T0600.csv"), TODAY
    )
    return weather.members(HORIZON)


def _growth(tmean_c: float, grass: Grass) -> float:
    return math.exp(-(((tmean_c - BEST_C[grass]) / 7.0) ** 2) / 2)


def _gained(start: date, end: date, grass: Grass) -> float:
    return sum(_growth(OBSERVED[start + timedelta(days=n)], grass) for n in range((end - start).days))


def _sand_mm(sand: Sand, area_m2: float) -> float:
    match sand.basis:
        case SandBasis.DEPTH_MM:
            return sand.amount
        case SandBasis.KG_PER_M2:
            return sand.amount / 1.56
        case SandBasis.TONNES_EACH:
            return sand.amount * 1000 / area_m2 / 1.56
        case SandBasis.TONNES_IN_ALL:
            raise AssertionError


def _work(operations: Sequence[Operation], area_m2: float) -> Work:
    spread = room = rim = 0.0
    openings = []
    for operation in operations:
        match operation:
            case Tining():
                hollow = operation.kind is Kind.HOLLOW_TINING
                bore = operation.inside_diameter_mm or operation.diameter_mm
                pattern = operation.passes / (operation.across_mm * operation.along_mm)
                room += math.pi * bore**2 / 4 * pattern * operation.depth_mm
                openings.append((1.0 if hollow else 0.5, operation.diameter_mm))
                rim = max(rim, openings[-1][0] * operation.diameter_mm / 2 / 0.9)
            case Grooving():
                room += operation.passes * operation.blade_mm / operation.spacing_mm * operation.depth_mm
                openings.append((min(1.0, operation.depth_mm / 10), 6 * operation.blade_mm))
                rim = max(rim, openings[-1][0] * operation.blade_mm / 2 / 0.9)
            case Dressing():
                spread += _sand_mm(operation.sand, area_m2)
            case _:
                pass
    return Work(1 - math.exp(-max(0.0, spread - room) / 2.85), tuple(openings), rim)


# The log, by its own small ledger.


@cache
def _entries() -> list[Entry]:
    known = [entry for entry in _records().entries if entry.head.at <= AS_OF]
    withdrawn = {entry.corrects for entry in known if isinstance(entry, Correction)}
    standing = [entry for entry in known if entry.head.id not in withdrawn]
    assert not any(isinstance(entry, GrowthHeldBack) for entry in standing)  # none in the demo
    return sorted(standing, key=lambda entry: entry.head.true_from)


def _done(job: str, surface: str) -> tuple[date, Work]:
    """The day on which a surface was finished, and what was done there."""
    found: tuple[date, Work] | None = None
    area = _records().surfaces[surface].area_m2 or math.nan
    for entry in _entries():
        if isinstance(entry, Progress) and entry.job == job and surface in entry.surfaces and entry.step is Step.DONE:
            really = {operation.kind: operation for operation in entry.as_done}
            operations = [really.get(one.kind, one) for one in _records().jobs[job].operations]
            found = entry.head.true_from.date(), _work(operations, area)
    assert found is not None
    return found


def _observed(surface: str, start: date) -> Iterator[Observation]:
    for entry in _entries():
        about = isinstance(entry, Observation) and entry.job == JOB and surface in entry.surfaces
        if isinstance(entry, Observation) and about and entry.head.true_from.date() >= start:
            yield entry


# What healed jobs taught.


def _normal_on(surface: str, job: str, log_pace: float) -> float:
    """The ordinal of the day on which a surface is back to normal at a pace, in the weather that came."""
    grass = _records().surfaces[surface].grass
    assert grass is not None
    start, work = _done(job, surface)
    need, gained, day = max(work.needed(0.02) / math.exp(log_pace), work.rim), 0.0, 0
    while True:
        today = _growth(OBSERVED[start + timedelta(days=day)], grass)
        if gained + today >= need:
            return start.toordinal() + day + (need - gained) / today + work.lag / math.exp(log_pace)
        gained, day = gained + today, day + 1


def _lesson(entry: BackToNormal) -> tuple[SurfaceKind, Grass | None, float]:
    """The entry waits for the slowest of its surfaces: the pace at which the last like that one is normal that day."""
    surfaces = _records().surfaces
    slowest = surfaces[max(entry.surfaces, key=lambda name: _normal_on(name, entry.job, 0.0))]
    same = [
        name for name in entry.surfaces if (surfaces[name].kind, surfaces[name].grass) == (slowest.kind, slowest.grass)
    ]
    slow, fast = -1.2, 1.2
    while fast - slow > 1e-10:
        middle = (slow + fast) / 2
        too_late = max(_normal_on(name, entry.job, middle) for name in same) > entry.head.true_from.date().toordinal()
        slow, fast = (middle, fast) if too_late else (slow, middle)
    return slowest.kind, slowest.grass, (slow + fast) / 2


@cache
def _lessons(grass: Grass) -> list[float]:
    """What the greens of a grass that had healed before 23 August taught; in the demo each job by one entry."""
    normal = [entry for entry in _entries() if isinstance(entry, BackToNormal)]
    assert len({entry.job for entry in normal}) == len(normal)
    told = [_lesson(entry) for entry in normal if entry.head.true_from.date() < date(2027, 8, 23)]
    return [log for kind, of, log in told if (kind, of) == (SurfaceKind.GREEN, grass)]


@cache
def _prior(grass: Grass) -> tuple[float, float]:
    """Middle and spread of the logarithm of the pace, from what healed jobs taught."""
    logs = _lessons(grass)
    spread = SPREAD[grass]
    half = spread**2 / 2
    weight = 1 / (half + 0.15**2)
    precision = 1 / half + len(logs) * weight
    kept = [min(2 * spread, max(-2 * spread, log)) for log in logs]
    return weight * sum(kept) / precision, math.sqrt(1 / precision + half)


# What was seen.


def _looks(
    surface: str, start: date, work: Work, grass: Grass, lag: float
) -> Iterator[tuple[float, float, list[float]]]:
    """Of each look the share, its error and what each pace of the grid foretells."""
    middle, spread = _prior(grass)
    paces = [math.exp(middle + place * spread) for place in GRID]
    for entry in _observed(surface, start):
        days = (entry.head.true_from.date() - start).days
        growth = _gained(start, entry.head.true_from.date(), grass)
        if entry.share_left is not None:
            error = 0.03 if entry.how is Eye.COUNTED else 0.10
            yield entry.share_left, error, [work.left(growth * pace) / work.left(0) for pace in paces]
        assert entry.turf_cover is None  # none in the demo
        if entry.green_speed_mm is not None and days > 0:
            target_mm = (9 * 12 + 4) * 25.4  # 9 ft 4 in: standards in club.yaml
            missing = (target_mm - entry.green_speed_mm) / (0.20 * target_mm)
            need = work.needed(0.02) + lag * growth / days
            yield min(1.0, max(0.0, missing)), 0.25, [max(0.0, 1 - growth * pace / need) for pace in paces]


def _paces(looks: Sequence[tuple[float, float, list[float]]], grass: Grass) -> list[float]:
    """15 equally likely logarithms of the pace, fastest first."""
    middle, spread = _prior(grass)
    weights = [math.exp(-(place**2) / 2) for place in GRID]
    for share, error, foretold in looks:
        below = list(accumulate(weights))
        slow = foretold[max((n for n, w in enumerate(below) if w <= 0.05 * below[-1]), default=0)]
        fast = foretold[max((n for n, w in enumerate(below) if w <= 0.95 * below[-1]), default=0)]
        seen = min(max(share, fast - 2 * error), slow + 2 * error)
        weights = [w * math.exp(-(((seen - left) / error) ** 2) / 2) for w, left in zip(weights, foretold, strict=True)]
    if not looks:
        return [middle - spread * error for error in ERRORS]
    below = [0.0, *accumulate(weights)]
    edges = [GRID[0] - 0.025 + 0.05 * number for number in range(len(below))]
    found = []
    for point in reversed(range(15)):
        asked = below[-1] * (point + 0.5) / 15
        for (low, high), (left, right) in zip(pairwise(below), pairwise(edges), strict=True):
            if high >= asked:
                found.append(middle + spread * (left + (right - left) * (asked - low) / (high - low)))
                break
    return found


# The dates.


@cache
def _growth_of_members(grass: Grass) -> list[list[float]]:
    return [[_growth(value, grass) for value in member] for member in _members()]


def _reached(sums: Sequence[float], need: float) -> float:
    """Days until the growth suffices; `sums` begins with 0."""
    if need <= 0:
        return 0.0
    day = bisect_left(sums, need)
    if day == len(sums):
        return math.inf
    return day - 1 + (need - sums[day - 1]) / (sums[day] - sums[day - 1])


def _dates(surface: str) -> dict[Milestone, tuple[date, ...]]:
    grass = _records().surfaces[surface].grass
    assert grass is not None
    start, work = _done(JOB, surface)
    middle, spread = _prior(grass)
    lag = work.lag * math.exp(-middle)
    logs = _paces(list(_looks(surface, start, work, grass, lag)), grass)
    settle, close = work.needed(0.05), work.needed(0.02)
    past = [_growth(OBSERVED[start + timedelta(days=n)], grass) for n in range((TODAY - start).days)]
    values: dict[Milestone, list[float]] = {milestone: [] for milestone in list(Milestone)[1:]}
    for member in _growth_of_members(grass):
        sums = [0.0, *accumulate([*past, *member][:HORIZON])]
        for log, error in zip(logs, ERRORS, strict=True):
            pace = math.exp(log)
            closed = _reached(sums, max(close / pace, work.rim * math.exp(error * 0.24)))
            values[Milestone.SETTLED].append(_reached(sums, settle / pace))
            values[Milestone.HOLES_CLOSED].append(closed)
            values[Milestone.BACK_TO_NORMAL].append(closed + lag * math.exp(error * spread))
    return {
        milestone: tuple(_date(start, days, share) for share in (0.1, 0.5, 0.9)) for milestone, days in values.items()
    }


def _date(start: date, days: list[float], share: float) -> date:
    return start + timedelta(days=math.ceil(sorted(days)[math.ceil(share * len(days) - 1e-9) - 1] - 1e-9))


@pytest.mark.parametrize("surface", [f"green-{hole}" for hole in range(1, 19)])
def test_the_dates_of_every_demo_green_come_out_the_same_by_plain_loops(surface: str) -> None:
    """An independent count must give the very same days."""
    (work,) = (work for work in _outlook().jobs[JOB].surfaces if work.surface.id == surface)
    given = {milestone: work.dates[milestone] for milestone in list(Milestone)[1:]}
    found = {milestone: (one.early, one.likely, one.allow_until) for milestone, one in given.items()}
    assert found == _dates(surface)


def test_the_demo_shows_what_the_recount_is_to_test() -> None:
    """Both grasses, looks by eye, counts and speeds, greens without any look; lessons for one grass, none for the other.

    The entries waited for the bent greens, so that nothing is known of the meadow-grass.
    """
    looks = {
        surface: list(_observed(surface, _done(JOB, surface)[0])) for surface in (f"green-{n}" for n in range(1, 19))
    }
    told = [one for seen in looks.values() for one in seen]
    assert {one.how for one in told if one.share_left is not None} == {Eye.BY_EYE, Eye.COUNTED}
    assert any(one.green_speed_mm for one in told)
    assert any(not seen for seen in looks.values())
    assert {_records().surfaces[name].grass for name in looks} == set(SPREAD)
    lessons = {
        work.surface.grass: len(work.recovery.lessons) for work in _outlook().jobs[JOB].surfaces if work.recovery
    }
    assert lessons == {Grass.COOL_SEASON: 3, Grass.ANNUAL_MEADOW_GRASS: 0}
    assert {grass: len(_lessons(grass)) for grass in SPREAD} == lessons
