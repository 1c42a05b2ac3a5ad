"""Every notice of the demo, at seven moments, held against the plain-language standards; the figures end the test run.

The manager's own words are left out: they are held against the same measure by `check`, and only ever warn.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

import pytest

from swardcast.compose import Bulletin
from swardcast.language.plain import FaultKind
from tests.conftest import PLAIN_LANGUAGE
from tests.notices.notice_text import ordinary_sentences
from tests.notices.standards import CHECKED, Read, faulty, figures_of, read_notices, wrong_days, wrong_forms

MOMENTS: Final = (
    "2027-04-20 08:00",  # announced, nothing done
    "2027-05-12 08:00",  # healing; the late summer is announced
    "2027-08-24 10:00",  # under way
    "2027-08-25 12:00",  # held up
    "2027-09-14 09:30",  # healing, corrected, dates moved
    "2027-10-03 07:05",  # healing, no weather recorded for days
    "2027-12-06 08:00",  # no entry for weeks: nothing is known
)


@pytest.fixture(scope="module")
def notices(demo_bulletin_at: Callable[[str], Bulletin]) -> list[Read]:
    return [read for moment in MOMENTS for read in read_notices(demo_bulletin_at(moment))]


def test_there_is_something_to_read_at_every_moment(notices: list[Read]) -> None:
    assert len({notice.moment for notice in notices}) == len(MOMENTS)
    assert len(notices) >= 50
    assert all(len(ordinary_sentences(notice.blocks)) >= 5 for notice in notices)


def test_the_figures_are_within_the_limits(notices: list[Read], record_property: Callable[[str, object], None]) -> None:
    figures = figures_of(notices, f"notices of the demo at {len(MOMENTS)} moments")
    for line in figures.lines:
        record_property(PLAIN_LANGUAGE, line)
    figures.check()


@pytest.mark.parametrize("kind", CHECKED, ids=lambda kind: kind.name.lower())
def test_no_notice_has_a_fault(notices: list[Read], kind: FaultKind) -> None:
    assert faulty(notices, kind) == []


def test_every_day_has_its_own_weekday(notices: list[Read]) -> None:
    assert wrong_days(notices) == []


def test_every_number_has_the_right_form_of_the_word_after_it(notices: list[Read]) -> None:
    assert wrong_forms(notices) == []
