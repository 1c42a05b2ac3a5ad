"""A page for the committee: one file with everything in it, to be opened, sent or printed. It is never published."""

from __future__ import annotations

from importlib.resources import files
from typing import Final

from markupsafe import Markup

from swardcast.outlets.pictures.figure import trade_off_html
from swardcast.outlets.rendering import rendered
from swardcast.planning.compare import Comparison
from swardcast.planning.notes import notes_beside
from swardcast.planning.tables import fixture_key, tables_of, title_of
from swardcast.planning.trade_off import trade_off
from swardcast.records.club import Club
from swardcast.records.planning import Planning

__all__ = ["MARK", "committee_page", "committee_style"]

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
    return rendered(
        "committee.html",
        voice,
        mark=Markup(MARK),  # noqa: S704 - ours
        style=Markup(committee_style()),  # noqa: S704 - ours
        title=title_of(comparison, voice),
        club=club,
        made=voice.say("planning-made", moment=voice.moment(comparison.as_of)),
        notes=notes_beside(comparison, planning, voice),
        picture=trade_off_html(picture, voice) if picture is not None else "",
        tables=tables_of(comparison, planning, voice),
        fixtures=fixture_key(comparison, voice),
    )


def committee_style() -> str:
    """The styles of pages for the committee."""
    return files("swardcast.outlets").joinpath("static", "committee.css").read_text(encoding="utf-8")
