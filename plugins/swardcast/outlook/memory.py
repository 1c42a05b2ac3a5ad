"""Jobs assessed at any moment, and the memory by which nothing of it is worked out twice."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from functools import cached_property, lru_cache
from typing import Final, TypeVar

from swardcast.outlook.bookkeeping import Ledger
from swardcast.outlook.jobs import Course, JobAssessor
from swardcast.outlook.kept import Kept
from swardcast.outlook.known import Known
from swardcast.outlook.known_digests import KnownDigests
from swardcast.outlook.learnt import Learnt
from swardcast.outlook.log_clock import KnownSoFar, LogClock
from swardcast.outlook.nearby import Nearby
from swardcast.outlook.recall import Recall
from swardcast.outlook.states import JobOutlook
from swardcast.outlook.story_moments import Log
from swardcast.outlook.taught import Taught, without_file
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.privacy import for_members
from swardcast.records.standing import StandingEntries, as_spoken

__all__ = [
    "Memory",
    "as_members_see",
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

T = TypeVar("T")


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
    return memory_of(records, book).seen


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
        self.recall: Recall | None = None
        self._clocks: dict[str, LogClock] = {}
        self._spoken: dict[str, StandingEntries] = {}
        self._known = lru_cache(_STATES_KEPT)(self._known_of)

    @cached_property
    def seen(self) -> ClubRecords:
        """The records as members may see them."""
        return for_members(self.nearby.records)

    def _assessed(self, only: str, as_of: datetime, weather_of: datetime, without: str) -> dict[str, JobOutlook]:
        return self.assessor(only, as_of, weather_of, without).assess(only)

    def assessor(self, only: str, as_of: datetime, weather_of: datetime, without: str = "") -> JobAssessor:
        """Gather what assessing a job at a moment asks for; see `assess_jobs`."""
        records = self._part(only)
        if only not in self._clocks:
            self._clocks[only] = LogClock(records)
        return JobAssessor(
            known=self._known(only, self._clocks[only].known(as_of), without),
            as_of=as_of.astimezone(records.club.time_zone),
            view=self._book.at(weather_of),
            course=_course(records, self.taught.at(as_of, without=without)),
            ledger=self._ledger,
        )

    def again(self, name: str, job: str, at: datetime, kind: type[T], work_out: Callable[[], T]) -> T:
        """Give what rests on what was known of a job at a moment, as it was worked out before where that is the same.

        Args:
            name: the name under which it is kept.
            job: id of the job.
            at: the moment, aware.
            kind: what it is.
            work_out: works it out.

        Returns:
            The value.
        """
        if self.recall is None:
            return work_out()
        return self.recall.again(name, self.digests.mark_of(job, at, None), kind, work_out)

    def _known_of(self, only: str, so_far: KnownSoFar, without: str) -> Known:
        part = self._part(only)
        if only not in self._spoken:
            self._spoken[only] = as_spoken(part.entries)
        return Known.of(without_file(part.known_at(so_far.moment), without), self._ledger, self._spoken[only])

    def _part(self, only: str) -> ClubRecords:
        """What the job that is wanted can depend on, or all."""
        return self.nearby.of(only) if only else self.nearby.records


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

    def assess() -> JobOutlook:
        return assess_jobs(records, at, book, only=job)[job]

    return memory_of(records, book).again(f"stood/{job}/{at.isoformat()}", job, at, JobOutlook, assess)
