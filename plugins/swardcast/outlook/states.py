"""Named states, milestones, date ranges and reasons: the vocabulary of an outlook."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from enum import Enum
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.records.club import Surface
from swardcast.records.operations import Operation
from swardcast.records.plan import Job, Play
from swardcast.records.translate import SurfaceSums
from swardcast.turf.healing import HealingRate
from swardcast.turf.milestones import ALLOW_UNTIL, EARLY, LIKELY, chance_by, days_at

__all__ = [
    "WIDE_RANGE_DAYS",
    "CourseOutlook",
    "DateRange",
    "JobOutlook",
    "Milestone",
    "Reason",
    "ReasonKind",
    "Recovery",
    "SurfaceOutlook",
    "SurfaceWork",
    "Work",
    "date_range",
]

Floats = NDArray[np.float64]

WIDE_RANGE_DAYS: Final = 56
"""A range from early to allow until that is wider than this is told in months: judgement."""


class Work(Enum):
    """Work on a surface or a job."""

    PLANNED = "planned"
    UNDER_WAY = "under way"
    HELD_UP = "held up"
    HEALING = "healing"
    BACK_TO_NORMAL = "back to normal"
    CALLED_OFF = "called off"


class Milestone(Enum):
    """Milestones of a job, in the order in which they come."""

    REOPENING = "reopening"
    SETTLED = "settled"
    HOLES_CLOSED = "holes closed"
    BACK_TO_NORMAL = "back to normal"


@dataclass(frozen=True, slots=True, kw_only=True)
class DateRange:
    """A date as it is known.

    Args:
        early: 1 chance in 10 that it is by this day, or None when this season does not bring that.
        likely: an even chance, or None.
        allow_until: 9 chances in 10, or None.
        is_fact: whether it has happened, so that there is no doubt about it.
    """

    early: date | None
    likely: date | None
    allow_until: date | None
    is_fact: bool = False

    @classmethod
    def known(cls, day: date) -> DateRange:
        """A day that is a fact."""
        return cls(early=day, likely=day, allow_until=day, is_fact=True)

    @property
    def is_given(self) -> bool:
        """Whether a date may be told: more than 10 % outside the season means none."""
        return self.likely is not None and self.allow_until is not None


class ReasonKind(Enum):
    """What a state rests on."""

    MORNING_ENTRY = "morning entry"
    NO_FRESH_ENTRY = "no fresh entry"
    PLANNED = "planned"
    OVERDUE = "overdue"
    MOVED = "moved"
    CALLED_OFF = "called off"
    STARTED = "started"
    HELD_UP = "held up"
    DONE = "done"
    COMPUTED = "computed"
    OBSERVED = "observed"
    SAID_NORMAL = "said to be back to normal"
    COMPUTED_NORMAL = "computed to be back to normal"
    RULE_OF_THUMB = "rule of thumb"
    NOT_VALIDATED = "not validated"
    NO_HISTORY = "no weather history"
    NOT_THIS_SEASON = "not this season"
    WEATHER_MISSING = "weather missing"
    NO_HEALING = "nothing to heal"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """Why a state or a date is what it is.

    Args:
        kind: what it rests on.
        source: the file and line, or the entry, that it came from; "computed" for a sum.
        at: the moment or day it speaks of, or None.
        words: further words as typed, or "".
    """

    kind: ReasonKind
    source: str
    at: datetime | date | None = None
    words: str = ""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Recovery:
    """How a surface heals, with everything that a sceptic needs to follow the sum.

    Args:
        start: the day that counts as day 0.
        sums: openings, sand and D0 of the work.
        before: share still disturbed by earlier work on that day, 0 to 1.
        day_zero: share disturbed after the work, earlier work included.
        prior: healing rate before anything was seen on the course.
        rate: healing rate used.
        growth_so_far: growth days from day 0 to yesterday, or None when day 0 is to come.
        growth_a_week: growth days to be expected in the coming week.
        samples: days from day 0 to each milestone, shape (members, errors).
        shown: the observations that moved the rate: moment, share left, growth days until then.
    """

    start: date
    sums: SurfaceSums
    before: float
    day_zero: float
    prior: HealingRate
    rate: HealingRate
    growth_so_far: float | None
    growth_a_week: float
    samples: Mapping[Milestone, Floats]
    shown: tuple[tuple[datetime, float, float], ...] = ()

    def chance_by(self, milestone: Milestone, day: date) -> float:
        """Estimate the chance that a milestone is reached by the morning of a day.

        Args:
            milestone: settled, holes closed or back to normal.
            day: the day.

        Returns:
            A fraction from 0 to 1.
        """
        return chance_by(self.samples[milestone], (day - self.start).days)


def date_range(samples: Floats, start: date) -> DateRange:
    """Turn days from the work into early, likely and allow-until dates.

    Args:
        samples: equally likely days, any shape, infinite where never.
        start: the day of the work.

    Returns:
        The range; a day that has begun counts as a whole one.
    """
    early, likely, allow_until = (
        None if days is None else start + timedelta(days=math.ceil(days - 1e-9))
        for days in days_at(samples, EARLY, LIKELY, ALLOW_UNTIL)
    )
    return DateRange(early=early, likely=likely, allow_until=allow_until)


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
    """

    surface: Surface
    job: Job
    work: Work
    dates: Mapping[Milestone, DateRange]
    recovery: Recovery | None
    reasons: tuple[Reason, ...]
    operations: tuple[Operation, ...]
    sums: SurfaceSums
    started_at: datetime | None
    done_at: datetime | None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SurfaceOutlook:
    """How one surface stands.

    Args:
        surface: the surface.
        play: play at the moment.
        said_at: when play was last stated, even if that is too old to repeat, or None.
        last_play: what was stated then.
        current: the job that matters now, or None.
        reasons: why play is what it is.
    """

    surface: Surface
    play: Play
    said_at: datetime | None
    last_play: Play | None
    current: SurfaceWork | None
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
    """

    job: Job
    work: Work
    starts: date
    surfaces: tuple[SurfaceWork, ...]
    dates: Mapping[Milestone, DateRange]
    changed_because: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CourseOutlook:
    """How the course stands at a moment.

    Args:
        as_of: the moment, in the club's local time.
        surfaces: every surface by id.
        jobs: every announced job by id.
        morning_at: when the latest morning entry was made, or None.
        morning_is_fresh: whether that was today.
        limits: what the latest fresh morning entry decides about trolleys, preferred lies and so on.
        why: that entry's reason, or "".
    """

    as_of: datetime
    surfaces: Mapping[str, SurfaceOutlook]
    jobs: Mapping[str, JobOutlook]
    morning_at: datetime | None
    morning_is_fresh: bool
    limits: tuple[tuple[str, str], ...]
    why: str
