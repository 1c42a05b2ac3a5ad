"""The course status for other sites and programs: /status.json, its JSON Schema, and a script that shows it.

The schema (`static/status.schema.json`, JSON Schema 2020-12) is the reference: it describes every field. Its version
and that of the file are the same; a field more raises the second number, a field gone or changed in meaning the first.
Moments are as in RFC 3339, in the club's time; the file is UTF-8 (RFC 8259). Words come from the course status as they
are; play and work also by their named states.
"""

from __future__ import annotations

from datetime import date, datetime
from importlib.resources import files
from typing import Final

from swardcast.artifact import Artifact
from swardcast.compose import Bulletin
from swardcast.language.voice import Voice
from swardcast.notices.notice import Notice
from swardcast.notices.status_dates import StatusDate
from swardcast.notices.status_lines import StatusLine
from swardcast.notices.words import places_in_words
from swardcast.outlets.json_file import json_artifact, schema_artifact
from swardcast.outlets.short_addresses import short_addresses
from swardcast.outlets.still_told import IN_THE_FILE, is_still_told
from swardcast.outlook.dates import DateRange
from swardcast.outlook.states import Work
from swardcast.records.club import Club
from swardcast.records.weather import WeatherSource

__all__ = ["SCHEMA_PATH", "SCRIPT_PATH", "STATUS_PATH", "VERSION", "status_artifacts"]

STATUS_PATH: Final = "status.json"
SCHEMA_PATH: Final = "status.schema.json"
SCRIPT_PATH: Final = "status.js"

VERSION: Final = "1.0"
"""Of the file and of its schema."""


def status_artifacts(bulletin: Bulletin) -> tuple[Artifact, ...]:
    """Write the status file, its schema and the script.

    Args:
        bulletin: the bulletin.

    Returns:
        Three files.
    """
    script = (files("swardcast") / "outlets" / "static" / SCRIPT_PATH).read_bytes()
    return (
        json_artifact(STATUS_PATH, _status(bulletin)),
        schema_artifact(SCHEMA_PATH, bulletin.club.site),
        Artifact(path=SCRIPT_PATH, media_type="text/javascript; charset=utf-8", data=script),
    )


def _status(bulletin: Bulletin) -> dict[str, object]:
    club, status, as_of, site = bulletin.club, bulletin.status, bulletin.as_of, bulletin.club.site
    return {
        "$schema": f"{site}/{SCHEMA_PATH}",
        "version": VERSION,
        "club": {
            "name": club.name,
            "course": club.course,
            "language": club.language,
            "time_zone": club.time_zone.key,
            "contact": {
                "office": club.contact.office,
                "email": club.contact.email or None,
                "telephone": club.contact.telephone or None,
            },
        },
        "site": f"{site}/",
        "as_of": _moment(as_of),
        "sentence": status.sentence,
        "sentence_once_over": _once_over(bulletin),
        "entered_at": _moment(status.entered_at.astimezone(club.time_zone)) if status.entered_at else None,
        "fresh": status.fresh,
        "fresh_until": _moment(status.counts_until) if status.counts_until else None,
        "limits": _limits(bulletin),
        "lines": [_line(line, bulletin) for line in status.lines],
        "holes": [
            {"hole": hole.hole, "play": hole.play_key.replace("-", " "), "words": hole.words} for hole in status.holes
        ],
        "notices": _notices(bulletin),
        "weather_sources": [_source(source, bulletin.voice) for source in bulletin.weather_sources],
    }


def _once_over(bulletin: Bulletin) -> str:
    """What is true of the course once the day is over: then it is not known, and only what was true can be told."""
    club, status, voice = bulletin.club, bulletin.status, bulletin.voice
    if status.entered_at is None:
        return status.sentence  # says already that nothing is known
    entered = status.entered_at.astimezone(club.time_zone)
    moment = voice.on(date(entered.year + 1, 1, 1)).moment(entered)  # a reader of another year needs the year
    if status.fresh:
        return voice.say("status-file-once-over", unknown=status.once_over, moment=moment, sentence=status.sentence)
    return voice.sentences([status.once_over, voice.say("status-last-entered", moment=moment)])


def _moment(moment: datetime) -> str:
    return moment.isoformat(timespec="seconds")


def _limits(bulletin: Bulletin) -> list[dict[str, object]]:
    return [
        {
            "limit": held.limit.name,
            "name": said.name,
            "words": said.value,
            "until": _moment(held.limit.until.astimezone(bulletin.club.time_zone)),
        }
        for held, said in zip(bulletin.outlook.limits, bulletin.status.limits, strict=True)
    ]


def _line(line: StatusLine, bulletin: Bulletin) -> dict[str, object]:
    surfaces = [bulletin.outlook.surfaces[name] for name in line.surfaces]
    return {
        "surfaces": [
            {"id": one.surface.id, "name": places_in_words((one.surface,), bulletin.voice)} for one in surfaces
        ],
        "where": line.where,
        "play": {"state": surfaces[0].play.value, "words": line.play},
        "work": {"state": line.state.value, "words": line.work} if line.state is not None else None,
        "why": line.why,
        "also": line.also,
        "dates": [_dated(one) for one in line.dates],
        "entered": line.entered,
        "notice": line.notice_id or None,
    }


def _dated(one: StatusDate) -> dict[str, object]:
    days = one.given if one.given is not None and one.given.is_given else None
    return {
        "milestone": one.milestone.value,
        "name": one.name,
        "words": one.value,
        **_days(days),
        "is_fact": days is not None and days.is_fact,
        "in_months": days is not None and days.is_wide,
    }


def _days(given: DateRange | None) -> dict[str, str | None]:
    if given is None:
        return {"early": None, "likely": None, "allow_until": None}
    days = {"early": given.early, "likely": given.likely, "allow_until": given.allow_until}
    return {name: day.isoformat() if day is not None else None for name, day in days.items()}


def _notices(bulletin: Bulletin) -> list[dict[str, object]]:
    addresses = short_addresses(bulletin)
    works = {name: job.work for name, job in bulletin.outlook.jobs.items()}
    return [
        _notice(notice, works[notice.id], bulletin.club, addresses[notice.id])
        for notice in bulletin.notices
        if is_still_told(notice, works[notice.id], bulletin.as_of, for_so_long=IN_THE_FILE)
    ]


def _notice(notice: Notice, work: Work, club: Club, short_address: str) -> dict[str, object]:
    return {
        "id": notice.id,
        "state": {"state": work.value, "words": notice.work},
        "headline": notice.headline,
        "short_answer": notice.short_answer,
        "address": f"{club.site}/notices/{notice.id}/",
        "short_address": short_address,
        "revision": notice.revision,
        "issued_at": _moment(notice.issued_at),
        "revised_at": _moment(notice.revised_at),
    }


def _source(source: WeatherSource, voice: Voice) -> dict[str, object]:
    words = voice.say(
        "site-weather-source",
        use=source.used_for,
        name=source.name,
        credit=source.credit,
        licence=source.licence,
    )
    return {"words": words, "address": source.address, "licence_address": source.licence_address}
