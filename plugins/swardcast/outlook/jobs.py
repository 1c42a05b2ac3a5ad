"""How one job stands: its state, its dates and their reasons on each surface, and for the job as a whole."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime

from swardcast.outlook.about_dates import about_closure, about_dates
from swardcast.outlook.believed import Believed, Course, Left, Remains, ToHeal, believed, left_on, to_heal
from swardcast.outlook.job_ranges import dates_of_surface, no_dates, range_of_all, work_of_all
from swardcast.outlook.ledger import JobFacts, SurfaceFacts, as_really_done, really_done_by_area
from swardcast.outlook.play import OPEN
from swardcast.outlook.recovery import recovery_of
from swardcast.outlook.states import (
    DateRange,
    JobOutlook,
    Milestone,
    NoDate,
    Reason,
    ReasonKind,
    Recovery,
    SurfaceWork,
    Unreported,
    Work,
)
from swardcast.outlook.unreported import awaited_dates
from swardcast.outlook.weather_book import WeatherView
from swardcast.outlook.work_dates import WorkDates
from swardcast.records.club import Surface
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Operation
from swardcast.records.plan import Job
from swardcast.records.translate import SurfaceSums, density_of, surface_sums

__all__ = ["JobAssessor", "Turn", "job_outlook"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """One job on one surface, with what holds for the whole job.

    Args:
        facts: what plan and log say of the job.
        place: the job's place in the plan.
        name: id of the surface.
        when: when the work there is, or is to be, finished.
        course: what healed before it.
        silence: that nobody reports on the job any more, or None.
    """

    facts: JobFacts
    place: int
    name: str
    when: WorkDates
    course: Course
    silence: Unreported | None

    @property
    def here(self) -> SurfaceFacts:
        """What the log says of this surface."""
        return self.facts.surfaces[self.name]

    @property
    def order(self) -> tuple[date, bool, int]:
        """Work comes on top of what was done before it; of one day, what is done before what is planned."""
        return self.when.finish.likely or date.max, self.here.done is None, self.place


@dataclass(slots=True)
class JobAssessor:
    """Assesses jobs at one moment, so that later work on a surface finds what earlier work left.

    Args:
        records: the club's records as known at the moment.
        as_of: the moment in local time.
        view: the weather as known, or None when there is no history.
        course: what is known of the course besides the jobs.
        healing: how each surface heals after the latest turn assessed there, by id.
    """

    records: ClubRecords
    as_of: datetime
    view: WeatherView | None
    course: Course
    healing: dict[str, Remains] = field(default_factory=dict)

    def assess(self, all_facts: Sequence[JobFacts], only: str = "") -> dict[str, JobOutlook]:
        """Assess jobs, each surface in the order in which it was, or is to be, worked on.

        Args:
            all_facts: what plan and log say of the jobs, in the plan's order.
            only: id of the one job wanted, or "" for all; others are assessed as far as they come before it.

        Returns:
            Jobs by id.
        """
        turns = [
            turn
            for place, facts in enumerate(all_facts)
            for turn in self.turns(place, facts, in_passing=bool(only) and facts.job.id != only)
        ]
        last = {turn.name: turn.order for turn in turns if turn.facts.job.id == only}
        if only:
            turns = [turn for turn in turns if turn.name in last and turn.order <= last[turn.name]]
        works: dict[str, dict[str, SurfaceWork]] = {}
        for turn in sorted(turns, key=lambda turn: turn.order):
            if only and turn.facts.job.id != only:
                self.pass_over(turn)
            else:
                works.setdefault(turn.facts.job.id, {})[turn.name] = self.on_surface(turn)
        return {
            facts.job.id: job_outlook(facts, works[facts.job.id])
            for facts in all_facts
            if not only or facts.job.id == only
        }

    def turns(self, place: int, facts: JobFacts, *, in_passing: bool = False) -> Iterator[Turn]:
        """Lay a job out over its surfaces.

        Args:
            place: the job's place in the plan.
            facts: what plan and log say of it.
            in_passing: whether only what it leaves to later jobs is asked for.

        Yields:
            The job on one surface after the other.
        """
        course = self._course_before(facts)
        done = self._finished(facts) if in_passing else None
        dates, silence = (done, None) if done else awaited_dates(facts, self.records, self.course.entries, self.as_of)
        for name, when in dates.items():
            yield Turn(
                facts=facts,
                place=place,
                name=name,
                when=when,
                course=course,
                silence=silence,
            )

    def _finished(self, facts: JobFacts) -> dict[str, WorkDates] | None:
        """Dates of work that is done everywhere: then none but the days on which it was done matters to later work."""
        entries = {name: there.done for name, there in facts.surfaces.items()}
        days = {name: DateRange.known(self._local(one.head.true_from)) for name, one in entries.items() if one}
        if facts.job.lasts or len(days) < len(entries):
            return None
        return {name: WorkDates(finish=day, reopening=day) for name, day in days.items()}

    def _local(self, moment: datetime) -> date:
        return moment.astimezone(self.records.club.time_zone).date()

    def _course_before(self, facts: JobFacts) -> Course:
        """What healed before this work began: a date must not move for a reason that its own story does not tell."""
        entries = (entry for there in facts.surfaces.values() for entry in (there.started, there.done) if entry)
        began = min([facts.starts, *(self._local(entry.head.true_from) for entry in entries)])
        return replace(self.course, lessons=tuple(told for told in self.course.lessons if told[2].normal_on < began))

    def to_heal(self, turn: Turn) -> ToHeal | None:
        """Tell what a job leaves to heal on one surface, before anything of it was seen.

        Args:
            turn: the job there; what comes before it was assessed.

        Returns:
            What has to heal, or None where nothing has to or nothing can be computed.
        """
        surface, start = self.records.surfaces[turn.name], turn.when.finish.likely
        if self.view is None or start is None:
            return None
        before = self._left_before(surface, start, self.view)
        return to_heal(surface, self._sums(turn)[1], start=start, before=before, view=self.view, course=turn.course)

    def _sums(self, turn: Turn) -> tuple[tuple[Operation, ...], SurfaceSums]:
        """The work there as planned or as really done, and what it does."""
        surfaces, job, here = self.records.surfaces, turn.facts.job, turn.here
        return as_really_done(job.operations, here.as_done), surface_sums(
            really_done_by_area(job, here, surfaces),
            area_m2=surfaces[turn.name].area_m2,
            all_area_m2=None,
            density=density_of(self.records.club),
        )

    def pass_over(self, turn: Turn) -> None:
        """Take note of what a job on one surface leaves to later ones; what comes before it there was assessed."""
        if self._counts(turn) and self._is_known(turn):
            self._believed(self.records.surfaces[turn.name], self._sums(turn)[1], turn)

    def on_surface(self, turn: Turn) -> SurfaceWork:
        """Assess a job on one surface; what comes before it there was assessed."""
        surface, job, here = self.records.surfaces[turn.name], turn.facts.job, turn.here
        operations, sums = self._sums(turn)
        heals = surface.grass is not None and bool(sums.layers)
        recovery, dates = None, no_dates()
        if self._counts(turn):
            is_known = self._is_known(turn)
            recovery = self._recovery(surface, sums, turn) if is_known else None
            without = self._without() if is_known else NoDate.NOT_REPORTED
            dates = dates_of_surface(job, here, turn.when, recovery, without=without if heals else None)
        work, reasons = self._state(turn, dates, recovery, heals=heals)
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

    @staticmethod
    def _counts(turn: Turn) -> bool:
        return turn.facts.called_off is None or turn.here.done is not None

    def _is_known(self, turn: Turn) -> bool:
        """Whether somebody knows if the work was done: else no healing can be counted from a day of it."""
        stands_still = turn.silence is not None or turn.facts.is_overdue(self.as_of.date())
        return turn.here.done is not None or not stands_still

    def _without(self) -> NoDate:
        """Why there is no recovery where something has to heal."""
        return NoDate.NO_HISTORY if self.view is None else NoDate.TOO_FAR

    def _recovery(self, surface: Surface, sums: SurfaceSums, turn: Turn) -> Recovery | None:
        found = self._believed(surface, sums, turn)
        if self.view is None or found is None:
            return None
        seen, before = found
        return recovery_of(sums, before, seen, self.view)

    def _believed(self, surface: Surface, sums: SurfaceSums, turn: Turn) -> tuple[Believed, Left] | None:
        """How the surface heals, and what was left there before; later work on it finds that."""
        start = turn.when.finish.likely
        if self.view is None or start is None:
            return None
        before = self._left_before(surface, start, self.view)
        seen = believed(surface, turn.here, sums, start=start, before=before, view=self.view, course=turn.course)
        if seen is None:
            return None
        waits = turn.facts.put_off is not None and not turn.facts.is_begun  # it cannot count as earlier work
        if turn.here.normal is None and not waits:
            self.healing[surface.id] = seen.remains
        return seen, before

    def _left_before(self, surface: Surface, start: date, view: WeatherView) -> Left:
        earlier = self.healing.get(surface.id)
        if earlier is None or surface.grass is None:
            return Left()
        return left_on(earlier, surface.grass, start, view)

    def _state(
        self, turn: Turn, dates: Mapping[Milestone, DateRange], recovery: Recovery | None, *, heals: bool
    ) -> tuple[Work, tuple[Reason, ...]]:
        surface, facts, here = self.records.surfaces[turn.name], turn.facts, turn.here
        normal = dates[Milestone.BACK_TO_NORMAL]
        nothing_heals = Reason(kind=ReasonKind.NO_HEALING, source="computed")
        if facts.job.lasts and turn.when.ended is not None:
            return Work.BACK_TO_NORMAL, (turn.when.ended.reason, nothing_heals)
        if here.done is None:
            work, reason = self._not_done(facts, here)
            if work is Work.CALLED_OFF:
                return work, (reason,)
            if _is_over_with_the_work(facts.job, heals=heals):
                return work, (reason, *about_closure(facts.job))
            return work, (reason, *about_dates(surface, facts.job, normal, recovery, self.view))
        done = Reason(kind=ReasonKind.DONE, source=here.done.head.id, at=here.done.head.true_from)
        if here.normal is not None:
            head = here.normal.head
            return Work.BACK_TO_NORMAL, (Reason(kind=ReasonKind.SAID_NORMAL, source=head.id, at=head.true_from), done)
        if _is_over_with_the_work(facts.job, heals=heals):
            if turn.when.by_label:
                return Work.UNDER_WAY, (done,)
            reopening = dates[Milestone.REOPENING]
            if reopening.is_fact or (self._has_passed(reopening) and not _waits_to_be_opened(turn)):
                return Work.BACK_TO_NORMAL, (done, nothing_heals)
            return Work.HEALING, (done, *about_closure(facts.job))
        if normal.allow_until is not None and self._has_passed(normal) and not _waits_to_be_opened(turn):
            kind = ReasonKind.COMPUTED_NORMAL
            return Work.BACK_TO_NORMAL, (Reason(kind=kind, source="computed", at=normal.allow_until), done)
        return Work.HEALING, (done, *about_dates(surface, facts.job, normal, recovery, self.view))

    def _has_passed(self, given: DateRange) -> bool:
        return given.allow_until is not None and given.allow_until < self.as_of.date()

    def _not_done(self, facts: JobFacts, here: SurfaceFacts) -> tuple[Work, Reason]:
        if facts.called_off is not None:
            head = facts.called_off.head
            words = facts.called_off.because
            return Work.CALLED_OFF, Reason(kind=ReasonKind.CALLED_OFF, source=head.id, at=head.true_from, words=words)
        if here.held is not None:
            head, words = here.held.head, here.held.because
            return Work.HELD_UP, Reason(kind=ReasonKind.HELD_UP, source=head.id, at=head.true_from, words=words)
        if here.started is not None:
            head = here.started.head
            return Work.UNDER_WAY, Reason(kind=ReasonKind.STARTED, source=head.id, at=head.true_from)
        source = f"{facts.job.file}, line {facts.job.line}"
        if facts.put_off is not None:
            head, words = facts.put_off.head, facts.put_off.because
            return Work.PLANNED, Reason(kind=ReasonKind.PUT_OFF, source=head.id, at=head.true_from, words=words)
        if facts.is_overdue(self.as_of.date()):
            return Work.PLANNED, Reason(kind=ReasonKind.OVERDUE, source=source, at=facts.starts)
        if facts.changes:
            change = facts.changes[-1]
            reason = Reason(kind=ReasonKind.MOVED, source=change.head.id, at=facts.starts, words=change.because)
            return Work.PLANNED, reason
        return Work.PLANNED, Reason(kind=ReasonKind.PLANNED, source=source, at=facts.starts)


def _is_over_with_the_work(job: Job, *, heals: bool) -> bool:
    """Whether nothing has to heal: such work leaves the surface as it was once players may be on it again."""
    return not heals and job.normal_after is None


def _waits_to_be_opened(turn: Turn) -> bool:
    """Whether work that is done keeps the surface closed until an entry opens it: a computed time never does."""
    job = turn.facts.job
    stays_closed = job.follow_up is not None or job.reopens_after is not None
    return stays_closed and job.while_working not in OPEN and not turn.when.is_opened


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
