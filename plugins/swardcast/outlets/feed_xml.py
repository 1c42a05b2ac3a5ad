"""What RSS and Atom share on the way to XML: links between the documents of a feed, and the mark of an archive."""

from __future__ import annotations

from typing import Any

from feedgen.ext.base import BaseExtension
from feedgen.feed import FeedGenerator
from feedgen.util import xml_elem

from swardcast.outlets.feeds import FeedPage

__all__ = ["begun"]

_ATOM = "http://www.w3.org/2005/Atom"
_HISTORY = "http://purl.org/syndication/history/1.0"


class _Archiving(BaseExtension):  # type: ignore[misc] # feedgen has no types
    """Elements of RFC 5005: `fh:archive`, and in RSS the links that feedgen leaves out (appendix B)."""

    def __init__(self) -> None:
        self.is_archive = False
        self.links: dict[str, str] = {}
        self.media_type = ""

    def extend_ns(self) -> dict[str, str]:
        return {"fh": _HISTORY}

    def extend_rss(self, feed: Any) -> Any:
        channel = feed[0]
        for relation, address in self.links.items():
            xml_elem(f"{{{_ATOM}}}link", channel, rel=relation, href=address, type=self.media_type)
        return self._marked(channel)

    def extend_atom(self, feed: Any) -> Any:
        return self._marked(feed)

    def _marked(self, head: Any) -> Any:
        if self.is_archive:
            xml_elem(f"{{{_HISTORY}}}archive", head)
        return head


def begun(page: FeedPage, ending: str, media_type: str) -> FeedGenerator:
    """Begin a document: title, links, language, author and the moment of its latest change.

    Args:
        page: the document.
        ending: the format's, such as "rss".
        media_type: the format's.

    Returns:
        feedgen's own feed, without entries and without a byte of the clock.
    """
    feed = FeedGenerator()
    feed.title(page.feed.title)
    feed.language(page.language)
    feed.author(name=page.author, uri=f"{page.site}/")
    feed.generator("Swardcast")
    feed.updated(page.updated)  # of RSS, the date of the last build: feedgen would read the clock for both
    links = page.links(ending)
    for relation, address in links.items():
        feed.link(href=address, rel=relation, type=media_type)
    feed.link(href=f"{page.site}/", rel="alternate", type="text/html")  # feedgen takes the last one for RSS
    feed.register_extension("archiving", _Archiving)
    feed.archiving.is_archive = page.number is not None
    feed.archiving.links = {relation: address for relation, address in links.items() if relation != "self"}
    feed.archiving.media_type = media_type
    return feed
