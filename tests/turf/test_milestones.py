"""Days to each milestone against plain loops, closed forms and another implementation of quantiles."""

import math
from fractions import Fraction
from statistics import NormalDist

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra import numpy as arrays
from numpy.typing import NDArray

from swardcast.turf.growth import GRASSES, growth_fraction
from swardcast.turf.healing import (
    COVER_COMPLETE,
    HOLES_CLOSED,
    SETTLED,
    Layers,
    Opening,
    layers_of,
    rim_growth_days,
)
from swardcast.turf.milestones import (
    Disruption,
    MilestoneDays,
    chance_by,
    complete_cover_days,
    days_at,
    days_until_growth,
    default_log_spread,
    milestone_days,
    normal_by,
)
from swardcast.turf.pace import LOG_SPREAD, Pace, usual_pace
from tests.turf.law_by_hand import HandJob, needed_by_hand

Floats = NDArray[np.float64]

CERTAIN = usual_pace(0.0)
COOL = GRASSES["cool-season"]

growths = arrays.arrays(
    np.float64, st.tuples(st.integers(1, 4), st.integers(1, 30)), elements=st.just(0.0) | st.floats(0.001, 1.0)
)
needs_lists = st.lists(st.just(0.0) | st.floats(0.01, 25), min_size=1, max_size=4)


def _days_by_loop(growth: list[float], need: float) -> float:
    """Walk through the days until the need is met; the last day counts by its share."""
    if need <= 0:
        return 0.0
    total = 0.0
    for day, today in enumerate(growth):
        if today > 0 and total + today >= need:
            return day + (need - total) / today
        total += today
    return math.inf


@given(growths, needs_lists)
def test_days_until_growth_are_those_of_a_plain_loop(growth: Floats, needs: list[float]) -> None:
    days = days_until_growth(growth, np.array(needs))
    assert days.shape == (len(growth), len(needs))
    for member, row in zip(growth.tolist(), days.tolist(), strict=True):
        for need, got in zip(needs, row, strict=True):
            # A need that a day meets to the last digit may fall on either side of it: 1e-9 growth days of play.
            assert _days_by_loop(member, need - 1e-9) - 1e-5 <= got <= _days_by_loop(member, need + 1e-9) + 1e-5


@pytest.mark.parametrize(
    ("growth", "need", "days"),
    [
        ([0.5, 0.5, 0.5], 0.0, 0.0),
        ([0.5, 0.5, 0.5], 0.25, 0.5),  # half of the first day
        ([0.5, 0.5, 0.5], 1.0, 2.0),
        ([0.0, 0.0, 0.5, 0.5], 0.25, 2.5),  # two days stand still
        ([0.2, 0.4, 0.4], 0.5, 1.75),  # 0.2, then 0.3 of the 0.4
        ([0.5, 0.5, 0.5], 1.6, math.inf),  # only 1.5 ever grows
    ],
    ids=["nothing needed", "within a day", "two days", "frozen start", "part of a day", "not within the horizon"],
)
def test_days_until_growth_are_those_of_hand_arithmetic(growth: list[float], need: float, days: float) -> None:
    assert days_until_growth(np.array([growth]), np.array([need]))[0, 0] == pytest.approx(days)


@given(
    arrays.arrays(np.float64, st.integers(1, 60), elements=st.floats(0, 300) | st.just(math.inf)),
    st.sampled_from([0.1, 0.25, 0.5, 0.75, 0.9, 1.0]),
)
def test_days_at_are_the_quantiles_of_another_implementation(samples: Floats, share: float) -> None:
    # numpy.quantile(method="inverted_cdf"), type 1 of Hyndman & Fan 1996, The American Statistician 50(4), 361-365;
    # it is given a large number for never, since it works with differences.
    reference = float(np.quantile(np.where(np.isinf(samples), 1e9, samples), share, method="inverted_cdf"))
    (day,) = days_at(samples, share)
    assert (1e9 if day is None else day) == reference


