"""JSON Feed by the rules of version 1.1 (M. Reece, B. Simmons, 2020, https://www.jsonfeed.org/version/1.1/), section by section."""

from __future__ import annotations

import json
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest

from swardcast.compose import Bulletin
from tests.outlets.feeds_made import files_of, pages_of, with_items

TOP_LEVEL: dict[str, type] = {
    "version": str, "title": str, "home_page_url": str, "feed_url": str, "description": str, "user_comment": str,
    "next_url": str, "icon": str, "favicon": str, "authors": list, "language": str, "expired": bool, "hubs": list,
    "items": list,
}  # fmt: skip
ITEM: dict[str, type] = {
    "id": str, "url": str, "external_url": str, "title": str, "content_html": str, "content_text": str, "summary": str,
    "image": str, "banner_image": str, "date_published": str, "date_modified": str, "authors": list, "tags": list,
    "language": str, "attachments": list,
}  # fmt: skip


@pytest.fixture(scope="module")
def documents(demo_site: Path) -> dict[str, Any]:
    """All JSON feeds of the built demo, by path below feeds/."""
    feeds = demo_site / "feeds"
    return {path.relative_to(feeds).as_posix(): json.loads(path.read_bytes()) for path in feeds.rglob("*.json")}


def test_the_top_level_has_what_it_must_and_nothing_unknown(documents: dict[str, Any]) -> None:
    """Section "Top-level": version, title and items are required; each field has its type."""
    assert {"status.json", "status/1.json", "greens.json", "bunkers.json"} <= documents.keys()
    for feed in documents.values():
        assert feed["version"] == "https://jsonfeed.org/version/1.1"
        assert {"version", "title", "items", "feed_url", "home_page_url"} <= feed.keys()
        assert {name for name, value in feed.items() if not isinstance(value, TOP_LEVEL[name])} == set()
        assert feed["language"] == "en-GB"  # RFC 5646
        assert feed["authors"] == [{"name": "Quillhaven Golf Club", "url": "https://quillhaven.example/"}]


def test_each_item_has_an_id_content_and_moments(documents: dict[str, Any]) -> None:
    """Section "Items": id is required and a string, content_html or content_text must be there, dates are RFC 3339."""
    for feed in documents.values():
        ids = [item["id"] for item in feed["items"]]
        assert len(set(ids)) == len(ids) > 0
        for item in feed["items"]:
            assert {name for name, value in item.items() if not isinstance(value, ITEM[name])} == set()
            assert item["content_html"]
            assert item["url"].startswith("https://quillhaven.example/")
            for date in ("date_published", "date_modified"):
                assert datetime.fromisoformat(item[date]).tzinfo is not None
            assert all(isinstance(tag, str) for tag in item["tags"])


def test_older_items_are_reached_by_next_url_without_going_round_in_circles(demo_bulletin: Bulletin) -> None:
    """Section "Top-level", next_url: neither the feed's own address nor one that came before; feed_url names the feed."""
    files = files_of(pages_of(with_items(demo_bulletin, 170)))
    feed = json.loads(files["feeds/status.json"].data)
    seen, ids = [feed["feed_url"]], {item["id"] for item in feed["items"]}
    assert seen == ["https://quillhaven.example/feeds/status.json"]
    while "next_url" in feed:
        assert feed["next_url"] not in seen
        seen.append(feed["next_url"])
        feed = json.loads(files[feed["next_url"].removeprefix("https://quillhaven.example/")].data)
        assert feed["feed_url"] == seen[0]
        ids |= {item["id"] for item in feed["items"]}
    assert (len(seen), len(ids)) == (1 + 4, 170)  # 70, and archives of 25


def test_it_is_written_in_utf_8_without_escapes(demo_site: Path) -> None:
    """Section "Structure": JSON is UTF-8; a letter stands as itself, so that people can read the file."""
    data = (demo_site / "feeds" / "status.json").read_bytes()
    assert "“Allow until”" in data.decode("utf-8")
