"""Days are added to the club's files; what the club measured stays as it is, to the byte."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.errors import Problem
from swardcast.fetching.merging import (
    days_csv,
    forecast_csv,
    history_name,
    merged_observed,
    missing_years,
    sources_yaml,
    thanked,
)
from swardcast.reading.sources_file import sources_from
from swardcast.reading.weather_files import DailyWeather, daily_weather_from
from swardcast.reading.yaml_text import read_yaml
from swardcast.records.readings import DayOfWeather
from swardcast.records.weather import WeatherSource

SECOND, THIRD, FOURTH = date(2027, 9, 2), date(2027, 9, 3), date(2027, 9, 4)
COOL = DayOfWeather(tmin_c=5.0, tmax_c=15.0, rain_mm=12.7)
DAYS = st.dictionaries(
    st.dates(date(2027, 1, 1), date(2027, 12, 31)),
    st.builds(
        lambda low, more, rain: DayOfWeather(tmin_c=low, tmax_c=low + more, rain_mm=rain),
        st.integers(-200, 250).map(lambda tenths: tenths / 10),
        st.integers(0, 200).map(lambda tenths: tenths / 10),
        st.none() | st.integers(0, 900).map(lambda tenths: tenths / 10),
    ),
    max_size=12,
)


def read(text: str) -> DailyWeather:
    days, problems = DailyWeather(), list[Problem]()
    daily_weather_from(text, file="observed.csv", into=days, problems=problems)
    assert problems == []
    return days


def test_a_file_that_is_not_there_is_made_with_our_own_columns() -> None:
    merged = merged_observed("", {THIRD: COOL, SECOND: DayOfWeather(tmin_c=4.04, tmax_c=9.96)})
    assert merged.text == "date,tmin_c,tmax_c,rain_mm\n2027-09-02,4.0,10.0,\n2027-09-03,5.0,15.0,12.7\n"
    assert merged.added == (SECOND, THIRD)


def test_new_days_go_between_the_old_ones_and_the_old_lines_stay_to_the_byte() -> None:
    before = "date, tmax_c, tmin_c\r\n2027-09-02,  17.25 ,8\r\n2027-09-04,16,7.5\r\n"
    merged = merged_observed(before, {SECOND: COOL, THIRD: COOL})
    assert merged.text == (
        "date, tmax_c, tmin_c\r\n2027-09-02,  17.25 ,8\r\n2027-09-03,15.0,5.0\r\n2027-09-04,16,7.5\r\n"
    )
    assert merged.added == (THIRD,)


def test_the_mark_that_some_programs_put_before_a_text_stays() -> None:
    merged = merged_observed("\ufeffdate,tmean_c\n2027-09-02,12\n", {THIRD: COOL})
    assert merged.text == "\ufeffdate,tmean_c\n2027-09-02,12\n2027-09-03,10.0\n"


def test_a_file_in_fahrenheit_and_inches_gets_fahrenheit_and_inches() -> None:
    """5 C is 41 F, 15 C is 59 F, 12.7 mm are half an inch (NIST SP 811)."""
    merged = merged_observed("date,tmin_f,tmax_f,rain_in\n2027-09-02,50,68,0\n", {THIRD: COOL})
    assert merged.text.splitlines()[-1] == "2027-09-03,41.0,59.0,0.50"


def test_a_file_of_means_gets_half_of_lowest_plus_highest() -> None:
    merged = merged_observed("date,tmean_c,rain_mm\n2027-09-02,12,\n", {THIRD: DayOfWeather(tmin_c=5, tmax_c=15)})
    assert merged.text.splitlines()[-1] == "2027-09-03,10.0,"


def test_a_row_without_any_temperature_is_filled_and_its_rain_stays() -> None:
    merged = merged_observed("date,tmin_c,tmax_c,rain_mm\n2027-09-03,M,,3.4\n", {THIRD: COOL})
    assert merged.text.splitlines()[-1] == "2027-09-03,5.0,15.0,3.4"
    assert (merged.added, merged.kept) == ((THIRD,), ())


def test_a_row_with_one_of_two_temperatures_is_left_as_it_is_and_told() -> None:
    before = "date,tmin_c,tmax_c,rain_mm\n2027-09-03,6.1,-,3.4\n"
    merged = merged_observed(before, {THIRD: COOL})
    assert (merged.text, merged.added, merged.kept) == (before, (), (THIRD,))


def test_days_out_of_order_are_left_where_they_are_and_new_ones_follow() -> None:
    before = "date,tmin_c,tmax_c\n2027-09-04,7,16\n2027-09-02,8,17\n"
    merged = merged_observed(before, {THIRD: COOL})
    assert merged.text == before + "2027-09-03,5.0,15.0\n"


@given(measured=DAYS, fetched=DAYS)
def test_a_measured_day_never_changes_and_a_lacking_one_is_there_afterwards(
    measured: dict[date, DayOfWeather], fetched: dict[date, DayOfWeather]
) -> None:
    before = days_csv(measured)
    merged = merged_observed(before, fetched)
    after = read(merged.text)
    assert set(merged.added) == set(fetched) - set(measured)
    assert set(after.tmean_c) == set(measured) | set(fetched)
    assert set(before.splitlines()) <= set(merged.text.splitlines())
    for day in merged.added:
        assert after.tmean_c[day] == pytest.approx(fetched[day].tmean_c, abs=0.06)


@given(measured=DAYS, fetched=DAYS)
def test_adding_the_same_days_again_changes_nothing(
    measured: dict[date, DayOfWeather], fetched: dict[date, DayOfWeather]
) -> None:
    once = merged_observed(days_csv(measured), fetched)
    again = merged_observed(once.text, fetched)
    assert (again.text, again.added) == (once.text, ())


@given(fetched=DAYS)
def test_the_order_in_which_days_come_changes_nothing(fetched: dict[date, DayOfWeather]) -> None:
    backwards = dict(reversed(fetched.items()))
    assert merged_observed("", fetched) == merged_observed("", backwards)
    assert forecast_csv(fetched) == forecast_csv(backwards)


def test_whole_past_years_that_are_missing_are_found() -> None:
    assert missing_years([], date(2027, 9, 14), 30) == (date(1997, 1, 1), date(2026, 12, 31))
    there = [date(1997, 1, 1) + timedelta(days=place) for place in range(10957)]  # 30 years with 7 leap days
    assert missing_years(there, date(2027, 9, 14), 30) is None
    assert missing_years(there, date(2028, 1, 3), 30) == (date(2027, 1, 1), date(2027, 12, 31))
    assert missing_years(there[:-2], date(2027, 9, 14), 30) == (date(2026, 12, 30), date(2026, 12, 31))
    assert missing_years([], date(2027, 9, 14), 0) is None


def test_history_is_named_by_its_years_or_by_its_days() -> None:
    assert history_name("nasa-power", {date(1997, 1, 1): COOL, date(2026, 12, 31): COOL}) == "nasa-power-1997-2026.csv"
    assert history_name("open-meteo", {date(2026, 12, 30): COOL}) == "open-meteo-20261230-20261230.csv"


def _source(name: str, used_for: str = "the forecast", credit: str = 'Thanks: "all" & <more> # here') -> WeatherSource:
    return WeatherSource(
        name=name,
        used_for=used_for,
        credit=credit,
        address="https://weather.example/",
        licence="CC BY 4.0",
        licence_address="https://creativecommons.org/licenses/by/4.0/",
        fresh_until=datetime(2027, 9, 14, 6, 55, 12, tzinfo=UTC),
        last_modified="Tue, 14 Sep 2027 05:52:00 GMT",
    )


def test_the_record_of_sources_reads_back_as_it_was_written() -> None:
    sources = (_source("A"), _source("B", credit="Données de l'institut"))
    problems: list[Problem] = []
    document = read_yaml(sources_yaml(sources), file="weather/sources.yaml", problems=problems)
    assert document is not None
    assert sources_from(document, file="weather/sources.yaml", problems=problems) == sources
    assert problems == []


def test_a_service_is_thanked_once_for_each_use_with_its_newest_record() -> None:
    older, newer, other = _source("A", credit="old"), _source("A", credit="new"), _source("A", "past days")
    assert thanked([older, other], [newer]) == (other, newer)
    assert sources_yaml(()) == ""
