"""The documented answers of each service become days of the club; anything else is refused in one sentence."""

from __future__ import annotations

import copy
from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from swardcast.fetching import met_norway, open_meteo, power
from swardcast.fetching.service import Days, FetchError, Place
from swardcast.fetching.services import BY_NAME
from swardcast.records.readings import DayOfWeather
from swardcast.records.weather_setup import SERVICES
from tests.fetching import answers

LONDON = ZoneInfo("Europe/London")
TODAY = date(2027, 9, 14)
FIRST, LAST = date(2027, 9, 1), date(2027, 9, 3)
THREE_DAYS = {
    date(2027, 9, 1): (8.0, 17.0, 0.4),
    date(2027, 9, 2): (9.5, 18.1, 0.0),
    date(2027, 9, 3): (7.2, 14.8, 6.3),
}


def place(zone: str = "Europe/London", latitude: float = 55.6, longitude: float = -1.7) -> Place:
    return Place(
        latitude_deg=latitude, longitude_deg=longitude, elevation_m=18.0, zone=ZoneInfo(zone), contact="a@club.example"
    )


def test_every_service_of_club_yaml_has_an_adapter() -> None:
    assert tuple(BY_NAME) == SERVICES


def test_power_is_asked_for_the_point_and_the_days_in_local_solar_time() -> None:
    question = power.RECORD.question(place(), FIRST, LAST, False)
    assert question.address == "https://power.larc.nasa.gov/api/temporal/daily/point"
    assert question.query["parameters"] == "T2M_MIN,T2M_MAX,PRECTOTCORR"
    assert (question.query["start"], question.query["end"]) == ("20270901", "20270903")
    assert (question.query["latitude"], question.query["longitude"]) == ("55.6000", "-1.7000")
    assert question.query["time-standard"] == "LST"
    assert not question.names_contact


def test_power_gives_lowest_highest_and_rain() -> None:
    days = power.RECORD.days(answers.power(THREE_DAYS), place(), FIRST, LAST)
    assert days[date(2027, 9, 1)] == DayOfWeather(tmin_c=8.0, tmax_c=17.0, rain_mm=0.4)
    assert days[date(2027, 9, 1)].tmean_c == 12.5
    assert len(days) == 3


def test_the_fill_value_of_power_is_a_missing_day_or_missing_rain() -> None:
    told = {**THREE_DAYS, date(2027, 9, 2): (9.5, 18.1, answers.FILL), date(2027, 9, 3): (7.2, answers.FILL, 6.3)}
    days = power.RECORD.days(answers.power(told), place(), FIRST, LAST)
    assert date(2027, 9, 3) not in days
    assert days[date(2027, 9, 2)].rain_mm is None


def _power(change: Callable[[Any], object]) -> Any:
    answer = copy.deepcopy(answers.power(THREE_DAYS))
    change(answer)
    return answer


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (lambda a: a["geometry"].update(coordinates=[1.7, 55.6, 3.0]), "another place: latitude 55.6, longitude 1.7"),
        (lambda a: a["geometry"].update(coordinates=[]), "without the place"),
        (lambda a: a["header"].update(time_standard="UTC"), "days of UTC instead of local solar time"),
        (lambda a: a["parameters"]["T2M_MAX"].update(units="F"), "gave T2M_MAX in F instead of C"),
        (lambda a: a["parameters"].pop("PRECTOTCORR"), "gave PRECTOTCORR in no unit instead of mm/day"),
        (lambda a: a["properties"]["parameter"].pop("T2M_MIN"), "without T2M_MIN"),
        (lambda a: a["properties"].pop("parameter"), "properties.parameter is wrong or missing"),
        (lambda a: a.pop("header"), "header is wrong or missing"),
        (lambda a: a["properties"]["parameter"]["T2M_MIN"].update({"20270831": 8.0}), "2027-08-31, which was not asked for"),
        (lambda a: a["properties"]["parameter"]["T2M_MIN"].update({"2027-09-01": 8.0}), "'2027-09-01', which is no day"),
        (lambda a: a["properties"]["parameter"]["T2M_MAX"].update({"20270901": 91.0}), "8 to 91 C for 2027-09-01"),
        (lambda a: a["properties"]["parameter"]["T2M_MAX"].update({"20270901": 7.0}), "8 to 7 C for 2027-09-01"),
        (lambda a: a["properties"]["parameter"]["T2M_MAX"].update({"20270901": "17"}), "is wrong or missing"),
        (lambda a: a["properties"]["parameter"]["PRECTOTCORR"].update({"20270901": -3.0}), "-3 mm of rain"),
    ],
)  # fmt: skip
def test_an_odd_answer_of_power_is_refused(change: Callable[[Any], object], said: str) -> None:
    with pytest.raises(FetchError, match="NASA POWER") as refused:
        power.RECORD.days(_power(change), place(), FIRST, LAST)
    assert said in str(refused.value)


