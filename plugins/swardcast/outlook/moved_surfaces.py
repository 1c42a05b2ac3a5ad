"""Days of a job that the notice tells surface by surface, and which of them moved since they were last told."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from datetime import date

from swardcast.outlook.dates import DateRange, Milestone
from swardcast.outlook.moves import MOVE_THAT_MATTERS_DAYS, moves
from swardcast.outlook.play import OPEN
from swardcast.outlook.reopening import HeldUp, Hours
from swardcast.outlook.states import JobOutlook, SurfaceWork, Work
from swardcast.outlook.working_days import working_days_between

__all__ = ["MovedSurfaces", "days_of_surfaces", "moved_surfaces"]


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedSurfaces:
    """Surfaces of a job whose day moved together.

    Args:
        surfaces: their ids, in the job's order.
        before: the day on which they were to be open again, or finished, as last told.
        now: the same as it stands now.
        opens: whether they open again then; else they are in play, or only their work is finished.
    """

    surfaces: tuple[str, ...]
    before: DateRange
    now: DateRange
    opens: bool


def days_of_surfaces(outlook: JobOutlook) -> dict[str, DateRange]:
    """List the days that a notice tells of single surfaces: when they open again, or when the work there is finished.

    Args:
        outlook: how the job stands.

    Returns:
        Days by surface; none of what is over or a fact, and none where no day is told: held up by an entry, postponed
        to no day, or not reported on any more.
    """
    if outlook.unreported is not None or outlook.is_put_off:
        return {}
    return {work.surface.id: work.dates[Milestone.REOPENING] for work in outlook.surfaces if _is_told(work)}


def _is_told(work: SurfaceWork) -> bool:
    given = work.dates[Milestone.REOPENING]
    if work.work.is_over or given.is_fact or not given.is_given or isinstance(work.hours, HeldUp):
        return False
    return work.done_at is None or work.job.reopens_after is not None or isinstance(work.hours, Hours)


def moved_surfaces(
    before: JobOutlook, now: JobOutlook, today: date, became: Collection[str], weekdays: Sequence[int]
) -> tuple[MovedSurfaces, ...]:
    """Find the surfaces whose day moved so far that members should hear of it.

    Args:
        before: the job as last told.
        now: the job as it stands.
        today: the day, in the club's local time.
        became: ids of surfaces on which the work came into another state.
        weekdays: weekdays on which work is done, 0 for Monday.

    Returns:
        Those that moved together, in the job's order; nothing of what became of the work is told twice, but where the
        plan keeps a surface closed after the work the new day is.
    """
    told, groups = days_of_surfaces(before), dict[tuple[DateRange, DateRange, bool], list[str]]()
    works = {work.surface.id: work for work in now.surfaces}
    for name, day in days_of_surfaces(now).items():
        stays_closed = now.job.reopens_after is not None
        if name not in told or (name in became and not stays_closed) or not _is_far(told[name], day, today, weekdays):
            continue
        opens = now.job.while_working not in OPEN and (stays_closed or works[name].hours is not None)
        groups.setdefault((told[name], day, opens), []).append(name)
    return tuple(
        MovedSurfaces(surfaces=tuple(names), before=was, now=day, opens=opens)
        for (was, day, opens), names in groups.items()
        if now.work is not Work.CALLED_OFF
    )


def _is_far(was: DateRange, now: DateRange, today: date, weekdays: Sequence[int]) -> bool:
    """Whether a day moved by two working days or more: from a Friday to the Monday the work is one day late, not three.

    A day that is told in months moves as `moves` has it; of a likely day that has passed only "allow until" is told.
    """
    if was.is_wide or now.is_wide:
        return moves(was, now) and was.months != now.months
    if was.likely is not None and now.likely is not None and max(was.likely, now.likely) < today:
        now = replace(now, likely=was.likely)
    return any(
        old is not None and new is not None and working_days_between(old, new, weekdays) >= MOVE_THAT_MATTERS_DAYS
        for old, new in ((was.likely, now.likely), (was.allow_until, now.allow_until))
    )
