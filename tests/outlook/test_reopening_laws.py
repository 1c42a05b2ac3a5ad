"""Laws of the hours of reopening, asked of the whole assessment of a job and never of a part of it."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from swardcast.outlook.reopening import HeldUp, Hours
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Progress
from tests.outlook.working import Course, at, entry

_MORNING = at("06-07 07:00")  # a Monday in June, work from 6:30am to 3:30pm
laws = settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
minutes = st.integers(5, 240)
more = st.integers(0, 200)


@pytest.fixture(scope="module")
def course(demo_records: ClubRecords) -> Course:
    return Course(demo_records, follow_up=(30, 90))


@pytest.fixture(scope="module")
def plain(demo_records: ClubRecords) -> Course:
    return Course(demo_records)


def _log(each: list[int], *, start: datetime = _MORNING, greens: int = 6) -> list[Progress]:
    """Greens one after the other, the first ones finished after so many minutes each."""
    log, now = [entry(start, "started", range(1, greens + 1))], start
    for number, spent in enumerate(each, start=1):
        now += timedelta(minutes=spent)
        log.append(entry(now, "done", (number,)))
    return log


def _not_sooner(later: Hours, sooner: Hours) -> bool:
    return later.early >= sooner.early and later.likely >= sooner.likely and later.latest >= sooner.latest


@laws
@given(each=st.lists(st.integers(5, 80), min_size=1, max_size=4), slower=st.floats(1, 3))
def test_a_faster_pace_never_reopens_later(course: Course, each: list[int], slower: float) -> None:
    """All finishes at a slower pace."""
    slow = [round(spent * slower) for spent in each]
    asked = at("06-07 07:00") + timedelta(minutes=sum(slow))
    fast_hours, slow_hours = course.hours(asked, *_log(each)), course.hours(asked, *_log(slow))
    for green in range(len(each) + 1, 7):
        assert _not_sooner(slow_hours[green], fast_hours[green])


@laws
@given(each=st.lists(st.integers(5, 100), min_size=1, max_size=4), saved=st.integers(0, 60))
def test_a_last_finish_that_comes_sooner_never_makes_it_likely_later(
    course: Course, each: list[int], saved: int
) -> None:
    sooner = [*each[:-1], max(1, each[-1] - saved)]
    asked = _MORNING + timedelta(minutes=sum(each))
    before, after = course.hours(asked, *_log(each)), course.hours(asked, *_log(sooner))
    for green in range(len(each) + 1, 7):
        assert after[green].likely <= before[green].likely


@laws
@given(each=st.lists(st.integers(5, 80), max_size=3), worked=st.integers(0, 60), stopped=st.integers(1, 2000))
def test_a_hold_up_never_reopens_sooner(course: Course, each: list[int], worked: int, stopped: int) -> None:
    log = _log(each)
    held = log[-1].head.at + timedelta(minutes=worked)
    resumed = held + timedelta(minutes=stopped)
    left = range(len(each) + 1, 7)
    stop = [entry(held, "held", left), entry(resumed, "resumed", left)]
    without, within = course.hours(resumed, *log), course.hours(resumed, *log, *stop)
    for green in left:
        assert _not_sooner(within[green], course.hours(held, *log)[green])
        if resumed.date() == held.date():
            assert _not_sooner(within[green], without[green])


@laws
@given(each=st.lists(st.integers(5, 80), max_size=3), worked=st.integers(0, 60), stopped=st.integers(0, 2000))
def test_while_it_is_held_up_there_is_no_likely_time_and_not_before_only_grows(
    course: Course, each: list[int], worked: int, stopped: int
) -> None:
    log = _log(each)
    held = log[-1].head.at + timedelta(minutes=worked)
    left = range(len(each) + 1, 7)
    log.append(entry(held, "held", left))
    at_once, later = course.told(held, *log), course.told(held + timedelta(minutes=stopped), *log)
    for green in left:
        first, second = at_once[green], later[green]
        assert isinstance(first, HeldUp)
        assert isinstance(second, HeldUp)
        assert second.since == first.since == held
        assert second.not_before >= first.not_before
        assert second.not_before >= held + timedelta(minutes=stopped)


@laws
@given(first=st.integers(0, 900), delay=st.integers(0, 900))
def test_a_later_start_never_reopens_sooner(course: Course, first: int, delay: int) -> None:
    midnight = at("06-07 00:00")
    starts = [midnight + timedelta(minutes=number) for number in (first, first + delay)]
    if starts[1].date() != starts[0].date():
        return
    early, late = (course.hours(starts[1], *_log([], start=start)) for start in starts)
    for green in range(1, 7):
        assert _not_sooner(late[green], early[green])


@laws
@given(each=st.lists(st.integers(5, 80), max_size=3), extra=st.integers(0, 12))
def test_more_surfaces_left_never_reopen_sooner(course: Course, each: list[int], extra: int) -> None:
    few, many = _log(each), _log(each, greens=6 + extra)
    asked = few[-1].head.at
    assert _not_sooner(course.hours(asked, *many)[6 + extra], course.hours(asked, *few)[6])


@laws
@given(start=st.integers(0, 540), evening=st.integers(1, 500), day=st.sampled_from(["06-07", "06-10", "06-11"]))
def test_after_the_working_day_it_is_a_later_working_morning(
    course: Course, start: int, evening: int, day: str
) -> None:
    begins = at(f"{day} 06:30") + timedelta(minutes=start)
    over = at(f"{day} 15:30") + timedelta(minutes=evening)
    for hours in course.hours(over, *_log([], start=begins)).values():
        for moment in (hours.early, hours.likely, hours.latest):
            assert moment.date() > begins.date()
            assert moment.weekday() < 5
            assert (6, 30) <= (moment.hour, moment.minute) <= (15, 30)


@laws
@given(pace=st.integers(10, 60), fewer=st.integers(1, 3), further=st.integers(1, 3))
def test_more_finishes_at_the_same_pace_narrow_the_range(plain: Course, pace: int, fewer: int, further: int) -> None:
    """The next green, from its own start: the share by which the latest time lies above the likely one."""

    def width(finished: int) -> float:
        log = _log([pace] * finished, greens=18)
        hours = plain.hours(log[-1].head.at, *log)[finished + 1]
        begins = log[-1].head.at
        return (hours.latest - begins) / (hours.likely - begins)

    assert width(fewer + further) < width(fewer) + 1e-9


@laws
@given(each=st.lists(minutes, max_size=4), wait=st.integers(0, 5000))
def test_time_that_passes_without_an_entry_never_brings_it_forward(course: Course, each: list[int], wait: int) -> None:
    log = _log(each)
    asked = log[-1].head.at
    first, later = course.hours(asked, *log), course.hours(asked + timedelta(minutes=wait), *log)
    for green in range(len(each) + 1, 7):
        assert _not_sooner(later[green], first[green])


@laws
@given(low=more, width=more, longer=more)
def test_longer_follow_up_never_reopens_sooner(demo_records: ClubRecords, low: int, width: int, longer: int) -> None:
    log = [entry(_MORNING, "started", (1, 2))]
    short = Course(demo_records, follow_up=(low, low + width)).hours(_MORNING, *log)
    long = Course(demo_records, follow_up=(low + longer, low + width + longer)).hours(_MORNING, *log)
    for green in (1, 2):
        assert _not_sooner(long[green], short[green])


@laws
@given(each=st.lists(minutes, max_size=4), wait=st.integers(0, 5000))
def test_hours_and_days_are_never_two_different_days(course: Course, each: list[int], wait: int) -> None:
    log = _log(each)
    asked = log[-1].head.at + timedelta(minutes=wait)
    hours, days = course.hours(asked, *log), course.days(asked, *log)
    for green, one in hours.items():
        assert (days[green].early, days[green].likely) == (one.early.date(), one.likely.date())
        assert days[green].allow_until == one.latest.date()
