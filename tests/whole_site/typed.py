"""What a club has typed, found in its records: the only English that may stand in a site of another language."""

from __future__ import annotations

import dataclasses
import json
import re
from collections.abc import Iterable, Iterator, Mapping
from enum import Enum
from typing import Final

from lxml import html

from swardcast.language.catalogue import Catalogue
from swardcast.outlets.own_words import own_words_html
from swardcast.reading.limits import LIMITS
from swardcast.records.club import Surface

__all__ = ["TypedWords", "texts_of_html", "typed_in"]

_NO_WORDS_OF_MEMBERS: Final = {"id", "file", "language", "site", "guid", "address", "licence_address"}
_KEYWORDS: Final = {*LIMITS, "green speed", "firmness", "moisture", "height of cut", "organic matter"}
"""Words of the fields of a log entry: the program must say them in the club's language."""


def typed_in(value: object) -> Iterator[str]:
    """Walk records for texts; ids, files, addresses, keywords and names made of a kind and a number are left out.

    Args:
        value: a record, a collection or a value.

    Yields:
        Each text as typed.
    """
    if isinstance(value, str):
        if value not in _KEYWORDS:
            yield value
    elif isinstance(value, Surface) and value.is_numbered:
        return
    else:
        for part in _parts(value):
            yield from typed_in(part)


def _parts(value: object) -> Iterable[object]:
    if isinstance(value, Enum | Catalogue):
        return ()
    if isinstance(value, Mapping):
        return value.values()
    if dataclasses.is_dataclass(value):
        fields = dataclasses.fields(value)
        return [getattr(value, field.name) for field in fields if field.name not in _NO_WORDS_OF_MEMBERS]
    return value if isinstance(value, Iterable) else ()


def texts_of_html(page: html.HtmlElement) -> Iterator[str]:
    """Each text that a reader of a page sees or hears, a block at a time.

    Args:
        page: the page.

    Yields:
        Texts with single blanks.
    """
    shown = page.xpath(
        "//@alt | //@aria-label | //@title | //meta[@name='description']/@content | //title/text()"
        " | //meta[@property='og:title' or @property='og:description' or @property='og:image:alt']/@content"
    )
    for data in map(json.loads, page.xpath("//script[@type='application/ld+json']/text()")):
        for thing in data.get("@graph", [data]):
            shown += [thing["name"], thing.get("description", ""), thing.get("text", "")]
    for text in [*shown, *(part for part in page.xpath("//body//text()"))]:
        if words := " ".join(str(text).split()):
            yield words


class TypedWords:
    """Takes typed words out of a text.

    Args:
        typed: texts as typed; Markdown is also known as it is rendered, and in plain text.
    """

    def __init__(self, typed: Iterable[str]) -> None:
        known: set[str] = set()
        for text in typed:
            rendered = html.fromstring(f"<div>{own_words_html(text)}</div>")
            blocks = [block.text_content() for block in rendered.iter("p", "li", "h3", "h4")]
            for part in (text, *rendered.xpath(".//text()"), *blocks):
                words = " ".join(str(part).split()).rstrip(".")
                known |= {words, words[:1].upper() + words[1:], words[:1].lower() + words[1:]}
        longest_first = sorted(filter(None, known), key=len, reverse=True)
        self._typed = re.compile(rf"(?<![A-Za-z])(?:{'|'.join(map(re.escape, longest_first))})(?![A-Za-z])")

    def taken_out_of(self, text: str) -> str:
        """Give a text without what was typed."""
        return self._typed.sub(" ", text)
