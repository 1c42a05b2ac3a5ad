"""A comparison on a small club whose days are all at 20 C, so that its dates, costs and dilution can be done by hand."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from swardcast.language.voice import Voice
from swardcast.outlook.closures import Touch
from swardcast.outlook.states import Milestone
from swardcast.planning.columns import COLUMNS, cost_without, in_order
from swardcast.planning.compare import When
from swardcast.planning.notes import notes_beside
from swardcast.planning.tables import tables_of
from swardcast.planning.words import cost_in_words
from swardcast.quantities import Sand, SandBasis
from swardcast.records.club import SurfaceKind
from swardcast.records.operations import Dressing, Kind, OtherWork, SandInjection, Stripping
from swardcast.records.plan import Stretch
from swardcast.records.planning import Choice, Planning, YearlyGoal
from swardcast.records.sand_store import SandStore
from tests.outlook.small_club import HOLES_AND_SAND, SmallClub
from tests.planning.asked import (
    GREENS,
    WHEN,
    blades,
    choice,
    compared,
    comparison_of,
    fixture,
    sand,
    small_records,
    tines,
)

PRICES = Planning(
    currency="GBP",
    sand_price_per_t=50.0,
    work_costs={SurfaceKind.GREEN: {Kind.HOLLOW_TINING: 40.0, Kind.TOPDRESSING: 15.0}},
)


def test_sand_alone_has_the_dates_of_the_law(tmp_path: Path) -> None:
    """1 mm hides 1 - exp(-1 / 2.85) = 0.296 of the leaf, which works in at 0.40 a growth day: 5 % is left after ln(5.92) /
    0.4 = 4.45 days and 2 % after ln(14.8) / 0.4 = 6.74; nothing was opened, so that it is back to normal then."""
    row = compared(small_records(tmp_path / "club"), sand(1))
    days = {name: row.days_until(row.range_of(name).likely) for name in (Milestone.SETTLED, Milestone.BACK_TO_NORMAL)}
    assert days == {Milestone.SETTLED: 5, Milestone.BACK_TO_NORMAL: 7}


def test_days_a_year_are_the_likely_days_of_as_many_times_as_all_aims_take(tmp_path: Path) -> None:
    """Work of 1 mm is back to normal after 7 days, as above: 3 mm are 3 times and 21 days. Sand disturbs no surface, so an
    aim of holes is never reached by it."""
    goal = YearlyGoal(fits=frozenset({SurfaceKind.GREEN}), sand=Sand(3, SandBasis.DEPTH_MM))
    records = small_records(tmp_path / "club", planning=Planning(goal=goal))
    found = comparison_of(records, choice(sand(1)))
    assert found.rows[0].days_a_year == 3 * 7
    voice = Voice.english(date(2027, 6, 7))
    goals = next(one for one in tables_of(found, records.planning, voice) if "Likely days a year" in one.columns)
    assert goals.rows[0][-1] == "21"
    assert "each as long as here" in " ".join(notes_beside(found, records.planning, voice))
    often = replace(records, planning=Planning(goal=replace(goal, sand=Sand(53, SandBasis.DEPTH_MM))))  # 371 days
    of_often = tables_of(comparison_of(often, choice(sand(1))), often.planning, voice)
    assert next(one for one in of_often if "Likely days a year" in one.columns).rows[0][-1] == "more than 365"
    with_holes = replace(records, planning=Planning(goal=replace(goal, disturbed_fraction=0.1)))
    assert math.isinf(comparison_of(with_holes, choice(sand(1))).rows[0].days_a_year or 0)
    assert comparison_of(small_records(tmp_path / "two"), choice(sand(1))).rows[0].days_a_year is None


def test_the_cost_is_sand_by_weight_and_work_by_surface_and_pass(tmp_path: Path) -> None:
    """2 mm on 1,000 m2 at 1.56 t/m3 are 3.12 t: 156 at 50 a tonne. Two passes at 40 and a dressing at 15 on each of two
    greens are 190."""
    row = compared(small_records(tmp_path / "club", planning=PRICES), tines(8, 50, 50, 50, passes=2), sand(2))
    assert row.cost is not None
    assert row.cost.sand == pytest.approx(156.0)
    assert (row.cost.work, row.cost.without) == (190.0, ())
    assert row.cost.in_all == pytest.approx(346.0)


def test_sand_is_paid_for_with_the_water_in_it(tmp_path: Path) -> None:
    """3.12 t of dry sand with 10 % of their mass in water weigh 3.432 t: 171.60 at 50 a tonne."""
    planning = replace(PRICES, sand_store=SandStore(moisture_fraction=0.10))
    found = comparison_of(small_records(tmp_path / "club", planning=planning), choice(sand(2)))
    (row,) = found.rows
    assert row.cost is not None
    assert row.cost.sand == pytest.approx(171.60)
    said = " ".join(notes_beside(found, planning, Voice.english(date(2027, 6, 7)))).replace("\u00a0", " ")
    assert "Cost is sand at £50.00 a tonne as weighed, and work as far as it was typed." in said
    assert "10 % of the dry mass, so that dry sand weighs 1.1 times as much in the yard." in said


def test_work_whose_cost_nobody_typed_is_named_and_not_taken_for_free(tmp_path: Path) -> None:
    row = compared(small_records(tmp_path / "club", planning=PRICES), blades(2, 25, 5), sand(2))
    assert row.cost is not None
    assert (row.cost.work, row.cost.without) == (30.0, (Kind.SCARIFYING,))


def test_a_cost_that_leaves_something_out_is_sorted_after_whole_ones_and_says_what_it_leaves_out(
    tmp_path: Path,
) -> None:
    """Two dressings and their sand at 30 + 78 a mm; scarifying has no price, and would else be the cheapest but one."""
    records = small_records(tmp_path / "club", planning=PRICES)
    rows = comparison_of(
        records, choice(blades(2, 25, 5), sand(1)), choice(sand(3)), choice(sand(2)), choice(blades(2, 25, 5))
    ).rows
    for descending, order in ((False, [3, 2, 1, 4]), (True, [2, 3, 1, 4])):
        found = in_order(rows, COLUMNS["cost"], descending=descending, of_cost=True)
        assert [row.number for row in found] == order
    assert [cost_without(row) for row in rows] == ["scarifying", None, None, "scarifying"]


def test_where_no_work_is_priced_the_cost_is_called_that_of_sand_alone(tmp_path: Path) -> None:
    """2 mm on 1,000 m2 at 1.56 t/m3 and 50 a tonne are 156."""
    records = small_records(tmp_path / "club", planning=replace(PRICES, work_costs={}))
    found = comparison_of(records, choice(tines(8, 50, 50, 50), sand(2)), choice(tines(8, 50, 50, 50)))
    said = [cost_in_words(row, "GBP", Voice.english(date(2027, 6, 7))) for row in found.rows]
    assert said == ["£156 for sand alone", "not known"]
    assert "Nobody typed a cost of the work." in " ".join(
        notes_beside(found, records.planning, Voice.english(date(2027, 6, 7)))
    )


def test_work_of_which_nothing_is_priced_does_not_cost_nothing(tmp_path: Path) -> None:
    row = compared(small_records(tmp_path / "club", planning=PRICES), blades(2, 25, 5))
    assert row.cost is not None
    assert row.cost.without == (Kind.SCARIFYING,)
    assert COLUMNS["cost"](row) is None


def test_a_cost_for_greens_says_nothing_of_tees(tmp_path: Path) -> None:
    records = small_records(tmp_path / "club", planning=PRICES)
    when = replace(WHEN, surfaces=("green-1", "tee-1"))
    (row,) = comparison_of(records, choice(tines(8, 50, 50, 50)), when=when).rows
    assert row.cost is not None
    assert (row.cost.work, row.cost.without) == (40.0, (Kind.HOLLOW_TINING,))


def test_an_aim_for_greens_says_nothing_of_tees(tmp_path: Path) -> None:
    """12 mm at 50 x 50 mm open 4.52 % of the surface: three times reach 10 %."""
    goal = YearlyGoal(fits=frozenset({SurfaceKind.GREEN}), disturbed_fraction=0.1)
    records = small_records(tmp_path / "club", planning=Planning(goal=goal))
    on_greens, on_a_tee = (
        comparison_of(records, choice(tines(12, 50, 50, 50)), when=replace(WHEN, surfaces=names))
        .rows[0]
        .times.disturbed
        for names in (GREENS, ("tee-1",))
    )
    assert (on_greens, on_a_tee) == (3, None)


def test_a_cost_typed_with_the_choice_goes_before_that_of_kinds_of_work(tmp_path: Path) -> None:
    records = small_records(tmp_path / "club", planning=PRICES)
    (row,) = comparison_of(records, choice(tines(8, 50, 50, 50), name="contractor", cost_per_surface=300.0)).rows
    assert row.cost is not None
    assert (row.cost.sand, row.cost.work, row.cost.without) == (0.0, 600.0, ())


def test_without_a_price_of_sand_what_needs_sand_has_no_cost(tmp_path: Path) -> None:
    planning = replace(PRICES, sand_price_per_t=None)
    records = small_records(tmp_path / "club", planning=planning)
    assert COLUMNS["cost"](compared(records, tines(8, 50, 50, 50), sand(2))) is None
    assert COLUMNS["cost"](compared(small_records(tmp_path / "two", planning=planning), tines(8, 50, 50, 50))) == 80.0


def test_a_club_that_tells_no_prices_gets_no_cost(tmp_path: Path) -> None:
    assert compared(small_records(tmp_path / "club"), sand(2)).cost is None


def test_organic_matter_after_the_work_rests_on_the_latest_reading_of_each_green(tmp_path: Path) -> None:
    """Greens 1 and 2 last read 6.7 % each (an older 9 % no longer counts). Woods 2021, "Organic matter reduction by
    hollow-tines, solid-tines, and sand topdressing": 1 mm of sand on the top 2 cm makes 6.2 % of it."""
    club = SmallClub(tmp_path / "club")
    club.log("old", "05-01", "observation", "surfaces: greens 1-2", "readings: {organic matter: 9 %}")
    club.log("new", "05-20", "observation", "surfaces: green 1", "readings: {organic matter: 6.7 %}")
    club.log("newer", "05-21", "observation", "surfaces: green 2", "readings: {organic matter: 6.7 %}")
    found = comparison_of(club.records(), choice(sand(1)), choice(OtherWork(kind=Kind.ROLLING)))
    assert found.reading is not None
    assert (found.reading.first_day, found.reading.last_day) == (date(2027, 5, 20), date(2027, 5, 21))
    assert found.rows[0].organic_after == pytest.approx(0.062, abs=0.0005)
    assert found.rows[1].organic_after == pytest.approx(0.067)


