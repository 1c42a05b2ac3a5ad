"""A text, plain or Markdown -> its paragraphs, sentences and words."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from swardcast.moments import MONTHS, WEEKDAYS

__all__ = ["LINK", "Paragraph", "paragraphs_of", "sentences_of", "words_of"]

LINK: Final = re.compile(r"(?:https?://|www\.)\S*[^\s.,;:!?)”\"]|\S+@\S*\w")
"""An address of the web or of mail: one word, whatever stands in it."""

_END: Final = re.compile(r"([.!?…]+)(['\"”’)\]]*)$")
_NEVER_LAST: Final = {
    "e.g",
    "i.e",
    "approx",
    "ca",
    "cf",
    "vs",
    "mr",
    "mrs",
    "ms",
    "dr",
    "st",
    "fig",
    "incl",
    "min",
    "max",
}
_SELDOM_LAST: Final = {"a.m", "p.m", "etc"}  # the end where a sentence begins after them: "at 7 a.m. Please wait"
_NAMES: Final = {*MONTHS, *WEEKDAYS}

_FENCE: Final = re.compile(r"^ {0,3}(`{3,}|~{3,})")
_HEADING: Final = re.compile(r"^ {0,3}#{1,6}\s+(.*?)\s*#*\s*$")
_UNDERLINE: Final = re.compile(r"^ {0,3}(=+|-+)\s*$")
_RULE: Final = re.compile(r"^ {0,3}([-*_])(?:\s*\1){2,}\s*$")
_ITEM: Final = re.compile(r"^\s*(?:[-*+]|\d{1,3}[.)])\s+(.*)$")
_QUOTE: Final = re.compile(r"^ {0,3}>\s?")
_REFERENCE: Final = re.compile(r"^ {0,3}\[[^\]]+\]:\s*\S+")
_ROW: Final = re.compile(r"^\s*\|(.*?)\|?\s*$")
_SPAN: Final = "{0,400}"
"""Letters between a mark and the one that ends it: some 70 words, so that no text of marks without an end takes long.
Judgement."""
_SOME: Final = "{1,400}"
"""The same of what holds a letter at least."""
_MARKS: Final = (
    (re.compile(rf"!?\[([^\[\]]{_SPAN})\](?:\([^()]{_SPAN}\)|\[[^\[\]]{_SPAN}\])"), r"\1"),
    (re.compile(r"<((?:https?://|mailto:)[^>\s]+)>"), r"\1"),
    (re.compile(rf"</?[A-Za-z][^<>]{_SPAN}>|<!--.{_SPAN}?-->"), ""),
    (re.compile(rf"(\*\*|__)(?=\S)(.{_SOME}?)(?<=\S)\1"), r"\2"),
    (re.compile(rf"(?<!\w)([*_])(?=\S)(.{_SOME}?)(?<=\S)\1(?!\w)"), r"\2"),
    (re.compile(rf"(?<!`)(`+)(.{_SOME}?)\1"), r"\2"),
)
_ESCAPED: Final = re.compile(r"\\([\\`*_{}\[\]()#+\-.!<>|])")
_ASIDE: Final = 0xE000  # private letters of Unicode, where escaped marks wait until the others are gone


@dataclass(frozen=True, slots=True, kw_only=True)
class Paragraph:
    """A paragraph, an item of a list, a cell of a table, or a heading.

    Args:
        sentences: its sentences, as they stand.
        is_heading: whether it is a heading.
    """

    sentences: tuple[str, ...]
    is_heading: bool = False


def paragraphs_of(text: str, *, markdown: bool = False) -> tuple[Paragraph, ...]:
    """Split a text into paragraphs.

    Args:
        text: paragraphs, each followed by an empty line.
        markdown: whether it is Markdown, whose marks are then taken off, as are blanks beyond the first.

    Returns:
        What a reader sees, in order; code is left out.
    """
    found = _markdown(text.expandtabs().splitlines()) if markdown else _plain(text)
    paragraphs = (Paragraph(sentences=sentences_of(words), is_heading=heading) for words, heading in found)
    return tuple(paragraph for paragraph in paragraphs if paragraph.sentences)


def _plain(text: str) -> Iterator[tuple[str, bool]]:
    for part in re.split(r"\n[ \t]*\n", text):
        yield re.sub(r"[ \t]*\n[ \t]*", " ", part), False


def _markdown(lines: Sequence[str]) -> Iterator[tuple[str, bool]]:
    told: list[str] = []
    fence = ""
    for raw in [*lines, ""]:
        line = raw
        while _QUOTE.match(line):
            line = _QUOTE.sub("", line, count=1)
        opens = _FENCE.match(line)
        if fence:
            fence = "" if opens and opens[1].startswith(fence) else fence
            continue
        fence = opens[1] if opens else ""
        heading, item, row = _HEADING.match(line), _ITEM.match(line), _ROW.match(line)
        if told and _UNDERLINE.match(line):
            yield _without_marks(told), True
            told = []
            continue
        if not (fence or heading or item or row or _RULE.match(line)) and line.strip():
            told += [] if _REFERENCE.match(line) else [line]
            continue
        yield _without_marks(told), False
        told = [item[1]] if item and not _RULE.match(line) else []
        if heading:
            yield _without_marks([heading[1]]), True
        if row and row[1].strip("|:- "):
            yield from ((_without_marks([cell]), False) for cell in row[1].split("|"))


def _without_marks(lines: Sequence[str]) -> str:
    text = _ESCAPED.sub(lambda match: chr(_ASIDE + ord(match[1])), " ".join(" ".join(lines).split()))
    for mark, shown in _MARKS:
        text = mark.sub(shown, text)
    return re.sub("[\ue000-\ue07f]", lambda match: chr(ord(match[0]) - _ASIDE), text)


def sentences_of(text: str) -> tuple[str, ...]:
    """Split a paragraph into sentences; "6.4 %", "7:05am", "e.g." and "E-4" stay whole.

    Args:
        text: a paragraph.

    Returns:
        Its sentences, as they stand.
    """
    tokens = [*re.finditer(r"\S+", text)]
    ends = [here.end() for here, after in pairwise(tokens) if _is_last(here[0], after[0])]
    ends += [tokens[-1].end()] if tokens else []
    sentences = (text[start:end].strip() for start, end in pairwise([0, *ends]))
    return tuple(sentence for sentence in sentences if sentence)


def _is_last(token: str, after: str) -> bool:
    """Whether a sentence ends with a token, as far as it and the next one tell; small letters may begin a sentence."""
    end = _END.search(token)
    if end is None:
        return False
    begins_small = after.lstrip("'\"“‘([")[:1].islower()
    if end[1][0] != "." or len(end[1]) > 1:  # a cry within a sentence, or a thought that goes on
        return not begins_small or (not end[2] and end[1][-1] in "!?")
    word = token[: end.start()].lstrip("'\"“‘([")
    if word.lower() in _NEVER_LAST or (len(word) == 1 and word.isupper() and word != "I"):
        return False
    if word.lower() in _SELDOM_LAST:
        return not begins_small and after.rstrip(".,;:") not in _NAMES
    return not (word.lower() == "no" and after[:1].isdigit())


def words_of(sentence: str) -> tuple[str, ...]:
    """List the words of a sentence, without the marks around them; "6.4" and "E-4" are words, "%" is none.

    Args:
        sentence: a sentence.

    Returns:
        Its words.
    """
    words = (re.sub(r"^[\W_]+|[\W_]+$", "", token) for token in sentence.split())
    return tuple(word for word in words if word)
