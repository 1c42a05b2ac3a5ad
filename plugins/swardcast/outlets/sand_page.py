"""A year's sand as a page for the committee: one file with everything in it. It is never published."""

from __future__ import annotations

from swardcast.outlets.committee_page import private_page
from swardcast.outlets.pictures.sand import draw_sand_in_print, draw_sand_store
from swardcast.planning.sand_notes import sand_notes
from swardcast.planning.sand_pictures import print_picture, store_picture
from swardcast.planning.sand_tables import sand_tables, sand_title
from swardcast.planning.sand_year import SandYear
from swardcast.records.club import Club
from swardcast.records.planning import Planning

__all__ = ["sand_page"]


def sand_page(year: SandYear, planning: Planning, club: Club) -> str:
    """Write a period's sand as a page.

    Args:
        year: the sand.
        planning: the club's prices.
        club: the club.

    Returns:
        A whole document in the club's language, with its styles and pictures; every text is escaped.
    """
    voice = club.voice(year.as_of.date())
    store, in_print = store_picture(year, voice), print_picture(year, voice)
    drawn = [(store.told, draw_sand_store(store))] if store is not None else []
    drawn.append((in_print.told, draw_sand_in_print(in_print)))
    return private_page(
        "sand.html",
        voice,
        club,
        year.as_of,
        drawn,
        title=sand_title(year, voice),
        notes=sand_notes(year, planning, voice),
        tables=sand_tables(year, planning, voice),
    )
