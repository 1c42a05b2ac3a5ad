"""The log, gathered: each job's facts on each surface."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, timedelta

from swardcast.records.club import Surface
from swardcast.records.log import (
    BackToNormal,
    Change,
    Observation,
    PlanChange,
    Progress,
    Step,
)
from swardcast.records.operations import Operation
from swardcast.records.plan import Job
from swardcast.records.standing import StandingEntries
from swardcast.records.translate import masses_as_rates

__all__ = ["JobFacts", "SurfaceFacts", "as_really_done", "job_facts", "really_done_by_area"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SurfaceFacts:
    """What the log says of one job on one surface.

    Args:
        started: the entry that started the work, or None.
        held: the entry that holds it up now, or None.
        done: the entry that finished it, or None.
        told_by: the entry that tells how the work was really done, where that differs from the plan, or None.
        observations: what was seen since, oldest first.
        normal: the entry that calls it back to normal, or None.
    """

    started: Progress | None = None
    held: Progress | None = None
    done: Progress | None = None
    told_by: Progress | None = None
    observations: tuple[Observation, ...] = ()
    normal: BackToNormal | None = None

    @property
    def as_done(self) -> tuple[Operation, ...]:
        """Operations as really done, where they differ from the plan."""
        return self.told_by.as_done if self.told_by is not None else ()


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class JobFacts:
    """What plan and log say of a job.

    Args:
        job: the job as planned.
        starts: its first day as it stands now.
        changes: changes of plan, oldest first.
        called_off: the change that called it off, or None.
        put_off: the change that postponed it to no day that is known, or None.
        surfaces: facts by surface.
        progress: the entries of work started, held up, taken up again and done, oldest first.
    """

    job: Job
    starts: date
    changes: tuple[PlanChange, ...] = ()
    called_off: PlanChange | None = None
    put_off: PlanChange | None = None
    surfaces: dict[str, SurfaceFacts] = field(default_factory=dict)
    progress: tuple[Progress, ...] = ()

    @property
    def is_begun(self) -> bool:
        """Whether an entry says of any surface that the work there was started or done."""
        return any(there.started or there.done for there in self.surfaces.values())

    def is_done_before(self, today: date) -> bool:
        """Tell whether the work was done everywhere days before, so that no time that passes changes its dates.

        Args:
            today: the day, local.

        Returns:
            Whether it is so.
        """
        until = today - timedelta(days=2)  # wherever the day of an entry begins
        done = [there.done for there in self.surfaces.values()]
        return all(entry is not None and entry.head.true_from.date() <= until for entry in done)

    def is_overdue(self, today: date) -> bool:
        """Tell whether its planned day is over and no entry says that it began.

        Args:
            today: the day, local.

        Returns:
            Whether it is so; no of work that is called off or postponed to no day.
        """
        waits = self.called_off is None and self.put_off is None
        return waits and self.starts < today and not self.is_begun


def as_really_done(planned: tuple[Operation, ...], really: tuple[Operation, ...]) -> tuple[Operation, ...]:
    """Put the operations as really done in the place of those planned.

    Args:
        planned: the operations of the plan, in order.
        really: operations as the log tells them; each stands for the next planned one of its kind, or is added.

    Returns:
        The operations as done.
    """
    told = list(really)
    done = []
    for operation in planned:
        stands = next((one for one in told if one.kind is operation.kind), None)
        if stands is not None:
            told.remove(stands)
        done.append(stands or operation)
    return (*done, *told)


def really_done_by_area(job: Job, here: SurfaceFacts, surfaces: Mapping[str, Surface]) -> tuple[Operation, ...]:
    """Put the operations as really done in the place of those planned, masses of sand in all as rates.

    A mass that an entry tells was spread on the surfaces of that entry; one that the plan has is for all of the job's.

    Args:
        job: the job as planned.
        here: what the log says of it on one surface.
        surfaces: the club's surfaces by id.

    Returns:
        The operations as done there, for sums; a mass stays one where an area is not known.
    """

    def rated(operations: tuple[Operation, ...], names: Sequence[str]) -> tuple[Operation, ...]:
        return masses_as_rates(operations, [surfaces[name].area_m2 for name in names])

    really = rated(here.told_by.as_done, here.told_by.surfaces) if here.told_by is not None else ()
    return as_really_done(rated(job.operations, job.surfaces), really)


def job_facts(job: Job, entries: StandingEntries) -> JobFacts:
    """Gather what happened to a job.

    Args:
        job: the job.
        entries: entries that stand, those of other jobs among them.

    Returns:
        Its facts; an entry about a finished surface that says "started" begins the work anew.
    """
    facts = JobFacts(
        job=job,
        starts=job.starts,
        surfaces=dict.fromkeys(job.surfaces, SurfaceFacts()),
    )
    lasts = job.lasts
    for entry in entries.of_job(job.id):
        match entry:
            case PlanChange():
                facts = _replanned(facts, entry)
            case Progress() | Observation() | BackToNormal():
                facts.surfaces.update(_after_all(facts.surfaces, entry, lasts=lasts))
                if isinstance(entry, Progress):
                    facts = replace(facts, progress=(*facts.progress, entry))
                if isinstance(entry, Progress) and entry.step is not Step.HELD_UP:
                    facts = replace(facts, called_off=None, put_off=None)  # it has been taken up again
            case _:
                pass
    return facts


def _replanned(facts: JobFacts, entry: PlanChange) -> JobFacts:
    """A job called off ends what was begun and not finished; what was done stays done.

    One postponed to no day is held up no more: nobody waits for the weather on a day that is not known.
    """
    changed = replace(
        facts, starts=entry.starts or facts.starts, changes=(*facts.changes, entry), called_off=None, put_off=None
    )
    if entry.change is Change.PUT_OFF:
        waiting = {
            name: there if there.started else replace(there, held=None) for name, there in facts.surfaces.items()
        }
        return replace(changed, put_off=entry, surfaces=waiting)
    if entry.change is not Change.CALLED_OFF:
        return changed
    return replace(
        changed,
        called_off=entry,
        surfaces={name: there if there.done else SurfaceFacts() for name, there in facts.surfaces.items()},
        progress=tuple(step for step in facts.progress if step.step is Step.DONE),
    )


def _after_all(
    before: Mapping[str, SurfaceFacts], entry: Progress | Observation | BackToNormal, *, lasts: bool
) -> Iterator[tuple[str, SurfaceFacts]]:
    """What an entry makes of its surfaces; those that stood alike, as most do, are worked out once."""
    known: dict[int, SurfaceFacts] = {}
    for name in entry.surfaces:
        facts = before[name]
        if id(facts) not in known:
            known[id(facts)] = _after(facts, entry, lasts=lasts)
        yield name, known[id(facts)]


def _after(facts: SurfaceFacts, entry: Progress | Observation | BackToNormal, *, lasts: bool) -> SurfaceFacts:
    match entry:
        case Observation():
            return replace(facts, observations=(*facts.observations, entry))
        case BackToNormal():
            ends = facts.done is not None or (lasts and facts.started is not None)
            return replace(facts, normal=entry) if ends else facts
        case Progress(step=Step.STARTED):
            return SurfaceFacts(started=entry, told_by=entry if entry.as_done else None)
        case Progress(step=Step.RESUMED):
            return replace(facts, started=facts.started or entry, held=None)
        case Progress(step=Step.HELD_UP):
            return facts if facts.done else replace(facts, held=entry)
        case _:
            return replace(
                facts,
                started=facts.started or entry,
                held=None,
                done=entry,
                told_by=entry if entry.as_done else facts.told_by,
                observations=(),
                normal=facts.normal if lasts else None,  # said to be done after its end, it does not begin again
            )
