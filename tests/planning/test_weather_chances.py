"""What past years say of days of work, counted by hand."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from swardcast.planning.weather_chances import MOST_SPARE_DAYS, PastWork
from swardcast.records.blocked import DaysWithoutWork
from swardcast.records.weather import Weather

LIMITS = DaysWithoutWork(rain_mm=5.0, frost_c=0.0)
MONDAY, THURSDAY = date(2027, 6, 7), date(2027, 6, 10)


def _weather(rain: dict[str, float], lowest: dict[str, float], years: range = range(2024, 2027)) -> Weather:
    """Three years of dry days at 9 C in the morning, but for those named."""
    days = [date(year, 1, 1) + timedelta(days=place) for year in years for place in range(365)]
    return Weather(
        observed_c={},
        rain_mm={},
        history_c=dict.fromkeys(days, 12.0),
        forecasts=(),
        history_rain_mm=dict.fromkeys(days, 0.0) | {date.fromisoformat(day): mm for day, mm in rain.items()},
        history_lowest_c=dict.fromkeys(days, 9.0) | {date.fromisoformat(day): c for day, c in lowest.items()},
    )


def _weekday(day: date) -> bool:
    return day.weekday() < 5


def test_each_past_year_tries_the_work_on_the_same_calendar_days() -> None:
    """Three days from 7 June: in 2024 rain on the second costs a day, in 2026 the first three are lost."""
    rain = {"2024-06-08": 9.0, "2024-06-11": 30.0, "2026-06-07": 5.0, "2026-06-08": 6.0, "2026-06-09": 7.0}
    past = PastWork(weather=_weather(rain, {}), limits=LIMITS, before=2027)
    chances = past.chances(MONDAY, 3, is_worked=_weekday)
    assert chances is not None
    # 2024: Monday 7 dry, Tuesday 8 lost, Wednesday, Thursday dry. 2026: Monday to Wednesday lost.
    assert chances.spare_days == (1, 0, 3)
    assert (chances.dry, chances.frost, chances.years) == (2, 0, 3)


def test_rain_on_a_weekend_off_is_no_loss_and_a_lost_friday_goes_to_the_tuesday() -> None:
    """From Thursday 10 June: Friday 11 is lost in 2025, Saturday 12 is wet in 2024, and Tuesday 15 would be needed."""
    rain = {"2024-06-12": 40.0, "2025-06-11": 8.0, "2025-06-15": 8.0}
    past = PastWork(weather=_weather(rain, {}), limits=LIMITS, before=2027)
    chances = past.chances(THURSDAY, 3, is_worked=_weekday)
    assert chances is not None
    assert chances.spare_days == (0, 2, 0)  # 2025: Friday, then Tuesday is wet too, so that Wednesday ends it


def test_a_frost_costs_a_day_at_the_limit_and_not_above_it() -> None:
    lowest = {"2024-06-07": 0.0, "2025-06-07": 0.1, "2026-06-07": -3.0}
    past = PastWork(weather=_weather({}, lowest), limits=LIMITS, before=2027)
    chances = past.chances(MONDAY, 1, is_worked=_weekday)
    assert chances is not None
    assert (chances.frost, chances.spare_days) == (2, (1, 0, 1))


def test_spare_days_are_enough_in_four_years_of_five() -> None:
    """Ten years, of which one needs 3 days, two need 1: none is enough in 7, one in 9, so that one it is."""
    rain = {"2017-06-07": 9.0, "2019-06-07": 9.0, "2021-06-07": 9.0, "2021-06-08": 9.0, "2021-06-09": 9.0}
    past = PastWork(weather=_weather(rain, {}, range(2017, 2027)), limits=LIMITS, before=2027)
    chances = past.chances(MONDAY, 1, is_worked=_weekday)
    assert chances is not None
    assert [chances.enough_in(spare) for spare in (0, 1, 2, 3)] == [7, 9, 9, 10]
    assert chances.often_enough == 1


def test_years_to_come_are_not_known_and_a_year_that_ends_too_early_does_not_count() -> None:
    past = PastWork(weather=_weather({}, {}), limits=LIMITS, before=2026)
    chances = past.chances(MONDAY, 2, is_worked=_weekday)  # older pytests keep a name that an assertion gives (:=)
    assert chances is not None
    assert chances.years == 2
    late = PastWork(weather=_weather({}, {}), limits=LIMITS, before=2027)
    chances = late.chances(date(2027, 12, 31), 2, is_worked=_weekday)  # 2026 is known up to its last day
    assert chances is not None
    assert chances.years == 2  # 2024 is a leap year, of which 365 days are known here
    assert len(chances.spare_days) == 1


def test_a_wet_place_loses_no_more_days_than_a_plan_can_have() -> None:
    wet = replace(LIMITS, rain_mm=0.0)  # every day counts as wet
    past = PastWork(weather=_weather({}, {}), limits=wet, before=2025)
    chances = past.chances(MONDAY, 1, is_worked=_weekday)
    assert chances is not None
    assert chances.spare_days == (MOST_SPARE_DAYS,)


@pytest.mark.parametrize("kept", ["rain", "frost", "nothing"])
def test_what_the_past_years_do_not_record_is_not_counted(kept: str) -> None:
    weather = _weather({"2024-06-07": 9.0}, {"2025-06-07": -2.0})
    if kept != "rain":
        weather = replace(weather, history_rain_mm={})
    if kept != "frost":
        weather = replace(weather, history_lowest_c={})
    chances = PastWork(weather=weather, limits=LIMITS, before=2027).chances(MONDAY, 1, is_worked=_weekday)
    told = None if chances is None else (chances.dry, chances.frost, chances.spare_days)
    assert told == {"rain": (2, None, (1, 0, 0)), "frost": (None, 1, (0, 1, 0)), "nothing": None}[kept]
