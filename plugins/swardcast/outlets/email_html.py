"""An e-mail as HTML that mail programs show: tables, styles inlined, no script, nothing that is fetched.

Colours are said for light and for dark, and chosen so that a program that turns them itself leaves them readable.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from markupsafe import Markup, escape

from swardcast.language.voice import Voice
from swardcast.outlets.email_content import Email, EmailLink
from swardcast.outlets.own_words import own_words_for_mail
from swardcast.outlets.rendering import rendered
from swardcast.records.club import Club
from swardcast.records.weather import WeatherSource

__all__ = ["email_html"]


def email_html(email: Email, club: Club, voice: Voice, sources: Sequence[WeatherSource]) -> str:
    """Write an e-mail as HTML.

    Args:
        email: the e-mail.
        club: the club.
        voice: the language and the day of the reader.
        sources: services whose licences ask to be named.

    Returns:
        A whole document; every text is escaped, every link absolute.
    """
    from css_inline import CSSInliner  # noqa: PLC0415 - loaded late: only builds need it

    page = f"{club.site}/{email.folder}"
    written = rendered(
        "email.html",
        voice,
        email=email,
        club=club,
        colours=club.look.palette,
        sources=sources,
        own_words=partial(_own_words, page),
        linked=_linked,
    )
    return str(CSSInliner(load_remote_stylesheets=False).inline(written))


def _own_words(page: str, text: str) -> Markup:
    return Markup(own_words_for_mail(text, page))  # noqa: S704 - cleaned by nh3


def _linked(link: EmailLink) -> Markup:
    """A line with its address as a link."""
    address = escape(link.address)
    return escape(link.text).replace(address, Markup('<a href="{0}">{0}</a>').format(link.address))
