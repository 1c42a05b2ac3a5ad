"""One job of a report: what was planned and done, what was promised, and for how long it disturbed play."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime

from swardcast.notices.spans import first_day_of_work
from swardcast.outlook.ledger import JobFacts
from swardcast.outlook.states import DateRange, JobOutlook, Milestone, SurfaceWork, Work
from swardcast.outlook.story import JobChange, JobStory
from swardcast.planning.report_places import Place, in_log, in_plan
from swardcast.records.operations import Operation
from swardcast.records.plan import Job

__all__ = ["Disturbed", "Promise", "ReportedJob", "disturbed_by", "last_day_of_disturbance"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ReportedJob:
    """A job as planned and as done.

    Args:
        facts: what plan and log say of it.
        outlook: how it stands.
    """

    facts: JobFacts
    outlook: JobOutlook

    @property
    def job(self) -> Job:
        """The job as planned."""
        return self.outlook.job

    @property
    def done(self) -> tuple[SurfaceWork, ...]:
        """The work on the surfaces that are finished, in the plan's order."""
        return tuple(work for work in self.outlook.surfaces if work.done_at is not None)

    @property
    def is_done(self) -> bool:
        """Whether it is finished on all its surfaces."""
        return len(self.done) == len(self.outlook.surfaces)

    @property
    def first_day_done(self) -> date | None:
        """The first day of the work as the log has it, or None where it has not begun."""
        return first_day_of_work(self.outlook) if self.facts.is_begun else None

    @property
    def last_day_done(self) -> date | None:
        """The day on which the last of its surfaces was finished, or None where some are not."""
        return max((work.done_at.date() for work in self.done if work.done_at), default=None) if self.is_done else None

    @property
    def done_otherwise(self) -> tuple[tuple[tuple[SurfaceWork, ...], tuple[Operation, ...]], ...]:
        """Finished surfaces on which something else was done than planned, each set with what differs."""
        sets: dict[tuple[Operation, ...], list[SurfaceWork]] = {}
        for work in self.done:
            differs = tuple(one for one in work.operations if one not in self.job.operations)
            if differs:
                sets.setdefault(differs, []).append(work)
        return tuple((tuple(works), differs) for differs, works in sets.items())

    @property
    def sources(self) -> tuple[Place, ...]:
        """The line of the plan, then the entries that tell of the work and its changes, oldest first."""
        heads = [one.head for one in self.facts.progress] + [one.head for one in self.facts.changes]
        in_order = sorted(heads, key=lambda head: (head.at_s, head.id))
        return (in_plan(self.job), *(in_log(head) for head in in_order))


@dataclass(frozen=True, slots=True, kw_only=True)
class Promise:
    """A date of back to normal as members were told it.

    Args:
        told_on: the day of that.
        starts: the first day of the work as it stood then.
        normal: the date.
    """

    told_on: date
    starts: date
    normal: DateRange

    @property
    def likely_days(self) -> int | None:
        """Days from the first day of the work to the likely day, at least 1; None where none was told."""
        likely = self.normal.likely
        return max(1, (likely - self.starts).days) if self.normal.is_given and likely else None

    @property
    def allowed_days(self) -> int | None:
        """Days from the first day of the work to the day to allow for, at least 1; None where none was told."""
        until = self.normal.allow_until
        return max(1, (until - self.starts).days) if self.normal.is_given and until else None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Disturbed:
    """For how long a job disturbed play, beside what was promised.

    Args:
        outlook: how it stands.
        announced: the promise with which it was announced, or None of work that members had not heard of.
        before: the last promise before the work began, or None likewise.
        first: the first day of the work.
        normal_on: the day on which the log has its end, or None so far.
        days: days from the first day of the work up to the day before its end, or so far; at least 1.
        sources: where the plan has it, and the entries that began and ended it.
    """

    outlook: JobOutlook
    announced: Promise | None
    before: Promise | None
    first: date
    normal_on: date | None
    days: int
    sources: tuple[Place, ...]

    @property
    def is_over(self) -> bool:
        """Whether an entry ended it."""
        return self.normal_on is not None

    @property
    def ended_in_part(self) -> tuple[date, ...]:
        """The days on which entries ended it on some of its surfaces, where it is not over."""
        days = (work.dates[Milestone.BACK_TO_NORMAL] for work in self.outlook.surfaces if work.work.is_over)
        return () if self.is_over else tuple(one.likely for one in days if one.is_fact and one.likely is not None)

    @property
    def is_compared(self) -> bool:
        """Whether it is over and its end was promised before the work, so that both can be added up."""
        return self.is_over and self.before is not None and self.before.normal.is_given

    @property
    def likely_days(self) -> int:
        """The likely days that were promised before the work, 0 where none were."""
        return (self.before.likely_days or 0) if self.before is not None else 0

    @property
    def allowed_days(self) -> int:
        """The days to allow for that were promised before the work, 0 where none were."""
        return (self.before.allowed_days or 0) if self.before is not None else 0


def _ended_on(outlook: JobOutlook) -> date | None:
    """The day on which the log has the end of a job: back to normal, or of work that leaves nothing to heal its end."""
    normal = outlook.dates[Milestone.BACK_TO_NORMAL]
    return normal.likely if outlook.work is Work.BACK_TO_NORMAL and normal.is_fact else None


def last_day_of_disturbance(outlook: JobOutlook, today: date) -> date:
    """Tell until when a job that has begun matters.

    Args:
        outlook: how the job stands.
        today: the day of the report.

    Returns:
        The day on which the log has its end; where the sum alone says that it is over, the likely day; or today.
    """
    ended = _ended_on(outlook)
    if ended is not None:
        return ended
    likely = outlook.dates[Milestone.BACK_TO_NORMAL].likely
    return min(today, likely) if outlook.work.is_over and likely is not None else today


def disturbed_by(facts: JobFacts, outlook: JobOutlook, story: JobStory, as_of: datetime) -> Disturbed:
    """Hold what a job did to play against what members were told.

    Args:
        facts: what plan and log say of it; it has begun.
        outlook: how it stands.
        story: what members were told of it.
        as_of: the moment of the report, local.

    Returns:
        Its days. They count as a comparison of choices counts them: from the first day of the work to back to normal.
    """
    first, ended = first_day_of_work(outlook), _ended_on(outlook)
    begun = min(at for work in outlook.surfaces for at in (work.started_at, work.done_at) if at is not None)
    was_announced = facts.job.announced <= as_of.date()
    told = [change for change in story.changes if change.at < begun] if was_announced else []
    return Disturbed(
        outlook=outlook,
        announced=_promise(told[0], as_of) if told else None,
        before=_promise(told[-1], as_of) if told else None,
        first=first,
        normal_on=ended,
        days=max(1, (last_day_of_disturbance(outlook, as_of.date()) - first).days),
        sources=tuple(dict.fromkeys(_sources(facts))),
    )


def _promise(change: JobChange, as_of: datetime) -> Promise:
    return Promise(
        told_on=change.at.astimezone(as_of.tzinfo).date(),
        starts=change.outlook.starts,
        normal=change.news.back_to_normal,
    )


def _sources(facts: JobFacts) -> Iterator[Place]:
    """The line of the plan, the entry that began the work, and those that ended it."""
    yield in_plan(facts.job)
    yield in_log(facts.progress[0].head)
    ends = (there.normal or there.done for there in facts.surfaces.values())
    yield from (in_log(entry.head) for entry in ends if entry is not None)
