"""What pages say to programs: schema.org's vocabulary as JSON-LD, the course and its status, an event per notice.

Names are those of https://schema.org/GolfCourse, /SpecialAnnouncement, /Event and /EventStatusType. A day is a plain
date, as in the calendar: of planned work no hour is told. A moment that the log knows has its offset from UTC.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from datetime import datetime
from typing import Final

from markupsafe import Markup

from swardcast.compose import Bulletin
from swardcast.language.voice import Voice
from swardcast.notices.ends import has_no_day, stands_still
from swardcast.notices.notice import Notice
from swardcast.notices.spans import days_told_before, first_day_of_work, last_day_of_work
from swardcast.notices.withdrawn import WithdrawnNotice
from swardcast.outlets.open_graph import OpenGraph
from swardcast.outlets.preview import HOME_PICTURE, picture_path
from swardcast.outlook.states import JobOutlook, Work
from swardcast.outlook.story import JobStory
from swardcast.records.club import Club

__all__ = ["course_data", "notice_data", "script_text", "withdrawn_data"]

_SCHEMA: Final = "https://schema.org"
_ESCAPED: Final = {ord(sign): f"\\u{ord(sign):04x}" for sign in "<>&\u2028\u2029"}


def script_text(data: Mapping[str, object]) -> Markup:
    """Write data so that it can stand in a `script` of a page: no typed word can end that, or begin a remark.

    Args:
        data: values that JSON has.

    Returns:
        JSON in which the signs that HTML reads inside a `script` are escaped as JSON allows (RFC 8259, section 7).
    """
    return Markup(json.dumps(data, ensure_ascii=False).translate(_ESCAPED))  # noqa: S704 - escaped


def course_data(bulletin: Bulletin, graph: OpenGraph) -> dict[str, object]:
    """Describe the course, and announce its status while that is today's.

    Args:
        bulletin: the bulletin.
        graph: who knows the pictures.

    Returns:
        A graph of a GolfCourse and, where a morning entry holds, a SpecialAnnouncement that expires with it.
    """
    contact = bulletin.club.contact
    course = _without_none(
        {
            **_course(bulletin.club),
            "email": contact.email or None,
            "telephone": contact.telephone or None,
            "image": graph.picture_address(HOME_PICTURE),
        }
    )
    return {"@context": _SCHEMA, "@graph": [course, *_announcement(bulletin)]}


def _announcement(bulletin: Bulletin) -> list[dict[str, object]]:
    status, club = bulletin.status, bulletin.club
    if status.entered_at is None or status.counts_until is None:
        return []
    site = f"{club.site}/"
    return [
        {
            "@type": "SpecialAnnouncement",
            "@id": f"{site}#status",
            "name": bulletin.voice.say("site-status"),
            "text": status.sentence,
            "url": site,
            "inLanguage": club.language,
            "datePosted": _moment(status.entered_at, club),
            "expires": _moment(status.counts_until, club),
            "announcementLocation": {"@id": f"{site}#course"},
        }
    ]


def notice_data(notice: Notice, bulletin: Bulletin, graph: OpenGraph) -> dict[str, object]:
    """Describe the work of a notice.

    Args:
        notice: the notice.
        bulletin: the bulletin that has it.
        graph: who knows the pictures.

    Returns:
        An Event.
    """
    club, job, story = bulletin.club, bulletin.outlook.jobs[notice.id], bulletin.stories[notice.id]
    before = _told_before(story, job)
    return _without_none(
        {
            **_event(notice, club),
            "eventStatus": f"{_SCHEMA}/{_status(job, before, bulletin.voice)}",
            "startDate": _start(job, club),
            "previousStartDate": (before[0] if len(before) == 1 else before) if before else None,
            "endDate": _end(job, bulletin),
            "image": graph.picture_address(picture_path(notice.id)),
        }
    )


def withdrawn_data(notice: WithdrawnNotice, bulletin: Bulletin) -> dict[str, object]:
    """Describe the work of a notice that was withdrawn, for programs that have heard of it.

    Args:
        notice: the notice.
        bulletin: the bulletin that has it.

    Returns:
        An Event that is cancelled, on the day that members were told last.
    """
    day = first_day_of_work(notice.story.changes[-1].outlook)
    return _without_none(
        {
            **_event(notice, bulletin.club),
            "eventStatus": f"{_SCHEMA}/EventCancelled",
            "startDate": day.isoformat(),
        }
    )


def _event(notice: Notice | WithdrawnNotice, club: Club) -> dict[str, object]:
    site = f"{club.site}/"
    return {
        "@context": _SCHEMA,
        "@type": "Event",
        "@id": f"{site}notices/{notice.id}/#event",
        "name": notice.headline,
        "description": notice.short_answer,
        "url": f"{site}notices/{notice.id}/",
        "inLanguage": club.language,
        "location": _course(club),
        "organizer": {"@type": "Organization", "name": club.name, "url": site},
    }


def _course(club: Club) -> dict[str, object]:
    site = f"{club.site}/"
    return {
        "@type": "GolfCourse",
        "@id": f"{site}#course",
        "name": club.name,
        "url": site,
        "geo": {
            "@type": "GeoCoordinates",
            "latitude": club.latitude_deg,
            "longitude": club.longitude_deg,
            "elevation": club.elevation_m,  # metres, as schema.org has it for a plain number
        },
    }


def _without_none(data: Mapping[str, object]) -> dict[str, object]:
    return {name: value for name, value in data.items() if value is not None}


def _told_before(story: JobStory, job: JobOutlook) -> list[str]:
    """First days of work that members were told and that hold no longer, each once, in the order in which they were.

    "previousStartDate" is the start scheduled before, and is repeated for each where an event was moved several times
    (schema.org, from memory). Work that began on another day than the one told did not take place "as scheduled"
    either, though nobody had moved it.
    """
    return list(dict.fromkeys(day.isoformat() for day in days_told_before(story, job)))


def _status(job: JobOutlook, before: list[str], voice: Voice) -> str:
    """An EventStatusType; work that rain interrupts has begun, so it is not postponed."""
    has_begun = any(work.has_begun for work in job.surfaces)
    if job.work is Work.CALLED_OFF:
        return "EventCancelled"
    if has_no_day(job, voice) or (job.work is Work.HELD_UP and not has_begun):
        return "EventPostponed"  # to no day that anybody knows
    return "EventRescheduled" if before else "EventScheduled"


def _start(job: JobOutlook, club: Club) -> str:
    """Where the log has only when work was done, nobody wrote down when it began."""
    begun = [(work.started_at, work.done_at) for work in job.surfaces if work.started_at is not None]
    first, done = min(begun, key=lambda one: one[0], default=(None, None))
    return _moment(first, club) if first is not None and first != done else first_day_of_work(job).isoformat()


def _end(job: JobOutlook, bulletin: Bulletin) -> str | None:
    """When the last of the work was done, or the day on which it should be; none where no day is told."""
    done = [work.done_at for work in job.surfaces if work.done_at is not None]
    if len(done) == len(job.surfaces):
        return _moment(max(done), bulletin.club)
    if job.work is Work.HELD_UP or stands_still(job, bulletin.voice):
        return None
    days = last_day_of_work(job)
    likely = days.likely if days is not None else None
    return likely.isoformat() if likely is not None and likely >= first_day_of_work(job) else None


def _moment(moment: datetime, club: Club) -> str:
    return moment.astimezone(club.time_zone).isoformat()
