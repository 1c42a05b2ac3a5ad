"""How the whole course stands at a moment: every job, every surface, the morning entry."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime, timedelta
from functools import lru_cache
from typing import Final

from swardcast.outlook.bookkeeping import Ledger
from swardcast.outlook.jobs import Course, JobAssessor
from swardcast.outlook.kept import Kept
from swardcast.outlook.known import Known
from swardcast.outlook.known_digests import KnownDigests
from swardcast.outlook.learnt import Learnt
from swardcast.outlook.limits import limits_in_force
from swardcast.outlook.log_clock import KnownSoFar, LogClock
from swardcast.outlook.nearby import Nearby
from swardcast.outlook.play import Statement, latest_statements, statements
from swardcast.outlook.recall import Recall
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
from swardcast.outlook.story_moments import Log
from swardcast.outlook.taught import Taught, without_file
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Entry, MorningStatus, NoteToMembers
from swardcast.records.plan import Play
from swardcast.records.privacy import for_members
from swardcast.records.standing import counts_until, standing_entries

__all__ = [
    "NOTE_IS_FRESH_DAYS",
    "Memory",
    "as_members_see",
    "assess_course",
    "assess_jobs",
    "course_known",
    "job_stood",
    "memory_of",
    "recall_from",
    "records_near",
]

_JOBS_KEPT: Final = 512
"""Jobs at a moment that are kept, 50 kB each: all of a small club, so that the preview of an entry finds them again."""
_STATES_KEPT: Final = 128  # of the log, as far as one job hangs on it

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


def assess_jobs(
    records: ClubRecords,
    as_of: datetime,
    book: WeatherBook,
    only: str = "",
    *,
    weather_of: datetime | None = None,
    without: str = "",
) -> dict[str, JobOutlook]:
    """Assess every announced job.

    Args:
        records: the club's records; what was not known at `as_of` is left out here.
        as_of: the moment, aware.
        book: the club's weather.
        only: id of the one job wanted, or "" for all; then all but what is near that job is left out.
        weather_of: the moment whose weather counts, where it is another, or None.
        without: the file of the log that is left out, or "".

    Returns:
        Jobs by id, in the plan's order.
    """
    return memory_of(records, book).jobs(only, as_of, weather_of or as_of, without)


def records_near(records: ClubRecords, job: str, book: WeatherBook) -> ClubRecords:
    """Cut records down to what one job can depend on, and what can be told of it.

    Args:
        records: the club's records.
        job: id of the job.
        book: the club's weather.

    Returns:
        The records with all jobs and entries near it.
    """
    return memory_of(records, book).nearby.of(job)


def as_members_see(records: ClubRecords, book: WeatherBook) -> ClubRecords:
    """Take everything private out of records, once for all that is composed of them with one book.

    Args:
        records: the club's records.
        book: the club's weather.

    Returns:
        The same records as members may see them; each time the same ones, so that what was worked out of them is found.
    """
    memory = memory_of(records, book)
    if memory.seen is None:
        memory.seen = for_members(records)
    return memory.seen


def course_known(known: ClubRecords, as_of: datetime, book: WeatherBook) -> Course:
    """Gather what is known of the course besides the jobs.

    Args:
        known: the records as known at a moment.
        as_of: the moment, aware.
        book: the club's weather.

    Returns:
        What healed jobs have taught.
    """
    return _course(known, memory_of(known, book).taught.at(as_of))


def _course(records: ClubRecords, learnt: Learnt) -> Course:
    return Course(learnt=learnt, target_speed_mm=records.club.target_speed_mm)


class Memory:
    """What was worked out of one set of records with one book of the weather, so that nothing is worked out twice.

    Args:
        records: the records.
        book: the book.

    Attributes:
        nearby: the records, and what each job in them depends on.
        taught: what healed jobs have taught.
        jobs: how jobs stand, by the one wanted, the moment, that of the weather, and the file left out.
        log: the log as stories ask it.
        digests: digests of what was known when.
        seen: the records as members may see them, or None before anybody asked.
        recall: what was worked out before the records were read, or None.
    """

    def __init__(self, records: ClubRecords, book: WeatherBook) -> None:
        self.nearby = Nearby(records)
        self._book = book
        self._ledger = Ledger(records.club, records.surfaces)
        self.taught = Taught(self.nearby, book, self._ledger)
        self.jobs = lru_cache(_JOBS_KEPT)(self._assessed)
        self.log = Log(self.nearby)
        self.digests = KnownDigests(self.nearby)
        self.seen: ClubRecords | None = None
        self.recall: Recall | None = None
        self._clocks: dict[str, LogClock] = {}
        self._known = lru_cache(_STATES_KEPT)(self._known_of)

    def _assessed(self, only: str, as_of: datetime, weather_of: datetime, without: str) -> dict[str, JobOutlook]:
        records = self.nearby.of(only) if only else self.nearby.records
        if only not in self._clocks:
            self._clocks[only] = LogClock(records)
        assessor = JobAssessor(
            known=self._known(only, self._clocks[only].known(as_of), without),
            as_of=as_of.astimezone(records.club.time_zone),
            view=self._book.at(weather_of),
            course=_course(records, self.taught.at(as_of, without=without)),
            ledger=self._ledger,
        )
        return assessor.assess(only)

    def _known_of(self, only: str, so_far: KnownSoFar, without: str) -> Known:
        records = self.nearby.of(only) if only else self.nearby.records
        return Known.of(without_file(records.known_at(so_far.moment), without), self._ledger)


def memory_of(records: ClubRecords, book: WeatherBook) -> Memory:
    """Find what was worked out of some records with a book of the weather.

    Args:
        records: the records.
        book: the club's weather.

    Returns:
        It; still empty where nothing was.
    """
    found = book.memories.get(id(records))
    if found is None or found.nearby.records is not records:
        found = book.memories[id(records)] = Memory(records, book)
    return found


def recall_from(kept: Kept, records: ClubRecords, book: WeatherBook) -> Recall:
    """Use what was worked out before wherever something is worked out of some records with a book of the weather.

    It changes nothing but the time that this takes.

    Args:
        kept: what is kept.
        records: the records, as members may see them.
        book: the club's weather.

    Returns:
        What gives it.
    """
    memory = memory_of(records, book)
    recall = memory.recall = memory.taught.recall = Recall(kept=kept, digests=memory.digests)
    return recall


def job_stood(records: ClubRecords, job: str, at: datetime, book: WeatherBook) -> JobOutlook:
    """Tell how a job stood at a moment that is over.

    Args:
        records: the club's records.
        job: id of the job, announced by then.
        at: the moment, aware.
        book: the club's weather.

    Returns:
        How it stood.
    """
    memory = memory_of(records, book)

    def assess() -> JobOutlook:
        return assess_jobs(records, at, book, only=job)[job]

    if memory.recall is None:
        return assess()
    name, mark = f"stood/{job}/{at.isoformat()}", memory.digests.mark_of(job, at, None)
    return memory.recall.again(name, mark, JobOutlook, assess)


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
