"""Growth: how fast grass grows on a day, from that day's mean air temperature."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

__all__ = ["BRAKES", "GRASSES", "PUBLISHED_COOL", "PUBLISHED_WARM", "Brake", "Grass", "GrowthCurve", "growth_fraction"]


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Brake:
    """Something that holds growth back for a while.

    Args:
        name: the trade's name.
        growth_left: share of the growth that is left, 0 to 1.
        usual_days: how long it usually lasts, days, or None when only the club can say.
    """

    name: str
    growth_left: float
    usual_days: int | None


BRAKES: Final[dict[str, Brake]] = {
    brake.name: brake
    for brake in (
        # Each factor rests on a single source or record, was not fitted, and is used only where the log says so.
        # Dull: judgement, after the one dull record among the published recoveries (California, 25 March 2019).
        Brake(name="dull weather", growth_left=0.6, usual_days=None),
        # Unfed: pitch marks were acceptable after 14 days instead of 10; Bigelow et al. 2009, ASA abstract 54305.
        Brake(name="unfed", growth_left=0.7, usual_days=None),
        # Regulator: stolons 25 to 53 % shorter after 2 weeks, no effect by week 3 (the lower end is taken);
        # Volterrani et al. 2012, HortTechnology 22:479.
        Brake(name="growth regulator", growth_left=0.75, usual_days=14),
        # Frost: judgement.
        Brake(name="frost on the leaf", growth_left=0.0, usual_days=1),
    )
}
"""What holds growth back, by the trade's name; shares of the growth that is left, 0 to 1."""


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
