"""A word near a kind of work is told with the kind that is meant."""

from __future__ import annotations

from collections import Counter

import pytest

from swardcast.reading import near_kinds
from swardcast.reading.near_kinds import kind_meant
from swardcast.records.operations import Kind


@pytest.mark.parametrize(
    ("word", "hint"),
    [
        ("feeding", "Write 'granular feed' or 'liquid feed'."),
        ("Fertilizer", "Write 'granular feed' or 'liquid feed'."),
        ("seeding", "Write 'overseeding' or 'seeding bare ground'."),
        ("drainage", "Did you mean 'drainage trenching'?"),
        ("hollow  coring", "Did you mean 'hollow tining'?"),
        ("fungicide", "Did you mean 'plant protection'?"),
        ("height of cut", "Did you mean 'change of cutting height'?"),
        ("winter greens", "Did you mean 'temporary greens'?"),
        ("bunker linner", "Did you mean 'bunker liner'?"),
        ("xyzzy", ""),
    ],
)
def test_the_kind_that_is_meant_is_named(word: str, hint: str) -> None:
    assert kind_meant(word) == hint


def test_no_word_means_two_things_or_is_a_kind_itself() -> None:
    words = Counter(word for said in near_kinds._ALSO_SAID.values() for word in said)
    assert [word for word, times in words.items() if times > 1] == []
    assert not {kind.value for kind in Kind} & set(words)
