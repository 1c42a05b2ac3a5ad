"""What is said of each kind of work, on every surface and in both Englishes: short, true in any week, no promise."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from statistics import fmean

import pytest

from swardcast.language.catalogue import BUILT_IN, Catalogue, built_in
from swardcast.language.sentences import sentences_of, words_of
from swardcast.language.voice import slug_of
from swardcast.records.club import SurfaceKind
from swardcast.records.operations import Kind

_SURFACES = (*map(slug_of, SurfaceKind), "mixed")
_MOST_WORDS = 20
"""Words of a sentence: NHS service manual, "How we write": sentences up to 20 words."""
_MEAN_WORDS = 12
"""Words of a sentence on average: judgement, well below the most."""
_MOST_SENTENCES = 3
"""Sentences of a phrase: NHS service manual, "How we write": paragraphs of up to 3 sentences."""


@dataclass(frozen=True)
class Said:
    """A phrase as a member reads it."""

    kind: str
    what: str
    surface: str
    words: str


def _said_in(catalogue: Catalogue) -> Iterator[Said]:
    for kind in map(slug_of, Kind):
        for name in catalogue.names():
            message, _, what = name.partition(".")
            if message == f"kind-{kind}" and what:
                for surface in _SURFACES:
                    yield Said(kind, what, surface, catalogue.say(name, {"surface": surface}))


@pytest.fixture(scope="module", params=BUILT_IN)
def said(request: pytest.FixtureRequest) -> list[Said]:
    return list(_said_in(built_in(request.param)))


def test_sentences_are_short_and_phrases_too(said: list[Said]) -> None:
    sentences = [(one, sentences_of(one.words)) for one in said]
    assert [one for one, told in sentences if len(told) > _MOST_SENTENCES] == []
    lengths = [(len(words_of(sentence)), sentence) for _, told in sentences for sentence in told]
    assert [told for told in lengths if told[0] > _MOST_WORDS] == []
    assert fmean(words for words, _ in lengths) <= _MEAN_WORDS


def test_nothing_is_promised_or_vague(said: list[Said]) -> None:
    vague = re.compile(r"\bsoon\b|\bwill (?:be|have|run|roll|drain)\b|\bguarantee|!|\bapologi", re.IGNORECASE)
    assert [one for one in said if vague.search(one.words)] == []


def test_only_the_part_on_the_rules_speaks_of_relief(said: list[Said]) -> None:
    relief = re.compile(r"\brelief\b|\bground under repair\b|\bloose impediment|\bpenalty\b", re.IGNORECASE)
    assert [one for one in said if relief.search(one.words)] == []


def test_a_phrase_that_stands_on_a_page_of_its_own_does_not_speak_of_this_notice(said: list[Said]) -> None:
    """The pages "Why we do this" show all of them, and are no notices."""
    assert [one for one in said if "this notice" in one.words.lower()] == []


def test_the_reason_stands_alone(said: list[Said]) -> None:
    """It may come before the sentence that says what the work is."""
    leans = re.compile(r"(?:It|This|That|They|These|Without (?:it|them))\b")
    assert [one for one in said if one.what in ("why", "without") and leans.match(one.words)] == []


def test_what_you_see_is_true_in_any_week(said: list[Said]) -> None:
    """Plugs, sprayers and the like are gone after a day or two, and the notice stays for weeks."""
    bare = re.compile(r"You will see (?!ropes|a flag|bare ground)")
    assert [one for one in said if one.what == "see" and bare.match(one.words)] == []


def test_requests_that_kinds_share_are_the_same_word_for_word(said: list[Said]) -> None:
    """Else a notice of several kinds asks three times for the same, each time in other words."""
    asked = re.compile(r"\b(?:repair your|divots|trolleys|push carts|practice swings)\b")
    for surface in ("green", "tee", "fairway"):
        kinds = [one for one in said if one.what == "do" and one.surface == surface]
        told = [sentence for one in kinds for sentence in sentences_of(one.words) if asked.search(sentence)]
        tine_or_sand = {"hollow-tining", "solid-tining", "scarifying", "topdressing", "overseeding", "rolling"}
        shared = {
            sentence
            for one in kinds
            if one.kind in tine_or_sand
            for sentence in sentences_of(one.words)
            if asked.search(sentence)
        }
        assert all(told.count(sentence) > 1 for sentence in shared), shared
        assert len(shared) <= 2
