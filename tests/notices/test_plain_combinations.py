"""Notices of every kind of work in every state, held against the plain-language standards without building a site."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from swardcast.compose import compose_bulletin
from swardcast.language.catalogue import BUILT_IN
from swardcast.language.plain import FaultKind
from swardcast.records.club import SurfaceKind
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Kind
from tests.conftest import DEMO_AS_OF, PLAIN_LANGUAGE
from tests.notices.many_jobs import OPERATIONS, STATES, clubs, combinations
from tests.notices.standards import CHECKED, Read, faulty, figures_of, read_notices, wrong_days, wrong_forms


@pytest.fixture(scope="module")
def notices(demo_records: ClubRecords) -> list[Read]:
    found: list[Read] = []
    for records in clubs(demo_records):
        found += read_notices(compose_bulletin(records, DEMO_AS_OF))
    return found


def test_there_is_an_operation_of_every_kind() -> None:
    assert set(OPERATIONS) == set(Kind)
    assert all(operation.kind is kind for kind, operation in OPERATIONS.items())


def test_every_kind_meets_every_state_and_every_surface_and_language_is_met(notices: list[Read]) -> None:
    met = list(combinations())
    assert {(one.kind, one.state) for one in met} == {(kind, state) for kind in Kind for state in STATES}
    assert {(one.surface, one.language) for one in met} == {(kind, tag) for kind in SurfaceKind for tag in BUILT_IN}
    assert len(notices) == len(met) >= 300


def test_the_figures_are_within_the_limits(notices: list[Read], record_property: Callable[[str, object], None]) -> None:
    figures = figures_of(notices, "notices of all kinds of work in all states")
    for line in figures.lines:
        record_property(PLAIN_LANGUAGE, line)
    figures.check()


@pytest.mark.parametrize("kind", CHECKED, ids=lambda kind: kind.name.lower())
def test_no_notice_has_a_fault(notices: list[Read], kind: FaultKind) -> None:
    assert faulty(notices, kind) == []


def test_only_work_on_greens_speaks_of_putts(notices: list[Read]) -> None:
    """A ball on a tee or in a bunker does not roll to the hole; "even with a putter" is of the Rules.

    A temporary green may lie on a fairway.
    """
    elsewhere = {
        one.name
        for one in combinations()
        if one.surface is not SurfaceKind.GREEN and one.kind is not Kind.TEMPORARY_GREENS
    }
    putts = [
        f"{notice.name}: {block.text}"
        for notice in notices
        for block in notice.blocks
        if notice.name.split()[1] in elsewhere and re.search(r"\bputt(s|ing)?\b", block.text, re.IGNORECASE)
    ]
    assert len(elsewhere) < len(notices)
    assert putts == []


def test_every_day_has_its_own_weekday(notices: list[Read]) -> None:
    assert wrong_days(notices) == []


def test_every_number_has_the_right_form_of_the_word_after_it(notices: list[Read]) -> None:
    assert wrong_forms(notices) == []


def test_every_short_answer_is_read_at_a_glance(notices: list[Read]) -> None:
    """40 words or fewer; it is the first block of a notice."""
    long = {notice.name: notice.blocks[0].text for notice in notices if len(notice.blocks[0].text.split()) > 40}
    assert long == {}
