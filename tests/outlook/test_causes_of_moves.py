"""A published date that moves names its cause, and the cause speaks for the way in which it moved."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from shutil import rmtree

import pytest

from swardcast.outlook.causes import Cause
from swardcast.outlook.story import JobChange, tell_story
from swardcast.outlook.weather_book import WeatherBook
from tests.outlook.small_club import SmallClub, moment


def _moves(club: SmallClub, as_of: str, job: str = "spring") -> list[JobChange]:
    records = club.records()
    story = tell_story(records, records.jobs[job], moment(as_of), WeatherBook(records.club, records.weather))
    return [change for change in story.changes if change.news.before is not None]


def _club(folder: Path, forecast_c: float | None = None, tmean_c: float = 14.0) -> SmallClub:
    club = SmallClub(folder, tmean_c=lambda _: tmean_c)
    club.job("spring", "04-01")
    club.done("spring", "04-01")
    if forecast_c is not None:
        rows = [f"2027-04-{day:02d},{forecast_c - 4},{forecast_c + 4}" for day in range(3, 18)]
        path = club.folder / "weather/forecast/2027-04-03T0600.csv"
        path.parent.mkdir(parents=True)
        path.write_text("\n".join(["date,tmin_c,tmax_c", *rows]) + "\n", encoding="utf-8")
    return club


@pytest.mark.parametrize(
    ("usual_c", "forecast_c", "cause", "later"),
    [
        (14.0, 6.0, Cause.COLDER_FORECAST, True),
        (14.0, 20.0, Cause.WARMER_FORECAST, False),
        (22.0, 34.0, Cause.HOTTER_FORECAST, True),
        (30.0, 21.0, Cause.COOLER_FORECAST, False),
    ],
)
def test_a_forecast_is_named_for_what_it_does(
    usual_c: float, forecast_c: float, cause: Cause, later: bool, tmp_path: Path
) -> None:
    move = _moves(_club(tmp_path, forecast_c, usual_c), "04-04")[0]
    assert move.news.before is not None
    old, new = move.news.before.likely, move.news.back_to_normal.likely
    assert old is not None
    assert (move.cause, new is None or new > old) == (cause, later)


def test_good_news_is_not_blamed_for_a_delay(tmp_path: Path) -> None:
    """On the morning of a cold forecast somebody looks and sees little left: the forecast moved the date."""
    club = _club(tmp_path, 4.0)
    club.log("look", "04-03", "observation", "job: spring", "disruption left: 50 %", time="06:30")
    move = _moves(club, "04-03")[0]
    assert move.cause is Cause.COLDER_FORECAST


def test_a_bad_look_is_named_where_it_moves_the_date(tmp_path: Path) -> None:
    club = _club(tmp_path)
    club.log("look", "04-15", "observation", "job: spring", "disruption left: 60 %", "how: counted")
    assert [move.cause for move in _moves(club, "04-15")][-1] is Cause.OBSERVED


def test_a_look_that_is_taken_back_is_a_correction_and_no_work(tmp_path: Path) -> None:
    club = _club(tmp_path)
    club.log("look", "04-15", "observation", "job: spring", "disruption left: 60 %", "how: counted")
    club.log("oh-no", "04-16", "correction", "corrects: look")
    assert [move.cause for move in _moves(club, "04-16")][-1] is Cause.CORRECTED


def test_taking_back_that_growth_is_held_back_is_told_at_once(tmp_path: Path) -> None:
    club = _club(tmp_path)
    club.log("dull", "04-04", "growth held back", "surfaces: greens 1-2", "cause: dull weather", "until: 2027-04-20")
    club.log("not-dull", "04-06", "correction", "corrects: dull")
    causes = [(move.at.date(), move.cause) for move in _moves(club, "04-08")]
    assert causes == [(date(2027, 4, 4), Cause.HELD_BACK), (date(2027, 4, 6), Cause.CORRECTED)]


def test_weather_moves_no_date_that_rests_on_the_plan_and_a_usual_time(tmp_path: Path) -> None:
    """Two days a green by plan, and no weather is known: green 1 took one, 2 and 3 another, so the days come forward.

    Done on 3 June, the last of them is usually back to normal 14 to 21 days later: on 24 June at the latest.
    """
    club = SmallClub(tmp_path)
    rmtree(club.folder / "weather")
    usual = "    normal after: {from: 2 to 3 weeks, source: us}\n    spare days: 3\n"
    club.job("spring", "06-01", "re-turfing", surfaces="greens 1-3", more=usual)
    plan = club.folder / "plan/spring.yaml"
    plan.write_text(plan.read_text(encoding="utf-8").replace("a day: 9", "a day: 0.5"), encoding="utf-8")
    for green, day in ((1, "06-02"), (2, "06-03"), (3, "06-03")):
        on = ("job: spring", f"surfaces: green {green}")
        club.log(f"start-{green}", day, "work started", *on, time="07:10")
        club.log(f"end-{green}", day, "work done", *on, time="15:10")
    moves = _moves(club, "06-20")
    assert (moves[-1].news.back_to_normal.likely, moves[-1].news.back_to_normal.allow_until) == (
        date(2027, 6, 21),
        date(2027, 6, 24),
    )
    assert any(move.entry is None for move in moves)  # on the morning after green 1
    assert {move.cause for move in moves} == {Cause.WORK}


def test_a_quiet_lesson_is_not_blamed_for_what_a_later_entry_does(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("early", "03-08")
    club.done("early", "03-08")
    club.normal("early", "04-02")  # 25 days instead of 24: too little to tell of
    club.job("spring", "05-03", announced="03-05")
    club.done("spring", "05-03")
    club.log("slow", "05-04", "growth held back", "surfaces: greens 1-2", "cause: growth regulator")
    assert [move.cause for move in _moves(club, "05-05")][-1] is Cause.HELD_BACK


def test_a_lesson_that_moves_a_plan_is_told_with_the_entry_that_taught_it(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("early", "03-08")
    club.done("early", "03-08")
    club.normal("early", "04-12")  # 35 days instead of 24
    club.job("spring", "05-03", announced="03-05")
    (move,) = _moves(club, "04-20")
    assert (move.at.date(), move.cause, move.entry) == (date(2027, 4, 12), Cause.LEARNT, None)


def test_some_surfaces_back_to_normal_move_the_date_of_the_rest_and_say_so(tmp_path: Path) -> None:
    """Green 1 had twice the sand and is called normal; what is left are the dates of the others."""
    club = SmallClub(tmp_path)
    club.job("spring", "04-01")
    club.done("spring", "04-01", "surfaces: green 1", name="one")
    club.done("spring", "04-08", "surfaces: green 2", name="two")
    club.normal("spring", "04-22", "surfaces: green 2", name="second")
    move = _moves(club, "04-22")[-1]
    assert move.cause is Cause.PARTLY_NORMAL
    assert move.news.before is not None
    assert move.news.before.likely is not None
    assert move.news.back_to_normal.likely is not None
    assert move.news.back_to_normal.likely < move.news.before.likely


def test_the_managers_word_replaces_the_sums_when_the_sum_said_it_first(tmp_path: Path) -> None:
    """Computed to be over by 7 May at the latest; called back to normal on 20 May."""
    club = SmallClub(tmp_path)
    club.job("spring", "04-01")
    club.done("spring", "04-01")
    club.normal("spring", "05-20")
    records = club.records()
    story = tell_story(records, records.jobs["spring"], moment("06-01"), WeatherBook(records.club, records.weather))
    assert (story.published.is_fact, story.published.likely) == (True, date(2027, 5, 20))
