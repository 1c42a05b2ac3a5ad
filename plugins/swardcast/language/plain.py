"""How plain a text is, and what in it is worth another look.

The limits are those of the published guides, with their sources beside them.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from enum import Enum
from itertools import pairwise
from typing import Final

from swardcast.language.banned import Banned
from swardcast.language.sentences import LINK, Paragraph, paragraphs_of, words_of

__all__ = ["MOST_SENTENCES", "MOST_WORDS", "Fault", "FaultKind", "Plainness", "faults", "measure"]

MOST_WORDS: Final = 25
"""Words of a sentence. Source: GOV.UK style, "split a sentence over 25 words" (as repeated by style guides based on it:
Darlington and Woking councils; Storm ID, 18 May 2022)."""

MOST_SENTENCES: Final = 3
"""Sentences of a paragraph. Source: NHS digital service manual, "How we write": paragraphs of up to 3 sentences
(github.com/nhsuk/nhsuk-service-manual, app/views/content/how-we-write.njk)."""

_MAY_DOUBLE: Final = {"had", "that"}
_DASH: Final = re.compile(r"(?<![\w.,:/–—-])(?<!\d )(\d{1,4}(?:[.:]\d+)?)\s?[-–—]\s?(\d{1,4}(?:[.:]\d+)?)(?![\d/–—-])")
_TWELVE: Final = re.compile(r"\b12(?:[:.]00)?\s?([ap])\.?m\b", re.IGNORECASE)
_EMPTY: Final = (
    (re.compile(r"\S {2,}\S"), "two blanks in a row"),
    (re.compile(r"\s(,|;|:|\.(?![.\d])|[!?])(?=\s|$)"), "a blank before a mark"),
    (re.compile(r"[{}]"), "a curly bracket"),
    (re.compile(r"\(\s*\)"), "empty brackets"),
    (re.compile(r"\w[\"'”’)]* ?(?:,\s?,|\.\s?,|,\s?\.(?!\.)|;\s?[.,;])"), "two marks in a row"),
    (re.compile(r"(?<=\S )None\b|^None\W*$"), "the word None"),
)


class FaultKind(Enum):
    """What can be wrong with a sentence or paragraph."""

    LONG_SENTENCE = "long sentence"
    LONG_PARAGRAPH = "long paragraph"
    BANNED = "banned words"
    DOUBLED = "doubled word"
    EMPTY_SLOT = "empty slot"
    DASH_RANGE = "dash range"
    TWELVE_O_CLOCK = "twelve o'clock"


@dataclass(frozen=True, slots=True, kw_only=True)
class Plainness:
    """How plain a text is; headings are not counted.

    Args:
        words: number of words.
        sentences: number of sentences.
        longest: the sentence with most words, or "".
        longest_words: how many words it has.
        most_sentences: how many sentences the longest paragraph has.
        doubled: words that stand twice in a row, in order.
    """

    words: int
    sentences: int
    longest: str
    longest_words: int
    most_sentences: int
    doubled: tuple[str, ...]

    @property
    def mean_words(self) -> float:
        """Words of a sentence on average; 0 without a sentence."""
        return self.words / self.sentences if self.sentences else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """Something worth another look.

    Args:
        kind: which of the faults.
        what: what it is, in words.
        where: the sentence, or the first one of the paragraph.
        instead: what to do about it, a sentence.
    """

    kind: FaultKind
    what: str
    where: str
    instead: str

    def __str__(self) -> str:
        return f"{self.what}: “{_shortened(self.where)}”. {self.instead}"


def _shortened(sentence: str, most_letters: int = 70) -> str:
    said = sentence.rstrip(". ")
    return said if len(said) <= most_letters else said[:most_letters].rsplit(" ", 1)[0].rstrip(",;:. ") + " …"


def measure(text: str, *, markdown: bool = False) -> Plainness:
    """Measure how plain a text is.

    Args:
        text: plain text or Markdown.
        markdown: which of the two.

    Returns:
        Its measures.
    """
    paragraphs = [one.sentences for one in paragraphs_of(text, markdown=markdown) if not one.is_heading]
    sentences = [sentence for told in paragraphs for sentence in told]
    counts = [len(words_of(sentence)) for sentence in sentences]
    longest_words = max(counts, default=0)
    return Plainness(
        words=sum(counts),
        sentences=len(sentences),
        longest=sentences[counts.index(longest_words)] if sentences else "",
        longest_words=longest_words,
        most_sentences=max(map(len, paragraphs), default=0),
        doubled=tuple(word for sentence in sentences for word in _doubled(sentence)),
    )


def _doubled(sentence: str) -> Iterator[str]:
    """The same letters twice in a row with nothing but blanks in between; "had had" and "that that" can be right."""
    for first, second in pairwise(sentence.split()):
        word = re.sub(r"\W+$", "", second)
        same = re.sub(r"^\W+", "", first).casefold() == word.casefold()
        if same and word.isalpha() and word.casefold() not in _MAY_DOUBLE:
            yield word


def faults(text: str, banned: Sequence[Banned], *, markdown: bool = False) -> list[Fault]:
    """Find what in a text is worth another look.

    Args:
        text: plain text or Markdown.
        banned: words to avoid.
        markdown: whether it is Markdown.

    Returns:
        Faults, each with its sentence, in the order of the text.
    """
    found: list[Fault] = []
    for paragraph in paragraphs_of(text, markdown=markdown):
        found += _of_paragraph(paragraph)
        whole = LINK.sub("www", " ".join(paragraph.sentences))
        for sentence in paragraph.sentences:
            said = LINK.sub("www", sentence)
            for check in _CHECKS:
                found += check(said)
            found += _banned(said, whole, banned)
    return found


def _of_paragraph(paragraph: Paragraph) -> Iterator[Fault]:
    number = len(paragraph.sentences)
    if number > MOST_SENTENCES:
        what = f"paragraph of {number} sentences, {MOST_SENTENCES} at the most"
        yield Fault(
            kind=FaultKind.LONG_PARAGRAPH,
            what=what,
            where=paragraph.sentences[0],
            instead="Begin a new one in between.",
        )


def _long(sentence: str) -> Iterator[Fault]:
    number = len(words_of(sentence))
    if number > MOST_WORDS:
        yield Fault(
            kind=FaultKind.LONG_SENTENCE, what=f"sentence of {number} words", where=sentence, instead="Split it."
        )


def _twice(sentence: str) -> Iterator[Fault]:
    for word in _doubled(sentence):
        yield Fault(
            kind=FaultKind.DOUBLED, what=f"“{word}” twice in a row", where=sentence, instead="Take one of them out."
        )


def _empty(sentence: str) -> Iterator[Fault]:
    for pattern, what in _EMPTY:
        if pattern.search(sentence):
            instead = "Is there a word missing? Put it in, or take the rest out."
            yield Fault(kind=FaultKind.EMPTY_SLOT, what=what, where=sentence, instead=instead)


def _dashes(sentence: str) -> Iterator[Fault]:
    for match in _DASH.finditer(sentence):
        yield Fault(
            kind=FaultKind.DASH_RANGE,
            what=f"“{match[0]}” with a dash",
            where=sentence,
            instead=f"Write “{match[1]} to {match[2]}”.",
        )


def _twelve(sentence: str) -> Iterator[Fault]:
    for match in _TWELVE.finditer(sentence):
        instead = "midday" if match[1].lower() == "p" else "midnight"
        yield Fault(
            kind=FaultKind.TWELVE_O_CLOCK,
            what=f"“{match[0]}”, which is read in two ways",
            where=sentence,
            instead=f"Write “{instead}”.",
        )


_CHECKS: Final[tuple[Callable[[str], Iterator[Fault]], ...]] = (_long, _twice, _empty, _dashes, _twelve)


def _banned(sentence: str, paragraph: str, banned: Sequence[Banned]) -> Iterator[Fault]:
    for entry in banned:
        words = entry.found_in(sentence, paragraph)
        if words:
            yield Fault(
                kind=FaultKind.BANNED, what=f"“{words}”", where=sentence, instead=f"Write instead: {entry.instead}."
            )
