"""How much wider few years make a range, against Student's distribution and a printed table."""

import math

import pytest
from scipy.stats import norm, t

from swardcast.turf.few_years import prediction_factor, slow_share


@pytest.mark.parametrize("years", [*range(2, 41), 100, 1000])
def test_the_factor_is_that_of_a_prediction_interval_after_student(years: int) -> None:
    expected = t.ppf(0.9, years - 1) / norm.ppf(0.9) * math.sqrt(1 + 1 / years)
    assert prediction_factor(years) == pytest.approx(expected, abs=0.0005)


def test_five_years_by_hand() -> None:
    # Table of t, 4 degrees, one-sided 0.10: 1.533; / 1.2816 x sqrt(6 / 5) = 1.310; sqrt(1.310^2 x 5 / 4 - 1) = 1.071.
    assert prediction_factor(5) == pytest.approx(1.310, abs=0.001)
    assert slow_share(5) == pytest.approx(1.071, abs=0.002)


def test_the_more_years_the_less_is_added_and_never_nothing() -> None:
    shares = [slow_share(years) for years in range(2, 200)]
    assert shares == sorted(shares, reverse=True)
    assert shares[-1] > 0


@pytest.mark.parametrize("years", [0, 1])
def test_a_single_year_has_no_spread(years: int) -> None:
    with pytest.raises(ValueError, match="no spread between them"):
        slow_share(years)
