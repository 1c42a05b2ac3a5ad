"""Growth kept from one morning to the next is, to the last bit, that of all weather laid out anew each morning."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, timedelta

import numpy as np
import pytest
from numpy.typing import NDArray

from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.club import Grass
from swardcast.records.folder import ClubRecords
from swardcast.records.weather import Weather
from swardcast.turf.ensemble import climate_of, weather_members
from swardcast.turf.growth import GRASSES, growth_fraction
from swardcast.turf.milestones import days_until_growth
from swardcast.turf.series import DailySeries

BACK, AHEAD = 420, 566
MORNINGS = (
    date(2027, 1, 1),
    date(2027, 2, 28),
    date(2027, 3, 1),
    date(2027, 8, 24),  # with a forecast
    date(2027, 9, 14),
    date(2027, 12, 31),
    date(2028, 2, 29),
)


def _with_gaps(weather: Weather) -> Weather:
    """Every seventh day is missing on the course, every eleventh in the past years, of which few are left."""
    observed = {day: c for day, c in weather.observed_c.items() if day.toordinal() % 7}
    past = {day: c for day, c in weather.history_c.items() if day.year > 2019 and day.toordinal() % 11}
    return replace(weather, observed_c=observed, history_c=past)


def _laid_out_anew(weather: Weather, at: datetime, grass: Grass) -> NDArray[np.float64]:
    """Growth of all members from `BACK` days before a morning on."""
    today = at.date()
    before = {day: c for day, c in weather.history_c.items() if day.year < today.year}
    observed = {day: c for day, c in weather.observed_c.items() if day < today}
    told = [one for one in weather.forecasts if one.issued_at <= at]
    ahead = {day: c for day, c in told[-1].tmean_c.items() if day >= today} if told else {}
    members = weather_members(
        climate_of(DailySeries.from_days(before)),
        DailySeries.from_days(observed) if observed else None,
        DailySeries.from_days(ahead) if ahead else None,
        start=today - timedelta(days=BACK),
        today=today,
        days=BACK + AHEAD,
    )
    return growth_fraction(members.tmean_c, GRASSES[grass.value].curve)


@pytest.mark.parametrize("gaps", [False, True])
def test_a_morning_knows_the_growth_of_all_weather_laid_out_anew(demo_records: ClubRecords, *, gaps: bool) -> None:
    weather = _with_gaps(demo_records.weather) if gaps else demo_records.weather
    book = WeatherBook(demo_records.club, weather)
    for day in (*MORNINGS[3:], *MORNINGS[:3]):  # an earlier morning after a later one, too
        at = datetime(day.year, day.month, day.day, 9, 30, tzinfo=demo_records.club.time_zone)
        growth = _laid_out_anew(weather, at, Grass.COOL_SEASON)
        view = book.at(at)
        assert view is not None
        for offset in (-420, -301, -300, -15, -1, 0, 1, 13, 14, 15, 200, 500):
            start, place = day + timedelta(days=offset), BACK + offset
            found = view.growth_from(start, Grass.COOL_SEASON)
            assert np.array_equal(found, growth[:, place : place + 200]), (day, offset)
            mean = growth[:, place : place + 500].mean(axis=0)
            sums = view.growth_sums(start, Grass.COOL_SEASON)
            assert np.array_equal(sums, np.concatenate([[0.0], np.cumsum(mean)])), (day, offset)


def test_what_is_over_has_the_sums_of_every_later_morning(demo_records: ClubRecords) -> None:
    """Of one year, so that the same past years count."""
    book = WeatherBook(demo_records.club, demo_records.weather)
    zone = demo_records.club.time_zone
    views = [book.at(datetime(2027, 9, day, 7, tzinfo=zone)) for day in (1, 9, 30)]
    start, end = date(2027, 8, 2), date(2027, 8, 31)
    slow = ((date(2027, 8, 5), 0.6), (date(2027, 8, 6), 0.7))
    for held_back in ((), slow):
        sums = {view.growth_between(start, end, Grass.COOL_SEASON, held_back) for view in views if view}
        over = {view.gone.growth_between(start, end, Grass.COOL_SEASON, held_back) for view in views if view}
        assert sums == over
        assert len(sums) == 1


def test_days_that_are_the_same_in_all_members_are_searched_once_for_the_same_answer() -> None:
    draw = np.random.default_rng(7)
    growth = draw.uniform(0.0, 1.0, (30, 60))
    growth[:, :20] = growth[0, :20]
    needs = np.array([0.0, 0.3, float(growth[0, :20].sum()), 9.0, 14.0, 25.0, 99.0])
    expected = days_until_growth(growth, needs)
    np.testing.assert_allclose(days_until_growth(growth, needs, 20), expected, rtol=0, atol=1e-12)
    assert np.isinf(expected[:, -1]).all()
    assert np.ptp(expected[:, 1]) == 0


def test_a_record_of_more_years_than_a_climate_normal_serves_with_its_last_thirty(demo_records: ClubRecords) -> None:
    weather, at = demo_records.weather, datetime(2027, 9, 14, 9, 30, tzinfo=demo_records.club.time_zone)
    older = {
        day.replace(year=day.year - 40): c + 9
        for day, c in weather.history_c.items()
        if day.timetuple()[1:3] != (2, 29)
    }
    longer = replace(weather, history_c={**older, **weather.history_c})
    begin = date(2027, 9, 1)
    views = [WeatherBook(demo_records.club, one).at(at) for one in (weather, longer)]
    short, long = (view.growth_from(begin, Grass.COOL_SEASON) for view in views if view is not None)
    assert [view.past_years for view in views if view is not None] == [30, 30]
    assert np.array_equal(short, long)


def test_a_record_that_ended_long_ago_serves_with_its_last_thirty_years_too(demo_records: ClubRecords) -> None:
    weather, at = demo_records.weather, datetime(2027, 9, 14, 9, 30, tzinfo=demo_records.club.time_zone)
    old = {date(year, 1, 1) + timedelta(days=day): 10.0 + day % 7 for year in range(1930, 1971) for day in range(365)}
    view = WeatherBook(demo_records.club, replace(weather, history_c=old)).at(at)
    assert view is not None
    assert view.past_years == 30
    assert view.past.history.first == date(1941, 1, 1)
