"""What follows from the log for each job and surface, worked out once for all moments that know the same of them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from functools import lru_cache
from typing import Final

from swardcast.outlook.believed import Believed, Heard, Left, believed, left_on
from swardcast.outlook.dates import DateRange
from swardcast.outlook.ledger import JobFacts, as_really_done, job_facts, really_done_by_area
from swardcast.outlook.weather_days import DaysGone
from swardcast.outlook.weather_view import WeatherView
from swardcast.outlook.work_dates import WorkDates
from swardcast.records.club import Club, Surface
from swardcast.records.operations import Operation
from swardcast.records.plan import Job
from swardcast.records.standing import StandingEntries
from swardcast.records.translate import SurfaceSums, density_of, surface_sums

__all__ = ["Ledger"]


@dataclass(frozen=True, slots=True, kw_only=True)
class _There:
    """What of the log tells how a job was done on a surface: the same whatever becomes of other surfaces.

    Args:
        job: id of the job.
        name: id of the surface.
        told_by: the entry that tells how the work was really done, where that differs from the plan, or "".
        facts: what plan and log say of the job.
    """

    job: str
    name: str
    told_by: str
    facts: JobFacts = field(compare=False)

    @classmethod
    def of(cls, facts: JobFacts, name: str) -> _There:
        told_by = facts.surfaces[name].told_by
        return cls(job=facts.job.id, name=name, told_by=told_by.head.id if told_by is not None else "", facts=facts)


_KEPT: Final = 4096
"""Answers of each sort that are kept: those of a year or more, since jobs told one after the other mostly lie near."""


class Ledger:
    """Facts of jobs and what follows from them, each gathered once for the entries that it rests on.

    Assumes that the name of an entry means the same entry, and that of a job the same job, as long as it is used. So
    facts of the same entries are the same object, by which all that rests on them is found.

    Args:
        club: the club.
        surfaces: its surfaces by id.
    """

    def __init__(self, club: Club, surfaces: Mapping[str, Surface]) -> None:
        self._club = club
        self._surfaces = surfaces
        self._facts: dict[tuple[str, tuple[str, ...]], JobFacts] = {}
        self.began = lru_cache(_KEPT)(self._began)
        self._kept_sums = lru_cache(_KEPT)(self._sums_on)
        self.leaves = lru_cache(_KEPT)(self._leaves)
        self._kept_believed = lru_cache(_KEPT)(self._believed)

    def facts_of(self, job: Job, entries: StandingEntries) -> JobFacts:
        """Give what happened to a job, as `job_facts` does."""
        key = (job.id, tuple([entry.head.id for entry in entries.of_job(job.id)]))
        if key not in self._facts:
            self._facts[key] = job_facts(job, entries)
        return self._facts[key]

    def _began(self, facts: JobFacts) -> date:
        """Name the day on which a job began, or is to begin."""
        entries = (entry for there in facts.surfaces.values() for entry in (there.started, there.done) if entry)
        return min([facts.starts, *(self._local(entry.head.true_from) for entry in entries)])

    def sums_on(self, facts: JobFacts, name: str) -> tuple[tuple[Operation, ...], SurfaceSums]:
        """Give the work on a surface as planned or as really done, and what it does there."""
        return self._kept_sums(_There.of(facts, name))

    def _sums_on(self, there: _There) -> tuple[tuple[Operation, ...], SurfaceSums]:
        facts, name = there.facts, there.name
        job, here = facts.job, facts.surfaces[name]
        return as_really_done(job.operations, here.as_done), surface_sums(
            really_done_by_area(job, here, self._surfaces),
            area_m2=self._surfaces[name].area_m2,
            all_area_m2=None,
            density=density_of(self._club),
        )

    def _leaves(self, facts: JobFacts) -> Mapping[str, WorkDates] | None:
        """Tell where a job that is done everywhere leaves something to heal, with the days on which it was done.

        None where it is not done everywhere, or lasts, so that its days hang on more than its own entries.
        """
        done = {name: there.done for name, there in facts.surfaces.items() if there.done is not None}
        if facts.job.lasts or len(done) < len(facts.surfaces):
            return None
        days = {name: DateRange.known(self._local(entry.head.true_from)) for name, entry in done.items()}
        return {
            name: WorkDates(finish=day, reopening=day)
            for name, day in days.items()
            if facts.surfaces[name].normal is None and self.sums_on(facts, name)[1].layers
        }

    def believed(
        self, facts: JobFacts, name: str, start: date, earlier: Believed | None, heard: Heard, view: WeatherView
    ) -> Believed | None:
        """Give what is believed of how a surface heals, as `believed` does.

        Args:
            facts: what plan and log say of the job.
            name: id of the surface.
            start: day 0, done or planned.
            earlier: how the surface heals after the work before it, or None.
            heard: what else is known of the surface.
            view: the weather as known.

        Returns:
            What is believed, or None where nothing has to heal.
        """
        # What is over is the same on later mornings.
        seen = facts.surfaces[name].observations if facts.surfaces[name].done is not None else ()
        days = [start, *(one.head.true_from.date() for one in seen)]
        asks_growth = earlier is not None or seen
        growth: WeatherView | DaysGone = view if asks_growth and max(days) > view.today else view.gone
        observations = tuple([one.head.id for one in seen])
        return self._kept_believed(_There.of(facts, name), observations, start, earlier, heard, growth)

    def _believed(
        self,
        there: _There,
        _: tuple[str, ...],
        start: date,
        earlier: Believed | None,
        heard: Heard,
        growth: WeatherView | DaysGone,
    ) -> Believed | None:
        facts, name = there.facts, there.name
        surface, sums = self._surfaces[name], self.sums_on(facts, name)[1]
        before = Left() if earlier is None else left_on(earlier, start, growth)
        return believed(surface, facts.surfaces[name], sums, start=start, before=before, heard=heard, growth=growth)

    def _local(self, moment: datetime) -> date:
        return moment.astimezone(self._club.time_zone).date()
