"""The page "For the pro shop": each current notice with its short address, subject line, message and e-mail."""

from __future__ import annotations

from collections.abc import Mapping

from swardcast.compose import Bulletin
from swardcast.outlets.email_content import current_notices, email_of_notice
from swardcast.outlets.email_week import weekly_email
from swardcast.outlets.rendering import rendered
from swardcast.outlets.short_addresses import short_addresses

__all__ = ["pro_shop_html"]


def pro_shop_html(bulletin: Bulletin, messages: Mapping[str, str], root: str, *, drafts: bool) -> str:
    """Render the list of what the pro shop can paste and send.

    Args:
        bulletin: the bulletin.
        messages: the short message of each notice, by its id.
        root: address of the site's first page, ending with a slash.
        drafts: whether there are drafts for mail programs.

    Returns:
        HTML without the title; every text is escaped. It works without a script, which only copies.
    """
    notices = [notice for _, some in current_notices(bulletin) for notice in some]
    return rendered(
        "pro_shop.html",
        bulletin.voice,
        weekly=weekly_email(bulletin),
        notices=[(notice, email_of_notice(notice, bulletin)) for notice in notices],
        addresses=short_addresses(bulletin),
        messages=messages,
        root=root,
        drafts=drafts,
    )
