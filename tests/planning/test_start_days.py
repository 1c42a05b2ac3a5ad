"""What a first day costs: by hand, and beside a slow loop over days and members."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from swardcast.outlook.states import Milestone
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.blocked_days import Because
from swardcast.planning.disturbance import begun_on, disturbances
from swardcast.planning.start_days import StartDay, start_days
from swardcast.records.day_spans import DayInYear, DaySpan
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from swardcast.records.importance import Importance, NamedFixtures, Period
from swardcast.records.plan import Stretch
from swardcast.records.planning import Planning
from tests.outlook.small_club import HOLES_AND_SAND, SmallClub, moment
from tests.planning.asked import fixture

MONDAY = date(2027, 6, 14)
TEN_DAYS = "    normal after: {from: 10 to 10 days, source: our own experience}\n"
WEEKEND = Importance(weekdays={5: 2.0, 6: 3.0}, fixtures=4.0, is_typed=True)
HORIZON_DAYS = 200


def _days_in(span: int, first: date = MONDAY) -> list[date]:
    return [first + timedelta(days=number) for number in range(span)]


@pytest.fixture(scope="module")
def typed(tmp_path_factory: pytest.TempPathFactory) -> ClubRecords:
    """A club with one job of a day, which is over after 10 days, and one of which healing is computed."""
    club = SmallClub(tmp_path_factory.mktemp("days") / "club")
    club.job("turf", "06-14", "re-turfing", more=TEN_DAYS)
    club.job("holes", "06-14", *HOLES_AND_SAND)
    return club.records()


def _found(
    records: ClubRecords,
    job: str,
    days: list[date],
    importance: Importance = WEEKEND,
    fixtures: tuple[Fixture, ...] = (),
    until: Milestone = Milestone.BACK_TO_NORMAL,
) -> tuple[StartDay, ...]:
    asked = replace(records, planning=replace(Planning(), importance=importance), fixtures=fixtures, jobs={})
    book = WeatherBook(records.club, records.weather)
    return start_days(asked, moment("06-07"), book, records.jobs[job], days, until=until)


def test_the_weights_of_ten_days_by_hand(typed: ClubRecords) -> None:
    """Monday 14 to Wednesday 23 June: 8 ordinary days, Saturday 19 counts 2, Sunday 20 counts 3; 8 + 2 + 3 = 13."""
    (day,) = _found(typed, "turf", [MONDAY])
    assert day.cost is not None
    assert (day.cost.weighted_days, day.cost.low, day.cost.high) == (13.0, 13.0, 13.0)
    assert day.cost.days == 10.0
    assert day.ends is not None
    assert day.ends.likely == date(2027, 6, 24)


def test_a_closure_longer_than_the_horizon_is_weighed_to_its_end(typed: ClubRecords) -> None:
    """500 days from Monday 14 June 2027: 71 whole weeks of 5 + 2 + 3, and Monday to Wednesday; 713."""
    usual = replace(typed.jobs["turf"], normal_after=Stretch(from_days=500, to_days=500, source="our own experience"))
    (day,) = _found(replace(typed, jobs={"turf": usual}), "turf", [MONDAY])
    assert day.cost is not None
    assert (day.cost.weighted_days, day.cost.days) == (713.0, 500.0)


def test_a_fixture_adds_its_weight_on_each_of_its_days_that_is_disturbed(typed: ClubRecords) -> None:
    """On 23 and 24 June: the 23rd is the last of the ten days, so that one of its two days adds 4 to the 13."""
    two_days = Fixture(id="m", series="m", name="Medal", first_day=date(2027, 6, 23), last_day=date(2027, 6, 24))
    (day,) = _found(typed, "turf", [MONDAY], fixtures=(two_days,))
    assert day.cost is not None
    assert day.cost.weighted_days == 17.0


def test_a_period_multiplies_the_ordinary_day_and_not_the_fixture(typed: ClubRecords) -> None:
    """From 21 June on a day counts 1.5: 14 to 18 are 5, the weekend 2 + 3, 21 to 23 are 4.5, a medal on the 22nd 4."""
    season = DaySpan(first=DayInYear(month=6, day=21), last=DayInYear(month=8, day=31))
    importance = replace(WEEKEND, periods=(Period(name="visitors' season", span=season, times=1.5),))
    (day,) = _found(typed, "turf", [MONDAY], importance, (fixture(date(2027, 6, 22)),))
    assert day.cost is not None
    assert day.cost.weighted_days == pytest.approx(5 + 5 + 4.5 + 4)


def test_where_nothing_heals_the_days_of_the_work_are_disturbed(tmp_path: Path) -> None:
    """Two greens at one a day, from Friday: Friday and Monday, and the weekend between; 1 + 2 + 3 + 1 = 7."""
    club = SmallClub(tmp_path / "club")
    club.job("brush", "06-14", "brushing in")
    records = club.records()
    slow = replace(records, jobs={"brush": replace(records.jobs["brush"], surfaces_a_day=1.0)})
    (day,) = _found(slow, "brush", [date(2027, 6, 18)])
    assert day.cost is not None
    assert day.cost.weighted_days == 7.0
    assert day.work_days == (date(2027, 6, 18), date(2027, 6, 21))


def _slow_weight(day: date, importance: Importance, fixtures: tuple[Fixture, ...]) -> float:
    weight = importance.weekdays.get(day.weekday(), 1.0)
    for one in fixtures:
        if one.first_day <= day <= one.last_day:
            weight += importance.fixtures
    return weight


@pytest.mark.parametrize("until", [Milestone.SETTLED, Milestone.BACK_TO_NORMAL])
def test_the_cost_is_that_of_a_slow_loop_over_days_and_over_members(
    demo_records: ClubRecords, until: Milestone
) -> None:
    """The expected sum from the chance of each morning; the range from the sum of each equally likely value."""
    as_of = datetime(2027, 5, 20, 8, tzinfo=demo_records.club.time_zone)
    job, records = demo_records.jobs["greens-renovation-2027"], demo_records
    records = replace(records, planning=replace(Planning(), importance=WEEKEND))
    days = [date(2027, 7, 5), date(2027, 11, 1)]
    book = WeatherBook(records.club, records.weather)
    found = start_days(records, as_of, book, job, days, until=until, instead_of=job.id)
    asked = [begun_on(job, day) for day in days]
    for day, disturbance in zip(found, disturbances(records, as_of, book, asked, instead_of=job.id), strict=True):
        run = _days_in(HORIZON_DAYS, day.day)
        chances = disturbance.chance_on(run, until)
        assert chances is not None
        weights = [_slow_weight(one, WEEKEND, records.fixtures) for one in run]
        assert day.cost is not None
        expected = sum(chance * weight for chance, weight in zip(chances.tolist(), weights, strict=True))
        assert day.cost.weighted_days == pytest.approx(expected, rel=1e-9)
        assert day.cost.days == pytest.approx(sum(chances.tolist()), rel=1e-9)
        sums = sorted(
            sum(weights[: min(HORIZON_DAYS, math.ceil(value - 1e-9))] if math.isfinite(value) else weights)
            for value in disturbance.days[until].ravel().tolist()
        )
        places = [math.ceil(share * len(sums) - 1e-9) - 1 for share in (0.1, 0.9)]
        assert [day.cost.low, day.cost.high] == pytest.approx([sums[place] for place in places])


def test_what_is_asked_besides_changes_no_day(demo_records: ClubRecords) -> None:
    """So that a wider search never makes the best cost worse."""
    as_of = datetime(2027, 5, 20, 8, tzinfo=demo_records.club.time_zone)
    job = demo_records.jobs["greens-renovation-2027"]
    book = WeatherBook(demo_records.club, demo_records.weather)
    wide = start_days(demo_records, as_of, book, job, _days_in(40, date(2027, 9, 1)), instead_of=job.id)
    narrow = start_days(demo_records, as_of, book, job, _days_in(8, date(2027, 9, 13)), instead_of=job.id)
    for one in narrow:
        (same,) = (day for day in wide if day.day == one.day)
        assert (same.blocked, same.ends, same.work_days) == (one.blocked, one.ends, one.work_days)
        if one.cost is not None and same.cost is not None:
            assert same.cost.weighted_days == pytest.approx(one.cost.weighted_days)
    costs = [[day.cost.weighted_days for day in days if day.cost is not None] for days in (wide, narrow)]
    assert min(costs[0]) <= min(costs[1]) + 1e-9


@settings(max_examples=25)
@given(
    st.lists(st.tuples(st.integers(0, 60), st.integers(0, 3)), max_size=6),
    st.tuples(st.integers(0, 60), st.integers(0, 3)),
    st.floats(0, 20),
    st.floats(0, 20),
)
def test_a_fixture_more_never_lowers_the_cost(
    typed: ClubRecords, others: list[tuple[int, int]], more: tuple[int, int], adds: float, named_adds: float
) -> None:
    def made(number: int, place: tuple[int, int]) -> Fixture:
        first = MONDAY + timedelta(days=place[0])
        return Fixture(
            id=f"f{number}",
            series=f"f{number}",
            name="Medal" if place[1] else "Cup",
            first_day=first,
            last_day=first + timedelta(days=place[1]),
        )

    fixtures = tuple(made(number, place) for number, place in enumerate(others))
    importance = replace(WEEKEND, fixtures=adds, named=(NamedFixtures(words="cup", adds=named_adds),))
    planning = replace(Planning(), importance=importance)
    open_then = replace(planning, days_without_work=replace(planning.days_without_work, works_on_fixtures=True))
    book = WeatherBook(typed.club, typed.weather)
    costs = []
    for now in (fixtures, (*fixtures, made(99, more))):
        records = replace(typed, planning=open_then, fixtures=now, jobs={})
        (day,) = start_days(records, moment("06-07"), book, typed.jobs["holes"], [MONDAY])
        assert day.cost is not None
        costs.append(day.cost)
    before, after = costs
    assert after.weighted_days >= before.weighted_days - 1e-9
    assert after.low >= before.low - 1e-9
    assert after.high >= before.high - 1e-9
    assert after.days == before.days


def test_a_fixture_more_that_blocks_a_day_never_lowers_the_least_cost(typed: ClubRecords) -> None:
    days = _days_in(12)
    least = []
    for fixtures in ((), (fixture(date(2027, 6, 15)),), (fixture(date(2027, 6, 15)), fixture(date(2027, 6, 22)))):
        found = _found(typed, "holes", days, fixtures=fixtures)
        least.append(min(day.cost.weighted_days for day in found if day.cost is not None))
    assert least == sorted(least)
    assert least[0] < least[-1]


def test_a_blocked_day_has_reasons_and_no_cost(typed: ClubRecords) -> None:
    days = _found(typed, "holes", [date(2027, 6, 19), MONDAY])
    assert [day.is_possible for day in days] == [False, True]
    assert [reason.because for reason in days[0].blocked] == [Because.WEEKDAY]
    assert (days[0].cost, days[0].ends, days[0].meets) == (None, None, ())


def test_the_fixtures_met_have_the_chance_of_that_morning(typed: ClubRecords) -> None:
    medals = tuple(fixture(MONDAY + timedelta(days=after), name=f"Medal {after}") for after in (3, 25, 30, 90))
    (day,) = _found(typed, "holes", [MONDAY], fixtures=medals)
    (disturbance,) = disturbances(
        replace(typed, jobs={}),
        moment("06-07"),
        WeatherBook(typed.club, typed.weather),
        [begun_on(typed.jobs["holes"], MONDAY)],
    )
    assert day.ends is not None
    assert day.ends.allow_until is not None
    expected = [one for one in medals if one.first_day <= day.ends.allow_until]
    assert [met.fixture for met in day.meets] == expected
    chances = disturbance.chance_on([one.first_day for one in expected])
    assert chances is not None
    assert [met.not_normal for met in day.meets] == pytest.approx(chances.tolist())


def test_without_past_years_nothing_has_a_cost(typed: ClubRecords) -> None:
    records = replace(typed, weather=replace(typed.weather, history_c={}, observed_c={}))
    (day,) = _found(records, "holes", [MONDAY])
    assert day.is_possible
    assert day.cost is None
