"""Dates of a job: of one surface from its recovery, and of the whole job for the last of its surfaces."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta

import numpy as np
from numpy.typing import NDArray

from swardcast.outlook.ledger import SurfaceFacts
from swardcast.outlook.states import (
    DateRange,
    JobOutlook,
    Milestone,
    NoDate,
    Recovery,
    RestsOn,
    SurfaceWork,
    Work,
    date_range,
)
from swardcast.outlook.work_dates import WorkDates
from swardcast.records.plan import Job, Stretch

__all__ = [
    "dated_milestones",
    "dates_of_surface",
    "no_dates",
    "open_works",
    "range_of_all",
    "sampled_recoveries",
    "samples_of_last",
    "without_called_off",
    "work_of_all",
]

_HEALING_MILESTONES = (Milestone.SETTLED, Milestone.HOLES_CLOSED, Milestone.BACK_TO_NORMAL)


def no_dates(why: NoDate = NoDate.NOT_THIS_SEASON) -> dict[Milestone, DateRange]:
    """Give every milestone no date."""
    return dict.fromkeys(Milestone, DateRange(early=None, likely=None, allow_until=None, no_date=why))


def dates_of_surface(
    job: Job, here: SurfaceFacts, when: WorkDates, recovery: Recovery | None, *, without: NoDate | None
) -> dict[Milestone, DateRange]:
    """Date the milestones of a job on one surface.

    Args:
        job: the job.
        here: what the log says of it there.
        when: when the work is finished, and when the surface reopens.
        recovery: how it heals, or None.
        without: why there is no recovery, or None where nothing has to heal.

    Returns:
        A range for each milestone.
    """
    reopening = when.reopening
    if job.reopens_after is not None and when.ended is None and not when.is_opened:
        reopening = _later(when.finish, job.reopens_after)
    dates = no_dates(without or NoDate.NOT_THIS_SEASON)
    dates[Milestone.REOPENING] = reopening
    if job.normal_after is not None and not (job.lasts and when.ended):
        dates[Milestone.BACK_TO_NORMAL] = _later(when.finish, job.normal_after)
    elif recovery is not None:
        dates.update(recovery.ranges)
        if job.reopens_after is not None:
            dates[Milestone.BACK_TO_NORMAL] = _not_before(dates[Milestone.BACK_TO_NORMAL], reopening)
    elif without is None:
        dates.update(dict.fromkeys(_HEALING_MILESTONES, reopening))
    if here.normal is not None:
        dates[Milestone.BACK_TO_NORMAL] = DateRange.known(here.normal.head.true_from.date())
    return dates


def _later(day: DateRange, stretch: Stretch) -> DateRange:
    middle = (stretch.from_days + stretch.to_days) / 2

    def plus(start: date | None, days: float) -> date | None:
        return None if start is None else start + timedelta(days=round(days))

    return DateRange(
        early=plus(day.early, stretch.from_days),
        likely=plus(day.likely, middle),
        allow_until=plus(day.allow_until, stretch.to_days),
        rests_on=RestsOn.USUAL_TIME,
    )  # never a fact: the range is somebody's experience


def _not_before(given: DateRange, reopening: DateRange) -> DateRange:
    """A place that is closed for longer than it takes to heal is back to normal when it is open again."""

    def later(day: date | None, opens: date | None) -> date | None:
        return day if day is None or opens is None else max(day, opens)

    return replace(
        given,
        early=later(given.early, reopening.early),
        likely=later(given.likely, reopening.likely),
        allow_until=later(given.allow_until, reopening.allow_until),
    )


def dated_milestones(work: SurfaceWork) -> tuple[Milestone, ...]:
    """List the milestones worth a line: where nothing was opened or sanded, no hole closes and nothing settles."""
    return tuple(
        milestone
        for milestone in Milestone
        if milestone is Milestone.BACK_TO_NORMAL
        or (work.dates[milestone].likely is not None and (milestone is Milestone.REOPENING or work.sums.layers))
    )


def work_of_all(works: Sequence[SurfaceWork]) -> Work:
    """Tell the state of a whole job from its surfaces."""
    states = {work.work for work in works}
    if len(states) == 1:
        return states.pop()
    for state in (Work.UNDER_WAY, Work.HELD_UP):
        if state in states:
            return state
    if states & {Work.PLANNED}:
        return Work.UNDER_WAY  # some surfaces are done, others to come
    return Work.HEALING if Work.HEALING in states else Work.BACK_TO_NORMAL


def range_of_all(works: Sequence[SurfaceWork], milestone: Milestone) -> DateRange:
    """The date for the last of the surfaces: the weather and the model's error are the same for all of them."""
    open_ones = open_works(works)
    counted = open_ones or [work for work in works if work.work is not Work.CALLED_OFF]
    if milestone is Milestone.REOPENING:
        counted = [work for work in works if work.work is not Work.CALLED_OFF]
    sampled = sampled_recoveries(counted)
    if milestone is not Milestone.REOPENING and open_ones and sampled and len(sampled) == len(counted):
        healed = sampled[0].ranges[milestone]
        if any(one.samples is not sampled[0].samples for one in sampled):
            healed = date_range(*samples_of_last(sampled, milestone))
        if milestone is not Milestone.BACK_TO_NORMAL or open_ones[0].job.reopens_after is None:
            return healed
        return _not_before(healed, range_of_all(open_ones, Milestone.REOPENING))
    ranges = [work.dates[milestone] for work in counted]
    return DateRange(
        early=_latest([given.early for given in ranges]),
        likely=_latest([given.likely for given in ranges]),
        allow_until=_latest([given.allow_until for given in ranges]),
        is_fact=bool(ranges) and all(given.is_fact for given in ranges),
        no_date=next((given.no_date for given in ranges if given.likely is None), NoDate.NOT_THIS_SEASON),
        rests_on=_of_the_last(ranges),
    )