@given(
    st.lists(st.integers(0, 20) | st.just(math.inf), min_size=1, max_size=50),
    st.integers(1, 100).map(lambda percent: Fraction(percent, 100)),
)
def test_days_at_is_the_first_day_that_the_share_does_not_exceed(values: list[float], share: Fraction) -> None:
    expected = next(day for day in sorted(values) if Fraction(sum(v <= day for v in values), len(values)) >= share)
    (day,) = days_at(np.array(values, dtype=np.float64), float(share))
    assert (math.inf if day is None else day) == expected


def test_a_share_that_the_season_does_not_bring_has_no_day() -> None:
    samples = np.array([10.0, 12.0, math.inf, math.inf])
    assert days_at(samples, 0.1, 0.5, 0.9) == (10.0, 12.0, None)
    assert days_at(np.array([]), 0.1, 0.5) == (None, None)


def test_the_chance_of_a_milestone_is_the_share_of_values_up_to_the_day() -> None:
    samples = np.array([10.0, 12.0, 14.0, math.inf])
    assert [chance_by(samples, day) for day in (9, 10, 13, 400)] == [0, 0.25, 0.5, 0.75]
    assert chance_by(np.array([]), 10) == 0


def _opening(diameter_mm: float, lasting_share: float = 1.0) -> Opening:
    return Opening(
        area_fraction=0.05,
        lasting_share=lasting_share,
        half_width_mm=diameter_mm / 2,
        heals_as_mm=diameter_mm,
        room_mm=0.0,
    )


HEAVY: Layers = layers_of([_opening(12.7)], 2.4)


@pytest.mark.parametrize(
    ("temperature_c", "settled", "closed", "complete"),
    # 12.7 mm hollow tines and heavy sand need 7.3762, 10.3566 and 12.7849 growth days (test_healing.py); growth a day
    # 1, 0.77484 and 0.36044 (arithmetic, exp(-((T - 20) / 7)^2 / 2)).
    [(20, 7.376, 10.357, 12.785), (15, 9.520, 13.366, 16.500), (10, 20.464, 28.733, 35.470)],
    ids=["20 C", "15 C", "10 C"],
)
def test_at_a_constant_temperature_the_days_are_the_need_over_the_growth_of_a_day(
    temperature_c: float, settled: float, closed: float, complete: float
) -> None:
    growth = growth_fraction(np.full((3, 200), float(temperature_c)), COOL.curve)
    job = Disruption(layers=HEAVY, pace=CERTAIN, lag_log_spread=0.0)
    days = milestone_days(growth, job)
    assert days.settled == pytest.approx(settled, rel=0.0005)
    assert days.holes_closed == pytest.approx(closed, rel=0.0005)
    assert complete_cover_days(growth, job) == pytest.approx(complete, rel=0.0005)
    assert days.back_to_normal == pytest.approx(closed + 13.0, rel=0.0005)


def test_the_range_at_a_constant_temperature_is_that_of_the_log_normal_error() -> None:
    days = milestone_days(np.ones((1, 200)), Disruption(layers=HEAVY))
    # 10.3566 growth days; a tenth of a normal error lies below -1.28155 (table of the normal distribution):
    # exp(1.28155 x 0.24) = 1.3601, so 10.3566 / 1.3601 = 7.615 and 10.3566 x 1.3601 = 14.086.
    assert days_at(days.holes_closed, 0.1, 0.5, 0.9) == pytest.approx((7.615, 10.357, 14.086), abs=0.002)


def test_the_days_from_closed_to_normal_carry_the_same_error_as_the_closing() -> None:
    # A job that is slow to close is slow to roll: (10.3566 + 13) x 1.3601 = 31.767 and / 1.3601 = 17.173.
    days = milestone_days(np.ones((1, 200)), Disruption(layers=HEAVY))
    assert days_at(days.back_to_normal, 0.1, 0.5, 0.9) == pytest.approx((17.173, 23.357, 31.767), abs=0.002)


