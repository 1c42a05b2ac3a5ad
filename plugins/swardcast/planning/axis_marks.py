"""Values that are named on an axis of a picture."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

__all__ = ["AxisMark", "even_marks", "marks_around"]

_MOST_MARKS: Final = 6  # on one axis, so that they can be read: judgement
_ROUNDING: Final = 1e-9  # of a step: a value on a mark is not beside it


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


def marks_around(values: Sequence[float], steps: Sequence[float]) -> tuple[float, ...]:
    """Choose even values from the last that is not above the least to the first that is not below the largest.

    Args:
        values: what is shown, at least one.
        steps: distances to choose from, the smallest first.

    Returns:
        The values, two at least: at most six, unless the widest step is too short for that.
    """

    def ends(step: float) -> tuple[int, int]:
        first = math.floor(min(values) / step + _ROUNDING)
        return first, max(first + 1, math.ceil(max(values) / step - _ROUNDING))

    step = next((one for one in steps if ends(one)[1] - ends(one)[0] < _MOST_MARKS), steps[-1])
    first, last = ends(step)
    return tuple(step * place for place in range(first, last + 1))
