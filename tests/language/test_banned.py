"""The lists of words to avoid are whole, and a broken one says what is wrong with it."""

from __future__ import annotations

import pytest

from swardcast.errors import SwardcastError
from swardcast.language.banned import Banned, banned_phrases, parse_banned


def test_all_countries_of_a_language_share_its_list_and_other_languages_have_none_yet() -> None:
    assert banned_phrases("en-GB") == banned_phrases("en-US") == banned_phrases("en")
    assert banned_phrases("nl-NL") == ()


def test_every_entry_tells_what_to_write_instead_and_needs_each_of_its_exceptions() -> None:
    for entry in banned_phrases("en-GB"):
        assert entry.instead, entry
        assert entry.instead[-1] != ".", entry
        for phrase in entry.but_not:
            assert entry.found_in(phrase, phrase) == "", phrase
            bare = Banned(words=entry.words, instead=entry.instead)
            assert bare.found_in(phrase, phrase), f"{phrase!r} holds no word of {entry.words}"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("avoid = 3", "'int' object is not iterable"),
        ("avoid = ['soon']", "'str' object has no attribute 'keys'"),
        ("avoid = [{words = ['soon']}]", "'instead'"),
        ("avoid = [{words = ['soon'], instead = 'x', but = []}]", "'but'"),
        ("avoid", "Expected '=' after a key"),
        ("", "'avoid'"),
        ("avoid = [{words = ['soon', 'Soon'], instead = 'x'}]", "soon twice"),
    ],
)
def test_a_broken_list_is_refused(text: str, said: str) -> None:
    with pytest.raises(SwardcastError) as error:
        parse_banned(text)
    assert f"the list of words to avoid: found {said}" in str(error.value)
