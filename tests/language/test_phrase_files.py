"""Phrases parsed one by one, when they are asked for, are those that the Fluent parser finds in whole files."""

from __future__ import annotations

import pytest

from swardcast.language.catalogue import BUILT_IN, built_in, catalogue_from, texts_of
from swardcast.language.phrase_files import PhraseFiles


@pytest.mark.parametrize("tag", BUILT_IN)
def test_what_is_parsed_when_asked_for_is_what_the_whole_files_hold(tag: str) -> None:
    whole, ours = catalogue_from(tag, texts_of(tag)), built_in(tag)
    assert list(ours.entries()) == list(whole.entries())
    other = [
        name
        for name, entry in whole.entries().items()
        if not ours.entries()[name].equals(entry, ignored_fields=["span", "comment"])
    ]
    assert other == []
    assert ours.places() == whole.places()


def test_the_line_of_a_phrase_is_that_of_its_own_comment() -> None:
    text = "### Of a file\n\n## Of a group\n# Of a phrase\nfirst = One\n    .hint = Two\n\n-term = Three\nlast =\n    Four\n"
    places = {"first": 4, "first.hint": 6, "-term": 8, "last": 9}
    assert PhraseFiles({"own.ftl": text}).places == {name: ("own.ftl", line) for name, line in places.items()}


def test_a_slot_may_hold_the_names_of_a_hundred_bunkers() -> None:
    """The library's own limit is 2,500 letters."""
    names = ", ".join(f"the left fairway bunker beside the path on the {hole}th" for hole in range(100))
    assert built_in("en-GB").say("list-more", {"first": names, "next": "the last"}) == f"{names}, the last"


def test_a_phrase_brings_those_that_it_puts_in() -> None:
    text = "whole = { part } and { -grass }\npart = cut { deep.how }\ndeep =\n    .how = deep\n-grass = bent\n"
    assert catalogue_from("en-GB", {"own.ftl": f"language-locale = en_GB\n{text}"}).say("whole", {}) == (
        "cut deep and bent"
    )
