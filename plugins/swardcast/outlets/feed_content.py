"""The HTML of a feed item: what changed, where to read how it stands now, and the notice as it stood then."""

from __future__ import annotations

from collections.abc import Callable

from swardcast.compose import Bulletin
from swardcast.notices.as_told import NoticesAsTold
from swardcast.notices.bulletins import FeedItem
from swardcast.outlets.html import item_html, notice_html
from swardcast.outlook.recall import Recall
from swardcast.records.standing import notes_withdrawn

__all__ = ["in_full", "in_full_again", "in_short"]


def in_full(item: FeedItem, bulletin: Bulletin, notices: NoticesAsTold) -> str:
    """Render an item for a current document; a later bulletin renders it the same.

    Args:
        item: the item.
        bulletin: the bulletin that has it.
        notices: its notices as they stood at earlier moments.

    Returns:
        HTML with the whole notice as it stood when the item was told; links are absolute.
    """
    told = notices.of(item)
    voice, root = bulletin.club.voice(item.at.date()), f"{bulletin.club.site}/"
    return item_html(item, notice_html(told, voice, root) if told else "", voice, root)


def in_full_again(item: FeedItem, bulletin: Bulletin, recall: Recall, whole: Callable[[FeedItem], str]) -> str:
    """Give an item for a current document as it was rendered before, where all that has a part in it is the same.

    Args:
        item: the item.
        bulletin: the bulletin that has it.
        recall: what was worked out before.
        whole: renders it.

    Returns:
        HTML, that which `in_full` gives.
    """
    if not item.notice_id:
        return whole(item)
    parts = (item.id, item.title, item.sentences, item.category, item.markdown, item.withdrawn_at)
    silent = sorted(notes_withdrawn(bulletin.records))  # they have lost their words
    mark = recall.digests.mark_of_words(item.notice_id, item.at, repr((parts, silent)))
    return recall.again(f"feed/{item.id}", mark, str, lambda: str(whole(item)))


def in_short(item: FeedItem, bulletin: Bulletin) -> str:
    """Render an item for an archive, which would grow too large with the notices.

    Args:
        item: the item.
        bulletin: the bulletin that has it.

    Returns:
        HTML with a link to the notice; links are absolute.
    """
    return item_html(item, "", bulletin.club.voice(item.at.date()), f"{bulletin.club.site}/")
