"""A time zone as a component of a calendar: its changes of offset over some years, out of the zone itself."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from icalendar import Timezone, TimezoneDaylight, TimezoneStandard

__all__ = ["time_zone_component"]

_DAY = timedelta(days=1)
_MINUTE = timedelta(minutes=1)


def time_zone_component(zone: ZoneInfo, first_year: int, last_year: int) -> Timezone:
    """Write a VTIMEZONE.

    An onset is told in the local time before it, as RFC 5545 section 3.6.5 asks; `icalendar` 7.3 writes the one of
    spring an hour late, so it is written here.

    Args:
        zone: the zone, with a name.
        first_year: the first year in which a moment lies.
        last_year: the last year in which one lies.

    Returns:
        The component, with an observance for each stretch of one offset that begins in these years, and one for the
        offset at their beginning.
    """
    component = Timezone()
    component.add("TZID", zone.key)
    begins = datetime(first_year, 1, 1, tzinfo=UTC) - _DAY  # east of Greenwich a year begins earlier than in UTC
    before = begins
    for onset in (begins, *_onsets(zone, begins, datetime(last_year + 1, 1, 1, tzinfo=UTC) + _DAY)):
        component.add_component(_observance(zone, before, onset))
        before = onset
    return component


def _observance(zone: ZoneInfo, before: datetime, onset: datetime) -> TimezoneStandard | TimezoneDaylight:
    was, now = before.astimezone(zone), onset.astimezone(zone)
    offset_from, offset_to = was.utcoffset() or timedelta(), now.utcoffset() or timedelta()
    part = TimezoneDaylight() if now.dst() else TimezoneStandard()
    part.add("DTSTART", (onset + offset_from).replace(tzinfo=None))
    part.add("TZOFFSETFROM", offset_from)
    part.add("TZOFFSETTO", offset_to)
    part.add("TZNAME", now.tzname() or zone.key)
    return part


def _onsets(zone: ZoneInfo, begins: datetime, ends: datetime) -> Iterator[datetime]:
    """Moments of a new offset, to the minute: no zone has changed within one since 1972 (tz database)."""
    day = begins
    while day < ends:
        low, high = day, day + _DAY
        if low.astimezone(zone).utcoffset() != high.astimezone(zone).utcoffset():
            while high - low > _MINUTE:
                middle = low + (high - low) // _MINUTE // 2 * _MINUTE
                if middle.astimezone(zone).utcoffset() == low.astimezone(zone).utcoffset():
                    low = middle
                else:
                    high = middle
            yield high
        day += _DAY
