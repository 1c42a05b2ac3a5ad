"""Errors that speak to a greenkeeper: where, what was found, what was expected, what to do."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from difflib import SequenceMatcher
from itertools import groupby
from typing import Final

__all__ = ["InputNeedsAttention", "Problem", "SwardcastError", "all_at_once", "first_of", "nearest"]

_MOST_SHOWN: Final = 40
"""Problems of one file that are told one by one: a screen or two, and a day's work; judgement."""

_NEAR: Final = 0.6
"""Likeness of words, 0 to 1, from which one may be meant for another: the default of difflib."""


class SwardcastError(Exception):
    """Root of all errors that Swardcast raises on purpose."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One thing in the club's files that needs attention.

    Args:
        file: path as the manager knows it, relative to the club folder.
        line: line counted from 1, or None where a file as a whole is meant.
        field: the dotted name of the field, or "".
        found: what stands there.
        expected: what should stand there.
        hint: what to do, for example the nearest right spelling, or "".
    """

    file: str
    line: int | None = None
    field: str = ""
    found: str = ""
    expected: str = ""
    hint: str = ""

    def __str__(self) -> str:
        place = f"line {self.line}" if self.line is not None else "the file"
        subject = f"{place}, {self.field}" if self.field else place
        sentence = f"{subject}: found {self.found}"
        if self.expected:
            sentence += f"; expected {self.expected}"
        if self.hint:
            sentence += f". {self.hint}"
        return sentence

    @property
    def sort_key(self) -> tuple[str, int, str]:
        """File, line and field, so that problems read from top to bottom."""
        return self.file, self.line or 0, self.field


class InputNeedsAttention(SwardcastError):  # noqa: N818 - says what the manager has to do
    """Everything that is wrong with a club's files, in one go.

    Args:
        problems: at least one problem, in any order.
    """

    def __init__(self, problems: Sequence[Problem]) -> None:
        self.problems = tuple(sorted(dict.fromkeys(problems), key=lambda problem: problem.sort_key))
        super().__init__(len(self.problems))

    def __str__(self) -> str:
        lines: list[str] = []
        for file, group in groupby(self.problems, key=lambda problem: problem.file):
            lines.append(file)
            of_file = list(group)
            lines += (f"  {problem}" for problem in of_file[:_MOST_SHOWN])
            if len(of_file) > _MOST_SHOWN:
                lines.append(f"  and {len(of_file) - _MOST_SHOWN:,} more in this file")
        count = len(self.problems)
        lines.append(f"{count} {'thing needs' if count == 1 else 'things need'} attention.")
        return "\n".join(lines)


@contextmanager
def all_at_once() -> Iterator[list[Problem]]:
    """Tell the problems of several readers together: those put into the list, and those that one of them raises.

    Yields:
        The list.

    Raises:
        InputNeedsAttention: when there is any problem.
    """
    problems: list[Problem] = []
    try:
        yield problems
    except InputNeedsAttention as error:
        raise InputNeedsAttention([*problems, *error.problems]) from None
    if problems:
        raise InputNeedsAttention(problems)


def first_of(names: Sequence[str], most: int) -> str:
    """Name the first of many things, and tell how many more there are.

    Args:
        names: all of them.
        most: how many are named, 1 or more.

    Returns:
        "green 1, green 2 and 3 more", or all names where there are no more.
    """
    told = ", ".join(names[:most])
    return f"{told} and {len(names) - most} more" if len(names) > most else told


def nearest(word: str, known: Iterable[str]) -> str:
    """Name the known word nearest to a misspelt one, as a hint.

    Args:
        word: what was written.
        known: the words that would have been right.

    Returns:
        "Did you mean 'hollow tining'?" or "" when nothing is near.
    """
    words = {candidate.lower(): candidate for candidate in known}
    # As difflib.get_close_matches, which compares each of thousands of entries' names letter by letter.
    matcher = SequenceMatcher(b=word.lower())
    best = (_NEAR, "")
    for candidate in words:
        matcher.set_seq1(candidate)
        if matcher.real_quick_ratio() >= best[0] and matcher.quick_ratio() >= best[0]:
            best = max(best, (matcher.ratio(), candidate))
    return f"Did you mean {words[best[1]]!r}?" if best[1] else ""