@pytest.mark.parametrize("answer", [None, [], "weather", 3, {}])
def test_json_that_is_no_answer_at_all_is_refused_by_each_service(answer: object) -> None:
    asked: list[Callable[[], Days]] = [
        lambda: power.RECORD.days(answer, place(), FIRST, LAST),
        lambda: open_meteo.RECORD.days(answer, place(), FIRST, LAST),
        lambda: open_meteo.FORECAST.days(answer, place(), TODAY),
        lambda: met_norway.FORECAST.days(answer, place(), TODAY),
    ]
    for days in asked:
        with pytest.raises(FetchError, match="not the documented one"):
            days()


def test_met_norway_is_asked_with_four_decimals_and_a_contact() -> None:
    question = met_norway.FORECAST.question(place(latitude=55.612345, longitude=-1.70006))
    assert question.query == {"lat": "55.6123", "lon": "-1.7001", "altitude": "18"}
    assert question.names_contact


def test_hours_of_utc_become_days_of_the_local_clock() -> None:
    """In British Summer Time 15 September runs from 23:00 UTC on the 14th to 23:00 UTC on the 15th."""
    start = datetime(2027, 9, 14, 22, tzinfo=UTC)
    temperatures = answers.hourly(start, 26, 12.0)
    temperatures[datetime(2027, 9, 14, 22, tzinfo=UTC)] = 30.0  # 23:00 on the 14th, local time
    temperatures[datetime(2027, 9, 14, 23, tzinfo=UTC)] = 4.0  # midnight, so the 15th
    temperatures[datetime(2027, 9, 15, 22, tzinfo=UTC)] = 20.0  # 23:00 on the 15th
    temperatures[datetime(2027, 9, 15, 23, tzinfo=UTC)] = -9.0  # midnight, so the 16th
    days = met_norway.FORECAST.days(answers.met_norway(temperatures), place(), TODAY)
    assert days == {date(2027, 9, 15): DayOfWeather(tmin_c=4.0, tmax_c=20.0)}


@pytest.mark.parametrize(("day", "hours"), [(date(2027, 3, 28), 23), (date(2027, 10, 31), 25)])
def test_a_day_on_which_the_clocks_change_has_all_its_hours(day: date, hours: int) -> None:
    """The clocks of the United Kingdom change on the last Sundays of March and October."""
    start = datetime(day.year, day.month, day.day, tzinfo=LONDON).astimezone(UTC)
    temperatures = answers.hourly(start, hours + 1, 10.0)
    temperatures[start + timedelta(hours=hours - 1)] = 15.0  # the last hour of the day
    temperatures[start + timedelta(hours=hours)] = 25.0  # the midnight that ends it
    days = met_norway.FORECAST.days(answers.met_norway(temperatures), place(), day)
    assert days == {day: DayOfWeather(tmin_c=10.0, tmax_c=15.0)}


