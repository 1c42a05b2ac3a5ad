"""A page for the committee on when to do a job: one file with everything in it. It is never published."""

from __future__ import annotations

from swardcast.outlets.committee_page import private_page
from swardcast.outlets.pictures.first_days import draw_first_days
from swardcast.outlets.saying import isolated
from swardcast.planning.date_notes import date_notes
from swardcast.planning.date_picture import first_days
from swardcast.planning.date_tables import date_reasons, date_tables, date_title
from swardcast.planning.dates import Dates
from swardcast.records.folder import ClubRecords

__all__ = ["dates_page"]


def dates_page(dates: Dates, records: ClubRecords) -> str:
    """Write when to do a job as a page.

    Args:
        dates: what was found.
        records: the club's records, with what it keeps to itself.

    Returns:
        A whole document in the club's language, with its styles and its picture; every text is escaped.
    """
    voice = records.club.voice(dates.as_of.date())
    picture = first_days(dates, records.fixtures, voice)
    return private_page(
        "first_days.html",
        voice,
        records.club,
        dates.as_of,
        [(picture.told, draw_first_days(picture))] if picture is not None else [],
        title=isolated(date_title(dates, voice), dates.asked.name),
        notes=date_notes(dates, records, voice),
        tables=date_tables(dates, records.planning, voice),
        reasons=date_reasons(dates, records.planning, voice),
    )
