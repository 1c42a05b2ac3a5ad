"""What the log says was seen on a healing surface, as shares of the first disruption that are left."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from itertools import combinations
from typing import Final

from swardcast.outlook.weather_days import Growth, SlowDays
from swardcast.records.club import Grass
from swardcast.records.log import Eye, Observation
from swardcast.turf.healing import HOLES_CLOSED, Layers, disruption_left, growth_days_needed
from swardcast.turf.pace import Sighting

__all__ = ["CoverSeen", "Healing", "Look", "MarksSeen", "RollSeen", "contradictions", "looks_of"]

_ERROR: Final = {Eye.BY_EYE: 0.10, Eye.COUNTED: 0.03}  # standard error of the share left: judgement
_SPEED_ERROR: Final = 0.25  # of a share told from the roll; dew, mowing and slope move it too: judgement
_SPEED_LOST: Final = 0.20  # share of the target speed that is lost on the day of the work: judgement
_CONTRADICTS: Final = 2.0  # standard errors beyond which two looks cannot both be right: judgement
_SAME_TIME: Final = 1.0  # growth days within which two looks see the same: judgement


@dataclass(frozen=True, slots=True, kw_only=True)
class Healing:
    """A surface that heals, as far as looks at it are judged.

    Args:
        start: day 0.
        grass: the grass.
        layers: what was disturbed on day 0.
        lag_days: calendar days from holes closed to back to normal.
        slow: days on which growth was held back.
        target_speed_mm: the roll that the club aims at, mm, or None.
    """

    start: date
    grass: Grass
    layers: Layers
    lag_days: float
    slow: SlowDays
    target_speed_mm: float | None


@dataclass(frozen=True, slots=True)
class _MarksLeft:
    """Share of the first marks that is left after growth days."""

    layers: Layers
    day_zero: float

    def __call__(self, growth_days: float) -> float:
        return disruption_left(self.layers, growth_days) / self.day_zero


@dataclass(frozen=True, slots=True)
class _RollLost:
    """Share of the lost roll that is missing after growth days, of so many that it needs."""

    need: float

    def __call__(self, growth_days: float) -> float:
        return max(0.0, 1 - growth_days / self.need) if self.need > 0 else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class MarksSeen:
    """Marks of the work that were still there.

    Args:
        share_left: share of the first marks, 0 to 1.
        how: by eye or counted.
    """

    share_left: float
    how: Eye


@dataclass(frozen=True, slots=True, kw_only=True)
class CoverSeen:
    """Turf cover, from a photo count.

    Args:
        share: share of the surface under green leaf, 0 to 1.
    """

    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class RollSeen:
    """A green speed.

    Args:
        roll_mm: length of the roll, mm.
        of_target: as a share of the roll that the club aims at, above 0.
    """

    roll_mm: float
    of_target: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """One look at the surface.

    Args:
        at: when.
        source: id of the log entry.
        what: what was seen.
        sighting: the share left that it speaks for: of the roll that the work took where that was seen, otherwise of
            the first marks.
    """

    at: datetime
    source: str
    what: MarksSeen | CoverSeen | RollSeen
    sighting: Sighting


def looks_of(observations: Iterable[Observation], healing: Healing, growth: Growth) -> tuple[Look, ...]:
    """Read what was seen since the work.

    Args:
        observations: the log's observations of this surface, oldest first.
        healing: how the surface heals.
        growth: the growth as known.

    Returns:
        Looks, oldest first; an entry with several readings gives several.
    """
    return tuple(look for seen in observations for look in _looks(seen, healing, growth))


def _looks(seen: Observation, healing: Healing, growth: Growth) -> Iterator[Look]:
    on = growth.no_later(seen.head.true_from.date())
    gained = growth.growth_between(healing.start, on, healing.grass, healing.slow)
    day_zero = disruption_left(healing.layers)

    left = _MarksLeft(healing.layers, day_zero)

    def look(what: MarksSeen | CoverSeen | RollSeen, sighting: Sighting) -> Look:
        return Look(at=seen.head.true_from, source=seen.head.id, what=what, sighting=sighting)

    if seen.share_left is not None:
        sighting = Sighting(share_left=seen.share_left, growth_days=gained, error=_ERROR[seen.how], foretold=left)
        yield look(MarksSeen(share_left=seen.share_left, how=seen.how), sighting)
    if seen.turf_cover is not None:
        share = min(1.0, (1 - seen.turf_cover) / day_zero)
        error = min(1.0, _ERROR[Eye.COUNTED] / day_zero)
        sighting = Sighting(share_left=share, growth_days=gained, error=error, foretold=left)
        yield look(CoverSeen(share=seen.turf_cover), sighting)
    days = (on - healing.start).days
    if seen.green_speed_mm is not None and healing.target_speed_mm is not None and days > 0:
        roll = RollSeen(roll_mm=seen.green_speed_mm, of_target=seen.green_speed_mm / healing.target_speed_mm)
        yield look(roll, _speed(seen.green_speed_mm, healing, gained, days))


def _speed(speed_mm: float, healing: Healing, growth: float, days: int) -> Sighting:
    """The roll is taken to come back evenly from the day of the work to back to normal: judgement."""
    target_mm = healing.target_speed_mm or speed_mm
    short = (target_mm - speed_mm) / (_SPEED_LOST * target_mm)
    need = growth_days_needed(healing.layers, HOLES_CLOSED) + healing.lag_days * growth / days
    share = min(1.0, max(0.0, short))
    return Sighting(share_left=share, growth_days=growth, error=_SPEED_ERROR, foretold=_RollLost(need))


def contradictions(looks: Sequence[Look]) -> list[tuple[Look, Look]]:
    """Find pairs of looks that cannot both be right.

    Marks do not come back without new work, and two looks at about the same time see the same. The roll is compared
    with the roll only.

    Args:
        looks: looks at one surface since the work, oldest first.

    Returns:
        Pairs, the earlier look first.
    """
    found = []
    for earlier, later in combinations(looks, 2):
        if isinstance(earlier.what, RollSeen) is not isinstance(later.what, RollSeen):
            continue  # the roll comes back later than the holes close
        one, other = earlier.sighting, later.sighting
        apart = (other.share_left - one.share_left) / math.hypot(one.error, other.error)
        same_time = abs(other.growth_days - one.growth_days) <= _SAME_TIME
        if apart > _CONTRADICTS or (same_time and apart < -_CONTRADICTS):
            found.append((earlier, later))
    return found
