"""The best times for a job, found among made-up costs."""

from __future__ import annotations

from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from swardcast.planning.blocked_days import Because, Blocked
from swardcast.planning.start_days import Cost, StartDay
from swardcast.planning.windows import Window, best_windows

FIRST = date(2027, 6, 7)  # a Monday
COSTS = st.lists(st.one_of(st.none(), st.integers(10, 60)), min_size=1, max_size=50)


def _days(costs: list[int | None], first: date = FIRST) -> list[StartDay]:
    """A cost for each day; None where a public holiday is in the way; weekends are off."""
    found = []
    for place, cost in enumerate(costs):
        day = first + timedelta(days=place)
        if day.weekday() > 4:
            because = Because.WEEKDAY
        elif cost is None:
            because = Because.HOLIDAY
        else:
            told = Cost(weighted_days=cost, low=cost, high=cost, days=cost, never=0.0)
            found.append(StartDay(day=day, blocked=(), work_days=(day,), cost=told))
            continue
        found.append(StartDay(day=day, blocked=(Blocked(because=because, day=day),), work_days=(day,)))
    return found


def _shown(windows: tuple[Window, ...]) -> list[tuple[str, str, str]]:
    return [(str(one.days[0].day), str(one.best.day), str(one.days[-1].day)) for one in windows]


def test_days_that_cost_a_tenth_more_at_most_belong_to_the_best_one() -> None:
    """Of 40 a tenth more is 44: Tuesday to the Monday after, over a weekend off, and not the Tuesday at 45."""
    (window,) = best_windows(_days([50, 44, 40, 41, 42, 0, 0, 44, 45]), 5)
    assert _shown((window,)) == [("2027-06-08", "2027-06-09", "2027-06-14")]
    assert (window.before, window.after) == ((), ())


def test_a_public_holiday_ends_a_time_and_is_told() -> None:
    (window,) = best_windows(_days([40, 40, None, 40, 40]), 5)
    assert _shown((window,)) == [("2027-06-07", "2027-06-07", "2027-06-08")]
    assert [reason.because for reason in window.after] == [Because.HOLIDAY]


def test_two_valleys_are_two_times_and_a_week_of_ups_and_downs_is_one() -> None:
    valley = [40, 42, 40, 42, 43, 0, 0, 60, 61, 62, 63, 64, 0, 0, 50, 52, 51, 53, 54]
    assert _shown(best_windows(_days([*valley]), 5)) == [
        ("2027-06-07", "2027-06-07", "2027-06-11"),
        ("2027-06-21", "2027-06-21", "2027-06-25"),
    ]


def test_a_time_stops_before_a_day_that_costs_less_than_its_best() -> None:
    """Down to 50, then up to 54 and down to 48 more than a week later: the two have a day of their own each."""
    costs = [50, 50, 51, 52, 53, 0, 0, 54, 54, 54, 53, 52, 0, 0, 48, 48, 49, 49, 49]
    windows = best_windows(_days([*costs]), 5)
    assert _shown(windows)[0][1] == "2027-06-21"
    assert not {day.day for day in windows[0].days} & {day.day for one in windows[1:] for day in one.days}


@given(COSTS, st.integers(0, 6))
def test_the_first_time_holds_the_least_cost_and_no_day_is_in_two(costs: list[int | None], most: int) -> None:
    days = _days(costs)
    windows = best_windows(days, most)
    known = [day.cost.weighted_days for day in days if day.cost is not None]
    assert len(windows) <= most
    if most and known:
        assert windows[0].best.cost is not None
        assert windows[0].best.cost.weighted_days == min(known)
    in_windows = [day.day for window in windows for day in window.days]
    assert len(in_windows) == len(set(in_windows))
    for window in windows:
        costs_there = [day.cost.weighted_days for day in window.days if day.cost is not None]
        assert len(costs_there) == len(window.days)
        assert max(costs_there) <= 1.1 * min(costs_there) + 1e-9
        assert window.best in window.days
        assert [day.day for day in window.days] == sorted(day.day for day in window.days)


@given(COSTS, st.integers(0, 20), st.integers(0, 20))
def test_a_wider_search_never_makes_the_best_worse(costs: list[int | None], before: int, after: int) -> None:
    wide = _days(costs)
    narrow = wide[before : max(before, len(wide) - after)]
    best = [best_windows(days, 1) for days in (wide, narrow)]
    if best[1]:
        assert best[0][0].best.cost is not None
        assert best[1][0].best.cost is not None
        assert best[0][0].best.cost.weighted_days <= best[1][0].best.cost.weighted_days