def test_a_pace_that_was_learnt_shortens_the_growth_needed_and_no_days_of_its_own() -> None:
    # Half as fast again: 10.3566 / 1.5 = 6.904; the lag is told apart, 13 / 1.5 = 8.667, with an error of its own.
    pace = Pace((math.log(1.5),) * 15)
    days = milestone_days(np.ones((1, 200)), Disruption(layers=HEAVY, pace=pace, lag_days=13 / 1.5, lag_log_spread=0.0))
    assert days.holes_closed == pytest.approx(6.904, abs=0.001)
    assert days.back_to_normal == pytest.approx(6.904 + 8.667, abs=0.001)


def test_milestones_in_changing_weather_are_those_of_an_independent_loop() -> None:
    rng = np.random.default_rng(11)
    temperatures = 12 + np.cumsum(rng.normal(0, 0.8, (6, 200)), axis=1)
    openings = [_opening(20.0), _opening(18.0, 0.3)]
    growth = growth_fraction(temperatures, COOL.curve)
    disruption = Disruption(
        layers=layers_of(openings, 0.9, 0.1),
        rim_growth_days=rim_growth_days(openings),
        pace=usual_pace(0.4, 0.1),
        lag_days=11.0,
    )
    days, covered = milestone_days(growth, disruption), complete_cover_days(growth, disruption)
    job = HandJob(0.9, ((1.0, 20.0), (0.3, 18.0)), stripped=0.1)
    settle, close, cover = (needed_by_hand(at, job) for at in (SETTLED, HOLES_CLOSED, COVER_COMPLETE))
    errors = [NormalDist().inv_cdf((point + 0.5) / 15) for point in range(15)]
    rim_decides = 0
    for member, temperature_c in enumerate(temperatures.tolist()):
        daily = [math.exp(-(((t - 20) / 7) ** 2) / 2) for t in temperature_c]
        for place, error in enumerate(errors):
            pace = math.exp(0.1 - 0.4 * error)
            rim = 10.0 / 0.9 * math.exp(0.24 * error)  # as little certain as the rest of the model
            rim_decides += close / pace < rim
            closed = _days_by_loop(daily, max(close / pace, rim))
            assert days.settled[member, place] == pytest.approx(_days_by_loop(daily, settle / pace))
            assert days.holes_closed[member, place] == pytest.approx(closed)
            assert covered[member, place] == pytest.approx(_days_by_loop(daily, max(cover / pace, rim)))
            assert days.back_to_normal[member, place] == pytest.approx(closed + 11 * math.exp(0.24 * error))
    assert 0 < rim_decides < 90  # both kinds of days were seen


def test_a_cold_winter_brings_no_milestone_within_the_horizon() -> None:
    days = milestone_days(np.full((4, 200), 0.005), Disruption(layers=HEAVY))
    assert days_at(days.holes_closed, 0.1, 0.5, 0.9) == (None, None, None)
    assert chance_by(days.holes_closed, 200) == 0


def test_sand_alone_adds_no_days_from_holes_closed_to_back_to_normal() -> None:
    # The roll is shorter for about 8 days after a dressing only ("Topdressing and ball roll", Grounds Maintenance,
    # undated), so the 13 days after coring do not apply. 6.905 by hand: ln(0.31662 / 0.02) / 0.40, sand of 1.085 mm.
    sand_only = milestone_days(np.ones((1, 200)), Disruption(layers=layers_of([], 1.085), opened=False, pace=CERTAIN))
    assert sand_only.back_to_normal == pytest.approx(sand_only.holes_closed)
    assert sand_only.holes_closed == pytest.approx(6.905, abs=0.001)


def test_an_undisturbed_surface_is_at_every_milestone_at_once() -> None:
    for layers in ((), layers_of([], 0.02)):  # 1 - exp(-0.02 / 2.85) = 0.7 %: less than any milestone allows
        growth, job = np.ones((2, 50)), Disruption(layers=layers, rim_growth_days=9.0)
        days = milestone_days(growth, job)
        for samples in (days.settled, days.holes_closed, days.back_to_normal, complete_cover_days(growth, job)):
            assert np.all(samples == 0)


temperature_lists = st.lists(st.floats(-5, 30), min_size=1, max_size=8)
some_layers = st.builds(
    lambda surplus, wide, stripped: layers_of([_opening(wide)] if wide else [], surplus, stripped),
    st.floats(0, 5),
    st.just(0.0) | st.floats(2, 40),
    st.just(0.0) | st.floats(0, 1),
)


