"""What a club aims at with readings of its course: its own targets, never ours. They stay private."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from swardcast.records.course_readings import Measured, Meter

__all__ = ["Beside", "Target"]


class Beside(Enum):
    """Where a reading lies beside a target; no verdict, since only the club knows what it makes of it."""

    BELOW = "below"
    WITHIN = "within"
    ABOVE = "above"


@dataclass(frozen=True, slots=True, kw_only=True)
class Target:
    """A club's target for one reading.

    Args:
        reading: name of the reading.
        meter: what it counts.
        least: the lower end in the meter's unit, or None where there is none.
        most: the upper end, or None; one of the two is given.
        typed: the target as typed.
    """

    reading: str
    meter: Meter
    least: float | None
    most: float | None
    typed: str

    def beside(self, found: Measured) -> Beside | None:
        """Tell where a reading lies; its ends belong to the target.

        Args:
            found: the reading.

        Returns:
            Below, within or above; None where it was read with another meter.
        """
        if found.meter is not self.meter:
            return None
        if self.least is not None and found.value < self.least - _SAME:
            return Beside.BELOW
        return Beside.ABOVE if self.most is not None and found.value > self.most + _SAME else Beside.WITHIN


_SAME = 1e-9  # what sums of exact conversions may differ by
