"""The committee's report as Markdown: CommonMark, with tables in pipes as GitHub Flavored Markdown has them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from swardcast.notices.pictures import Table
from swardcast.outlets.committee_page import MARK
from swardcast.planning.report_sections import ReportInWords

__all__ = ["report_markdown"]

_SIGNS: Final = re.compile(r"([\\`*_{}\[\]<>|&~])")
"""Signs that mean something inside a line (CommonMark 0.31.2, section 2.4: a backslash takes the meaning away)."""
_BEGINNINGS: Final = re.compile(r"^(\d+)?([#+\-=.)])")
"""Signs that mean something where a line begins with them, or with a number and them."""


def report_markdown(report: ReportInWords, club: str) -> str:
    """Write a report as Markdown.

    Args:
        report: the report.
        club: the club's name.

    Returns:
        Text with the mark of private pages in its first line; what was typed keeps its signs without their meaning.
    """
    lines = [f"<!-- {MARK} -->", "", f"# {_plain(report.title)}", "", _line(club), "", f"**{_plain(report.made)}**", ""]
    for sentence in report.lead:
        lines += [_line(sentence), ""]
    for section in report.sections:
        lines += [f"## {_plain(section.title)}", ""]
        if section.lines:
            lines += [*(f"- {_line(line)}" for line in section.lines), ""]
        for sentence in section.sentences:
            lines += [_line(sentence), ""]
        for table in section.tables:
            lines += [*_table(table), ""]
        for note in section.notes:
            lines += [_line(note), ""]
    return "\n".join(lines).rstrip("\n") + "\n"


def _table(table: Table) -> Iterator[str]:
    yield f"**{_plain(table.caption)}**"
    yield ""
    yield _row(table.columns)
    yield _row(["---"] * len(table.columns), escaped=False)
    for row in table.rows:
        yield _row(row)


def _row(cells: tuple[str, ...] | list[str], *, escaped: bool = True) -> str:
    return f"| {' | '.join(map(_plain, cells) if escaped else cells)} |"


def _line(text: str) -> str:
    """A line that begins a block."""
    return _BEGINNINGS.sub(lambda found: f"{found[1] or ''}\\{found[2]}", _plain(text))


def _plain(text: str) -> str:
    """Words on one line, whose signs mean nothing."""
    return _SIGNS.sub(r"\\\1", " ".join(text.split()))
