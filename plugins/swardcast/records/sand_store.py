"""The sand in the club's yard: room, counts, deliveries. None of it is ever published."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from swardcast.records.operations import Kind
from swardcast.turf.sand import moist_t_from_dry

__all__ = ["SandCount", "SandDelivery", "SandStore"]


@dataclass(frozen=True, slots=True, kw_only=True)
class SandCount:
    """What lay in the store at the beginning of a day.

    Args:
        on: the day.
        mass_t: tonnes as weighed, moist, 0 or more.
    """

    on: date
    mass_t: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SandDelivery:
    """A load of sand that came or is to come; it is there before the work of its day.

    Args:
        on: the day.
        mass_t: tonnes as weighed, moist, above 0.
        note: words on it as typed, or "".
    """

    on: date
    mass_t: float
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SandStore:
    """What the club tells of its store of sand.

    Args:
        room_t: how much it holds, tonnes as weighed, or None.
        least_t: what is kept back, tonnes as weighed, 0 or more.
        moisture_fraction: water of the sand there over its dry mass, 0 or more, or None where nobody told it.
        counts: what was counted, the first first.
        deliveries: loads, the first first.
        kinds: kinds of work whose sand comes out of it.
    """

    room_t: float | None = None
    least_t: float = 0.0
    moisture_fraction: float | None = None
    counts: tuple[SandCount, ...] = ()
    deliveries: tuple[SandDelivery, ...] = ()
    kinds: frozenset[Kind] = frozenset({Kind.TOPDRESSING, Kind.SAND_INJECTION})

    def weighed_t(self, dry_t: float) -> float:
        """Tell what dry sand weighs as it lies there, and as it is paid for.

        Args:
            dry_t: tonnes of dry sand, 0 or more.

        Returns:
            Tonnes with its water; the same where nobody told its moisture.
        """
        return moist_t_from_dry(dry_t, self.moisture_fraction or 0.0)
