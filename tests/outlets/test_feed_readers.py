"""Feed readers that follow the demo from its first day to its last: each change comes once, none doubled, none lost."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from functools import cache
from html import unescape
from itertools import product

import feedparser
import pytest
from lxml import etree
from lxml.html import fromstring

from swardcast.artifact import Artifact
from swardcast.compose import Bulletin
from swardcast.outlets import feeds
from swardcast.outlets.feeds import FeedPage, guid_of
from tests.outlets.feeds_made import files_of, pages_of

SITE = "https://quillhaven.example/"
FEEDS = ("status", "greens", "tees", "fairways", "bunkers")
SMALL = 8  # items in a document, so that the demo has many archives
HOSTILE = "<b>Greens</b> & \"tees\" 'now' <script>alert(1)</script> ]]> ⛳ שלום مرحبا \u00a0é"


@dataclass(frozen=True)
class _Document:
    ids: list[str]  # newest first
    titles: list[str]
    older: str | None


def _read_json(data: bytes) -> _Document:
    feed = json.loads(data)
    items = feed["items"]
    return _Document([one["id"] for one in items], [one["title"] for one in items], feed.get("next_url"))


def _read_xml(data: bytes) -> _Document:
    feed = feedparser.parse(data)
    assert not feed.bozo
    older = [link.href for link in feed.feed.links if link.rel == "prev-archive"]
    return _Document([one.id for one in feed.entries], [one.title for one in feed.entries], *(older or [None]))


READ: Mapping[str, Callable[[bytes], _Document]] = {"rss": _read_xml, "atom": _read_xml, "json": _read_json}


@dataclass
class _Reader:
    """As RFC 5005, section 4.2 has it: back through the archives until it meets what it knew before."""

    name: str
    ending: str
    seen: list[str] = field(default_factory=list)
    titles: dict[str, str] = field(default_factory=dict)
    last: bytes = b""

    def poll(self, site: Mapping[str, Artifact]) -> None:
        address: str | None = f"{SITE}feeds/{self.name}.{self.ending}"
        new: list[str] = []
        before = set(self.titles)
        if site[f"feeds/{self.name}.{self.ending}"].data == self.last:
            return  # as a web server says with 304
        self.last = site[f"feeds/{self.name}.{self.ending}"].data
        while address is not None:
            document = _parsed(self.ending, site[address.removeprefix(SITE)].data)
            fresh = [one for one in document.ids if one not in self.titles]
            self.titles |= dict(zip(document.ids, document.titles, strict=True))
            new += fresh
            address = document.older if before.isdisjoint(document.ids) else None
        self.seen += reversed(new)


@cache
def _parsed(ending: str, data: bytes) -> _Document:
    return READ[ending](data)


@cache
def _written(page: FeedPage) -> tuple[Artifact, ...]:
    return tuple(files_of([page]).values())


@pytest.fixture(scope="module")
def sites(evenings: dict[date, Bulletin]) -> dict[date, dict[str, Artifact]]:
    """All feed files of each evening, in small documents."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(feeds, "_MOST_AT_ONCE", SMALL)
        patch.setattr(feeds, "_ITEMS_IN_AN_ARCHIVE", SMALL)
        return {
            day: {file.path: file for page in pages_of(bulletin) for file in _written(page)}
            for day, bulletin in evenings.items()
        }


def _told(bulletin: Bulletin, name: str) -> list[str]:
    """What the bulletin tells of the course or of a kind of surface, the oldest first."""
    return [
        guid_of(item, SITE)
        for item in reversed(bulletin.items)
        if name == "status" or not item.kinds or name in {kind.plural for kind in item.kinds}
    ]


@pytest.mark.parametrize(
    "every",
    [
        pytest.param(1, id="each evening"),
        pytest.param(21, id="every third week"),
        pytest.param(1000, id="the first evening and the last"),
    ],
)
def test_a_reader_sees_each_change_once(
    sites: dict[date, dict[str, Artifact]], evenings: dict[date, Bulletin], every: int
) -> None:
    days = list(sites)
    for ending, name in product(READ, FEEDS):
        reader = _Reader(name, ending)
        for day in [*days[::every], days[-1]]:
            reader.poll(sites[day])
        told = _told(evenings[days[-1]], name)
        assert len(told) > SMALL
        assert reader.seen == told, (name, ending)


def test_what_an_archive_holds_never_changes(sites: dict[date, dict[str, Artifact]]) -> None:
    held: dict[str, list[str]] = {}
    for site in sites.values():
        for path, file in site.items():
            if path.count("/") == 2:
                ids = _parsed(path.split(".")[-1], file.data).ids
                assert len(ids) == SMALL
                assert held.setdefault(path, ids) == ids, path
    assert len(held) > 3 * 10


@pytest.mark.parametrize("ending", READ)
def test_hostile_and_foreign_letters_come_through_intact(demo_bulletin: Bulletin, ending: str) -> None:
    item = replace(demo_bulletin.items[0], title=HOSTILE, sentences=(HOSTILE,), category=HOSTILE)
    data = files_of(pages_of(replace(demo_bulletin, items=(item,))))[f"feeds/status.{ending}"].data
    assert _texts(ending, data) == {HOSTILE}


def _texts(ending: str, data: bytes) -> set[str]:
    """Title, summary, category and the text of the content, as a strict parser has them; RSS has a summary in HTML."""
    if ending == "json":
        (item,) = json.loads(data)["items"]
        found, content = [item["title"], item["summary"], *item["tags"]], item["content_html"]
    else:
        root = etree.fromstring(data)
        inside = "//*[local-name()='item' or local-name()='entry']/*"
        found = [one.text for name in ("title", "summary") for one in root.xpath(f"{inside}[local-name()='{name}']")]
        found += [unescape(one.text) for one in root.xpath(f"{inside}[local-name()='description']")]
        found += root.xpath(f"{inside}[local-name()='category']/@term") or root.xpath(
            f"{inside}[local-name()='category']/text()"
        )
        (content,) = root.xpath(f"{inside}[local-name()='encoded' or local-name()='content']/text()")
    assert len(found) == 3
    return {*found, fromstring(content).text_content()}
