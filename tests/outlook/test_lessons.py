"""What healed jobs teach the next one: by hand for a course on which every day is a growth day."""

from __future__ import annotations

import math
from datetime import date
from pathlib import Path

import pytest

from swardcast.outlook.learnt import Learnt
from swardcast.outlook.states import Lesson, Milestone, ReasonKind
from swardcast.records.club import Grass, SurfaceKind
from tests.outlook.small_club import HOLES, SmallClub, moment

MAY = moment("05-20")  # the second job is planned for 24 May and announced in March
GREEN, COOL = SurfaceKind.GREEN, Grass.COOL_SEASON
NEED, LAG = 10.3566, 13.0  # growth days to holes closed and days to normal: 12.7 mm holes, heavy sand (test_healing.py)


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    """The first job is done on 1 April; the same work is planned for 24 May."""
    small = SmallClub(tmp_path)
    small.job("spring", "04-01")
    small.job("again", "05-24")
    small.done("spring", "04-01")
    return small


def _lessons(club: SmallClub, job: str = "again", surface: str = "green-1") -> tuple[Lesson, ...]:
    return club.recovery(job, MAY, surface).lessons


def test_the_pace_of_a_healed_job_is_the_one_that_gives_its_days(club: SmallClub) -> None:
    # 1 May is 30 days after 1 April; (10.3566 + 13) / 30 = 0.77855, its logarithm -0.25032.
    source = club.normal("spring", "05-01")
    (lesson,) = _lessons(club)
    assert (lesson.job, lesson.title, lesson.source) == ("spring", "Spring work", source)
    assert (lesson.normal_on, lesson.days_taken) == (date(2027, 5, 1), 30)
    assert lesson.days_computed == pytest.approx(NEED + LAG, abs=0.001)
    assert lesson.log_pace == pytest.approx(-0.25032, abs=0.0001)


def test_a_healed_job_teaches_the_next_by_the_normal_formula(club: SmallClub) -> None:
    # One job keeps 0.35955 of its logarithm (tests/turf/test_pace.py): -0.0900; spread 0.21736.
    club.normal("spring", "05-01")
    recovery = club.recovery("again", MAY)
    assert math.log(recovery.prior.middle) == pytest.approx(-0.0900, abs=0.0001)
    assert recovery.lag_days == pytest.approx(13 * math.exp(0.0900), abs=0.001)
    # 10.3566 and 23.3566 x exp(0.09 + 0.21736 z), z = -1.2816, 0 and 1.2816: 8.58, 11.33, 14.97; 19.3, 25.6, 33.8.
    days = club.days("again", MAY)
    assert days[Milestone.HOLES_CLOSED] == (9, 12, 15)
    assert days[Milestone.BACK_TO_NORMAL] == (20, 26, 34)


def test_nothing_healed_yet_teaches_nothing(club: SmallClub) -> None:
    recovery = club.recovery("again", MAY)
    assert (recovery.lessons, recovery.prior) == ((), recovery.usual)
    assert club.days("again", MAY)[Milestone.BACK_TO_NORMAL] == (18, 24, 32)  # test_held_back.py


def test_a_second_slow_job_moves_the_dates_further(tmp_path: Path) -> None:
    likely = []
    for slow in range(3):
        club = SmallClub(tmp_path / str(slow))
        club.job("again", "06-21")
        for number, (done, normal) in enumerate([("03-08", "04-12"), ("04-19", "05-24")][:slow]):  # 35 days each
            club.job(f"work-{number}", done, announced="03-01")
            club.done(f"work-{number}", done)
            club.normal(f"work-{number}", normal)
        likely.append(club.days("again", moment("06-14"))[Milestone.BACK_TO_NORMAL][1])
    assert likely == sorted(set(likely))


def test_a_quick_job_moves_the_dates_sooner(club: SmallClub) -> None:
    club.normal("spring", "04-19")  # 18 days
    assert club.days("again", MAY)[Milestone.BACK_TO_NORMAL][1] < 24


