"""Healing: how much of a surface is disturbed after the work, and how much growth mends it.

Sand on the leaf works in at a rate of its own. A hole or groove closes from its rim, so that its time goes with its
width and not with the spacing (Landreth, Karcher & Richardson 2007, USGA Turfgrass and Environmental Research Online
6(19), abstract). The turf is disturbed where either of them, or what an earlier job left, still shows.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from swardcast.turf.geometry import groove_area_fraction, hole_area_fraction
from swardcast.turf.sand import hidden_fraction

__all__ = [
    "BACK_TO_NORMAL_LAG_DAYS",
    "COVER_COMPLETE",
    "GROOVE_AS_A_HOLE",
    "HOLES_CLOSED",
    "HOLE_RATE_MM_PER_GROWTH_DAY",
    "OPEN_HOLES_WEIGHT",
    "SAND_RATE_PER_GROWTH_DAY",
    "SETTLED",
    "SOLID_LASTING_SHARE",
    "STRIPPED_RATE_PER_GROWTH_DAY",
    "Layers",
    "Opening",
    "Part",
    "disruption_left",
    "groove_opening",
    "growth_at_pace",
    "growth_days_needed",
    "layers_left",
    "layers_of",
    "rim_growth_days",
    "tine_opening",
    "without_sand",
]

SAND_RATE_PER_GROWTH_DAY: Final = 0.40
"""Share of the sand on the leaf that works in, per growth day; judgement within 0.32 to 0.52.

Left free on the 26 published recoveries it is 0.34 to 0.37 (nearly all of them are of one size of hole); with the ratio
of sizes of Landreth et al. 2007 it is 0.51. Used for growth of 0 to 30 growth days.
"""
HOLE_RATE_MM_PER_GROWTH_DAY: Final = 2.70
"""A hole's rate times its diameter, mm per growth day; fitted on 26 published recoveries, bootstrap 10-90 % 2.4 to 3.5.

The rim then moves in by a quarter of it, 0.7 mm per growth day at first (arithmetic).
"""
OPEN_HOLES_WEIGHT: Final = 0.10
"""What freshly cut holes count for in play, as a share of the surface, whatever their spacing: judgement; 0.05 to 0.20
give the same left-out error."""

GROOVE_AS_A_HOLE: Final = 6.0
"""A groove heals like a hole of so many times its width: judgement. Verticutting took twice as long as half-inch holes
(Landreth et al. 2007), which would be 8.5; the one fitted record with grooves allows 1 to 8.5."""

STRIPPED_RATE_PER_GROWTH_DAY: Final = 0.34 * 0.55
"""Share that grows back where the crowns were cut off, per growth day: the rate of all recoveries taken together (0.34,
bootstrap 0.31 to 0.36) times 0.55, from a single source; not fitted."""

SETTLED: Final = 0.05
"""Share of the surface still disturbed when most putts roll without being turned: judgement."""
HOLES_CLOSED: Final = 0.02
"""Share still disturbed when holes count as closed: judgement."""
COVER_COMPLETE: Final = 0.01
"""Share still disturbed at complete cover: judgement, after the 99 % cover of Ervin & Nichols 2010."""

BACK_TO_NORMAL_LAG_DAYS: Final = 13.0
"""Calendar days from holes closed to rolling as before; bootstrap 10-90 % 11 to 15, from 5 records only."""

SOLID_LASTING_SHARE: Final = 0.5
"""Share of a solid tine's hole that lasts, since nothing is removed and part closes by itself: judgement."""

RIM_GROWTH_MM_PER_GROWTH_DAY: Final = 0.9
"""Fastest growth of a hole's rim, mm per growth day; pitch marks of 16 to 29 mm mend in 10 to 18 days (0.5 to 1.0
mm/day), Young, Richardson & Karcher 2010, ASA abstract 76-14, and Bigelow et al. 2008, European Turfgrass Society
p. 49."""