def _growth_at(temperatures: list[float]) -> NDArray[np.float64]:
    return growth_fraction(np.array(temperatures)[:, np.newaxis] * np.ones(150), COOL.curve)


def _in_weather(temperatures: list[float], disruption: Disruption) -> MilestoneDays:
    return milestone_days(_growth_at(temperatures), disruption)


@given(temperature_lists, some_layers, st.floats(0.01, 0.6), st.floats(-0.5, 0.5), st.floats(0, 15))
def test_likely_lies_between_early_and_allow_until_and_every_day_after_the_work(
    temperatures: list[float], layers: Layers, spread: float, middle: float, rim: float
) -> None:
    disruption = Disruption(layers=layers, rim_growth_days=rim, pace=usual_pace(spread, middle))
    days = _in_weather(temperatures, disruption)
    covered = complete_cover_days(_growth_at(temperatures), disruption)
    for samples in (days.settled, days.holes_closed, days.back_to_normal, covered):
        assert np.all(samples >= 0)
        early, likely, until = (math.inf if day is None else day for day in days_at(samples, 0.1, 0.5, 0.9))
        assert early <= likely <= until
    assert np.all(days.settled <= days.holes_closed)
    assert np.all(days.holes_closed <= covered)
    assert np.all(days.holes_closed <= days.back_to_normal)


@given(temperature_lists, some_layers, st.floats(-0.5, 0.5), st.floats(-0.5, 0.5))
def test_a_faster_pace_never_heals_later(temperatures: list[float], layers: Layers, one: float, other: float) -> None:
    growth = _growth_at(temperatures)
    slow, fast = (
        Disruption(layers=layers, rim_growth_days=6.0, pace=usual_pace(LOG_SPREAD, middle))
        for middle in sorted((one, other))
    )
    later, sooner = milestone_days(growth, slow), milestone_days(growth, fast)
    for name in ("settled", "holes_closed", "back_to_normal"):
        assert np.all(getattr(sooner, name) <= getattr(later, name))
    assert np.all(complete_cover_days(growth, fast) <= complete_cover_days(growth, slow))


def test_the_range_is_wider_where_nothing_was_fitted() -> None:
    # 0.24 is the leave-one-out spread of the records; 0.40 is judgement for all that they do not cover.
    assert default_log_spread(COOL) == 0.24
    assert default_log_spread(COOL, validated=False) == 0.40
    assert default_log_spread(GRASSES["warm-season"]) == 0.40
    assert default_log_spread(GRASSES["annual meadow-grass"]) == 0.40


@given(growths, st.floats(0.0, 0.9), st.floats(0.0, 20.0), st.booleans(), st.lists(st.integers(-3, 40), min_size=1))
def test_what_is_normal_by_a_day_is_what_the_days_say(
    growth: Floats, share: float, lag_days: float, opened: bool, asked: list[int]
) -> None:
    """Where it is not sure of itself it need not be right; a day that has begun counts as a whole one."""
    holes = Opening(area_fraction=0.05, lasting_share=share, half_width_mm=5.0, heals_as_mm=10.0, room_mm=0.0)
    layers = layers_of([holes], surplus_mm=share)
    disruption = Disruption(layers=layers, rim_growth_days=1.0, lag_days=lag_days, opened=opened)
    found, is_sure = normal_by(growth, disruption, np.array(asked))
    days = milestone_days(growth, disruption).back_to_normal
    if is_sure:
        assert found.tolist() == (np.ceil(days - 1e-9)[..., np.newaxis] <= np.array(asked)).tolist()


def test_what_is_normal_by_a_day_is_mostly_sure() -> None:
    growth = np.linspace(0.2, 0.9, 4 * 60).reshape(4, 60)
    disruption = Disruption(layers=layers_of([], surplus_mm=1.5))
    _, is_sure = normal_by(growth, disruption, np.array([3, 14, 20, 31]))
    assert is_sure
