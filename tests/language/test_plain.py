"""How plain a text is, and what in it is worth another look."""

from __future__ import annotations

import pytest

from swardcast.language.banned import banned_phrases
from swardcast.language.plain import FaultKind, faults, measure

WORDS_25 = "one two three four five six seven eight nine ten " * 2 + "one two three four five."
WORDS_26 = WORDS_25.removesuffix(".") + " six."


def kinds(text: str, *, markdown: bool = False) -> list[FaultKind]:
    return [fault.kind for fault in faults(text, banned_phrases("en-GB"), markdown=markdown)]


def test_words_and_sentences_are_counted_without_the_headings() -> None:
    """By hand: 3 + 5 words, then 1; the heading's 2 words are left out."""
    told = measure("## Two words\n\nGreens are shut. Please keep off them today.\n\n- Thanks", markdown=True)
    assert (told.words, told.sentences, told.mean_words) == (9, 3, 3.0)
    assert (told.longest, told.longest_words, told.most_sentences) == ("Please keep off them today.", 5, 2)


def test_nothing_has_no_words() -> None:
    told = measure("")
    assert (told.words, told.sentences, told.mean_words, told.longest, told.doubled) == (0, 0, 0.0, "", ())


def test_a_sentence_may_have_25_words_and_no_more() -> None:
    assert kinds(WORDS_25) == []
    assert kinds(WORDS_26) == [FaultKind.LONG_SENTENCE]


def test_a_paragraph_may_have_3_sentences_and_no_more() -> None:
    assert kinds("One. Two. Three.") == []
    assert kinds("One. Two.\n\nThree. Four.") == []
    assert kinds("One. Two. Three. Four.") == [FaultKind.LONG_PARAGRAPH]


@pytest.mark.parametrize(
    ("sentence", "kind"),
    [
        ("Keep off the the green.", FaultKind.DOUBLED),
        ("Keep Keep off.", FaultKind.DOUBLED),
        ("It is 2-3 days.", FaultKind.DASH_RANGE),
        ("It is 2 – 3 days.", FaultKind.DASH_RANGE),
        ("Open 9-10am.", FaultKind.DASH_RANGE),
        ("The season 2026–27.", FaultKind.DASH_RANGE),
        ("It starts at 12pm.", FaultKind.TWELVE_O_CLOCK),
        ("It starts at 12:00 a.m. on Monday.", FaultKind.TWELVE_O_CLOCK),
        ("Greens  are shut.", FaultKind.EMPTY_SLOT),
        ("Greens , tees and fairways.", FaultKind.EMPTY_SLOT),
        ("Greens are shut .", FaultKind.EMPTY_SLOT),
        ("Back to normal: None.", FaultKind.EMPTY_SLOT),
        ("None", FaultKind.EMPTY_SLOT),
        ("Greens { $places } are shut.", FaultKind.EMPTY_SLOT),
        ("Held up ().", FaultKind.EMPTY_SLOT),
        ("Held up since Friday,.", FaultKind.EMPTY_SLOT),
        ("It opens soon.", FaultKind.BANNED),
        ("It opens very soon.", FaultKind.BANNED),
        ("Weather permitting, it opens on Friday.", FaultKind.BANNED),
        ("We apologise for any  inconvenience.".replace("  ", " "), FaultKind.BANNED),
        ("Greens will be perfect.", FaultKind.BANNED),
        ("We guarantee it.", FaultKind.BANNED),
        ("It will be as good as new.", FaultKind.BANNED),
        ("It will be back to normal by Friday.", FaultKind.BANNED),
        ("More in due course.", FaultKind.BANNED),
        ("It opens shortly.", FaultKind.BANNED),
        ("There is thatch.", FaultKind.BANNED),
        ("Cores lie on the green.", FaultKind.BANNED),
        ("Compaction is bad.", FaultKind.BANNED),
    ],
)
def test_a_fault_is_found_once_with_its_sentence(sentence: str, kind: FaultKind) -> None:
    (fault,) = faults(sentence, banned_phrases("en-GB"))
    assert (fault.kind, fault.where) == (kind, sentence)


@pytest.mark.parametrize(
    "sentence",
    [
        "It had had rain, and that that helped.",
        "We roll it, it dries and it sets.",
        "Holes close in 2 to 3 weeks.",
        "Feed 12-4-8 went down on 2027-09-14.",
        "Call 01632 960-001 or 01632-960001.",
        "Local Rule E-4 says so.",
        "See https://quillhaven.example/2-3/?a={1} or write to a.b-1-2@quillhaven.example.",
        "Play starts at 12:30pm.",
        "None of the greens is shut.",
        "It was .5 mm ... and more.",
        "I spoke too soon, and it closes as soon as it can.",
        "Shortly after rain it is soft.",
        "The imperfect hardcore scorecard.",
    ],
)
def test_what_only_looks_like_a_fault_is_none(sentence: str) -> None:
    assert kinds(sentence) == []


@pytest.mark.parametrize(
    "paragraph",
    [
        "We take out thatch (dead stems below the leaf).",
        "We take out the layer of dead stems (thatch).",
        "Thatch, the layer of dead stems, holds water.",
        "Thatch is the layer of dead stems. Too much thatch holds water.",
        "We take out dead stems, called thatch. Thatch holds water.",
        "Core aeration takes small plugs out.",
    ],
)
def test_jargon_is_fine_where_the_same_paragraph_explains_it(paragraph: str) -> None:
    assert kinds(paragraph) == []
    assert kinds("Thatch (dead stems) is gone.\n\nThatch holds water.") == [FaultKind.BANNED]


def test_a_vague_word_is_not_excused_by_an_explanation() -> None:
    assert kinds("It opens soon (on Friday).") == [FaultKind.BANNED]


def test_two_blanks_show_in_plain_text_but_never_on_a_page() -> None:
    assert kinds("Dry.  We began  early.", markdown=True) == []
    assert kinds("Dry.  We began early.") == []
    assert kinds("We began  early.") == [FaultKind.EMPTY_SLOT]


def test_a_fault_says_what_where_and_what_to_write_instead() -> None:
    said = [str(fault) for fault in faults(f"{WORDS_26} It opens soon after 12pm.", banned_phrases("en-GB"))]
    assert said == [
        "sentence of 26 words: “one two three four five six seven eight nine ten one two three four …”. Split it.",
        "“12pm”, which is read in two ways: “It opens soon after 12pm”. Write “midday”.",
        "“soon”: “It opens soon after 12pm”. Write instead: the day, or that no day is known yet.",
    ]


def test_without_a_list_of_words_the_limits_still_hold() -> None:
    assert [fault.kind for fault in faults(f"Soon. {WORDS_26}", ())] == [FaultKind.LONG_SENTENCE]
