"""Work that nobody reports on any more: its dates stand still at what the last report gave, until another one comes.

Begun work that is not entered as done is taken to go on, and to end later with each day, as far as the day to allow for
that the last report gave. After that nobody knows whether it goes on, and a date that moved on by itself would tell
members of progress that nobody made. Planned work that nobody began stands still from the day after its own.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, time, timedelta
from typing import Final

from swardcast.outlook.dates import DateRange
from swardcast.outlook.ledger import JobFacts
from swardcast.outlook.states import Unreported
from swardcast.outlook.work_dates import WorkDates, work_dates
from swardcast.records.folder import ClubRecords
from swardcast.records.standing import StandingEntries

__all__ = ["NOT_REPORTED_AFTER_DAYS", "awaited_dates", "awaits_reports"]

NOT_REPORTED_AFTER_DAYS: Final = 0
"""Days, 0 to 7, after the day to allow for from which unfinished work counts as not reported on any more: judgement.

None: that day has its patience already, 9 chances in 10 or the plan's spare days, so that a report which comes on the
morning after finds "was due by" on the page, and no day that was made up overnight. A club's `entry counts for` is
something else: the hours for which a word on play holds."""


def awaits_reports(facts: JobFacts) -> bool:
    """Tell whether there is begun work of which a report may be missing; of any other, no dates need be worked out.

    Args:
        facts: what plan and log say of the job.

    Returns:
        Whether an entry speaks of its work, and none says of every surface that the work there is done.
    """
    left = any(there.done is None for there in facts.surfaces.values())
    return left and bool(facts.progress) and facts.called_off is None


def awaited_dates(
    facts: JobFacts, records: ClubRecords, entries: StandingEntries, as_of: datetime
) -> tuple[dict[str, WorkDates], Unreported | None]:
    """Date the work on every surface of a job, no further than reports carry.

    A day that passes without a report uses up the days kept for weather: the likely day moves on, the day to allow for
    does not. Once that of all the work has passed, every date is the one that the last report gave.

    Args:
        facts: what plan and log say of the job.
        records: the club's records as known at the moment.
        entries: entries that stand, oldest first.
        as_of: the moment, local.

    Returns:
        Dates by surface; and that nobody reports on the work any more, or None.
    """
    if facts.is_overdue(as_of.date()):  # of planned work that nobody began the days of the plan stand
        planned = datetime.combine(facts.starts, time(0), tzinfo=as_of.tzinfo)
        return work_dates(facts, records, entries, planned), None
    if not awaits_reports(facts):
        return work_dates(facts, records, entries, as_of), None
    last = max(entry.head.at for entry in entries.of_job(facts.job.id))
    last = last.astimezone(records.club.time_zone)
    if as_of.date() <= last.date():
        return work_dates(facts, records, entries, as_of), None
    told = work_dates(facts, records, entries, last)
    left = [name for name, there in facts.surfaces.items() if there.done is None and told[name].ended is None]
    due = max((day for name in left if (day := _due(facts, name, told[name])) is not None), default=None)
    if due is not None and as_of.date() > due + timedelta(days=NOT_REPORTED_AFTER_DAYS):
        return told, Unreported(last_report=last, due_by=due)  # without dates of now, which take long after years
    found = work_dates(facts, records, entries, as_of)
    return {name: _held_to(told[name], when) if name in left else when for name, when in found.items()}, None


def _due(facts: JobFacts, name: str, told: WorkDates) -> date | None:
    """The day to allow for of the work there; of work that lasts, of the time for which it is played."""
    day, begun = told.finish.allow_until, facts.surfaces[name].started is not None
    if day is not None and begun and facts.job.lasts and facts.job.reopens_after is not None:
        return day + timedelta(days=round(facts.job.reopens_after.to_days))
    return day


def _held_to(told: WorkDates, now: WorkDates) -> WorkDates:
    """The dates of now, with the day to allow for that was told, as long as the likely day is not beyond it."""
    if now.hours is not None or told.hours is not None:
        return now  # to the hour, at the pace seen
    return replace(now, finish=_allowing(now.finish, told.finish), reopening=_allowing(now.reopening, told.reopening))


def _allowing(now: DateRange, told: DateRange) -> DateRange:
    if now.likely is None or now.allow_until is None or told.allow_until is None:
        return now
    return replace(now, allow_until=min(now.allow_until, max(now.likely, told.allow_until)))
