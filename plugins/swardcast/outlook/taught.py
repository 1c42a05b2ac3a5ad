"""What healed jobs have taught, as it was known at any moment."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime
from functools import cached_property
from itertools import chain
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.outlook.bookkeeping import Ledger
from swardcast.outlook.called_normal import CalledNormal, called_normal
from swardcast.outlook.jobs import Course, JobAssessor
from swardcast.outlook.known import Known
from swardcast.outlook.learnt import Learnt
from swardcast.outlook.ledger import JobFacts
from swardcast.outlook.lessons import lessons_of
from swardcast.outlook.log_clock import LogClock
from swardcast.outlook.nearby import Nearby
from swardcast.outlook.recall import Recall
from swardcast.outlook.states import Lessons
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Correction, Entry, GrowthHeldBack, MorningStatus, NoteToMembers

__all__ = ["Taught", "without_file"]

_NOTHING: Final[Lessons] = ()


class Taught:
    """What the jobs called back to normal have taught, worked out once for each state of the log.

    Args:
        nearby: the club's records, and what each job in them depends on.
        book: the club's weather.
        ledger: what plan and log say of jobs.

    Attributes:
        recall: what was worked out before the records were read, or None.
    """

    def __init__(self, nearby: Nearby, book: WeatherBook, ledger: Ledger) -> None:
        self._ledger = ledger
        self._nearby = nearby
        self._book = book
        self.recall: Recall | None = None
        self._nothing = Learnt()
        self._alike: dict[tuple[int, ...], Learnt] = {(): self._nothing}
        self._now = self._nothing

    def at(self, moment: datetime, *, without: str = "") -> Learnt:
        """Tell what was known of lessons at a moment.

        Args:
            moment: the moment, aware.
            without: the file of the log that is left out, or "".

        Returns:
            Lessons in the order in which their jobs were first called back to normal; the same ones are one and the
            same `Learnt`.
        """
        self._go_to(moment)
        resting_on_it = self._by_file.get(without, ()) if without else ()
        if not resting_on_it:
            return self._now
        lessons = list(self._lessons)
        for place in resting_on_it:
            lessons[place] = self._of(self._called[place], moment, without)
        return self._learnt(lessons)

    def _go_to(self, moment: datetime) -> None:
        """Ask again for the lessons that another moment may have changed, and for none of the others."""
        at = moment.timestamp()
        changed = False
        for place in np.flatnonzero((self._since > at) | (self._until <= at)).tolist():
            called = self._called[place]
            known = called.clock.known(moment)  # the first thing that becomes known is the first call
            self._since[place], self._until[place] = known.since, known.until
            found = self._of(called, moment, "")
            changed |= found is not self._lessons[place]
            self._lessons[place] = found
        if changed:
            self._now = self._learnt(self._lessons)

    def _learnt(self, lessons: Iterable[Lessons]) -> Learnt:
        found = tuple(chain.from_iterable(lessons))
        return self._alike.setdefault(tuple(map(id, found)), Learnt(found, self._nothing.priors, self._nothing.reasons))

    def _of(self, called: _Called, moment: datetime, without: str) -> Lessons:
        if moment.timestamp() < called.its.first:
            return _NOTHING
        key = (called.clock.known(moment).changes, without)
        if key not in called.by_log:
            called.by_log[key] = self._recalled(called, moment, without)
        return called.by_log[key]

    def _recalled(self, called: _Called, moment: datetime, without: str) -> Lessons:
        """Give it again where it was worked out before; it stays the same until something becomes known of its part."""

        def work_out() -> Lessons:
            return self._worked_out(called, moment, without)

        if self.recall is None or without:
            return work_out()
        until = called.clock.last_change(moment)
        job = called.its.job
        return self.recall.latest(f"lesson/{job}", job, until, tuple, work_out)

    def _worked_out(self, called: _Called, moment: datetime, without: str) -> Lessons:
        """Of the same facts it is the same whatever else became known: mostly that other work has healed."""
        known = Known.of(without_file(called.part.known_at(moment), without), self._ledger)
        own = known.facts_of(called.its.job)
        normal = [one.normal.head.at for one in own.surfaces.values() if one.normal is not None] if own else []
        if own is None or not normal or (view := self._book.at(max(normal))) is None:
            return ()
        at = max(normal).astimezone(known.records.club.time_zone)
        course = Course(learnt=self._nothing)
        assessor = JobAssessor(known=known, as_of=at, view=view, course=course, ledger=self._ledger)
        held_back = tuple(entry.head.id for entry in known.entries if isinstance(entry, GrowthHeldBack))
        key = (tuple(assessor.facts_before(called.its.job)), held_back)
        if key not in called.by_facts:
            seen = assessor.believed_of(called.its.job)
            called.by_facts[key] = lessons_of(own, known.records.surfaces, seen, view)
        return called.by_facts[key]

    @cached_property
    def _called(self) -> list[_Called]:
        """The jobs of the records that were ever called back to normal, in the order of their first calls."""
        records = self._nearby.records
        return [_Called(one, self._nearby) for one in called_normal(records.entries) if one.job in records.jobs]

    @cached_property
    def _by_file(self) -> Mapping[str, list[int]]:
        """Which of them can rest on a file of the log."""
        found: dict[str, list[int]] = {}
        for place, called in enumerate(self._called):
            for file in dict.fromkeys(entry.head.file for entry in called.part.entries):
                found.setdefault(file, []).append(place)
        return found

    @cached_property
    def _lessons(self) -> list[Lessons]:
        """What each taught at the moment asked for last; true from `_since` until `_until`."""
        return [_NOTHING for _ in self._called]

    @cached_property
    def _since(self) -> NDArray[np.float64]:
        return np.full(len(self._called), np.inf)

    @cached_property
    def _until(self) -> NDArray[np.float64]:
        return np.full(len(self._called), np.inf)


@dataclass(eq=False)
class _Called:
    """A job that was called back to normal, and its lessons as far as they were worked out.

    Args:
        its: when it was called so.
        near: the club's records, and what the job depends on.
        by_log: lessons worked out before, by how much was known, and the file left out.
        by_facts: the same by the facts of jobs near it, and the entries on growth held back.
    """

    its: CalledNormal
    near: Nearby
    by_log: dict[tuple[int, str], Lessons] = field(default_factory=dict)
    by_facts: dict[tuple[tuple[JobFacts, ...], tuple[str, ...]], Lessons] = field(default_factory=dict)

    @cached_property
    def part(self) -> ClubRecords:
        """The records that its lesson can rest on: what was true until its last call, and says more than play."""
        records = self.near.of(self.its.job)
        return replace(records, entries=tuple(filter(self._counts, records.entries)))

    def _counts(self, entry: Entry) -> bool:
        if isinstance(entry, MorningStatus | NoteToMembers):
            return False
        return isinstance(entry, Correction) or entry.head.true_from_s <= self.its.last

    @cached_property
    def clock(self) -> LogClock:
        """Tells moments apart between which something became known of that, from its first call on."""
        return LogClock(self.part, self.its.first)


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
