"""The committee's report as a page: one file with its pictures inside, to be opened, sent or printed on A4."""

from __future__ import annotations

from typing import Final

from markupsafe import Markup

from swardcast.language.voice import Voice
from swardcast.notices.promises_picture import PromisesPicture
from swardcast.outlets.committee_page import one_file, style_of
from swardcast.outlets.pictures.figure import figure_html
from swardcast.outlets.pictures.promises import draw_promises
from swardcast.outlets.pictures.readings import draw_readings
from swardcast.planning.report_readings_picture import ReadingsPicture
from swardcast.planning.report_sections import ReportInWords
from swardcast.records.club import Club

__all__ = ["report_page"]

_SHEETS: Final = ("committee.css", "report.css")
_MOST_ROWS: Final = 10  # of a table that is kept on one printed page: judgement


def report_page(report: ReportInWords, club: Club, voice: Voice) -> str:
    """Write a report as a page.

    Args:
        report: the report.
        club: the club.
        voice: the language and the day of the report.

    Returns:
        A whole document in the club's language, with its styles and its pictures; every text is escaped.
    """
    return one_file(
        "report.html",
        voice,
        club.name,
        _style(voice),
        title=report.title,
        private=report.made,
        report=report,
        pictures={
            section.name: [(one.told.title, _picture(one, voice)) for one in section.pictures]
            for section in report.sections
        },
        most_rows=_MOST_ROWS,
    )


def _picture(picture: ReadingsPicture | PromisesPicture, voice: Voice) -> Markup:
    drawing = draw_promises(picture) if isinstance(picture, PromisesPicture) else draw_readings(picture)
    return figure_html(picture.told, drawing, voice)


def _style(voice: Voice) -> str:
    private = _css_string(voice.say("report-on-each-page"))
    return f"{style_of(*_SHEETS)}\n@page {{ @top-center {{ content: {private}; }} }}"


def _css_string(text: str) -> str:
    """A string of CSS (CSS Syntax Level 3): letters, digits and blanks stand for themselves, all else by its number."""
    return '"' + "".join(sign if sign.isalnum() or sign == " " else f"\\{ord(sign):x} " for sign in text) + '"'
