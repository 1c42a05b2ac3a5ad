"""Feeds: each can be read, and each of its items has an id of its own, a title and a moment."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterator
from typing import Final

from lxml import etree

from swardcast.verifying.built_site import BuiltSite, Fault

__all__ = ["feed_faults"]

_ATOM: Final = {"a": "http://www.w3.org/2005/Atom"}
_FOLDER: Final = "feeds/"

Item = tuple[str, str, str]
"""Its id, its title, its moment."""


def feed_faults(site: BuiltSite) -> Iterator[Fault]:
    """Find feeds that a feed reader would not take.

    Args:
        site: the site.

    Yields:
        A fault for a feed that cannot be read, an item without id, title or moment, and an id that two items share.
    """
    read = {".rss": _rss, ".atom": _atom, ".json": _json}
    for name in site.judged:
        ending = name[name.rfind(".") :]
        if not name.startswith(_FOLDER) or ending not in read:
            continue
        try:
            items = read[ending](site.files[name])
        except (etree.XMLSyntaxError, ValueError) as error:
            yield Fault(file=name, says=f"cannot be read: {error}")
            continue
        for item in items:
            for value, what in zip(item, ("id", "title", "moment"), strict=True):
                if not value.strip():
                    yield Fault(file=name, says=f"an item ({item[1] or item[0]}) has no {what}")
        twice = [one for one, count in Counter(item[0] for item in items).items() if count > 1]
        yield from (Fault(file=name, says=f"two items have the id {one}") for one in twice if one.strip())


def _rss(data: bytes) -> list[Item]:
    root = _xml(data)
    if root.tag != "rss" or root.find("channel") is None:
        message = "it is no RSS"
        raise ValueError(message)
    items = root.findall("channel/item")
    return [(_text(one, "guid"), _text(one, "title"), _text(one, "pubDate")) for one in items]


def _atom(data: bytes) -> list[Item]:
    root = _xml(data)
    if root.tag != f"{{{_ATOM['a']}}}feed":
        message = "it is no Atom"
        raise ValueError(message)
    items = root.findall("a:entry", _ATOM)
    return [(_text(one, "a:id"), _text(one, "a:title"), _text(one, "a:updated")) for one in items]


def _json(data: bytes) -> list[Item]:
    read = json.loads(data)
    items = read.get("items") if isinstance(read, dict) else None
    if not isinstance(items, list):
        message = "it has no items"
        raise ValueError(message)  # noqa: TRY004 - a reader's fault like the others
    return [tuple(str(one.get(key, "")) for key in ("id", "title", "date_published")) for one in items]  # type: ignore[misc]


def _xml(data: bytes) -> etree._Element:
    return etree.fromstring(data, parser=etree.XMLParser(resolve_entities=False, no_network=True))


def _text(item: etree._Element, tag: str) -> str:
    return str(item.findtext(tag, default="", namespaces=_ATOM))
