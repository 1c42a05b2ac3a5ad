"""Atom by the rules of RFC 4287: the grammar of appendix B, and by section what the grammar cannot say."""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path
from typing import Any

import feedparser
import pytest
from lxml import etree

from swardcast.compose import Bulletin
from tests.outlets.feeds_made import files_of, pages_of, with_items

GRAMMAR = Path(__file__).parent / "atom.rng"
ATOM = {"a": "http://www.w3.org/2005/Atom", "fh": "http://purl.org/syndication/history/1.0"}
RFC_3339 = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)")


@pytest.fixture(scope="module")
def grammar() -> Any:
    return etree.RelaxNG(etree.parse(GRAMMAR))


@pytest.fixture(scope="module")
def documents(demo_site: Path) -> dict[str, Any]:
    """All Atom documents of the built demo, by path below feeds/."""
    feeds = demo_site / "feeds"
    return {path.relative_to(feeds).as_posix(): etree.parse(path).getroot() for path in feeds.rglob("*.atom")}


def test_every_document_follows_the_grammar(documents: dict[str, Any], grammar: Any) -> None:
    assert {"status.atom", "status/1.atom", "greens.atom", "bunkers.atom"} <= documents.keys()
    for path, root in documents.items():
        assert grammar.validate(root), (path, grammar.error_log)


def test_the_documents_of_a_long_feed_follow_it_too(demo_bulletin: Bulletin, grammar: Any) -> None:
    files = files_of(pages_of(with_items(demo_bulletin, 170)))
    roots = [etree.fromstring(file.data) for path, file in files.items() if path.endswith(".atom")]
    assert len(roots) == 5 * 5  # whole course and four kinds: a current document and four archives
    for root in roots:
        assert grammar.validate(root), grammar.error_log


@pytest.mark.parametrize(
    ("found", "put"),
    [
        pytest.param("<id>https://quillhaven.example/feeds/status.atom</id>", "", id="a feed without an id"),
        pytest.param("</title>", "</title><title>twice</title>", id="two titles"),
        pytest.param('type="html"', 'type="CDATA"', id="a content type that is none"),
        pytest.param("T16:10:00+01:00</updated>", "</updated>", id="a date without a time"),
        pytest.param("<category term=", "<category label=", id="a category without its term"),
        pytest.param('<link href="', '<link url="', id="a link to nowhere"),
        pytest.param("</feed>", "<generator>late</generator></feed>", id="metadata after the entries"),
        pytest.param('xml:lang="en-GB"', 'xml:lang="British English"', id="no language tag"),
    ],
)
def test_the_grammar_refuses(demo_site: Path, grammar: Any, found: str, put: str) -> None:
    text = (demo_site / "feeds" / "status.atom").read_text(encoding="utf-8").split("?>", 1)[1]
    assert found in text
    assert not grammar.validate(etree.fromstring(text.replace(found, put)))


def test_feeds_name_author_language_and_themselves(documents: dict[str, Any]) -> None:
    """Sections 4.1.1 (author, self link, one alternate link of a type and language) and 2 (xml:lang)."""
    for path, root in documents.items():
        assert root.xpath("a:author/a:name/text()", namespaces=ATOM) == ["Quillhaven Golf Club"]
        assert root.get("{http://www.w3.org/XML/1998/namespace}lang") == "en-GB"
        assert root.xpath("a:link[@rel='self']/@href", namespaces=ATOM) == [f"https://quillhaven.example/feeds/{path}"]
        assert root.xpath("a:link[@rel='alternate']/@href", namespaces=ATOM) == ["https://quillhaven.example/"]


def test_an_entry_has_content_and_an_alternate_link(documents: dict[str, Any]) -> None:
    """Sections 4.1.2 (needs one of the two, and a summary is no copy of the title), 4.2.7.2 (no rel is "alternate")."""
    for root in documents.values():
        for entry in root.xpath("a:entry", namespaces=ATOM):
            assert len(entry.xpath("a:link[not(@rel)]", namespaces=ATOM)) == 1
            assert entry.findtext("a:summary", namespaces=ATOM) != entry.findtext("a:title", namespaces=ATOM)


def test_content_is_escaped_html_without_elements_of_its_own(documents: dict[str, Any]) -> None:
    """Section 4.1.3.3: of type "html" the content is text, as it would stand in a div."""
    for root in documents.values():
        for content in root.xpath("a:entry/a:content", namespaces=ATOM):
            assert content.get("type") == "html"
            assert len(content) == 0
            assert content.text.startswith("<p>")
            assert not re.search(r"<(?:html|head|body|script|style)\b", content.text)


def test_dates_are_moments_with_zone_and_the_feed_is_as_new_as_its_newest_entry(documents: dict[str, Any]) -> None:
    """Sections 3.3 (RFC 3339, upper-case T), 4.2.9 and 4.2.15."""
    for root in documents.values():
        for moment in root.xpath("//a:updated/text() | //a:published/text()", namespaces=ATOM):
            assert RFC_3339.fullmatch(moment), moment
        entries = root.xpath("a:entry/a:updated/text()", namespaces=ATOM)
        assert root.findtext("a:updated", namespaces=ATOM) == entries[0]
        assert root.xpath("a:entry/a:published/text()", namespaces=ATOM) == entries


def test_ids_are_iris_one_for_each_entry_and_one_for_each_feed(documents: dict[str, Any]) -> None:
    """Section 4.2.6; documents of one feed share its id."""
    ids = {path: root.findtext("a:id", namespaces=ATOM) for path, root in documents.items()}
    for path, root in documents.items():
        assert ids[path] == f"https://quillhaven.example/feeds/{path.split('.')[0].split('/')[0]}.atom"
        entries = Counter(root.xpath("a:entry/a:id/text()", namespaces=ATOM))
        assert set(entries.values()) == {1}
        assert all(one.startswith("tag:quillhaven.example,2027-") for one in entries)


def test_archives_are_marked_and_current_documents_are_not(documents: dict[str, Any]) -> None:
    """RFC 5005, section 4."""
    marked = {path for path, root in documents.items() if root.xpath("fh:archive", namespaces=ATOM)}
    assert marked == {path for path in documents if "/" in path}
    assert "status/1.atom" in marked


def test_a_feed_reader_takes_it(demo_site: Path) -> None:
    feed = feedparser.parse((demo_site / "feeds" / "status.atom").read_bytes())
    assert not feed.bozo
    assert feed.version == "atom10"
    assert feed.feed.language == "en-GB"
    assert 50 <= len(feed.entries) < 75
    assert all(entry.content[0].type == "text/html" for entry in feed.entries)
