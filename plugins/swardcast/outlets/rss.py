"""RSS 2.0 of course status: an item for each change that members should hear of.

Follows the RSS 2.0 specification and the RSS Advisory Board's Best Practices Profile: a self link, guids that are
no permalinks, RFC 822 dates with a numeric zone, absolute links, descriptions that are HTML, the full notice in
content:encoded. Readers decide what is new by the guid, so each change is an item of its own.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from html import escape
from typing import Final
from urllib.parse import urlsplit

from feedgen.feed import FeedGenerator

from swardcast.artifact import Artifact
from swardcast.compose import Bulletin
from swardcast.notices.bulletins import FeedItem

__all__ = ["FEED_PATH", "guid_of", "rss_artifact"]

FEED_PATH: Final = "feeds/status.rss"
_NEWEST: Final = 50
_MINUTES_TO_LIVE: Final = 60


def guid_of(item: FeedItem, site: str) -> str:
    """Name an item for life, as a tag URI (RFC 4151) of the club's site.

    Args:
        item: the item.
        site: the site's address.

    Returns:
        "tag:quillhaven.example,2027-08-23:greens/2027-08-23-1540-done".
    """
    return f"tag:{urlsplit(site).hostname},{item.at.date().isoformat()}:{item.id}"


def rss_artifact(bulletin: Bulletin, content_of: Callable[[FeedItem], str]) -> Artifact:
    """Write the feed.

    Args:
        bulletin: the bulletin.
        content_of: gives the HTML of an item.

    Returns:
        The feed, without a byte that depends on the clock.
    """
    club = bulletin.club
    items = bulletin.items[:_NEWEST]
    feed = FeedGenerator()
    feed.title(bulletin.voice.say("site-feed", club=club.name))
    feed.link(href=f"{club.site}/{FEED_PATH}", rel="self", type="application/rss+xml")
    feed.link(href=f"{club.site}/", rel="alternate")  # feedgen takes the last one as the channel's link
    feed.description(escape(bulletin.voice.say("site-feed-description", club=club.name), quote=False))
    feed.language(club.language)
    feed.ttl(_MINUTES_TO_LIVE)
    feed.generator("Swardcast")
    feed.docs("https://www.rssboard.org/rss-specification")
    feed.lastBuildDate(_latest(items, bulletin.as_of))
    for item in items:
        _add(feed, item, club.site, content_of(item))
    return Artifact(path=FEED_PATH, media_type="application/rss+xml", data=feed.rss_str(pretty=True))


def _latest(items: tuple[FeedItem, ...], as_of: datetime) -> datetime:
    return items[0].at if items else as_of


def _add(feed: FeedGenerator, item: FeedItem, site: str, content: str) -> None:
    entry = feed.add_entry(order="append")
    entry.title(item.title)
    entry.link(href=f"{site}/notices/{item.notice_id}/" if item.notice_id else f"{site}/")
    entry.guid(guid_of(item, site), permalink=False)
    entry.published(item.at)
    entry.updated(item.at)  # feedgen would read the clock
    entry.category(term=item.category)
    entry.description(escape(" ".join(item.sentences), quote=False))
    entry.content(content, type="CDATA")
