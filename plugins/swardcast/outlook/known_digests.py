"""Digests of what was known at a moment: two that are the same stand for the same story of a job up to then.

A digest of everything known by a moment is cheap where the facts are put in the order in which they became known, each
on top of those before. What belongs to a job is cut out of all records, later ones too (`nearby`, `taught`), so a later
record can move the cut: what of it was known by the moment is therefore part of the digest.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right, insort
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, fields, replace
from datetime import date, datetime, time, timedelta
from functools import cached_property
from hashlib import sha256
from itertools import accumulate, groupby
from math import inf
from typing import Final

from swardcast.outlook.called_normal import CalledNormal, called_normal
from swardcast.outlook.kept import Mark
from swardcast.outlook.nearby import Nearby
from swardcast.records.club import Club
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Entry

__all__ = ["KnownDigests"]

_OF_WORDS: Final = ("catalogue", "look", "groups")
"""Fields of a club that say how things are said and shown: no sum asks for them, nor does a story."""
_SUMS_TO: Final = 1 << 256  # digests are added up, so that the order in which they are added does not count


class KnownDigests:
    """Digests of what was known at any moment, of one set of records.

    Args:
        nearby: the records, and what each job in them depends on.
    """

    def __init__(self, nearby: Nearby) -> None:
        self._nearby = nearby
        self._records = nearby.records
        self._cuts: dict[str, _Cut] = {}

    def mark_of(self, job: str, until: datetime, latest: date | None) -> Mark:
        """Give the mark of what was replayed of a job.

        Args:
            job: id of the job.
            until: the last moment, aware.
            latest: the first day of fixtures that have no part in it, or None where none has.

        Returns:
            The mark.
        """
        at = until.timestamp()
        begin = self._records.jobs[job].announced
        fixtures = (one for first, last, one in self._fixtures if latest and last >= begin and first < latest)
        parts = (
            self._by_then.known_at(at),
            self._cut(job).known_at(at),
            self._lessons.known_at(at),
            _digest(*fixtures),
        )
        return Mark(until=until, latest=latest, digest=_digest(job, *(part.hex() for part in parts)).hex())

    def mark_of_words(self, job: str, until: datetime, more: str = "") -> Mark:
        """Give the mark of what is said of a job.

        Assumes that whoever said it knew the records as they stood at a moment, and all fixtures.

        Args:
            job: id of the job.
            until: the moment, aware.
            more: what else has a part in it.

        Returns:
            The mark.
        """
        whole = self.mark_of(job, until, date.max)
        return replace(whole, digest=_digest(whole.digest, self._words, more).hex())

    @cached_property
    def _words(self) -> str:
        """How things are said and shown."""
        club = self._records.club
        groups = [(group.name, sorted(group.surfaces)) for group in club.groups]
        return repr((club.catalogue.digest, club.look, groups))

    @cached_property
    def _fixtures(self) -> list[tuple[date, date, str]]:
        return [(one.first_day, one.last_day, repr(one)) for one in self._records.fixtures]

    @cached_property
    def _by_then(self) -> _Steps:
        return _Steps(_always(self._records), _facts(self._records, self._heard))

    @cached_property
    def _heard(self) -> Mapping[str, float]:
        """When each job was first heard of, as a timestamp: it was announced, or an entry speaks of it."""
        entered = self._nearby.log.speaking_of
        return {
            name: min([_midnight(job.announced, self._records), *(one.head.at_s for one in entered(name))])
            for name, job in self._records.jobs.items()
        }

    def _cut(self, job: str) -> _Cut:
        if job not in self._cuts:
            begin, end = self._nearby.days_near(job)
            near = _Steps(repr((job, begin)), ((self._heard[one], one) for one in self._nearby.jobs_near(job)))
            self._cuts[job] = _Cut(near=near, end=float(end.toordinal()), days=self._days_of_none)
        return self._cuts[job]

    @cached_property
    def _days_of_none(self) -> _Latest:
        """The latest day of which entries speak that belong to no job."""
        return _Latest((entry for _, entry in self._nearby.log.of_none), _day)

    @cached_property
    def _lessons(self) -> _Lessons:
        entries = self._records.entries
        ends = _Latest(entries, _true_from)
        return _Lessons(_Lesson(called=one, cut=self._cut(one.job), ends=ends) for one in called_normal(entries))


class _Steps:
    """Digests of facts, each on top of all that became known before it.

    Args:
        always: what is known at all times.
        facts: moments as timestamps, and what became known then.
    """

    def __init__(self, always: str, facts: Iterable[tuple[float, str]]) -> None:
        found = sorted(facts)
        self._times = [at for at, _ in found]
        self._digests = list(accumulate((f"{at!r} {fact}" for at, fact in found), _on_top, initial=_digest(always)))

    def known_at(self, at: float) -> bytes:
        """Give the digest of all that is known at a moment."""
        return self._digests[bisect_right(self._times, at)]

    def changes_after(self, at: float) -> Sequence[float]:
        """Give the later moments at which it becomes another."""
        return self._times[bisect_right(self._times, at) :]


class _Latest:
    """The latest time of which entries speak, by the moments at which they were made.

    Args:
        entries: entries.
        time_of: the time of which one speaks, as a number.
    """

    def __init__(self, entries: Iterable[Entry], time_of: Callable[[Entry], float]) -> None:
        made = sorted((one.head.at_s, time_of(one)) for one in entries)
        self._times = [at for at, _ in made]
        self._latest = list(accumulate((time for _, time in made), max, initial=-inf))

    def known_at(self, at: float, end: float) -> float:
        """Give the latest time at a moment; what is later than `end` counts as that."""
        return min(end, self._latest[bisect_right(self._times, at)])

    def changes_after(self, at: float, end: float) -> Sequence[float]:
        """Give the later moments at which that may become another: none once `end` is reached."""
        return self._times[bisect_right(self._times, at) : bisect_left(self._latest, end)]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Cut:
    """What is cut out of the records for one job.

    Args:
        near: the jobs in it, as they were heard of.
        end: the last day of which entries that belong to no job are in it, as a number.
        days: the latest day of which such entries speak.
    """

    near: _Steps
    end: float
    days: _Latest

    def known_at(self, at: float) -> bytes:
        """Give the digest of what of it is known at a moment."""
        return _digest(self.near.known_at(at).hex(), str(self.days.known_at(at, self.end)))

    def changes_after(self, at: float) -> Iterator[float]:
        """Give the later moments at which it may become another."""
        yield from self.near.changes_after(at)
        yield from self.days.changes_after(at, self.end)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Lesson:
    """What is cut out of the records for one lesson.

    Args:
        called: the job that was called back to normal.
        cut: what is cut out of the records for that job.
        ends: the latest timestamp of which any entry speaks.
    """

    called: CalledNormal
    cut: _Cut
    ends: _Latest

    def known_at(self, at: float) -> int:
        """Give the digest of what of it is known at a moment, as a number."""
        end = self.ends.known_at(at, self.called.last)
        return int.from_bytes(_digest(repr(self.called.order), self.cut.known_at(at).hex(), str(end)))

    def steps(self) -> Iterator[tuple[float, int]]:
        """Give the moments at which it may become another, its first call among them, and by how much it grows then."""
        first, before = self.called.first, 0
        moments = {first, *self.cut.changes_after(first), *self.ends.changes_after(first, self.called.last)}
        for at in sorted(moments):
            now = self.known_at(at)
            yield at, now - before
            before = now


class _Lessons:
    """The sum of what is cut out of the records for each lesson, step by step: few of them change at a moment."""

    def __init__(self, lessons: Iterable[_Lesson]) -> None:
        steps = sorted(step for one in lessons for step in one.steps())
        self._times = [at for at, _ in steps]
        self._sums = list(accumulate((growth for _, growth in steps), initial=0))

    def known_at(self, at: float) -> bytes:
        """Give the digest of what of it is known at a moment."""
        return _digest(str(self._sums[bisect_right(self._times, at)] % _SUMS_TO))


def _true_from(entry: Entry) -> float:
    return entry.head.true_from_s


def _day(entry: Entry) -> float:
    return float(entry.head.true_from.toordinal())


def _always(records: ClubRecords) -> str:
    """What counts as known at all times."""
    club = [repr(getattr(records.club, one.name)) for one in fields(Club) if one.name not in _OF_WORDS]
    return "\n".join((*club, *map(repr, records.surfaces.values())))


def _facts(records: ClubRecords, heard: Mapping[str, float]) -> Iterator[tuple[float, str]]:
    """What became known when."""
    yield from _plan(records, heard)
    for entry in records.entries:
        yield entry.head.at_s, repr(entry)
    weather = records.weather
    for forecast in weather.forecasts:
        yield forecast.issued_at.timestamp(), repr(forecast)
    for day, mean_c in weather.observed_c.items():
        yield _midnight(day + timedelta(days=1), records), repr((day, mean_c))
    for year, days in groupby(sorted(weather.history_c.items()), key=lambda one: one[0].year):
        yield _midnight(date(year + 1, 1, 1), records), repr(list(days))


def _plan(records: ClubRecords, heard: Mapping[str, float]) -> Iterator[tuple[float, str]]:
    """Jobs as they are heard of, each after the one that stands before it in the plan, and as they are withdrawn."""
    names, known = tuple(records.jobs), list[int]()
    for place, name in sorted(enumerate(names), key=lambda one: (heard[one[1]], one[0])):
        job, before = records.jobs[name], bisect_left(known, place)
        yield heard[name], repr((names[known[before - 1]] if before else "", replace(job, withdrawn=None)))
        insort(known, place)
        if job.withdrawn is not None:
            yield job.withdrawn.at.timestamp(), f"withdrawn: {name}"


def _midnight(day: date, records: ClubRecords) -> float:
    return datetime.combine(day, time(0), tzinfo=records.club.time_zone).timestamp()


def _on_top(before: bytes, fact: str) -> bytes:
    return _digest(before.hex(), fact)


def _digest(*parts: str) -> bytes:
    return sha256("\n".join(parts).encode()).digest()
