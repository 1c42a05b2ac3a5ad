"""Day and time are read as the pattern says, and what is no moment is none."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, timezone

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.reading.stamps import stamp_pattern

NOON = datetime(2027, 8, 23, 14, 5)  # noqa: DTZ001 - the clock of a station


@pytest.mark.parametrize(
    ("written", "text"),
    [
        ("year-month-day hour:minute", "2027-08-23 14:05"),
        ("year-month-day hour:minute", "2027-08-23  14:05:00"),
        ("year-month-day hour:minute:second", "2027-08-23 14:05:00.0"),
        ("year-month-dayThour:minute", "2027-08-23T14:05"),
        ("day/month/year hour:minute", "23/8/27 14:05"),
        ("month/day/year hour:minute am/pm", "8/23/2027 2:05 PM"),
        ("month/day/year hour:minuteam/pm", "08/23/27 02:05p"),
        ("Day.Month.Year Hour:Minute", "23.08.2027 14:05"),
        ("day month year hour.minute", "23 August 2027 14.05"),
        ("yearmonthday hourminute", "20270823 1405"),
        ("day-month-year hour:minute", "23-Aug-2027 14:05"),
    ],
)
def test_one_moment_in_many_hands(written: str, text: str) -> None:
    assert stamp_pattern(written).read(text) == NOON


@pytest.mark.parametrize(
    ("text", "offset"),
    [
        ("2027-08-23 14:05Z", UTC),
        ("2027-08-23 14:05 +01:00", timezone(timedelta(hours=1))),
        ("2027-08-23 14:05-0330", timezone(-timedelta(hours=3, minutes=30))),
    ],
)
def test_an_offset_behind_the_time_is_kept(text: str, offset: timezone) -> None:
    assert stamp_pattern("year-month-day hour:minute").read(text) == NOON.replace(tzinfo=offset)


def test_24_00_is_the_midnight_that_ends_the_day() -> None:
    read = stamp_pattern("year-month-day hour:minute").read("2027-12-31 24:00")
    assert read == datetime(2028, 1, 1)  # noqa: DTZ001 - the clock of a station


def test_midnight_and_midday_of_a_twelve_hour_clock() -> None:
    pattern = stamp_pattern("year-month-day hour:minute am/pm")
    assert pattern.read("2027-08-23 12:05 am") == NOON.replace(hour=0)
    assert pattern.read("2027-08-23 12:05 pm") == NOON.replace(hour=12)


@pytest.mark.parametrize(
    ("written", "text"),
    [
        ("year-month-day hour:minute", "2027-08-23 24:05"),
        ("year-month-day hour:minute", "2027-08-23 25:00"),
        ("year-month-day hour:minute", "2027-08-23 14:60"),
        ("year-month-day hour:minute", "2027-08-23"),
        ("year-month-day", "2027-08-23 14:05"),
        ("year-month-day", "2027-02-29"),
        ("day month year", "23 Foo 2027"),
        ("year-month-day hour:minute am/pm", "2027-08-23 14:05 pm"),
        ("year-month-day hour:minute am/pm", "2027-08-23 0:05 am"),
    ],
)
def test_what_is_no_such_moment_is_none(written: str, text: str) -> None:
    assert stamp_pattern(written).read(text) is None


@given(moment=st.datetimes(datetime(2000, 1, 1), datetime(2099, 12, 31)))  # noqa: DTZ001 - the clock of a station
def test_every_moment_reads_back(moment: datetime) -> None:
    minute = moment.replace(second=0, microsecond=0)
    assert stamp_pattern("day/month/year hour:minute").read(f"{minute:%d/%m/%Y %H:%M}") == minute
    assert stamp_pattern("month/day/year hour:minute am/pm").read(f"{minute:%m/%d/%y %I:%M %p}") == minute


@pytest.mark.parametrize(
    "written", ["day/month/year", "year-month-day hour:minute", "day month year hour:minute am/pm"]
)
def test_the_sample_in_a_message_is_written_the_way_it_shows(written: str) -> None:
    pattern = stamp_pattern(written)
    assert pattern.has_time == ("hour" in written)
    assert pattern.read(pattern.sample) is not None
