"""The parts "What you can do" and "The Rules": nothing asked twice, and no word on lies against a rule in force."""

from __future__ import annotations

from collections.abc import Callable
from datetime import timedelta

import pytest

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.language.sentences import sentences_of
from swardcast.notices.notice import Notice, Section, text_of
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Part
from tests.conftest import DEMO_AS_OF


def _part(bulletin: Bulletin, notice_id: str, part: Part) -> Section:
    (notice,) = (one for one in bulletin.notices if one.id == notice_id)
    return next(section for section in notice.sections if section.part is part)


def _sentences(notice: Notice) -> list[str]:
    parts = [section for section in notice.sections if section.part is Part.WHAT_YOU_CAN_DO]
    return [sentence for section in parts for point in section.points for sentence in sentences_of(point.text)]


def test_work_of_several_kinds_asks_for_each_thing_once(demo_bulletin: Bulletin) -> None:
    """Hollow tining, scarifying and topdressing all ask to repair pitch marks and to lift the feet."""
    points = [point.text for point in _part(demo_bulletin, "greens-renovation-2027", Part.WHAT_YOU_CAN_DO).points]
    assert points[:3] == [
        "Please repair your pitch marks. Leave the aeration holes to us. Keep trolleys and buggies away from the green.",
        "Lift your feet, so that you do not scuff the surface.",
        "Knock any sand off your shoes when you leave the green.",
    ]


def test_no_notice_of_the_demo_asks_for_the_same_twice(demo_bulletin: Bulletin) -> None:
    asked = {notice.id: _sentences(notice) for notice in demo_bulletin.notices}
    assert any(len(told) > 4 for told in asked.values())
    assert {name: told for name, told in asked.items() if len(set(told)) != len(told)} == {}


_AS_IT_LIES = "No Local Rule is in force for this: play the ball as it lies."
_NONE_OF_ITS_OWN = "No Local Rule is in force for this work alone."


@pytest.mark.parametrize(
    ("days", "notice_id", "words"),
    [
        (0, "bunkers-resanding-2027", _NONE_OF_ITS_OWN),
        (0, "fairways-deep-tining-2027", _AS_IT_LIES),
        (3, "bunkers-resanding-2027", _AS_IT_LIES),
    ],
    ids=["preferred lies during the work", "over before the work begins", "over while the work goes on"],
)
def test_no_notice_says_as_it_lies_while_preferred_lies_are_in_force(
    demo_records: ClubRecords, days: int, notice_id: str, words: str
) -> None:
    """The Committee's preferred lies hold to 16 September 2027, as the log says; deep tining begins on 11 October."""
    bulletin = compose_bulletin(demo_records, DEMO_AS_OF + timedelta(days=days))
    assert _part(bulletin, notice_id, Part.THE_RULES).paragraphs[0][0].text == words


def test_a_rule_of_the_whole_course_is_said_once_with_its_end(demo_bulletin: Bulletin) -> None:
    """The morning entries have preferred lies up to 16 September 2027, a Thursday by any calendar."""
    said = " ".join(map(text_of, _part(demo_bulletin, "bunkers-resanding-2027", Part.THE_RULES).paragraphs))
    assert said.count("whole course") == 1
    assert (
        "Model Local Rule E-3, adopted by the Committee, holds on the whole course until Thursday 16 September." in said
    )


@pytest.mark.parametrize(
    ("moment", "said"),
    [
        ("2027-09-27 11:00", _AS_IT_LIES),
        ("2027-12-06 08:00", "No Local Rule is known here, and our last report is from Monday 20 September."),
    ],
)
def test_no_notice_knows_the_rules_in_force_long_after_the_last_report(
    demo_bulletin_at: Callable[[str], Bulletin], moment: str, said: str
) -> None:
    """The demo's last entry is of 20 September 2027, 3:40pm; a week later it still counts."""
    (first, *_) = _part(demo_bulletin_at(moment), "bunkers-liners-2027", Part.THE_RULES).paragraphs
    assert text_of(first).startswith(said)


@pytest.mark.parametrize(("notice_id", "asks"), [("bunkers-liners-2027", True), ("greens-light-sanding-2027", False)])
def test_where_a_closed_place_may_lie_in_the_way_the_club_is_to_be_asked(
    demo_bulletin: Bulletin, notice_id: str, *, asks: bool
) -> None:
    """No relief is invented: the notice sends to those who decide (our rule; Rules of Golf, Committee Procedures 8)."""
    first = text_of(_part(demo_bulletin, notice_id, Part.THE_RULES).paragraphs[0])
    assert ("ask the club before you set out" in first) is asks
