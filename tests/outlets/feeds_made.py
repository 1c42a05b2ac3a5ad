"""Feeds of a bulletin as files, with short content where a test does not look at it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import timedelta

from markupsafe import escape

from swardcast.artifact import Artifact
from swardcast.compose import Bulletin
from swardcast.notices.bulletins import FeedItem
from swardcast.outlets.atom import atom_artifacts
from swardcast.outlets.feeds import FeedPage, feed_pages
from swardcast.outlets.json_feed import json_artifacts
from swardcast.outlets.rss import rss_artifacts

__all__ = ["files_of", "pages_of", "with_items"]


def _title_alone(item: FeedItem) -> str:
    return f"<p>{escape(item.title)}</p>"


def pages_of(bulletin: Bulletin) -> tuple[FeedPage, ...]:
    """All documents of all feeds."""
    return feed_pages(bulletin, _title_alone, _title_alone)


def files_of(pages: Iterable[FeedPage]) -> dict[str, Artifact]:
    """The documents in all three formats, by path."""
    pages = tuple(pages)
    files = (*rss_artifacts(pages), *atom_artifacts(pages), *json_artifacts(pages))
    return {file.path: file for file in files}


def with_items(bulletin: Bulletin, count: int, *, apart: timedelta = timedelta(hours=1)) -> Bulletin:
    """A bulletin with as many made items about the course, as far apart; "0" is the oldest."""
    begin, like = bulletin.items[-1].at, bulletin.items[-1]
    items = [replace(like, id=str(n), title=f"item {n}", at=begin + n * apart, kinds=frozenset()) for n in range(count)]
    return replace(bulletin, items=tuple(reversed(items)))
