"""A catalogue: every phrase of one language, in Project Fluent's format (https://projectfluent.org).

Fluent keeps word order, plural forms and the choice of words in the catalogue, so that another language needs no code.
What two languages share stands in the folder of their common tag: British English is `en` and `en-GB` together.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache, lru_cache
from hashlib import sha256
from importlib.resources import files
from typing import Final

from babel import Locale, UnknownLocaleError
from fluent.runtime import FluentBundle, resolver
from fluent.syntax import FluentParser, ast
from fluent.syntax.visitor import Visitor

from swardcast.errors import InputNeedsAttention, Problem, SwardcastError, nearest
from swardcast.language.phrase_files import PhraseFiles, line_at, line_ends, references_of

__all__ = ["BUILT_IN", "LOCALE", "Catalogue", "PhraseError", "built_in", "catalogue_from", "texts_of"]

BUILT_IN: Final = ("en-GB", "en-US")
"""Languages that come with Swardcast, as IETF tags (RFC 5646)."""

LOCALE: Final = "language-locale"
"""The phrase that names the locale of the Unicode CLDR: plural forms, names of days and months, numbers."""

_SUFFIX: Final = ".ftl"

_KEPT: Final = 20_000
"""Phrases said last that are kept, since notices, feeds, calendar and pages say most of theirs several times; some MB.
Judgement."""


resolver.MAX_PART_LENGTH = 1_000_000
"""Letters that may stand in one slot. The library allows 2,500, since on other sites strangers bring phrases; here a
hundred bunkers by name are more. What is typed has limits of its own."""


class PhraseError(SwardcastError):
    """A phrase that is not in the catalogue, or was asked for without a value that it needs."""


class Catalogue:
    """The phrases of one language.

    Args:
        tag: IETF language tag.
        entries: messages and terms by name; a term's begins with a hyphen. Each is asked for when it is first said.
        places: file and line of each, and of their attributes, for errors and explanations.
        digest: tells catalogues of other texts from this one.

    Raises:
        InputNeedsAttention: when it names no known locale.
    """

    __slots__ = ("_bundle", "_entries", "_places", "_ready", "_said", "digest", "locale", "tag")

    def __init__(
        self,
        tag: str,
        entries: Mapping[str, ast.Message | ast.Term],
        places: Mapping[str, tuple[str, int]],
        digest: str,
    ) -> None:
        self.tag = tag
        self.digest = digest
        self._entries = entries
        self._places = places
        self.locale = _locale_of(self._entries, self._places, tag)
        self._bundle = FluentBundle([str(self.locale)], use_isolating=False)
        self._ready = set[str]()
        self._said = lru_cache(maxsize=_KEPT, typed=True)(self._filled)  # typed, since 1 and 1.0 may be said otherwise

    def say(self, phrase: str, values: Mapping[str, str | int | float]) -> str:
        """Say a phrase.

        Args:
            phrase: name of a message, or "message.attribute".
            values: what stands in its slots, by name.

        Returns:
            The phrase with its slots filled.

        Raises:
            PhraseError: when there is no such phrase, or a slot stays empty.
        """
        return self._said(phrase, **values)

    def _filled(self, phrase: str, /, **values: str | float) -> str:
        name, _, attribute = phrase.partition(".")
        pattern = None
        self._make_ready(name)
        if self._bundle.has_message(name):
            message = self._bundle.get_message(name)
            pattern = message.attributes.get(attribute) if attribute else message.value
        if pattern is None:
            message_text = f"no phrase {phrase!r} in the language {self.tag}. {nearest(phrase, self.names())}"
            raise PhraseError(message_text.rstrip())
        said, errors = self._bundle.format_pattern(pattern, values)
        if errors:
            message_text = f"phrase {phrase!r} in the language {self.tag}: {'; '.join(map(str, errors))}"
            raise PhraseError(message_text)
        return str(said)

    def _make_ready(self, name: str) -> None:
        """Take a phrase into what can be said, with those that it puts in."""
        todo = [name]
        while todo:
            one = todo.pop().partition(".")[0]
            if one in self._ready:
                continue
            self._ready.add(one)
            entry = self._entries.get(one)
            if entry is not None:
                self._bundle.add_resource(ast.Resource([entry]))
                todo += references_of(entry)

    def has(self, phrase: str) -> bool:
        """Tell whether there is a phrase of that name."""
        name, _, attribute = phrase.partition(".")
        entry = self._entries.get(name)
        if entry is None:
            return False
        if not attribute:
            return entry.value is not None
        return any(one.id.name == attribute for one in entry.attributes)

    def names(self) -> tuple[str, ...]:
        """Names of all phrases, attributes as "message.attribute", without terms."""
        return tuple(name for entry, name in self._patterns() if not entry.startswith("-"))

    def slots_of(self, phrase: str) -> frozenset[str]:
        """Names of the values that a phrase asks for, those of phrases that it puts in included.

        Args:
            phrase: name of a message, or "message.attribute".

        Returns:
            Names without the dollar sign.
        """
        finder, seen, todo = _SlotFinder(), set[str](), [phrase]
        while todo:
            name = todo.pop()
            pattern = self.text_of(name) if self.has(name) and name not in seen else None
            seen.add(name)
            if pattern is not None:
                finder.visit(pattern)
                todo += finder.phrases
        return frozenset(finder.found)

    def place_of(self, phrase: str) -> str:
        """Where a phrase stands: "phrases/en/kinds.ftl, line 12"."""
        file, line = self._places[phrase if phrase in self._places else phrase.partition(".")[0]]
        return f"{file}, line {line}"

    def text_of(self, phrase: str) -> ast.Pattern | None:
        """The pattern of a phrase as parsed, for tools that translate or check catalogues."""
        name, _, attribute = phrase.partition(".")
        entry = self._entries[name]
        if not attribute:
            return entry.value
        return next(one.value for one in entry.attributes if one.id.name == attribute)

    def entries(self) -> Mapping[str, ast.Message | ast.Term]:
        """All messages and terms by name, for tools that translate or check catalogues."""
        return dict(self._entries)

    def places(self) -> Mapping[str, tuple[str, int]]:
        """File and line of each message, term and attribute."""
        return dict(self._places)

    def _patterns(self) -> Iterator[tuple[str, str]]:
        for name, entry in self._entries.items():
            if entry.value is not None:
                yield name, name
            for attribute in entry.attributes:
                yield name, f"{name}.{attribute.id.name}"


class _SlotFinder(Visitor):
    def __init__(self) -> None:
        self.found: set[str] = set()
        self.phrases: set[str] = set()

    def visit_VariableReference(self, node: ast.VariableReference) -> None:  # noqa: N802 - the visitor's own name
        self.found.add(node.id.name)

    def visit_MessageReference(self, node: ast.MessageReference) -> None:  # noqa: N802
        self.phrases.add(f"{node.id.name}.{node.attribute.name}" if node.attribute else node.id.name)


def _locale_of(
    entries: Mapping[str, ast.Message | ast.Term], places: Mapping[str, tuple[str, int]], tag: str
) -> Locale:
    entry = entries.get(LOCALE)
    parts = entry.value.elements if entry is not None and entry.value is not None else []
    said = "".join(part.value for part in parts if isinstance(part, ast.TextElement))
    try:
        return Locale.parse(said or tag.replace("-", "_"))
    except (UnknownLocaleError, ValueError):
        file, line = places.get(LOCALE, ("phrases", None))
        found = f"{said!r} as {LOCALE}" if said else f"no phrase {LOCALE!r}"
        expected = "a locale of the Unicode CLDR such as 'en_GB', for plural forms and the names of days and months"
        raise InputNeedsAttention([Problem(file=file, line=line, found=found, expected=expected)]) from None


def catalogue_from(tag: str, texts: Mapping[str, str]) -> Catalogue:
    """Make a catalogue of the text of its files.

    Args:
        tag: IETF language tag.
        texts: text of each file in Fluent's format, by its name.

    Returns:
        The catalogue.

    Raises:
        InputNeedsAttention: when a file cannot be parsed, defines a phrase a second time, or no known locale is named.
    """
    entries: dict[str, ast.Message | ast.Term] = {}
    places: dict[str, tuple[str, int]] = {}
    problems: list[Problem] = []
    for file, text in texts.items():
        _read(file, text, entries, places, problems)
    if problems:
        raise InputNeedsAttention(problems)
    return Catalogue(tag, entries, places, _digest_of(tag, texts))


def _digest_of(tag: str, texts: Mapping[str, str]) -> str:
    return sha256(repr((tag, list(texts.items()))).encode()).hexdigest()


def _read(
    file: str,
    text: str,
    entries: dict[str, ast.Message | ast.Term],
    places: dict[str, tuple[str, int]],
    problems: list[Problem],
) -> None:
    try:
        body = FluentParser(with_spans=True).parse(text).body
    except RecursionError:
        problems.append(Problem(file=file, found="far too many nested brackets", expected="plain phrases"))
        return
    ends = line_ends(text)
    for entry in body:
        line = _line_of(entry, ends)
        if isinstance(entry, ast.Junk):
            said = "; ".join(str(note.message) for note in entry.annotations)
            first = next(iter((entry.content or "").strip().splitlines()), "blanks alone")
            problems.append(
                Problem(file=file, line=line, found=repr(first[:60]), expected="a phrase in Fluent's format", hint=said)
            )
        if not isinstance(entry, ast.Message | ast.Term):
            continue
        name = f"-{entry.id.name}" if isinstance(entry, ast.Term) else entry.id.name
        if name in entries:
            other_file, other_line = places[name]
            found = f"{name!r} a second time, after {other_file}, line {other_line}"
            problems.append(Problem(file=file, line=line, found=found, expected="each phrase once"))
        entries[name], places[name] = entry, (file, line)
        for attribute in entry.attributes:
            places[f"{name}.{attribute.id.name}"] = file, _line_of(attribute, ends)


def _line_of(node: ast.SyntaxNode, ends: list[int]) -> int:
    """The line on which a part of a file begins, of which the places of all line ends are known."""
    return line_at(node.span.start if node.span is not None else 0, ends)


@cache
def built_in(tag: str) -> Catalogue:
    """Give a language that comes with Swardcast.

    Args:
        tag: one of `BUILT_IN`.

    Returns:
        Its catalogue, each phrase of it parsed once.

    Raises:
        PhraseError: when there is no such language.
    """
    if tag not in BUILT_IN:
        message = f"no language {tag!r}; expected one of: {', '.join(BUILT_IN)}. {nearest(tag, BUILT_IN)}"
        raise PhraseError(message.rstrip())
    texts = texts_of(tag)
    phrases = PhraseFiles(texts)
    return Catalogue(tag, phrases, phrases.places, _digest_of(tag, texts))


def texts_of(tag: str) -> dict[str, str]:
    """Read the files of a language that comes with Swardcast.

    Args:
        tag: one of `BUILT_IN`.

    Returns:
        Text of each file in Fluent's format, by its name.
    """
    folder = files("swardcast") / "language" / "phrases"
    return {
        f"phrases/{part}/{file.name}": file.read_text(encoding="utf-8")
        for part in (tag.partition("-")[0], tag)
        for file in sorted((folder / part).iterdir(), key=lambda one: one.name)
        if file.name.endswith(_SUFFIX)
    }