def test_without_a_reading_there_is_no_figure(tmp_path: Path) -> None:
    found = comparison_of(small_records(tmp_path / "club"), choice(sand(1)))
    assert (found.reading, found.rows[0].organic_after) == (None, None)


def test_a_reading_that_was_made_later_is_not_known_yet(tmp_path: Path) -> None:
    club = SmallClub(tmp_path / "club")
    club.log("later", "06-20", "observation", "surfaces: greens 1-2", "readings: {organic matter: 6 %}")
    assert comparison_of(club.records(), choice(sand(1)), at="06-07").reading is None


@pytest.mark.parametrize(
    "work",
    [
        Stripping(kind=Kind.FRAISE_MOWING, depth_mm=6, share=1.0),
        SandInjection(kind=Kind.SAND_INJECTION, sand=Sand(2, SandBasis.TONNES_EACH)),
    ],
    ids=["stripped turf", "injected sand"],
)
def test_where_dilution_does_not_tell_what_is_left_there_is_no_figure(
    tmp_path: Path, work: Stripping | SandInjection
) -> None:
    club = SmallClub(tmp_path / "club")
    club.log("read", "05-20", "observation", "surfaces: greens 1-2", "readings: {organic matter: 6 %}")
    usual = Stretch(from_days=28, to_days=42, source="our own experience")
    asked = Choice(name="", operations=(work,), normal_after=usual)
    assert comparison_of(club.records(), asked).rows[0].organic_after is None


