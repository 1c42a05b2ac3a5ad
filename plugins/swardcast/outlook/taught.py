"""What healed jobs have taught, as it was known at any moment."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime
from functools import cached_property
from math import inf

from swardcast.outlook.assessing import assess_known
from swardcast.outlook.believed import Course
from swardcast.outlook.ledger import Ledger
from swardcast.outlook.lessons import lessons_of
from swardcast.outlook.nearby import Nearby
from swardcast.outlook.states import Lessons
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.log import BackToNormal, Correction, Entry, MorningStatus, NoteToMembers
from swardcast.records.standing import standing_entries

__all__ = ["Taught", "without_file"]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Known:
    """How much of the records is known at a moment: what is not told apart by it is the same.

    Args:
        entries: how many entries.
        announced: how many jobs are announced.
        withdrawn: the jobs that are withdrawn.
    """

    entries: int
    announced: int
    withdrawn: frozenset[str]


class Taught:
    """What the jobs called back to normal have taught, worked out once for each state of the log.

    Args:
        nearby: the club's records, and what each job in them depends on.
        book: the club's weather.
        ledger: what plan and log say of jobs.
    """

    def __init__(self, nearby: Nearby, book: WeatherBook, ledger: Ledger) -> None:
        self._ledger = ledger
        self._nearby = nearby
        self._book = book
        self._by_job: dict[tuple[str, _Known, str], Lessons] = {}
        self._by_log: dict[tuple[_Known, str], Lessons] = {}

    def at(self, moment: datetime, *, without: str = "") -> Lessons:
        """Tell what was known of lessons at a moment.

        Args:
            moment: the moment, aware.
            without: the file of the log that is left out, or "".

        Returns:
            Lessons in the order in which their jobs were first called back to normal.
        """
        known = self._all.known(moment)
        key = (known, without)
        if key not in self._by_log:
            found = [lesson for name in self._calls for lesson in self._of(name, moment, without)]
            self._by_log[key] = tuple(found)
        return self._by_log[key]

    def _of(self, name: str, moment: datetime, without: str) -> Lessons:
        if moment.timestamp() < self._calls[name][0]:
            return ()
        clock = self._clocks[name]
        without = without if without in clock.files else ""
        key = (name, clock.known(moment), without)
        if key not in self._by_job:
            self._by_job[key] = self._worked_out(name, moment, without)
        return self._by_job[key]

    def _worked_out(self, name: str, moment: datetime, without: str) -> Lessons:
        known = without_file(self._parts[name].known_at(moment), without)
        if name not in known.jobs:
            return ()
        entries = standing_entries(known.entries)
        facts = self._ledger.facts_of(known.jobs[name], entries)
        normal = [surface.normal.head.at for surface in facts.surfaces.values() if surface.normal is not None]
        if not normal or (view := self._book.at(max(normal))) is None:
            return ()
        outlook = assess_known(known, max(normal), view, name, Course(entries=entries), self._ledger)[name]
        return lessons_of(facts, outlook, view)

    @cached_property
    def _calls(self) -> Mapping[str, tuple[float, datetime]]:
        """When each job was first called back to normal, as a timestamp, and the last day of such a call, by its id.

        In the order of the calls, those that were withdrawn among them.
        """
        found: dict[str, tuple[float, datetime]] = {}
        calls = (entry for entry in self._nearby.records.entries if isinstance(entry, BackToNormal))
        for entry in sorted(calls, key=lambda entry: entry.head.true_from.timestamp()):
            first, _ = found.get(entry.job, (inf, None))
            found[entry.job] = min(first, entry.head.at.timestamp()), entry.head.true_from
        return found

    @cached_property
    def _parts(self) -> Mapping[str, ClubRecords]:
        """The records that each lesson can rest on: what was true until its call, and says more than play."""
        return {name: self._until(self._nearby.of(name), last) for name, (_, last) in self._calls.items()}

    @staticmethod
    def _until(records: ClubRecords, last: datetime) -> ClubRecords:
        def counts(entry: Entry) -> bool:
            if isinstance(entry, MorningStatus | NoteToMembers):
                return False
            return isinstance(entry, Correction) or entry.head.true_from.timestamp() <= last.timestamp()

        return replace(records, entries=tuple(filter(counts, records.entries)))

    @cached_property
    def _all(self) -> _Clock:
        return _Clock(self._nearby.records)

    @cached_property
    def _clocks(self) -> Mapping[str, _Clock]:
        return {name: _Clock(part) for name, part in self._parts.items()}


class _Clock:
    """Tells two moments apart between which something became known of some records."""

    def __init__(self, records: ClubRecords) -> None:
        self._zone = records.club.time_zone
        self._entered = sorted(entry.head.at.timestamp() for entry in records.entries)
        self._announced: list[date] = sorted(job.announced for job in records.jobs.values())
        self._may_go = [job for job in records.jobs.values() if job.withdrawn is not None]
        self.files = frozenset(entry.head.file for entry in records.entries)

    def known(self, moment: datetime) -> _Known:
        today = moment.astimezone(self._zone).date()
        return _Known(
            entries=bisect_right(self._entered, moment.timestamp()),
            announced=bisect_right(self._announced, today),
            withdrawn=frozenset(job.id for job in self._may_go if job.is_withdrawn(moment)),
        )


def without_file(records: ClubRecords, file: str) -> ClubRecords:
    """Leave out what one file of the log says.

    Args:
        records: the records.
        file: the file, or "" for none.

    Returns:
        The records without its entries.
    """
    if not file:
        return records
    return replace(records, entries=tuple(entry for entry in records.entries if entry.head.file != file))
