"""Texts are split into paragraphs, sentences and words as a reader would."""

from __future__ import annotations

import pytest

from swardcast.language.sentences import paragraphs_of, sentences_of, words_of


@pytest.mark.parametrize(
    ("paragraph", "sentences"),
    [
        ("The holes are 13 mm x 50 mm. They close.", ("The holes are 13 mm x 50 mm.", "They close.")),
        ("It held 6.4 % in April. Our aim is 5 %.", ("It held 6.4 % in April.", "Our aim is 5 %.")),
        ("It rose to 6. That is much.", ("It rose to 6.", "That is much.")),
        ("We start at 7:05am. Please wait.", ("We start at 7:05am.", "Please wait.")),
        ("We start at 7 a.m. on Monday.", ("We start at 7 a.m. on Monday.",)),
        ("We start at 7 a.m. Monday if it is dry.", ("We start at 7 a.m. Monday if it is dry.",)),
        ("We start at 7 a.m. Please wait.", ("We start at 7 a.m.", "Please wait.")),
        ("Local Rule E-4 is in force. Ask us.", ("Local Rule E-4 is in force.", "Ask us.")),
        ("Damage, e.g. Heel marks, i.e. Dents, may be repaired.", ("Damage, e.g. Heel marks, i.e. Dents, may be repaired.",)),
        ("Some damage (e.g. heel marks) stays. Leave it.", ("Some damage (e.g. heel marks) stays.", "Leave it.")),
        ("It took approx. 40 t. All went in.", ("It took approx. 40 t.", "All went in.")),
        ("Green No. 7 is shut. No. 8 is not.", ("Green No. 7 is shut.", "No. 8 is not.")),
        ("Will it rain? No. We go on!", ("Will it rain?", "No.", "We go on!")),
        ("A shout of “Fore!” is not heard. Wait.", ("A shout of “Fore!” is not heard.", "Wait.")),
        ("He said “Wait.” Then he went on.", ("He said “Wait.”", "Then he went on.")),
        ("(It was dry.) We began.", ("(It was dry.)", "We began.")),
        ("done by noon. greens open again", ("done by noon.", "greens open again")),
        ("We waited... and waited. Then it dried.", ("We waited... and waited.", "Then it dried.")),
        ("Tell J. Smith at the office. He knows.", ("Tell J. Smith at the office.", "He knows.")),
        ("See www.quillhaven.example/a.b. It is all there.", ("See www.quillhaven.example/a.b.", "It is all there.")),
        ("Likely by Friday 24 September; allow until Sunday 26 September.",) * 2,
        ("", ()),
    ],
)  # fmt: skip
def test_a_sentence_ends_where_a_reader_would_stop(paragraph: str, sentences: tuple[str, ...] | str) -> None:
    assert sentences_of(paragraph) == ((sentences,) if isinstance(sentences, str) else sentences)


@pytest.mark.parametrize(
    ("sentence", "words"),
    [
        ("Holes 13 mm x 50 mm apart.", ("Holes", "13", "mm", "x", "50", "mm", "apart")),
        ("That is 6.4\u00a0% of it – not much.", ("That", "is", "6.4", "of", "it", "not", "much")),
        ("Rule E-4 (“holes”) isn’t in force at 7:05am!", ("Rule", "E-4", "holes", "isn’t", "in", "force", "at", "7:05am")),
        ("...", ()),
    ],
)  # fmt: skip
def test_a_word_has_a_letter_or_a_figure(sentence: str, words: tuple[str, ...]) -> None:
    assert words_of(sentence) == words


MARKDOWN = """\
Below the heading
=================

We **start** on [Monday](https://quillhaven.example/2-3 "the day").  We `work` from
7 a.m. to *3 p.m.* and
have a \\*break\\*.

## What you can do ##
* Wait. Then play.
* Mind
  your feet.

1. First
2) Second

> Quoted words. More of them.

---

```text
code is no sentence
# nor is this a heading
```

| green | sand |
|-------|-----:|
| 1     | 2.6 t |

[link]: https://quillhaven.example
Last <b>words</b>
"""


def test_markdown_is_read_as_it_is_shown() -> None:
    told = [(paragraph.is_heading, paragraph.sentences) for paragraph in paragraphs_of(MARKDOWN, markdown=True)]
    assert told == [
        (True, ("Below the heading",)),
        (False, ("We start on Monday.", "We work from 7 a.m. to 3 p.m. and have a *break*.")),
        (True, ("What you can do",)),
        (False, ("Wait.", "Then play.")),
        (False, ("Mind your feet.",)),
        (False, ("First",)),
        (False, ("Second",)),
        (False, ("Quoted words.", "More of them.")),
        (False, ("green",)),
        (False, ("sand",)),
        (False, ("1",)),
        (False, ("2.6 t",)),
        (False, ("Last words",)),
    ]


def test_a_mark_that_nobody_ended_is_a_letter_and_marks_within_marks_are_taken_off() -> None:
    text = "Wait, [for *us*](a.html) and ![a picture](b.png) of ``code``. 3 * 4 < 5, ** and [x] (y)."
    told = paragraphs_of(text, markdown=True)
    assert [paragraph.sentences for paragraph in told] == [
        ("Wait, for us and a picture of code.", "3 * 4 < 5, ** and [x] (y)."),
    ]


def test_plain_text_keeps_its_marks_and_blanks_and_has_no_headings() -> None:
    told = paragraphs_of("# 7  *is*\nshut.\n \nWait.")
    assert [(paragraph.is_heading, paragraph.sentences) for paragraph in told] == [
        (False, ("# 7  *is* shut.",)),
        (False, ("Wait.",)),
    ]