_HALVINGS: Final = 40  # of the bracket in the search for the growth needed: to a billionth of a growth day
_GONE: Final = 1e-6  # a part smaller than this no longer counts
_ROUNDING: Final = 1e-9  # a share above a threshold by no more than this has reached it: 0.1 x 0.2 is not quite 0.02


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """Holes or grooves that one operation leaves in a surface.

    Args:
        area_fraction: share of the surface, 0 to 1.
        lasting_share: 1 where material was removed or cut deep, 0.5 for solid tines, less for shallow grooves.
        half_width_mm: radius of a hole or half the width of a groove, 0 or more.
        heals_as_mm: diameter of the hole that takes as long to close, above 0.
        room_mm: sand it takes, as a depth over the whole surface, 0 or more.
    """

    area_fraction: float
    lasting_share: float
    half_width_mm: float
    heals_as_mm: float
    room_mm: float


def tine_opening(
    diameter_mm: float,
    across_mm: float,
    along_mm: float,
    *,
    lasting_share: float = 1.0,
    passes: int = 1,
    room_mm: float = 0.0,
) -> Opening:
    """Describe the holes that tines leave.

    Args:
        diameter_mm: outside (or solid) diameter, above 0.
        across_mm: spacing between tines, above 0.
        along_mm: spacing in the direction of travel, above 0.
        lasting_share: 1 for hollow tines, `SOLID_LASTING_SHARE` for solid ones.
        passes: how many times the machine goes over.
        room_mm: sand that the holes take, as a depth over the whole surface.

    Returns:
        The opening.
    """
    share = hole_area_fraction(diameter_mm=diameter_mm, across_mm=across_mm, along_mm=along_mm, passes=passes)
    return Opening(
        area_fraction=share,
        lasting_share=lasting_share,
        half_width_mm=diameter_mm / 2,
        heals_as_mm=diameter_mm,
        room_mm=room_mm,
    )


