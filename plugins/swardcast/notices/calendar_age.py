"""How old the events of a job are: what tells a calendar program which of two versions is the newer one.

A program takes an event again when its SEQUENCE is higher, or its DTSTAMP later at the same SEQUENCE (RFC 5546, section
2.1.5), and keeps what it has otherwise. An entry that is typed late rewrites the past, so that what was told by today's
records can become less than it was: to count that would leave programs with what was wrong. Counted are therefore
moments that no later record takes away, whether or not anything changed at them.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta
from typing import Final

from swardcast.outlook.story import FOLLOWED_DAYS
from swardcast.records.folder import ClubRecords
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


def age_of(job: Job, records: ClubRecords, as_of: datetime) -> Age:
    """Count the hours since a job was announced, the entries of the log since then, and that it was withdrawn.

    Assumes that the job was announced by the moment. With more records, or later, neither part becomes less. It stands
    still when so long nothing was entered of the job that nothing of it is followed any more.

    Args:
        job: the job.
        records: the club's records.
        as_of: the moment, aware.

    Returns:
        The age.
    """
    zone = records.club.time_zone
    begins = datetime.combine(job.announced, time(0), tzinfo=zone).astimezone(UTC)
    until = min(as_of.astimezone(UTC), _followed_until(job, records))
    entered = [entry.head.at.astimezone(UTC) for entry in records.entries]
    if job.withdrawn is not None:
        entered.append(job.withdrawn.at.astimezone(UTC))
    counted = [at for at in entered if begins < at <= until]
    hours = (until - begins) // _STEP
    last = max([begins + hours * _STEP, *counted])
    return Age(count=hours + len(counted), at=last.astimezone(zone))


def _followed_until(job: Job, records: ClubRecords) -> datetime:
    days = [job.announced, job.starts]
    for entry in records.entries:
        if getattr(entry, "job", "") == job.id:
            days += [entry.head.at.date(), getattr(entry, "starts", None) or job.starts]
    if job.withdrawn is not None:
        days.append(job.withdrawn.at.date())
    last = max(days) + timedelta(days=FOLLOWED_DAYS)
    return datetime.combine(last, time(0), tzinfo=records.club.time_zone).astimezone(UTC)
