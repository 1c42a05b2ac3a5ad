"""Choices asked of the small club, whose days are all at 20 C; sizes are said as a plan says them."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.compare import Compared, Comparison, When, compare
from swardcast.quantities import Sand, SandBasis
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Dressing, Grooving, Kind, Operation, Tining
from swardcast.records.planning import Choice, Planning, YearlyGoal
from tests.outlook.small_club import SmallClub, moment

__all__ = [
    "GREENS",
    "WHEN",
    "blades",
    "choice",
    "compared",
    "comparison_of",
    "fixture",
    "sand",
    "small_records",
    "tines",
]

GREENS = ("green-1", "green-2")
WHEN = When(surfaces=GREENS, starts=date(2027, 6, 14), surfaces_a_day=9)


def tines(
    diameter_mm: float,
    across_mm: float,
    along_mm: float,
    depth_mm: float,
    *,
    kind: Kind = Kind.HOLLOW_TINING,
    inside_mm: float | None = None,
    passes: int = 1,
) -> Tining:
    return Tining(
        kind=kind,
        diameter_mm=diameter_mm,
        inside_diameter_mm=inside_mm,
        across_mm=across_mm,
        along_mm=along_mm,
        depth_mm=depth_mm,
        passes=passes,
    )


def blades(blade_mm: float, spacing_mm: float, depth_mm: float) -> Grooving:
    return Grooving(kind=Kind.SCARIFYING, blade_mm=blade_mm, spacing_mm=spacing_mm, depth_mm=depth_mm, passes=1)


def sand(amount: float, basis: SandBasis = SandBasis.DEPTH_MM) -> Dressing:
    return Dressing(kind=Kind.TOPDRESSING, sand=Sand(amount, basis))


def choice(*operations: Operation, name: str = "a choice", cost_per_surface: float | None = None) -> Choice:
    return Choice(name=name, operations=operations, cost_per_surface=cost_per_surface)


def fixture(day: date, name: str = "Medal") -> Fixture:
    return Fixture(id=f"{name}-{day}", series=name, name=name, first_day=day, last_day=day)


def small_records(
    folder: Path, *, planning: Planning | None = None, fixtures: tuple[Fixture, ...] = (), density: float | None = None
) -> ClubRecords:
    records = SmallClub(folder).records()
    return replace(
        records,
        planning=planning or Planning(goal=YearlyGoal()),
        fixtures=fixtures,
        club=replace(records.club, sand_density_t_per_m3=density),
    )


def comparison_of(records: ClubRecords, *choices: Choice, when: When = WHEN, at: str = "06-07") -> Comparison:
    return compare(records, moment(at), WeatherBook(records.club, records.weather), when, choices)


def compared(records: ClubRecords, *operations: Operation) -> Compared:
    (row,) = comparison_of(records, choice(*operations)).rows
    return row
