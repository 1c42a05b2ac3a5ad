"""A job that is postponed while no new day is known: what members read until there is one, in every place."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.entering.understanding import understand
from swardcast.errors import InputNeedsAttention
from swardcast.notices.calendar import DaySpan, Standing
from swardcast.notices.calendar_story import CalendarEvent, calendar_of
from swardcast.notices.notice import text_of
from swardcast.outlets.open_graph import OpenGraph
from swardcast.outlets.structured_data import notice_data
from swardcast.outlook.oversights import LeftOpen
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.plan import Part
from tests.outlook.small_club import SmallClub, moment

WHY = "because: the climber is ill"


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    """Tree work planned for 10 May, tining for 12 May; on 8 May the tree work is postponed."""
    small = SmallClub(tmp_path)
    small.job("tree", "05-10", "tree work", surfaces="tee 1")
    small.job("spring", "05-12")
    small.log("off", "05-08", "change of plan", "job: tree", "change: postponed", WHY)
    small.log("off-2", "05-08", "change of plan", "job: spring", "change: postponed", "because: the machine is broken")
    return small


def bulletin(club: SmallClub, day: str) -> Bulletin:
    return compose_bulletin(club.records(), moment(day))


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def events(club: SmallClub, day: str, job: str = "tree") -> dict[str, CalendarEvent]:
    records = club.records()
    book = WeatherBook(records.club, records.weather)
    told = compose_bulletin(records, moment(day), book)
    return {one.id: one for one in calendar_of(told.stories[job], records, moment(day), book)}


@pytest.mark.parametrize("day", ["05-08", "05-09", "05-20"])  # before its old day, and after it
def test_the_notice_says_that_no_day_is_known_and_tells_no_date(club: SmallClub, day: str) -> None:
    told = bulletin(club, day)
    by_id = {notice.id: notice for notice in told.notices}
    tree, spring = by_id["tree"], by_id["spring"]
    assert plain(tree.headline) == "Tree work, tee 1: postponed; no new day yet"
    assert (tree.work, tree.when) == ("postponed", "postponed; no new day yet")
    assert plain(tree.short_answer) == ("This work is postponed, and no new day is known yet: the climber is ill.")
    assert plain(spring.short_answer) == (
        "This work is postponed, and no new day is known yet: the machine is broken."
        " Back to normal: no date until the work is done."
    )
    assert [plain(one.in_short[0]) for one in (tree, spring)] == [
        "Tree work, tee 1: postponed; no new day yet.",
        "Spring work, greens 1 and 2: postponed; no new day yet. Back to normal: no date until the work is done.",
    ]
    for notice in (tree, spring):
        for section in notice.sections:
            said = " ".join([f"{fact.name} {fact.value}" for fact in section.facts])
            assert "likely" not in said, (notice.id, said)
        (how,) = (section for section in notice.sections if section.part is Part.HOW_THE_DATE)
        said = " ".join(map(text_of, how.paragraphs))
        assert said == "There is no date now: the work is postponed, and no new day is known."
    assert [(work.when, plain(work.normal)) for work in told.status.coming] == [
        ("postponed; no new day yet", "Work finished: no day known yet"),
        ("postponed; no new day yet", "Back to normal: no date until the work is done"),
    ]


def test_members_hear_of_it_once_and_of_the_new_day_when_there_is_one(club: SmallClub) -> None:
    club.log("again", "05-20", "change of plan", "job: tree", "change: postponed to", "starts: 2027-06-01", WHY)
    items = [item for item in bulletin(club, "05-25").items if item.notice_id == "tree"]
    assert [plain(item.title) for item in reversed(items)] == [
        "Planned from Monday 10 May: Tree work",
        "Tee 1: postponed; no new day yet (Tree work)",
        "Now from Tuesday 1 June: Tree work",
    ]
    assert [plain(said) for said in items[1].sentences] == [
        "Postponed, no new day is known yet: the climber is ill.",
        "Work finished: no day known yet.",
    ]


@pytest.mark.parametrize(
    ("kind", "fields", "headline"),
    [
        ("change of plan", ["change: postponed to", "starts: 2027-05-20", WHY], "planned for Thursday 20 May"),
        ("change of plan", ["change: postponed to", "starts: 2027-05-10", WHY], "planned for Monday 10 May"),
        # a Sunday, on which nobody works
        ("change of plan", ["change: brought forward to", "starts: 2027-05-09", WHY], "planned for 9 to 10 May"),
        ("change of plan", ["change: called off", WHY], "called off"),
        ("work started", [], "since 9 May"),
    ],
)
def test_what_comes_next_ends_it(club: SmallClub, kind: str, fields: list[str], headline: str) -> None:
    club.log("next", "05-09", kind, "job: tree", *fields, time="08:00")
    (notice,) = [one for one in bulletin(club, "05-09").notices if one.id == "tree"]
    assert plain(notice.headline) == f"Tree work, tee 1: {headline}"


def test_its_days_are_taken_back_in_the_calendar_and_come_again_under_the_same_name(club: SmallClub) -> None:
    before = events(club, "05-07")["tree/work-1"]
    assert (before.standing, before.span) == (
        Standing.TENTATIVE,
        DaySpan(first=date(2027, 5, 10), last=date(2027, 5, 10)),
    )
    off = events(club, "05-20")["tree/work-1"]
    assert off.standing is Standing.CANCELLED
    assert plain(off.summary) == "This no longer holds: Tee 1: Tree work"
    assert off.sequence > before.sequence
    club.log("again", "05-20", "change of plan", "job: tree", "change: postponed to", "starts: 2027-06-01", WHY)
    again = events(club, "05-21")["tree/work-1"]
    assert (again.standing, again.span) == (Standing.TENTATIVE, DaySpan(first=date(2027, 6, 1), last=date(2027, 6, 1)))
    assert {one.standing for one in events(club, "05-20", "spring").values()} == {Standing.CANCELLED}


def test_for_search_engines_it_is_postponed_and_keeps_the_day_told_before(club: SmallClub) -> None:
    told = bulletin(club, "05-09")
    (notice,) = [one for one in told.notices if one.id == "tree"]
    data: dict[str, Any] = notice_data(notice, told, OpenGraph(bulletin=told, pictures={}))
    assert (data["eventStatus"], data["startDate"]) == ("https://schema.org/EventPostponed", "2027-05-10")
    assert "endDate" not in data
    json.dumps(data)


def test_nobody_is_asked_to_enter_what_is_postponed(club: SmallClub) -> None:
    assert LeftOpen(club.records(), moment("06-10")).never_begun() == ()


def test_work_that_has_begun_is_held_up_and_not_postponed(club: SmallClub) -> None:
    club.log("begun", "05-12", "work started", "job: spring", time="08:00")
    club.log("off-3", "05-12", "change of plan", "job: spring", "change: postponed", WHY, time="12:00")
    with pytest.raises(InputNeedsAttention) as raised:
        club.records()
    (problem,) = raised.value.problems
    assert (problem.field, problem.found) == ("change", "'spring' postponed, which has begun")
    assert problem.hint == "Work that has begun and waits is 'kind: held up'."


@pytest.mark.parametrize(
    ("fields", "found", "hint"),
    [
        (["change: postponed to"], "nothing", "If no day is known yet: 'change: postponed', without 'starts'."),
        (
            ["change: postponed", "starts: 2027-06-01"],
            "2027-06-01",
            "With a day it is 'change: postponed to'.",
        ),
        (["change: called off", "starts: 2027-06-01"], "2027-06-01", ""),
        (["change: brought forward to"], "nothing", ""),
    ],
)
def test_an_entry_with_a_day_too_few_or_too_many_hears_the_way_out(
    club: SmallClub, fields: list[str], found: str, hint: str
) -> None:
    club.log("next", "05-09", "change of plan", "job: tree", *fields, WHY)
    with pytest.raises(InputNeedsAttention) as raised:
        club.records()
    (problem,) = raised.value.problems
    assert (problem.field, problem.found, problem.hint) == ("starts", found, hint)


def test_on_the_command_line_the_day_may_be_left_out(tmp_path: Path) -> None:
    small = SmallClub(tmp_path)
    small.job("tree", "05-10", "tree work", surfaces="tee 1")
    records, now = small.records(), moment("05-08")
    answers = {"job": "tree", "because": "the climber is ill"}
    for more in ({}, {"to": ""}):
        draft = understand("postponed", {**answers, **more}, records, now).draft
        assert draft is not None
        assert draft.fields == {"job": "tree", "change": "postponed", "because": "the climber is ill"}
    draft = understand("postponed", {**answers, "to": "1 June"}, records, now).draft
    assert draft is not None
    assert (draft.fields["change"], draft.fields["starts"]) == ("postponed to", "2027-06-01")


# Planned, and nobody has reported that it began


def test_work_that_leaves_nothing_is_not_said_to_have_no_day_once_its_start_is_said_to_be_missing(
    tmp_path: Path,
) -> None:
    """Nothing is left to say: its end would be the end of work that perhaps never began."""
    small = SmallClub(tmp_path)
    small.job("tree", "05-10", "tree work", surfaces="tee 1")
    (notice,) = bulletin(small, "05-12").notices
    assert notice.short_answer.replace("\u00a0", " ") == (
        "This work was planned from Monday 10 May; nobody has reported that it began."
    )


def test_of_temporary_greens_nobody_waits_until_they_are_done(tmp_path: Path) -> None:
    """They are no piece of work: what is done of them first is their end."""
    small = SmallClub(tmp_path)
    weeks = "    reopens after: {from: 8 to 11 weeks, source: us}\n"
    small.job("low", "05-10", "temporary greens", play="temporary green", more=weeks)
    (notice,) = bulletin(small, "05-12").notices
    assert notice.short_answer.endswith("Back to normal: no day known yet.")


def test_ropes_stay_when_the_work_of_putting_them_out_is_finished(tmp_path: Path) -> None:
    small = SmallClub(tmp_path)
    small.job("ropes", "05-10", "winter protection", surfaces="tee 1", play="open with care")
    small.done("ropes", "05-10")
    (notice,) = bulletin(small, "05-12").notices
    assert notice.short_answer.replace("\u00a0", " ") == (
        "The work on tee 1 was finished on Monday 10 May."
        " Ropes, mats and covers stay until the grass grows again. Please go the way that the ropes show."
    )
