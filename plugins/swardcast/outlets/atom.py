"""Atom (RFC 4287) of course status: an entry for each change that members should hear of; archives as in RFC 5005.

All documents of a feed share its id, the address that its current document had first. `published` is the moment at
which a change became known, `updated` the same moment: a later change is an entry of its own. Only a note that was
withdrawn is updated, when it was.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from feedgen.feed import FeedGenerator

from swardcast.artifact import Artifact
from swardcast.outlets.feed_files import Archived, anew, files_of
from swardcast.outlets.feed_xml import begun
from swardcast.outlets.feeds import FeedEntry, FeedPage

__all__ = ["atom_artifacts"]

_ENDING: Final = "atom"
_MEDIA_TYPE: Final = "application/atom+xml"


def atom_artifacts(pages: Iterable[FeedPage], archived: Archived = anew) -> tuple[Artifact, ...]:
    """Write feeds as Atom.

    Args:
        pages: their documents.
        archived: gives the bytes of an archive.

    Returns:
        A file for each, without a byte that depends on the clock.
    """
    return files_of(pages, _ENDING, _MEDIA_TYPE, lambda page: _feed(page).atom_str(pretty=True), archived)


def _feed(page: FeedPage) -> FeedGenerator:
    feed = begun(page, _ENDING, _MEDIA_TYPE)
    links = page.links(_ENDING)
    feed.id(links.get("current", links["self"]).replace(page.site, page.named_by, 1))
    feed.subtitle(page.feed.description)
    for entry in page.entries:
        _add(feed, entry)
    return feed


def _add(feed: FeedGenerator, entry: FeedEntry) -> None:
    written = feed.add_entry(order="append")
    written.id(entry.id)
    written.title(entry.title)
    written.link(href=entry.link)  # without rel it is the alternate one (section 4.2.7.2)
    written.published(entry.published)
    written.updated(entry.updated)
    written.category(term=entry.category)
    written.content(entry.html, type="html")
    written.summary(entry.summary)
