"""Days for several jobs at the least cost: against a search through every schedule there is."""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta
from itertools import combinations, pairwise, product
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from swardcast.planning.schedule import Gap, Schedule, StartDays, Wish, schedules
from swardcast.planning.schedule_blame import Eased, blame_for

DAY = date(2027, 3, 1)
ALL = 500
SOME = settings(max_examples=40)
FEW = settings(max_examples=20)


def later(days: int) -> date:
    return DAY + timedelta(days=days)


def job(name: str, starts: list[int], lasts: int, weighted: list[float], plain: list[float] | None = None) -> StartDays:
    """A job that takes a number of days, whichever day it starts on."""
    return StartDays(
        job=name,
        first_days=tuple(later(day) for day in starts),
        last_days=tuple(later(day + lasts - 1) for day in starts),
        weighted_days=tuple(weighted),
        plain_days=tuple(weighted if plain is None else plain),
    )


def first_days(schedule: Schedule) -> tuple[int, ...]:
    return tuple((day - DAY).days for day in schedule.first_days.values())


# A slow search, in whole hundredths of a weighted day and tenths of a plain one, that knows nothing of rows and variables.

Found = tuple[int, int, tuple[date, ...]]


def every_schedule(wish: Wish) -> Iterator[Found]:
    """Each allowed schedule: its weighted days, its plain days, its first days."""
    for places in product(*(range(len(one.first_days)) for one in wish.jobs)):
        work = {
            one.job: (one.first_days[place], one.last_days[place]) for one, place in zip(wish.jobs, places, strict=True)
        }
        if is_allowed(work, wish):
            yield (
                sum(round(one.weighted_days[place] * 100) for one, place in zip(wish.jobs, places, strict=True)),
                sum(round(one.plain_days[place] * 10) for one, place in zip(wish.jobs, places, strict=True)),
                tuple(first for first, _ in work.values()),
            )


def is_allowed(work: dict[str, tuple[date, date]], wish: Wish) -> bool:
    days = [later(number) for number in range(60)]
    if any(sum(first <= day <= last for first, last in work.values()) > wish.crews for day in days):
        return False
    for gap in wish.gaps:
        (one_first, one_last), (other_first, other_last) = work[gap.earlier], work[gap.later]
        if other_first > one_first:
            if (other_first - one_last).days < gap.least_days:
                return False
        elif gap.in_order or (one_first - other_last).days < 1:
            return False
    return True


def slow_best(wish: Wish) -> Found | None:
    return min(every_schedule(wish), default=None)


def slow_frontier(wish: Wish) -> list[Found]:
    """Those that no other beats in one aim without being worse in the other; of equals the soonest."""
    everything = sorted(every_schedule(wish))
    front: list[Found] = []
    for found in everything:
        if not front or found[1] < front[-1][1]:
            front.append(found)
    return front


def as_found(schedule: Schedule) -> Found:
    return (
        round(schedule.weighted_days * 100),
        round(schedule.plain_days * 10),
        tuple(schedule.first_days.values()),
    )


# Costs of few sizes make many equals, of hundredths few.
COSTS = st.one_of(st.integers(0, 6).map(float), st.integers(0, 3000).map(lambda hundredths: hundredths / 100))


@st.composite
def wishes(draw: st.DrawFn) -> Wish:
    jobs = []
    for name in ("A", "B", "C"):
        starts = sorted(draw(st.sets(st.integers(0, 13), min_size=1, max_size=8)))
        lasts = draw(st.integers(1, 4))
        weighted, plain = (draw(st.lists(COSTS, min_size=len(starts), max_size=len(starts))) for _ in range(2))
        jobs.append(job(name, starts, lasts, weighted, plain))
    gaps = []
    for one, other in combinations("ABC", 2):
        kind = draw(st.sampled_from(("none", "free", "in order", "both")))
        if kind != "none":
            gaps.append(Gap(earlier=one, later=other, least_days=draw(st.integers(1, 7)), in_order=kind == "in order"))
        if kind == "both":
            gaps.append(Gap(earlier=other, later=one, least_days=draw(st.integers(1, 7))))
    return Wish(jobs=tuple(jobs), gaps=tuple(draw(st.permutations(gaps))), crews=draw(st.integers(1, 2)))


@SOME
@given(wishes())
def test_the_best_is_the_best_of_all_schedules_and_of_equals_the_soonest(wish: Wish) -> None:
    found = schedules(wish, most=2)
    slow = slow_best(wish)
    assert [as_found(one) for one in found.shown[:1]] == ([slow] if slow else [])


@SOME
@given(wishes())
def test_the_trade_offs_are_all_there_are(wish: Wish) -> None:
    found = schedules(wish, most=ALL)
    assert [as_found(one) for one in found.shown] == slow_frontier(wish)
    assert found.in_all == len(found.shown)


