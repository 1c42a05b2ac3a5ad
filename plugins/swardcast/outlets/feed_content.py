"""The HTML of a feed item: what changed, where to read how it stands now, and the notice as it stood then."""

from __future__ import annotations

from swardcast.compose import Bulletin
from swardcast.notices.as_told import NoticesAsTold
from swardcast.notices.bulletins import FeedItem
from swardcast.outlets.html import item_html, notice_html

__all__ = ["in_full", "in_short"]


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


def in_short(item: FeedItem, bulletin: Bulletin) -> str:
    """Render an item for an archive, which would grow too large with the notices.

    Args:
        item: the item.
        bulletin: the bulletin that has it.

    Returns:
        HTML with a link to the notice; links are absolute.
    """
    return item_html(item, "", bulletin.club.voice(item.at.date()), f"{bulletin.club.site}/")
