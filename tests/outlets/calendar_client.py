"""A small model of a calendar program that imports files: what RFC 5546 (iTIP) section 2.1.5 says of UID and SEQUENCE."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from typing import Any

from icalendar import Calendar

from swardcast.notices.calendar_story import STILL_THERE

__all__ = ["Client", "Kept", "kept_in", "unlike_a_later_file"]


@dataclass(frozen=True)
class Kept:
    """An event as a program keeps it: everything that a person sees of it, and what tells an older one from a newer."""

    uid: str
    sequence: int
    stamp: datetime
    starts: date | datetime
    ends: date | datetime | None
    summary: str
    description: str
    status: str

    @property
    def is_live(self) -> bool:
        return self.status != "CANCELLED"

    @property
    def last_day(self) -> date:
        last = self.starts if self.ends is None else self.ends
        return last.date() if isinstance(last, datetime) else last - timedelta(days=self.ends is not None)


def kept_in(data: bytes) -> tuple[Kept, ...]:
    """The events of a file."""
    return tuple(_kept(event) for event in _calendar(data).events)


def _calendar(data: bytes) -> Any:
    return Calendar.from_ical(data)


def _kept(event: Any) -> Kept:
    return Kept(
        uid=str(event["UID"]),
        sequence=int(event["SEQUENCE"]),
        stamp=event["DTSTAMP"].dt,
        starts=event["DTSTART"].dt,
        ends=event["DTEND"].dt if "DTEND" in event else None,
        summary=str(event["SUMMARY"]),
        description=str(event["DESCRIPTION"]),
        status=str(event["STATUS"]),
    )


@dataclass
class Client:
    """Imports one file over another.

    A component with a UID that is known replaces the one kept when its SEQUENCE is greater, or the same with a later
    DTSTAMP; an older or equal one is passed over. What a file leaves out stays: nobody said that it is gone.
    """

    events: dict[str, Kept] = field(default_factory=dict)

    def take(self, file: Iterable[Kept]) -> None:
        for event in file:
            mine = self.events.get(event.uid)
            if mine is None or (event.sequence, event.stamp) > (mine.sequence, mine.stamp):
                self.events[event.uid] = event


def unlike_a_later_file(before: Iterable[Kept], now: Iterable[Kept], today: date) -> Iterator[str]:
    """What keeps a file from following another: an event that went, grew older, or changed without becoming newer.

    Only what has been over for longer than `STILL_THERE` may go.
    """
    there = {event.uid: event for event in now}
    for old in before:
        new = there.get(old.uid)
        if new is None:
            if old.last_day >= today - STILL_THERE:
                yield f"the event {old.uid} is gone"
        elif new.sequence < old.sequence or new.stamp < old.stamp:
            yield f"the event {old.uid} grew older"
        elif new != old and (new.sequence, new.stamp) == (old.sequence, old.stamp):
            yield f"the event {old.uid} changed without becoming newer"
