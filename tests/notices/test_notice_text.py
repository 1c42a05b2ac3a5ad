"""The reader of notices sees what a person would, and finds what is wrong when it is."""

from __future__ import annotations

import pytest

from swardcast.language.plain import FaultKind
from tests.notices.notice_text import Block, blocks_of, faults_of, measured, wrong_plurals, wrong_weekdays


def test_html_falls_into_blocks_and_the_managers_words_are_left_out() -> None:
    body = (
        '<p class="sc-short">Short  answer.</p>\n<dl>\n<div><dt>Where</dt><dd>Greens\n  1 to <b>18</b></dd></div></dl>'
        '<section><h2>What happened</h2><ol><li><p><time datetime="2026-12-30T07:00:00+00:00">7am on Wednesday 30 December'
        '</time>: <strong>Withdrawn:</strong> Work done.</p><div class="sc-own"><p>Soon.</p></div></li></ol></section>'
        "<ul><li>One.<br>Two. <ul><li>Three</li></ul> Four.</li></ul><!-- no words -->"
    )
    assert [(block.text, block.is_label, block.year) for block in blocks_of(body)] == [
        ("Short  answer.", False, None),
        ("Where", True, None),
        ("Greens 1 to 18", False, None),
        ("What happened", True, None),
        ("7am on Wednesday 30 December", True, 2026),
        ("Withdrawn: Work done.", False, 2026),
        ("One.", False, None),
        ("Two.", False, None),
        ("Three", False, None),
        ("Four.", False, None),
    ]


def test_a_moment_within_a_sentence_is_part_of_it() -> None:
    (block,) = blocks_of('<p>Told at <time datetime="2027-09-14">7am</time>, in words.</p>')
    assert block.text == "Told at 7am, in words."


def test_only_whole_sentences_are_measured() -> None:
    """By hand: 2 and 4 words; the fact without a full stop and the label would pull the mean down to 2.5."""
    told = measured(blocks_of("<p>Short answer. It has four words.</p><dl><dt>Where</dt><dd>Greens 1 to 18</dd></dl>"))
    assert (told.sentences, told.words) == (2, 6)


def test_a_list_is_read_item_by_item_and_a_sentence_is_not() -> None:
    places = ", ".join(["the left greenside bunker on the 4th"] * 5)
    assert faults_of(Block(text=places, is_label=False), ()) == []
    (fault,) = faults_of(Block(text=f"{places}.", is_label=False), ())
    assert fault.kind is FaultKind.LONG_SENTENCE
    (fault,) = faults_of(Block(text=places.replace(",", ""), is_label=False), ())
    assert fault.kind is FaultKind.LONG_SENTENCE


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("by Friday 24 September", []),  # 24 September 2027 is a Friday
        ("by Thursday 24 September", ["Thursday 24 September"]),
        ("by Thursday 24 September 2026, then Friday 24 September 2027", []),
        ("by Friday 24 September 2026", ["Friday 24 September 2026"]),
        ("by Friday, September 24", []),
        ("by Monday, September 24, 2027", ["Monday, September 24, 2027"]),
        ("by Monday 31 June", ["Monday 31 June"]),
    ],
)
def test_a_wrong_weekday_is_found(text: str, wrong: list[str]) -> None:
    assert wrong_weekdays(text, {2027}) == wrong


def test_a_day_may_be_of_any_year_that_can_be_meant() -> None:
    assert wrong_weekdays("Thursday 24 September", {2026, 2027}) == []


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("in 1 days", ["1 days"]),
        ("in 2 day, or 10 Hole", ["2 day", "10 Hole"]),
        ("0 hole, 1,200 hole and 2.6 tonne", ["0 hole", "1,200 hole", "2.6 tonne"]),
        ("in 1 day or 21 days, 0.1 days, 1 of 6 greens, holes 1 and 2", []),
        ("about 1 chance in 10 that the 2 tees and hole 7 heal", []),
        ("an 18-hole round with 9-hole days", []),
        ("Rule 16.1 hole", []),
    ],
)
def test_a_wrong_plural_is_found(text: str, wrong: list[str]) -> None:
    assert wrong_plurals(text) == wrong
