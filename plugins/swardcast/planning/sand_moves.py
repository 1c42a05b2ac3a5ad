"""How much sand each piece of work takes, as planned, as used and as still to come. Masses are those of dry sand."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from swardcast.planning.amounts import Amounts, SurfaceAmounts, amounts_of, in_all
from swardcast.planning.stages import Stage, StageOfWork
from swardcast.records.club import Surface
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Dressing, Kind, Operation, SandInjection
from swardcast.records.plan import Job
from swardcast.records.translate import SurfaceSums, density_of, surface_sums

__all__ = ["SandMove", "sand_moves"]


@dataclass(frozen=True, slots=True, kw_only=True)
class SandMove:
    """Sand for one operation of a job on one surface, at one stage.

    Args:
        stage: planned, done (so that it is used) or to come.
        job: the job.
        surface: where it goes.
        kind: the kind of work.
        day: the day of the work, or None where nobody knows it.
        dry_t: tonnes of dry sand, or None where its amount, or the area that it needs, is not known.
        depth_mm: the same as a layer, or None.
        told_by: id of the entry that tells the amount, or "" where it is the plan's.
        is_overdue: whether it is to come, and the day on which it should have been done is over.
        is_called_off: whether it is planned and never to come.
    """

    stage: Stage
    job: Job
    surface: Surface
    kind: Kind
    day: date | None
    dry_t: float | None
    depth_mm: float | None
    told_by: str
    is_overdue: bool = False
    is_called_off: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sanded:
    """One operation on one surface, for its amounts."""

    surface: Surface
    operations: tuple[Operation, ...]
    sums: SurfaceSums


def sand_moves(records: ClubRecords, stages: Iterable[StageOfWork]) -> tuple[SandMove, ...]:
    """Work out the sand of plan and log, by the sums that compare choices.

    A mass in all is shared out by area, or evenly where an area is not known.

    Args:
        records: the club's records.
        stages: each surface of each job at its stages.

    Returns:
        One for each operation that needs sand, on each surface and at each stage.
    """
    known: dict[tuple[Operation, tuple[str, ...]], Amounts] = {}
    moves = []
    for stage in stages:
        for operation in stage.operations:
            if not isinstance(operation, Dressing | SandInjection):
                continue
            together = stage.together(operation)
            if (operation, together) not in known:
                known[operation, together] = _amounts(records, operation, together)
            amounts = known[operation, together]
            here = next(one for one in amounts.surfaces if one.id == stage.surface.id)
            moves.append(
                SandMove(
                    stage=stage.stage,
                    job=stage.job,
                    surface=stage.surface,
                    kind=operation.kind,
                    day=stage.day,
                    dry_t=_share(here, amounts),
                    depth_mm=here.spread_mm,
                    told_by=stage.source_of(operation),
                    is_overdue=stage.is_overdue,
                    is_called_off=stage.is_called_off,
                )
            )
    return tuple(moves)


def _amounts(records: ClubRecords, operation: Operation, surfaces: tuple[str, ...]) -> Amounts:
    areas = [records.surfaces[name].area_m2 for name in surfaces]
    return amounts_of(
        [
            _Sanded(
                surface=records.surfaces[name],
                operations=(operation,),
                sums=surface_sums(
                    (operation,),
                    area_m2=records.surfaces[name].area_m2,
                    all_area_m2=in_all(areas),
                    density=density_of(records.club),
                ),
            )
            for name in surfaces
        ]
    )


def _share(here: SurfaceAmounts, amounts: Amounts) -> float | None:
    if here.sand_t is None and amounts.sand_t is not None:
        return amounts.sand_t / len(amounts.surfaces)
    return here.sand_t