def injected(diameter_mm: float | None, depth_mm: float | None, spread: Sand | None) -> Choice:
    """At 160 x 160 mm, back to normal after what somebody typed."""
    work = SandInjection(
        kind=Kind.SAND_INJECTION,
        diameter_mm=diameter_mm,
        depth_mm=depth_mm,
        across_mm=160,
        along_mm=160,
        sand=spread,
    )
    usual = Stretch(from_days=28, to_days=42, source="our own experience")
    return Choice(name="", operations=(work,), normal_after=usual)


def test_injected_sand_fills_the_holes_as_far_as_their_sizes_say_and_what_is_left_lies_on_top(tmp_path: Path) -> None:
    """By hand: 1 / 0.16^2 = 39.06 holes/m2; of 19 mm they are 39.06 x 3.1416 x 0.019^2 / 4 = 1.1075 % of the surface and
    200 mm deep take 2.215 mm. 2 t on 500 m2 at 1.56 t/m3 are 2.564 mm, so that 0.349 mm is left. What is cut away is not
    known: some ways drill, others shoot."""
    two_each = injected(19, 200, Sand(2, SandBasis.TONNES_EACH))
    (row,) = comparison_of(small_records(tmp_path / "club", planning=PRICES), two_each).rows
    amounts = row.amounts
    assert amounts.holes == pytest.approx(39.0625 * 1000)
    assert amounts.disturbed_fraction == pytest.approx(0.011075, abs=0.000001)
    assert amounts.removed_fraction is None
    assert amounts.room_mm == pytest.approx(2.215, abs=0.0005)
    assert amounts.mean_mm(lambda one: one.fits_mm) == pytest.approx(2.215, abs=0.0005)
    assert amounts.mean_mm(lambda one: one.surplus_mm) == pytest.approx(0.349, abs=0.0005)
    assert amounts.sand_t == pytest.approx(4.0)
    assert row.cost is not None
    assert row.cost.sand == pytest.approx(200.0)
    assert row.cost.without == (Kind.SAND_INJECTION,)
    assert row.disturbance.days == {}


