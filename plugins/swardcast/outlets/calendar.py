"""The members' calendar: iCalendar (RFC 5545) with the properties of RFC 7986 that calendar programs show.

It is a published calendar in the sense of RFC 5546: a program that has it already tells an event by its UID, and takes
it again when SEQUENCE has risen. The same records and moment give the same bytes.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta
from typing import Final
from urllib.parse import urlsplit

from icalendar import Calendar, Event, vCalAddress, vText

from swardcast.artifact import Artifact
from swardcast.compose import Bulletin
from swardcast.notices.calendar import DaySpan, MomentSpan, Occasion
from swardcast.notices.calendar_story import STILL_THERE, CalendarEvent
from swardcast.outlets.time_zone import time_zone_component
from swardcast.outlets.unbroken import unbroken
from swardcast.records.club import Club

__all__ = ["CALENDAR_PATH", "calendar_artifact", "uid_of"]

CALENDAR_PATH: Final = "calendar.ics"
_REFRESH: Final = "PT1H"  # as often as the feed
_COLOURS: Final = {Occasion.WORK: "darkorange", Occasion.REOPENING: "forestgreen", Occasion.HEALING: "tan"}  # of CSS
_COLOUR: Final = "forestgreen"


class _Text(vText):
    """Text escaped as RFC 5545 section 3.3.11 says; `icalendar` 7.3 takes a typed backslash before N for a new line."""

    def to_ical(self) -> bytes:
        escaped = self.replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,").replace("\n", "\\n")
        return escaped.encode()


def uid_of(event_id: str, site: str) -> str:
    """Name an event for life, after RFC 5545 section 3.8.4.7: a part of our own, "@" and the club's domain.

    Where the site is not all of its host, its path goes in too, since another club may have the rest.

    Args:
        event_id: the event's id.
        site: the address by which the club's events are named.

    Returns:
        "greens-renovation-2027.work-1@quillhaven.example", "greens-renovation-2027.work-1.links@clubs.example": without
        a slash, since programs name files by it.
    """
    address = urlsplit(site)
    own = "/".join(part for part in (event_id, address.path.strip("/")) if part)
    return f"{own.replace('/', '.')}@{address.hostname}"


def calendar_artifact(bulletin: Bulletin) -> Artifact:
    """Write the calendar.

    Args:
        bulletin: the bulletin.

    Returns:
        The calendar, without a byte that depends on the clock, and without what has been over for longer than
        `STILL_THERE`: programs that imported it keep it, and telephones that ask every few hours need not fetch it.
    """
    club, voice = bulletin.club, bulletin.voice
    oldest = bulletin.as_of.date() - STILL_THERE
    events = [event for event in bulletin.calendar if event.span.last_day >= oldest]
    name = _line(voice.say("calendar-name", club=club.name))
    about = _line(voice.say("calendar-description", club=club.name))
    calendar = Calendar()
    calendar.add("PRODID", "-//Swardcast//Swardcast//EN")
    calendar.add("VERSION", "2.0")
    calendar.add("CALSCALE", "GREGORIAN")
    if club.contact.email:
        calendar.add("METHOD", "PUBLISH")  # RFC 5546 section 3.2.1 asks for an organizer then
    calendar.add("UID", _Text(uid_of("calendar", club.named_by)))
    for property_name, text in (
        ("NAME", name),
        ("X-WR-CALNAME", name),
        ("DESCRIPTION", about),
        ("X-WR-CALDESC", about),
    ):
        calendar.add(property_name, text)
    calendar.add("X-WR-TIMEZONE", club.time_zone.key)
    calendar.add("URL", f"{club.site}/")
    calendar.add("SOURCE", f"{club.site}/{CALENDAR_PATH}", parameters={"VALUE": "URI"})
    calendar.add("REFRESH-INTERVAL", _Text(_REFRESH), parameters={"VALUE": "DURATION"})
    calendar.add("X-PUBLISHED-TTL", _Text(_REFRESH))
    calendar.add("COLOR", _COLOUR)
    if events:
        calendar.add("LAST-MODIFIED", max(event.changed_at for event in events))
    _add_time_zone(calendar, club, events)
    for event in events:
        calendar.add_component(_event(event, club))
    return Artifact(path=CALENDAR_PATH, media_type="text/calendar", data=calendar.to_ical())


def _add_time_zone(calendar: Calendar, club: Club, events: Sequence[CalendarEvent]) -> None:
    """Only moments need it: days are the same everywhere."""
    spans = [event.span for event in events if isinstance(event.span, MomentSpan)]
    years = [moment.year for span in spans for moment in (span.starts, span.ends) if moment is not None]
    if years:
        calendar.add_component(time_zone_component(club.time_zone, min(years), max(years)))


def _event(event: CalendarEvent, club: Club) -> Event:
    link = f"{club.site}/notices/{event.notice_id}/"
    component = Event()
    component.add("UID", _Text(uid_of(event.id, club.named_by)))
    component.add("DTSTAMP", event.changed_at)
    component.add("CREATED", event.created_at)
    component.add("LAST-MODIFIED", event.changed_at)
    component.add("SEQUENCE", event.sequence)
    _add_span(component, event.span)
    component.add("SUMMARY", _line(event.summary))
    component.add("DESCRIPTION", _Text("\n".join([*map(_line, event.sentences), link])))
    component.add("URL", link)
    component.add("CATEGORIES", [_line(name) for name in event.categories])
    component.add("STATUS", event.standing.value.upper())
    component.add("TRANSP", "TRANSPARENT")  # whatever is done to the course, it makes no member busy
    component.add("COLOR", _COLOURS[event.occasion])
    if club.contact.email:
        component.add("ORGANIZER", vCalAddress(f"mailto:{club.contact.email}"), parameters={"CN": _line(club.name)})
    return component


def _add_span(component: Event, span: DaySpan | MomentSpan) -> None:
    match span:
        case DaySpan():
            component.add("DTSTART", span.first)
            component.add("DTEND", span.last + timedelta(days=1))  # the end is exclusive: RFC 5545 section 3.6.1
        case MomentSpan():
            component.add("DTSTART", span.starts)
            if span.ends is not None:
                component.add("DTEND", span.ends)


def _line(text: str) -> _Text:
    return _Text(unbroken(text))
