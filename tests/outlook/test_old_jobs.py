"""A job keeps its dates however long ago it was."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

from swardcast.outlook.memory import assess_jobs
from swardcast.outlook.states import Milestone
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.log import BackToNormal


def test_a_year_later_the_dates_of_a_healed_job_are_those_of_the_autumn_after_it(demo_records: ClubRecords) -> None:
    """All weather up to the dates was known by 1 November 2027; what comes later cannot change the sum."""
    unsaid = tuple(entry for entry in demo_records.entries if not isinstance(entry, BackToNormal))
    records = replace(demo_records, entries=unsaid)
    autumn = datetime(2027, 11, 1, 9, 0, tzinfo=records.club.time_zone)
    found = []
    for moment in (autumn, autumn + timedelta(days=400)):
        job = assess_jobs(records, moment, WeatherBook(records.club, records.weather))["greens-solid-tining-2027"]
        found.append({milestone: job.dates[milestone] for milestone in Milestone})
    assert found[0] == found[1]
