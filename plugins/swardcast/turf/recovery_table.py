"""The published recoveries worked out again, so that anybody can see where the model misses."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.turf.ensemble import members_from_monthly
from swardcast.turf.growth import GRASSES, GrowthCurve, growth_fraction
from swardcast.turf.healing import (
    BACK_TO_NORMAL_LAG_DAYS,
    COVER_COMPLETE,
    HOLES_CLOSED,
    SETTLED,
    growth_at_pace,
    layers_of,
    rim_growth_days,
)
from swardcast.turf.milestones import days_until_growth
from swardcast.turf.published_recoveries import PUBLISHED_RECOVERIES, PublishedRecovery, Seen
from swardcast.turf.station_normals import MONTHLY_MEANS_C

__all__ = ["RecoveryRow", "days_until", "growth_since", "growth_to_milestone", "recovery_table"]

_DAYS: Final = 420  # over a winter and the spring after it
_COMMON_YEAR: Final = 2015  # the normals know no year
_THRESHOLD: Final = {
    Seen.SETTLED: SETTLED,
    Seen.HOLES_CLOSED: HOLES_CLOSED,
    Seen.BACK_TO_NORMAL: HOLES_CLOSED,
    Seen.COMPLETE_COVER: COVER_COMPLETE,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class RecoveryRow:
    """A published recovery beside what is computed for it.

    Args:
        recovery: the record.
        computed_days: days from the work to its milestone.
    """

    recovery: PublishedRecovery
    computed_days: float

    @property
    def is_inside(self) -> bool:
        """Whether the computed day lies in the interval that was seen, to the nearest day."""
        return self.recovery.from_day <= round(self.computed_days) <= self.recovery.to_day

    @property
    def miss_days(self) -> float | None:
        """Distance from the middle of the interval, above 0 when computed too late; None for "later than"."""
        if not self.recovery.is_dated:
            return None
        return self.computed_days - (self.recovery.from_day + self.recovery.to_day) / 2


def growth_since(recovery: PublishedRecovery, curve: GrowthCurve) -> NDArray[np.float64]:
    """Lay out the growth of each day since the work, from the normals of the place.

    Args:
        recovery: the record.
        curve: growth against temperature.

    Returns:
        Growth from 0 to 1, shape (events, 420).
    """
    means = np.mean([MONTHLY_MEANS_C[name] for name in recovery.stations], axis=0) + recovery.warmer_by_c
    starts = [date(_COMMON_YEAR, month, day) for month, day in recovery.starts]
    tmean_c = np.vstack([members_from_monthly(means, start, _DAYS).tmean_c for start in starts])
    growth = growth_fraction(tmean_c, curve) * recovery.growth_factor
    growth[:, list(recovery.frost_days)] = 0.0
    return growth


def growth_to_milestone(recovery: PublishedRecovery) -> float:
    """Tell the growth days that the record's milestone needs.

    Args:
        recovery: the record.

    Returns:
        Growth days.
    """
    layers = layers_of(recovery.openings, recovery.surplus_mm)
    return growth_at_pace(layers, _THRESHOLD[recovery.seen], 1.0, rim_growth_days(recovery.openings))


def days_until(growth: NDArray[np.float64], need: float) -> float:
    """Count the days until the growth suffices, the mean over events; at most 420.

    Args:
        growth: growth of each day, shape (events, days).
        need: growth days.

    Returns:
        Days, a quarter or more.
    """
    days = days_until_growth(growth, np.array([need]))
    return max(0.25, float(np.minimum(days, growth.shape[1]).mean()))


def recovery_table(recoveries: Sequence[PublishedRecovery] = PUBLISHED_RECOVERIES) -> tuple[RecoveryRow, ...]:
    """Work the published recoveries out again with the constants in use.

    Args:
        recoveries: the records, all of cool-season greens.

    Returns:
        A row for each, in their order.
    """
    curve = GRASSES["cool-season"].curve
    rows = []
    for recovery in recoveries:
        closed = days_until(growth_since(recovery, curve), growth_to_milestone(recovery))
        lag = BACK_TO_NORMAL_LAG_DAYS if recovery.seen is Seen.BACK_TO_NORMAL else 0.0
        rows.append(RecoveryRow(recovery=recovery, computed_days=closed + lag))
    return tuple(rows)
