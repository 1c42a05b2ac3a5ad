"""The part of a club's records that one job can depend on: so that a job of last week costs the same in ten years.

A job's dates depend on what earlier work left on its surfaces, on what was said of them since, and on what healed jobs
taught (`outlook.taught`). Work of more than a year before has nothing left to heal, and what is said long after a job
is over says nothing of it.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import cached_property
from typing import Final

from swardcast.records.folder import ClubRecords
from swardcast.records.log import Entry, PlanChange
from swardcast.records.log_by_job import LogByJob
from swardcast.records.plan import Job

__all__ = ["Nearby"]

_FAR: Final = timedelta(days=400)
"""How far apart two pieces of work have nothing to do with each other, and for how long after its last entry a job may
still be told of: a year in which everything grows, and what the weather is kept for (300 days) and more; judgement."""


_DAY: Final = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class _Span:
    first: date
    last: date

    def is_near(self, other: _Span) -> bool:
        return self.first - _FAR <= other.last and other.first - _FAR <= self.last


class _Beside:
    """Jobs in the order of their first days, so that nobody looks at those of all years.

    Args:
        spans: days of each job, by its id.
    """

    def __init__(self, spans: Mapping[str, _Span]) -> None:
        self._in_order = sorted(spans.items(), key=lambda its: its[1].first)
        self._longest = max((span.last - span.first for span in spans.values()), default=timedelta(0))

    def near(self, span: _Span) -> set[str]:
        """Name those that are near some days."""
        earliest, latest = span.first - _FAR - self._longest, span.last + _FAR
        begin = bisect_left(self._in_order, earliest, key=lambda its: its[1].first)
        end = bisect_right(self._in_order, latest, key=lambda its: its[1].first)
        return {name for name, its in self._in_order[begin:end] if its.is_near(span)}


class Nearby:
    """Cuts a club's records down to what one job can depend on.

    Args:
        records: the club's records, all of them.

    Attributes:
        records: the same.
        log: their log, by job.
    """

    def __init__(self, records: ClubRecords) -> None:
        self.records = records
        self.log = LogByJob(records.entries)
        self._found: dict[str, ClubRecords] = {}
        self._beside: dict[tuple[str, ...], _Beside] = {}

    def of(self, name: str) -> ClubRecords:
        """Cut the records down.

        Args:
            name: id of a job.

        Returns:
            The records with the jobs that share a surface with it and lie near it in time, their entries, and what the
            log says of no job in that time; everything else as it is.
        """
        if name not in self._found:
            self._found[name] = self._cut(self.records.jobs[name])
        return self._found[name]

    def jobs_near(self, name: str) -> set[str]:
        """Name the jobs that a job can depend on, itself among them."""
        surfaces, span = self.records.jobs[name].surfaces, self._spans[name]
        if surfaces not in self._beside:
            self._beside[surfaces] = _Beside(
                {one: self._spans[one] for surface in surfaces for one in self._on_surface.get(surface, ())}
            )
        return self._beside[surfaces].near(span) | {name}

    def days_near(self, name: str) -> tuple[date, date]:
        """Give the first and the last day of what the log says of no job, and a job can depend on."""
        span = self._spans[name]
        return span.first - _FAR, span.last + _FAR

    def _cut(self, job: Job) -> ClubRecords:
        kept, (first, last) = self.jobs_near(job.id), self.days_near(job.id)
        asked = [place for one in kept for place in self.log.places_of(one)]
        begin, end = (bisect_left(self._of_none, (day,)) for day in (first, last + _DAY))
        asked += [place for _, place in self._of_none[begin:end]]
        return replace(
            self.records,
            jobs={one: self.records.jobs[one] for one in sorted(kept, key=self._places.__getitem__)},
            entries=self.log.with_corrections(asked),
        )

    @cached_property
    def _of_none(self) -> list[tuple[date, int]]:
        """The days of entries that speak of no job, with their places in the log, the first day first."""
        return sorted((_day(entry), place) for place, entry in self.log.of_none)

    @cached_property
    def _places(self) -> Mapping[str, int]:
        return {name: place for place, name in enumerate(self.records.jobs)}

    @cached_property
    def _on_surface(self) -> Mapping[str, list[str]]:
        found: dict[str, list[str]] = {}
        for job in self.records.jobs.values():
            for surface in job.surfaces:
                found.setdefault(surface, []).append(job.id)
        return found

    @cached_property
    def _spans(self) -> Mapping[str, _Span]:
        return {job.id: self._span(job) for job in self.records.jobs.values()}

    def _span(self, job: Job) -> _Span:
        entries = self.log.speaking_of(job.id)
        days = [job.announced, job.starts, *map(_day, entries)]
        days += [entry.starts for entry in entries if isinstance(entry, PlanChange) and entry.starts is not None]
        lasts = [stretch.to_days for stretch in (job.normal_after, job.reopens_after) if stretch is not None]
        return _Span(min(days), max(days) + timedelta(days=max(lasts, default=0)))


def _day(entry: Entry) -> date:
    return entry.head.true_from.date()
