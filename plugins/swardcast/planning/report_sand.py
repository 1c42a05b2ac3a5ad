"""Sand and cost of the jobs of a period, as planned and as done. Masses are those of `swardcast sand`."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime

from swardcast.planning.amounts import in_all
from swardcast.planning.costs import Cost, cost_of_work
from swardcast.planning.materials import Material, materials_of
from swardcast.planning.report_places import Place, in_log, in_plan
from swardcast.planning.sand_moves import SandMove, sand_moves
from swardcast.planning.stages import Stage, StageOfWork, stages_of
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Dressing, Operation, SandInjection
from swardcast.records.plan import Job
from swardcast.records.planning import Planning

__all__ = ["Comes", "SandOfJob", "SandOfPeriod", "sand_in"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Comes:
    """What work comes to.

    Args:
        sand_t: dry sand, tonnes; None where its amount, or an area that it needs, is not known.
        cost: the cost, or None where the club tells no currency, or there is no such work.
    """

    sand_t: float | None
    cost: Cost | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SandOfJob:
    """Sand and cost of a job in a period.

    Args:
        job: the job.
        planned: what the plan has on days of the period.
        done: what the log has as done on days of the period.
        sources: the line of the plan, and the entries that tell how it was done.
    """

    job: Job
    planned: Comes
    done: Comes
    sources: tuple[Place, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SandOfPeriod:
    """Sand, cost and other materials of a period.

    Args:
        jobs: jobs that need sand or of whose cost somebody typed a part, by their days.
        materials: seed and products, in the order of the plan.
    """

    jobs: tuple[SandOfJob, ...]
    materials: tuple[Material, ...]


def sand_in(records: ClubRecords, as_of: datetime, first: date, last: date) -> SandOfPeriod:
    """Work out sand and cost of a period.

    Planned sand counts on the days of the plan as it stands, used sand on those on which the log has the work as done.

    Args:
        records: the club's records.
        as_of: the moment, aware.
        first: the first day of the period.
        last: its last day.

    Returns:
        Sand, cost and materials.
    """
    stages = stages_of(records, as_of)
    within = [one for one in stages if one.stage is not Stage.TO_COME and one.day and first <= one.day <= last]
    by_job: dict[str, list[StageOfWork]] = {}
    for stage in sorted(within, key=lambda one: one.day or last):
        by_job.setdefault(stage.job.id, []).append(stage)
    found = (_of_job(records, of_job) for of_job in by_job.values())
    return SandOfPeriod(
        jobs=tuple(one for one in found if one is not None), materials=materials_of(stages, first, last)
    )


def _of_job(records: ClubRecords, stages: Sequence[StageOfWork]) -> SandOfJob | None:
    """Nothing of work that needs no sand, and of whose cost nobody typed anything."""
    moves = sand_moves(records, stages)
    planned, done = (
        _comes_to(
            [stage for stage in stages if stage.stage is which],
            [move for move in moves if move.stage is which],
            records.planning,
        )
        for which in (Stage.PLANNED, Stage.DONE)
    )
    is_priced = any(side.cost is not None and side.cost.work is not None for side in (planned, done))
    if not moves and not is_priced:
        return None
    told = (in_log(stage.told_by.head) for stage in stages if stage.told_by is not None and stage.stage is Stage.DONE)
    job = stages[0].job
    return SandOfJob(job=job, planned=planned, done=done, sources=tuple(dict.fromkeys((in_plan(job), *told))))


def _comes_to(stages: Sequence[StageOfWork], moves: Sequence[SandMove], planning: Planning) -> Comes:
    sets: dict[tuple[Operation, ...], list[StageOfWork]] = {}
    for stage in stages:
        sets.setdefault(stage.operations, []).append(stage)
    costs = [_cost(operations, alike, moves, planning) for operations, alike in sets.items()]
    return Comes(
        sand_t=in_all(move.dry_t for move in moves), cost=_together([cost for cost in costs if cost is not None])
    )


def _cost(
    operations: tuple[Operation, ...], stages: Sequence[StageOfWork], moves: Sequence[SandMove], planning: Planning
) -> Cost | None:
    """The cost on surfaces on which the same is done: of the masses worked out, so that no other sum is added."""
    names = {stage.surface.id for stage in stages}
    here = [move for move in moves if move.surface.id in names]
    typed = {one.kind for one in operations if isinstance(one, Dressing | SandInjection) and one.sand is not None}
    return cost_of_work(
        operations,
        [stage.surface.kind for stage in stages],
        planning,
        sand_t=in_all(move.dry_t for move in here),
        typed_sand_t=in_all(move.dry_t for move in here if move.kind in typed),
    )


def _together(costs: Sequence[Cost]) -> Cost | None:
    """The cost of all sets of surfaces on which the same was done."""
    if not costs:
        return None
    priced = [one.work for one in costs if one.work is not None]
    return Cost(
        sand=in_all(one.sand for one in costs),
        work=sum(priced) if priced else None,
        without=tuple(dict.fromkeys(kind for one in costs for kind in one.without)),
        sand_without=tuple(dict.fromkeys(kind for one in costs for kind in one.sand_without)),
    )
