"""The formula that `swardcast explain` prints, put into numbers as a reader with a pocket calculator would."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from scipy.optimize import brentq

__all__ = ["left_after", "needed"]

_TERM = re.compile(r"(\d\.\d{3}) x exp\(-(\d\.\d{3}) G\)")
_FACTOR = re.compile(r"\(1 - (\d\.\d{3} x exp\(-\d\.\d{3} G\)|the largest of \[[^\]]+\])\)")


def left_after(said: str) -> Callable[[float], float]:
    """Read "Left after G growth days: 1 - (1 - 0.258 x exp(-0.377 G))(1 - the largest of [...; ...])."."""
    head, formula = said.split(": ")
    assert head == "Left after G growth days"
    assert re.fullmatch(rf"1 - (?:{_FACTOR.pattern})+\.", formula), formula
    layers = [
        [(float(amount), float(rate)) for amount, rate in _TERM.findall(factor)] for factor in _FACTOR.findall(formula)
    ]

    def left(growth: float) -> float:
        clear = 1.0
        for layer in layers:
            clear *= 1 - max(amount * math.exp(-rate * growth) for amount, rate in layer)
        return 1 - clear

    return left


def needed(left: Callable[[float], float], threshold: float) -> float:
    """The growth days after which no more than the threshold is left."""
    return 0.0 if left(0.0) <= threshold else float(brentq(lambda growth: left(growth) - threshold, 0.0, 200.0))
