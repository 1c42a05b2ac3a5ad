"""Named states, milestones, date ranges and reasons: the vocabulary of an outlook."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from enum import Enum

import numpy as np
from numpy.typing import NDArray

from swardcast.outlook.dates import WIDE_RANGE_DAYS, DateRange, Milestone, NoDate, RestsOn, date_range
from swardcast.outlook.limits import LimitInForce
from swardcast.outlook.reopening import HeldUp, Hours
from swardcast.outlook.sightings import Look
from swardcast.records.club import Grass, Surface, SurfaceKind
from swardcast.records.log import GrowthHeldBack, HeldBackBy, NoteToMembers
from swardcast.records.operations import Operation
from swardcast.records.plan import Job, Play
from swardcast.records.translate import SurfaceSums
from swardcast.turf.healing import Layers, growth_at_pace
from swardcast.turf.milestones import chance_by
from swardcast.turf.pace import Pace

__all__ = [
    "WIDE_RANGE_DAYS",
    "CourseOutlook",
    "DateRange",
    "JobOutlook",
    "Lesson",
    "Lessons",
    "Milestone",
    "NoDate",
    "Reason",
    "ReasonKind",
    "Recovery",
    "RestsOn",
    "SurfaceOutlook",
    "SurfaceWork",
    "Unreported",
    "Work",
    "date_range",
]

Floats = NDArray[np.float64]


class Work(Enum):
    """Work on a surface or a job."""

    PLANNED = "planned"
    UNDER_WAY = "under way"
    HELD_UP = "held up"
    HEALING = "healing"
    BACK_TO_NORMAL = "back to normal"
    CALLED_OFF = "called off"

    @property
    def is_over(self) -> bool:
        """Whether it is back to normal or called off, so that nobody waits for anything of it."""
        return self in (Work.BACK_TO_NORMAL, Work.CALLED_OFF)


class ReasonKind(Enum):
    """What a state rests on."""

    MORNING_ENTRY = "morning entry"
    NO_FRESH_ENTRY = "no fresh entry"
    PLANNED = "planned"
    OVERDUE = "overdue"
    MOVED = "moved"
    PUT_OFF = "postponed"
    CALLED_OFF = "called off"
    STARTED = "started"
    HELD_UP = "held up"
    DONE = "done"
    COMPUTED = "computed"
    OBSERVED = "observed"
    CONTRADICTION = "observations contradict each other"
    WILD = "an observation far from the sum"
    HELD_BACK = "growth held back"
    LEARNT = "learnt from healed jobs"
    SAID_NORMAL = "said to be back to normal"
    COMPUTED_NORMAL = "computed to be back to normal"
    RULE_OF_THUMB = "rule of thumb"
    NOT_VALIDATED = "not validated"
    NO_HISTORY = "no weather history"
    TOO_FAR = "more than a year ahead"
    NOT_THIS_SEASON = "not this season"
    WEATHER_MISSING = "weather missing"
    SHORT_HISTORY = "few past years of weather"
    NO_HEALING = "nothing to heal"


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesson:
    """What a healed job of this course teaches about the next one.

    Args:
        job: id of the job.
        title: its title.
        source: id of the last entry that called it back to normal.
        normal_on: the day of that entry.
        days_taken: days from the work to back to normal, on the surface that each entry waited for.
        days_computed: days that the fitted pace gives there for the weather that came.
        log_pace: logarithm of the pace at which it healed, 0 for the fitted pace.
    """

    job: str
    title: str
    source: str
    normal_on: date
    days_taken: float
    days_computed: float
    log_pace: float


Lessons = tuple[tuple[SurfaceKind, Grass, Lesson], ...]
"""What healed jobs taught, by kind of surface and grass."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """Why a state or a date is what it is.

    Args:
        kind: what it rests on.
        source: the file and line, or the entry, that it came from; "computed" for a sum.
        at: the moment or day it speaks of, or None.
        words: further words as typed, or "".
        until: the last day it speaks of, or None.
        looks: what was seen: the look, or two that contradict each other, the earlier first.
        lesson: what a healed job taught, or None.
        held_back_by: what holds growth back, or None.
        count: days or years that it speaks of.
    """

    kind: ReasonKind
    source: str
    at: datetime | date | None = None
    words: str = ""
    until: date | None = None
    looks: tuple[Look, ...] = ()
    lesson: Lesson | None = None
    held_back_by: HeldBackBy | None = None
    count: int = 0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Recovery:
    """How a surface heals, with everything that a sceptic needs to follow the sum.

    Args:
        start: the day that counts as day 0.
        sums: openings, sand and D0 of the work.
        before: share still disturbed by earlier work on that day, 0 to 1.
        layers: what was disturbed after the work, earlier work included.
        day_zero: share disturbed after the work, earlier work included.
        usual: the pace before anything was known of this course.
        prior: the pace before anything was seen of this job: what healed jobs taught.
        pace: the pace used.
        lessons: the healed jobs that taught it.
        rim_growth_days: growth that the widest hole needs at least.
        lag_days: calendar days from holes closed to back to normal; 0 where nothing was opened.
        growth_so_far: growth days from day 0 to yesterday, or None when day 0 is to come.
        weeks_ahead: growth days to be expected in each coming week, the next one first.
        closes_on: the day on which the mean of the members has the growth that closes the holes, or None.
        samples: days from day 0 to each milestone, shape (members, errors).
        ranges: the same as early, likely and allow until.
        looks: what was seen since the work, oldest first.
        held_back: entries that say that growth was held back.
        pace_rests_on: all that the pace rests on.
    """

    start: date
    sums: SurfaceSums
    before: float
    layers: Layers
    day_zero: float
    usual: Pace
    prior: Pace
    pace: Pace
    lessons: tuple[Lesson, ...]
    rim_growth_days: float
    lag_days: float
    growth_so_far: float | None
    weeks_ahead: tuple[float, ...]
    closes_on: date | None
    samples: Mapping[Milestone, Floats]
    ranges: Mapping[Milestone, DateRange]
    looks: tuple[Look, ...] = ()
    held_back: tuple[GrowthHeldBack, ...] = ()
    pace_rests_on: Sequence[Reason] = ()

    def growth_needed(self, threshold: float) -> float:
        """Tell the growth that brings the surface down to a threshold at the pace used.

        Args:
            threshold: share still disturbed, such as `HOLES_CLOSED`.

        Returns:
            Growth days, 0 or more.
        """
        return growth_at_pace(self.layers, threshold, self.pace.middle, self.rim_growth_days)

    def chance_by(self, milestone: Milestone, day: date) -> float:
        """Estimate the chance that a milestone is reached by the morning of a day.

        Args:
            milestone: settled, holes closed or back to normal.
            day: the day.

        Returns:
            A fraction from 0 to 1.
        """
        return chance_by(self.samples[milestone], (day - self.start).days)


@dataclass(frozen=True, slots=True, kw_only=True)
class Unreported:
    """Begun work of which no report has come for so long that nobody knows how it stands.

    Args:
        last_report: the moment of the last entry on the job, local.
        due_by: the day to allow for of its work, as that entry gave it.
    """

    last_report: datetime
    due_by: date


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SurfaceWork:
    """One job on one surface.

    Args:
        surface: the surface.
        job: the job.
        work: its state.
        dates: each milestone's range.
        recovery: the healing, or None when nothing heals or nothing can be computed.
        reasons: what all that rests on.
        operations: the work as planned, or as really done.
        sums: what that work does to the surface.
        started_at: when the work on this surface was started, or None.
        done_at: when it was finished, or None.
        finish: the day on which the work there is, or is to be, finished.
        hours: when it reopens, to the hour, where it is being worked on or its follow-up work is not over; or None.
        is_closed_again: whether it was closed for a time after the work, opened, and taken out of play again since.
        unreported: that it is not done and nobody reports on the job any more, or None.
    """

    surface: Surface
    job: Job
    work: Work
    dates: Mapping[Milestone, DateRange]
    recovery: Recovery | None
    reasons: Sequence[Reason]
    operations: tuple[Operation, ...]
    sums: SurfaceSums
    started_at: datetime | None
    done_at: datetime | None
    finish: DateRange
    hours: Hours | HeldUp | None
    is_closed_again: bool = False
    unreported: Unreported | None = None

    @property
    def has_begun(self) -> bool:
        """Whether an entry says that it began, or that it is done."""
        return self.started_at is not None or self.done_at is not None

    @property
    def heals_closed_again(self) -> bool:
        """Whether it was taken out of play again while it heals."""
        return self.is_closed_again and self.work is Work.HEALING


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SurfaceOutlook:
    """How one surface stands.

    Args:
        surface: the surface.
        play: play at the moment.
        said_at: when play was last stated, even if that is too old to repeat, or None.
        last_play: what was stated then.
        current: the job that matters now, or None.
        others: further jobs that are going on or healing there.
        reasons: why play is what it is.
    """

    surface: Surface
    play: Play
    said_at: datetime | None
    last_play: Play | None
    current: SurfaceWork | None
    others: tuple[SurfaceWork, ...]
    reasons: tuple[Reason, ...]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class JobOutlook:
    """How one job stands.

    Args:
        job: the job.
        work: its state as a whole.
        starts: its first day as it stands now.
        surfaces: the job on each of its surfaces, in order.
        dates: each milestone for the last of its surfaces.
        changed_because: the latest reason for a change of plan, or "".
        is_put_off: whether it is postponed to a day that nobody knows yet; `starts` is the last day told before.
        unreported: that it is begun and nobody reports on it any more, so that its dates stand still; or None.
    """

    job: Job
    work: Work
    starts: date
    surfaces: tuple[SurfaceWork, ...]
    dates: Mapping[Milestone, DateRange]
    changed_because: str
    is_put_off: bool = False
    unreported: Unreported | None = None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CourseOutlook:
    """How the course stands at a moment.

    Args:
        as_of: the moment, in the club's local time.
        surfaces: every surface by id.
        jobs: every announced job by id.
        morning_at: when the latest morning entry was made, or None.
        morning_is_fresh: whether it still counts.
        limits: what holds about trolleys, preferred lies and so on, each with its entry.
        why: that entry's reason, or "".
        words: that entry's own words, or "".
        notes: the manager's notes on the course as a whole that are still fresh, newest first.
    """

    as_of: datetime
    surfaces: Mapping[str, SurfaceOutlook]
    jobs: Mapping[str, JobOutlook]
    morning_at: datetime | None
    morning_is_fresh: bool
    limits: tuple[LimitInForce, ...]
    why: str
    words: str
    notes: tuple[NoteToMembers, ...]