@pytest.mark.parametrize(
    ("zone", "longitude"),
    [("Europe/London", -1.7), ("America/Denver", -105.0), ("Australia/Sydney", 151.0), ("Asia/Kolkata", 77.0)],
)
def test_six_hour_steps_make_a_day_in_any_time_zone(zone: str, longitude: float) -> None:
    first = datetime(2027, 9, 15, tzinfo=UTC)
    moments = [first + timedelta(hours=6 * place) for place in range(13)]
    answer = answers.met_norway(
        dict.fromkeys(moments, 12.0), dict.fromkeys(moments[:-1], (9.0, 16.0)), longitude=longitude
    )
    days = met_norway.FORECAST.days(answer, place(zone, longitude=longitude), date(2027, 9, 14))
    assert len(days) >= 2
    assert set(days.values()) == {DayOfWeather(tmin_c=9.0, tmax_c=16.0)}


def test_a_six_hour_span_across_midnight_belongs_to_neither_day() -> None:
    """18:00 to 24:00 UTC is 19:00 to 1:00 in London in summer."""
    first = datetime(2027, 9, 14, 18, tzinfo=UTC)
    moments = [first + timedelta(hours=6 * place) for place in range(7)]
    spans = {moments[0]: (-20.0, 40.0), moments[4]: (-20.0, 40.0), moments[2]: (8.0, 16.0)}
    days = met_norway.FORECAST.days(answers.met_norway(dict.fromkeys(moments, 12.0), spans), place(), TODAY)
    assert days == {date(2027, 9, 15): DayOfWeather(tmin_c=8.0, tmax_c=16.0)}


def test_a_day_that_the_forecast_does_not_cover_is_left_out() -> None:
    """It begins at 7 in the morning of the 14th and ends in the evening of the 16th: only the 15th is whole."""
    temperatures = answers.hourly(datetime(2027, 9, 14, 6, tzinfo=UTC), 62)
    days = met_norway.FORECAST.days(answers.met_norway(temperatures), place(), TODAY)
    assert list(days) == [date(2027, 9, 15)]


def test_a_stretch_of_more_than_six_hours_without_a_value_makes_a_day_missing() -> None:
    temperatures = answers.hourly(datetime(2027, 9, 14, 12, tzinfo=UTC), 80)
    for hour in range(6, 13):
        del temperatures[datetime(2027, 9, 15, hour, tzinfo=UTC)]
    days = met_norway.FORECAST.days(answers.met_norway(temperatures), place(), TODAY)
    assert list(days) == [date(2027, 9, 16)]


def _met(change: Callable[[Any], object]) -> Any:
    answer = answers.met_norway(answers.hourly(datetime(2027, 9, 14, 12, tzinfo=UTC), 80))
    change(answer)
    return answer


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (lambda a: a["geometry"].update(coordinates=[-1.7, 59.6, 3]), "another place: latitude 59.6"),
        (lambda a: a["geometry"].update(coordinates=[-1.7]), "without the place"),
        (lambda a: a["properties"]["meta"]["units"].update(air_temperature="fahrenheit"), "temperatures in fahrenheit instead of celsius"),
        (lambda a: a["properties"]["meta"]["units"].clear(), "temperatures in no unit instead of celsius"),
        (lambda a: a["properties"]["timeseries"][3].update(time="2027-09-14T15:00:00+02:00"), "which is no moment of UTC"),
        (lambda a: a["properties"]["timeseries"][3].update(time="noon"), "'noon', which is no moment of UTC"),
        (lambda a: a["properties"]["timeseries"][3].pop("data"), "timeseries.3.data is wrong or missing"),
        (lambda a: a["properties"].pop("timeseries"), "timeseries is wrong or missing"),
    ],
)  # fmt: skip
def test_an_odd_answer_of_met_norway_is_refused(change: Callable[[Any], object], said: str) -> None:
    with pytest.raises(FetchError, match="MET Norway") as refused:
        met_norway.FORECAST.days(_met(change), place(), TODAY)
    assert said in str(refused.value)


