"""How work would go that nobody has planned: each of several jobs, as if it alone were added to the plan.

The sums are those of the notices, from the same assessor; only what is asked of the weather is asked in one go.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime

from swardcast.outlook.believed import Believed
from swardcast.outlook.bookkeeping import Ledger
from swardcast.outlook.job_state import Turn
from swardcast.outlook.jobs import JobAssessor, job_outlook
from swardcast.outlook.known import Known
from swardcast.outlook.ledger import JobFacts, job_facts
from swardcast.outlook.memory import course_known
from swardcast.outlook.recovery import work_out
from swardcast.outlook.states import JobOutlook
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import label_counts
from swardcast.records.plan import Job
from swardcast.records.standing import StandingEntries, standing_entries

__all__ = ["as_the_manager_knows", "assess_each_alone", "facts_as_known"]

Order = tuple[date, bool, int]
_Earlier = Mapping[str, tuple[Sequence[Order], Sequence[Believed | None]]]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Asked:
    """A job that is asked about, laid out over its surfaces."""

    facts: JobFacts
    turns: tuple[Turn, ...]


def as_the_manager_knows(records: ClubRecords, as_of: datetime) -> ClubRecords:
    """Give the records as known at a moment, with jobs that members have not heard of yet.

    Args:
        records: the club's records.
        as_of: the moment, aware.

    Returns:
        The log as it stood then, and all of the plan that is not withdrawn.
    """
    known = records.known_at(as_of)
    return replace(known, jobs={name: job for name, job in records.jobs.items() if not job.is_withdrawn(as_of)})


def facts_as_known(records: ClubRecords, as_of: datetime) -> dict[str, JobFacts]:
    """Gather what plan and log say of each job, as the manager knows it at a moment.

    Args:
        records: the club's records.
        as_of: the moment, aware.

    Returns:
        Facts by job, in the plan's order.
    """
    known = as_the_manager_knows(records, as_of)
    entries = standing_entries(known.entries)
    return {name: job_facts(job, entries) for name, job in known.jobs.items()}


def assess_each_alone(
    records: ClubRecords, as_of: datetime, book: WeatherBook, jobs: Sequence[Job], *, instead_of: str = ""
) -> tuple[JobOutlook, ...]:
    """Assess jobs that are not in the plan, each as if it alone were added to it.

    Assumes that nothing of them was entered, and that what is planned before them is done as planned.

    Args:
        records: the club's records.
        as_of: the moment, aware; no job starts before its day.
        book: the club's weather.
        jobs: the jobs asked about.
        instead_of: id of the planned job in whose place they stand, or "".

    Returns:
        How each would stand, in the same order, with the dates that its notice would tell.
    """
    told = as_the_manager_knows(records, as_of)
    wanted = {name for job in jobs for name in job.surfaces}
    ledger = Ledger(told.club, told.surfaces)
    known = Known.of(told, ledger)
    assessor = JobAssessor(
        known=known,
        as_of=as_of.astimezone(told.club.time_zone),
        view=book.at(as_of),
        course=course_known(told, as_of, book),
        ledger=ledger,
    )
    planned = [
        turn
        for place, facts in enumerate(known.facts)
        if facts.job.id != instead_of and wanted & set(facts.job.surfaces)
        for turn in assessor.turns(place, facts)
        if turn.name in wanted
    ]
    earlier = _healing_after_each(assessor, planned)
    place = next((n for n, facts in enumerate(known.facts) if facts.job.id == instead_of), len(known.facts))
    asked = _laid_out(assessor, jobs, place)
    _work_out_together(assessor, asked, earlier)
    return tuple(_outlook(assessor, one, earlier) for one in asked)


def _laid_out(assessor: JobAssessor, jobs: Sequence[Job], place: int) -> list[_Asked]:
    """Jobs that differ in nothing but what is done have the same days of work, which are worked out once."""
    known: dict[Hashable, tuple[Turn, ...]] = {}
    asked = []
    for job in jobs:
        facts = job_facts(job, StandingEntries())
        alike = (job.starts, job.surfaces, job.surfaces_a_day, job.spare_days, job.while_working, job.reopens_after)
        key = (*alike, job.follow_up, job.lasts, label_counts(job.operations))
        if key not in known:
            known[key] = tuple(assessor.turns(place, facts))
        asked.append(_Asked(facts=facts, turns=tuple(replace(turn, facts=facts) for turn in known[key])))
    return asked


def _healing_after_each(assessor: JobAssessor, planned: Sequence[Turn]) -> _Earlier:
    """How each surface heals after each piece of planned work there, in the order of the work."""
    found: dict[str, tuple[list[Order], list[Believed | None]]] = {}
    for turn in sorted(planned, key=lambda turn: turn.order):
        assessor.seen(turn)
        orders, healing = found.setdefault(turn.name, ([], []))
        orders.append(turn.order)
        healing.append(assessor.healing.get(turn.name))
    return found


def _stand_before(assessor: JobAssessor, turn: Turn, earlier: _Earlier) -> None:
    """Let the assessor know of the turn's surface what it knew before the turn."""
    orders, healing = earlier.get(turn.name, ((), ()))
    count = bisect_left(orders, turn.order)
    recovery = healing[count - 1] if count else None
    if recovery is None:
        assessor.healing.pop(turn.name, None)
    else:
        assessor.healing[turn.name] = recovery


def _work_out_together(assessor: JobAssessor, asked: Sequence[_Asked], earlier: _Earlier) -> None:
    if assessor.view is None:
        return
    questions = []
    for one in asked:
        for turn in one.turns:
            _stand_before(assessor, turn, earlier)
            seen = assessor.seen(turn)
            if seen is not None:
                questions.append(seen)
    work_out(assessor.view, questions)


def _outlook(assessor: JobAssessor, asked: _Asked, earlier: _Earlier) -> JobOutlook:
    works = {}
    for turn in asked.turns:
        _stand_before(assessor, turn, earlier)
        works[turn.name] = assessor.on_surface(turn)
    return job_outlook(asked.facts, works)
