"""Scores against an outside package, by hand, and the laws that they must keep."""

import numpy as np
import pytest
import scoringrules
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray

from swardcast.turf.scores import crps, skill, within

Floats = NDArray[np.float64]

DAYS = st.floats(0, 200)
MEMBERS = st.lists(DAYS, min_size=1, max_size=40).map(np.array)


def test_the_score_of_three_members_by_hand() -> None:
    # Members 10, 12, 17, truth 13: errors 3, 1, 4, mean 8/3. Pairs apart 2, 7, 5, each twice, of nine: 28/9, half 14/9.
    assert crps(np.array([10.0, 12.0, 17.0]), np.array(13.0)) == pytest.approx(8 / 3 - 14 / 9)


@pytest.mark.parametrize("members", [1, 2, 3, 30, 90])
def test_the_score_is_that_of_an_outside_package(members: int) -> None:
    """`scoringrules`, estimator "nrg", is the energy form of the CRPS of an ensemble."""
    rng = np.random.default_rng(members)
    ensembles, truths = rng.gamma(4, 6, (50, members)), rng.gamma(4, 6, 50)
    outside = scoringrules.crps_ensemble(truths, ensembles, estimator="nrg")
    assert crps(ensembles, truths) == pytest.approx(outside, abs=1e-9)


def test_the_score_of_many_members_nears_the_published_one_of_a_normal_distribution() -> None:
    # Gneiting & Raftery 2007, J. Am. Stat. Assoc. 102, 359-378, eq. 5 (from memory): for a normal distribution with
    # the truth at its mean, spread x (2 phi(0) - 1 / sqrt(pi)) = 0.2337 x spread.
    members = _normal(20_001) * 5 + 40
    assert crps(members, np.array(40.0)) == pytest.approx(0.2337 * 5, abs=0.001)


def _normal(count: int) -> Floats:
    from scipy.stats import norm

    return np.asarray(norm.ppf((np.arange(count) + 0.5) / count))


@given(MEMBERS, DAYS)
def test_a_score_is_never_below_0_nor_above_the_mean_absolute_error(members: Floats, truth: float) -> None:
    score = float(crps(members, np.array(truth)))
    assert 0 <= score <= np.abs(members - truth).mean() + 1e-9


@given(DAYS, DAYS)
def test_one_member_alone_scores_its_absolute_error(member: float, truth: float) -> None:
    assert float(crps(np.array([member]), np.array(truth))) == pytest.approx(abs(member - truth))


@given(MEMBERS, DAYS, st.floats(-50, 50))
def test_a_score_knows_no_calendar_only_distances(members: Floats, truth: float, shift: float) -> None:
    moved = crps(members + shift, np.array(truth + shift))
    assert float(moved) == pytest.approx(float(crps(members, np.array(truth))), abs=1e-6)


@given(MEMBERS, DAYS)
def test_members_that_are_told_twice_score_the_same(members: Floats, truth: float) -> None:
    twice = np.concatenate([members, members[::-1]])
    assert float(crps(twice, np.array(truth))) == pytest.approx(float(crps(members, np.array(truth))), abs=1e-9)


def test_a_score_without_members_is_refused() -> None:
    with pytest.raises(ValueError, match="at least one member"):
        crps(np.zeros((3, 0)), np.zeros(3))


def test_skill_is_the_share_of_the_error_that_is_saved() -> None:
    assert skill(3.0, 4.0) == pytest.approx(0.25)
    assert skill(5.0, 4.0) == pytest.approx(-0.25)
    assert skill(0.0, 4.0) == 1
    assert skill(1.0, 0.0) is None


@given(st.lists(st.tuples(DAYS, DAYS, DAYS), min_size=1))
def test_coverage_counts_the_truths_between_the_ends_and_on_them(cases: list[tuple[float, float, float]]) -> None:
    low, truth, high = (np.array(column) for column in zip(*(sorted(case) for case in cases), strict=True))
    assert within(low, high, truth).all()
    assert within(truth, high, truth).all()
    assert within(low, truth, truth).all()
    assert not within(low, high, high + 0.001).any()
    assert not within(low, high, low - 0.001).any()
