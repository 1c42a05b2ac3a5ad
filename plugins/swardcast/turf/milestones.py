"""From weather and disruption to the days on which a surface is settled, closed and back to normal."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Final

import numpy as np
from numpy.typing import NDArray

from swardcast.turf.growth import Grass
from swardcast.turf.healing import (
    BACK_TO_NORMAL_LAG_DAYS,
    COVER_COMPLETE,
    HOLES_CLOSED,
    SETTLED,
    Layers,
    growth_days_needed,
)
from swardcast.turf.pace import LOG_SPREAD, LOG_SPREAD_NOT_FITTED, Pace, standard_errors, usual_pace

__all__ = [
    "ALLOW_UNTIL",
    "EARLY",
    "LIKELY",
    "Disruption",
    "MilestoneDays",
    "cases_at",
    "chance_by",
    "complete_cover_days",
    "days_at",
    "days_until_growth",
    "default_log_spread",
    "milestone_days",
    "milestone_days_of_each",
    "normal_by",
]

Floats = NDArray[np.float64]

EARLY: Final = 0.10
LIKELY: Final = 0.50
ALLOW_UNTIL: Final = 0.90

_MOSTLY_ENOUGH: Final = 60  # days, in which most work heals, so that later ones need not be looked at
_NEAR: Final = 1e-7  # growth days, or days: rounding reaches a millionth of it
_ASKED: Final = 2  # needs of growth that are asked for each disruption


@dataclass(frozen=True, slots=True, kw_only=True)
class Disruption:
    """What has to heal.

    Args:
        layers: what is disturbed on day 0.
        rim_growth_days: growth that the widest hole needs at least, 0 or more.
        pace: how fast this surface heals.
        lag_days: calendar days from holes closed to back to normal, 0 or more.
        lag_log_spread: spread of those days, as a logarithm.
        opened: whether there are holes or grooves. Sand alone rolls as before once it has worked in: the roll is
            shorter for about 8 days after a dressing ("Topdressing and ball roll", Grounds Maintenance, undated),
            so the days from holes closed to back to normal are not added.
    """

    layers: Layers
    rim_growth_days: float = 0.0
    pace: Pace = field(default_factory=lambda: usual_pace(LOG_SPREAD))
    lag_days: float = BACK_TO_NORMAL_LAG_DAYS
    lag_log_spread: float = LOG_SPREAD
    opened: bool = True


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MilestoneDays:
    """Days from the work to each milestone, as equally likely values.

    Args:
        settled: shape (members, errors), days; infinite where the horizon does not bring it.
        holes_closed: the same.
        back_to_normal: the same.
    """

    settled: Floats
    holes_closed: Floats
    back_to_normal: Floats


def default_log_spread(grass: Grass, *, validated: bool = True) -> float:
    """Tell how wide to draw the range where nothing was observed yet.

    Args:
        grass: the grass.
        validated: whether this kind of work was among the fitted records.

    Returns:
        Spread as a logarithm.
    """
    return LOG_SPREAD if grass.fitted and validated else LOG_SPREAD_NOT_FITTED


def days_until_growth(growth: Floats, needs: Floats, same_days: int = 0) -> Floats:
    """Count the days until the running sum of growth reaches each need.

    Args:
        growth: growth of each day, shape (members, days), 0 to 1.
        needs: growth days needed, shape (needs,), 0 or more.
        same_days: how many days at the start are the same in all members, so that one search there serves them all.

    Returns:
        Days, shape (members, needs), with fractions of a day; infinite where growth never suffices.
    """
    found = np.full((len(growth), len(needs)), np.inf)
    gained = np.concatenate([[0.0], np.cumsum(growth[0, :same_days])])
    soon = needs <= gained[-1]
    if same_days and soon.any():
        found[:, soon] = _days_in_sums(gained[np.newaxis, 1:], growth[:1, :same_days], needs[soon], 0)
    for until in (same_days + _MOSTLY_ENOUGH, growth.shape[1]):
        later = np.ascontiguousarray(growth[:, same_days:until])
        if not later.size or soon.all():
            break
        sums = later.copy()
        sums[:, 0] += gained[-1]
        np.cumsum(sums, axis=1, out=sums)
        if until >= growth.shape[1] or sums[:, -1].min() >= needs.max():
            found[:, ~soon] = _days_in_sums(sums, later, needs[~soon], same_days)
            break
    return np.where(needs <= 0, 0.0, found)


def _days_in_sums(sums: Floats, growth: Floats, needs: Floats, before: int) -> Floats:
    """Count the days, of which some lie before the first of these sums, none of them enough for a need."""
    members, days = growth.shape
    # One search for all members: each member's sums are lifted above those of the member before it.
    lift = (np.arange(members) * (days + float(needs.max(initial=0.0)) + 1.0))[:, np.newaxis]
    first = (np.arange(members) * days)[:, np.newaxis]
    place = np.searchsorted((sums + lift).ravel(), (needs + lift).ravel(), side="left").reshape(members, -1) - first
    reached = place < days
    flat = np.minimum(place, days - 1) + first
    that_day = np.maximum(growth.ravel()[flat], 1e-12)
    part = 1.0 - (sums.ravel()[flat] - needs) / that_day
    return np.where(reached, before + place + np.clip(part, 0.0, 1.0), np.inf)


def milestone_days(growth: Floats, disruption: Disruption) -> MilestoneDays:
    """Work out when a surface reaches each milestone, over all weather members and the model's own error.

    Assumes the model's error is the same for all milestones of a job: a slow one also takes long from closed to normal.

    Args:
        growth: growth of each day from the day of the work on, shape (members, days), 0 to 1.
        disruption: what has to heal.

    Returns:
        Days from the work to each milestone, shape (members, errors).

    Source: Swardcast's healing model; spread of 0.24 by leave-one-out on 26 published recoveries.
    """
    return milestone_days_of_each(growth, [disruption])[0]


def milestone_days_of_each(
    growth: Floats, disruptions: Sequence[Disruption], same_days: int = 0
) -> tuple[MilestoneDays, ...]:
    """Work out the same for many disruptions in the same weather, in one go.

    Args:
        growth: growth of each day from the day of the work on, shape (members, days), 0 to 1.
        disruptions: what has to heal, in each case.
        same_days: how many days at the start are the same in all members.

    Returns:
        Days from the work to each milestone, for each disruption what `milestone_days` gives.
    """
    if not disruptions:
        return ()
    errors = np.array(standard_errors())
    asked = [_growth_needed(one, errors, threshold) for one in disruptions for threshold in (SETTLED, HOLES_CLOSED)]
    days = np.split(days_until_growth(growth, np.concatenate(asked), same_days), len(asked), axis=1)
    return tuple(
        _milestone_days(disruption, errors, *days[place : place + _ASKED])
        for disruption, place in zip(disruptions, range(0, len(asked), _ASKED), strict=True)
    )


def complete_cover_days(growth: Floats, disruption: Disruption) -> Floats:
    """Work out when a surface is covered again but for the last hundredth, as `milestone_days` does.

    Args:
        growth: growth of each day from the day of the work on, shape (members, days), 0 to 1.
        disruption: what has to heal.

    Returns:
        Days from the work, shape (members, errors), infinite where the horizon does not bring it.
    """
    return days_until_growth(growth, _growth_needed(disruption, np.array(standard_errors()), COVER_COMPLETE))


def _growth_needed(disruption: Disruption, errors: Floats, threshold: float) -> Floats:
    """Growth days until it is down to a threshold, shape (errors,)."""
    pace = np.exp(np.array(disruption.pace.logs))  # fastest first
    need = growth_days_needed(disruption.layers, threshold)
    if need <= 0 or threshold >= SETTLED:
        return np.asarray(need / pace)
    rim = disruption.rim_growth_days * np.exp(errors * LOG_SPREAD)  # as little certain as the rest of the model
    return np.asarray(np.maximum(need / pace, rim))


def _milestone_days(disruption: Disruption, errors: Floats, settled: Floats, closed: Floats) -> MilestoneDays:
    lag = _lag_days(disruption, errors)
    return MilestoneDays(settled=settled, holes_closed=closed, back_to_normal=closed + lag)


def _lag_days(disruption: Disruption, errors: Floats) -> Floats:
    """Days from holes closed to back to normal, shape (errors,)."""
    disturbed = disruption.opened and growth_days_needed(disruption.layers, HOLES_CLOSED) > 0
    return disruption.lag_days * np.exp(errors * disruption.lag_log_spread) if disturbed else np.zeros(len(errors))


def normal_by(growth: Floats, disruption: Disruption, days: NDArray[np.intp]) -> tuple[NDArray[np.bool_], bool]:
    """Tell in which cases a surface is back to normal by some days, which is faster than to date them.

    Args:
        growth: growth of each day from the day of the work on, shape (members, days), 0 to 1.
        disruption: what has to heal.
        days: numbers of days from the work, shape (asked,).

    Returns:
        Whether `milestone_days` gives no more than each of those, shape (members, errors, asked); and whether none of
        that is so near that rounding might decide it.
    """
    errors = np.array(standard_errors())
    need = _growth_needed(disruption, errors, HOLES_CLOSED)[:, np.newaxis]
    closed_by = days - _lag_days(disruption, errors)[:, np.newaxis]
    length = growth.shape[1]
    place = np.clip(closed_by, 0.0, length)
    whole = np.minimum(place.astype(np.intp), length - 1)
    sums = np.concatenate([np.zeros((len(growth), 1)), np.cumsum(growth, axis=1)], axis=1)
    spare = sums[:, whole] + (place - whole) * growth[:, whole] - need
    is_asked = (need > 0) & (closed_by >= 0)
    near = (np.abs(spare) < _NEAR) & is_asked | (np.abs(closed_by) < _NEAR)
    return np.where(need > 0, (spare >= 0) & is_asked, closed_by >= 0), not bool(near.any())


def cases_at(share: float, cases: int) -> int:
    """Count how many of the equally likely cases make up a share.

    Args:
        share: above 0 and up to 1, for example 0.9 for "allow until".
        cases: all of them, 1 or more.

    Returns:
        The least number of cases that is no less than the share, 1 or more.
    """
    return max(1, math.ceil(share * cases - 1e-9))


def days_at(samples: Floats, *shares: float) -> tuple[float | None, ...]:
    """Name the days that shares of the equally likely values do not exceed.

    Args:
        samples: days, any shape, infinite where never.
        shares: each above 0 and up to 1, for example 0.9 for "allow until".

    Returns:
        Days for each share, or None where that share is not reached within the horizon or there are no values.

    Source: inverse of the empirical distribution, type 1 of Hyndman & Fan 1996, "Sample quantiles in statistical
        packages", The American Statistician 50(4), 361-365.
    """
    if samples.size == 0:
        return (None,) * len(shares)
    places = [cases_at(share, samples.size) - 1 for share in shares]
    ordered = np.partition(samples, places, axis=None)
    values = [float(ordered[place]) for place in places]
    return tuple(value if math.isfinite(value) else None for value in values)


def chance_by(samples: Floats, days: float) -> float:
    """Estimate the chance that a milestone is reached within so many days.

    Args:
        samples: days, any shape.
        days: days from the work.

    Returns:
        A fraction from 0 to 1.
    """
    return float(np.mean(samples <= days)) if samples.size else 0.0
