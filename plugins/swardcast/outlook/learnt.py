"""What healed jobs have taught, as work on one kind of surface and grass may count on it."""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass, field
from datetime import date, timedelta
from functools import cached_property
from typing import Final

from swardcast.outlook.states import Lesson, Lessons, Reason, ReasonKind
from swardcast.records.club import Grass, SurfaceKind
from swardcast.turf.pace import after_healed_jobs

__all__ = ["LEARNT_FOR", "Learnt", "Prior"]

LEARNT_FOR: Final = timedelta(days=3652)
"""How long before work a lesson may have been learnt that it counts on, ten years: turf, soil and machines of a course
change. Judgement."""


@dataclass(frozen=True, eq=False)
class Prior:
    """Lessons for one kind of surface and grass.

    Args:
        lessons: the lessons, in the order in which their jobs were first called back to normal.
        _reasons: lessons as reasons that were made before, by their identity: other priors have the same lessons.
    """

    lessons: tuple[Lesson, ...] = ()
    _reasons: dict[int, Reason] = field(default_factory=dict)
    _corrected: dict[float, tuple[float, float]] = field(default_factory=dict)

    def corrects(self, log_spread: float) -> tuple[float, float]:
        """Let the lessons correct what is believed of a pace, as `after_healed_jobs` does.

        Args:
            log_spread: standard deviation of the logarithm before anything was known of the course, 0 or more.

        Returns:
            Middle and standard deviation of the logarithm for the next job.
        """
        if log_spread not in self._corrected:
            self._corrected[log_spread] = after_healed_jobs(log_spread, [lesson.log_pace for lesson in self.lessons])
        return self._corrected[log_spread]

    @cached_property
    def reasons(self) -> tuple[Reason, ...]:
        """The lessons as reasons of a date."""
        made = self._reasons
        return tuple(made.get(id(lesson)) or made.setdefault(id(lesson), _reason(lesson)) for lesson in self.lessons)


def _reason(lesson: Lesson) -> Reason:
    return Reason(kind=ReasonKind.LEARNT, source=lesson.source, at=lesson.normal_on, lesson=lesson)


@dataclass(slots=True, eq=False)
class Learnt:
    """All that healed jobs have taught so far.

    Args:
        lessons: by kind of surface and grass.
        priors: priors made before, by the identity of their lessons: the same ones are one prior, so that what was
            worked out with it is found again.
        reasons: lessons as reasons made before, by their identity.
    """

    lessons: Lessons = ()
    priors: dict[tuple[int, ...], Prior] = field(default_factory=dict)
    reasons: dict[int, Reason] = field(default_factory=dict)
    _before: dict[tuple[SurfaceKind, Grass, date], Prior] = field(default_factory=dict)
    _by_day: dict[tuple[SurfaceKind, Grass], list[tuple[date, int, Lesson]]] | None = None

    def before(self, kind: SurfaceKind, grass: Grass, began: date) -> Prior:
        """Pick what was learnt before work began: a date must not move for a reason that its own story does not tell.

        Args:
            kind: the kind of surface.
            grass: its grass.
            began: the day on which the work began, or is to begin.

        Returns:
            Lessons of jobs that were back to normal before that day, and not longer than `LEARNT_FOR` before it.
        """
        key = (kind, grass, began)
        if key not in self._before:
            of_both = self._in_order_of_days().get(key[:2], [])
            ends = [bisect_left(of_both, (day,)) for day in (began - LEARNT_FOR, began)]
            found = tuple(one for _, _, one in sorted(of_both[slice(*ends)], key=lambda its: its[1]))
            self._before[key] = self.priors.setdefault(tuple(map(id, found)), Prior(found, self.reasons))
        return self._before[key]

    def _in_order_of_days(self) -> dict[tuple[SurfaceKind, Grass], list[tuple[date, int, Lesson]]]:
        """Lessons by what they are of, each with its place among all: those of all years are sought through once."""
        if self._by_day is None:
            self._by_day = {}
            for place, (kind, grass, one) in enumerate(self.lessons):
                self._by_day.setdefault((kind, grass), []).append((one.normal_on, place, one))
            for of_both in self._by_day.values():
                of_both.sort(key=lambda its: its[:2])
        return self._by_day
