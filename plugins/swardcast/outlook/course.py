"""How the whole course stands at a moment: every job, every surface, the morning entry."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime, timedelta
from typing import Final

from swardcast.outlook.limits import limits_in_force
from swardcast.outlook.memory import assess_jobs
from swardcast.outlook.play import Statement, latest_statements, statements
from swardcast.outlook.states import (
    CourseOutlook,
    JobOutlook,
    Milestone,
    Reason,
    ReasonKind,
    SurfaceOutlook,
    SurfaceWork,
    Work,
)
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Entry, MorningStatus, NoteToMembers
from swardcast.records.plan import Play
from swardcast.records.standing import counts_until, standing_entries

__all__ = ["NOTE_IS_FRESH_DAYS", "assess_course"]

_MOST_IMPORTANT_FIRST = (
    Work.UNDER_WAY,
    Work.HELD_UP,
    Work.HEALING,
    Work.PLANNED,
    Work.BACK_TO_NORMAL,
    Work.CALLED_OFF,
)
NOTE_IS_FRESH_DAYS: Final = 14
"""Days for which a note to members is shown as one on how things stand: judgement."""

_GOING_ON = (Work.UNDER_WAY, Work.HELD_UP, Work.HEALING)


def assess_course(records: ClubRecords, as_of: datetime, book: WeatherBook) -> CourseOutlook:
    """Assess the whole course.

    Args:
        records: the club's records.
        as_of: the moment, aware.
        book: the club's weather.

    Returns:
        How the course stands, with reasons.
    """
    known = records.known_at(as_of)
    local = as_of.astimezone(records.club.time_zone)
    jobs = assess_jobs(records, as_of, book)
    entries = standing_entries(known.entries)
    latest = latest_statements(statements(known, entries))
    mornings = [entry for entry in entries if isinstance(entry, MorningStatus)]
    morning = mornings[-1] if mornings else None
    fresh = morning if morning and _counts(morning.head.true_from, records, local) else None
    works = _works_by_surface(jobs.values())
    return CourseOutlook(
        as_of=local,
        surfaces={
            name: _surface(records, name, latest.get(name), works.get(name, ()), local) for name in records.surfaces
        },
        jobs=jobs,
        morning_at=morning.head.true_from if morning else None,
        morning_is_fresh=fresh is not None,
        limits=limits_in_force(entries, local),
        why=fresh.why if fresh else "",
        words=fresh.head.words if fresh else "",
        notes=_fresh_notes(entries, local),
    )


def _counts(said: datetime, records: ClubRecords, local: datetime) -> bool:
    return said.date() == local.date() and local < counts_until(said, records.club)


def _fresh_notes(entries: Sequence[Entry], local: datetime) -> tuple[NoteToMembers, ...]:
    oldest = local - timedelta(days=NOTE_IS_FRESH_DAYS)
    notes = [entry for entry in entries if isinstance(entry, NoteToMembers) and not entry.job]
    return tuple(note for note in reversed(notes) if note.head.true_from > oldest)


def _works_by_surface(jobs: Iterable[JobOutlook]) -> Mapping[str, Sequence[SurfaceWork]]:
    works: dict[str, list[SurfaceWork]] = {}
    for job in jobs:
        for work in job.surfaces:
            works.setdefault(work.surface.id, []).append(work)
    return works


def _surface(
    records: ClubRecords,
    name: str,
    said: tuple[Play, Statement] | None,
    works: Sequence[SurfaceWork],
    local: datetime,
) -> SurfaceOutlook:
    current = min(works, key=_importance) if works else None
    play, at, reason = Play.NOT_KNOWN, None, Reason(kind=ReasonKind.NO_FRESH_ENTRY, source="log")
    if said is not None:
        at = said[1].at
        fresh = _counts(at, records, local)
        play = said[0] if fresh else Play.NOT_KNOWN
        reason = (
            said[1].reason if fresh else Reason(kind=ReasonKind.NO_FRESH_ENTRY, source=said[1].reason.source, at=at)
        )
    return SurfaceOutlook(
        surface=records.surfaces[name],
        play=play,
        said_at=at,
        last_play=said[0] if said else None,
        current=current,
        others=tuple(work for work in works if work is not current and work.work in _GOING_ON),
        reasons=tuple(dict.fromkeys((reason, *(current.reasons if current else ())))),
    )


def _importance(work: SurfaceWork) -> tuple[int, int]:
    """Work going on first, then healing, then what comes next; of the finished, the latest."""
    day = work.dates[Milestone.REOPENING].likely
    ordinal = day.toordinal() if day else 0
    return _MOST_IMPORTANT_FIRST.index(work.work), ordinal if work.work is Work.PLANNED else -ordinal