def test_open_meteo_is_asked_for_days_of_the_clubs_zone_and_past_years_from_one_reanalysis() -> None:
    recent = open_meteo.RECORD.question(place(), FIRST, LAST, False)
    years = open_meteo.RECORD.question(place(), date(1997, 1, 1), date(2026, 12, 31), True)
    assert recent.address == years.address == "https://archive-api.open-meteo.com/v1/archive"
    assert (recent.query["start_date"], recent.query["end_date"]) == ("2027-09-01", "2027-09-03")
    assert recent.query["timezone"] == "Europe/London"
    assert "models" not in recent.query
    assert years.query["models"] == "era5_seamless"
    assert open_meteo.FORECAST.question(place()).address == "https://api.open-meteo.com/v1/forecast"


def test_open_meteo_gives_its_days_and_leaves_out_what_it_does_not_know() -> None:
    told = {
        date(2027, 9, 1): (8.0, 17.0, 0.4),
        date(2027, 9, 2): (None, 18.1, 0.0),
        date(2027, 9, 3): (7.2, 14.8, None),
    }
    days = open_meteo.RECORD.days(answers.open_meteo(told), place(), FIRST, LAST)
    assert days == {
        date(2027, 9, 1): DayOfWeather(tmin_c=8.0, tmax_c=17.0, rain_mm=0.4),
        date(2027, 9, 3): DayOfWeather(tmin_c=7.2, tmax_c=14.8),
    }


def test_a_forecast_of_open_meteo_starts_today() -> None:
    told = dict.fromkeys(answers.days_between(date(2027, 9, 13), date(2027, 9, 20)), (8.0, 16.0, 0.0))
    days = open_meteo.FORECAST.days(answers.open_meteo(told), place(), TODAY)
    assert (min(days), max(days)) == (TODAY, date(2027, 9, 20))


def _open_meteo(change: Callable[[Any], object]) -> Any:
    answer = answers.open_meteo(dict(THREE_DAYS))
    change(answer)
    return answer


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (lambda a: a.update(latitude=-55.6), "another place: latitude -55.6"),
        (lambda a: a.update(timezone="GMT"), "the time zone 'GMT' instead of 'Europe/London'"),
        (lambda a: a["daily_units"].update(temperature_2m_max="°F"), "temperature_2m_max in °F instead of °C"),
        (lambda a: a["daily_units"].update(precipitation_sum="inch"), "precipitation_sum in inch instead of mm"),
        (lambda a: a["daily"]["temperature_2m_min"].pop(), "more values of one kind than of another"),
        (lambda a: a["daily"]["time"].__setitem__(0, "2027-08-31"), "2027-08-31, which was not asked for"),
        (lambda a: a["daily"]["time"].__setitem__(0, "1 September"), "'1 September', which is no day"),
        (lambda a: a["daily"]["temperature_2m_max"].__setitem__(0, float("nan")), "which no weather has"),
        (lambda a: a.pop("daily"), "daily is wrong or missing"),
        (lambda a: a["daily"].update(temperature_2m_min=["8", 9, 7]), "temperature_2m_min.0"),
    ],
)  # fmt: skip
def test_an_odd_answer_of_open_meteo_is_refused(change: Callable[[Any], object], said: str) -> None:
    with pytest.raises(FetchError, match="Open-Meteo") as refused:
        open_meteo.RECORD.days(_open_meteo(change), place(), FIRST, LAST)
    assert said in str(refused.value)


def test_a_place_near_the_date_line_is_the_same_from_both_sides() -> None:
    """179.9 degrees east and 179.9 degrees west are a fifth of a degree apart."""
    told = answers.power(THREE_DAYS, longitude=-179.9)
    assert power.RECORD.days(told, place("Pacific/Fiji", longitude=179.9), FIRST, LAST)


@pytest.mark.parametrize("source", [power.RECORD.source, met_norway.FORECAST.source, open_meteo.RECORD.source])
def test_each_service_is_thanked_with_its_licence(source: Any) -> None:
    assert source.credit
    assert source.licence.startswith("CC")
    assert source.address.startswith("https://")
    assert source.licence_address.startswith("https://")