def test_somebodys_usual_time_is_told_by_its_own_ends_and_has_no_likely_day(tmp_path: Path) -> None:
    """4 to 6 weeks after Monday 14 June are 12 to 26 July."""
    records = small_records(tmp_path / "club")
    found = comparison_of(records, injected(19, 200, None), choice(sand(1)))
    typed, computed = found.rows
    assert (COLUMNS["usual_from"](typed), COLUMNS["usual_to"](typed)) == (date(2027, 7, 12), date(2027, 7, 26))
    assert {COLUMNS[name](typed) for name in ("normal_likely", "normal_allow_until", "days_likely")} == {None}
    assert (COLUMNS["usual_from"](computed), COLUMNS["usual_to"](computed)) == (None, None)
    assert COLUMNS["normal_likely"](computed) is not None
    voice = Voice.english(date(2027, 6, 7))
    healing = tables_of(found, records.planning, voice)[2]
    assert healing.rows[0][2:] == ("–", "–", "usually 12 Jul to 26 Jul", "usually 28 to 42")
    notes = " ".join(notes_beside(found, records.planning, voice))
    assert "The usual time of choice 1 was not computed but typed (our own experience)." in notes


def test_what_is_not_typed_of_sand_injection_is_not_made_up(tmp_path: Path) -> None:
    records = small_records(tmp_path / "club")
    sand_each = Sand(2, SandBasis.TONNES_EACH)
    no_depth, no_width = comparison_of(records, injected(19, None, sand_each), injected(None, 200, sand_each)).rows
    assert no_depth.amounts.disturbed_fraction == pytest.approx(0.011075, abs=0.000001)
    assert no_width.amounts.disturbed_fraction is None
    for row in (no_depth, no_width):
        assert row.amounts.holes == pytest.approx(39_062.5)
        assert (row.amounts.room_mm, row.amounts.fits_t, row.amounts.surplus_t) == (None, None, None)
        assert row.amounts.sand_t == pytest.approx(4.0)


def test_injected_sand_of_which_nobody_typed_how_much_is_not_free(tmp_path: Path) -> None:
    """400 on each of two greens are 800, and the sand comes to them."""
    asked = replace(injected(19, 200, None), cost_per_surface=400.0)
    records = small_records(tmp_path / "club", planning=PRICES)
    row, whole = comparison_of(records, asked, choice(sand(1), cost_per_surface=900.0)).rows
    assert row.cost is not None
    assert (row.cost.in_all, row.cost.sand_without, row.cost.is_whole) == (800.0, (Kind.SAND_INJECTION,), False)
    assert (row.amounts.sand_t, COLUMNS["spread_mm"](row)) == (None, None)
    assert whole.cost is not None
    assert whole.cost.is_whole


