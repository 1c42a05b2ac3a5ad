"""A surface that was opened after the work and is closed again while it heals: in the season and in the calendar."""

from __future__ import annotations

from pathlib import Path

import pytest

from swardcast.compose import Bulletin, compose_bulletin, season_of
from swardcast.notices.calendar_story import CalendarEvent
from tests.outlook.small_club import SmallClub, moment

NORMAL = "usually between Tuesday 3 August and Tuesday 10 August"


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    """Turfed on 1 June, opened on the 10th, closed on the 17th; back to normal 9 to 10 weeks after the work."""
    club = SmallClub(tmp_path)
    weeks = "    reopens after: {from: 1 to 2 weeks, source: us}\n    normal after: {from: 9 to 10 weeks, source: us}\n"
    club.job("turf", "06-01", "re-turfing", surfaces="tee 1", more=weeks)
    club.done("turf", "06-01")
    club.log("open", "06-10", "morning status", "play: {the whole course: open}", time="06:40")
    club.log("shut", "06-17", "morning status", "play: {the whole course: open, tee 1: closed}", time="06:40")
    return club


def bulletin_of(club: SmallClub, day: str) -> Bulletin:
    return compose_bulletin(club.records(), moment(day))


def told(club: SmallClub, day: str, occasion: str) -> tuple[str, str]:
    """An event's summary and its sentences."""
    (event,) = (one for one in bulletin_of(club, day).calendar if one.id.startswith(f"turf/{occasion}"))
    return plain(event.summary), plain(_sentences(event))


def _sentences(event: CalendarEvent) -> str:
    return " ".join(event.sentences)


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


@pytest.mark.parametrize(("day", "is_closed"), [("06-12", False), ("06-18", True), ("07-15", True)])
def test_the_season_tells_it_in_the_readers_month_even_where_the_work_heals_all_month(
    club: SmallClub, day: str, is_closed: bool
) -> None:
    *earlier, now = (one for month in season_of(bulletin_of(club, day)).months for one in month.healing)
    said = f"Back to normal: {NORMAL}"
    assert [plain(one.when) for one in earlier] == [said] * len(earlier)
    assert plain(now.when) == (f"{said}. Tee 1 closed again; no day is known yet" if is_closed else said)
    assert not now.goes_on


def test_the_calendar_tells_it_at_the_day_of_the_opening_until_the_surface_is_open_once_more(club: SmallClub) -> None:
    assert told(club, "06-12", "reopening")[0] == "Tee 1 open again"
    assert told(club, "06-18", "reopening")[0] == "Tee 1 open again, then closed again"
    club.log("again", "06-25", "morning status", "play: {the whole course: open}", time="06:40")
    assert told(club, "06-26", "reopening")[0] == "Tee 1 open again"


@pytest.mark.parametrize(
    ("day", "said"),
    [
        ("06-12", "The work on tee 1 is done; open again: on Thursday 10 June."),
        (
            "06-18",
            "The work on tee 1 is done. It was opened on Thursday 10 June and is closed again; no day is known yet.",
        ),
    ],
)
def test_the_event_of_the_healing_says_what_the_notice_said_when_it_was_told(
    club: SmallClub, day: str, said: str
) -> None:
    summary, sentences = told(club, day, "healing")
    assert summary == f"Tee 1 not yet back to normal: {NORMAL}"
    assert f"{said} Back to normal: {NORMAL}." in sentences
    (notice,) = bulletin_of(club, day).notices
    assert said in plain(notice.short_answer)


def test_once_the_healing_is_over_its_event_does_not_call_a_surface_unopened_that_was_opened(club: SmallClub) -> None:
    """The last news was on 1 June, when nothing was open yet; the day to allow until went by on 10 August."""
    summary, sentences = told(club, "08-12", "healing")
    assert summary == "Tee 1 should be back to normal"
    assert "nobody has reported it as open" not in sentences
