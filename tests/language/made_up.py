"""A whole made-up language, made of the English catalogue: what is not in it at the end was never said through one.

Its letters are accented look-alikes; in each phrase the words and slots stand in reverse order; it has the plural forms
and the dates of a language that has more of them than English.
"""

from __future__ import annotations

import re
from typing import Final

from fluent.syntax import FluentSerializer, ast

from swardcast.language.catalogue import Catalogue, built_in

__all__ = ["LOCALE", "MARKS", "TAG", "made_up_page", "made_up_phrases", "made_up_words"]

TAG: Final = "qaa"
"""First of the tags that ISO 639-3 keeps for private use."""
LOCALE: Final = "sl"
"""Slovenian plurals and dates: CLDR has the classes one, two, few and other for it."""
MARKS: Final = {"one": "①", "two": "②", "few": "③", "other": "④"}
"""Stands at the end of each plural form, so that a reader sees which one was chosen."""

_PLAIN: Final = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
_ACCENTED: Final = "áƀçđéƒğħíĵķłɱñóþɋřšťúʋŵẋýžÁɃÇĐÉƑĞĦÍĴĶŁⱮÑÓÞɊŘŠŤÚƲŴẊÝŽ"
_LETTERS: Final = str.maketrans(_PLAIN, _ACCENTED)
_NOT_WORDS: Final = {  # read by the program, and the only phrases that are
    "language-locale": LOCALE,
    "language-measures": "metric",
    "day-pattern": "d. MMMM, EEEE",
    "day-pattern-with-year": "y, d. MMMM, EEEE",
    "short-day-pattern": "d. MMMM",
    "short-day-pattern-with-year": "y, d. MMMM",
    "tick-day-pattern": "d. MMM",
    "tick-day-pattern-with-year": "y d. MMM",
    "tick-month-pattern": "LLL",
    "tick-month-pattern-with-year": "y LLL",
    "month-pattern": "LLLL",
    "month-pattern-with-year": "y LLLL",
    "time-pattern": "HH.mm",
    "full-hour-pattern": "HH",
}
_KEPT_AT_THE_END: Final = re.compile(r"[.:;,?]+$")


def made_up_words(text: str) -> str:
    """Write English in made-up letters.

    Args:
        text: English.

    Returns:
        The same with other letters; digits and signs stay.
    """
    return text.translate(_LETTERS)


def made_up_phrases(model: Catalogue | None = None) -> str:
    """Make the catalogue of the language.

    Args:
        model: the catalogue that it is made of; British English if none is given.

    Returns:
        All phrases and terms in Fluent's format.
    """
    model = model or built_in("en-GB")
    entries = []
    for name, entry in model.entries().items():
        copy = entry.clone()
        if name in _NOT_WORDS:
            copy.value = ast.Pattern([ast.TextElement(_NOT_WORDS[name])])
        elif copy.value is not None:
            copy.value = _pattern(copy.value)
        for attribute in copy.attributes:
            attribute.value = _pattern(attribute.value)
        copy.comment = None
        entries.append(copy)
    return str(FluentSerializer().serialize(ast.Resource([*entries])))


def made_up_page(text: str) -> str:
    """Write a page of the site in made-up letters: fields, links, tags and the plugin's remarks stay.

    Args:
        text: Markdown with Pelican's fields above it.

    Returns:
        The page.
    """
    head, _, body = text.partition("\n\n")
    fields = [
        line if line.startswith(("Slug:", "Save_as:", "Url:", "Date:")) else _field(line) for line in head.splitlines()
    ]
    parts = re.split(r"(\]\([^)]*\)|<!--.*?-->|</?\w[^>]*>)", body)
    return "\n".join(fields) + "\n\n" + "".join(part if n % 2 else made_up_words(part) for n, part in enumerate(parts))


def _field(line: str) -> str:
    name, _, value = line.partition(": ")
    return f"{name}: {made_up_words(value)}"


def _pattern(pattern: ast.Pattern, mark: str = "") -> ast.Pattern:
    elements = [_element(element) for element in pattern.elements]
    end, last = "", elements[-1]
    if isinstance(last, ast.TextElement) and (kept := _KEPT_AT_THE_END.search(last.value)):
        end, last.value = kept[0], last.value[: kept.start()]
    turned = [element for element in reversed(elements) if not isinstance(element, ast.TextElement) or element.value]
    return ast.Pattern(_without_loose_ends([*turned, ast.TextElement(f"{mark}{end}")]))


def _element(element: ast.TextElement | ast.Placeable) -> ast.TextElement | ast.Placeable:
    if isinstance(element, ast.TextElement):
        text = made_up_words(" ".join(element.value.split()))
        before, after = element.value[:1].isspace(), element.value[-1:].isspace()
        if not any(letter.isalpha() for letter in text):
            return ast.TextElement(element.value.replace("\n", " "))
        return ast.TextElement(f"{' ' if after else ''}{text}{' ' if before else ''}")  # the sides change places
    if isinstance(element.expression, ast.SelectExpression):
        return ast.Placeable(_select(element.expression))
    return element


def _select(select: ast.SelectExpression) -> ast.SelectExpression:
    by_key = {_key(variant): variant for variant in select.variants}
    if not by_key.keys() & {"zero", "one", "two", "few", "many"}:
        variants = [ast.Variant(one.key, _pattern(one.value), one.default) for one in select.variants]
        return ast.SelectExpression(select.selector, variants)
    figures = [ast.Variant(one.key, _pattern(one.value)) for key, one in by_key.items() if key.isdigit()]
    classes = [
        ast.Variant(ast.Identifier(name), _pattern(by_key.get(name, by_key["other"]).value, mark), name == "other")
        for name, mark in MARKS.items()
    ]
    return ast.SelectExpression(select.selector, [*figures, *classes])


def _key(variant: ast.Variant) -> str:
    key = variant.key
    return str(key.name if isinstance(key, ast.Identifier) else key.value)


def _parted(
    before: ast.TextElement | ast.Placeable | None, element: ast.TextElement | ast.Placeable
) -> list[ast.TextElement | ast.Placeable]:
    """A word and a slot that now meet are kept apart by a blank."""
    ends = isinstance(before, ast.TextElement) and before.value[-1:].isalpha()
    begins = isinstance(element, ast.TextElement) and element.value[:1].isalpha() and before is not None
    return [ast.TextElement(" "), element] if ends or begins else [element]


def _without_loose_ends(elements: list[ast.TextElement | ast.Placeable]) -> list[ast.TextElement | ast.Placeable]:
    """Neighbouring texts become one; blanks at both ends go, as Fluent would drop them."""
    joined: list[ast.TextElement | ast.Placeable] = []
    for element in elements:
        before = joined[-1] if joined else None
        if isinstance(element, ast.TextElement) and isinstance(before, ast.TextElement):
            joined[-1] = ast.TextElement(before.value + element.value)
        else:
            joined += _parted(before, element)
    for place, strip in ((0, str.lstrip), (-1, str.rstrip)):
        end = joined[place]
        if isinstance(end, ast.TextElement):
            joined[place] = ast.TextElement(strip(end.value))
    kept = [element for element in joined if not isinstance(element, ast.TextElement) or element.value]
    return kept or [ast.Placeable(ast.StringLiteral(""))]
