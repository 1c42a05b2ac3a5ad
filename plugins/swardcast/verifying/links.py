"""Links: each leads to a file of the site, and to a place that its page has."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Iterator
from typing import Final
from urllib.parse import unquote, urlsplit

from swardcast.verifying.built_site import BuiltSite, Fault

__all__ = ["link_faults"]

_MISSING_PAGE: Final = "404.html"  # shown at any depth, so its links begin at the root
_TEXTS: Final = (".atom", ".rss", ".json", ".ics", ".xml")
_ENDS: Final = r"[^\s\"'<>\\]*"


def link_faults(site: BuiltSite) -> Iterator[Fault]:
    """Find links that lead nowhere.

    Args:
        site: the site.

    Yields:
        A fault for each link of a page to a file that is not there or to a place that its page has not, and for each
        own address in a feed, the calendar or another file for programs that nothing answers.
    """
    for name, page in site.pages.items():
        base = "" if name == _MISSING_PAGE else posixpath.dirname(name)
        found = dict.fromkeys(link for _, attribute, link, _ in page.iterlinks() if attribute)
        yield from (fault for link in found if (fault := _fault(site, name, base, link)))
    yield from _in_texts(site)


def _fault(site: BuiltSite, page: str, base: str, link: str) -> Fault | None:
    parts = urlsplit(link)
    if link.startswith("//") or parts.scheme not in ("", "http", "https"):
        return None
    target = _target(site, page, base, link)
    if target is None:
        return None
    if target not in site.files:
        return Fault(file=page, says=f"links to {link!r}, where nothing is")
    wanted = unquote(parts.fragment)
    if wanted and target in site.anchors and wanted not in site.anchors[target]:
        return Fault(file=page, says=f"links to {link!r}, but {target} has no place {wanted!r}")
    return None


def _target(site: BuiltSite, page: str, base: str, link: str) -> str | None:
    """The file to which a link leads; None where it is of another site, also of another part of the same host."""
    parts = urlsplit(link)
    if parts.scheme:
        return site.page_of(link)
    if not parts.path:
        return page
    if not parts.path.startswith("/"):
        return site.file_of(posixpath.join(base, parts.path))
    root = urlsplit(site.address).path or "/"
    return site.file_of(parts.path.removeprefix(root)) if parts.path.startswith(root) else None


def _in_texts(site: BuiltSite) -> Iterator[Fault]:
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
            if target not in site.files:
                yield Fault(file=name, says=f"names the address {address!r}, where nothing is")
