"""How long a job begun on a day disturbs play: what a search for days will be built on."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime
from pathlib import Path

import numpy as np

from swardcast.outlook.states import Milestone
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.disturbance import begun_on, disturbances
from swardcast.records.folder import ClubRecords
from tests.outlook.small_club import HOLES_AND_SAND, SmallClub, moment


def test_a_job_begun_on_another_day_is_the_same_job_on_that_day_and_those_surfaces(demo_records: ClubRecords) -> None:
    job = demo_records.jobs["greens-renovation-2027"]
    moved = begun_on(job, date(2027, 4, 1), ("green-3", "green-4"))
    assert (moved.starts, moved.announced, moved.surfaces) == (
        date(2027, 4, 1),
        date(2027, 4, 1),
        ("green-3", "green-4"),
    )
    assert moved.operations == job.operations
    assert begun_on(job, date(2027, 9, 6)).surfaces == job.surfaces
    assert begun_on(job, date(2027, 9, 6)).announced == job.announced


def test_days_count_from_the_first_day_to_the_last_surface_for_each_member_and_error(demo_records: ClubRecords) -> None:
    as_of = datetime(2027, 5, 20, 8, tzinfo=demo_records.club.time_zone)
    job = demo_records.jobs["greens-renovation-2027"]
    book = WeatherBook(demo_records.club, demo_records.weather)
    (found,) = disturbances(demo_records, as_of, book, [job], instead_of=job.id)
    days = found.days[Milestone.BACK_TO_NORMAL]
    assert days.shape == (90, 15)  # 30 past years, each from three days, and 15 errors of the model
    last = max(work.finish.likely for work in found.outlook.surfaces if work.finish.likely is not None)
    assert float(days.min()) >= (last - job.starts).days
    likely = found.outlook.dates[Milestone.BACK_TO_NORMAL].likely
    assert likely is not None
    assert np.ceil(np.quantile(days, 0.5, method="inverted_cdf")) == (likely - job.starts).days


def test_many_days_are_asked_in_one_go_and_each_comes_out_as_alone(demo_records: ClubRecords) -> None:
    as_of = datetime(2027, 5, 20, 8, tzinfo=demo_records.club.time_zone)
    job = demo_records.jobs["greens-renovation-2027"]
    asked = [replace(begun_on(job, date(2027, month, 6)), id=f"on-{month}") for month in (7, 9, 10)]
    book = WeatherBook(demo_records.club, demo_records.weather)
    together = disturbances(demo_records, as_of, book, asked, instead_of=job.id)
    for one, found in zip(asked, together, strict=True):
        fresh = WeatherBook(demo_records.club, demo_records.weather)
        (alone,) = disturbances(demo_records, as_of, fresh, [one], instead_of=job.id)
        np.testing.assert_allclose(found.days[Milestone.SETTLED], alone.days[Milestone.SETTLED], atol=1e-9)
    expected = [found.expected_days() for found in together]
    assert expected[2] is not None
    assert expected[1] is not None
    assert expected[2] > expected[1]  # October is colder than September


def test_a_closure_that_the_plan_tells_disturbs_as_long_as_it_lasts(tmp_path: Path) -> None:
    club = SmallClub(tmp_path / "club")
    club.job("holes", "06-14", *HOLES_AND_SAND)
    closed = "    reopens after: {from: 40 to 60 days, source: our own experience}\n"
    club.job("closed", "06-14", *HOLES_AND_SAND, more=closed)
    records = club.records()
    book = WeatherBook(records.club, records.weather)
    (found,) = disturbances(replace(records, jobs={}), moment("06-07"), book, [records.jobs["closed"]])
    assert float(found.days[Milestone.BACK_TO_NORMAL].min()) == 50.0
    normal = found.outlook.dates[Milestone.BACK_TO_NORMAL].likely
    assert normal == date(2027, 8, 3)  # 50 days after 14 June


def test_what_is_not_computed_has_no_days(tmp_path: Path) -> None:
    club = SmallClub(tmp_path / "club")
    usual = "    normal after: {from: 4 to 8 weeks, source: our own experience}\n"
    club.job("turf", "06-14", "re-turfing", more=usual)
    records = club.records()
    book = WeatherBook(records.club, records.weather)
    (found,) = disturbances(replace(records, jobs={}), moment("06-07"), book, [records.jobs["turf"]])
    assert (found.days, found.expected_days(), found.chance_on([date(2027, 6, 20)])) == ({}, None, None)
