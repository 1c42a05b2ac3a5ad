"""Many disruptions worked out in one go are worked out as each alone."""

from __future__ import annotations

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from swardcast.turf.healing import HOLE_RATE_MM_PER_GROWTH_DAY, SAND_RATE_PER_GROWTH_DAY, Part
from swardcast.turf.milestones import Disruption, milestone_days, milestone_days_of_each

NAMES = ("settled", "holes_closed", "back_to_normal")
DISRUPTIONS = st.builds(
    lambda sand, diameter_mm, rim: Disruption(
        layers=((Part(sand, SAND_RATE_PER_GROWTH_DAY),), (Part(0.1, HOLE_RATE_MM_PER_GROWTH_DAY / diameter_mm),)),
        rim_growth_days=rim,
    ),
    st.floats(0.0, 0.6),
    st.floats(4.0, 20.0),
    st.floats(0.0, 12.0),
)


@settings(max_examples=40)
@given(st.lists(DISRUPTIONS, min_size=1, max_size=6), st.integers(0, 1000))
def test_each_comes_out_as_it_does_alone(disruptions: list[Disruption], seed: int) -> None:
    growth = np.random.default_rng(seed).uniform(0.0, 1.0, (9, 60))
    together = milestone_days_of_each(growth, disruptions)
    for one, found in zip(disruptions, together, strict=True):
        alone = milestone_days(growth, one)
        for name in NAMES:
            np.testing.assert_allclose(getattr(found, name), getattr(alone, name), rtol=0, atol=1e-9)


def test_no_disruption_is_no_answer() -> None:
    assert milestone_days_of_each(np.ones((3, 10)), []) == ()


def test_by_hand_in_weather_of_a_growth_day_each_day() -> None:
    """Sand alone, 0.2 of the surface at 0.4 a growth day: settled (5 %) after ln 4 / 0.4 = 3.47 days at the middle pace,
    holes closed (2 %) after ln 10 / 0.4 = 5.76."""
    sand = Disruption(layers=((Part(0.2, 0.4),),), opened=False)
    more = Disruption(layers=((Part(0.4, 0.4),),), opened=False)
    first, second = milestone_days_of_each(np.ones((1, 100)), [sand, more])
    middle = first.settled.shape[1] // 2
    assert round(float(first.settled[0, middle]), 2) == 3.47
    assert round(float(first.holes_closed[0, middle]), 2) == 5.76
    assert round(float(second.settled[0, middle]), 2) == 5.20  # ln 8 / 0.4