@pytest.mark.parametrize(("normal", "log_pace"), [("04-05", 1.2), ("05-18", -0.6993)], ids=["4 days", "47 days"])
def test_a_job_far_off_counts_in_part_only(club: SmallClub, normal: str, log_pace: float) -> None:
    """No faster or slower than exp(1.2) = 3.3 times is believed; 23.3566 / 47 = 0.49695 is within that.

    Of either no more counts than twice the spread, 0.48 x 0.35955 = 0.1726.
    """
    club.normal("spring", normal)
    (lesson,) = _lessons(club)
    assert lesson.log_pace == pytest.approx(log_pace, abs=0.001)
    assert abs(math.log(club.recovery("again", MAY).prior.middle)) == pytest.approx(0.1726, abs=0.0001)


def test_a_lesson_is_not_known_before_its_entry_was_written(club: SmallClub) -> None:
    """The entry of 1 May at 10:00 is not there at 9:59, nor is the day that it names."""
    club.normal("spring", "05-01")
    counts = [len(club.recovery("again", moment("05-01", time)).lessons) for time in ("09:59", "10:00")]
    assert counts == [0, 1]


def test_nothing_is_learnt_from_an_entry_that_a_correction_withdraws(club: SmallClub) -> None:
    source = club.normal("spring", "05-01")
    club.log("not-yet", "05-03", "correction", f"corrects: {source}")
    counts = [len(club.recovery("again", moment(day)).lessons) for day in ("05-02", "05-04")]
    assert counts == [1, 0]


def test_a_correction_with_another_day_teaches_that_day(club: SmallClub) -> None:
    source = club.normal("spring", "05-01")
    club.log(
        "later", "05-08", "correction", f"corrects: {source}", "instead:", "  at: 2027-05-06 10:00",
        "  kind: back to normal", "  job: spring",
    )  # fmt: skip
    (lesson,) = _lessons(club)
    assert (lesson.normal_on, lesson.days_taken) == (date(2027, 5, 6), 35)
    assert lesson.log_pace == pytest.approx(math.log((NEED + LAG) / 35), abs=0.0001)


def test_a_job_does_not_learn_from_itself(club: SmallClub) -> None:
    club.normal("spring", "05-01", "surfaces: green 1")
    recovery = club.recovery("spring", MAY, "green-2")
    assert (recovery.lessons, recovery.prior) == ((), recovery.usual)


def test_a_job_done_before_its_planned_day_does_not_learn_from_itself_either(tmp_path: Path) -> None:
    """Planned for 24 May, done on 1 April without a change of plan, green 1 normal on 1 May: green 2 still heals."""
    club = SmallClub(tmp_path)
    club.job("early", "05-24")
    club.done("early", "04-01")
    club.normal("early", "05-01", "surfaces: green 1")
    recovery = club.recovery("early", MAY, "green-2")
    assert recovery.start == date(2027, 4, 1)
    assert (recovery.lessons, recovery.prior) == ((), recovery.usual)


def test_a_job_that_began_before_another_had_healed_learns_nothing_from_it(tmp_path: Path) -> None:
    """A date must not move for a reason that its own story does not tell."""
    for begins, lessons in (("04-26", 0), ("05-03", 1)):
        club = SmallClub(tmp_path / begins)
        club.job("spring", "04-01")
        club.job("next", begins, surfaces="green 2")
        club.done("spring", "04-01", "surfaces: green 1")
        club.normal("spring", "05-01", "surfaces: green 1")
        club.done("next", begins, "surfaces: green 2")
        assert len(club.recovery("next", MAY, "green-2").lessons) == lessons


def test_only_the_same_grass_on_the_same_kind_of_surface_is_taught(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "04-01", surfaces="green 1")
    club.job("again", "05-24", surfaces="greens 1-3 and tee 1")
    club.done("spring", "04-01")
    club.normal("spring", "05-01")
    taught = {name: len(_lessons(club, surface=name)) for name in ("green-1", "green-2", "green-3", "tee-1")}
    assert taught == {"green-1": 1, "green-2": 1, "green-3": 0, "tee-1": 0}


def test_an_entry_for_both_grasses_teaches_only_the_one_that_it_waited_for(tmp_path: Path) -> None:
    # Meadow-grass at 20 C grows exp(-(2 / 7)² / 2) = 0.96001 a day: 10.3566 / 0.96001 + 13 = 23.788 days, and of 30
    # days log(p) = log((10.7880 + 13) / 30) = -0.2320.
    club = SmallClub(tmp_path)
    club.job("spring", "04-01", surfaces="greens 1-3")
    club.job("again", "05-24", surfaces="greens 1-3")
    club.done("spring", "04-01")
    club.normal("spring", "05-01")
    bent, (meadow,) = (_lessons(club, surface=name) for name in ("green-1", "green-3"))
    assert bent == ()  # was it normal sooner? Nobody said.
    assert meadow.log_pace == pytest.approx(-0.2320, abs=0.0001)


