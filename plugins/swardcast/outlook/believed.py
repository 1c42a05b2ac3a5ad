"""What is believed of how a surface heals after a job: the work, what was left before it, growth, what was seen."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from datetime import date, timedelta
from typing import Final

from swardcast.outlook.held_back import held_back_on, slow_days
from swardcast.outlook.ledger import SurfaceFacts
from swardcast.outlook.sightings import Healing, Look, looks_of
from swardcast.outlook.states import Lesson, Lessons
from swardcast.outlook.weather_book import SlowDays, WeatherView
from swardcast.records.club import Grass, Surface, SurfaceKind
from swardcast.records.log import GrowthHeldBack
from swardcast.records.standing import StandingEntries
from swardcast.records.translate import SurfaceSums
from swardcast.turf.growth import GRASSES
from swardcast.turf.healing import (
    BACK_TO_NORMAL_LAG_DAYS,
    HOLES_CLOSED,
    Layers,
    growth_days_needed,
    layers_left,
    without_sand,
)
from swardcast.turf.milestones import Disruption, default_log_spread
from swardcast.turf.pace import Pace, after_healed_jobs, after_sightings, usual_pace

__all__ = ["Believed", "Course", "Left", "Remains", "ToHeal", "believed", "is_validated", "left_on", "to_heal"]

_FARTHEST: Final = timedelta(days=366)  # a job planned farther ahead gets no date yet: judgement


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """What earlier work has left on the day of the next.

    Args:
        layers: what is still disturbed.
        rim_growth_days: growth that its widest hole still needs at least.
    """

    layers: Layers = ()
    rim_growth_days: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """What is known of the course besides one job.

    Args:
        entries: the log's entries that stand, oldest first.
        lessons: what healed jobs taught, by kind of surface and grass.
        target_speed_mm: the green speed that the club aims at, mm, or None.
    """

    entries: StandingEntries = field(default_factory=StandingEntries)
    lessons: Lessons = ()
    target_speed_mm: float | None = None


def is_validated(surface: Surface, sums: SurfaceSums) -> bool:
    """Tell whether healing of this work on this surface was among the fitted records: greens, usual tines."""
    return surface.kind is SurfaceKind.GREEN and sums.validated and bool(sums.openings)


@dataclass(frozen=True, slots=True, kw_only=True)
class ToHeal:
    """What work leaves to heal on a surface, as it is believed before anything of it was seen.

    Args:
        healing: day 0, the grass and what is disturbed.
        disruption: the same as the sums want it, at the pace that healed jobs taught.
        usual: the pace before anything was known of this course.
        prior_spread: spread of the pace that healed jobs taught, as a logarithm.
        prior_middle: logarithm of its middle.
        lessons: the healed jobs that taught it.
        held_back: entries that say that growth was held back.
    """

    healing: Healing
    disruption: Disruption
    usual: Pace
    prior_spread: float
    prior_middle: float
    lessons: tuple[Lesson, ...]
    held_back: tuple[GrowthHeldBack, ...]


def to_heal(
    surface: Surface, sums: SurfaceSums, *, start: date, before: Left, view: WeatherView, course: Course
) -> ToHeal | None:
    """Tell what work leaves to heal.

    Args:
        surface: the surface.
        sums: what the work does to it.
        start: day 0, done or planned.
        before: what earlier work has left on that day.
        view: the weather as known.
        course: what is known of the course.

    Returns:
        What has to heal, or None where there is no grass, nothing was disturbed, or the day is more than a year ahead.
    """
    if surface.grass is None or not sums.layers or start > view.today + _FARTHEST:
        return None
    spread = default_log_spread(GRASSES[surface.grass.value], validated=is_validated(surface, sums))
    lessons = tuple(lesson for kind, grass, lesson in course.lessons if (kind, grass) == (surface.kind, surface.grass))
    middle, prior_spread = after_healed_jobs(spread, [lesson.log_pace for lesson in lessons])
    layers = (*sums.layers, *before.layers)
    opened = sums.opened or growth_days_needed(without_sand(before.layers), HOLES_CLOSED) > 0
    lag_days = BACK_TO_NORMAL_LAG_DAYS * math.exp(-middle) if opened else 0.0
    held_back = held_back_on(surface.id, course.entries.on_surface(surface.id))
    healing = Healing(
        start=start,
        grass=surface.grass,
        layers=layers,
        lag_days=lag_days,
        slow=slow_days(held_back, start),
        target_speed_mm=course.target_speed_mm,
    )
    disruption = Disruption(
        layers=layers,
        rim_growth_days=max(sums.rim_growth_days, before.rim_growth_days),
        pace=usual_pace(prior_spread, middle),
        lag_days=lag_days,
        lag_log_spread=prior_spread,
        opened=opened,
    )
    return ToHeal(
        healing=healing,
        disruption=disruption,
        usual=usual_pace(spread),
        prior_spread=prior_spread,
        prior_middle=middle,
        lessons=lessons,
        held_back=tuple(entry for entry in held_back if entry.last_day >= start),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Believed:
    """How a surface heals, as far as what was seen tells: all but the dates.

    Args:
        left: what has to heal, and what was believed before anything was seen.
        pace: the pace that what was seen leaves.
        looks: what was seen.
        wild: those of them that no pace explains.
    """

    left: ToHeal
    pace: Pace
    looks: tuple[Look, ...]
    wild: tuple[Look, ...]

    @property
    def remains(self) -> Remains:
        """What a later job on the surface has to know of it."""
        healing = self.left.healing
        return Remains(
            start=healing.start,
            layers=healing.layers,
            rim_growth_days=self.left.disruption.rim_growth_days,
            pace_middle=self.pace.middle,
            slow=healing.slow,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Remains:
    """What a later job on a surface has to know of how it heals.

    Args:
        start: day 0.
        layers: what was disturbed on that day.
        rim_growth_days: growth that its widest hole needs at least.
        pace_middle: how fast it heals.
        slow: days on which less of the growth was left.
    """

    start: date
    layers: Layers
    rim_growth_days: float
    pace_middle: float
    slow: SlowDays


def believed(
    surface: Surface,
    facts: SurfaceFacts,
    sums: SurfaceSums,
    *,
    start: date,
    before: Left,
    view: WeatherView,
    course: Course,
) -> Believed | None:
    """Tell how a surface heals from a day on, without the dates.

    Args:
        surface: the surface.
        facts: what the log says of the job there.
        sums: what the work does to it.
        start: day 0, done or planned.
        before: what earlier work has left on that day.
        view: the weather as known.
        course: what is known of the course.

    Returns:
        What is believed, or None where there is nothing `to_heal`.
    """
    left = to_heal(surface, sums, start=start, before=before, view=view, course=course)
    if left is None:
        return None
    looks = looks_of(facts.observations if facts.done is not None else (), left.healing, view)
    pace, beyond = after_sightings(left.prior_spread, left.prior_middle, tuple(look.sighting for look in looks))
    wild = tuple(look for look, is_wild in zip(looks, beyond, strict=True) if is_wild)
    return Believed(left=left, pace=pace, looks=looks, wild=wild)


def left_on(remains: Remains, grass: Grass, day: date, view: WeatherView) -> Left:
    """Tell what is left of a job's disruption on a day, so that the next job can come on top.

    Args:
        remains: what is known of how the surface heals.
        grass: its grass.
        day: the day, not before the first of `remains`.
        view: the weather as known.

    Returns:
        What is left.
    """
    growth = view.growth_between(remains.start, day, grass, remains.slow)
    layers = layers_left(remains.layers, growth, remains.pace_middle)
    rim = max(0.0, remains.rim_growth_days - growth)
    return Left(layers=layers, rim_growth_days=rim if without_sand(layers) else 0.0)
