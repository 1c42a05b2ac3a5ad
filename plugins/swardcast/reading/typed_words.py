"""What words must be that somebody typed, whatever they say: seen, and no longer than a reader and a program can bear.

A pasted picture is one word of 200,000 letters, and ten thousand brackets of which none is closed keep every reader of
Markdown looking for their ends for minutes.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from typing import Final

from swardcast.errors import Problem

__all__ = ["LONGEST_TEXT", "LONGEST_WORDS", "faults_of_markdown", "is_seen"]

LONGEST_TEXT: Final = 1_000
"""Letters of a name, a title or a reason: some 170 words. Judgement."""
LONGEST_WORDS: Final = 20_000
"""Letters of words of one's own in one place: some 3,500 words, a chapter of a book. Judgement."""
_LONGEST_WORD: Final = 2_000
"""Letters without a blank between them: no address is longer. Judgement."""
_MOST_OPEN: Final = 20
"""Brackets of one sort that wait to be closed at once; judgement."""

_UNSEEN: Final = {"Cc", "Cf", "Zl", "Zp", "Zs"}
"""Unicode's general categories of what is not seen: controls, formats (marks of no width) and blanks."""
_TOO_LONG: Final = re.compile(rf"\S{{{_LONGEST_WORD + 1},}}")
_BRACKET: Final = re.compile(r"\\.|[\[\]()]|\n[ \t]*\n", re.DOTALL)
_CLOSED_BY: Final = {"]": "[", ")": "("}


def is_seen(text: str) -> bool:
    """Tell whether anything of a text is seen: blanks, and marks of no width, are not.

    Args:
        text: any text.

    Returns:
        True when there is a letter, a figure, a mark or a picture in it, also one that is newer than this Python.
    """
    return any(unicodedata.category(letter) not in _UNSEEN for letter in text)


def faults_of_markdown(words: str, *, file: str, first_line: int) -> Iterator[Problem]:
    """Find what no reader of Markdown should be given.

    Args:
        words: Markdown.
        file: its file, for problems.
        first_line: the line of the file on which it begins.

    Yields:
        Problems, each with its line.
    """

    def problem(at: int, found: str, expected: str, hint: str = "") -> Problem:
        line = first_line + words.count("\n", 0, at)
        return Problem(file=file, line=line, field="own words", found=found, expected=expected, hint=hint)

    if len(words) > LONGEST_WORDS:
        yield problem(len(words) - len(words.lstrip()), f"{len(words):,} letters", f"at most {LONGEST_WORDS:,}")
        return
    long = _TOO_LONG.search(words)
    if long is not None:
        found = f"a word of {len(long[0]):,} letters, {long[0][:40] + '...'!r}"
        hint = "A picture cannot stand in words: put its file into the folder web." if ";base64," in long[0] else ""
        yield problem(long.start(), found, f"at most {_LONGEST_WORD:,} letters without a blank", hint)
    at = _never_closed(words)
    if at is not None:
        expected = "each closed in its paragraph"
        hint = "A bracket that is no link's is typed as '\\[' or '\\('."
        yield problem(at, f"more than {_MOST_OPEN} brackets that nobody has closed", expected, hint)


def _never_closed(words: str) -> int | None:
    """Where one bracket too many is opened while others wait, or None."""
    waiting = {"[": 0, "(": 0}
    for found in _BRACKET.finditer(words):
        sign = found[0]
        if sign[0] == "\n":
            waiting = dict.fromkeys(waiting, 0)
        elif sign in waiting:
            waiting[sign] += 1
            if waiting[sign] > _MOST_OPEN:
                return found.start()
        elif sign in _CLOSED_BY:
            waiting[_CLOSED_BY[sign]] = max(waiting[_CLOSED_BY[sign]] - 1, 0)
    return None
