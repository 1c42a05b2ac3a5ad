"""Values that are named on an axis of a picture."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

__all__ = ["AxisMark", "even_marks"]

_MOST_MARKS: Final = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class AxisMark:
    """A value that is named on an axis."""

    value: float
    words: str


def even_marks(largest: float, steps: Sequence[float]) -> tuple[float, ...]:
    """Choose even values from 0 to the first that is not below the largest; two at least.

    Args:
        largest: the largest value that is shown, 0 or more.
        steps: distances to choose from, the smallest first.

    Returns:
        The values: at most six, unless the widest step is too short for that.
    """
    step = next((step for step in steps if largest <= step * (_MOST_MARKS - 1)), steps[-1])
    marks = [0.0, step]
    while marks[-1] < largest:
        marks.append(step * len(marks))
    return tuple(marks)
