"""Calendar files as text for tests, and what is read from them."""

from __future__ import annotations

from datetime import date
from zoneinfo import ZoneInfo

from swardcast.errors import Problem
from swardcast.reading.fixtures_file import fixtures_from
from swardcast.records.fixtures import Fixture

LONDON = ZoneInfo("Europe/London")
MEDAL = ("UID:medal", "SUMMARY:Medal")


def calendar(*events: tuple[str, ...], head: str = "") -> str:
    """A calendar of events, each told by its properties; the first event begins on line 4 where there is no head."""
    parts = "".join("\n".join(("BEGIN:VEVENT", *event, "END:VEVENT", "")) for event in events)
    return f"BEGIN:VCALENDAR\nVERSION:2.0\nPRODID:-//Tests//EN\n{head}{parts}END:VCALENDAR\n"


def read(
    text: str, *, first: date = date(2027, 1, 1), last: date = date(2028, 12, 31), zone: ZoneInfo = LONDON
) -> tuple[Fixture, ...]:
    """The fixtures of a file that is in order."""
    problems: list[Problem] = []
    fixtures = fixtures_from(text, file="fixtures.ics", zone=zone, days=(first, last), problems=problems)
    assert [str(problem) for problem in problems] == []
    return fixtures


def said(text: str) -> list[str]:
    """Everything that is said about a file that is not."""
    problems: list[Problem] = []
    fixtures_from(
        text, file="fixtures.ics", zone=LONDON, days=(date(2027, 1, 1), date(2028, 12, 31)), problems=problems
    )
    return [str(problem) for problem in sorted(problems, key=lambda problem: problem.sort_key)]
