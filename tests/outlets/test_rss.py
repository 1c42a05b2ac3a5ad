"""RSS by the rules of its specification and of the RSS Advisory Board's Best Practices Profile.

Both from memory of https://www.rssboard.org/rss-specification (2.0.11) and https://www.rssboard.org/rss-profile.
"""

from __future__ import annotations

import re
from dataclasses import replace
from email.utils import parsedate_to_datetime
from pathlib import Path
from typing import Any

import pytest
from lxml import etree

from swardcast.compose import Bulletin
from tests.outlets.feeds_made import files_of, pages_of

ATOM = "{http://www.w3.org/2005/Atom}"
CONTENT = "{http://purl.org/rss/1.0/modules/content/}encoded"
OF_A_CHANNEL = {
    "title", "link", "description", "language", "copyright", "managingEditor", "webMaster", "pubDate", "lastBuildDate",
    "category", "generator", "docs", "cloud", "ttl", "image", "rating", "textInput", "skipHours", "skipDays", "item",
}  # fmt: skip
OF_AN_ITEM = {
    "title", "link", "description", "author", "category", "comments", "enclosure", "guid", "pubDate", "source",
}  # fmt: skip
# RFC 822 section 5, with a year of four digits, which the specification prefers, and an offset, as the profile has it.
MOMENT = re.compile(
    r"(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun), \d{2} (?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) \d{4}"
    r" \d{2}:\d{2}:\d{2} [+-]\d{4}"
)


@pytest.fixture(scope="module")
def channels(demo_site: Path) -> dict[str, Any]:
    """Every document's channel, by path."""
    found = {}
    for path in sorted((demo_site / "feeds").rglob("*.rss")):
        root = etree.fromstring(path.read_bytes())
        assert (root.tag, root.get("version")) == ("rss", "2.0")
        (channel,) = root  # "a single <channel> element"
        found[path.relative_to(demo_site / "feeds").as_posix()] = channel
    return found


def test_a_channel_has_what_it_must_and_no_element_twice(channels: dict[str, Any]) -> None:
    """Specification, "Required channel elements"; an element without a namespace is one of the specification's."""
    assert len(channels) > 5
    for channel in channels.values():
        names = [element.tag for element in channel]
        plain = [name for name in names if not name.startswith("{")]
        assert {"title", "link", "description"} <= set(plain) <= OF_A_CHANNEL
        assert all(plain.count(name) == 1 for name in set(plain) - {"item", "category"})
        assert all(channel.findtext(name) for name in ("title", "link", "description"))


def test_a_channel_says_how_long_it_may_be_kept_when_it_changed_and_what_it_is(channels: dict[str, Any]) -> None:
    """Specification, "Optional channel elements": ttl in minutes; lastBuildDate; docs points to the specification."""
    for channel in channels.values():
        assert channel.findtext("ttl") == "60"
        assert channel.findtext("docs") == "https://www.rssboard.org/rss-specification"
        assert channel.findtext("language") == "en-GB"
        assert channel.findtext("generator") == "Swardcast"
        changed = parsedate_to_datetime(channel.findtext("lastBuildDate"))
        told = [parsedate_to_datetime(item.findtext("pubDate")) for item in channel.iterfind("item")]
        assert not told or changed == max(told)  # "the last time the content of the channel changed"


def test_dates_have_four_digits_of_the_year_and_an_offset(channels: dict[str, Any]) -> None:
    for channel in channels.values():
        dates = [channel.findtext("lastBuildDate"), *(item.findtext("pubDate") for item in channel.iterfind("item"))]
        assert [one for one in dates if not MOMENT.fullmatch(one)] == []


def test_an_item_has_what_it_should(channels: dict[str, Any]) -> None:
    """Specification, "Elements of <item>"; profile: a guid in every item, that says it is no address where it is none."""
    for channel in channels.values():
        guids = []
        for item in channel.iterfind("item"):
            names = [element.tag for element in item]
            assert {name for name in names if not name.startswith("{")} <= OF_AN_ITEM
            assert all(names.count(name) == 1 for name in ("title", "link", "description", "guid", "pubDate", CONTENT))
            assert item.find("guid").get("isPermaLink") == "false"
            guids.append(item.findtext("guid"))
            assert item.findtext("link").startswith("https://quillhaven.example/")  # "a full URL"
            assert item.findtext("category")
            assert names.index("description") < names.index(CONTENT)  # profile: where both are, the summary comes first
        assert len(set(guids)) == len(guids)


def test_addresses_in_the_content_are_whole(channels: dict[str, Any]) -> None:
    """Profile, "Relative URLs": readers disagree on what they are relative to."""
    for channel in channels.values():
        for item in channel.iterfind("item"):
            addresses = re.findall(r'(?:href|src)="([^"]*)"', item.findtext(CONTENT))
            assert addresses
            assert [one for one in addresses if not re.match("https://|mailto:|tel:", one)] == []


def test_a_document_names_its_own_address_and_those_of_its_archives(channels: dict[str, Any]) -> None:
    """Profile, "atom:link": one with rel self and the feed's media type; RFC 5005, appendix B, for the others."""
    for path, channel in channels.items():
        links = {link.get("rel"): link for link in channel.iterfind(f"{ATOM}link")}
        assert links["self"].get("href") == f"https://quillhaven.example/feeds/{path}"
        assert {link.get("type") for link in links.values()} == {"application/rss+xml"}
        assert ("current" in links) is ("/" in path)


def test_descriptions_are_escaped_html(demo_bulletin: Bulletin) -> None:
    """Profile, "description": "must be suitable for presentation as HTML", so a typed sign is escaped once more."""
    item = replace(demo_bulletin.items[0], sentences=("5 < 7 & <b>bold</b>",))
    data = files_of(pages_of(replace(demo_bulletin, items=(item,))))["feeds/status.rss"].data
    assert etree.fromstring(data).findtext(".//item/description") == "5 &lt; 7 &amp; &lt;b&gt;bold&lt;/b&gt;"
