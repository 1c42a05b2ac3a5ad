"""Which surfaces a day finds closed by a job: while it is worked on, and in the closure after it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from enum import Enum

from swardcast.outlook.job_ranges import open_works
from swardcast.outlook.states import DateRange, JobOutlook, Milestone, SurfaceWork, Work
from swardcast.outlook.work_days import work_parts
from swardcast.records.fixtures import Fixture

__all__ = [
    "Touch",
    "before_end_of",
    "begun_and_not",
    "in_closure",
    "likely_closed",
    "perhaps_closed_later",
    "waits_to_begin",
]


class Touch(Enum):
    """Whether a fixture falls into days whose end may be uncertain."""

    YES = "yes"
    PERHAPS = "perhaps"
    NO = "no"


def before_end_of(given: DateRange, day: date, *, even_on_it: bool = False) -> Touch | None:
    """Compare a day with the end of something: it is over from the range's days on, or after them.

    Args:
        given: the days on which it may end.
        day: the day.
        even_on_it: whether it lasts through its last day.

    Returns:
        Whether the day lies before the end; None where no day can be told for that.
    """
    if given.likely is None or given.allow_until is None:
        return None
    early = given.early or given.likely
    if day < early or (even_on_it and day == early):
        return Touch.YES
    return Touch.PERHAPS if day < given.allow_until or (even_on_it and day == given.allow_until) else Touch.NO


def likely_closed(
    fixture: Fixture, outlook: JobOutlook, touch: Touch, weekdays: Sequence[int], today: date
) -> list[SurfaceWork]:
    """List the work on surfaces with a closure after it that a fixture finds closed, or perhaps closed.

    Args:
        fixture: the fixture.
        outlook: how the job stands.
        touch: yes for surfaces that are most likely closed then, perhaps for those that may be.
        weekdays: weekdays on which work is done, 0 for Monday.
        today: the day, in the club's local time.

    Returns:
        The job on these surfaces, first those where it has begun; without those on which it begins only after that day,
        or on a day that nobody can tell.
    """
    day = max(fixture.first_day, today)
    begins = {work.surface.id: part.first_day for part in work_parts(outlook, weekdays) for work in part.works}
    begun, to_begin = begun_and_not(open_works(outlook.surfaces))
    planned = (work for work in to_begin if not waits_to_begin(work))
    closed = [*begun, *(work for work in planned if begins.get(work.surface.id, date.max) <= day)]
    return [work for work in closed if in_closure(work.dates, day) is touch]


def perhaps_closed_later(fixture: Fixture, outlook: JobOutlook, today: date) -> list[SurfaceWork]:
    """List the work held up before it began whose surfaces a fixture finds closed if it has gone on by then.

    Args:
        fixture: the fixture.
        outlook: how the job stands; its surfaces stay closed after the work.
        today: the day, in the club's local time.

    Returns:
        The job on these surfaces, in its order.
    """
    day = max(fixture.first_day, today)
    waiting = (work for work in open_works(outlook.surfaces) if waits_to_begin(work))
    return [work for work in waiting if in_closure(work.dates, day) is not Touch.NO]


def in_closure(dates: Mapping[Milestone, DateRange], day: date) -> Touch:
    """Compare a day with the end of work, or of the closure after it.

    Args:
        dates: those of a job, or of a job on one surface.
        day: the day.

    Returns:
        Whether the day lies before that end.
    """
    return before_end_of(dates[Milestone.REOPENING], day, even_on_it=True) or Touch.PERHAPS


def waits_to_begin(work: SurfaceWork) -> bool:
    """Tell whether work was held up before it began, so that no day can be told for it.

    Args:
        work: one job on one surface.

    Returns:
        Whether it is so.
    """
    return work.work is Work.HELD_UP and not work.has_begun


def begun_and_not(works: Iterable[SurfaceWork]) -> tuple[list[SurfaceWork], list[SurfaceWork]]:
    """Part work that a report says has begun from work that is only planned.

    Args:
        works: one job on some surfaces.

    Returns:
        Both, in their order.
    """
    begun, to_begin = list[SurfaceWork](), list[SurfaceWork]()
    for work in works:
        (begun if work.has_begun else to_begin).append(work)
    return begun, to_begin
