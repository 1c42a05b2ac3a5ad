"""How much a day matters, by hand."""

from __future__ import annotations

from datetime import date

import pytest

from swardcast.planning.weights import added_by, weights_of
from swardcast.records.day_spans import DayInYear, DaySpan
from swardcast.records.fixtures import Fixture
from swardcast.records.importance import Importance, NamedFixtures, Period

SATURDAY = date(2027, 8, 7)


def _fixture(name: str, *, uid: str = "uid", visitors: bool = False) -> Fixture:
    return Fixture(
        id=f"{uid}/2027-08-07", series=uid, name=name, first_day=SATURDAY, last_day=SATURDAY, is_for_visitors=visitors
    )


def _season(first: int, last: int, times: float) -> Period:
    return Period(
        name="", span=DaySpan(first=DayInYear(month=8, day=first), last=DayInYear(month=8, day=last)), times=times
    )


def test_an_ordinary_day_is_one_and_a_club_that_tells_nothing_has_fixtures_of_three() -> None:
    assert weights_of(date(2027, 8, 6), 3, Importance(), [_fixture("Medal")]).tolist() == [1.0, 4.0, 1.0]


def test_periods_that_overlap_multiply_each_other_and_the_weekday() -> None:
    """Friday: 1.5; Saturday: 2 x 1.5 x 0.5; Sunday: 0.5."""
    importance = Importance(weekdays={5: 2.0}, periods=(_season(6, 7, 1.5), _season(7, 8, 0.5)))
    assert weights_of(date(2027, 8, 6), 3, importance, ()).tolist() == [1.5, 1.5, 0.5]


def test_a_fixture_before_the_days_or_after_them_weighs_nothing_there() -> None:
    assert weights_of(date(2027, 8, 8), 2, Importance(), [_fixture("Medal")]).tolist() == [1.0, 1.0]
    assert weights_of(date(2027, 8, 1), 2, Importance(), [_fixture("Medal")]).tolist() == [1.0, 1.0]


@pytest.mark.parametrize(
    ("fixture", "adds"),
    [
        (_fixture("Medal"), 3.0),
        (_fixture("Two Coasts parties", visitors=True), 2.0),
        (_fixture("Autumn Medal"), 10.0),
        (_fixture("Autumn medal for visitors", visitors=True), 10.0),
        (_fixture("Cup", uid="cup-2027"), 7.0),  # by the UID of its series
        (_fixture("Autumn medal", uid="cup-2027"), 10.0),  # the larger of two
    ],
)
def test_a_name_goes_before_the_sort_of_fixture(fixture: Fixture, adds: float) -> None:
    named = (NamedFixtures(words="autumn medal", adds=10.0), NamedFixtures(words="Cup-2027", adds=7.0))
    assert added_by(fixture, Importance(fixtures=3.0, visitors=2.0, named=named)) == adds


def test_visitors_count_as_other_fixtures_where_nothing_is_told_of_them() -> None:
    assert added_by(_fixture("Parties", visitors=True), Importance(fixtures=4.0)) == 4.0
