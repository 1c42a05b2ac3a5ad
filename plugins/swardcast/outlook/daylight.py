"""Sunrise and sunset where the club is."""

from __future__ import annotations

from datetime import date, datetime, time, timedelta
from functools import lru_cache
from typing import TYPE_CHECKING
from zoneinfo import ZoneInfo

from swardcast.records.club import Club

if TYPE_CHECKING:
    from astral import Observer

__all__ = ["daylight"]

_HORIZON_DEG = -0.833  # the sun's upper edge, refraction included: the usual definition of sunrise and sunset


@lru_cache(maxsize=1024)
def daylight(club: Club, day: date) -> tuple[datetime, datetime] | None:
    """Name the sunrise and sunset of a day.

    Assumes a level horizon at sea level, so that it does not depend on the height of the course.

    Args:
        club: the club; its place and time zone count.
        day: the local day.

    Returns:
        Two local moments of that day, the second one midnight where the sun sets later or not at all; None where it
        does not rise.

    Source: astral, which follows the NOAA solar calculator (after J. Meeus 1991, Astronomical Algorithms).
    """
    # Loaded late: a build without work in progress does not need it.
    from astral import Observer  # noqa: PLC0415
    from astral.sun import elevation  # noqa: PLC0415

    zone = club.time_zone
    midnight = datetime.combine(day, time(0), tzinfo=zone)
    next_midnight = datetime.combine(day + timedelta(days=1), time(0), tzinfo=zone)
    place = Observer(latitude=club.latitude_deg, longitude=club.longitude_deg)
    rises, sets = _sunrise_and_sunset(place, day, zone)
    if rises is None and sets is None:
        noon = datetime.combine(day, time(12), tzinfo=zone)
        return (midnight, next_midnight) if elevation(place, noon) > _HORIZON_DEG else None
    if rises and sets and sets < rises:  # in the far north's June it sets after midnight
        return rises, next_midnight
    return rises or midnight, sets or next_midnight


def _sunrise_and_sunset(place: Observer, day: date, zone: ZoneInfo) -> tuple[datetime | None, datetime | None]:
    from astral.sun import sunrise, sunset  # noqa: PLC0415

    found: list[datetime | None] = []
    for of in (sunrise, sunset):
        try:
            found.append(of(place, day, zone))
        except ValueError:  # the sun stays above or below the horizon
            found.append(None)
    return found[0], found[1]