def groove_opening(
    width_mm: float, spacing_mm: float, *, lasting_share: float = 1.0, passes: int = 1, room_mm: float = 0.0
) -> Opening:
    """Describe the grooves that blades leave.

    Args:
        width_mm: width of a groove, above 0.
        spacing_mm: from one groove to the next, above 0.
        lasting_share: 1 for deep grooves, less for shallow ones.
        passes: how many times the machine goes over.
        room_mm: sand that the grooves take, as a depth over the whole surface.

    Returns:
        The opening.
    """
    share = groove_area_fraction(width_mm=width_mm, spacing_mm=spacing_mm, passes=passes)
    return Opening(
        area_fraction=share,
        lasting_share=lasting_share,
        half_width_mm=width_mm / 2,
        heals_as_mm=GROOVE_AS_A_HOLE * width_mm,
        room_mm=room_mm,
    )


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a disruption that heals at a rate of its own.

    Args:
        amount: share of the surface that it disturbs, 0 to 1.
        per_growth_day: rate, above 0.
    """

    amount: float
    per_growth_day: float


Layers = tuple[tuple[Part, ...], ...]
"""A disruption: layers lie on each other at random; within a layer the part that has most left counts."""


def layers_of(openings: Iterable[Opening], surplus_mm: float, stripped_fraction: float = 0.0) -> Layers:
    """Lay out what a job does to a surface.

    Assumes that sand, openings and stripped turf fall on each other at random, and that of several openings the one
    that is furthest from closing decides.

    Args:
        openings: what each operation left.
        surplus_mm: sand that stays on the surface, 0 or more.
        stripped_fraction: share of the surface whose crowns were cut off, 0 to 1.

    Returns:
        The layers that are not empty: sand, openings, stripped turf.

    Source: Swardcast's healing model, fitted on the records in `published_recoveries`.
    """
    sand = (Part(hidden_fraction(surplus_mm), SAND_RATE_PER_GROWTH_DAY),)
    holes = tuple(
        Part(OPEN_HOLES_WEIGHT * opening.lasting_share, HOLE_RATE_MM_PER_GROWTH_DAY / opening.heals_as_mm)
        for opening in openings
    )
    stripped = (Part(stripped_fraction, STRIPPED_RATE_PER_GROWTH_DAY),)
    return _without_the_gone((sand, holes, stripped))


def disruption_left(layers: Layers, growth_days: float = 0.0, pace: float = 1.0) -> float:
    """Estimate the share of a surface that is still disturbed.

    Args:
        layers: the disruption on the day of the work.
        growth_days: growth since the work, 0 or more.
        pace: how fast this surface heals, 1 for the fitted pace, above 0.

    Returns:
        A fraction from 0 to 1.

    Source: Swardcast's healing model: D = 1 - product over layers of (1 - largest of amount x exp(-rate x pace x G)).
    """
    clear = 1.0
    for layer in layers:
        clear *= 1 - max(part.amount * math.exp(-part.per_growth_day * pace * growth_days) for part in layer)
    return 1 - clear


def layers_left(layers: Layers, growth_days: float, pace: float = 1.0) -> Layers:
    """Tell what is left of a disruption, so that another job can come on top of it.

    Args:
        layers: the disruption on the day of the work.
        growth_days: growth since the work, 0 or more.
        pace: how fast this surface heals, above 0.

    Returns:
        The layers still there; those of a second job are simply added, 1 - D = (1 - D_old)(1 - D_new).
    """
    return _without_the_gone(
        tuple(
            tuple(
                Part(part.amount * math.exp(-part.per_growth_day * pace * growth_days), part.per_growth_day)
                for part in layer
            )
            for layer in layers
        )
    )


@lru_cache(maxsize=4096)
def growth_days_needed(layers: Layers, threshold: float) -> float:
    """Work out the growth that brings a disruption down to a threshold, at the fitted pace.

    Args:
        layers: the disruption on the day of the work.
        threshold: share still disturbed at the milestone, above 0 and below 1.

    Returns:
        Growth days, 0 or more.

    Source: bisection; the share left never rises with growth.
    """
    if disruption_left(layers) <= threshold + _ROUNDING:
        return 0.0
    low, high = 0.0, 1.0
    while disruption_left(layers, high) > threshold:
        low, high = high, 2 * high
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if disruption_left(layers, middle) > threshold else (low, middle)
    return high


def growth_at_pace(layers: Layers, threshold: float, pace: float, rim_growth: float) -> float:
    """Work out the growth that brings a disruption down to a threshold at a surface's own pace.

    Args:
        layers: the disruption on the day of the work.
        threshold: share still disturbed at the milestone, above 0 and below 1.
        pace: how fast this surface heals, above 0.
        rim_growth: growth that the widest hole needs at least before it counts as closed, 0 or more.

    Returns:
        Growth days, 0 or more.
    """
    need = growth_days_needed(layers, threshold)
    waits = need > 0 and threshold < SETTLED
    return max(need / pace, rim_growth if waits else 0.0)


def without_sand(layers: Layers) -> Layers:
    """Leave the sand out: what is left are openings and stripped turf.

    Args:
        layers: a disruption.

    Returns:
        Its other layers.
    """
    return tuple(layer for layer in layers if any(part.per_growth_day != SAND_RATE_PER_GROWTH_DAY for part in layer))


def rim_growth_days(openings: Iterable[Opening]) -> float:
    """Tell the growth that large holes need at least, however fast the rest of the surface heals.

    Args:
        openings: what each operation left.

    Returns:
        Growth days: the widest lasting radius over the fastest growth of a rim, 0.9 mm per growth day.
    """
    return max((o.lasting_share * o.half_width_mm / RIM_GROWTH_MM_PER_GROWTH_DAY for o in openings), default=0.0)


def _without_the_gone(layers: Layers) -> Layers:
    kept = (tuple(part for part in layer if part.amount > _GONE) for layer in layers)
    return tuple(layer for layer in kept if layer)
