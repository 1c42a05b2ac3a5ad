"""Sunrise and sunset against plain solar equations, and where the sun does not set or rise."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from swardcast.outlook.daylight import daylight
from swardcast.records.club import Club
from swardcast.records.folder import ClubRecords


def _at(club: Club, latitude: float, longitude: float, zone: str) -> Club:
    return replace(club, latitude_deg=latitude, longitude_deg=longitude, time_zone=ZoneInfo(zone))


def _by_fourier_series(latitude: float, longitude: float, day: date) -> tuple[float, float]:
    """Minutes after midnight UTC of sunrise and sunset.

    NOAA Global Monitoring Laboratory, "General Solar Position Calculations" (after Spencer 1971): fractional year,
    equation of time and declination as Fourier series, zenith 90.833 degrees. Coefficients written from memory. It is
    another method than that of the library, which sums the sun's orbit.
    """
    g = 2 * math.pi / 365 * (day.timetuple().tm_yday - 1)
    equation = 229.18 * (
        0.000075
        + 0.001868 * math.cos(g)
        - 0.032077 * math.sin(g)
        - 0.014615 * math.cos(2 * g)
        - 0.040849 * math.sin(2 * g)
    )
    tilt = (
        0.006918
        - 0.399912 * math.cos(g)
        + 0.070257 * math.sin(g)
        - 0.006758 * math.cos(2 * g)
        + 0.000907 * math.sin(2 * g)
        - 0.002697 * math.cos(3 * g)
        + 0.00148 * math.sin(3 * g)
    )
    north = math.radians(latitude)
    cosine = math.cos(math.radians(90.833)) / (math.cos(north) * math.cos(tilt)) - math.tan(north) * math.tan(tilt)
    half = math.degrees(math.acos(cosine))
    return 720 - 4 * (longitude + half) - equation, 720 - 4 * (longitude - half) - equation


@pytest.mark.parametrize(
    ("latitude", "longitude", "zone"),
    [
        (55.6, -1.7, "Europe/London"),
        (51.5, 0.0, "Europe/London"),
        (-37.8, 145.0, "Australia/Melbourne"),
        (21.3, -157.9, "Pacific/Honolulu"),
        (-36.8, 174.8, "Pacific/Auckland"),
    ],
)
def test_sunrise_and_sunset_agree_with_plain_equations_in_every_month(
    demo_records: ClubRecords, latitude: float, longitude: float, zone: str
) -> None:
    """Within 4 minutes: the series is for a mean year, so that leap years put it out by up to a day."""
    club = _at(demo_records.club, latitude, longitude, zone)
    for month in range(1, 13):
        day = date(2027, month, 15)
        light = daylight(club, day)
        assert light is not None
        midnight = datetime(2027, month, 15, tzinfo=UTC)
        for found, minutes in zip(light, _by_fourier_series(latitude, longitude, day), strict=True):
            assert found.date() == day
            assert abs((found - midnight).total_seconds() / 60 - minutes) < 4


def test_where_the_sun_does_not_set_the_whole_day_is_light(demo_records: ClubRecords) -> None:
    club = _at(demo_records.club, 69.7, 19.0, "Europe/Oslo")
    light = daylight(club, date(2027, 6, 21))
    assert light is not None
    assert light[1] - light[0] == timedelta(days=1)


def test_where_the_sun_does_not_rise_there_is_no_light(demo_records: ClubRecords) -> None:
    assert daylight(_at(demo_records.club, 69.7, 19.0, "Europe/Oslo"), date(2027, 12, 21)) is None


def test_a_sunset_after_midnight_leaves_it_light_until_midnight(demo_records: ClubRecords) -> None:
    """At 64 degrees north in June the sun sets in the first minutes of the next day, by the clock of that place."""
    light = daylight(_at(demo_records.club, 64.15, -21.9, "Atlantic/Reykjavik"), date(2027, 6, 20))
    assert light is not None
    assert light[0].hour == 2
    assert light[1] == datetime(2027, 6, 21, tzinfo=ZoneInfo("Atlantic/Reykjavik"))


def test_a_day_of_the_equinox_is_a_little_longer_than_half_a_day(demo_records: ClubRecords) -> None:
    """Twelve hours and the 8 minutes or so by which refraction and the sun's width lengthen it at 55 degrees north."""
    light = daylight(demo_records.club, date(2027, 3, 20))
    assert light is not None
    assert timedelta(hours=12) < light[1] - light[0] < timedelta(hours=12, minutes=15)
