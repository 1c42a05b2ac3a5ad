"""Links: each leads to a file of the site, and to a place that its page has."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Container, Iterator
from functools import cache, partial
from typing import Final
from urllib.parse import unquote, urlsplit

from swardcast.verifying.built_site import BuiltSite, Fault

__all__ = ["dead_links_of_own_words", "link_faults"]

_MISSING_PAGE: Final = "404.html"  # shown at any depth, so its links begin at the root
_TEXTS: Final = (".atom", ".rss", ".json", ".ics", ".xml")
_ENDS: Final = r"[^\s\"'<>\\]*"


def link_faults(site: BuiltSite) -> Iterator[Fault]:
    """Find links that lead nowhere, but for those of the manager's own words, wherever these are told.

    Args:
        site: the site.

    Yields:
        A fault for each link of a page to a file that is not there or to a place that its page has not, and for each
        own address in a feed, the calendar or another file for programs that nothing answers.
    """
    typed = frozenset(target for _, _, target in _dead_in_own_words(site))
    leads = cache(partial(_leads, site))  # pages that lie beside each other have most of their links in common
    for name, page in site.links.items():
        folder = _folder(name)
        for link in page.out:
            led = leads(folder, link)
            target = name if led == "" else led
            fault = None if target is None or target in typed else _fault(site, target, link)
            if fault:
                yield Fault(file=name, says=fault)
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
    for name, page in site.links.items():
        for link in page.own_words:
            target = _leads(site, _folder(name), link)
            if target and target not in site.files:
                yield name, link, target


def _fault(site: BuiltSite, target: str, link: str) -> str:
    if target not in site.files:
        return f"links to {link!r}, where nothing is"
    wanted = unquote(urlsplit(link).fragment) if "#" in link else ""
    if wanted and target in site.links and wanted not in site.links[target].anchors:
        return f"links to {link!r}, but {target} has no place {wanted!r}"
    return ""


def _folder(page: str) -> str:
    return "" if page == _MISSING_PAGE else posixpath.dirname(page)


def _leads(site: BuiltSite, folder: str, link: str) -> str | None:
    """The file to which a link on a page of a folder leads, "" for that page itself.

    None where it is of another site, also of another part of the same host.
    """
    parts = urlsplit(link)
    if link.startswith("//") or parts.scheme not in ("", "http", "https"):
        return None
    if parts.scheme:
        return site.page_of(link)
    if not parts.path:
        return ""
    if not parts.path.startswith("/"):
        return site.file_of(posixpath.join(folder, parts.path))
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