@FEW
@given(wishes(), st.data())
def test_a_fixture_more_never_makes_the_best_better(wish: Wish, data: st.DataObject) -> None:
    """A fixture adds to the weight of days, and so to the costs of some first days."""
    dearer = []
    for one in wish.jobs:
        more = data.draw(st.lists(st.floats(0, 10), min_size=len(one.first_days), max_size=len(one.first_days)))
        costs = tuple(cost + extra for cost, extra in zip(one.weighted_days, more, strict=True))
        dearer.append(replace(one, weighted_days=costs))
    before, after = schedules(wish, most=2).shown, schedules(replace(wish, jobs=tuple(dearer)), most=2).shown
    assert bool(before) == bool(after)
    if before:
        assert after[0].weighted_days >= before[0].weighted_days


@FEW
@given(wishes(), st.integers(1, 13))
def test_a_wider_window_never_makes_the_best_worse(wish: Wish, days: int) -> None:
    narrow = []
    for one in wish.jobs:
        kept = [place for place, day in enumerate(one.first_days) if day < later(days)]
        narrow.append(
            StartDays(
                job=one.job,
                first_days=tuple(one.first_days[place] for place in kept),
                last_days=tuple(one.last_days[place] for place in kept),
                weighted_days=tuple(one.weighted_days[place] for place in kept),
                plain_days=tuple(one.plain_days[place] for place in kept),
            )
        )
    of_few, of_many = schedules(replace(wish, jobs=tuple(narrow)), most=2).shown, schedules(wish, most=2).shown
    if of_few:
        assert of_many[0].weighted_days <= of_few[0].weighted_days


@FEW
@given(wishes().filter(lambda wish: bool(wish.gaps)), st.integers(1, 5))
def test_a_longer_gap_never_makes_the_best_better(wish: Wish, days: int) -> None:
    first, *others = wish.gaps
    longer = replace(wish, gaps=(replace(first, least_days=first.least_days + days), *others))
    before, after = schedules(wish, most=2).shown, schedules(longer, most=2).shown
    if after:
        assert before[0].weighted_days <= after[0].weighted_days


def test_two_jobs_take_the_cheapest_days_that_lie_far_enough_apart() -> None:
    """By hand: A works on days 0 to 1, 3 to 4 or 6 to 7; B has to follow its last day by 4 days at least.

    A on 0 lets B start on 5 or later, 3 on 8 or later, 6 on 11 or later: 5 + 9 = 14 (B on 6), 2 + 8 = 10 (B on 9),
    1 + 20 = 21 (B on 12).
    """
    wish = Wish(
        jobs=(job("A", [0, 3, 6], 2, [5, 2, 1]), job("B", [4, 6, 9, 12], 1, [1, 9, 8, 20])),
        gaps=(Gap(earlier="A", later="B", least_days=4, in_order=True),),
    )
    best = schedules(wish, most=2).shown[0]
    assert first_days(best) == (3, 9)
    assert best.weighted_days == 10


def test_one_crew_works_on_one_job_a_day_and_two_crews_on_two() -> None:
    jobs = (job("A", [0, 5], 3, [1, 4]), job("B", [2, 6], 2, [1, 4]))
    one, two = (schedules(Wish(jobs=jobs, crews=crews), most=2).shown[0] for crews in (1, 2))
    assert (first_days(one), one.weighted_days) == ((0, 6), 5)  # A lasts from day 0 to 2, so B waits until day 6
    assert (first_days(two), two.weighted_days) == ((0, 2), 2)


def test_jobs_come_in_the_order_told_or_in_any() -> None:
    jobs = (job("A", [0, 5], 1, [9, 1]), job("B", [1, 6], 1, [1, 9]))
    gap = Gap(earlier="A", later="B", least_days=1, in_order=True)
    told, free = (
        schedules(Wish(jobs=jobs, gaps=(one,)), most=2).shown[0] for one in (gap, replace(gap, in_order=False))
    )
    assert (first_days(told), told.weighted_days) == ((0, 1), 10)
    assert (first_days(free), free.weighted_days) == ((5, 1), 2)


def test_equal_schedules_differ_by_less_than_a_hundredth_and_the_soonest_is_shown() -> None:
    wish = Wish(jobs=(job("A", [0, 3], 1, [5.0024, 5.0]),))
    assert first_days(schedules(wish, most=2).shown[0]) == (0,)
    wish = Wish(jobs=(job("A", [0, 3], 1, [5.006, 5.0]),))
    assert first_days(schedules(wish, most=2).shown[0]) == (3,)


def test_of_many_trade_offs_both_ends_are_shown_and_those_at_even_steps() -> None:
    wish = Wish(jobs=(job("A", list(range(9)), 1, [float(n) for n in range(9)], [float(8 - n) for n in range(9)]),))
    found = schedules(wish, most=5)
    assert found.in_all == 9
    assert [first_days(one) for one in found.shown] == [(0,), (2,), (4,), (6,), (8,)]


