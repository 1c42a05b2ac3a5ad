"""The calendar: a calendar program can read it, and each of its events has an id of its own."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Final

from swardcast.verifying.built_site import BuiltSite, Fault

__all__ = ["calendar_faults"]

_CALENDAR: Final = "calendar.ics"
_LONGEST: Final = 75  # octets of a line without its end (RFC 5545, section 3.1)
_WANTED: Final = ("UID", "DTSTAMP", "DTSTART", "SUMMARY")


def calendar_faults(site: BuiltSite) -> Iterator[Fault]:
    """Find what a calendar program would not take.

    Args:
        site: the site.

    Yields:
        A fault where the calendar is missing or cannot be read, for lines of the wrong length or end, for an event
        without one of the properties that ours all have, and for an id that two events share.
    """
    from icalendar import Calendar  # noqa: PLC0415 - takes long to load

    if _CALENDAR not in site.files:
        yield Fault(file=_CALENDAR, says="is not there")
        return
    data = site.files[_CALENDAR]
    lines = data.split(b"\r\n")
    if lines[-1] or any(b"\n" in line or len(line) > _LONGEST for line in lines):
        yield Fault(file=_CALENDAR, says="has a line that is too long, or not ended by CR and LF")
    try:
        calendar = Calendar.from_ical(data)
    except ValueError as error:
        yield Fault(file=_CALENDAR, says=f"cannot be read: {error}")
        return
    events = calendar.walk("VEVENT")
    for event in events:
        if missing := [name for name in _WANTED if not str(event.get(name, "")).strip()]:
            yield Fault(file=_CALENDAR, says=f"an event ({event.get('SUMMARY', '')}) has no {' and no '.join(missing)}")
    uids = Counter((str(event.get("UID", "")), str(event.get("RECURRENCE-ID", ""))) for event in events)
    yield from (Fault(file=_CALENDAR, says=f"two events have the id {uid}") for (uid, _), n in uids.items() if n > 1)
