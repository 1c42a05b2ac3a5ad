"""Readings through a day become its lowest, highest and rain, whatever their order and the clock's changes."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.records.readings import DayOfWeather, RainCount, Reading, bounds_of_day, days_of_readings

LONDON, DAY = ZoneInfo("Europe/London"), date(2027, 9, 1)
TEMPERATURES = st.lists(st.integers(-300, 400).map(lambda tenths: tenths / 10), min_size=24, max_size=24)


def hourly(values: list[float], rain_mm: float | None = None) -> list[Reading]:
    start, _ = bounds_of_day(DAY, LONDON)
    return [
        Reading(at=start + timedelta(hours=hour), lowest_c=value, highest_c=value, rain_mm=rain_mm)
        for hour, value in enumerate(values)
    ]


@given(values=TEMPERATURES, order=st.permutations(range(24)))
def test_the_same_readings_in_any_order_give_the_same_day(values: list[float], order: list[int]) -> None:
    readings = hourly(values, 0.3)
    shuffled = [readings[place] for place in order]
    assert days_of_readings(shuffled, LONDON) == days_of_readings(readings, LONDON)


@given(values=TEMPERATURES)
def test_the_mean_lies_half_way_between_lowest_and_highest(values: list[float]) -> None:
    day = days_of_readings(hourly(values), LONDON).days[DAY]
    assert (day.tmin_c, day.tmax_c) == (min(values), max(values))
    assert day.tmean_c == pytest.approx((min(values) + max(values)) / 2)


@given(values=TEMPERATURES, missing=st.sets(st.integers(0, 23), max_size=24))
def test_a_day_counts_when_no_stretch_of_more_than_three_hours_is_without_a_reading(
    values: list[float], missing: set[int]
) -> None:
    readings = [reading for hour, reading in enumerate(hourly(values)) if hour not in missing]
    left = [-0.0, *sorted(set(range(24)) - missing), 24.0]
    longest = max(later - earlier for earlier, later in pairwise(left))
    made = days_of_readings(readings, LONDON)
    assert (DAY in made.days) == (longest <= 3 and len(readings) > 0)
    assert (DAY in made.incomplete) == (longest > 3 and len(readings) > 0)


ZONES = ["Europe/London", "Australia/Lord_Howe", "Asia/Kathmandu", "America/St_Johns", "Pacific/Apia"]


@given(minutes=st.integers(0, 50_000_000), zone=st.sampled_from(ZONES))
def test_each_moment_lies_within_its_local_day(minutes: int, zone: str) -> None:
    at = datetime(2000, 1, 1, tzinfo=UTC) + timedelta(minutes=minutes)
    day = at.astimezone(ZoneInfo(zone)).date()
    start, end = bounds_of_day(day, ZoneInfo(zone))
    assert start <= at < end


@pytest.mark.parametrize(("day", "hours"), [(date(2027, 3, 28), 23), (date(2027, 10, 31), 25), (DAY, 24)])
def test_a_day_has_23_or_25_hours_when_the_clocks_change(day: date, hours: int) -> None:
    start, end = bounds_of_day(day, LONDON)
    assert end - start == timedelta(hours=hours)


def test_rain_is_added_up_or_taken_at_its_highest_as_the_station_counts_it() -> None:
    """Rain read at midnight fell before it, so 23 of the 24 rows and the next midnight count."""
    readings = hourly([10.0] * 24)
    counted = [
        Reading(at=reading.at, lowest_c=10, highest_c=10, rain_mm=float(hour)) for hour, reading in enumerate(readings)
    ]
    next_midnight = Reading(at=readings[-1].at + timedelta(hours=1), rain_mm=24.0)
    both = [*counted, next_midnight]
    assert days_of_readings(both, LONDON).days[DAY].rain_mm == sum(range(25))
    assert days_of_readings(both, LONDON, rain=RainCount.SINCE_MIDNIGHT).days[DAY].rain_mm == 24.0


def test_rain_that_was_not_read_all_day_is_not_known() -> None:
    readings = hourly([10.0] * 24)
    some = [Reading(at=reading.at, lowest_c=10, highest_c=10, rain_mm=1.0) for reading in readings[:12]]
    assert days_of_readings([*some, *readings[12:]], LONDON).days == {DAY: DayOfWeather(tmin_c=10, tmax_c=10)}
