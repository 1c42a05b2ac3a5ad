"""A page for the committee: one file with everything in it, to be opened, sent or printed. It is never published."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime
from importlib.resources import files
from typing import Final

from markupsafe import Markup

from swardcast.language.voice import Voice
from swardcast.notices.pictures import Told
from swardcast.outlets.pictures.figure import figure_html
from swardcast.outlets.pictures.trade_off import draw_trade_off
from swardcast.outlets.rendering import rendered
from swardcast.planning.compare import Comparison
from swardcast.planning.notes import made_in_words, notes_beside
from swardcast.planning.tables import fixture_key, tables_of, title_of
from swardcast.planning.trade_off import trade_off
from swardcast.records.club import Club
from swardcast.records.planning import Planning

__all__ = ["MARK", "committee_page", "one_file", "private_page", "style_of"]

MARK: Final = '<meta name="swardcast" content="private page for the committee">'
"""What such a page has in its head, by which it is known again."""


def committee_page(comparison: Comparison, planning: Planning, club: Club) -> str:
    """Write a comparison as a page.

    Args:
        comparison: the comparison, its rows in the order wanted.
        planning: the club's prices and aims.
        club: the club.

    Returns:
        A whole document in the club's language, with its styles and its picture; every text is escaped.
    """
    voice = club.voice(comparison.as_of.date())
    picture = trade_off(comparison, voice)
    return private_page(
        "committee.html",
        voice,
        club,
        comparison.as_of,
        [(picture.told, draw_trade_off(picture))] if picture is not None else [],
        title=title_of(comparison, voice),
        notes=notes_beside(comparison, planning, voice),
        tables=tables_of(comparison, planning, voice),
        fixtures=fixture_key(comparison, voice),
    )


def private_page(
    template: str, voice: Voice, club: Club, made: datetime, pictures: Iterable[tuple[Told, str]], **values: object
) -> str:
    """Render a page for the committee with its pictures, and with the moment at which it was made.

    Args:
        template: the template's file name.
        voice: the language and the day of the reader.
        club: the club.
        made: that moment, local.
        pictures: its pictures in words, each with its drawing.
        **values: what else it shows, by name: its title, notes and tables at least.

    Returns:
        A whole document; every text is escaped.
    """
    return one_file(
        template,
        voice,
        club.name,
        style_of("committee.css"),
        private=made_in_words(made, voice),
        pictures=[(told.title, figure_html(told, drawing, voice)) for told, drawing in pictures],
        **values,
    )


def one_file(template: str, voice: Voice, owner: str, style: str, **values: object) -> str:
    """Render a private page, with its mark and its styles.

    Args:
        template: the template's file name.
        voice: the language and the day of the reader.
        owner: whose page it is: the club's name.
        style: its styles: our own rules, what else they hold written as strings of CSS.
        **values: what else it shows, by name: its title, and that it is private, at least.

    Returns:
        A whole document; every text is escaped.
    """
    return rendered(
        template,
        voice,
        mark=Markup(MARK),  # noqa: S704 - ours
        style=Markup(style),  # noqa: S704 - ours
        owner=owner,
        **values,
    )


def style_of(*sheets: str) -> str:
    """Read style sheets of private pages.

    Args:
        *sheets: their file names.

    Returns:
        Their rules, one sheet after the other.
    """
    static = files("swardcast.outlets").joinpath("static")
    return "\n".join(static.joinpath(name).read_text(encoding="utf-8") for name in sheets)