def _of_the_last(ranges: Sequence[DateRange]) -> RestsOn:
    """What the range that ends last rests on."""
    ahead = [(given.allow_until, given.rests_on) for given in ranges if not given.is_fact]
    dated = [(day, rests_on) for day, rests_on in ahead if day is not None]
    return max(dated, key=lambda one: one[0])[1] if dated else RestsOn.SUM


def open_works(works: Sequence[SurfaceWork]) -> list[SurfaceWork]:
    """List the surfaces on which the job is neither over nor called off."""
    return [work for work in works if work.work not in (Work.CALLED_OFF, Work.BACK_TO_NORMAL)]


def without_called_off(outlook: JobOutlook) -> JobOutlook:
    """Leave out the surfaces on which a job was called off before it came to them.

    Args:
        outlook: how the job stands; its dates are those of the other surfaces already.

    Returns:
        The same job on the other surfaces; as it is where it was called off on all of them.
    """
    left = tuple(work for work in outlook.surfaces if work.work is not Work.CALLED_OFF)
    return replace(outlook, surfaces=left) if left else outlook


def sampled_recoveries(works: Sequence[SurfaceWork]) -> list[Recovery]:
    """List the recoveries from which dates are computed; where a usual range is given, that counts."""
    return [work.recovery for work in works if work.recovery is not None and work.job.normal_after is None]


def samples_of_last(recoveries: Sequence[Recovery], milestone: Milestone) -> tuple[NDArray[np.float64], date]:
    """Count the days until the last of several surfaces reaches a milestone.

    Assumes the same weather and the same error of the model for all of them.

    Args:
        recoveries: at least one.
        milestone: settled, holes closed or back to normal.

    Returns:
        Equally likely days, shape (members, errors), infinite where never, and the day from which they count.
    """
    first = min(recovery.start for recovery in recoveries)
    alike = {(id(recovery.samples), recovery.start): recovery for recovery in recoveries}
    shifted = [recovery.samples[milestone] + (recovery.start - first).days for recovery in alike.values()]
    return np.maximum.reduce(shifted), first


def _latest(days: Sequence[date | None]) -> date | None:
    known = [day for day in days if day is not None]
    return max(known) if known and len(known) == len(days) else None
