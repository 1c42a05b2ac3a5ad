"""JSON Feed 1.1 (https://www.jsonfeed.org/version/1.1/) of course status.

`feed_url` names the feed for life and is the address of its current document in archives too; `next_url` leads to the
older items.
"""

from __future__ import annotations

import json
from collections.abc import Iterable
from typing import Final

from swardcast.artifact import Artifact
from swardcast.outlets.feed_files import Archived, anew, files_of
from swardcast.outlets.feeds import FeedEntry, FeedPage

__all__ = ["json_artifacts"]

_ENDING: Final = "json"
_MEDIA_TYPE: Final = "application/feed+json"


def json_artifacts(pages: Iterable[FeedPage], archived: Archived = anew) -> tuple[Artifact, ...]:
    """Write feeds as JSON Feed.

    Args:
        pages: their documents.
        archived: gives the bytes of an archive.

    Returns:
        A file for each, without a byte that depends on the clock.
    """
    return files_of(pages, _ENDING, _MEDIA_TYPE, _written, archived)


def _written(page: FeedPage) -> bytes:
    return (json.dumps(_feed(page), ensure_ascii=False, indent=1) + "\n").encode()


def _feed(page: FeedPage) -> dict[str, object]:
    links = page.links(_ENDING)
    older = {"next_url": links["prev-archive"]} if "prev-archive" in links else {}
    return {
        "version": "https://jsonfeed.org/version/1.1",
        "title": page.feed.title,
        "home_page_url": f"{page.site}/",
        "feed_url": links.get("current", links["self"]),
        "description": page.feed.description,
        **older,
        "authors": [{"name": page.author, "url": f"{page.site}/"}],
        "language": page.language,
        "items": [_item(entry) for entry in page.entries],
    }


def _item(entry: FeedEntry) -> dict[str, object]:
    return {
        "id": entry.id,
        "url": entry.link,
        "title": entry.title,
        "content_html": entry.html,
        "summary": entry.summary,
        "date_published": entry.published.isoformat(),
        "date_modified": entry.updated.isoformat(),
        "tags": [entry.category],
    }
