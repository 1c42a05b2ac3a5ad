"""What is believed of how a surface heals after a job: the work, what was left before it, growth, what was seen."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Final

from swardcast.outlook.held_back import slow_days
from swardcast.outlook.learnt import Prior
from swardcast.outlook.ledger import SurfaceFacts
from swardcast.outlook.reasons import Reasons
from swardcast.outlook.sightings import Healing, Look, contradictions, looks_of
from swardcast.outlook.states import Lesson, Reason, ReasonKind
from swardcast.outlook.weather_days import Growth
from swardcast.records.club import Surface, SurfaceKind
from swardcast.records.log import GrowthHeldBack
from swardcast.records.translate import SurfaceSums
from swardcast.turf.growth import GRASSES
from swardcast.turf.healing import (
    BACK_TO_NORMAL_LAG_DAYS,
    HOLES_CLOSED,
    Layers,
    disruption_left,
    growth_days_needed,
    layers_left,
    without_sand,
)
from swardcast.turf.milestones import Disruption, default_log_spread
from swardcast.turf.pace import Pace, after_sightings, usual_pace

__all__ = ["FARTHEST", "Believed", "Heard", "Left", "ToHeal", "believed", "is_validated", "left_on"]

FARTHEST: Final = timedelta(days=366)
"""A job planned farther ahead gets no date yet: judgement."""


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
class Heard:
    """What is known of a surface besides the work there.

    Args:
        prior: what healed jobs taught of work like this.
        held_back: entries that say that growth is held back there, oldest first.
        target_speed_mm: the green speed that the club aims at, mm, or None.
    """

    prior: Prior
    held_back: tuple[GrowthHeldBack, ...] = ()
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


def _to_heal(surface: Surface, sums: SurfaceSums, *, start: date, before: Left, heard: Heard) -> ToHeal | None:
    """Tell what work leaves to heal.

    Args:
        surface: the surface.
        sums: what the work does to it.
        start: day 0, done or planned.
        before: what earlier work has left on that day.
        heard: what else is known of the surface.

    Returns:
        What has to heal, or None where there is no grass or nothing was disturbed.
    """
    if surface.grass is None or not sums.layers:
        return None
    spread = default_log_spread(GRASSES[surface.grass.value], validated=is_validated(surface, sums))
    middle, prior_spread = heard.prior.corrects(spread)
    layers = (*sums.layers, *before.layers)
    opened = sums.opened or growth_days_needed(without_sand(before.layers), HOLES_CLOSED) > 0
    lag_days = BACK_TO_NORMAL_LAG_DAYS * math.exp(-middle) if opened else 0.0
    healing = Healing(
        start=start,
        grass=surface.grass,
        layers=layers,
        lag_days=lag_days,
        slow=slow_days(heard.held_back, start),
        target_speed_mm=heard.target_speed_mm,
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
        lessons=heard.prior.lessons,
        held_back=tuple(entry for entry in heard.held_back if entry.last_day >= start),
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Believed:
    """How a surface heals, as far as what was seen tells: all but the dates.

    Args:
        left_before: share still disturbed by earlier work on day 0, 0 to 1.
        day_zero: share disturbed after the work, earlier work included.
        left: what has to heal, and what was believed before anything was seen.
        disruption: what has to heal at the pace that what was seen leaves.
        looks: what was seen.
        pace_rests_on: what the pace rests on.
    """

    left_before: float
    day_zero: float
    left: ToHeal
    disruption: Disruption
    looks: tuple[Look, ...]
    pace_rests_on: Sequence[Reason]


def believed(
    surface: Surface, facts: SurfaceFacts, sums: SurfaceSums, *, start: date, before: Left, heard: Heard, growth: Growth
) -> Believed | None:
    """Tell how a surface heals from a day on, without the dates.

    Args:
        surface: the surface.
        facts: what the log says of the job there.
        sums: what the work does to it.
        start: day 0, done or planned.
        before: what earlier work has left on that day.
        heard: what else is known of the surface.
        growth: the growth as known.

    Returns:
        What is believed, or None where there is nothing to heal.
    """
    left = _to_heal(surface, sums, start=start, before=before, heard=heard)
    if left is None:
        return None
    looks = looks_of(facts.observations if facts.done is not None else (), left.healing, growth)
    pace, beyond = after_sightings(left.prior_spread, left.prior_middle, tuple(look.sighting for look in looks))
    wild = (look for look, is_wild in zip(looks, beyond, strict=True) if is_wild)
    seen = _seen(looks, contradictions(looks), wild)
    return Believed(
        left_before=disruption_left(before.layers),
        day_zero=disruption_left(left.healing.layers),
        left=left,
        disruption=replace(left.disruption, pace=pace),
        looks=looks,
        pace_rests_on=Reasons((heard.prior.reasons, (*_held_back(left.held_back), *seen))),
    )


def _held_back(entries: Iterable[GrowthHeldBack]) -> Iterator[Reason]:
    for entry in entries:
        yield Reason(
            kind=ReasonKind.HELD_BACK,
            source=entry.head.id,
            at=entry.first_day,
            until=entry.last_day,
            held_back_by=entry.by,
        )


def _seen(looks: Iterable[Look], against: Iterable[tuple[Look, Look]], wild: Iterable[Look]) -> Iterator[Reason]:
    for look in looks:
        yield Reason(kind=ReasonKind.OBSERVED, source=look.source, at=look.at, looks=(look,))
    for earlier, later in against:
        yield Reason(kind=ReasonKind.CONTRADICTION, source=later.source, at=later.at, looks=(earlier, later))
    for look in wild:
        yield Reason(kind=ReasonKind.WILD, source=look.source, at=look.at, looks=(look,))


def left_on(earlier: Believed, day: date, growth: Growth) -> Left:
    """Tell what is left of a job's disruption on a day, so that the next job can come on top.

    Args:
        earlier: how the surface heals after that job.
        day: the day, not before the first of `earlier`.
        growth: the growth as known.

    Returns:
        What is left.
    """
    healing = earlier.left.healing
    gained = growth.growth_between(healing.start, day, healing.grass, healing.slow)
    layers = layers_left(healing.layers, gained, earlier.disruption.pace.middle)
    rim = max(0.0, earlier.disruption.rim_growth_days - gained)
    return Left(layers=layers, rim_growth_days=rim if without_sand(layers) else 0.0)
