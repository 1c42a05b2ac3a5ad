"""One table from a chance to words, walked through from 0 to 1."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swardcast.language.voice import Voice
from swardcast.notices.chances import chance_in_words

ENGLISH = Voice.english(date(2027, 9, 14))
HARDLY = "hardly any chance (less than 1 in 20)"
CERTAIN = "almost certain (more than 19 chances in 20)"


def tenths(count: int) -> str:
    return f"about {count} chance{'' if count == 1 else 's'} in 10"


def test_every_thousandth_is_the_nearest_tenth_and_the_ends_have_no_figure() -> None:
    """Rounded by exact fractions, half upwards; within a twentieth of either end there is no figure: judgement."""
    for count in range(1001):
        exact = Fraction(count, 1000)
        nearest = (exact * 10 + Fraction(1, 2)).__floor__()
        expected = HARDLY if exact < Fraction(1, 20) else CERTAIN if exact >= Fraction(19, 20) else tenths(nearest)
        assert chance_in_words(count / 1000, ENGLISH) == expected, count


@pytest.mark.parametrize(
    ("chance", "words"),
    [
        (0.0, HARDLY), (0.049, HARDLY), (0.05, tenths(1)), (0.1, tenths(1)), (0.15, tenths(2)), (0.333, tenths(3)),
        (0.5, tenths(5)), (0.9, tenths(9)), (0.949, tenths(9)), (0.95, CERTAIN), (1.0, CERTAIN),
    ],
)  # fmt: skip
def test_the_table(chance: float, words: str) -> None:
    assert chance_in_words(chance, ENGLISH) == words


@given(st.floats(0, 1), st.floats(0, 1))
def test_a_greater_chance_never_sounds_smaller(one: float, other: float) -> None:
    order = [HARDLY, *(tenths(count) for count in range(1, 10)), CERTAIN]
    low, high = sorted((one, other))
    assert order.index(chance_in_words(low, ENGLISH)) <= order.index(chance_in_words(high, ENGLISH))


@pytest.mark.parametrize("wrong", [-0.01, 1.01, float("nan")])
def test_what_is_no_chance_is_refused(wrong: float) -> None:
    with pytest.raises(ValueError, match=r"is no chance; expected 0 to 1"):
        chance_in_words(wrong, ENGLISH)
