"""Jobs of every kind in every state on every sort of surface, made in memory: no folder, no build."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from itertools import count
from typing import Final

from swardcast.language.catalogue import BUILT_IN, built_in
from swardcast.quantities import Sand, SandBasis
from swardcast.records import log
from swardcast.records import operations as work
from swardcast.records.club import Grass, Surface, SurfaceKind
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import NOT_COMPUTED, Kind, Operation
from swardcast.records.plan import FollowUp, Job, Play, Stretch
from tests.conftest import DEMO_AS_OF

__all__ = ["OPERATIONS", "STATES", "Combination", "clubs", "combinations"]

TODAY: Final = DEMO_AS_OF.date()
_ZONE: Final = DEMO_AS_OF.tzinfo


def _tines(kind: Kind, diameter_mm: float, depth_mm: float, passes: int = 1) -> work.Tining:
    return work.Tining(
        kind=kind, diameter_mm=diameter_mm, inside_diameter_mm=None, across_mm=50.0, along_mm=50.0, depth_mm=depth_mm,
        passes=passes,
    )  # fmt: skip


def _product(kind: Kind, product: str) -> work.ProductUse:
    return work.ProductUse(
        kind=kind, product=product, re_entry="stay off until it is dry", signs="at the first tee and on the way in",
        label_read_by="the course manager", label_read_on=date(2027, 9, 1),
    )  # fmt: skip


OPERATIONS: Final[dict[Kind, Operation]] = {
    Kind.HOLLOW_TINING: _tines(Kind.HOLLOW_TINING, 13.0, 60.0, passes=2),
    Kind.SOLID_TINING: _tines(Kind.SOLID_TINING, 8.0, 90.0),
    Kind.NEEDLE_TINING: _tines(Kind.NEEDLE_TINING, 5.0, 60.0),
    Kind.DEEP_TINING: _tines(Kind.DEEP_TINING, 16.0, 220.0),
    Kind.SAND_INJECTION: work.SandInjection(
        kind=Kind.SAND_INJECTION, depth_mm=150.0, sand=Sand(1.0, SandBasis.TONNES_EACH)
    ),
    Kind.SCARIFYING: work.Grooving(kind=Kind.SCARIFYING, blade_mm=2.0, spacing_mm=25.0, depth_mm=3.0, passes=1),
    Kind.VERTICUTTING: work.Grooving(kind=Kind.VERTICUTTING, blade_mm=1.0, spacing_mm=12.0, depth_mm=1.0, passes=2),
    Kind.FRAISE_MOWING: work.Stripping(kind=Kind.FRAISE_MOWING, depth_mm=10.0, share=0.5),
    Kind.TOPDRESSING: work.Dressing(kind=Kind.TOPDRESSING, sand=Sand(2.0, SandBasis.DEPTH_MM)),
    Kind.BRUSHING_IN: work.OtherWork(kind=Kind.BRUSHING_IN),
    Kind.OVERSEEDING: work.Seeding(kind=Kind.OVERSEEDING, seed="browntop bent", rate_g_per_m2=6.0),
    Kind.GRANULAR_FEED: _product(Kind.GRANULAR_FEED, "a granular feed"),
    Kind.LIQUID_FEED: _product(Kind.LIQUID_FEED, "a liquid feed"),
    Kind.WETTING_AGENT: _product(Kind.WETTING_AGENT, "a wetting agent"),
    Kind.PLANT_PROTECTION: _product(Kind.PLANT_PROTECTION, "a product against disease"),
    Kind.ROLLING: work.OtherWork(kind=Kind.ROLLING),
    Kind.CUTTING_HEIGHT: work.HeightOfCut(kind=Kind.CUTTING_HEIGHT, from_mm=3.5, to_mm=5.0),
    Kind.RETURFING: work.OtherWork(kind=Kind.RETURFING),
    Kind.SEEDING_BARE_GROUND: work.Seeding(kind=Kind.SEEDING_BARE_GROUND, seed="ryegrass", rate_g_per_m2=None),
    Kind.BUNKER_SANDING: work.Dressing(kind=Kind.BUNKER_SANDING, sand=Sand(100.0, SandBasis.DEPTH_MM)),
    Kind.BUNKER_LINER: work.OtherWork(kind=Kind.BUNKER_LINER),
    Kind.BUNKER_EDGING: work.OtherWork(kind=Kind.BUNKER_EDGING),
    Kind.BUNKER_DRAINAGE: work.Trenching(kind=Kind.BUNKER_DRAINAGE, length_m=12.0, width_mm=150.0, depth_mm=500.0),
    Kind.DRAINAGE_TRENCHING: work.Trenching(kind=Kind.DRAINAGE_TRENCHING, length_m=180.0),
    Kind.IRRIGATION_WORK: work.Trenching(kind=Kind.IRRIGATION_WORK),
    Kind.TREE_WORK: work.OtherWork(kind=Kind.TREE_WORK),
    Kind.PATH_WORK: work.OtherWork(kind=Kind.PATH_WORK),
    Kind.TEMPORARY_GREENS: work.OtherWork(kind=Kind.TEMPORARY_GREENS),
    Kind.WINTER_PROTECTION: work.OtherWork(kind=Kind.WINTER_PROTECTION),
}
"""One of each kind; a kind without one fails the test that asks for it."""

_BUNKERS: Final = {Kind.BUNKER_SANDING, Kind.BUNKER_LINER, Kind.BUNKER_EDGING, Kind.BUNKER_DRAINAGE}
_TURF: Final = tuple(kind for kind in SurfaceKind if kind is not SurfaceKind.BUNKER)


def _surface(kind: SurfaceKind, hole: int) -> Surface:
    grass = Grass.ANNUAL_MEADOW_GRASS if hole % _HOLES_EACH == 4 else Grass.COOL_SEASON
    return Surface(
        id=f"{kind.value.replace(' ', '-')}-{hole}", kind=kind, hole=hole, name=f"{kind.value} {hole}", area_m2=500.0,
        grass=None if kind is SurfaceKind.BUNKER else grass,
    )  # fmt: skip


class Diary:
    """Entries of one job, in the order in which they are written."""

    def __init__(self, job: str, surfaces: tuple[str, ...]) -> None:
        self.job, self.surfaces = job, surfaces
        self.entries: list[log.Entry] = []
        self._number = count(1)

    def head(self, days_ago: int, hour: int = 8, instead_of: str = "") -> log.EntryHead:
        at = datetime(TODAY.year, TODAY.month, TODAY.day, hour, tzinfo=_ZONE) - timedelta(days=days_ago)
        name = f"{self.job}-{next(self._number)}"
        return log.EntryHead(
            id=name, at=at, true_from=at, by="the course manager", words="", file=f"log/{name}.md", line=2,
            instead_of=instead_of,
        )  # fmt: skip

    def progress(
        self, step: log.Step, days_ago: int, *, hour: int = 8, surfaces: tuple[str, ...] = (), because: str = ""
    ) -> str:
        head = self.head(days_ago, hour)
        self.entries.append(
            log.Progress(
                head=head, step=step, job=self.job, surfaces=surfaces or self.surfaces, because=because, as_done=(),
                play=None,
            )
        )  # fmt: skip
        return head.id

    def moved(self, change: log.Change, starts: date | None, because: str) -> None:
        self.entries.append(
            log.PlanChange(head=self.head(1), job=self.job, change=change, starts=starts, because=because)
        )


State = Callable[[Diary], date]
"""Writes a job's entries and gives the first day that the plan had for it."""


