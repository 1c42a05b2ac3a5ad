"""Days for several jobs: by hand where an end is typed, by a slow search and the notices' own sums on the demo."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime
from itertools import product
from pathlib import Path

import pytest

from swardcast.language.voice import Voice
from swardcast.outlook.memory import assess_jobs
from swardcast.outlook.states import Milestone
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.disturbance import begun_on
from swardcast.planning.programme import AskedTogether, Together, find_together
from swardcast.planning.programme_columns import TOGETHER_COLUMNS, jobs_in_schedules
from swardcast.planning.programme_notes import blame_in_words, together_notes
from swardcast.planning.programme_tables import together_reasons, together_tables
from swardcast.planning.start_days import start_days
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from swardcast.records.importance import Importance
from swardcast.records.planning import Planning
from tests.outlook.small_club import SmallClub, moment
from tests.planning.asked import fixture

TEN_DAYS = "    normal after: {from: 10 to 10 days, source: our own experience}\n"
WEEKEND = Importance(weekdays={5: 2.0, 6: 3.0}, fixtures=4.0, is_typed=True)
VOICE = Voice.english(date(2027, 6, 7))


@pytest.fixture(scope="module")
def typed(tmp_path_factory: pytest.TempPathFactory) -> ClubRecords:
    """A club with jobs of a day, each over after 10 days: "first" and "second" on the same greens, "third" on a tee."""
    club = SmallClub(tmp_path_factory.mktemp("programme") / "club")
    club.job("first", "06-14", "re-turfing", more=TEN_DAYS)
    club.job("second", "06-15", "re-turfing", more=TEN_DAYS)
    club.job("third", "06-14", "re-turfing", surfaces="tee 1", more=TEN_DAYS + "    spare days: 2\n")
    return replace(club.records(), planning=replace(Planning(), importance=WEEKEND))


def found(
    records: ClubRecords,
    *jobs: str,
    first: date = date(2027, 6, 14),
    last: date = date(2027, 7, 2),
    gap_days: int = 0,
    in_order: bool = True,
    crews: int = 1,
    fixtures: tuple[Fixture, ...] = (),
) -> Together:
    asked = AskedTogether(
        jobs=tuple(records.jobs[job] for job in jobs),
        first=first,
        last=last,
        gap_days=gap_days,
        in_order=in_order,
        crews=crews,
    )
    book = WeatherBook(records.club, records.weather)
    return find_together(replace(records, fixtures=fixtures), moment("06-07"), book, asked)


def days_of(together: Together) -> dict[str, date]:
    return {one.job.id: one.together.day for one in together.placed}


def test_two_jobs_a_week_apart_by_hand(typed: ClubRecords) -> None:
    """Ten days from a Monday, Tuesday or Wednesday have one weekend: 8 + 2 + 3 = 13; those from a Thursday or a Friday
    more. A fixture on 22 June adds 4 to every ten days with it: from the 23rd on there is none, and the second job
    can begin 7 days after.
    """
    together = found(typed, "first", "second", gap_days=7)
    assert days_of(together) == {"first": date(2027, 6, 14), "second": date(2027, 6, 21)}
    assert together.weighted_days == 26.0
    together = found(typed, "first", "second", gap_days=7, fixtures=(fixture(date(2027, 6, 22)),))
    assert days_of(together) == {"first": date(2027, 6, 23), "second": date(2027, 6, 30)}
    assert (together.weighted_days, together.plain_days) == (26.0, 20.0)


def test_spare_days_are_kept_free_too(typed: ClubRecords) -> None:
    """By hand: the work on Monday the 14th may take until Wednesday, so that the next begins on Thursday, 14 + 1 + 2.

    From a Thursday the ten days have two Saturdays: 7 + 4 + 3 = 14; 13 + 14 = 27. Beginning on Wednesday the 16th
    leaves the next from Monday the 21st on: 13 + 13 = 26.
    """
    together = found(typed, "third", "first", last=date(2027, 6, 18))
    assert days_of(together) == {"third": date(2027, 6, 14), "first": date(2027, 6, 17)}
    assert together.weighted_days == 27.0
    together = found(typed, "third", "first", last=date(2027, 6, 21))
    assert days_of(together) == {"third": date(2027, 6, 14), "first": date(2027, 6, 21)}
    assert together.weighted_days == 26.0
    two_crews = found(typed, "third", "first", last=date(2027, 6, 18), in_order=False, crews=2)
    assert days_of(two_crews) == {"third": date(2027, 6, 14), "first": date(2027, 6, 14)}


def test_jobs_of_whose_ends_nothing_is_known_come_as_soon_as_they_fit(typed: ClubRecords, tmp_path: Path) -> None:
    """Without past years no healing is computed; a job with a typed end beside it is the only one that counts."""
    club = SmallClub(tmp_path / "club")
    club.job("holes", "06-14")
    club.job("more", "06-14")
    club.job("turf", "06-14", "re-turfing", surfaces="tee 1", more=TEN_DAYS)
    (tmp_path / "club" / "weather" / "history" / "2024-2026.csv").unlink()
    records = replace(club.records(), planning=replace(Planning(), importance=WEEKEND))
    together = found(records, "holes", "more")
    assert days_of(together) == {"holes": date(2027, 6, 14), "more": date(2027, 6, 15)}
    assert not together.has_costs
    (table,) = together_tables(together, VOICE)
    assert table.caption == "The soonest days on which the jobs fit"
    with_medal = found(records, "holes", "more", fixtures=(fixture(date(2027, 6, 19)),))
    reasons = dict(together_reasons(with_medal, VOICE))
    assert reasons["A"] == "Which fixtures after the work it touches is not known."
    said = " ".join(together_notes(together, records, VOICE))
    assert "proven" not in said
    assert "No other first days" not in said
    assert {one.has_costs for one in jobs_in_schedules(together)} == {False}
    mixed = found(records, "holes", "turf")
    assert mixed.has_costs
    assert mixed.weighted_days == 13.0
    assert [job.id for job in mixed.without_end] == ["holes"]


def test_a_job_that_waits_says_for_which_gap(typed: ClubRecords) -> None:
    together = found(typed, "first", "second", gap_days=7)
    first, second = together.placed
    assert first.after is None
    assert second.after is not None
    assert (second.after.earlier, second.after.least_days) == ("first", 7)
    said = dict(together_reasons(together, VOICE))
    assert "waits until 1 week after the work of A" in said["B"].replace("\u00a0", " ")
    assert "No first day would cost it less" in said["A"]


def test_jobs_that_do_not_fit_are_told_with_the_gap_that_would_do(typed: ClubRecords) -> None:
    """From Monday 14 to Friday 25 June there are 11 days between the first and the last first day."""
    together = found(typed, "first", "second", last=date(2027, 6, 25), gap_days=14)
    assert not together.placed
    assert not together_tables(together, VOICE)
    said = blame_in_words(together, VOICE).replace("\u00a0", " ")
    assert "with 11 days instead of 2 weeks from A to B" in said
    assert "crew more" not in said
    assert together_notes(together, typed, VOICE)
    assert jobs_in_schedules(together) == ()


def test_what_the_log_says_of_a_jobs_day_is_past_once_it_is_moved(tmp_path: Path) -> None:
    """Put off by an entry until 21 June: the gap counts from the day that is found for it, and so do its dates."""
    club = SmallClub(tmp_path / "club")
    club.job("holes", "06-14")
    club.job("more", "06-28")
    club.log(
        "put-off",
        "06-02",
        "change of plan",
        "job: holes",
        "change: postponed to",
        "starts: 2027-06-21",
        "because: rain",
    )
    records = club.records()
    together = found(records, "holes", "more", first=date(2027, 6, 14), last=date(2027, 6, 18))
    plan = {job.id: begun_on(job, days_of(together)[job.id]) for job in together.asked.jobs}
    book = WeatherBook(records.club, records.weather)
    notices = assess_jobs(replace(records, jobs=plan, entries=()), moment("06-07"), book)
    for one in together.placed:
        assert one.together.ends == notices[one.job.id].dates[Milestone.BACK_TO_NORMAL]


@pytest.fixture(scope="module")
def of_demo(demo_records: ClubRecords) -> Together:
    jobs = ("greens-solid-tining-2027", "greens-verticutting-2027")
    as_of = datetime(2027, 4, 20, 8, tzinfo=demo_records.club.time_zone)
    asked = AskedTogether(
        jobs=tuple(demo_records.jobs[job] for job in jobs), first=date(2027, 5, 3), last=date(2027, 5, 23), gap_days=3
    )
    return find_together(demo_records, as_of, WeatherBook(demo_records.club, demo_records.weather), asked)


def test_the_demos_best_days_are_the_best_of_all_pairs(demo_records: ClubRecords, of_demo: Together) -> None:
    """Each pair in turn, from costs asked for with the other job out of the plan."""
    solid, blades = of_demo.asked.jobs
    book = WeatherBook(demo_records.club, demo_records.weather)
    alone = replace(demo_records, jobs={})
    run = [one.day for one in of_demo.days[solid.id]]
    of_solid, of_blades = (start_days(alone, of_demo.as_of, book, job, run) for job in (solid, blades))
    costs = {}
    for one, other in product(of_solid, of_blades):
        if one.cost is not None and other.cost is not None:
            last = one.work_days[-1].toordinal() + 1  # one spare day
            while date.fromordinal(last).weekday() > 4:
                last += 1
            if other.day.toordinal() - last >= 3:
                costs[one.day, other.day] = round(one.cost.weighted_days, 2) + round(other.cost.weighted_days, 2)
    days = days_of(of_demo)
    assert costs[days[solid.id], days[blades.id]] == pytest.approx(min(costs.values()), abs=1e-9)
    assert of_demo.trade_offs[0].weighted_days == pytest.approx(min(costs.values()), abs=1e-9)


def test_the_dates_are_those_that_the_notices_would_tell_were_the_plan_so(
    demo_records: ClubRecords, of_demo: Together
) -> None:
    plan = {
        job.id: replace(begun_on(job, days_of(of_demo)[job.id]), announced=date(2027, 4, 1))
        for job in of_demo.asked.jobs
    }
    book = WeatherBook(demo_records.club, demo_records.weather)
    notices = assess_jobs(replace(demo_records, jobs=plan), of_demo.as_of, book)
    for one in of_demo.placed:
        assert one.together.ends == notices[one.job.id].dates[Milestone.BACK_TO_NORMAL]


def test_work_on_turf_that_still_heals_costs_more_than_alone_and_the_notes_say_so(
    demo_records: ClubRecords, of_demo: Together
) -> None:
    first, second = of_demo.placed
    assert first.together.cost is not None
    assert first.alone.cost is not None
    assert first.together.cost.weighted_days == pytest.approx(first.alone.cost.weighted_days)
    assert first.together.ends is not None
    assert first.together.ends.likely is not None
    assert second.together.day < first.together.ends.likely
    assert second.alone.cost is not None
    assert second.together.cost is not None
    more = second.together.cost.weighted_days - second.alone.cost.weighted_days
    assert more > 0.05
    said = " ".join(together_notes(of_demo, demo_records, VOICE)).replace("\u00a0", " ")
    assert f"which is {more:.1f} more, since some of the turf still heals" in said
    assert ("A longer gap would keep them apart." in said) is (more >= 1)


def test_each_job_of_each_trade_off_is_a_row_and_the_first_has_the_dates_of_all_together(of_demo: Together) -> None:
    rows = [{name: value(one) for name, value in TOGETHER_COLUMNS.items()} for one in jobs_in_schedules(of_demo)]
    assert len(rows) == 2 * len(of_demo.trade_offs)
    assert all((row["likely"] is not None) is (row["schedule"] == 1) for row in rows)
    best, *_ = together_tables(of_demo, VOICE)
    assert [row[0] for row in best.rows] == ["A", "B", ""]
