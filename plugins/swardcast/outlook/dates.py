"""Milestones and the dates on which they are, or are to be, reached: as surely as they are known."""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from enum import Enum
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.turf.milestones import ALLOW_UNTIL, EARLY, LIKELY, days_at

__all__ = ["WIDE_RANGE_DAYS", "DateRange", "Milestone", "NoDate", "RestsOn", "date_range"]

Floats = NDArray[np.float64]

WIDE_RANGE_DAYS: Final = 56
"""A range from early to allow until that is wider than this is told in months: judgement."""


class Milestone(Enum):
    """Milestones of a job, in the order in which they come."""

    REOPENING = "reopening"
    SETTLED = "settled"
    HOLES_CLOSED = "holes closed"
    BACK_TO_NORMAL = "back to normal"


class NoDate(Enum):
    """Why no date can be told."""

    NOT_THIS_SEASON = "not this season"
    NO_HISTORY = "no weather history"
    TOO_FAR = "more than a year ahead"
    NOT_REPORTED = "not reported"


class RestsOn(Enum):
    """What the days of a range are: only those of a sum have chances."""

    SUM = "sum"
    USUAL_TIME = "somebody's usual time"
    PLAN = "plan"
    SPARE_DAYS = "plan with days kept for weather"
    PACE = "pace of the plan from where the work stands, with days kept for weather"


@dataclass(frozen=True, slots=True, kw_only=True)
class DateRange:
    """A date as it is known.

    Args:
        early: 1 chance in 10 that it is by this day, or None when this season does not bring that; of a usual time its
            short end, of a plan its day.
        likely: an even chance, or None; of a usual time its middle, of a plan its day.
        allow_until: 9 chances in 10, or None; of a usual time its long end, of a plan the last day kept for it.
        is_fact: whether it has happened, so that there is no doubt about it.
        no_date: why there is none, where there is none.
        rests_on: what its days are, so how they are said; the same days are the same date whatever that is.
    """

    early: date | None
    likely: date | None
    allow_until: date | None
    is_fact: bool = False
    no_date: NoDate = NoDate.NOT_THIS_SEASON
    rests_on: RestsOn = field(default=RestsOn.SUM, compare=False)

    @classmethod
    def known(cls, day: date) -> DateRange:
        """A day that is a fact."""
        return cls(early=day, likely=day, allow_until=day, is_fact=True)

    def not_before(self, day: date) -> DateRange:
        """The same range, moved where it lies before a day.

        Args:
            day: the earliest day that can be.

        Returns:
            A range whose days are not before `day`.
        """
        early, likely, until = (
            None if given is None else max(given, day) for given in (self.early, self.likely, self.allow_until)
        )
        return replace(self, early=early, likely=likely, allow_until=until)

    def is_past(self, day: date) -> bool:
        """Tell whether even the day to allow for is over.

        Args:
            day: the day of the reader.

        Returns:
            Whether it is so; False where there is no date.
        """
        return self.allow_until is not None and self.allow_until < day

    def passed_untold(self, day: date) -> bool:
        """Tell whether it is past, and no entry made it a fact.

        Args:
            day: the day of the reader.

        Returns:
            Whether it is so; False where there is no date.
        """
        return not self.is_fact and self.is_past(day)

    @property
    def is_wide(self) -> bool:
        """Whether it is told in months."""
        if self.is_fact or self.likely is None or self.allow_until is None:
            return False
        return (self.allow_until - (self.early or self.likely)).days > WIDE_RANGE_DAYS

    @property
    def months(self) -> tuple[tuple[int, int], ...]:
        """Year and month of the first and the last day, as a wide range is told; nothing where there is no date."""
        ends = (self.early or self.likely, self.allow_until)
        return tuple((end.year, end.month) for end in ends if end is not None)

    @property
    def is_given(self) -> bool:
        """Whether a date may be told: more than 10 % outside the season means none."""
        return self.likely is not None and self.allow_until is not None


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
