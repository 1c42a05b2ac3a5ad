"""The age of events: counted by two searches in the log, and the same as by counting each entry of it."""

from __future__ import annotations

from datetime import UTC, datetime, time, timedelta

from swardcast.notices.calendar_age import age_of
from swardcast.outlook.story_moments import FOLLOWED_DAYS
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.log import PlanChange
from swardcast.records.plan import Job


def counted(job: Job, records: ClubRecords, as_of: datetime) -> tuple[int, datetime]:
    zone = records.club.time_zone
    begins = datetime.combine(job.announced, time(0), tzinfo=zone)
    own = [entry for entry in records.entries if getattr(entry, "job", "") == job.id]
    days = [job.announced, job.starts, *(entry.head.at.date() for entry in own)]
    days += [entry.starts for entry in own if isinstance(entry, PlanChange) and entry.starts is not None]
    followed = datetime.combine(max(days) + timedelta(days=FOLLOWED_DAYS), time(0), tzinfo=zone)
    until = min(as_of.timestamp(), followed.timestamp())
    entered = [e.head.at for e in records.entries if begins.timestamp() < e.head.at.timestamp() <= until]
    hours = int((until - begins.timestamp()) // 3600)
    last = max([begins.timestamp() + 3600 * hours, *(at.timestamp() for at in entered)])
    return hours + len(entered), datetime.fromtimestamp(last, UTC)


def test_every_hour_and_every_entry_of_the_log_counts(demo_records: ClubRecords) -> None:
    book = WeatherBook(demo_records.club, demo_records.weather)
    for month in range(1, 13):
        as_of = datetime(2027, month, 14, 9, 30, tzinfo=demo_records.club.time_zone)
        for job in demo_records.jobs.values():
            if job.announced <= as_of.date() and job.withdrawn is None:
                age = age_of(job, demo_records, as_of, book)
                assert (age.count, age.at) == counted(job, demo_records, as_of)
