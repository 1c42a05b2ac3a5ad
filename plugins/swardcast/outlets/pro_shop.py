"""The page "For the pro shop": each current notice with its short address, subject line, message and e-mail.

Work whose day is over with no report of it, that nobody reports on any more, or that is postponed to no day, has
nothing new to tell once its last news is as old as an e-mail tells an end for: a text would only repeat that nobody
knows. It is named, with its notice.
"""

from __future__ import annotations

from collections.abc import Mapping

from swardcast.compose import Bulletin
from swardcast.notices.ends import stands_still
from swardcast.notices.notice import Notice
from swardcast.outlets.email_content import current_notices, email_of_notice
from swardcast.outlets.email_week import weekly_email
from swardcast.outlets.rendering import rendered
from swardcast.outlets.short_addresses import short_addresses
from swardcast.outlets.still_told import IN_EMAILS

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
    current = [notice for _, some in current_notices(bulletin) for notice in some]
    nothing_new = [notice for notice in current if _says_nothing_new(notice, bulletin)]
    return rendered(
        "pro_shop.html",
        bulletin.voice,
        weekly=weekly_email(bulletin),
        notices=[(notice, email_of_notice(notice, bulletin)) for notice in current if notice not in nothing_new],
        nothing_new=nothing_new,
        addresses=short_addresses(bulletin),
        messages=messages,
        root=root,
        drafts=drafts,
    )


def _says_nothing_new(notice: Notice, bulletin: Bulletin) -> bool:
    is_old = bulletin.as_of - notice.revised_at > IN_EMAILS
    return is_old and stands_still(bulletin.outlook.jobs[notice.id], bulletin.voice)
