"""RSS 2.0 of course status: an item for each change that members should hear of.

Follows the RSS 2.0 specification and the RSS Advisory Board's Best Practices Profile: a self link, guids that are
no permalinks, RFC 822 dates with a numeric zone, absolute links, descriptions that are HTML, the full notice in
content:encoded. Readers decide what is new by the guid, so each change is an item of its own. Archives as in RFC 5005,
appendix B.
"""

from __future__ import annotations

from collections.abc import Iterable
from html import escape
from typing import Final

from feedgen.feed import FeedGenerator

from swardcast.artifact import Artifact
from swardcast.outlets.feed_files import Archived, anew, files_of
from swardcast.outlets.feed_xml import begun
from swardcast.outlets.feeds import FeedEntry, FeedPage

__all__ = ["rss_artifacts"]

_ENDING: Final = "rss"
_MEDIA_TYPE: Final = "application/rss+xml"
_MINUTES_TO_LIVE: Final = 60


def rss_artifacts(pages: Iterable[FeedPage], archived: Archived = anew) -> tuple[Artifact, ...]:
    """Write feeds as RSS.

    Args:
        pages: their documents.
        archived: gives the bytes of an archive.

    Returns:
        A file for each, without a byte that depends on the clock.
    """
    return files_of(pages, _ENDING, _MEDIA_TYPE, lambda page: _feed(page).rss_str(pretty=True), archived)


def _feed(page: FeedPage) -> FeedGenerator:
    feed = begun(page, _ENDING, _MEDIA_TYPE)
    feed.description(escape(page.feed.description, quote=False))
    feed.ttl(_MINUTES_TO_LIVE)
    feed.docs("https://www.rssboard.org/rss-specification")
    for entry in page.entries:
        _add(feed, entry)
    return feed


def _add(feed: FeedGenerator, entry: FeedEntry) -> None:
    item = feed.add_entry(order="append")
    item.title(entry.title)
    item.link(href=entry.link)
    item.guid(entry.id, permalink=False)
    item.published(entry.published)
    item.updated(entry.updated)  # feedgen would read the clock
    item.category(term=entry.category)
    item.description(escape(entry.summary, quote=False))
    item.content(entry.html, type="CDATA")
