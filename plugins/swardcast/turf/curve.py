"""From weather and disruption to the share of a surface that is still disturbed, day by day."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from swardcast.turf.healing import HOLES_CLOSED, disruption_left
from swardcast.turf.milestones import Disruption
from swardcast.turf.pace import LOG_SPREAD, standard_errors

__all__ = ["shares_left"]

Floats = NDArray[np.float64]

_NOT_YET = HOLES_CLOSED * (1 + 1e-6)  # a share that just does not count as closed


def shares_left(growth_sums: Floats, disruption: Disruption) -> Floats:
    """Estimate the share of a surface that is still disturbed, over all weather members and the model's own error.

    Assumes what `milestone_days` assumes, so that a share is at a milestone's threshold or below it on the very days
    that come after the milestone's; as long as the rim of the widest hole has not closed, holes do not count as closed.

    Args:
        growth_sums: growth days gained before each day, shape (members, days), 0 or more.
        disruption: what has to heal.

    Returns:
        Shares from 0 to 1, shape (members, errors, days).

    Source: Swardcast's healing model, as in `healing.disruption_left`.
    """
    pace = np.exp(np.array(disruption.pace.logs))
    healed = growth_sums[:, np.newaxis, :] * pace[np.newaxis, :, np.newaxis]
    clear = np.ones_like(healed)
    for layer in disruption.layers:
        parts = (part.amount * np.exp(-part.per_growth_day * healed) for part in layer)
        clear *= 1 - np.maximum.reduce(list(parts))
    left = 1 - clear
    if disruption.rim_growth_days > 0 and disruption_left(disruption.layers) > HOLES_CLOSED:
        rim = disruption.rim_growth_days * np.exp(np.array(standard_errors()) * LOG_SPREAD)
        open_rim = growth_sums[:, np.newaxis, :] < rim[np.newaxis, :, np.newaxis]
        left = np.where(open_rim, np.maximum(left, _NOT_YET), left)
    return np.asarray(left)
