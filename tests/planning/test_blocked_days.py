"""Days on which a job cannot begin, each with its reason."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, time
from zoneinfo import ZoneInfo

import pytest

from swardcast.planning.blocked_days import Because, Blocked, days_of_work, work_calendar
from swardcast.planning.public_holidays import public_holidays
from swardcast.records.blocked import BlockedDays, ContractorDays, DaysWithoutWork
from swardcast.records.day_spans import DayInYear, DaySpan
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Kind
from swardcast.records.plan import Job
from swardcast.records.planning import Planning

ZONE = ZoneInfo("Europe/London")
MONDAY = date(2027, 8, 23)


def _span(first: tuple[int, int, int], last: tuple[int, int, int]) -> DaySpan:
    return DaySpan(
        first=DayInYear(year=first[0], month=first[1], day=first[2]),
        last=DayInYear(year=last[0], month=last[1], day=last[2]),
    )


def _at(day: date, hour: int, minute: int = 0) -> datetime:
    return datetime.combine(day, time(hour, minute), tzinfo=ZONE)


def _fixture(day: date, begins: datetime | None = None, ends: datetime | None = None) -> Fixture:
    return Fixture(id="m", series="m", name="Medal", first_day=day, last_day=day, starts_at=begins, ends_at=ends)


@pytest.fixture
def three_days(demo_records: ClubRecords) -> Job:
    """18 greens at 6 a day: three working days."""
    return demo_records.jobs["greens-renovation-2027"]


def _blocked(
    records: ClubRecords,
    job: Job,
    starts: date,
    without: DaysWithoutWork = DaysWithoutWork(),  # noqa: B008 - frozen
    fixtures: tuple[Fixture, ...] = (),
) -> tuple[Blocked, ...]:
    planned = replace(records, planning=replace(Planning(), days_without_work=without), fixtures=fixtures)
    return work_calendar(planned, starts, starts).blocked(job, starts)


def test_work_is_laid_out_over_working_days_as_a_notice_does(three_days: Job) -> None:
    friday = date(2027, 8, 27)
    assert days_of_work(three_days, MONDAY, (0, 1, 2, 3, 4)) == tuple(date(2027, 8, day) for day in (23, 24, 25))
    assert days_of_work(three_days, friday, (0, 1, 2, 3, 4)) == (friday, date(2027, 8, 30), date(2027, 8, 31))


def test_a_day_on_which_nothing_is_in_the_way_is_free(demo_records: ClubRecords, three_days: Job) -> None:
    assert _blocked(demo_records, three_days, MONDAY) == ()


@pytest.mark.parametrize(
    ("day", "name"),
    [
        ((2027, 8, 30), "Late Summer Bank Holiday"),  # the last Monday of August
        ((2027, 12, 27), "Christmas Day (observed)"),  # the 25th is a Saturday
    ],
)
def test_a_public_holiday_of_england_has_its_name(
    demo_records: ClubRecords, three_days: Job, day: tuple[int, int, int], name: str
) -> None:
    """Days after GOV.UK, "UK bank holidays": the last Monday of August; a substitute weekday for a weekend (from memory)."""
    (reason, *_) = _blocked(demo_records, three_days, date(*day), DaysWithoutWork(public_holidays="GB-ENG"))
    assert (reason.because, reason.words) == (Because.HOLIDAY, name)


def test_scotland_has_its_holiday_on_the_first_monday_of_august_instead() -> None:
    """Banking and Financial Dealings Act 1971, schedule 1 (from memory)."""
    first, last = date(2027, 8, 1), date(2027, 8, 31)
    august = [
        sorted(day.day for day in public_holidays(code, first, last) if day.month == 8)
        for code in ("GB-SCT", "GB-ENG", "")
    ]
    assert august == [[2], [30], []]


def test_work_that_would_run_into_a_blocked_day_cannot_begin(demo_records: ClubRecords, three_days: Job) -> None:
    away = BlockedDays(span=_span((2027, 8, 25), (2027, 8, 26)), why="half the crew is away")
    without = DaysWithoutWork(blocked=(away,))
    (reason,) = _blocked(demo_records, three_days, MONDAY, without)
    assert (reason.because, reason.day, reason.runs_into) == (Because.CLUB, date(2027, 8, 25), True)
    assert reason.words == "half the crew is away"
    (itself,) = _blocked(demo_records, three_days, date(2027, 8, 26), without)
    assert (itself.day, itself.runs_into) == (date(2027, 8, 26), False)
    assert _blocked(demo_records, three_days, date(2027, 8, 27), without) == ()


def test_a_weekend_within_the_work_is_not_in_the_way(demo_records: ClubRecords, three_days: Job) -> None:
    assert _blocked(demo_records, three_days, date(2027, 8, 26)) == ()
    assert [one.because for one in _blocked(demo_records, three_days, date(2027, 8, 28))] == [Because.WEEKDAY]


@pytest.mark.parametrize(
    ("begins", "ends", "is_in_the_way"),
    [
        (None, None, True),  # all day
        ((17, 30), (20, 30), False),  # after the crew has gone home
        ((13, 0), (17, 0), True),
        ((13, 0), None, True),
        ((16, 0), None, False),  # work ends at 4pm
        ((5, 0), (7, 0), False),  # before the work begins at 7am
    ],
)
def test_a_fixture_is_in_the_way_while_it_is_on_in_working_hours(
    demo_records: ClubRecords,
    three_days: Job,
    begins: tuple[int, int] | None,
    ends: tuple[int, int] | None,
    is_in_the_way: bool,
) -> None:
    medal = _fixture(
        MONDAY,
        _at(MONDAY, *begins) if begins is not None else None,
        _at(MONDAY, *ends) if ends is not None else None,
    )
    found = _blocked(demo_records, three_days, MONDAY, fixtures=(medal,))
    assert [(one.because, one.words) for one in found] == ([(Because.FIXTURE, "Medal")] if is_in_the_way else [])
    works = DaysWithoutWork(works_on_fixtures=True)
    assert _blocked(demo_records, three_days, MONDAY, works, (medal,)) == ()


def test_a_contractor_comes_on_his_days_for_his_kinds_of_work(demo_records: ClubRecords, three_days: Job) -> None:
    tining = ContractorDays(spans=(_span((2027, 8, 24), (2027, 8, 27)),), kinds=frozenset({Kind.HOLLOW_TINING}))
    digging = ContractorDays(spans=(_span((2027, 9, 1), (2027, 9, 1)),), kinds=frozenset({Kind.DRAINAGE_TRENCHING}))
    without = DaysWithoutWork(contractor=(tining, digging))
    (reason,) = _blocked(demo_records, three_days, MONDAY, without)
    assert (reason.because, reason.kind) == (Because.CONTRACTOR, Kind.HOLLOW_TINING)
    assert _blocked(demo_records, three_days, date(2027, 8, 24), without) == ()
    again = ContractorDays(spans=(_span((2027, 8, 23), (2027, 8, 23)),), kinds=frozenset({Kind.HOLLOW_TINING}))
    either = DaysWithoutWork(contractor=(tining, again))
    assert _blocked(demo_records, three_days, MONDAY, either) == ()


def test_light_is_too_short_in_december_and_long_enough_in_june(demo_records: ClubRecords, three_days: Job) -> None:
    """At 55.6 degrees north the day has some 7 hours in December and 17 and more in June (astronomical tables)."""
    without = DaysWithoutWork(least_daylight_h=9.0)
    assert [one.because for one in _blocked(demo_records, three_days, date(2027, 12, 20), without)] == [
        Because.DAYLIGHT
    ]
    assert _blocked(demo_records, three_days, date(2027, 6, 21), without) == ()


@pytest.mark.parametrize(
    ("span", "inside", "outside"),
    [
        (_span((2027, 8, 2), (2027, 8, 6)), [date(2027, 8, 2), date(2027, 8, 6)], [date(2027, 8, 7), date(2028, 8, 2)]),
        (
            DaySpan(first=DayInYear(month=7, day=1), last=DayInYear(month=8, day=31)),
            [date(2027, 7, 1), date(2031, 8, 31)],
            [date(2027, 6, 30), date(2027, 9, 1)],
        ),
        (
            DaySpan(first=DayInYear(month=11, day=15), last=DayInYear(month=2, day=10)),
            [date(2027, 12, 31), date(2028, 1, 1), date(2028, 2, 10), date(2027, 11, 15)],
            [date(2028, 2, 11), date(2027, 11, 14)],
        ),
    ],
)
def test_a_stretch_holds_its_days_of_one_year_or_of_every_year(
    span: DaySpan, inside: list[date], outside: list[date]
) -> None:
    assert all(map(span.holds, inside))
    assert not any(map(span.holds, outside))
