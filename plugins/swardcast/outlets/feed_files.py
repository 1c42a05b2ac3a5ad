"""Documents of feeds as files, whatever their format; an archive as it was written before, where it says the same."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from hashlib import sha256

from swardcast.artifact import Artifact
from swardcast.outlets.feeds import FeedPage
from swardcast.outlook.kept import Mark
from swardcast.outlook.recall import Recall

__all__ = ["Archived", "anew", "files_of", "written_again"]

Archived = Callable[[FeedPage, str, Callable[[FeedPage], bytes]], bytes]
"""Gives the bytes of an archive: of the document, the ending of its format, and what writes it."""


def anew(page: FeedPage, ending: str, write: Callable[[FeedPage], bytes]) -> bytes:
    """Write a document, whatever was written before: what `written_again` does where nothing is kept."""
    del ending
    return write(page)


def files_of(
    pages: Iterable[FeedPage], ending: str, media_type: str, write: Callable[[FeedPage], bytes], archived: Archived
) -> tuple[Artifact, ...]:
    """Write the documents of feeds in one format.

    Args:
        pages: the documents.
        ending: ending of the format's files, without the dot.
        media_type: its media type.
        write: gives the bytes of a document.
        archived: gives those of an archive, which hardly ever changes.

    Returns:
        A file for each.
    """

    def data_of(page: FeedPage) -> bytes:
        return write(page) if page.number is None else archived(page, ending, write)

    return tuple(Artifact(path=page.path(ending), media_type=media_type, data=data_of(page)) for page in pages)


def written_again(page: FeedPage, ending: str, write: Callable[[FeedPage], bytes], recall: Recall) -> bytes:
    """Give a document of a feed as it was written before, where all that it says is the same.

    Assumes that nothing but the document has a part in what is written: so it is, letter by letter, its own mark.

    Args:
        page: the document; it has an entry.
        ending: the ending of its format, such as "rss".
        write: writes it.
        recall: what was worked out before.

    Returns:
        Its bytes.
    """
    mark = Mark(until=page.updated, latest=None, digest=sha256(repr(page).encode()).hexdigest())
    return recall.again(page.path(ending), mark, bytes, lambda: write(page))
