"""The share still disturbed day by day, against the law by hand and against the days of the milestones."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra import numpy as arrays
from numpy.typing import NDArray

from swardcast.turf.curve import shares_left
from swardcast.turf.healing import HOLES_CLOSED, SETTLED, Part
from swardcast.turf.milestones import Disruption, milestone_days
from swardcast.turf.pace import Pace, usual_pace

Floats = NDArray[np.float64]

parts = st.builds(Part, st.floats(0.011, 0.9), st.floats(0.05, 0.6))
disruptions = st.builds(
    Disruption,
    layers=st.lists(st.lists(parts, min_size=1, max_size=2).map(tuple), min_size=1, max_size=3).map(tuple),
    rim_growth_days=st.sampled_from([0.0, 2.0, 9.0]),
    pace=st.builds(usual_pace, st.sampled_from([0.24, 0.4]), st.floats(-0.3, 0.3)),
)
growths = arrays.arrays(np.float64, st.tuples(st.integers(1, 3), st.integers(1, 40)), elements=st.floats(0.01, 1.0))


def _sums(growth: Floats) -> Floats:
    return np.concatenate([np.zeros((len(growth), 1)), np.cumsum(growth, axis=1)], axis=1)


def test_one_layer_falls_by_its_rate_as_by_hand() -> None:
    """0.3 x exp(-0.4 x 0.5 x d), and two layers as 1 - (1 - a)(1 - b)."""
    sums = np.array([[0.0, 0.5, 1.0, 1.5]])
    certain = Pace((0.0,))
    one = shares_left(sums, Disruption(layers=((Part(0.3, 0.4),),), pace=certain))
    assert one[0, 0].tolist() == pytest.approx([0.3 * math.exp(-0.2 * day) for day in range(4)])
    two = shares_left(sums, Disruption(layers=((Part(0.3, 0.4),), (Part(0.1, 0.2),)), pace=certain))
    assert two[0, 0, 3] == pytest.approx(1 - (1 - 0.3 * math.exp(-0.6)) * (1 - 0.1 * math.exp(-0.3)))


@given(growths, disruptions)
def test_a_share_is_at_a_milestone_exactly_from_its_day_on(growth: Floats, disruption: Disruption) -> None:
    days = milestone_days(growth, disruption)
    left = shares_left(_sums(growth), disruption)
    for threshold, reached in ((SETTLED, days.settled), (HOLES_CLOSED, days.holes_closed)):
        for day in range(left.shape[2]):
            certain = np.abs(reached - day) > 1e-6  # a day is hit on the dot by chance alone
            assert np.array_equal((left[:, :, day] <= threshold)[certain], (reached <= day)[certain])


@given(growths, disruptions)
def test_a_share_never_rises(growth: Floats, disruption: Disruption) -> None:
    assert np.all(np.diff(shares_left(_sums(growth), disruption), axis=2) <= 1e-12)


def test_wide_holes_do_not_count_as_closed_before_their_rim_has() -> None:
    """Half of the holes' rims need 9 growth days; the share alone would be at 2 % after ln(2.5) / 0.5 = 1.8."""
    disruption = Disruption(layers=((Part(0.05, 0.5),),), rim_growth_days=9.0, pace=usual_pace(0.0))
    left = shares_left(_sums(np.ones((1, 20))), disruption)
    middle = left.shape[1] // 2
    assert (left[0, middle, 8] > HOLES_CLOSED, left[0, middle, 9] > HOLES_CLOSED) == (True, False)
    assert left[0, middle, 2] == pytest.approx(HOLES_CLOSED, rel=1e-3)
