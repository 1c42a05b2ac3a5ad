"""In which state one job is on one surface, and what that rests on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from swardcast.outlook.about_dates import about_closure, about_dates
from swardcast.outlook.ledger import JobFacts, SurfaceFacts
from swardcast.outlook.play import OPEN
from swardcast.outlook.reasons import Reasons
from swardcast.outlook.states import DateRange, Milestone, Reason, ReasonKind, Recovery, Unreported, Work
from swardcast.outlook.weather_view import WeatherView
from swardcast.outlook.work_dates import WorkDates
from swardcast.records.club import Surface
from swardcast.records.plan import Job

__all__ = ["Turn", "state_of"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """One job on one surface, with what holds for the whole job.

    Args:
        facts: what plan and log say of the job.
        place: the job's place in the plan.
        name: id of the surface.
        when: when the work there is, or is to be, finished.
        silence: that nobody reports on the job any more, or None.
    """

    facts: JobFacts
    place: int
    name: str
    when: WorkDates
    silence: Unreported | None

    @property
    def here(self) -> SurfaceFacts:
        """What the log says of this surface."""
        return self.facts.surfaces[self.name]

    @property
    def order(self) -> tuple[date, bool, int]:
        """Work comes on top of what was done before it; of one day, what is done before what is planned."""
        return self.when.finish.likely or date.max, self.here.done is None, self.place

    @property
    def counts(self) -> bool:
        """Whether it is done, or still to be done."""
        return self.facts.called_off is None or self.here.done is not None

    def is_known(self, today: date) -> bool:
        """Whether somebody knows if the work was done: else no healing can be counted from a day of it."""
        stands_still = self.silence is not None or self.facts.is_overdue(today)
        return self.here.done is not None or not stands_still


def state_of(
    surface: Surface,
    turn: Turn,
    dates: Mapping[Milestone, DateRange],
    recovery: Recovery | None,
    *,
    heals: bool,
    today: date,
    view: WeatherView | None,
) -> tuple[Work, Sequence[Reason]]:
    """Tell in which state a job is on a surface.

    Args:
        surface: the surface.
        turn: the job there.
        dates: its milestones.
        recovery: how it heals, or None.
        heals: whether something has to heal.
        today: the local day.
        view: the weather as known, or None.

    Returns:
        The state, and what it rests on.
    """
    facts, here = turn.facts, turn.here
    normal = dates[Milestone.BACK_TO_NORMAL]
    nothing_heals = Reason(kind=ReasonKind.NO_HEALING, source="computed")
    if facts.job.lasts and turn.when.ended is not None:
        return Work.BACK_TO_NORMAL, (turn.when.ended.reason, nothing_heals)
    if here.done is None:
        work, reason = _not_done(facts, here, today)
        if work is Work.CALLED_OFF:
            return work, (reason,)
        if _is_over_with_the_work(facts.job, heals=heals):
            return work, (reason, *about_closure(facts.job))
        return work, Reasons(((reason,), *about_dates(surface, facts.job, normal, recovery, view)))
    done = Reason(kind=ReasonKind.DONE, source=here.done.head.id, at=here.done.head.true_from)
    if here.normal is not None:
        head = here.normal.head
        return Work.BACK_TO_NORMAL, (Reason(kind=ReasonKind.SAID_NORMAL, source=head.id, at=head.true_from), done)
    if _is_over_with_the_work(facts.job, heals=heals):
        if turn.when.by_label:
            return Work.UNDER_WAY, (done,)
        reopening = dates[Milestone.REOPENING]
        if reopening.is_fact or (reopening.is_past(today) and not _waits_to_be_opened(turn)):
            return Work.BACK_TO_NORMAL, (done, nothing_heals)
        return Work.HEALING, (done, *about_closure(facts.job))
    if normal.is_past(today) and not _waits_to_be_opened(turn):
        kind = ReasonKind.COMPUTED_NORMAL
        return Work.BACK_TO_NORMAL, (Reason(kind=kind, source="computed", at=normal.allow_until), done)
    return Work.HEALING, Reasons(((done,), *about_dates(surface, facts.job, normal, recovery, view)))


def _not_done(facts: JobFacts, here: SurfaceFacts, today: date) -> tuple[Work, Reason]:
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
    if facts.is_overdue(today):
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
