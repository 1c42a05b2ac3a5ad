"""What a club keeps to itself when it plans: choices of work, prices, aims for a year. None of it is ever published."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Final

from swardcast.errors import Problem
from swardcast.quantities import Sand
from swardcast.records.blocked import DaysWithoutWork
from swardcast.records.club import Surface, SurfaceKind
from swardcast.records.gaps import KindGap
from swardcast.records.importance import Importance
from swardcast.records.operations import Kind, Operation
from swardcast.records.plan import Stretch
from swardcast.records.sand_store import SandStore
from swardcast.records.targets import Target

__all__ = ["USUAL_LAYER_MM", "Choice", "Planning", "YearlyGoal"]

USUAL_LAYER_MM: Final = 20.0
"""Depth down to which organic matter counts as sampled where the club tells none, mm: the first slice, 0 to 2 cm, of
tests by 2 cm slices (Woods 2021, "Organic matter reduction by hollow-tines, solid-tines, and sand topdressing")."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One way of doing a job.

    Args:
        name: what the club calls it, or "" for the names of its operations.
        operations: what is done, in order.
        source: whose practice it is, or "".
        fits: kinds of surface for which it is meant; none for any.
        surfaces_a_day: pace of the work, above 0, or None for that of the job compared with.
        cost_per_surface: cost of the work on one surface, sand left out, in the club's currency, or None.
        normal_after: time to back to normal where nothing is computed, or None.
        file: where it is written.
        line: the line in that file.
    """

    name: str
    operations: tuple[Operation, ...]
    source: str = ""
    fits: frozenset[SurfaceKind] = frozenset()
    surfaces_a_day: float | None = None
    cost_per_surface: float | None = None
    normal_after: Stretch | None = None
    file: str = ""
    line: int = 0

    def is_for(self, surfaces: Iterable[Surface]) -> bool:
        """Whether it is meant for all of these surfaces."""
        return not self.fits or all(surface.kind in self.fits for surface in surfaces)


@dataclass(frozen=True, slots=True, kw_only=True)
class YearlyGoal:
    """What the club wants to reach in a year, over each surface.

    Args:
        fits: kinds of surface for which it is meant; none for any.
        disturbed_fraction: share of the surface opened by tines and blades, passes added, or None.
        removed_fraction: share of the surface taken out, passes added, or None.
        sand: sand spread, as a depth or a rate, or None.
    """

    fits: frozenset[SurfaceKind] = frozenset()
    disturbed_fraction: float | None = None
    removed_fraction: float | None = None
    sand: Sand | None = None

    def of(self, surfaces: Iterable[Surface]) -> YearlyGoal:
        """The aim for these surfaces: none where it is meant for others."""
        is_meant = not self.fits or all(surface.kind in self.fits for surface in surfaces)
        return self if is_meant else YearlyGoal()


@dataclass(frozen=True, slots=True, kw_only=True)
class Planning:
    """What the club tells of its plans and purse.

    Args:
        currency: code of ISO 4217, or "" where no price is told.
        sand_price_per_t: price of a tonne of sand as weighed, or None.
        work_costs: cost of each kind of work on one surface of a kind, each time it is gone over.
        goal: what is to be reached in a year.
        organic_layer_mm: depth down to which organic matter is sampled, above 0.
        is_layer_told: whether the club told that depth; else it is the usual one.
        choices: the club's own choices of work.
        faults: what is wrong with files that only planning needs; the site is made without them.
        sand_store: the sand in the yard, as far as it is told.
        importance: how much undisturbed play matters on which days.
        days_without_work: when no work is done.
        gaps: how long turf is left alone between two kinds of work.
        targets: the club's own targets for readings, by its readings' order.
    """

    currency: str = ""
    sand_price_per_t: float | None = None
    work_costs: Mapping[SurfaceKind, Mapping[Kind, float]] = field(default_factory=dict)
    goal: YearlyGoal = field(default_factory=YearlyGoal)
    organic_layer_mm: float = USUAL_LAYER_MM
    is_layer_told: bool = False
    choices: tuple[Choice, ...] = ()
    faults: tuple[Problem, ...] = ()
    sand_store: SandStore = field(default_factory=SandStore)
    importance: Importance = field(default_factory=Importance)
    days_without_work: DaysWithoutWork = field(default_factory=DaysWithoutWork)
    gaps: tuple[KindGap, ...] = ()
    targets: tuple[Target, ...] = ()
