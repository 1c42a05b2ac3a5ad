"""The nearest right spelling is the one that difflib would name, however many there are."""

from __future__ import annotations

from difflib import get_close_matches

from hypothesis import given
from hypothesis import strategies as st

from swardcast.errors import nearest

WORDS = st.text("abcde-1", min_size=1, max_size=8)


@given(WORDS, st.lists(WORDS, max_size=12))
def test_the_nearest_word_is_the_first_of_the_close_matches(word: str, known: list[str]) -> None:
    close = get_close_matches(word, dict.fromkeys(known), n=1, cutoff=0.6)
    assert nearest(word, known) == (f"Did you mean {close[0]!r}?" if close else "")


def test_a_word_is_named_as_it_was_given() -> None:
    assert nearest("teh autumn medal", ["The Autumn Medal", "The Spring Meeting"]) == "Did you mean 'The Autumn Medal'?"


def test_nothing_is_named_that_is_not_near() -> None:
    assert nearest("rolling", ["verticutting", "brushing in"]) == ""