def test_an_entry_waits_for_the_last_of_its_surfaces(tmp_path: Path) -> None:
    """Green 1 was done on 1 April, green 2 on the 8th; both normal on 8 May, which is 30 days after the 8th."""
    club = SmallClub(tmp_path)
    club.job("spring", "04-01")
    club.job("again", "05-24")
    club.done("spring", "04-01", "surfaces: green 1", name="one")
    club.done("spring", "04-08", "surfaces: green 2", name="two")
    club.normal("spring", "05-08")
    (lesson,) = _lessons(club)
    assert lesson.days_taken == 30
    assert lesson.log_pace == pytest.approx(-0.25032, abs=0.0001)


def test_growth_that_was_held_back_is_not_blamed_on_the_pace(club: SmallClub) -> None:
    # Ten dull days bring 6: 14.3566 + 13 = 27.3566 days at the fitted pace. Of 27 days, 28 April, with four days less
    # of growth: (10.3566 + 13) / (27 - 4) = 1.0155.
    club.log("dull", "04-01", "growth held back", "surfaces: greens 1-2", "cause: dull weather", "until: 2027-04-10")
    club.normal("spring", "04-28")
    (lesson,) = _lessons(club)
    assert lesson.days_computed == pytest.approx(27.3566, abs=0.001)
    assert lesson.log_pace == pytest.approx(math.log(1.0155), abs=0.0001)


def test_what_was_seen_on_the_way_does_not_change_the_lesson(club: SmallClub) -> None:
    club.log("look", "04-06", "observation", "job: spring", "disruption left: 70 %")
    club.normal("spring", "05-01")
    (lesson,) = _lessons(club)
    assert lesson.log_pace == pytest.approx(-0.25032, abs=0.0001)


def test_sand_alone_teaches_by_its_own_days(tmp_path: Path) -> None:
    # 2.4 mm: ln(0.56920 / 0.02) / 0.40 = 8.3712, and no days after that; 10 days: log 0.83712 = -0.1778.
    club = SmallClub(tmp_path)
    club.job("sand", "04-01", "topdressing: {sand: 2.4 mm}")
    club.job("again", "05-24")
    club.done("sand", "04-01")
    club.normal("sand", "04-11")
    (lesson,) = _lessons(club)
    assert lesson.days_computed == pytest.approx(8.3712, abs=0.001)
    assert lesson.log_pace == pytest.approx(-0.1778, abs=0.0001)


