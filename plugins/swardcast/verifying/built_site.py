"""The files of a built site, and what is found wrong with them."""

from __future__ import annotations

import json
import posixpath
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from functools import cached_property
from sys import intern
from typing import Any, Final
from urllib.parse import unquote, urlsplit

from lxml import etree, html
from lxml.html import defs

__all__ = ["INDEX", "STATUS", "BuiltSite", "Fault", "PageLinks"]

STATUS: Final = "status.json"
INDEX: Final = "index.html"


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One thing that is wrong with a built site.

    Args:
        file: the file, as it lies in the site.
        says: what is wrong with it.
    """

    file: str
    says: str

    def __str__(self) -> str:
        return f"{self.file}: {self.says}"


@dataclass(frozen=True, slots=True, kw_only=True)
class PageLinks:
    """What a page has to do with links.

    Args:
        out: the links on it, each once.
        own_words: those of them that stand in the manager's own words.
        anchors: its ids, to which links may lead.
    """

    out: tuple[str, ...]
    own_words: tuple[str, ...]
    anchors: frozenset[str]


_OWN_WORDS: Final = etree.XPath(
    "//*[contains(concat(' ', normalize-space(@class), ' '), ' sc-own ')]//a/@href", smart_strings=False
)
_PLAIN: Final = etree.HTMLParser()  # as html's own, but without a Python object for each element
_LEAD_OTHERWISE: Final = frozenset(("object", "param"))
_MAY_LEAD: Final = {"style": "url(", "http-equiv": "refresh"}
"""Elements, and words in attributes, that hold links elsewhere than in an attribute that is one: lxml knows how."""


class BuiltSite:
    """A built site as bytes; parsed pages are large, so only what has to be known of all of them is kept.

    Args:
        files: the bytes of each file by its place in the site, with forward slashes.
        brought: those that the club brings as they are: links may lead to them, but nobody judges them.
    """

    def __init__(self, files: Mapping[str, bytes], brought: Collection[str] = ()) -> None:
        self.files = files
        self.judged = tuple(sorted(files.keys() - set(brought)))

    @cached_property
    def pages(self) -> frozenset[str]:
        """Each HTML page that is judged."""
        return frozenset(name for name in self.judged if name.endswith(".html"))

    def page(self, name: str) -> html.HtmlElement | None:
        """Parse one of these pages; None where it is none of them, or empty."""
        data = self.files[name] if name in self.pages else b""
        return html.document_fromstring(data) if data.strip() else None

    @cached_property
    def links(self) -> dict[str, PageLinks]:
        """The links of each page, in the order of their names."""
        return {name: _links_of(data) for name in sorted(self.pages) if (data := self.files[name]).strip()}

    @cached_property
    def status(self) -> dict[str, Any]:
        """The status file; empty where it cannot be read, which is told elsewhere."""
        try:
            read = json.loads(self.files[STATUS])
        except (KeyError, ValueError):
            return {}
        return read if isinstance(read, dict) else {}

    @cached_property
    def address(self) -> str:
        """The address at which the site is published, ending in a slash, or ""."""
        address = self.status.get("site")
        return f"{address.rstrip('/')}/" if isinstance(address, str) and address else ""

    def page_of(self, address: str) -> str | None:
        """Find the file to which an address of the site leads.

        Args:
            address: an absolute address.

        Returns:
            Its place, whether it is there or not; None where the address is of another site.
        """
        if not self.address or not address.startswith(self.address):
            return None
        return self.file_of(address[len(self.address) :])

    def file_of(self, place: str) -> str:
        """Find the file that is served for a place in the site.

        Args:
            place: a place as in an address, with escapes, query and fragment.

        Returns:
            The file, whether it is there or not; for a folder its index; one that leaves the site begins with "..".
        """
        path = unquote(urlsplit(place).path)
        file = posixpath.normpath(path) if path else ""
        if file in ("", "."):
            return INDEX
        return file if file in self.files else posixpath.join(file, INDEX)


def _links_of(data: bytes) -> PageLinks:
    """Most pages have the same links, and each is kept once (`intern`)."""
    out, anchors, own_words, leads_otherwise = dict[str, None](), set[str](), False, False
    root = etree.fromstring(data, _PLAIN)
    for element in root.iter(etree.Element) if root is not None else ():
        for name, value in element.items():
            if name in defs.link_attrs:
                out[intern(value)] = None
            elif name == "id" or (name == "name" and element.tag == "a"):
                anchors.add(intern(value))
            elif name == "class":
                own_words = own_words or "sc-own" in value
            elif name in _MAY_LEAD:
                leads_otherwise = leads_otherwise or _MAY_LEAD[name] in value.lower()
        leads_otherwise = leads_otherwise or element.tag in _LEAD_OTHERWISE
    if leads_otherwise:
        links = html.document_fromstring(data).iterlinks()
        out = dict.fromkeys(intern(link) for _, attribute, link, _ in links if attribute)
    return PageLinks(
        out=tuple(out),
        own_words=tuple(map(intern, _OWN_WORDS(root))) if own_words else (),
        anchors=frozenset(anchors),
    )
