"""Several jobs on one green: each comes on top of what was really done there before."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest

from swardcast.outlook.states import Milestone, NoDate, ReasonKind, Work
from tests.outlook.small_club import HOLES, SmallClub, moment


def test_work_planned_sooner_and_done_later_comes_on_top(tmp_path: Path) -> None:
    """Planned for 1 and 5 April, done on the 8th and the 5th: the one of the 8th finds the other's marks."""
    club = SmallClub(tmp_path)
    club.job("first", "04-01")
    club.job("second", "04-05")
    club.done("second", "04-05")
    club.done("first", "04-08")
    later = moment("04-20")
    assert club.recovery("second", later).before == 0
    # Sand 0.5692 exp(-1.2) and holes 0.10 exp(-2.7 x 3 / 12.7) after three growth days, by hand.
    assert club.recovery("first", later).before == pytest.approx(1 - (1 - 0.17144) * (1 - 0.05285), abs=0.0005)


def test_work_that_nobody_has_begun_is_no_earlier_work(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("forgotten", "04-01")
    club.job("now", "06-01")
    assert club.recovery("now", moment("06-01")).before == 0


def test_two_light_dressings_need_no_days_for_holes_that_nobody_made(tmp_path: Path) -> None:
    """0.5 mm hides 1 - exp(-0.5 / 2.85) = 16.1 %; with the other's rest 2 % is reached by sand alone."""
    club = SmallClub(tmp_path)
    for name, day in (("one", "05-03"), ("two", "05-06")):
        club.job(name, day, "topdressing: {sand: 0.5 mm}")
        club.done(name, day)
    days = club.days("two", moment("05-10"))
    assert days[Milestone.HOLES_CLOSED] == days[Milestone.BACK_TO_NORMAL]


def test_large_holes_wait_for_their_rim_also_under_a_second_job(tmp_path: Path) -> None:
    """A 25 mm drill needs 12.5 / 0.9 = 13.9 growth days at least; a day later 12.9 are left."""
    club = SmallClub(tmp_path)
    drill = "hollow tining: {diameter: 25 mm, spacing: 100 x 100 mm, depth: 150 mm}"
    club.job("drill", "05-03", drill)
    club.job("needles", "05-04", "needle tining: {diameter: 6 mm, spacing: 50 x 50 mm, depth: 60 mm}")
    club.done("drill", "05-03")
    club.done("needles", "05-04")
    assert club.recovery("needles", moment("05-05")).rim_growth_days == pytest.approx(12.5 / 0.9 - 1, abs=0.01)


def test_work_more_than_a_year_ahead_gets_no_date_and_says_why(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("far", "04-01", HOLES)
    path = club.folder / "plan/far.yaml"
    path.write_text(
        path.read_text(encoding="utf-8").replace("starts: 2027-04-01", "starts: 2029-05-07"), encoding="utf-8"
    )
    work = club.work("far", moment("06-01"))
    assert work.work is Work.PLANNED
    assert work.dates[Milestone.BACK_TO_NORMAL].no_date is NoDate.TOO_FAR
    assert ReasonKind.TOO_FAR in [reason.kind for reason in work.reasons]


def test_a_look_before_the_work_says_nothing_of_it(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "05-20")
    club.log("look", "05-10", "observation", "job: spring", "disruption left: 0 %")
    assert club.recovery("spring", moment("05-12")).looks == ()
    club.done("spring", "05-20")
    assert club.recovery("spring", moment("05-22")).looks == ()


def test_every_date_of_a_job_lies_on_or_after_its_work(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "04-01")
    club.done("spring", "04-01")
    for step in (0, 3, 10, 40):
        work = club.work("spring", moment("04-01") + timedelta(days=step))
        for given in work.dates.values():
            assert given.early is not None
            assert work.recovery is not None
            assert given.early >= work.recovery.start
