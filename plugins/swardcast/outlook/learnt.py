"""What healed jobs have taught, as work on one kind of surface and grass may count on it."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from functools import cached_property

from swardcast.outlook.states import Lesson, Lessons, Reason, ReasonKind
from swardcast.records.club import Grass, SurfaceKind
from swardcast.turf.pace import after_healed_jobs

__all__ = ["Learnt", "Prior"]


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

    def before(self, kind: SurfaceKind, grass: Grass, began: date) -> Prior:
        """Pick what was learnt before work began: a date must not move for a reason that its own story does not tell.

        Args:
            kind: the kind of surface.
            grass: its grass.
            began: the day on which the work began, or is to begin.

        Returns:
            Lessons of jobs that were back to normal before that day.
        """
        key = (kind, grass, began)
        if key not in self._before:
            found = tuple(one for its, seed, one in self.lessons if (its, seed) == key[:2] and one.normal_on < began)
            self._before[key] = self.priors.setdefault(tuple(map(id, found)), Prior(found, self.reasons))
        return self._before[key]
