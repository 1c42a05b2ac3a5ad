"""The curve of healing crosses 5 % and 2 % on the very days that the notices name."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from datetime import date, timedelta
from pathlib import Path

import pytest

from swardcast.compose import Bulletin
from swardcast.outlook.curve import Curve, Drawn, curve_of, drawn_works, seen_of
from swardcast.outlook.memory import assess_jobs
from swardcast.outlook.states import DateRange, JobOutlook, Milestone, Work
from swardcast.outlook.weather_book import WeatherBook
from swardcast.outlook.weather_view import WeatherView
from swardcast.records.folder import ClubRecords
from swardcast.turf.ensemble import HORIZON_DAYS
from swardcast.turf.healing import HOLES_CLOSED, SETTLED
from tests.conftest import DEMO_AS_OF
from tests.notices.many_jobs import clubs
from tests.outlook.small_club import HOLES_AND_SAND, SmallClub, moment

MOMENTS = ("2027-05-12 09:00", "2027-08-25 12:00", "2027-09-03 18:00", "2027-09-14 09:30", "2027-10-05 08:00")
OVER = (Work.BACK_TO_NORMAL, Work.CALLED_OFF)
ROUNDING = 1e-9  # of a share, as the days have it


def _crossings(curve: Curve, share: float) -> list[date | None]:
    """The first day on which each line is at a share or below it."""
    lines = ("low", "likely", "high")
    return [next((one.day for one in curve if getattr(one, line) <= share + ROUNDING), None) for line in lines]


def _named(given: DateRange) -> list[date | None]:
    return [given.early, given.likely, given.allow_until]


def _checked(jobs: Mapping[str, JobOutlook], view: WeatherView | None) -> Iterator[str]:
    """Compare the curve of each job that is not over with the job's own dates; gives the jobs that have one."""
    assert view is not None
    for name, job in jobs.items():
        drawn = drawn_works(job)
        if drawn is None or job.work in OVER:
            continue
        curve = curve_of(drawn, view, drawn.begins + timedelta(days=HORIZON_DAYS))
        for milestone, share in ((Milestone.SETTLED, SETTLED), (Milestone.HOLES_CLOSED, HOLES_CLOSED)):
            named = [day if day is None or day <= curve[-1].day else None for day in _named(job.dates[milestone])]
            assert _crossings(curve, share) == named, (name, milestone)
        yield name


@pytest.mark.parametrize("said", MOMENTS)
def test_the_demos_curves_cross_on_the_days_of_its_notices(
    demo_bulletin_at: Callable[[str], Bulletin], demo_records: ClubRecords, said: str
) -> None:
    bulletin = demo_bulletin_at(said)
    view = WeatherBook(demo_records.club, demo_records.weather).at(bulletin.as_of)
    assert list(_checked(bulletin.outlook.jobs, view))


def test_so_do_those_of_every_kind_of_work_in_every_state(demo_records: ClubRecords) -> None:
    checked: list[str] = []
    for records in clubs(demo_records):
        book = WeatherBook(records.club, records.weather)
        checked += _checked(assess_jobs(records, DEMO_AS_OF, book), book.at(DEMO_AS_OF))
    assert len(checked) > 60


@pytest.fixture
def healing(tmp_path: Path) -> SmallClub:
    """Greens 1 and 2, done a week apart in steady warmth; green 2 was looked at."""
    club = SmallClub(tmp_path)
    club.job("work", "06-01", *HOLES_AND_SAND, surfaces="greens 1-2")
    club.done("work", "06-01", "surfaces: green 1", name="first")
    club.done("work", "06-08", "surfaces: green 2", name="second")
    club.log("look", "06-10", "observation", "job: work", "surfaces: greens 1-2", "disruption left: 50 %")
    club.log("at-one", "06-12", "observation", "job: work", "surfaces: green 1", "turf cover: 97 %")
    return club


def _drawn(club: SmallClub, day: str) -> tuple[Drawn, WeatherView]:
    records = club.records()
    book = WeatherBook(records.club, records.weather)
    drawn, view = drawn_works(assess_jobs(records, moment(day), book)["work"]), book.at(moment(day))
    assert drawn is not None
    assert view is not None
    return drawn, view


def test_it_begins_when_the_last_surface_has_been_worked_on_and_shows_that_one(healing: SmallClub) -> None:
    drawn, view = _drawn(healing, "06-08")
    (first, *_) = curve_of(drawn, view, date(2027, 6, 20))
    assert first.day == date(2027, 6, 8)
    assert first.low == first.likely == first.high == pytest.approx(drawn.recoveries[1].day_zero)


def test_the_band_is_in_order_and_narrower_in_the_past_than_at_the_end(healing: SmallClub) -> None:
    drawn, view = _drawn(healing, "06-14")
    curve = curve_of(drawn, view, date(2027, 7, 20))
    assert [one.day for one in curve] == [date(2027, 6, 8) + timedelta(days=place) for place in range(43)]
    assert all(one.low <= one.likely <= one.high for one in curve)


def test_what_was_seen_is_a_share_of_the_surface(healing: SmallClub) -> None:
    """Half of the first marks is half of what day 0 disturbed; 97 % cover leaves 3 %, on a green that was further on."""
    drawn, view = _drawn(healing, "06-14")
    marks, cover = seen_of(drawn, view)
    assert (marks.day, cover.day) == (date(2027, 6, 10), date(2027, 6, 12))
    assert marks.share == pytest.approx(0.5 * max(one.day_zero for one in drawn.recoveries))
    assert cover.share == pytest.approx(0.03)
    assert (marks.is_of_the_last, cover.is_of_the_last) == (True, False)


def test_where_one_surface_has_no_computed_healing_there_is_no_curve(demo_bulletin: Bulletin) -> None:
    without = {name for name, job in demo_bulletin.outlook.jobs.items() if drawn_works(job) is None}
    assert {"trees-16-2027", "bunkers-resanding-2027", "tees-returfing-2027", "fairways-deep-tining-2027"} <= without