def test_a_gap_that_is_too_long_is_named_with_the_days_that_would_do() -> None:
    """By hand: A ends on day 1 at the soonest, and B starts on day 22 at the latest: 21 days lie between, 28 are wished."""
    gap = Gap(earlier="A", later="B", least_days=28, in_order=True)
    wish = Wish(jobs=(job("A", [0, 3], 2, [1, 1]), job("B", [15, 22], 1, [1, 1])), gaps=(gap,))
    assert not schedules(wish, most=2).shown
    blame = blame_for(wish)
    assert blame.eased == (Eased(gap=gap, most_days=21),)
    assert blame.gaps
    assert not blame.order
    assert not blame.crew


def test_an_order_a_crew_too_few_or_a_job_without_a_day_is_named() -> None:
    gap = Gap(earlier="A", later="B", least_days=1, in_order=True)
    blame = blame_for(Wish(jobs=(job("A", [4], 1, [1]), job("B", [2], 1, [1])), gaps=(gap,)))
    assert (blame.never, blame.eased, blame.gaps, blame.order, blame.crew) == ((), (), False, True, False)
    blame = blame_for(Wish(jobs=(job("A", [2], 1, [1]), job("B", [2], 1, [1]))))
    assert (blame.never, blame.eased, blame.gaps, blame.order, blame.crew) == ((), (), False, False, True)
    blame = blame_for(Wish(jobs=(job("A", [], 1, []), job("B", [2], 1, [1]))))
    assert (blame.never, blame.crew) == (("A",), False)


@SOME
@given(wishes())
def test_what_is_said_to_give_way_does(wish: Wish) -> None:
    if slow_best(wish) is not None:
        return
    blame = blame_for(wish)
    for gap in wish.gaps:
        possible = [
            days
            for days in range(1, gap.least_days)
            if slow_best(
                replace(wish, gaps=tuple(replace(one, least_days=days) if one == gap else one for one in wish.gaps))
            )
        ]
        assert [one.most_days for one in blame.eased if one.gap == gap] == ([max(possible)] if possible else [])
    assert blame.crew == (slow_best(replace(wish, crews=wish.crews + 1)) is not None)


def slow_chain(wish: Wish, gaps: list[int]) -> int | None:
    """The least hundredths of jobs in a fixed order: for each first day of each job the least so far (Bellman)."""
    least = [round(cost * 100) for cost in wish.jobs[0].weighted_days]
    for before, after, gap in zip(wish.jobs, wish.jobs[1:], gaps, strict=False):
        so_far = []
        for day, cost in zip(after.first_days, after.weighted_days, strict=True):
            ready = [
                sum_before
                for sum_before, last in zip(least, before.last_days, strict=True)
                if (day - last).days >= gap and sum_before >= 0
            ]
            so_far.append(min(ready) + round(cost * 100) if ready else -1)
        least = so_far
    return min((cost for cost in least if cost >= 0), default=None)


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_five_jobs_of_a_season_cost_as_little_as_a_table_of_all_days_gives(seed: int) -> None:
    dice, names = random.Random(seed), "ABCDE"  # noqa: S311 - made-up costs
    jobs = []
    for name in names:
        lasts = dice.randint(1, 12)
        costs = [round(dice.uniform(20, 60), 2) for _ in range(100)]
        jobs.append(job(name, list(range(100)), lasts, costs))
    gaps = [dice.choice((1, 7, 21)) for _ in names[1:]]
    wish = Wish(
        jobs=tuple(jobs),
        gaps=tuple(
            Gap(earlier=one, later=other, least_days=days, in_order=True)
            for (one, other), days in zip(pairwise(names), gaps, strict=True)
        ),
    )
    (best, *_) = schedules(wish, most=2).shown
    assert round(best.weighted_days * 100) == slow_chain(wish, gaps)


@pytest.mark.parametrize(
    ("answer", "said"),
    [
        (SimpleNamespace(status=0, x=np.array([1.0, 1.0, 1.0, 1.0]), message=""), "does not satisfy"),
        (SimpleNamespace(status=1, x=None, message="Time limit reached."), "gave up: Time limit reached."),
    ],
)
def test_an_answer_of_the_solver_that_breaks_a_rule_is_refused(
    monkeypatch: pytest.MonkeyPatch, answer: SimpleNamespace, said: str
) -> None:
    """Both on day 0, although one crew does both."""
    monkeypatch.setattr("scipy.optimize.milp", lambda *_, **__: answer)
    with pytest.raises(ArithmeticError, match=said):
        schedules(Wish(jobs=(job("A", [0, 1], 1, [1, 2]), job("B", [0, 1], 1, [1, 2]))), most=2)


def test_weights_of_a_thousand_are_added_up_as_exactly() -> None:
    """By hand: 366 days of weight 1000 each, and a hundredth of a day between the first days."""
    wish = Wish(jobs=(job("A", [0, 1], 1, [366_000.02, 366_000.01]), job("B", [2, 3], 1, [366_000.01, 366_000.02])))
    best = schedules(wish, most=2).shown[0]
    assert (first_days(best), best.weighted_days) == ((1, 2), 732_000.02)
