"""What lies in the sand store, by hand and by a slow walk from day to day.

The small club plans 3.12 t on two greens on 3 May, 1 t on a tee on 7 June and 3 t on two greens on 6 September; sand is dry
unless a test says otherwise.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from swardcast.planning.sand_balance import SandBalance, StoreWhat, Trouble, sand_balance
from swardcast.planning.sand_moves import SandMove, sand_moves
from swardcast.planning.stages import Stage, stages_of
from swardcast.records.operations import Kind
from swardcast.records.sand_store import SandCount, SandDelivery, SandStore
from tests.outlook.small_club import SmallClub, moment

FIRST, LAST = date(2027, 1, 1), date(2027, 12, 31)
COUNTED = SandStore(room_t=15, least_t=2, counts=(SandCount(on=date(2027, 4, 1), mass_t=10),))


def a_club(folder: Path) -> SmallClub:
    club = SmallClub(folder)
    club.job("may", "05-03", "topdressing: {sand: 2 mm}")
    club.job("june", "06-07", "topdressing: {sand: 4 kg/m2}", surfaces="tee 1")
    club.job("september", "09-06", "topdressing: {sand: 1.5 t/green}")
    return club


def moves_of(club: SmallClub, at: str) -> tuple[SandMove, ...]:
    records = club.records()
    return sand_moves(records, stages_of(records, moment(at)))


def balance_of(club: SmallClub, at: str, store: SandStore, first: date = FIRST, last: date = LAST) -> SandBalance:
    found = sand_balance(store, moves_of(club, at), today=moment(at).date(), first=first, last=last)
    assert found is not None
    return found


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    return a_club(tmp_path / "club")


def there(balance: SandBalance) -> list[float]:
    return [round(line.after_t, 6) for line in balance.lines]


def test_each_day_of_work_takes_its_sand_out(club: SmallClub) -> None:
    """10 - 3.12 = 6.88; - 1 = 5.88; - 3 = 2.88, which is more than the 2 that are kept back."""
    balance = balance_of(club, "04-02", COUNTED)
    assert there(balance) == [10, 6.88, 5.88, 2.88]
    assert (balance.first_trouble, balance.needed_by, balance.missing_t) == (None, None, 0)


def test_sand_in_the_yard_weighs_more_than_the_same_sand_dry(club: SmallClub) -> None:
    """With 10 % of water by dry mass 3.12 t of dry sand weigh 3.432 t: 6.568, 5.468, 2.168."""
    balance = balance_of(club, "04-02", replace(COUNTED, moisture_fraction=0.1))
    assert there(balance) == [10, 6.568, 5.468, 2.168]


def test_the_first_day_below_what_is_kept_back_asks_for_a_delivery_before_it(club: SmallClub) -> None:
    """Kept back are 3: on 6 September 2.88 are left, 0.12 too few; before that day there is room for 15 - 5.88 = 9.12."""
    balance = balance_of(club, "04-02", replace(COUNTED, least_t=3))
    assert balance.first_trouble is not None
    assert (balance.first_trouble.day, balance.first_trouble.trouble) == (date(2027, 9, 6), Trouble.BELOW_LEAST)
    assert balance.needed_by is balance.first_trouble
    assert balance.missing_t == pytest.approx(0.12)
    assert balance.room_before(balance.first_trouble) == pytest.approx(9.12)


def test_it_runs_out_where_less_than_nothing_would_be_left(club: SmallClub) -> None:
    """5 - 3.12 = 1.88, below 2; 0.88; -2.12: 4.12 more keep 2 back all along."""
    balance = balance_of(club, "04-02", replace(COUNTED, counts=(SandCount(on=date(2027, 4, 1), mass_t=5),)))
    troubles = [(line.day.month, line.trouble) for line in balance.lines if line.trouble is not None]
    assert troubles == [(5, Trouble.BELOW_LEAST), (6, Trouble.BELOW_LEAST), (9, Trouble.RUNS_OUT)]
    assert balance.missing_t == pytest.approx(4.12)


def test_the_last_grain_may_be_used(club: SmallClub) -> None:
    """7.12 t are all that is needed."""
    balance = balance_of(club, "04-02", SandStore(counts=(SandCount(on=date(2027, 4, 1), mass_t=7.12),)))
    assert balance.closing_t == pytest.approx(0)
    assert balance.first_trouble is None


@pytest.mark.parametrize(("mass_t", "trouble"), [(9.12, None), (10.0, Trouble.DOES_NOT_FIT)])
def test_a_delivery_to_come_has_to_fit(club: SmallClub, mass_t: float, trouble: Trouble | None) -> None:
    """On 14 June 5.88 are there, of room for 15."""
    store = replace(COUNTED, deliveries=(SandDelivery(on=date(2027, 6, 14), mass_t=mass_t),))
    balance = balance_of(club, "04-02", store)
    assert [line.trouble for line in balance.lines if line.what is StoreWhat.DELIVERED] == [trouble]


def test_a_delivery_that_came_is_not_judged_any_more(club: SmallClub) -> None:
    store = replace(COUNTED, deliveries=(SandDelivery(on=date(2027, 4, 12), mass_t=30),))
    balance = balance_of(club, "04-12", store)
    assert balance.first_trouble is None
    assert there(balance)[:2] == [10, 40]


def test_what_was_used_is_that_of_the_log(club: SmallClub) -> None:
    """3 mm instead of 2 in May: 4.68 t; planned days of what is done count no more."""
    club.done("may", "05-05", "as done:", "  - topdressing: {sand: 3 mm}")
    balance = balance_of(club, "05-06", COUNTED)
    assert [(line.day.month, line.day.day, line.is_to_come) for line in balance.lines] == [
        (4, 1, False),
        (5, 5, False),
        (6, 7, True),
        (9, 6, True),
    ]
    assert there(balance) == [10, 5.32, 4.32, 1.32]


def test_a_later_count_begins_anew_and_tells_by_how_much_the_sums_were_wrong(club: SmallClub) -> None:
    club.done("may", "05-03")
    counts = (*COUNTED.counts, SandCount(on=date(2027, 5, 10), mass_t=6.5))
    balance = balance_of(club, "05-11", replace(COUNTED, counts=counts))
    assert there(balance) == [10, 6.88, 6.5, 5.5, 2.5]
    assert balance.lines[2].change_t == pytest.approx(-0.38)


def test_a_count_of_a_later_day_does_not_exist_yet(club: SmallClub) -> None:
    counts = (*COUNTED.counts, SandCount(on=date(2027, 5, 10), mass_t=6.5))
    assert there(balance_of(club, "05-01", replace(COUNTED, counts=counts))) == [10, 6.88, 5.88, 2.88]
    assert sand_balance(COUNTED, moves_of(club, "03-20"), today=date(2027, 3, 20), first=FIRST, last=LAST) is None


def test_on_one_day_a_count_comes_before_deliveries_and_these_before_work(club: SmallClub) -> None:
    day = date(2027, 5, 3)
    store = SandStore(counts=(SandCount(on=day, mass_t=1),), deliveries=(SandDelivery(on=day, mass_t=2.5),))
    balance = balance_of(club, "05-03", store)
    assert there(balance)[:3] == [1, 3.5, 0.38]


def test_what_came_before_the_first_count_is_in_it(club: SmallClub) -> None:
    store = replace(COUNTED, deliveries=(SandDelivery(on=date(2027, 3, 1), mass_t=8),))
    assert there(balance_of(club, "04-02", store)) == [10, 6.88, 5.88, 2.88]


def test_a_period_begins_with_what_its_past_left(club: SmallClub) -> None:
    balance = balance_of(club, "04-02", COUNTED, first=date(2027, 6, 1), last=date(2027, 8, 31))
    assert balance.opening_t == pytest.approx(6.88)
    assert there(balance) == [5.88]


def test_less_than_nothing_in_the_past_says_that_the_figures_do_not_agree(club: SmallClub) -> None:
    club.done("may", "05-03")
    balance = balance_of(club, "05-04", replace(COUNTED, counts=(SandCount(on=date(2027, 4, 1), mass_t=3),)))
    assert [line.day for line in balance.disagrees] == [date(2027, 5, 3)]


def test_sand_of_bunkers_comes_from_elsewhere_unless_the_club_says_so(tmp_path: Path) -> None:
    club = SmallClub(tmp_path / "club")
    club.job(
        "bunkers",
        "05-03",
        "topdressing: {sand: 2 mm}",
        "sand injection: {sand: 1 t}",
        more="    normal after: {from: 1 to 2 weeks, source: us}\n",
    )
    moves = moves_of(club, "04-02")
    today = date(2027, 4, 2)
    usual = sand_balance(COUNTED, moves, today=today, first=FIRST, last=LAST)
    alone = replace(COUNTED, kinds=frozenset({Kind.SAND_INJECTION}))
    injected = sand_balance(alone, moves, today=today, first=FIRST, last=LAST)
    assert usual is not None
    assert injected is not None
    assert (there(usual), there(injected)) == ([10, 5.88], [10, 9])
    assert Kind.BUNKER_SANDING not in SandStore().kinds


# A slow walk, and laws

DAYS = st.integers(0, 364).map(lambda number: FIRST + timedelta(days=number))
MASSES = st.floats(0.1, 40)
FEW = settings(max_examples=60)


@pytest.fixture(scope="module")
def a_move(tmp_path_factory: pytest.TempPathFactory) -> SandMove:
    return moves_of(a_club(tmp_path_factory.mktemp("walk") / "club"), "04-02")[0]


def works(a_move: SandMove, told: list[tuple[date, float]], today: date) -> list[SandMove]:
    stage = {True: Stage.TO_COME, False: Stage.DONE}
    return [replace(a_move, day=day, dry_t=mass, stage=stage[day > today]) for day, mass in told]


@FEW
@given(
    counts=st.lists(st.tuples(DAYS, MASSES), min_size=1, max_size=3, unique_by=lambda one: one[0]),
    deliveries=st.lists(st.tuples(DAYS, MASSES), max_size=5),
    used=st.lists(st.tuples(DAYS, MASSES), max_size=8),
    today=DAYS,
    water=st.floats(0, 0.3),
)
def test_the_sums_are_those_of_a_walk_from_day_to_day(
    a_move: SandMove,
    counts: list[tuple[date, float]],
    deliveries: list[tuple[date, float]],
    used: list[tuple[date, float]],
    today: date,
    water: float,
) -> None:
    store = SandStore(
        counts=tuple(SandCount(on=day, mass_t=mass) for day, mass in sorted(counts)),
        deliveries=tuple(SandDelivery(on=day, mass_t=mass) for day, mass in sorted(deliveries)),
        moisture_fraction=water,
    )
    balance = sand_balance(store, works(a_move, used, today), today=today, first=FIRST, last=LAST)
    known = [(day, mass) for day, mass in sorted(counts) if day <= today]
    if not known:
        assert balance is None
        return
    assert balance is not None
    ends = {line.day: line.after_t for line in balance.lines}
    mass, day = 0.0, known[0][0]
    while day <= LAST:
        mass = dict(known).get(day, mass)
        mass += sum(load for on, load in deliveries if on == day)
        mass -= sum(dry * (1 + water) for on, dry in used if on == day)
        if day in ends:
            assert ends[day] == pytest.approx(mass, abs=1e-9)
        day += timedelta(days=1)
    assert balance.closing_t == pytest.approx(mass, abs=1e-9)


@FEW
@given(used=st.lists(st.tuples(DAYS, MASSES), min_size=1, max_size=8), counted=MASSES, least=st.floats(0, 5))
def test_what_is_missing_delivered_by_the_day_it_is_needed_keeps_enough_back_all_along(
    a_move: SandMove, used: list[tuple[date, float]], counted: float, least: float
) -> None:
    store = SandStore(least_t=least, counts=(SandCount(on=FIRST, mass_t=counted),))
    moves = works(a_move, used, FIRST)
    balance = sand_balance(store, moves, today=FIRST, first=FIRST, last=LAST)
    assert balance is not None
    assume(balance.needed_by is not None)
    assert balance.needed_by is not None
    load = SandDelivery(on=balance.needed_by.day, mass_t=balance.missing_t)
    mended = sand_balance(replace(store, deliveries=(load,)), moves, today=FIRST, first=FIRST, last=LAST)
    assert mended is not None
    assert mended.needed_by is None
    later = SandDelivery(on=balance.needed_by.day + timedelta(days=1), mass_t=balance.missing_t)
    too_late = sand_balance(replace(store, deliveries=(later,)), moves, today=FIRST, first=FIRST, last=LAST)
    assert too_late is not None
    assert too_late.needed_by is not None, "it is the latest day"
