"""Readings through the day -> a day of weather in the club's local time. Pure."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from enum import Enum
from itertools import pairwise
from typing import Final
from zoneinfo import ZoneInfo

__all__ = ["LONGEST_GAP", "DayOfWeather", "DaysOfReadings", "RainCount", "Reading", "bounds_of_day", "days_of_readings"]

LONGEST_GAP: Final = timedelta(hours=3)
"""A day counts when no stretch of it longer than this is without a reading; judgement: the warmest and the coldest
hour of a day are then missed by little."""


class RainCount(Enum):
    """How a station counts rain, in the words of club.yaml."""

    EACH_ROW = "in each row"
    SINCE_MIDNIGHT = "since midnight"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """What was read at a moment, or the extremes of a span.

    Args:
        at: the moment, or the start of the span, aware.
        lowest_c: the temperature, or the lowest since the reading before, C; None where missing.
        highest_c: the temperature, or the highest since the reading before, C; None where missing.
        rain_mm: rain, mm, counted as `RainCount` says; None where missing.
        until: the end of the span, or None for a moment. A span counts only for a day that holds all of it.
    """

    at: datetime
    lowest_c: float | None = None
    highest_c: float | None = None
    rain_mm: float | None = None
    until: datetime | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class DayOfWeather:
    """One day, from midnight to midnight in the club's local time.

    Args:
        tmin_c: lowest temperature, C.
        tmax_c: highest temperature, C.
        rain_mm: rain, mm, or None where it is not known.
    """

    tmin_c: float
    tmax_c: float
    rain_mm: float | None = None

    @property
    def tmean_c(self) -> float:
        """The mean of the day: half of lowest plus highest.

        It is the mean that climate stations print (WMO, Guide to Climatological Practices, from memory), that the
        normals behind the healing model have, and that a club gets from a minimum and maximum thermometer. The same
        mean for observed days, past years and forecasts matters more than the best mean for one of them.
        """
        return (self.tmin_c + self.tmax_c) / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class DaysOfReadings:
    """Days made from readings.

    Args:
        days: whole days.
        incomplete: days with readings, but not throughout, in order.
    """

    days: dict[date, DayOfWeather]
    incomplete: tuple[date, ...]


def bounds_of_day(day: date, zone: ZoneInfo) -> tuple[datetime, datetime]:
    """Tell when a day starts and ends; it has 23 or 25 hours when the clocks change.

    Args:
        day: the day.
        zone: the club's time zone.

    Returns:
        Its first moment and that of the next day, in UTC.
    """
    start = datetime.combine(day, time(), tzinfo=zone)
    end = datetime.combine(day + timedelta(days=1), time(), tzinfo=zone)
    return start.astimezone(UTC), end.astimezone(UTC)


def days_of_readings(
    readings: Iterable[Reading],
    zone: ZoneInfo,
    *,
    rain: RainCount = RainCount.EACH_ROW,
    longest_gap: timedelta = LONGEST_GAP,
) -> DaysOfReadings:
    """Bring readings to days.

    Assumes that rain read at midnight fell before it, as stations that print the end of a span mean it (common
    practice, no published source).

    Args:
        readings: in any order, each once; their order changes nothing.
        zone: the club's time zone.
        rain: how rain is counted.
        longest_gap: the longest stretch of a day that may be without a reading.

    Returns:
        The whole days, and those that are not.
    """
    temperatures: dict[date, list[Reading]] = defaultdict(list)
    rains: dict[date, list[Reading]] = defaultdict(list)
    for reading in readings:
        local = reading.at.astimezone(zone)
        if reading.lowest_c is not None and reading.highest_c is not None:
            temperatures[local.date()].append(reading)
        if reading.rain_mm is not None:
            before_midnight = local.time() == time()
            rains[local.date() - timedelta(days=before_midnight)].append(reading)
    days: dict[date, DayOfWeather] = {}
    incomplete: list[date] = []
    for day, of_day in sorted(temperatures.items()):
        start, end = bounds_of_day(day, zone)
        within = [reading for reading in of_day if reading.until is None or reading.until <= end]
        if not _throughout([reading.at for reading in within if reading.until is None], start, end, longest_gap):
            incomplete.append(day)
            continue
        days[day] = DayOfWeather(
            tmin_c=min(reading.lowest_c for reading in within if reading.lowest_c is not None),
            tmax_c=max(reading.highest_c for reading in within if reading.highest_c is not None),
            rain_mm=_rain_of(rains[day], start, end, rain, longest_gap),
        )
    return DaysOfReadings(days=days, incomplete=tuple(incomplete))


def _throughout(moments: Sequence[datetime], start: datetime, end: datetime, longest_gap: timedelta) -> bool:
    stops = [start, *sorted(moment.astimezone(UTC) for moment in moments), end]
    return len(moments) > 0 and all(later - earlier <= longest_gap for earlier, later in pairwise(stops))


def _rain_of(
    of_day: Sequence[Reading], start: datetime, end: datetime, rain: RainCount, longest_gap: timedelta
) -> float | None:
    if not _throughout([reading.at for reading in of_day], start, end, longest_gap):
        return None
    amounts = sorted(reading.rain_mm for reading in of_day if reading.rain_mm is not None)
    return max(amounts) if rain is RainCount.SINCE_MIDNIGHT else sum(amounts)
