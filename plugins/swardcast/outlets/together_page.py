"""A page for the committee on days for several jobs: one file with everything in it. It is never published."""

from __future__ import annotations

from swardcast.outlets.committee_page import private_page
from swardcast.outlets.pictures.days_trade_offs import draw_days_trade_offs
from swardcast.planning.programme import Together
from swardcast.planning.programme_notes import blame_in_words, together_notes
from swardcast.planning.programme_tables import together_reasons, together_tables, together_title
from swardcast.planning.together_picture import days_trade_offs
from swardcast.records.folder import ClubRecords

__all__ = ["together_page"]


def together_page(together: Together, records: ClubRecords) -> str:
    """Write days for several jobs as a page.

    Args:
        together: what was found.
        records: the club's records, with what it keeps to itself.

    Returns:
        A whole document in the club's language, with its styles and its picture; every text is escaped. Where the jobs
        cannot all be done it says why.
    """
    voice = records.club.voice(together.as_of.date())
    picture = days_trade_offs(together, voice)
    reasons = together_reasons(together, voice)
    notes = together_notes(together, records, voice)
    if together.blame is not None:
        key = [voice.say("together-key", letter=letter, job=job) for letter, job in reasons]
        notes = (blame_in_words(together, voice), *key, *notes)
    return private_page(
        "first_days.html",
        voice,
        records.club,
        together.as_of,
        [(picture.told, draw_days_trade_offs(picture))] if picture is not None else [],
        title=together_title(together, voice),
        notes=notes,
        tables=together_tables(together, voice),
        reasons=reasons,
    )
