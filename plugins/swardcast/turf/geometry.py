"""Holes and grooves: how many, how much of the surface, how much room for sand."""

from __future__ import annotations

import math

__all__ = [
    "groove_area_fraction",
    "hole_area_fraction",
    "holes_per_m2",
    "overlapped_fraction",
    "passes_to_reach",
]


def holes_per_m2(*, across_mm: float, along_mm: float) -> float:
    """Count the holes that one pass leaves in a square metre.

    Assumes a square or staggered pattern that is the same everywhere.

    Args:
        across_mm: spacing between tines, above 0.
        along_mm: spacing in the direction of travel, above 0.

    Returns:
        Holes per square metre.

    Source: arithmetic, N = 1 / (across x along); checked against Woods 2009, "Core aeration of putting
        greens ... how much is enough?", Asian Turfgrass Center (5 x 5 cm: 400 holes/m2).
    """
    return 1e6 / (across_mm * along_mm)


def hole_area_fraction(*, diameter_mm: float, across_mm: float, along_mm: float, passes: int = 1) -> float:
    """Work out the share of the surface that holes take.

    Assumes round holes as wide as the tine, and passes that do not meet: the trade always adds them.

    Args:
        diameter_mm: outside (or solid) diameter for what is disturbed, inside for what is removed; 0 or more.
        across_mm: spacing between tines, above 0.
        along_mm: spacing in the direction of travel, above 0.
        passes: how many times the machine went over, 1 or more.

    Returns:
        A fraction, 0 or more; above 1 only when the holes would not fit side by side.

    Source: arithmetic, A = pi d^2 / (4 across along); checked against Woods 2009 (12 mm at 5 x 5 cm: 4.5 %).
    """
    return passes * math.pi * diameter_mm**2 / (4 * across_mm * along_mm)


def groove_area_fraction(*, width_mm: float, spacing_mm: float, passes: int = 1) -> float:
    """Work out the share of the surface that blades open.

    Assumes a groove as wide as the blade. Blades may cut wider than their nominal size: use the measured width.

    Args:
        width_mm: width of the groove, 0 or more.
        spacing_mm: from the middle of one blade to the next, above 0.
        passes: how many times the machine went over, 1 or more.

    Returns:
        A fraction, 0 or more.

    Source: arithmetic, A = width / spacing; checked against Murdoch 2004, "Deep scarifying / linear aeration".
    """
    return passes * width_mm / spacing_mm


def overlapped_fraction(fraction_per_pass: float, passes: int) -> float:
    """Work out the share disturbed when passes fall at random and partly on each other.

    Args:
        fraction_per_pass: share that one pass disturbs, 0 to 1.
        passes: how many passes, 0 or more.

    Returns:
        A fraction from 0 to 1, never more than the plain sum.

    Source: arithmetic, 1 - (1 - A)^n.
    """
    return float(1 - (1 - fraction_per_pass) ** passes)


def passes_to_reach(goal_fraction: float, fraction_per_pass: float) -> float:
    """Work out how many passes reach a goal for the share of the surface, when none meets another.

    Args:
        goal_fraction: the goal, 0 or more.
        fraction_per_pass: share that one pass takes, above 0.

    Returns:
        Passes, not rounded.

    Source: Minner 2004, reprinted SportsTurf October 2011 p. 19 ("100 % efficiency").
    """
    return goal_fraction / fraction_per_pass