def _in(days: int) -> date:
    return TODAY + timedelta(days=days)


def _planned(_: Diary) -> date:
    return _in(6)


def _planned_far_ahead(_: Diary) -> date:
    return _in(500)


def _overdue(_: Diary) -> date:
    return _in(-8)


def _postponed(diary: Diary) -> date:
    diary.moved(log.Change.POSTPONED, _in(13), "the ground is too wet for the machines")
    return _in(6)


def _put_off(diary: Diary) -> date:
    diary.moved(log.Change.PUT_OFF, None, "the climber is ill")
    return _in(6)


def _brought_forward(diary: Diary) -> date:
    diary.moved(log.Change.BROUGHT_FORWARD, _in(1), "a dry week")
    return _in(6)


def _called_off(diary: Diary) -> date:
    diary.moved(log.Change.CALLED_OFF, None, "the machine is broken")
    return _in(6)


def _under_way(diary: Diary) -> date:
    diary.progress(log.Step.STARTED, 0)
    return _in(0)


def _partly_done(diary: Diary) -> date:
    diary.progress(log.Step.STARTED, 1)
    diary.progress(log.Step.DONE, 1, hour=12, surfaces=diary.surfaces[:1])
    return _in(-1)


def _held_up(diary: Diary) -> date:
    diary.progress(log.Step.STARTED, 1)
    diary.progress(log.Step.HELD_UP, 0, because="heavy rain")
    return _in(-1)


def _healing(diary: Diary) -> date:
    diary.progress(log.Step.DONE, 6, hour=15)
    return _in(-6)


def _seen(diary: Diary) -> date:
    diary.progress(log.Step.DONE, 13, hour=15)
    diary.entries.append(
        log.Observation(
            head=diary.head(4), job=diary.job, surfaces=diary.surfaces, share_left=0.2, turf_cover=0.8,
            green_speed_mm=None, how=log.Eye.COUNTED, readings=(("height of cut", "4 mm"),),
        )
    )  # fmt: skip
    return _in(-13)


def _held_back(diary: Diary) -> date:
    diary.progress(log.Step.DONE, 6, hour=15)
    diary.entries.append(
        log.GrowthHeldBack(
            head=diary.head(3), by=log.HeldBackBy.DULL_WEATHER, surfaces=diary.surfaces, first_day=_in(-3),
            last_day=_in(2),
        )
    )  # fmt: skip
    return _in(-6)


