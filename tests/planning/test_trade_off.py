"""Which choices have to be traded against each other: more of the surface worked for more days."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.planning.trade_off import TradeOffPoint, front_of


def _points(*told: tuple[float, int]) -> list[TradeOffPoint]:
    """Of share and likely days each, numbered from 1."""
    return [
        TradeOffPoint(number=str(number), is_planned=False, share=share, likely_days=days, until_days=days + 10)
        for number, (share, days) in enumerate(told, start=1)
    ]


def test_a_choice_that_works_less_in_more_days_is_left_out_of_the_front() -> None:
    """By hand, the demo's six: (13.3 %, 33) and (8.0 %, 29) and (3.1 %, 21) are on it; 4.1 % in 31 days works less than 8.0 %
    in 29, 8.2 % in 35 less than 13.3 % in 33, and so does 4.8 % in 34."""
    points = _points((0.133, 33), (0.041, 31), (0.082, 35), (0.048, 34), (0.031, 21), (0.080, 29))
    assert [one.number for one in front_of(points)] == ["5", "6", "1"]


@pytest.mark.parametrize(
    ("told", "numbers"),
    [
        ([(0.05, 20), (0.08, 20)], ["2"]),  # as many days, more area
        ([(0.05, 20), (0.05, 25)], ["1"]),  # as much area, fewer days
        ([(0.05, 20), (0.05, 20)], ["1", "2"]),  # alike
        ([(0.05, 20)], ["1"]),
    ],
)
def test_a_tie_in_one_aim_is_decided_by_the_other(told: list[tuple[float, int]], numbers: list[str]) -> None:
    assert [one.number for one in front_of(_points(*told))] == numbers


@given(st.lists(st.tuples(st.sampled_from([0.01, 0.02, 0.05, 0.1]), st.integers(5, 12)), min_size=1, max_size=8))
def test_along_the_front_more_area_always_takes_more_days_and_every_choice_is_met_by_it(
    told: list[tuple[float, int]],
) -> None:
    points = _points(*told)
    front = front_of(points)
    steps = sorted({(one.share, one.likely_days) for one in front})
    assert [days for _, days in steps] == sorted({days for _, days in steps})
    for one in points:
        assert any(other.share >= one.share and other.likely_days <= one.likely_days for other in front)