def test_a_rule_of_thumb_and_work_that_disturbs_nothing_teach_nothing(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("thumb", "04-01", HOLES, more="    normal after: {from: 1 to 3 weeks, source: our own experience}\n")
    club.job("roll", "04-02", "rolling")
    club.job("again", "05-24")
    for job in ("thumb", "roll"):
        club.done(job, "04-02")
        club.normal(job, "05-01")
    assert _lessons(club) == ()


def test_a_job_called_normal_on_the_day_of_its_work_teaches_nothing(club: SmallClub) -> None:
    club.log("spring-normal", "04-01", "back to normal", "job: spring", time="17:00")
    assert _lessons(club) == ()


def test_two_entries_on_one_job_are_one_lesson_their_mean(tmp_path: Path) -> None:
    """Half of the error belongs to the job: its greens are no second proof. 30 and 34 days, days computed 23.36 each.

    By hand (-0.25032 + log(23.3566 / 34)) / 2 = (-0.25032 - 0.37548) / 2 = -0.31290.
    """
    club = SmallClub(tmp_path)
    club.job("spring", "04-01")
    club.job("again", "05-24")
    club.done("spring", "04-01")
    club.normal("spring", "05-01", "surfaces: green 1", name="one")
    club.normal("spring", "05-05", "surfaces: green 2", name="two")
    (lesson,) = _lessons(club)
    assert (lesson.source, lesson.normal_on, lesson.days_taken) == ("two", date(2027, 5, 5), 32)
    assert lesson.log_pace == pytest.approx(-0.31290, abs=0.0001)
    assert math.log(club.recovery("again", MAY).prior.middle) == pytest.approx(0.35955 * -0.31290, abs=0.0001)


def test_the_last_word_on_a_surface_is_the_lesson(club: SmallClub) -> None:
    club.normal("spring", "04-26", name="too-soon")
    club.normal("spring", "05-01", name="really")
    (lesson,) = _lessons(club)
    assert (lesson.source, lesson.days_taken) == ("really", 30)


def test_a_job_that_begins_on_the_day_of_the_entry_learns_nothing_from_it(tmp_path: Path) -> None:
    for begins, lessons in (("05-03", 0), ("05-04", 1)):
        club = SmallClub(tmp_path / begins)
        club.job("spring", "04-01")
        club.job("next", begins)
        club.done("spring", "04-01")
        club.normal("spring", "05-03")
        club.done("next", begins)
        assert len(_lessons(club, "next")) == lessons


def test_a_day_of_work_that_is_corrected_later_changes_what_was_learnt(club: SmallClub) -> None:
    # Really done on 6 April: 25 days, log(23.3566 / 25) = -0.06799.
    club.normal("spring", "05-01")
    club.log(
        "really", "05-08", "correction", "corrects: spring-done", "instead:", "  at: 2027-04-06 10:00",
        "  kind: work done", "  job: spring",
    )  # fmt: skip
    before, after = (club.recovery("again", moment(day)).lessons[0] for day in ("05-07", "05-08"))
    assert (before.days_taken, after.days_taken) == (30, 25)
    assert after.log_pace == pytest.approx(-0.06799, abs=0.0001)


def test_a_quick_job_with_wide_holes_is_read_with_the_rim_that_they_need(tmp_path: Path) -> None:
    # Holes of 12.7 mm, no sand: 7.5703 growth days, the rim 7.0556 at least. 16 days: 7.0556 + 13 / p = 16 gives
    # p = 1.4534, while 7.5703 / 1.4534 = 5.2 would be too quick for the rim.
    club = SmallClub(tmp_path)
    club.job("holes", "04-01", HOLES)
    club.job("again", "05-24")
    club.done("holes", "04-01")
    club.normal("holes", "04-17")
    (lesson,) = _lessons(club)
    assert lesson.log_pace == pytest.approx(math.log(13 / (16 - 7.0556)), abs=0.0001)


def test_a_lesson_is_named_with_its_entry_and_its_share(club: SmallClub) -> None:
    club.normal("spring", "05-01")
    said = club.explained("again", MAY)
    assert said["Learnt from earlier work (Spring work: 30 days, computed 23)."] == "spring-normal"
    line = (
        "Healed before: Spring work, back to normal on Saturday 1 May after 30 days. The fitted pace gives 23, so it"
        " healed at 78 % of it."
    )
    assert line in said
    # exp(-0.0900) = 91 %; x exp(-+1.2816 x 0.21736) = 69 % and 121 %.
    assert (
        "Healing pace after that: 91 %, in 8 cases of 10 from 69 % to 121 %; a healed job counts in part only." in said
    )
    reasons = [reason for reason in club.work("again", MAY).reasons if reason.kind is ReasonKind.LEARNT]
    assert [(reason.source, reason.at) for reason in reasons] == [("spring-normal", date(2027, 5, 1))]


def test_what_was_learnt_more_than_ten_years_before_the_work_counts_no_more() -> None:
    def lesson(job: str, day: date) -> Lesson:
        return Lesson(
            job=job, title=job, source=job, normal_on=day, days_taken=30.0, days_computed=25.0, log_pace=-0.18
        )

    days = {
        "late": "2026-06-01",
        "old": "2017-05-22",
        "first": "2017-05-24",
        "then": "2027-05-23",
        "same": "2027-05-24",
    }
    lessons = [(GREEN, COOL, lesson(job, date.fromisoformat(day))) for job, day in days.items()]
    learnt = Learnt((*lessons, (GREEN, Grass.ANNUAL_MEADOW_GRASS, lesson("other", date(2026, 6, 1)))))
    prior = learnt.before(GREEN, COOL, date(2027, 5, 24))
    assert [one.job for one in prior.lessons] == ["late", "first", "then"]
    assert learnt.before(GREEN, COOL, date(2027, 5, 24)) is prior
    assert learnt.before(SurfaceKind.TEE, COOL, date(2027, 5, 24)).lessons == ()
