"""Seed and products of a period, as far as somebody typed how much: of seed alone there is a sum."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from swardcast.planning.amounts import in_all
from swardcast.planning.stages import Stage, StageOfWork
from swardcast.records.operations import Kind, ProductUse, Seeding
from swardcast.records.plan import Job

__all__ = ["Material", "materials_of"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """Something other than sand that a job takes.

    Args:
        job: the job.
        kind: the kind of work.
        name: the seed or sort of product, as typed.
        rate_g_per_m2: rate of seed, or None.
        rate_words: rate of a product as typed, or "".
        done: surfaces of the period on which it was used.
        to_come: surfaces of the period on which it is to be used.
        used_kg: seed used, or None where its rate or an area is not known; None for products.
        to_come_kg: seed to come, or None.
    """

    job: Job
    kind: Kind
    name: str
    rate_g_per_m2: float | None
    rate_words: str
    done: int
    to_come: int
    used_kg: float | None
    to_come_kg: float | None


def materials_of(stages: Iterable[StageOfWork], first: date, last: date) -> tuple[Material, ...]:
    """Gather seed and products.

    Args:
        stages: each surface of each job at its stages.
        first: the first day of the period.
        last: its last day.

    Returns:
        One for each seed or product of a job and rate of it, in the order of the plan.
    """
    found: dict[tuple[str, Seeding | ProductUse], list[StageOfWork]] = {}
    for stage in stages:
        if stage.stage is Stage.PLANNED or stage.day is None or not first <= stage.day <= last:
            continue
        for operation in stage.operations:
            if isinstance(operation, Seeding | ProductUse):
                found.setdefault((stage.job.id, operation), []).append(stage)
    return tuple(_material(operation, there) for (_, operation), there in found.items())


def _material(operation: Seeding | ProductUse, there: list[StageOfWork]) -> Material:
    done = [stage for stage in there if stage.stage is Stage.DONE]
    to_come = [stage for stage in there if stage.stage is Stage.TO_COME]
    rate = operation.rate_g_per_m2 if isinstance(operation, Seeding) else None
    return Material(
        job=there[0].job,
        kind=operation.kind,
        name=operation.seed if isinstance(operation, Seeding) else operation.product,
        rate_g_per_m2=rate,
        rate_words=operation.rate if isinstance(operation, ProductUse) else "",
        done=len(done),
        to_come=len(to_come),
        used_kg=_kg(rate, done),
        to_come_kg=_kg(rate, to_come),
    )


def _kg(rate_g_per_m2: float | None, there: list[StageOfWork]) -> float | None:
    area_m2 = in_all(stage.surface.area_m2 for stage in there)
    return None if rate_g_per_m2 is None or area_m2 is None else rate_g_per_m2 * area_m2 / 1000
