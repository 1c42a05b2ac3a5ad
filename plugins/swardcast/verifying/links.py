"""Links: each leads to a file of the site, and to a place that its page has."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Container, Iterator
from typing import Final
from urllib.parse import unquote, urlsplit

from swardcast.verifying.built_site import BuiltSite, Fault

__all__ = ["dead_links_of_own_words", "link_faults"]

_MISSING_PAGE: Final = "404.html"  # shown at any depth, so its links begin at the root
_TEXTS: Final = (".atom", ".rss", ".json", ".ics", ".xml")
_ENDS: Final = r"[^\s\"'<>\\]*"
_OWN_WORDS: Final = "//*[contains(concat(' ', normalize-space(@class), ' '), ' sc-own ')]//a/@href"


def link_faults(site: BuiltSite) -> Iterator[Fault]:
    """Find links that lead nowhere, but for those of the manager's own words, wherever these are told.

    Args:
        site: the site.

    Yields:
        A fault for each link of a page to a file that is not there or to a place that its page has not, and for each
        own address in a feed, the calendar or another file for programs that nothing answers.
    """
    typed = frozenset(target for _, _, target in _dead_in_own_words(site))
    for name, page in site.pages.items():
        found = dict.fromkeys(link for _, attribute, link, _ in page.iterlinks() if attribute)
        yield from (fault for link in found if (fault := _fault(site, name, link, typed)))
    yield from _in_texts(site, typed)


def dead_links_of_own_words(site: BuiltSite) -> Iterator[Fault]:
    """Find links that the manager typed and that lead nowhere: to be told, but no reason to hold the site back.

    Args:
        site: the site.

    Yields:
        A fault for each, at the first page that tells the words.
    """
    told = set[str]()
    for name, link, target in _dead_in_own_words(site):
        if target not in told:
            told.add(target)
            yield Fault(file=name, says=f"words that were typed link to {link!r}, where nothing is")


def _dead_in_own_words(site: BuiltSite) -> Iterator[tuple[str, str, str]]:
    """Pages with such links, the links, and the files to which they lead."""
    for name, page in site.pages.items():
        for link in page.xpath(_OWN_WORDS):
            target = _target(site, name, link)
            if target is not None and target not in site.files:
                yield name, str(link), target


def _fault(site: BuiltSite, page: str, link: str, typed: Container[str]) -> Fault | None:
    target = _target(site, page, link)
    if target is None or target in typed:
        return None
    if target not in site.files:
        return Fault(file=page, says=f"links to {link!r}, where nothing is")
    wanted = unquote(urlsplit(link).fragment)
    if wanted and target in site.anchors and wanted not in site.anchors[target]:
        return Fault(file=page, says=f"links to {link!r}, but {target} has no place {wanted!r}")
    return None


def _target(site: BuiltSite, page: str, link: str) -> str | None:
    """The file to which a link leads; None where it is of another site, also of another part of the same host."""
    parts = urlsplit(link)
    if link.startswith("//") or parts.scheme not in ("", "http", "https"):
        return None
    base = "" if page == _MISSING_PAGE else posixpath.dirname(page)
    if parts.scheme:
        return site.page_of(link)
    if not parts.path:
        return page
    if not parts.path.startswith("/"):
        return site.file_of(posixpath.join(base, parts.path))
    root = urlsplit(site.address).path or "/"
    return site.file_of(parts.path.removeprefix(root)) if parts.path.startswith(root) else None


def _in_texts(site: BuiltSite, typed: Container[str]) -> Iterator[Fault]:
    """Own addresses in files for programs; a calendar folds its lines (RFC 5545, section 3.1)."""
    if not site.address:
        return
    ours = re.compile(re.escape(site.address) + _ENDS)
    for name in site.judged:
        if not name.endswith(_TEXTS):
            continue
        text = site.files[name].decode("utf-8", errors="replace")
        if name.endswith(".ics"):
            text = re.sub(r"\r?\n[ \t]", "", text)
        for address in dict.fromkeys(ours.findall(text)):
            target = site.page_of(address.rstrip(".,;)"))
            if target not in site.files and target not in typed:
                yield Fault(file=name, says=f"names the address {address!r}, where nothing is")
