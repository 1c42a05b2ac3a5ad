"""Growth: how fast grass grows on a day, from that day's mean air temperature."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

__all__ = ["GRASSES", "PUBLISHED_COOL", "PUBLISHED_WARM", "Grass", "GrowthCurve", "growth_fraction"]


@dataclass(frozen=True, slots=True, kw_only=True)
class GrowthCurve:
    """A bell curve of growth against temperature.

    Args:
        optimum_c: temperature of the best day, C.
        width_c: standard deviation of the bell, C, above 0.
        holds_above_optimum: whether growth stays at its best on hotter days.
    """

    optimum_c: float
    width_c: float
    holds_above_optimum: bool = False


PUBLISHED_COOL: Final = GrowthCurve(optimum_c=20.0, width_c=5.5)
"""Cool-season "growth potential", C; Gelernter & Stowell 2005, "Improved overseeding programs 1. The role of
weather", Golf Course Management; Celsius form in Woods 2014, Asian Turfgrass Center."""

PUBLISHED_WARM: Final = GrowthCurve(optimum_c=31.0, width_c=7.0, holds_above_optimum=True)
"""Warm-season "growth potential", C; same sources as `PUBLISHED_COOL`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Grass:
    """A kind of grass, as far as healing depends on it.

    Args:
        name: the trade's name.
        curve: growth against temperature, for healing.
        fitted: whether healing was fitted on records of this grass.
    """

    name: str
    curve: GrowthCurve
    fitted: bool


GRASSES: Final[dict[str, Grass]] = {
    grass.name: grass
    for grass in (
        # Width 7.0 C: fitted on 26 published recoveries (bootstrap 10-90 % 6.9 to 7.4), wider than the published 5.5.
        Grass(name="cool-season", curve=GrowthCurve(optimum_c=20.0, width_c=7.0), fitted=True),
        # Optimum 18 C: practitioners' choice, Woods 2014 (blog, "Growth potential and optimum temperatures").
        Grass(name="annual meadow-grass", curve=GrowthCurve(optimum_c=18.0, width_c=7.0), fitted=False),
        # Borrows the cool-season healing rate; no records of its own.
        Grass(name="warm-season", curve=PUBLISHED_WARM, fitted=False),
    )
}


def growth_fraction(tmean_c: NDArray[np.float64], curve: GrowthCurve) -> NDArray[np.float64]:
    """Work out a day's growth relative to the best day.

    Assumes water, feed and light enough; healing was seen between 2 and 27 C.

    Args:
        tmean_c: mean air temperature of each day, C, any shape; NaN stays NaN.
        curve: the grass's growth curve.

    Returns:
        Growth from 0 to 1 per day, same shape.

    Source: Gelernter & Stowell 2005, Golf Course Management: exp(-((T - T0) / s)^2 / 2); above T0 the
        warm-season curve is held at 1.
    """
    distance = (np.asarray(tmean_c, dtype=np.float64) - curve.optimum_c) / curve.width_c
    if curve.holds_above_optimum:
        distance = np.minimum(distance, 0.0)
    return np.asarray(np.exp(-0.5 * distance**2), dtype=np.float64)
