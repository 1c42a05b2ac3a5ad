"""What is seen on the course corrects the healing rate, within limits."""

import math

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from swardcast.turf.healing import HealingRate, observed_rate

BY_EYE, COUNTED = 0.10, 0.03
PRIOR = HealingRate(per_growth_day=0.34, log_spread=0.24)

shares = st.floats(0, 1)
growths = st.floats(0.2, 15)
eyes = st.sampled_from([BY_EYE, COUNTED])


def _by_numerical_integration(share_left: float, growth_days: float, eye: float) -> HealingRate:
    """Bayes' rule on a fine grid: log-normal prior, and a share that is seen with a normal error."""
    z = np.linspace(-8, 8, 40_001) * PRIOR.log_spread
    predicted = np.exp(-PRIOR.per_growth_day * np.exp(z) * growth_days)
    log_weight = -0.5 * (z / PRIOR.log_spread) ** 2 - 0.5 * ((share_left - predicted) / eye) ** 2
    weight = np.exp(log_weight - log_weight.max())
    weight /= weight.sum()
    mean = float(weight @ z)
    return HealingRate(
        per_growth_day=PRIOR.per_growth_day * math.exp(mean), log_spread=math.sqrt(float(weight @ (z - mean) ** 2))
    )


@pytest.mark.parametrize("share_left", [0.2, 0.3, 0.4, 0.5])
@pytest.mark.parametrize("eye", [BY_EYE, COUNTED], ids=["by eye", "counted"])
def test_the_corrected_rate_is_that_of_bayes_rule_by_numerical_integration(share_left: float, eye: float) -> None:
    # Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., section 2.5 is the normal form; the grid needs no such
    # form. Three growth days after the work, half to a fifth left: 3 % on the rate, 6 % on its spread.
    ours = observed_rate(PRIOR, share_left=share_left, growth_days=3, eye=eye)
    reference = _by_numerical_integration(share_left, 3, eye)
    assert ours.per_growth_day == pytest.approx(reference.per_growth_day, rel=0.03)
    assert ours.log_spread == pytest.approx(reference.log_spread, rel=0.06)


def test_seeing_what_was_foretold_changes_the_rate_little_and_narrows_its_range() -> None:
    # exp(-0.34 x 3) = 0.3606 is what the prior foretells.
    after = observed_rate(PRIOR, share_left=0.3606, growth_days=3, eye=BY_EYE)
    assert after.per_growth_day == pytest.approx(0.34, rel=0.015)
    assert after.log_spread < 0.8 * PRIOR.log_spread


def test_a_counted_sample_weighs_more_than_a_guess_by_eye() -> None:
    by_eye, counted = (observed_rate(PRIOR, share_left=0.5, growth_days=3, eye=eye) for eye in (BY_EYE, COUNTED))
    # -ln(0.5) / 3 = 0.231 by hand is the rate that the sight alone would give.
    assert 0.231 < counted.per_growth_day < by_eye.per_growth_day < 0.34
    assert counted.log_spread < by_eye.log_spread


@pytest.mark.parametrize("growth_days", [0.0, -1.0])
def test_without_growth_nothing_is_learnt(growth_days: float) -> None:
    assert observed_rate(PRIOR, share_left=0.4, growth_days=growth_days, eye=BY_EYE) == PRIOR


def test_a_rate_that_is_certain_is_not_corrected() -> None:
    certain = HealingRate(per_growth_day=0.3, log_spread=0.0)
    assert observed_rate(certain, share_left=0.9, growth_days=5, eye=COUNTED) == certain


@given(shares, growths, eyes)
def test_an_observation_never_widens_the_range(share_left: float, growth_days: float, eye: float) -> None:
    after = observed_rate(PRIOR, share_left=share_left, growth_days=growth_days, eye=eye)
    assert 0 < after.log_spread <= PRIOR.log_spread * (1 + 1e-9)


@given(shares, st.floats(1, 10))
def test_a_wild_guess_by_eye_is_limited(share_left: float, growth_days: float) -> None:
    # Numerical integration keeps the rate between 0.28 and 2.7 times the prior for any sight in this range.
    after = observed_rate(PRIOR, share_left=share_left, growth_days=growth_days, eye=BY_EYE)
    assert 0.25 < after.per_growth_day / PRIOR.per_growth_day < 3.0


@example(seen=(0.6, 0.9), growth_days=10.0, eye=BY_EYE)  # nine tenths left is worse news than six tenths
@example(seen=(0.01, 0.2), growth_days=3.0, eye=BY_EYE)  # next to nothing left is better news than a fifth
@given(seen=st.tuples(shares, shares), growth_days=growths, eye=eyes)
def test_seeing_less_damage_never_moves_a_date_later(seen: tuple[float, float], growth_days: float, eye: float) -> None:
    # A faster rate is an earlier date. Numerical integration (above) has this property for all shares.
    less, more = (
        observed_rate(PRIOR, share_left=share, growth_days=growth_days, eye=eye).per_growth_day
        for share in sorted(seen)
    )
    assert less >= more * (1 - 1e-9)
