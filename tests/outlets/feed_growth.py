"""Feeds of two builds of a site: a feed only grows, and what it told stays as it was told."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from lxml import etree

__all__ = ["Told", "shrunk", "told_in_feeds"]


@dataclass(frozen=True)
class _Item:
    """An item as it is written: without its content, its content, and whether an archive has it, which tells it in short."""

    head: bytes
    content: bytes
    is_archived: bool


Told = dict[str, dict[str, _Item]]
"""By feed and format, such as "status.rss", each item by its id, newest first."""

_DOCUMENT = re.compile(r"feeds/(\w[\w-]*)(?:/(\d+))?\.(rss|atom|json)")
_ITEM = {"rss": ("item", "guid"), "atom": ("entry", "id")}
_CONTENT = ("description", "encoded", "content", "content_html", "summary")


def told_in_feeds(files: Mapping[str, bytes]) -> Told:
    """What a site tells in all documents of its feeds: the current one first, then archives, the newest first."""
    found = [(match, name) for name in files if (match := _DOCUMENT.fullmatch(name))]
    found.sort(key=lambda one: (one[0][2] is not None, -int(one[0][2] or 0)))
    told: Told = {}
    for match, name in found:
        items = told.setdefault(f"{match[1]}.{match[3]}", {})
        for item, head, content in _items(match[3], files[name]):
            items.setdefault(item, _Item(head, content, match[2] is not None))
    return told


def _items(ending: str, data: bytes) -> Iterator[tuple[str, bytes, bytes]]:
    if ending == "json":
        for one in json.loads(data)["items"]:
            told = {name: one.pop(name) for name in _CONTENT if name in one}
            yield str(one["id"]), json.dumps(one).encode(), json.dumps(told).encode()
        return
    element, name = _ITEM[ending]
    for item in etree.fromstring(data).iterfind(f".//{{*}}{element}"):
        item.tail = None
        parts = [part for part in item if etree.QName(part).localname in _CONTENT]
        content = b"".join(etree.tostring(part, method="c14n", exclusive=True, with_tail=False) for part in parts)
        for part in parts:
            item.remove(part)
        yield str(item.findtext(f"{{*}}{name}")), etree.tostring(item, method="c14n", exclusive=True), content


def shrunk(before: Told, now: Told) -> Iterator[str]:
    """What a later build tells otherwise than an earlier one: items that went, changed, or changed places."""
    for feed, items in before.items():
        there = now.get(feed, {})
        for name, item in items.items():
            if name not in there:
                yield f"{feed}: the item {name} is gone"
            elif _differs(item, there[name]):
                yield f"{feed}: the item {name} says something else"
        if [name for name in there if name in items] != [name for name in items if name in there]:
            yield f"{feed}: items changed places"


def _differs(before: _Item, now: _Item) -> bool:
    return before.head != now.head or (before.is_archived is now.is_archived and before.content != now.content)
