"""Laws of a comparison, for whatever is asked."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from swardcast.outlook.states import Milestone
from swardcast.planning.columns import COLUMNS, in_order
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Kind
from tests.planning.asked import WHEN, blades, choice, compared, comparison_of, fixture, sand, small_records, tines

DIAMETERS = st.floats(4.0, 20.0)
SPACINGS = st.floats(25.0, 100.0)
DEPTHS = st.floats(20.0, 150.0)
LAYERS = st.floats(0.1, 6.0)
DAYS = st.integers(0, 60).map(lambda days: date(2027, 6, 14) + timedelta(days=days))
FEW = settings(max_examples=25)


@pytest.fixture(scope="module")
def records(tmp_path_factory: pytest.TempPathFactory) -> ClubRecords:
    return small_records(tmp_path_factory.mktemp("laws") / "club")


@FEW
@given(DIAMETERS, DIAMETERS, SPACINGS, SPACINGS, DEPTHS, LAYERS)
def test_a_wider_tine_never_disturbs_or_removes_less_nor_heals_sooner(
    records: ClubRecords, one: float, other: float, across_mm: float, along_mm: float, depth_mm: float, layer_mm: float
) -> None:
    """With no sand on top: with sand a wider hole takes more of it, and less stays on the leaf."""
    narrow, wide = sorted((one, other))
    first, second = comparison_of(
        records,
        choice(tines(narrow, across_mm, along_mm, depth_mm)),
        choice(tines(wide, across_mm, along_mm, depth_mm)),
    ).rows
    assert (second.amounts.disturbed_fraction or 0) >= (first.amounts.disturbed_fraction or 0)
    assert (second.amounts.removed_fraction or 0) >= (first.amounts.removed_fraction or 0)
    assert (second.amounts.room_mm or 0) >= (first.amounts.room_mm or 0)
    sooner, later = (row.range_of(Milestone.BACK_TO_NORMAL).likely for row in (first, second))
    assert sooner is not None
    assert later is not None
    assert later >= sooner


@FEW
@given(LAYERS, LAYERS, DIAMETERS, DEPTHS)
def test_more_sand_is_never_fewer_tonnes_nor_less_surplus_nor_more_organic_matter(
    records: ClubRecords, one: float, other: float, diameter_mm: float, depth_mm: float
) -> None:
    thin, thick = sorted((one, other))
    hole = tines(diameter_mm, 50, 50, depth_mm)
    less, more = comparison_of(records, choice(hole, sand(thin)), choice(hole, sand(thick))).rows
    assert (more.amounts.sand_t or 0) >= (less.amounts.sand_t or 0)
    assert (more.amounts.surplus_t or 0) >= (less.amounts.surplus_t or 0)
    assert (more.amounts.fits_t or 0) >= (less.amounts.fits_t or 0) - 1e-12
    for row in (less, more):
        in_all = (row.amounts.fits_t or 0) + (row.amounts.surplus_t or 0)
        assert row.amounts.sand_t == pytest.approx(in_all)


@FEW
@given(st.lists(DAYS, max_size=5), DAYS, LAYERS)
def test_one_more_fixture_never_lowers_the_number_of_fixtures_touched(
    records: ClubRecords, days: list[date], another: date, layer_mm: float
) -> None:
    few = tuple(fixture(day, f"Medal {number}") for number, day in enumerate(sorted(days)))
    many = tuple(sorted((*few, fixture(another, "One more")), key=lambda one: one.first_day))
    asked = (choice(tines(12, 50, 50, 60), sand(layer_mm)), choice(blades(2, 25, 5)))
    before = comparison_of(replace(records, fixtures=few), *asked).rows
    after = comparison_of(replace(records, fixtures=many), *asked).rows
    for sooner, later in zip(before, after, strict=True):
        assert sooner.fixtures_touched is not None
        assert later.fixtures_touched is not None
        assert later.fixtures_touched >= sooner.fixtures_touched


@FEW
@given(st.lists(st.tuples(DIAMETERS, LAYERS), min_size=1, max_size=5))
def test_a_choice_comes_out_the_same_whatever_stands_beside_it(
    records: ClubRecords, sizes: list[tuple[float, float]]
) -> None:
    asked = [choice(tines(diameter_mm, 50, 50, 60), sand(layer_mm)) for diameter_mm, layer_mm in sizes]
    together = comparison_of(records, *asked).rows
    for one, row in zip(asked, together, strict=True):
        (alone,) = comparison_of(records, one).rows
        for name in COLUMNS:
            if name != "number":
                assert COLUMNS[name](row) == pytest.approx(COLUMNS[name](alone)), name


@pytest.mark.parametrize("column", list(COLUMNS))
@pytest.mark.parametrize("descending", [False, True])
def test_every_column_sorts_and_loses_no_row(records: ClubRecords, column: str, *, descending: bool) -> None:
    asked = [choice(tines(width, 50, 50, 60), sand(2), name=f"{width} mm") for width in (16, 6, 12)]
    rows = comparison_of(records, *asked).rows
    ordered = in_order(rows, COLUMNS[column], descending=descending)
    assert sorted(row.number for row in ordered) == [1, 2, 3]
    known = [value for row in ordered if (value := COLUMNS[column](row)) is not None]
    assert known == sorted(known, reverse=descending)


@FEW
@given(LAYERS, st.integers(0, 40))
def test_chances_of_the_days_fall_from_one_to_none_and_agree_with_the_dates(
    records: ClubRecords, layer_mm: float, depth: int
) -> None:
    """On the morning of the likely day half of the chance is left at most, on that of allow until a tenth."""
    row = compared(records, tines(12, 50, 50, 20 + depth), sand(layer_mm))
    days = [WHEN.starts + timedelta(days=number) for number in range(-2, 120)]
    chances = row.disturbance.chance_on(days)
    assert chances is not None
    assert list(chances[:2]) == [0.0, 0.0]
    assert all(earlier >= later for earlier, later in pairwise(chances[2:]))
    given_ = row.range_of(Milestone.BACK_TO_NORMAL)
    for day, most in ((given_.likely, 0.5), (given_.allow_until, 0.1)):
        assert day is not None
        after, before = (row.disturbance.chance_on([day - timedelta(days=back)]) for back in (0, 1))
        assert after is not None
        assert before is not None
        assert after[0] <= most + 1e-12
        assert before[0] > most - 1e-12


@FEW
@given(LAYERS)
def test_expected_days_are_the_sum_of_the_chances_of_the_days(records: ClubRecords, layer_mm: float) -> None:
    """A day is disturbed as long as the end lies after its morning: the mean of whole days, rounded up."""
    row = compared(records, tines(12, 50, 50, 60, kind=Kind.SOLID_TINING), sand(layer_mm))
    days = [WHEN.starts + timedelta(days=number) for number in range(200)]
    chances = row.disturbance.chance_on(days)
    expected = row.disturbance.expected_days()
    assert chances is not None
    assert expected is not None
    assert 0 <= float(chances.sum()) - expected <= 1
