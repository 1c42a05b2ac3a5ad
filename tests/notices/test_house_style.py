"""House style of a club: how much a notice says, its last line, and the club's own names for sets of surfaces."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from swardcast.compose import compose_bulletin
from swardcast.notices.notice import Notice
from swardcast.records.club import Group, Tone
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Part
from tests.notices.as_text import notice_as_text
from tests.outlook.small_club import HOLES_AND_SAND, SmallClub, moment


@pytest.fixture(scope="module")
def records(tmp_path_factory: pytest.TempPathFactory) -> ClubRecords:
    club = SmallClub(Path(tmp_path_factory.mktemp("club")))
    club.job("tine", "06-01", *HOLES_AND_SAND, "overseeding: {seed: bent}", "rolling")
    return club.records()


def _notice(records: ClubRecords, **style: object) -> Notice:
    club = replace(records.club, **style)  # type: ignore[arg-type] # the fields under test
    (notice,) = compose_bulletin(replace(records, club=club), moment("05-20")).notices
    return notice


def _parts(notice: Notice) -> list[Part | None]:
    return [section.part for section in notice.sections]


def test_the_short_tone_says_less_in_the_same_parts_and_every_date_and_caution(records: ClubRecords) -> None:
    full, short = _notice(records), _notice(records, tone=Tone.SHORT)
    assert _parts(short) == _parts(full)
    assert short.answer == full.answer
    of = {part: [section for section in short.sections if section.part is part] for part in Part}
    assert len(notice_as_text(short).split()) < 0.9 * len(notice_as_text(full).split())
    for section in full.sections:
        if section.part in (Part.TAKE_CARE, Part.IN_NUMBERS):
            assert section in of[section.part]
        if section.part is Part.DAY_BY_DAY:
            assert [fact for one in of[section.part] for fact in one.facts if fact in section.facts]


def test_the_club_signs_every_notice_as_it_likes(records: ClubRecords) -> None:
    assert _notice(records).sign_off == ""
    assert notice_as_text(_notice(records, sign_off="The greens team")).strip().endswith("The greens team")


def test_a_set_of_surfaces_goes_by_the_name_that_members_use(records: ClubRecords) -> None:
    """Only where it is exactly that set: greens 1 and 2 are two of three greens."""
    named = _notice(records, groups=(Group(name="the home pair", surfaces=frozenset({"green-1", "green-2"})),))
    assert named.where == "the home pair"
    assert "the home pair" in notice_as_text(named)
    larger = Group(name="all greens", surfaces=frozenset({"green-1", "green-2", "green-3"}))
    assert _notice(records, groups=(larger,)).where == "greens 1 and 2"