@pytest.mark.parametrize("area_m2", [None, 100.0])
@pytest.mark.parametrize(
    ("amount", "in_all_t"),
    [(Sand(8, SandBasis.TONNES_EACH), 16.0), (Sand(30, SandBasis.TONNES_IN_ALL), 30.0)],
    ids=["8 t in each of two", "30 t in all"],
)
def test_sand_of_bunkers_counts_and_costs_whether_or_not_their_area_was_measured(
    tmp_path: Path, area_m2: float | None, amount: Sand, in_all_t: float
) -> None:
    """At 50 a tonne, and 20 for the work in each of two bunkers."""
    planning = replace(PRICES, work_costs={SurfaceKind.BUNKER: {Kind.BUNKER_SANDING: 20.0}})
    records = small_records(tmp_path / "club", planning=planning)
    surfaces = {
        name: replace(one, kind=SurfaceKind.BUNKER, grass=None, area_m2=area_m2) if name in GREENS else one
        for name, one in records.surfaces.items()
    }
    usual = Stretch(from_days=7, to_days=14, source="our own experience")
    work = Dressing(kind=Kind.BUNKER_SANDING, sand=amount)
    asked = Choice(name="", operations=(work,), normal_after=usual)
    (row,) = comparison_of(replace(records, surfaces=surfaces), asked).rows
    assert row.amounts.sand_t == pytest.approx(in_all_t)
    assert row.cost is not None
    assert row.cost.sand == pytest.approx(50 * in_all_t)
    assert row.cost.in_all == pytest.approx(50 * in_all_t + 40)
    assert row.cost.is_whole


def test_stripped_turf_is_disturbed_as_far_as_it_is_stripped(tmp_path: Path) -> None:
    amounts = compared(
        small_records(tmp_path / "club"), Stripping(kind=Kind.FRAISE_MOWING, depth_mm=6, share=0.4)
    ).amounts
    assert (amounts.disturbed_fraction, amounts.removed_fraction) == (0.4, 0.4)


def test_a_fixture_in_the_work_or_before_allow_until_is_touched_and_one_after_it_is_not(tmp_path: Path) -> None:
    on_the_day, soon, late = date(2027, 6, 14), date(2027, 6, 18), date(2027, 8, 1)
    fixtures = (fixture(on_the_day, "Pairs"), fixture(soon, "Medal"), fixture(late, "Cup"))
    found = comparison_of(
        small_records(tmp_path / "club", fixtures=fixtures), choice(sand(1)), choice(tines(19, 50, 50, 80), sand(7))
    )
    sanded, cored = found.rows
    assert [one.fixture.name for one in sanded.meets] == ["Pairs", "Medal"]
    assert sanded.meets[0].in_work is Touch.YES
    assert sanded.fixtures_touched == 2
    assert (cored.meets[1].not_normal or 0) > (sanded.meets[1].not_normal or 0)


def test_without_past_years_fixtures_after_the_work_are_not_known_and_not_none(tmp_path: Path) -> None:
    """The last day of the work is the 14th: the medal meets no work, and of the healing nothing is known."""
    pairs, medal = fixture(date(2027, 6, 14), "Pairs"), fixture(date(2027, 6, 18))
    typed = small_records(tmp_path / "club", fixtures=(pairs, medal))
    unknown = replace(typed, weather=replace(typed.weather, history_c={}, observed_c={}))
    found = comparison_of(unknown, choice(sand(1)))
    assert found.rows[0].fixtures_touched is None
    tables = tables_of(found, unknown.planning, Voice.english(date(2027, 6, 7)))
    healing = next(table for table in tables if "Fixtures touched" in table.columns)
    assert healing.rows[0][-1] == "not known"
    in_the_work = replace(unknown, fixtures=(pairs,))
    assert comparison_of(in_the_work, choice(sand(1))).rows[0].fixtures_touched == 1


def test_a_fixture_on_the_day_of_allow_until_is_no_longer_touched(tmp_path: Path) -> None:
    (row,) = comparison_of(small_records(tmp_path / "club"), choice(sand(1))).rows
    until = row.range_of(Milestone.BACK_TO_NORMAL).allow_until
    assert until is not None
    (there,) = comparison_of(small_records(tmp_path / "two", fixtures=(fixture(until),)), choice(sand(1))).rows
    assert len(there.meets) == 1
    assert there.fixtures_touched == 0


