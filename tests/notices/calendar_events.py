"""Events of one job's calendar at a moment, without composing the rest."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from swardcast.language.catalogue import built_in
from swardcast.notices.calendar import DaySpan, MomentSpan
from swardcast.notices.calendar_story import CalendarEvent, calendar_of
from swardcast.outlook.story import tell_story
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Entry, EntryHead
from swardcast.records.standing import as_entered

__all__ = ["as_told", "at", "days", "entry_head", "events", "in_american", "with_entries"]


def at(records: ClubRecords, moment: str) -> datetime:
    """A local moment such as "2027-08-23 12:00"."""
    return datetime.fromisoformat(moment).replace(tzinfo=records.club.time_zone)


def events(records: ClubRecords, job: str, moment: str, book: WeatherBook) -> dict[str, CalendarEvent]:
    """A job's events, the weather out of a book that every test may share, by the part of their ids that is their own: "work-1"."""
    as_of = at(records, moment)
    story = tell_story(records, records.jobs[job], as_of, book)
    return {event.id.removeprefix(f"{job}/"): event for event in calendar_of(story, records, as_of, book)}


def days(event: CalendarEvent) -> str:
    """Its days: "2027-08-23 to 2027-08-25", or moments with their hours."""
    match event.span:
        case DaySpan(first=first, last=last):
            return f"{first}" if first == last else f"{first} to {last}"
        case MomentSpan(starts=starts, ends=ends):
            return f"{starts:%Y-%m-%d %H:%M}" + (f" to {ends:%H:%M}" if ends else "")


def as_told(event: CalendarEvent) -> CalendarEvent:
    """The event without its age, which rises with each hour."""
    return replace(event, sequence=0, changed_at=event.created_at)


def entry_head(records: ClubRecords, moment: str, name: str) -> EntryHead:
    """The head of an entry that a test adds."""
    told = at(records, moment)
    return EntryHead(id=name, at=told, true_from=told, by="the course manager", words="", file=f"log/{name}.md", line=2)


def with_entries(records: ClubRecords, *entries: Entry) -> ClubRecords:
    """The records with more entries."""
    return replace(records, entries=as_entered((*records.entries, *entries)))


def in_american(records: ClubRecords) -> ClubRecords:
    """The same club in American English."""
    return replace(records, club=replace(records.club, language="en-US", catalogue=built_in("en-US")))
