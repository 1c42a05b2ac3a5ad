"""Hours of reopening against sums done by hand. The plan gives 9 hours / 6 greens = 90 minutes, and counts as one green."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from swardcast.outlook.reopening import HeldUp, Hours
from swardcast.outlook.states import DateRange, Milestone, Work
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Play, Stretch
from tests.outlook.working import Course, at, entry

FIRST_SIX = range(1, 7)


@pytest.fixture
def course(demo_records: ClubRecords) -> Course:
    return Course(demo_records)


def _likely(hours: dict[int, Hours]) -> dict[int, str]:
    return {hole: f"{one.likely:%m-%d %H:%M:%S}" for hole, one in hours.items()}


def test_before_the_first_finish_the_plan_sets_the_pace(course: Course) -> None:
    """From 7:00, 90 minutes each: 8:30, 10:00, 11:30, 13:00, 14:30; the sixth has 60 minutes today and 30 tomorrow."""
    hours = course.hours("06-07 07:30", entry(at("06-07 07:00"), "started", FIRST_SIX))
    assert _likely(hours) == {
        1: "06-07 08:30:00",
        2: "06-07 10:00:00",
        3: "06-07 11:30:00",
        4: "06-07 13:00:00",
        5: "06-07 14:30:00",
        6: "06-08 07:00:00",
    }


def test_finished_greens_teach_the_pace_of_the_rest(course: Course) -> None:
    """Three in 285 minutes with the plan's 90 as a fourth: 375 / 4 = 93.75 minutes each from 11:45 on.

    The sixth: 281.25 minutes, of which 225 are left until 3:30pm; 56.25 from 6:30am on.
    """
    log = entry(at("06-07 07:00"), "started", FIRST_SIX), entry(at("06-07 11:45"), "done", (1, 2, 3))
    hours = course.hours("06-07 12:00", *log)
    assert _likely(hours) == {4: "06-07 13:18:45", 5: "06-07 14:52:30", 6: "06-08 07:26:15"}
    # One green: spread 0.25 x sqrt(1/4 + 1) = 0.2795; the 90 % point of a normal is 1.2816.
    widest = 93.75 * math.exp(1.2816 * 0.2795)
    assert (hours[4].latest - at("06-07 11:45")) / timedelta(minutes=1) == pytest.approx(widest, abs=0.1)
    assert (hours[4].early - at("06-07 11:45")) / timedelta(minutes=1) == pytest.approx(93.75**2 / widest, abs=0.1)


def test_every_range_is_in_order_and_the_set_is_named(course: Course) -> None:
    log = entry(at("06-07 07:00"), "started", FIRST_SIX), entry(at("06-07 11:45"), "done", (1, 2, 3))
    for hours in course.hours("06-07 12:00", *log).values():
        assert hours.early <= hours.likely <= hours.latest
        assert hours.together == ("green-4", "green-5", "green-6")


def test_breaks_do_not_count(demo_records: ClubRecords) -> None:
    """Half an hour at 9:00 and at 12:00: 8 hours / 6 = 80 minutes. From 7:00: 8:20, 10:10, 11:30, then 13:20."""
    course = Course(demo_records, breaks=("09:00-09:30", "12:00-12:30"))
    hours = course.hours("06-07 07:30", entry(at("06-07 07:00"), "started", range(1, 5)))
    assert _likely(hours) == {1: "06-07 08:20:00", 2: "06-07 10:10:00", 3: "06-07 11:30:00", 4: "06-07 13:20:00"}


def test_another_order_of_finishing_leaves_the_others_in_the_order_of_the_job(course: Course) -> None:
    """4 and 2 in 180 minutes: (90 + 180) / 3 = 90 each; 1, 3, 5, 6 follow from 10:00."""
    log = entry(at("06-07 07:00"), "started", FIRST_SIX), entry(at("06-07 10:00"), "done", (4, 2))
    assert _likely(course.hours("06-07 10:30", *log)) == {
        1: "06-07 11:30:00",
        3: "06-07 13:00:00",
        5: "06-07 14:30:00",
        6: "06-08 07:00:00",
    }


def test_a_hold_up_stops_the_clock(course: Course) -> None:
    """Held from 8:00 to 11:00 with 60 minutes done: 30 are left, so 11:30 instead of 8:30."""
    log = [
        entry(at("06-07 07:00"), "started", (1, 2)),
        entry(at("06-07 08:00"), "held", (1, 2)),
        entry(at("06-07 11:00"), "resumed", (1, 2)),
    ]
    assert _likely(course.hours("06-07 11:05", *log)) == {1: "06-07 11:30:00", 2: "06-07 13:00:00"}
    log.append(entry(at("06-07 11:40"), "done", (1,)))  # it took 60 + 40 minutes: (90 + 100) / 2 = 95
    assert _likely(course.hours("06-07 12:00", *log)) == {2: "06-07 13:15:00"}


def test_held_up_has_no_likely_time(course: Course) -> None:
    """Asked at noon with 60 of the first green's minutes done.

    One green by the plan alone: 90 x exp(-1.2816 x 0.25 x sqrt(2)) = 57.2, so it may be all but done: noon.
    Two: 180 x exp(-1.2816 x 0.25 x sqrt(1 + 1/2)) = 121.6, less 57.2 for the first, so 64.4 minutes.
    """
    log = entry(at("06-07 07:00"), "started", (1, 2)), entry(at("06-07 08:00"), "held", (1, 2))
    told = course.told("06-07 12:00", *log)
    first, second = told[1], told[2]
    assert isinstance(first, HeldUp)
    assert isinstance(second, HeldUp)
    assert (first.since, first.because) == (at("06-07 08:00"), "rain")
    assert first.not_before == at("06-07 12:00")
    assert (second.not_before - at("06-07 12:00")) / timedelta(minutes=1) == pytest.approx(64.4, abs=0.2)


def test_held_up_overnight_begins_in_the_morning_at_the_earliest(course: Course) -> None:
    log = entry(at("06-07 07:00"), "started", (1,)), entry(at("06-07 07:10"), "held", (1,))
    told = course.told("06-07 20:00", *log)[1]
    assert isinstance(told, HeldUp)
    assert told.not_before > at("06-08 06:30")
    resumed = entry(at("06-08 07:00"), "resumed", (1,))
    assert _likely(course.hours("06-08 07:30", *log, resumed)) == {1: "06-08 08:20:00"}  # 80 minutes were left


def test_half_a_green_stays_under_way_until_it_is_done(course: Course) -> None:
    log = (
        entry(at("06-07 07:00"), "started", (1, 2)),
        entry(at("06-07 08:30"), "done", (1,)),
        entry(at("06-07 09:00"), "held", (2,)),
    )
    works = {work.surface.hole: work for work in course.job("06-09 12:00", *log).surfaces}
    assert works[2].work is Work.HELD_UP
    assert isinstance(works[2].hours, HeldUp)
    assert works[2].hours.since == at("06-07 09:00")


def test_greens_held_up_before_anyone_began_have_days_and_no_hours(course: Course) -> None:
    log = entry(at("06-07 07:00"), "started", (1, 2)), entry(at("06-07 07:10"), "held", range(1, 19))
    told = course.told("06-07 08:00", *log)
    assert set(told) == {1, 2}
    days = course.days("06-07 08:00", *log)
    assert days[18].likely is not None
    assert days[18].likely >= date(2027, 6, 8)


def test_the_evening_moves_it_to_the_next_working_morning(course: Course) -> None:
    """Green 1 should have been done at 8:30; by the end of the day nobody entered it. 11 June is a Friday."""
    log = (entry(at("06-11 07:00"), "started", (1, 2)),)
    assert _likely(course.hours("06-11 15:30", *log)) == {1: "06-11 08:30:00", 2: "06-11 10:00:00"}
    assert _likely(course.hours("06-11 15:31", *log)) == {1: "06-14 06:30:00", 2: "06-14 08:00:00"}
    assert _likely(course.hours("06-13 12:00", *log)) == {1: "06-14 06:30:00", 2: "06-14 08:00:00"}


def test_winter_dark_ends_the_day_before_the_hours_do(demo_records: ClubRecords) -> None:
    """In December at 55.6 degrees north the sun sets at about 3:35pm and rises at about 8:30am (NOAA's equations)."""
    course = Course(demo_records, hours="06:30-18:30", a_day=4)
    log = (entry(at("12-13 14:00"), "started", (1,)),)
    likely = course.hours("12-13 14:10", *log)[1].likely  # 180 minutes
    assert likely.date() == date(2027, 12, 14)
    assert at("12-14 09:40") < likely < at("12-14 10:10")


def test_a_day_with_23_hours_counts_the_hours_that_there_were(demo_records: ClubRecords) -> None:
    """28 March 2027: the clocks go from 1:00 to 2:00. Work from 0:30 by lamps, 90 minutes: 0:30 + 1:30 is 3:00."""
    course = Course(demo_records, hours="00:00-04:00", a_day=4 / 1.5)
    log = (entry(at("03-28 00:30"), "started", (1,)),)  # a Sunday: the entry makes it a day of work
    assert f"{course.hours('03-28 00:40', *log)[1].likely:%m-%d %H:%M}" == "03-28 03:00"


def test_follow_up_work_comes_after_the_finish(demo_records: ClubRecords) -> None:
    """An hour: 90 + 60 minutes after 7:00. A green done at 3:00pm would be ready at 4:00pm: it waits for the morning."""
    course = Course(demo_records, follow_up=(60, 60))
    log = [entry(at("06-07 07:00"), "started", (1, 2))]
    assert _likely(course.hours("06-07 07:30", *log)) == {1: "06-07 09:30:00", 2: "06-07 11:00:00"}
    log.append(entry(at("06-07 15:00"), "done", (1, 2)))
    assert _likely(course.hours("06-07 15:10", *log)) == {1: "06-08 06:30:00", 2: "06-08 06:30:00"}


def test_a_range_of_follow_up_widens_the_range(demo_records: ClubRecords) -> None:
    """30 to 90 minutes in five equal parts: 36, 48, 60, 72, 84 after 8:30."""
    course = Course(demo_records, follow_up=(30, 90))
    log = entry(at("06-07 07:00"), "started", (1, 2)), entry(at("06-07 08:30"), "done", (1,))
    hours = course.hours("06-07 08:40", *log)[1]
    assert (hours.early, hours.likely, hours.latest) == (at("06-07 09:06"), at("06-07 09:30"), at("06-07 09:54"))


def test_while_follow_up_goes_on_the_green_is_as_during_the_work_until_an_entry_opens_it(
    demo_records: ClubRecords,
) -> None:
    course = Course(demo_records, follow_up=(30, 90))
    log = [entry(at("06-07 07:00"), "started", (1, 2)), entry(at("06-07 08:30"), "done", (1,))]
    assert set(course.told("06-07 16:00", *log)) == {1, 2}  # long over, and nobody opened it
    log.append(entry(at("06-07 09:20"), "done", (1,), play=Play.OPEN_WITH_CARE))
    assert set(course.told("06-07 09:30", *log)) == {2}
    assert course.days("06-07 09:30", *log)[1] == DateRange.known(date(2027, 6, 7))


def test_a_range_in_days_goes_before_follow_up(demo_records: ClubRecords) -> None:
    weeks = Stretch(from_days=42, to_days=70, source="experience")
    course = Course(demo_records, follow_up=(30, 90), reopens_after=weeks)
    log = (entry(at("06-07 07:00"), "started", (1,)),)
    assert course.told("06-07 08:00", *log) == {}
    likely = course.days("06-07 08:00", *log)[1].likely
    assert likely == date(2027, 6, 7) + timedelta(days=56)


def test_two_sets_at_once_share_the_staff(course: Course) -> None:
    """Two crews: each green takes 180 minutes, so that six are still done in a day.

    From 7:00 greens 1 and 10 at 10:00, 2 and 11 at 13:00.
    """
    log = entry(at("06-07 07:00"), "started", (1, 2)), entry(at("06-07 07:00"), "started", (10, 11))
    hours = course.hours("06-07 07:30", *log)
    expected = {1: "10:00", 2: "13:00", 10: "10:00", 11: "13:00"}
    assert {hole: f"{one.likely:%H:%M}" for hole, one in hours.items()} == expected
    assert hours[2].together == ("green-1", "green-2")
    assert hours[11].together == ("green-10", "green-11")


def test_two_jobs_of_a_day_keep_their_own_pace(course: Course) -> None:
    job = course.records.jobs["job"]
    course.add(replace(job, id="tees", surfaces=tuple(f"tee-{n}" for n in range(1, 19)), surfaces_a_day=18))
    log = entry(at("06-07 07:00"), "started", (1, 2)), entry(at("06-07 07:00"), "started", (1, 2), job="tees")
    assert _likely(course.hours("06-07 07:30", *log)) == {1: "06-07 08:30:00", 2: "06-07 10:00:00"}
    tees = course.hours("06-07 07:30", *log, job="tees")  # 540 / 18 = 30 minutes
    assert _likely(tees) == {1: "06-07 07:30:00", 2: "06-07 08:00:00"}


def test_finishes_entered_one_after_the_other_share_the_time(course: Course) -> None:
    """1 at 8:40 and 2 in the same minute, both in 100 minutes: (90 + 100) / 3 = 63.33 for the third."""
    log = (
        entry(at("06-07 07:00"), "started", (1, 2, 3)),
        entry(at("06-07 08:40"), "done", (1,)),
        entry(at("06-07 08:40"), "done", (2,)),
    )
    assert _likely(course.hours("06-07 09:00", *log)) == {3: "06-07 09:43:20"}


def test_a_start_entered_with_the_finish_teaches_nothing(course: Course) -> None:
    log = entry(at("06-07 09:00"), "started", (1, 2)), entry(at("06-07 09:00"), "done", (1,))
    assert _likely(course.hours("06-07 09:10", *log)) == {2: "06-07 10:30:00"}


def test_a_finish_without_a_start_gives_no_hours(course: Course) -> None:
    log = (entry(at("06-07 11:00"), "done", (1, 2)),)
    assert course.told("06-07 12:00", *log) == {}


def test_a_saturday_with_an_entry_is_a_day_of_work(course: Course) -> None:
    """12 June 2027 is a Saturday."""
    log = (entry(at("06-12 07:00"), "started", (1, 2)),)
    assert _likely(course.hours("06-12 07:30", *log)) == {1: "06-12 08:30:00", 2: "06-12 10:00:00"}


def test_work_taken_up_again_in_the_morning_goes_on_where_it_stood(course: Course) -> None:
    """14:30 to 15:30 and 6:30 to 7:00 make the 90 minutes of green 1."""
    log = (entry(at("06-07 14:30"), "started", (1, 2)),)
    assert _likely(course.hours("06-07 14:40", *log)) == {1: "06-08 07:00:00", 2: "06-08 08:30:00"}
    resumed = entry(at("06-08 06:30"), "resumed", (1, 2))
    assert _likely(course.hours("06-08 06:40", *log, resumed)) == {1: "06-08 07:00:00", 2: "06-08 08:30:00"}


def test_the_days_are_those_of_the_hours_and_the_rest_comes_after(course: Course) -> None:
    log = (entry(at("06-07 12:00"), "started", FIRST_SIX),)  # 9 hours: 210 minutes today, 330 tomorrow
    hours, days = course.hours("06-07 12:10", *log), course.days("06-07 12:10", *log)
    for hole, one in hours.items():
        told = (one.early.date(), one.likely.date(), one.latest.date())
        assert (days[hole].early, days[hole].likely, days[hole].allow_until) == told
    assert days[6].likely == date(2027, 6, 8)
    for hole in range(7, 19):
        likely = days[hole].likely
        assert likely is not None
        assert likely >= date(2027, 6, 8)


def test_a_job_called_off_has_no_hours(demo_records: ClubRecords) -> None:
    from swardcast.records.log import Change, PlanChange

    course = Course(demo_records)
    start = entry(at("06-07 07:00"), "started", (1, 2))
    head = replace(start.head, id="off", at=at("06-07 08:00"), true_from=at("06-07 08:00"))
    off = PlanChange(head=head, job="job", change=Change.CALLED_OFF, starts=None, because="frost")
    records = course.records
    course.records = replace(records, entries=(start, off))
    from swardcast.outlook.memory import assess_jobs
    from swardcast.outlook.weather_book import WeatherBook

    outlook = assess_jobs(course.records, at("06-07 09:00"), WeatherBook(records.club, records.weather))["job"]
    assert all(work.hours is None for work in outlook.surfaces)


def test_a_club_far_from_greenwich_has_its_own_day(demo_records: ClubRecords) -> None:
    course = Course(demo_records)
    zone = ZoneInfo("Australia/Sydney")
    club = replace(course.records.club, latitude_deg=-33.9, longitude_deg=151.2, time_zone=zone)
    course.records = replace(course.records, club=club)
    log = (entry(datetime(2027, 6, 7, 8, 0, tzinfo=zone), "started", (1,)),)
    likely = course.hours(datetime(2027, 6, 7, 8, 10, tzinfo=zone), *log)[1].likely
    assert likely == datetime(2027, 6, 7, 9, 30, tzinfo=zone)


def test_the_job_as_a_whole_reopens_with_its_last_green(course: Course) -> None:
    log = (entry(at("06-07 07:00"), "started", range(1, 19)),)  # 18 at 90 minutes: three days of work
    job = course.job("06-07 07:10", *log)
    assert job.dates[Milestone.REOPENING].likely == date(2027, 6, 9) + timedelta(days=1)


def test_time_of_two_sets_counts_half_for_each(course: Course) -> None:
    """Green 1 took 180 minutes of half the staff: 90, as planned. So green 2 takes 180 too: 1pm."""
    log = (
        entry(at("06-07 07:00"), "started", (1, 2)),
        entry(at("06-07 07:00"), "started", (10, 11)),
        entry(at("06-07 10:00"), "done", (1,)),
    )
    assert _likely(course.hours("06-07 10:10", *log))[2] == "06-07 13:00:00"


def test_uneven_finishes_widen_the_range(course: Course) -> None:
    """60 and 120 minutes, a third off their mean: variance (2 x 0.0625 + 2/9) / 3 = 0.1157, spread 0.3402.

    The third: (90 + 180) / 3 = 90 minutes, at the latest 90 x exp(1.2816 x 0.3402 x sqrt(1/3 + 1)) = 148.9.
    """
    log = (
        entry(at("06-07 07:00"), "started", (1, 2, 3)),
        entry(at("06-07 08:00"), "done", (1,)),
        entry(at("06-07 10:00"), "done", (2,)),
    )
    hours = course.hours("06-07 10:10", *log)[3]
    assert hours.likely == at("06-07 11:30")
    assert (hours.latest - at("06-07 10:00")) / timedelta(minutes=1) == pytest.approx(148.9, abs=0.1)


def test_finishes_typed_in_a_row_do_not_make_the_range_boundless(course: Course) -> None:
    """284, 1 and 1 minutes: the spread is taken as 0.5. 94 x exp(1.2816 x 0.5 x sqrt(1/4 + 1)) = 192.4."""
    log = (
        entry(at("06-07 07:00"), "started", range(1, 5)),
        entry(at("06-07 11:44"), "done", (1,)),
        entry(at("06-07 11:45"), "done", (2,)),
        entry(at("06-07 11:46"), "done", (3,)),
    )
    hours = course.hours("06-07 12:00", *log)[4]
    assert (hours.latest - at("06-07 11:46")) / timedelta(minutes=1) == pytest.approx(192.4, abs=0.1)


def test_greens_not_started_wait_for_a_set_that_is_slow(course: Course) -> None:
    """Green 1 took 400 minutes: 245 each for five more, 1225 in all: 110 today, 540 and 540, the rest on Thursday."""
    log = entry(at("06-07 07:00"), "started", FIRST_SIX), entry(at("06-07 13:40"), "done", (1,))
    days = course.days("06-07 14:00", *log)
    assert days[6].likely == date(2027, 6, 10)
    assert days[7].likely == date(2027, 6, 10)


def test_after_the_working_day_the_next_green_is_for_tomorrow(course: Course) -> None:
    log = entry(at("06-07 07:00"), "started", (1, 2)), entry(at("06-07 10:00"), "done", (1, 2))
    assert course.days("06-07 15:00", *log)[3].likely == date(2027, 6, 7)
    assert course.days("06-07 16:00", *log)[3].likely == date(2027, 6, 8)


def test_taking_up_again_does_not_undo_a_finished_green(course: Course) -> None:
    log = (
        entry(at("06-07 07:00"), "started", (1, 2)),
        entry(at("06-07 08:30"), "done", (1,)),
        entry(at("06-07 09:00"), "held", (2,)),
        entry(at("06-07 09:30"), "resumed", (1, 2)),
    )
    assert _likely(course.hours("06-07 09:40", *log)) == {2: "06-07 10:30:00"}  # 30 of 90 minutes were spent


def test_a_job_with_some_greens_held_up_and_others_worked_on_is_under_way(course: Course) -> None:
    log = entry(at("06-07 07:00"), "started", (1, 2)), entry(at("06-07 08:00"), "held", (2,))
    assert course.job("06-07 08:10", *log).work is Work.UNDER_WAY
