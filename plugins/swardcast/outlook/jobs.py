"""How one job stands: its state, its dates and their reasons on each surface, and for the job as a whole."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime, timedelta

import numpy as np

from swardcast.outlook.ledger import JobFacts, SurfaceFacts, as_really_done
from swardcast.outlook.recovery import Course, is_validated, layers_on, recovery_of
from swardcast.outlook.states import (
    DateRange,
    JobOutlook,
    Milestone,
    Reason,
    ReasonKind,
    Recovery,
    SurfaceWork,
    Work,
    date_range,
)
from swardcast.outlook.weather_book import WeatherView
from swardcast.outlook.working_days import finishing_days, working_day_after
from swardcast.records.club import Surface
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Job, Stretch
from swardcast.records.translate import SurfaceSums, surface_sums
from swardcast.turf.few_years import ENOUGH_YEARS
from swardcast.turf.growth import BRAKES, GRASSES
from swardcast.turf.healing import Layers
from swardcast.turf.sand import DEFAULT_DENSITY_T_PER_M3

__all__ = ["JobAssessor"]

_HEALING_MILESTONES = (Milestone.SETTLED, Milestone.HOLES_CLOSED, Milestone.BACK_TO_NORMAL)
_NO_DATE = DateRange(early=None, likely=None, allow_until=None)


@dataclass(slots=True)
class JobAssessor:
    """Assesses jobs at one moment, oldest first, so that later work finds what earlier work left.

    Args:
        records: the club's records as known at the moment.
        as_of: the moment in local time.
        view: the weather as known, or None when there is no history.
        course: what is known of the course besides the jobs.
    """

    records: ClubRecords
    as_of: datetime
    view: WeatherView | None
    course: Course
    _healing: dict[str, list[Recovery]] = field(default_factory=dict)

    def assess(self, facts: JobFacts) -> JobOutlook:
        """Assess one job.

        Args:
            facts: what plan and log say of it.

        Returns:
            How it stands.
        """
        days = self._days(facts)
        areas = [self.records.surfaces[name].area_m2 for name in facts.job.surfaces]
        all_area = None if None in areas else sum(area for area in areas if area)
        course = self._course_before(facts)
        works = tuple(self._surface(name, facts, days[name], all_area, course) for name in facts.job.surfaces)
        return JobOutlook(
            job=facts.job,
            work=_work_of_all(works),
            starts=facts.starts,
            surfaces=works,
            dates={milestone: _range_of_all(works, milestone) for milestone in Milestone},
            changed_because=facts.changes[-1].because if facts.changes else "",
        )

    def _days(self, facts: JobFacts) -> dict[str, DateRange]:
        """The day on which the work on each surface is, or is to be, finished."""
        weekdays = self.records.club.working_days
        today = self.as_of.date()
        finished = {name: self._local(s.done.head.true_from) for name, s in facts.surfaces.items() if s.done}
        left = [name for name in facts.job.surfaces if name not in finished]
        held = [self._local(h.head.true_from) for name in left if (h := facts.surfaces[name].held)]
        begin = max([today, facts.starts, *(day + timedelta(days=1) for day in held)])
        taken = sum(1 for day in finished.values() if day == begin)
        to_come = finishing_days(begin, taken + len(left), a_day=facts.job.surfaces_a_day, weekdays=weekdays)[taken:]
        days = {name: DateRange.known(day) for name, day in finished.items()}
        for name, day in zip(left, to_come, strict=True):
            latest = working_day_after(day, facts.job.spare_days, weekdays)
            days[name] = DateRange(early=day, likely=day, allow_until=latest)
        return days

    def _local(self, moment: datetime) -> date:
        return moment.astimezone(self.records.club.time_zone).date()

    def _course_before(self, facts: JobFacts) -> Course:
        """What healed before this work began: a date must not move for a reason that its own story does not tell."""
        entries = (entry for there in facts.surfaces.values() for entry in (there.started, there.done) if entry)
        began = min([facts.starts, *(self._local(entry.head.true_from) for entry in entries)])
        return replace(self.course, lessons=tuple(told for told in self.course.lessons if told[2].normal_on <= began))

    def _surface(
        self, name: str, facts: JobFacts, finish: DateRange, all_area: float | None, course: Course
    ) -> SurfaceWork:
        surface, job, here = self.records.surfaces[name], facts.job, facts.surfaces[name]
        recovery: Recovery | None = None
        dates = dict.fromkeys(Milestone, _NO_DATE)
        operations = as_really_done(job.operations, here.as_done)
        sums = surface_sums(
            operations,
            area_m2=surface.area_m2,
            all_area_m2=all_area,
            density=self.records.club.sand_density_t_per_m3 or DEFAULT_DENSITY_T_PER_M3,
        )
        if facts.called_off is None or here.done is not None:
            recovery = self._recovery(surface, here, sums, finish, course)
            dates = _dates(job, here, finish, recovery, nothing_to_heal=surface.grass is None or not sums.layers)
        work, reasons = self._state(surface, facts, here, dates, recovery)
        return SurfaceWork(
            surface=surface,
            job=job,
            work=work,
            dates=dates,
            recovery=recovery,
            reasons=reasons,
            operations=operations,
            sums=sums,
            started_at=here.started.head.true_from if here.started else None,
            done_at=here.done.head.true_from if here.done else None,
        )

    def _recovery(
        self, surface: Surface, here: SurfaceFacts, sums: SurfaceSums, finish: DateRange, course: Course
    ) -> Recovery | None:
        if self.view is None or finish.likely is None:
            return None
        earlier = self._healing.setdefault(surface.id, [])
        before: Layers = ()
        if earlier and surface.grass is not None:
            before = layers_on(earlier[-1], surface.grass, finish.likely, self.view)
        start = finish.likely
        recovery = recovery_of(surface, here, sums, start=start, before=before, view=self.view, course=course)
        if recovery is not None and here.normal is None:
            earlier.append(recovery)
        return recovery

    def _state(
        self,
        surface: Surface,
        facts: JobFacts,
        here: SurfaceFacts,
        dates: Mapping[Milestone, DateRange],
        recovery: Recovery | None,
    ) -> tuple[Work, tuple[Reason, ...]]:
        if here.done is None:
            work, reason = self._not_done(facts, here)
            about = () if work is Work.CALLED_OFF else self._about_dates(surface, facts.job, dates, recovery)
            return work, (reason, *about)
        done = Reason(kind=ReasonKind.DONE, source=here.done.head.id, at=here.done.head.true_from)
        if here.normal is not None:
            head = here.normal.head
            return Work.BACK_TO_NORMAL, (Reason(kind=ReasonKind.SAID_NORMAL, source=head.id, at=head.true_from), done)
        normal = dates[Milestone.BACK_TO_NORMAL]
        if normal.allow_until is not None and normal.allow_until < self.as_of.date():
            kind = ReasonKind.COMPUTED_NORMAL
            return Work.BACK_TO_NORMAL, (Reason(kind=kind, source="computed", at=normal.allow_until), done)
        if self.view is not None and recovery is None and facts.job.normal_after is None:
            return Work.BACK_TO_NORMAL, (done, Reason(kind=ReasonKind.NO_HEALING, source="computed"))
        return Work.HEALING, (done, *self._about_dates(surface, facts.job, dates, recovery))

    def _not_done(self, facts: JobFacts, here: SurfaceFacts) -> tuple[Work, Reason]:
        if facts.called_off is not None:
            head = facts.called_off.head
            words = facts.called_off.because
            return Work.CALLED_OFF, Reason(kind=ReasonKind.CALLED_OFF, source=head.id, at=head.true_from, words=words)
        if here.held is not None:
            head, words = here.held.head, here.held.because
            return Work.HELD_UP, Reason(kind=ReasonKind.HELD_UP, source=head.id, at=head.true_from, words=words)
        if here.started is not None:
            head = here.started.head
            return Work.UNDER_WAY, Reason(kind=ReasonKind.STARTED, source=head.id, at=head.true_from)
        source = f"{facts.job.file}, line {facts.job.line}"
        if facts.starts < self.as_of.date() and not any(s.started for s in facts.surfaces.values()):
            return Work.PLANNED, Reason(kind=ReasonKind.OVERDUE, source=source, at=facts.starts)
        if facts.changes:
            change = facts.changes[-1]
            reason = Reason(kind=ReasonKind.MOVED, source=change.head.id, at=facts.starts, words=change.because)
            return Work.PLANNED, reason
        return Work.PLANNED, Reason(kind=ReasonKind.PLANNED, source=source, at=facts.starts)

    def _about_dates(
        self, surface: Surface, job: Job, dates: Mapping[Milestone, DateRange], recovery: Recovery | None
    ) -> Iterator[Reason]:
        if job.normal_after is not None:
            yield Reason(
                kind=ReasonKind.RULE_OF_THUMB, source=f"{job.file}, line {job.line}", words=job.normal_after.source
            )
        elif self.view is None:
            yield Reason(kind=ReasonKind.NO_HISTORY, source="weather/history")
        elif recovery is not None:
            yield from self._about_recovery(surface, recovery, dates[Milestone.BACK_TO_NORMAL], self.view)

    def _about_recovery(
        self, surface: Surface, recovery: Recovery, normal: DateRange, view: WeatherView
    ) -> Iterator[Reason]:
        if not normal.is_given:
            yield Reason(kind=ReasonKind.NOT_THIS_SEASON, source="computed")
        yield Reason(kind=ReasonKind.COMPUTED, source="computed", at=recovery.start)
        yield from _about_pace(recovery)
        if not is_validated(surface, recovery.sums) or (surface.grass and not GRASSES[surface.grass.value].fitted):
            yield Reason(kind=ReasonKind.NOT_VALIDATED, source="computed")
        if (years := view.ensemble.past_years) < ENOUGH_YEARS:
            yield Reason(kind=ReasonKind.SHORT_HISTORY, source="weather/history", words=str(years))
        missing = view.unobserved_days(recovery.start)
        if missing:
            yield Reason(kind=ReasonKind.WEATHER_MISSING, source="weather/observed.csv", words=str(missing))


def _about_pace(recovery: Recovery) -> Iterator[Reason]:
    for lesson in recovery.lessons:
        words = f"{lesson.title}: {lesson.days_taken:.0f} days, computed {lesson.days_computed:.0f}"
        yield Reason(kind=ReasonKind.LEARNT, source=lesson.source, at=lesson.normal_on, words=words)
    for entry in recovery.held_back:
        brake = BRAKES[entry.by.value]
        words = f"{brake.name}; growth counts {100 * brake.growth_left:.0f} %"
        yield Reason(
            kind=ReasonKind.HELD_BACK, source=entry.head.id, at=entry.first_day, words=words, until=entry.last_day
        )
    for look in recovery.looks:
        yield Reason(kind=ReasonKind.OBSERVED, source=look.source, at=look.at, words=look.what)
    for earlier, later in recovery.contradictions:
        words = f"{earlier.what}, then {later.what}"
        yield Reason(kind=ReasonKind.CONTRADICTION, source=later.source, at=later.at, words=words)
    for look in recovery.wild:
        yield Reason(kind=ReasonKind.WILD, source=look.source, at=look.at, words=look.what)


def _dates(
    job: Job, here: SurfaceFacts, finish: DateRange, recovery: Recovery | None, *, nothing_to_heal: bool
) -> dict[Milestone, DateRange]:
    reopening = _later(finish, job.reopens_after) if job.reopens_after else finish
    dates = dict.fromkeys(Milestone, _NO_DATE)
    dates[Milestone.REOPENING] = reopening
    if job.normal_after is not None:
        dates[Milestone.BACK_TO_NORMAL] = _later(finish, job.normal_after)
    elif recovery is not None:
        dates.update(recovery.ranges)
    elif nothing_to_heal:
        dates.update(dict.fromkeys(_HEALING_MILESTONES, reopening))
    if here.normal is not None:
        dates[Milestone.BACK_TO_NORMAL] = DateRange.known(here.normal.head.true_from.date())
    return dates


def _later(day: DateRange, stretch: Stretch) -> DateRange:
    middle = (stretch.from_days + stretch.to_days) / 2

    def plus(start: date | None, days: float) -> date | None:
        return None if start is None else start + timedelta(days=round(days))

    return DateRange(
        early=plus(day.early, stretch.from_days),
        likely=plus(day.likely, middle),
        allow_until=plus(day.allow_until, stretch.to_days),
    )  # never a fact: the range is somebody's experience


def _work_of_all(works: Sequence[SurfaceWork]) -> Work:
    states = {work.work for work in works}
    if len(states) == 1:
        return states.pop()
    for state in (Work.HELD_UP, Work.UNDER_WAY):
        if state in states:
            return state
    if states & {Work.PLANNED}:
        return Work.UNDER_WAY  # some surfaces are done, others to come
    return Work.HEALING if Work.HEALING in states else Work.BACK_TO_NORMAL


def _range_of_all(works: Sequence[SurfaceWork], milestone: Milestone) -> DateRange:
    """The date for the last of the surfaces: the weather and the model's error are the same for all of them."""
    open_ones = [work for work in works if work.work not in (Work.CALLED_OFF, Work.BACK_TO_NORMAL)]
    counted = open_ones or [work for work in works if work.work is not Work.CALLED_OFF]
    if milestone is Milestone.REOPENING:
        counted = [work for work in works if work.work is not Work.CALLED_OFF]
    sampled = [work.recovery for work in counted if work.recovery is not None and work.job.normal_after is None]
    if milestone is not Milestone.REOPENING and open_ones and sampled and len(sampled) == len(counted):
        first = min(recovery.start for recovery in sampled)
        shifted = [recovery.samples[milestone] + (recovery.start - first).days for recovery in sampled]
        return date_range(np.maximum.reduce(shifted), first)
    ranges = [work.dates[milestone] for work in counted]
    return DateRange(
        early=_latest([given.early for given in ranges]),
        likely=_latest([given.likely for given in ranges]),
        allow_until=_latest([given.allow_until for given in ranges]),
        is_fact=bool(ranges) and all(given.is_fact for given in ranges),
    )


def _latest(days: Sequence[date | None]) -> date | None:
    known = [day for day in days if day is not None]
    return max(known) if known and len(known) == len(days) else None