def _corrected(diary: Diary) -> date:
    wrong = diary.progress(log.Step.DONE, 6, hour=12)
    diary.entries.append(log.Correction(head=diary.head(6, hour=15), corrects=wrong))
    diary.progress(log.Step.DONE, 5, hour=15)
    return _in(-6)


def _due_back(diary: Diary) -> date:
    diary.progress(log.Step.DONE, 60, hour=15)
    return _in(-60)


def _back_to_normal(diary: Diary) -> date:
    diary.progress(log.Step.DONE, 20, hour=15)
    diary.entries.append(log.BackToNormal(head=diary.head(2), job=diary.job, surfaces=diary.surfaces))
    return _in(-20)


STATES: Final[dict[str, State]] = {
    "planned": _planned,
    "far-ahead": _planned_far_ahead,
    "overdue": _overdue,
    "postponed": _postponed,
    "put-off": _put_off,
    "brought-forward": _brought_forward,
    "called-off": _called_off,
    "under-way": _under_way,
    "partly-done": _partly_done,
    "held-up": _held_up,
    "healing": _healing,
    "seen": _seen,
    "held-back": _held_back,
    "corrected": _corrected,
    "due-back": _due_back,
    "back-to-normal": _back_to_normal,
}


_HOLES: Final = ((1,), (1, 2, 3), (3, 5), (1, 2, 4, 5))
_HOLES_EACH: Final = 5
_WHILE_WORKING: Final = (Play.CLOSED, Play.OPEN_WITH_CARE, Play.TEMPORARY_GREEN)


@dataclass(frozen=True)
class Combination:
    """One job in one state, in a club that speaks one of the languages."""

    kind: Kind
    state: str
    surface: SurfaceKind
    language: str
    number: int

    @property
    def name(self) -> str:
        parts = (self.kind.value, self.state, self.surface.value, self.language)
        return "-".join(parts).replace(" ", "-").lower()

    def surfaces(self, place: int) -> list[Surface]:
        """Surfaces that no other job has."""
        return [_surface(self.surface, _HOLES_EACH * place + hole) for hole in _HOLES[self.number % len(_HOLES)]]

    def job(self, diary: Diary) -> Job:
        """The job, with its entries written into the diary."""
        starts = STATES[self.state](diary)
        plays = _WHILE_WORKING if self.surface is SurfaceKind.GREEN else _WHILE_WORKING[:2]
        usual = Stretch(from_days=28.0, to_days=56.0, source="our own experience")
        return Job(
            id=diary.job, title=f"{self.kind.value.capitalize()} of our {self.surface.plural}", programme="The programme",
            announced=min(starts, TODAY) - timedelta(days=30), starts=starts, surfaces=diary.surfaces,
            operations=self._operations(), surfaces_a_day=2.0, spare_days=self.number % 3,
            while_working=plays[self.number % len(plays)],
            reopens_after=usual if self.kind is Kind.RETURFING else None,
            follow_up=FollowUp(from_minutes=30.0, to_minutes=90.0) if self.number % 5 == 0 else None,
            normal_after=usual if self.kind in NOT_COMPUTED else None,
            why=(), readings=(), own_words="", file="plan/work.yaml", line=1,
        )  # fmt: skip

    def _operations(self) -> tuple[Operation, ...]:
        """Now and then the work is followed by sand, as it is on most courses."""
        followed = self.surface is not SurfaceKind.BUNKER and self.number % 3 == 0
        more = (OPERATIONS[Kind.TOPDRESSING], OPERATIONS[Kind.BRUSHING_IN]) if followed else ()
        return tuple(dict.fromkeys((OPERATIONS[self.kind], *more)))


def combinations() -> Iterator[Combination]:
    """Every kind in every state; surfaces, their number, languages and what the plan says of play take turns."""
    number = 0
    for kind in Kind:
        for state in STATES:
            surface = SurfaceKind.BUNKER if kind in _BUNKERS else _TURF[number % len(_TURF)]
            yield Combination(kind, state, surface, BUILT_IN[number // 2 % len(BUILT_IN)], number)
            number += 1


def clubs(demo: ClubRecords) -> Iterator[ClubRecords]:
    """All combinations, those of a state and a language in a club with the demo's weather and fixtures."""
    for state in STATES:
        for language in BUILT_IN:
            club = replace(demo.club, language=language, catalogue=built_in(language))
            here = [one for one in combinations() if (one.state, one.language) == (state, language)]
            yield _records(replace(demo, club=club), here)


def _records(club: ClubRecords, together: Sequence[Combination]) -> ClubRecords:
    surfaces: dict[str, Surface] = {}
    jobs: dict[str, Job] = {}
    entries: list[log.Entry] = []
    for place, one in enumerate(together):
        own = {surface.id: surface for surface in one.surfaces(place)}
        diary = Diary(one.name, tuple(own))
        surfaces.update(own)
        jobs[one.name] = one.job(diary)
        entries += diary.entries
    entries.sort(key=lambda entry: entry.head.at)
    return replace(club, surfaces=surfaces, jobs=jobs, entries=tuple(entries))
