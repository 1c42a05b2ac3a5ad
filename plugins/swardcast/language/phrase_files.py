"""Phrases of files known to be sound, each parsed when it is first asked for: a command says few of some 1,500."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator, Mapping
from typing import Final

from fluent.syntax import FluentParser, ast
from fluent.syntax.visitor import Visitor

__all__ = ["PhraseFiles", "line_at", "line_ends", "references_of"]

_ENTRY: Final = re.compile(r"^(?:#(?!#).*\n)*(-?[a-zA-Z][\w-]*) *=", re.MULTILINE)
"""A message or a term, with the comment that stands right above it (Fluent 1.0, "Comments")."""
_ATTRIBUTE: Final = re.compile(r"^ +\.([a-zA-Z][\w-]*) *=", re.MULTILINE)


class PhraseFiles(Mapping[str, ast.Message | ast.Term]):
    """Messages and terms by name; a term's begins with a hyphen.

    Assumes files without faults and each name once: those that come with Swardcast, which the tests parse whole.

    Args:
        texts: text of each file in Fluent's format, by its name.
    """

    def __init__(self, texts: Mapping[str, str]) -> None:
        self._unread: dict[str, str] = {}
        self._read: dict[str, ast.Message | ast.Term] = {}
        self.places: dict[str, tuple[str, int]] = {}
        for file, text in texts.items():
            self._find(file, text)

    def _find(self, file: str, text: str) -> None:
        ends, found = line_ends(text), list(_ENTRY.finditer(text))
        for one, beyond in zip(found, [*(other.start() for other in found[1:]), len(text)], strict=True):
            name = one[1]
            self._unread[name] = text[one.start(1) : beyond]
            self.places[name] = file, line_at(one.start(), ends)
            for attribute in _ATTRIBUTE.finditer(text, one.end(), beyond):
                self.places[f"{name}.{attribute[1]}"] = file, line_at(attribute.start(1), ends)

    def __getitem__(self, name: str) -> ast.Message | ast.Term:
        if name not in self._read:
            entry = FluentParser().parse_entry(self._unread[name])
            if not isinstance(entry, ast.Message | ast.Term):
                raise KeyError(name)
            self._read[name] = entry
        return self._read[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._unread)

    def __len__(self) -> int:
        return len(self._unread)

    def __contains__(self, name: object) -> bool:
        return name in self._unread


def line_ends(text: str) -> list[int]:
    """Give the places of all line ends of a text."""
    return [found.start() for found in re.finditer("\n", text)]


def line_at(place: int, ends: list[int]) -> int:
    """Give the line, counted from 1, on which a place of a text lies.

    Args:
        place: letters before it.
        ends: places of the text's line ends.
    """
    return bisect_left(ends, place) + 1


def references_of(entry: ast.BaseNode) -> set[str]:
    """Name the phrases, terms and functions that a phrase or a term puts in.

    Args:
        entry: as parsed, or one of its patterns.

    Returns:
        Names; a term's begins with a hyphen.
    """
    finder = _ReferenceFinder()
    finder.visit(entry)
    return finder.found


class _ReferenceFinder(Visitor):
    def __init__(self) -> None:
        self.found: set[str] = set()

    def visit_MessageReference(self, node: ast.MessageReference) -> None:  # noqa: N802 - the visitor's own name
        self.found.add(f"{node.id.name}.{node.attribute.name}" if node.attribute else node.id.name)

    def visit_TermReference(self, node: ast.TermReference) -> None:  # noqa: N802
        self.found.add(f"-{node.id.name}")
        self.generic_visit(node)

    def visit_FunctionReference(self, node: ast.FunctionReference) -> None:  # noqa: N802
        self.found.add(node.id.name)
        self.generic_visit(node)
