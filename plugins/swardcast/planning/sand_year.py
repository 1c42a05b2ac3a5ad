"""A year's sand, or that of another period: by month, by kind of surface, by job. Masses are those of dry sand."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import TypeVar

from swardcast.planning.amounts import in_all
from swardcast.planning.materials import Material, materials_of
from swardcast.planning.sand_balance import SandBalance, sand_balance
from swardcast.planning.sand_moves import SandMove, sand_moves
from swardcast.planning.stages import Stage, stages_of
from swardcast.records.club import SurfaceKind
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Job
from swardcast.records.sand_store import SandStore
from swardcast.records.translate import density_of
from swardcast.turf.sand import depth_mm_from_kg_per_m2

__all__ = ["Masses", "OnKind", "SandYear", "masses_of", "sand_year"]

Key = TypeVar("Key", bound=Hashable)

_A_YEAR_DAYS = (365, 366)
_HOLES_OF_A_COURSE = 18  # by print: "120 t for 18 holes"


@dataclass(frozen=True, slots=True, kw_only=True)
class Masses:
    """Tonnes of dry sand, of one month, job or the like; what is not known counts nothing.

    Args:
        planned_t: what the plan has.
        used_t: what was used.
        to_come_t: what is still to come.
    """

    planned_t: float = 0.0
    used_t: float = 0.0
    to_come_t: float = 0.0

    @property
    def in_all_t(self) -> float:
        """What is used by the end: used and to come."""
        return self.used_t + self.to_come_t

    @property
    def against_plan_t(self) -> float:
        """By how much that is more than planned; below 0 for less."""
        return self.in_all_t - self.planned_t


@dataclass(frozen=True, slots=True, kw_only=True)
class OnKind:
    """A period's sand on one kind of surface.

    Args:
        kind: which one.
        area_m2: area of all the club's surfaces of the kind, or None where one is not known.
        holes: how many holes have such surfaces.
        masses: the sand.
        kg_per_m2: mean over that area of what is used and to come, dry, or None.
        depth_mm: the same as a layer, or None.
    """

    kind: SurfaceKind
    area_m2: float | None
    holes: int
    masses: Masses
    kg_per_m2: float | None
    depth_mm: float | None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SandYear:
    """The sand of a period.

    Args:
        as_of: the moment, local.
        first: the first day of the period.
        last: its last day.
        density_t_per_m3: bulk density of the dry sand.
        moves: each piece of work with a day in the period.
        without_day: what is planned and to come on no day that anybody knows.
        kinds: each kind of surface on which sand is planned, used or to come, greens first.
        greens: the same of greens, whether or not there is any sand.
        store: what the club tells of its store.
        balance: the store over the period, or None where nobody counted it.
        materials: seed and products of the period.
    """

    as_of: datetime
    first: date
    last: date
    density_t_per_m3: float
    moves: tuple[SandMove, ...]
    without_day: tuple[SandMove, ...]
    kinds: tuple[OnKind, ...]
    greens: OnKind
    store: SandStore
    balance: SandBalance | None
    materials: tuple[Material, ...]

    @property
    def is_a_year(self) -> bool:
        """Whether the period is as long as a year."""
        return (self.last - self.first).days + 1 in _A_YEAR_DAYS

    @property
    def course_m2(self) -> float | None:
        """Area of the greens where they are those of 18 holes, on which a mass for a course in print can be set."""
        return self.greens.area_m2 if self.greens.holes == _HOLES_OF_A_COURSE else None

    @property
    def in_all(self) -> Masses:
        """The sand of the whole period."""
        return masses_of(self.moves)

    def by_month(self) -> dict[date, Masses]:
        """The sand of each month that has some, by its first day, in order."""
        found = _grouped(self.moves, lambda move: (move.day or self.first).replace(day=1))
        return {month: found[month] for month in sorted(found)}

    def by_job(self) -> dict[str, Masses]:
        """The sand of each job by its id, that with the earliest day first."""
        return dict(_grouped(self.by_day, lambda move: move.job.id))

    @property
    def by_day(self) -> tuple[SandMove, ...]:
        """The pieces of work in the order of their days, those of one day in that of the plan."""
        return tuple(sorted(self.moves, key=lambda move: move.day or self.last))

    @property
    def called_off(self) -> tuple[SandMove, ...]:
        """What is planned on surfaces where it was neither done nor is to come, since the job is called off."""
        return tuple(move for move in self.moves if move.is_called_off)

    def job(self, name: str) -> Job:
        """A job of these moves."""
        return next(move.job for move in self.moves if move.job.id == name)


def masses_of(moves: Iterable[SandMove]) -> Masses:
    """Add sand up, each stage for itself.

    Args:
        moves: the pieces of work.

    Returns:
        Their masses; what is not known counts nothing.
    """
    found = dict.fromkeys(Stage, 0.0)
    for move in moves:
        found[move.stage] += move.dry_t or 0.0
    return Masses(planned_t=found[Stage.PLANNED], used_t=found[Stage.DONE], to_come_t=found[Stage.TO_COME])


def _grouped(moves: Iterable[SandMove], key: Callable[[SandMove], Key]) -> Mapping[Key, Masses]:
    groups: dict[Key, list[SandMove]] = {}
    for move in moves:
        groups.setdefault(key(move), []).append(move)
    return {name: masses_of(group) for name, group in groups.items()}


def sand_year(records: ClubRecords, as_of: datetime, first: date, last: date) -> SandYear:
    """Work out the sand of a period.

    Planned sand counts on the days of the plan as it stands, used sand on the day on which the log has the work as
    done, sand to come on the likely day.

    Args:
        records: the club's records.
        as_of: the moment, aware.
        first: the first day of the period.
        last: its last day, not earlier.

    Returns:
        The sand.
    """
    local = as_of.astimezone(records.club.time_zone)
    stages = stages_of(records, as_of)
    every = sand_moves(records, stages)
    moves = tuple(move for move in every if move.day is not None and first <= move.day <= last)
    store = records.planning.sand_store
    return SandYear(
        as_of=local,
        first=first,
        last=last,
        density_t_per_m3=density_of(records.club),
        moves=moves,
        without_day=tuple(move for move in every if move.day is None and move.stage is Stage.TO_COME),
        kinds=tuple(
            _on_kind(records, kind, moves) for kind in SurfaceKind if any(one.surface.kind is kind for one in moves)
        ),
        greens=_on_kind(records, SurfaceKind.GREEN, moves),
        store=store,
        balance=sand_balance(store, every, today=local.date(), first=first, last=last),
        materials=materials_of(stages, first, last),
    )


def _on_kind(records: ClubRecords, kind: SurfaceKind, moves: Iterable[SandMove]) -> OnKind:
    masses = masses_of(move for move in moves if move.surface.kind is kind)
    surfaces = [surface for surface in records.surfaces.values() if surface.kind is kind]
    area_m2 = in_all(surface.area_m2 for surface in surfaces)
    rate = masses.in_all_t * 1000 / area_m2 if area_m2 else None
    return OnKind(
        kind=kind,
        area_m2=area_m2,
        holes=len({surface.hole for surface in surfaces if surface.hole is not None}),
        masses=masses,
        kg_per_m2=rate,
        depth_mm=None if rate is None else depth_mm_from_kg_per_m2(rate, density_of(records.club)),
    )
