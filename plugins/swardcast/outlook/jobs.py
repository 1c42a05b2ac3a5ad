"""How one job stands: its state, its dates and their reasons on each surface, and for the job as a whole."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime

from swardcast.outlook.believed import FARTHEST, Believed, Heard
from swardcast.outlook.bookkeeping import Ledger
from swardcast.outlook.job_ranges import dates_of_surface, no_dates, range_of_all, work_of_all
from swardcast.outlook.job_state import Turn, state_of
from swardcast.outlook.known import Known
from swardcast.outlook.learnt import Learnt
from swardcast.outlook.ledger import JobFacts
from swardcast.outlook.recovery import recovery_of, work_out
from swardcast.outlook.states import JobOutlook, Milestone, NoDate, SurfaceWork
from swardcast.outlook.unreported import awaited_dates
from swardcast.outlook.weather_view import WeatherView

__all__ = ["Course", "JobAssessor", "job_outlook"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """What is known of the course besides its jobs.

    Args:
        learnt: what healed jobs taught.
        target_speed_mm: the green speed that the club aims at, mm, or None.
    """

    learnt: Learnt = field(default_factory=Learnt)
    target_speed_mm: float | None = None


@dataclass(slots=True, kw_only=True)
class JobAssessor:
    """Assesses jobs at one moment, so that later work on a surface finds what earlier work left.

    Args:
        known: the records as known at the moment; of one job alone, those near it.
        as_of: the moment in local time.
        view: the weather as known, or None when there is no history.
        course: what is known of the course besides the jobs.
        ledger: what plan and log say of jobs, and what follows from that.
        healing: how each surface heals after the latest turn assessed there, by id.
    """

    known: Known
    as_of: datetime
    view: WeatherView | None
    course: Course
    ledger: Ledger
    healing: dict[str, Believed] = field(default_factory=dict)

    def assess(self, only: str = "") -> dict[str, JobOutlook]:
        """Assess jobs, each surface in the order in which it was, or is to be, worked on.

        Args:
            only: id of the one job wanted, or "" for all; others are passed over as far as they come before it.

        Returns:
            Jobs by id, in the plan's order.
        """
        seen = [(turn, self.seen(turn)) for turn in self._in_order(only)]
        if self.view is not None:
            work_out(self.view, [one for _, one in seen if one is not None])
        works: dict[str, dict[str, SurfaceWork]] = {}
        for turn, one in seen:
            works.setdefault(turn.facts.job.id, {})[turn.name] = self._dated(turn, one)
        return {
            facts.job.id: job_outlook(facts, works[facts.job.id])
            for facts in self.known.facts
            if not only or facts.job.id == only
        }

    def believed_of(self, only: str) -> dict[str, Believed]:
        """Tell how the surfaces of one job heal, without any date.

        Args:
            only: id of the job.

        Returns:
            What is believed by surface; nothing for one that does not heal.
        """
        found = {turn.name: self.seen(turn) for turn in self._in_order(only)}
        return {name: one for name, one in found.items() if one is not None}

    def facts_before(self, only: str) -> Iterator[JobFacts]:
        """Leave out the jobs that cannot have a part in one: no entry speaks of them, and they begin after its end.

        Args:
            only: id of the job.

        Yields:
            The facts of the others, and of itself, in the plan's order.
        """
        places = enumerate(self.known.facts)
        last = max(turn.order[0] for n, its in places if its.job.id == only for turn in self.turns(n, its))
        for facts in self.known.facts:
            if facts.starts <= last or self.known.entries.of_job(facts.job.id):
                yield facts

    def _in_order(self, only: str) -> Iterator[Turn]:
        """The turns wanted, each once all that comes before it on its surface was passed over."""
        wanted = [
            turn
            for place, facts in enumerate(self.known.facts)
            if not only or facts.job.id == only
            for turn in self.turns(place, facts)
        ]
        last = {turn.name: turn.order for turn in wanted}
        others = () if not only else [turn for turn in self._others(only, last) if turn.order < last[turn.name]]
        for turn in sorted((*wanted, *others), key=lambda turn: turn.order):
            if only and turn.facts.job.id != only:
                self.seen(turn)
            else:
                yield turn

    def _others(self, only: str, last: Mapping[str, tuple[date, bool, int]]) -> Iterator[Turn]:
        """Other jobs where they may leave something to one of which the order on each surface is known."""
        for place, facts in enumerate(self.known.facts):
            if facts.job.id == only:
                continue
            left = self.ledger.leaves(facts)
            if left is not None:
                for name, when in left.items():
                    if name in last:
                        yield Turn(facts=facts, place=place, name=name, when=when, silence=None)
            elif self._may_come_before(place, facts, last):
                yield from (turn for turn in self.turns(place, facts) if turn.name in last)

    def _may_come_before(self, place: int, facts: JobFacts, last: Mapping[str, tuple[date, bool, int]]) -> bool:
        """Whether unfinished work may leave something: planned work is not finished before its first day."""
        there = [name for name in facts.job.surfaces if name in last and self.ledger.sums_on(facts, name)[1].layers]
        if facts.is_begun or not there:
            return bool(there)
        if facts.called_off is not None or facts.put_off is not None or facts.is_overdue(self.as_of.date()):
            return False
        begins = (facts.starts, True, place)
        return any(begins < last[name] for name in there)

    def turns(self, place: int, facts: JobFacts) -> Iterator[Turn]:
        """Lay a job out over its surfaces.

        Args:
            place: the job's place in the plan.
            facts: what plan and log say of it.

        Yields:
            The job on one surface after the other.
        """
        dates, silence = self.known.dates.get(facts), None
        if dates is None:
            dates, silence = awaited_dates(facts, self.known.records, self.known.entries, self.as_of)
            if facts.is_done_before(self.as_of.date()):
                self.known.dates[facts] = dates
        for name, when in dates.items():
            yield Turn(facts=facts, place=place, name=name, when=when, silence=silence)

    def on_surface(self, turn: Turn) -> SurfaceWork:
        """Assess a job on one surface; what comes before it there was assessed."""
        return self._dated(turn, self.seen(turn))

    def _dated(self, turn: Turn, seen: Believed | None) -> SurfaceWork:
        surface, job, here = self.known.records.surfaces[turn.name], turn.facts.job, turn.here
        operations, sums = self.ledger.sums_on(turn.facts, turn.name)
        heals = surface.grass is not None and bool(sums.layers)
        today = self.as_of.date()
        if not turn.counts:
            recovery, dates = None, no_dates()
        else:
            recovery = recovery_of(sums, seen, self.view) if seen is not None and self.view is not None else None
            without = self._without() if turn.is_known(today) else NoDate.NOT_REPORTED
            dates = dates_of_surface(job, here, turn.when, recovery, without=without if heals else None)
        work, reasons = state_of(surface, turn, dates, recovery, heals=heals, today=today, view=self.view)
        return SurfaceWork(
            surface=surface,
            job=job,
            work=work,
            dates=dates,
            recovery=recovery,
            reasons=reasons,
            operations=operations,
            sums=sums,
            started_at=here.started.head.true_from if here.started else None,
            done_at=here.done.head.true_from if here.done else None,
            finish=turn.when.finish,
            hours=turn.when.hours,
            is_closed_again=turn.when.is_closed_again,
            unreported=turn.silence if here.done is None else None,
        )

    def _without(self) -> NoDate:
        """Why there is no recovery where something has to heal."""
        return NoDate.NO_HISTORY if self.view is None else NoDate.TOO_FAR

    def seen(self, turn: Turn) -> Believed | None:
        """Take note of how a surface heals after a job, so that later work finds what this one leaves there.

        Args:
            turn: the job there; what comes before it was taken note of.

        Returns:
            What is believed, or None where nothing heals, or nobody knows if the work was done.
        """
        start = turn.when.finish.likely
        if not turn.counts or not turn.is_known(self.as_of.date()) or self.view is None or start is None:
            return None
        heard = self._heard(turn)
        if heard is None or start > self.view.today + FARTHEST:
            return None
        seen = self.ledger.believed(turn.facts, turn.name, start, self.healing.get(turn.name), heard, self.view)
        waits = turn.facts.put_off is not None and not turn.facts.is_begun  # it cannot count as earlier work
        if seen is not None and turn.here.normal is None and not waits:
            self.healing[turn.name] = seen
        return seen

    def _heard(self, turn: Turn) -> Heard | None:
        """What else is known of the surface, or None where nothing grows."""
        surface = self.known.records.surfaces[turn.name]
        if surface.grass is None:
            return None
        return Heard(
            prior=self.course.learnt.before(surface.kind, surface.grass, self.ledger.began(turn.facts)),
            held_back=self.known.entries.held_back_on(turn.name),
            target_speed_mm=self.course.target_speed_mm,
        )


def job_outlook(facts: JobFacts, works: Mapping[str, SurfaceWork]) -> JobOutlook:
    """Put a job together from its surfaces.

    Args:
        facts: what plan and log say of the job.
        works: the job on each of its surfaces, by id.

    Returns:
        How the job stands.
    """
    in_order = tuple(works[name] for name in facts.job.surfaces)
    return JobOutlook(
        job=facts.job,
        work=work_of_all(in_order),
        starts=facts.starts,
        surfaces=in_order,
        dates={milestone: range_of_all(in_order, milestone) for milestone in Milestone},
        changed_because=facts.changes[-1].because if facts.changes else "",
        is_put_off=facts.put_off is not None,
        unreported=next((work.unreported for work in in_order if work.unreported is not None), None),
    )