def test_what_stands_in_a_jobs_place_comes_after_the_plan_as_it_is(tmp_path: Path) -> None:
    club = SmallClub(tmp_path / "club")
    club.job("holes", "06-14", *HOLES_AND_SAND)
    records = club.records()
    when = replace(WHEN, instead_of=records.jobs["holes"])
    planned, other = comparison_of(records, choice(sand(1)), when=when).rows
    assert (planned.is_planned, other.is_planned) == (True, False)
    assert (planned.number, other.number) == (1, 2)
    assert planned.disturbance.outlook.surfaces[0].recovery is not None
    assert planned.disturbance.outlook.surfaces[0].recovery.before == 0


def test_a_choice_may_have_a_pace_of_its_own(tmp_path: Path) -> None:
    """One green a day: the second is done on Tuesday 15 June, and its sand has worked in a day later."""
    slow = replace(choice(sand(1)), surfaces_a_day=1.0)
    at_once, one_by_one = comparison_of(small_records(tmp_path / "club"), choice(sand(1)), slow).rows
    days = [row.days_until(row.range_of(Milestone.BACK_TO_NORMAL).likely) for row in (at_once, one_by_one)]
    assert days == [7, 8]


def test_an_area_that_was_not_measured_leaves_holes_and_tonnes_open(tmp_path: Path) -> None:
    records = small_records(tmp_path / "club")
    surfaces = {
        name: replace(one, area_m2=None) if name == "green-2" else one for name, one in records.surfaces.items()
    }
    row = compared(replace(records, surfaces=surfaces), tines(12, 50, 50, 70), sand(3))
    assert (row.amounts.holes, row.amounts.sand_t, row.amounts.fits_t) == (None, None, None)
    assert row.amounts.disturbed_fraction == pytest.approx(0.0452, abs=0.0001)


def test_work_more_than_a_year_ahead_has_no_dates_but_its_sums(tmp_path: Path) -> None:
    when = When(surfaces=GREENS, starts=date(2028, 8, 1), surfaces_a_day=9)
    (row,) = comparison_of(small_records(tmp_path / "club"), choice(tines(12, 50, 50, 70), sand(3)), when=when).rows
    assert row.range_of(Milestone.BACK_TO_NORMAL).likely is None
    assert COLUMNS["normal_likely"](row) is None
    assert row.amounts.sand_t == pytest.approx(3 * 1.56)


def test_sorting_puts_what_is_not_known_last_either_way_and_keeps_equals_in_order(tmp_path: Path) -> None:
    records = small_records(tmp_path / "club", planning=PRICES)
    no_date = Choice(
        name="z",
        operations=(SandInjection(kind=Kind.SAND_INJECTION),),
        normal_after=Stretch(from_days=1, to_days=2, source="us"),
    )
    rows = comparison_of(
        records, choice(sand(2), name="b"), no_date, choice(sand(1), name="A"), choice(sand(2), name="c")
    ).rows
    assert [row.choice.name for row in in_order(rows, COLUMNS["disturbed_fraction"])][-1] == "z"
    assert [row.choice.name for row in in_order(rows, COLUMNS["disturbed_fraction"], descending=True)][-1] == "z"
    assert [row.choice.name for row in in_order(rows, COLUMNS["spread_mm"])] == ["A", "b", "c", "z"]
    assert [row.choice.name for row in in_order(rows, COLUMNS["choice"])] == ["A", "b", "c", "z"]
    by_day = [row.number for row in in_order(rows, COLUMNS["normal_likely"])]
    assert (by_day[0], by_day[-1]) == (3, 2), "a usual time has no likely day"


def test_a_choice_is_for_the_surfaces_that_it_names(tmp_path: Path) -> None:
    surfaces = small_records(tmp_path / "club").surfaces
    greens = Choice(name="", operations=(), fits=frozenset({SurfaceKind.GREEN}))
    assert greens.is_for([surfaces["green-1"]])
    assert not greens.is_for([surfaces["green-1"], surfaces["tee-1"]])
    assert Choice(name="", operations=()).is_for(surfaces.values())
