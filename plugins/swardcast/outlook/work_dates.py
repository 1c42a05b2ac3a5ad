"""On which day the work on each surface of a job is finished, and when it reopens."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta

from swardcast.outlook.dates import DateRange, RestsOn
from swardcast.outlook.ledger import JobFacts
from swardcast.outlook.play import OPEN, Statement, ended, latest_play, statements
from swardcast.outlook.reopening import HeldUp, Hours, Times, times_of_work
from swardcast.outlook.working_clock import WorkingClock
from swardcast.outlook.working_days import finishing_days, working_day_after
from swardcast.records.club import Club
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import label_counts
from swardcast.records.plan import Job, Play
from swardcast.records.standing import StandingEntries

__all__ = ["WorkDates", "opened_surfaces", "work_dates"]


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkDates:
    """When the work on a surface is finished, and when players may be on it.

    Args:
        finish: the day on which the work is, or is to be, finished.
        reopening: the day on which it reopens; a plan's `reopens_after` is still to be added.
        hours: the same to the hour where the surface is being worked on, or None.
        ended: what ended work that lasts, or the time of a label on a surface that stays open, or None so far.
        by_label: whether it is done, on a surface that stays open, and its label's time may not be over yet.
        is_opened: whether an entry called the surface open after its work was done.
        is_closed_again: whether a later entry took it out of play again; only of work after which it stays closed.
    """

    finish: DateRange
    reopening: DateRange
    hours: Hours | HeldUp | None = None
    ended: Statement | None = None
    by_label: bool = False
    is_opened: bool = False
    is_closed_again: bool = False


def work_dates(
    facts: JobFacts, records: ClubRecords, entries: StandingEntries, as_of: datetime
) -> dict[str, WorkDates]:
    """Date the work on every surface of a job.

    Assumes that surfaces not started come after those under way, at the plan's pace.

    Args:
        facts: what plan and log say of the job.
        records: the club's records as known at the moment.
        entries: entries that stand, oldest first.
        as_of: the moment, local.

    Returns:
        Dates by surface.
    """
    opened, times = {}, {}
    by_label = label_counts(facts.job.operations)  # then people may be back when the label says so, to no hour of ours
    if facts.progress and (facts.job.follow_up is not None or facts.job.reopens_after is not None):
        opened = opened_surfaces(facts, records, entries)
    if facts.job.reopens_after is None and facts.progress:
        times = times_of_work(facts, records.club, as_of, opened) if not by_label else {}
    found: dict[str, WorkDates] = {}
    for name, finish in _finishes(facts, records.club, as_of, times).items():
        hours = times[name].reopening if name in times else None
        reopening = _reopening(finish, hours)
        if by_label and facts.job.follow_up is not None:
            reopening = _next_day_at_the_latest(finish)
        if name in opened:
            reopening = DateRange.known(opened[name].astimezone(records.club.time_zone).date())
        stays = facts.job.reopens_after is not None and name in opened
        again = stays and _is_out_of_play(name, opened[name], records, entries)
        found[name] = WorkDates(
            finish=finish, reopening=reopening, hours=hours, is_opened=name in opened, is_closed_again=again
        )
    if facts.job.lasts:
        return {**found, **dict(_lasting(facts, records, entries, found))}
    if by_label and facts.job.follow_up is None and facts.job.reopens_after is None:
        return {**found, **dict(_while_open(facts, records, entries, as_of))}
    return found


def _lasting(
    facts: JobFacts, records: ClubRecords, entries: StandingEntries, found: Mapping[str, WorkDates]
) -> Iterator[tuple[str, WorkDates]]:
    """Surfaces on which work that lasts is begun: its time counts from the first entry, and an entry ends it."""
    zone, over = records.club.time_zone, _ended(facts.job, records, entries)
    for name, there in facts.surfaces.items():
        if there.started is None:
            continue
        when = found[name]
        if facts.job.reopens_after is not None:
            since = DateRange.known(there.started.head.true_from.astimezone(zone).date())
            when = WorkDates(finish=since, reopening=since)
        if name in over:
            last = DateRange.known(over[name].at.astimezone(zone).date())
            when = WorkDates(finish=when.finish, reopening=last, ended=over[name])
        yield name, when


def _while_open(
    facts: JobFacts, records: ClubRecords, entries: StandingEntries, as_of: datetime
) -> Iterator[tuple[str, WorkDates]]:
    """Surfaces with a product that stay open: the label may speak of the rest of the day, until an entry opens them."""
    zone, over = records.club.time_zone, _ended(facts.job, records, entries)
    for name, there in facts.surfaces.items():
        if there.done is None:
            continue
        day = there.done.head.true_from.astimezone(zone).date()
        finish, next_day = DateRange.known(day), day + timedelta(days=1)
        if name in over:
            opened = DateRange.known(over[name].at.astimezone(zone).date())
            yield name, WorkDates(finish=finish, reopening=opened, ended=over[name])
        elif as_of.date() <= day:
            yield name, WorkDates(finish=finish, reopening=_next_day_at_the_latest(finish), by_label=True)
        else:
            yield name, WorkDates(finish=finish, reopening=DateRange.known(next_day))


def _ended(job: Job, records: ClubRecords, entries: StandingEntries) -> dict[str, Statement]:
    return ended(job, records, entries.since_job(job.id), own=len(entries.of_job(job.id)))


def opened_surfaces(facts: JobFacts, records: ClubRecords, entries: StandingEntries) -> dict[str, datetime]:
    """Tell when the log first called each surface open after its work was done.

    Args:
        facts: what plan and log say of the job.
        records: the club's records as known at the moment.
        entries: entries that stand, those of `facts` among them, in the order in which they speak.

    Returns:
        Moments by surface; nothing for one that is not open again.
    """
    opened: dict[str, datetime] = {}
    done = {name: there.done for name, there in facts.surfaces.items() if there.done is not None}
    finished: set[str] = set()
    for entry in entries.since_job(facts.job.id):
        if len(opened) == len(done):  # the first word on each is found
            break
        finished |= {name for name, last in done.items() if last is entry}
        for said in statements(records, [entry]) if finished else ():
            for name, play in said.play.items():
                if play in OPEN and name in finished:
                    opened.setdefault(name, said.at)
    return opened


def _is_out_of_play(name: str, opened: datetime, records: ClubRecords, entries: StandingEntries) -> bool:
    """Whether the latest word on a surface after it was opened takes it out of play."""
    return latest_play(name, records, entries.since(opened)) in (Play.CLOSED, Play.TEMPORARY_GREEN)


def _finishes(facts: JobFacts, club: Club, as_of: datetime, times: Mapping[str, Times]) -> dict[str, DateRange]:
    job, today = facts.job, as_of.date()
    if facts.progress:  # a working day that is over brings nothing more
        today = WorkingClock(club).day_begins(as_of).astimezone(club.time_zone).date()
    done = {name: s.done.head.true_from for name, s in facts.surfaces.items() if s.done}
    days = {name: DateRange.known(at.astimezone(club.time_zone).date()) for name, at in done.items()}
    going = {name: told.finish for name, told in times.items() if told.finish is not None}
    left = [*going, *(name for name in job.surfaces if name not in days and name not in going)]
    held = [h for name in left if (h := facts.surfaces[name].held)]
    next_days = [h.head.true_from.astimezone(club.time_zone).date() + timedelta(days=1) for h in held]
    begin = max([today, facts.starts, *next_days, *(h.no_work_before for h in held if h.no_work_before)])
    taken = sum(1 for day in days.values() if day.likely == begin)
    weekdays = club.working_days
    to_come = finishing_days(begin, taken + len(left), a_day=job.surfaces_a_day, weekdays=weekdays)[taken:]
    days |= {name: _days_of(hours) for name, hours in going.items()}
    rests_on = RestsOn.PACE if facts.progress else RestsOn.SPARE_DAYS
    last = max((hours.likely.date() for hours in going.values()), default=today)
    for name, day in zip(left, to_come, strict=True):
        if name not in going:
            days[name] = replace(_planned(max(day, last), job.spare_days, weekdays), rests_on=rests_on)
    return {name: days[name] for name in job.surfaces}


def _planned(day: date, spare_days: int, weekdays: Sequence[int]) -> DateRange:
    return DateRange(early=day, likely=day, allow_until=working_day_after(day, spare_days, weekdays))


def _days_of(hours: Hours) -> DateRange:
    return DateRange(early=hours.early.date(), likely=hours.likely.date(), allow_until=hours.latest.date())


def _next_day_at_the_latest(finish: DateRange) -> DateRange:
    """A follow-up is a matter of hours, and an entry has to open the surface: that may be the next morning's."""
    last = None if finish.allow_until is None else finish.allow_until + timedelta(days=1)
    return DateRange(
        early=finish.early,
        likely=finish.likely,
        allow_until=last,
        rests_on=RestsOn.SUM if finish.is_fact else RestsOn.PLAN,
    )


def _reopening(finish: DateRange, hours: Hours | HeldUp | None) -> DateRange:
    match hours:
        case Hours():
            return _days_of(hours)
        case HeldUp():
            return finish.not_before(hours.not_before.date())
        case None:
            return finish
