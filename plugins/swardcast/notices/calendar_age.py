"""How old the events of a job are: what tells a calendar program which of two versions is the newer one.

A program takes an event again when its SEQUENCE is higher, or its DTSTAMP later at the same SEQUENCE (RFC 5546, section
2.1.5), and keeps what it has otherwise. An entry that is typed late rewrites the past, so that what was told by today's
records can become less than it was: to count that would leave programs with what was wrong. Counted are therefore
moments that no later record takes away, whether or not anything changed at them.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta
from typing import Final

from swardcast.outlook.memory import records_near
from swardcast.outlook.story_moments import FOLLOWED_DAYS
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Entry
from swardcast.records.plan import Job

__all__ = ["Age", "age_of"]

_STEP: Final = timedelta(hours=1)
"""As often as programs ask: what is put right without an entry (a line of the plan, the weather) is newer within it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Age:
    """The age of the events of a job.

    Args:
        count: moments since the job was announced, 0 or more.
        at: the last of them, local time.
    """

    count: int
    at: datetime


def age_of(job: Job, records: ClubRecords, as_of: datetime, book: WeatherBook) -> Age:
    """Count the hours since a job was announced, the entries of the log since then, and that it was withdrawn.

    Assumes that the job was announced by the moment. With more records, or later, neither part becomes less. It stands
    still when so long nothing was entered of the job that nothing of it is followed any more.

    Args:
        job: the job.
        records: the club's records.
        as_of: the moment, aware.
        book: the club's weather, with which the records were cut down to what is near the job.

    Returns:
        The age.
    """
    zone = records.club.time_zone
    begins = datetime.combine(job.announced, time(0), tzinfo=zone).astimezone(UTC)
    until = min(as_of.astimezone(UTC), _followed_until(job, records_near(records, job.id, book)))
    first, end = (bisect_right(records.entries, at, key=_entered_at) for at in (begins, until))
    hours, entered = (until - begins) // _STEP, records.entries[first:end]
    last = [begins + hours * _STEP, *map(_entered_at, entered[-1:])]
    withdrawn = [job.withdrawn.at.astimezone(UTC)] if job.withdrawn is not None else []
    withdrawn = [at for at in withdrawn if begins < at <= until]
    count = hours + len(entered) + len(withdrawn)
    return Age(count=count, at=max(last + withdrawn).astimezone(zone))


def _entered_at(entry: Entry) -> datetime:
    return entry.head.at.astimezone(UTC)


def _followed_until(job: Job, near: ClubRecords) -> datetime:
    days = [job.announced, job.starts]
    for entry in near.entries:
        if getattr(entry, "job", "") == job.id:
            days += [entry.head.at.date(), getattr(entry, "starts", None) or job.starts]
    if job.withdrawn is not None:
        days.append(job.withdrawn.at.date())
    last = max(days) + timedelta(days=FOLLOWED_DAYS)
    return datetime.combine(last, time(0), tzinfo=near.club.time_zone).astimezone(UTC)
