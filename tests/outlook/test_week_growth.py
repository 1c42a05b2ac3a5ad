"""The week's growth beside past years, against plain loops."""

from __future__ import annotations

import math
from datetime import date, timedelta
from pathlib import Path

import pytest

from swardcast.outlook.weather_book import WeatherBook
from swardcast.outlook.week_growth import usual_grass, week_of_growth
from swardcast.records.club import Grass
from swardcast.records.folder import ClubRecords
from tests.conftest import DEMO_AS_OF
from tests.outlook.small_club import SmallClub, moment


def _growth(tmean_c: float) -> float:
    """Cool-season grass: exp(-((T - 20) / 7)^2 / 2), Gelernter & Stowell 2005 with the width of the fit."""
    return math.exp(-(((tmean_c - 20) / 7) ** 2) / 2)


def test_a_days_growth_is_that_of_its_temperature(tmp_path: Path) -> None:
    """Even days at 20 C grow 1, odd ones at 13 C exp(-1/2)."""
    club = SmallClub(tmp_path, tmean_c=lambda day: 20.0 if day.toordinal() % 2 == 0 else 13.0)
    club.job("work", "06-01")
    records = club.records()
    view = WeatherBook(records.club, records.weather).at(moment("06-10"))
    assert view is not None
    week = week_of_growth(view, Grass.COOL_SEASON)
    assert [one.day for one in week.days] == [date(2027, 6, 3) + timedelta(days=place) for place in range(14)]
    assert [one.is_observed for one in week.days] == [True] * 7 + [False] * 7
    for one in week.days[:7]:
        expected = 1.0 if one.day.toordinal() % 2 == 0 else math.exp(-0.5)
        assert one.growth == one.low == one.high == pytest.approx(expected)
        assert [one.usual_low, one.usual_high] == pytest.approx([math.exp(-0.5), 1.0])


def test_the_usual_days_are_those_of_the_same_week_of_past_years(demo_records: ClubRecords) -> None:
    view = WeatherBook(demo_records.club, demo_records.weather).at(DEMO_AS_OF)
    assert view is not None
    day = week_of_growth(view, Grass.COOL_SEASON).days[0]
    assert day.day == date(2027, 9, 7)
    found = sorted(
        _growth(tmean_c)
        for then, tmean_c in demo_records.weather.history_c.items()
        if then.year < 2027 and abs((then - date(then.year, 9, 7)).days) <= 3
    )
    assert len(found) > 50

    def quantile(share: float) -> float:
        return found[math.ceil(share * len(found)) - 1]

    assert (day.usual_low, day.usual, day.usual_high) == pytest.approx((quantile(0.1), quantile(0.5), quantile(0.9)))


def test_a_day_without_a_record_says_so(demo_records: ClubRecords) -> None:
    """The demo's record ends in September."""
    view = WeatherBook(demo_records.club, demo_records.weather).at(DEMO_AS_OF.replace(month=12))
    assert view is not None
    assert not any(one.is_observed for one in week_of_growth(view, Grass.COOL_SEASON).days)


def test_the_grass_is_that_of_most_greens(tmp_path: Path, demo_records: ClubRecords) -> None:
    surfaces = SmallClub(tmp_path)
    surfaces.job("work", "06-01")
    assert usual_grass(surfaces.records().surfaces.values()) is Grass.COOL_SEASON
    assert usual_grass([]) is None
