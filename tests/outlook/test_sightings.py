"""Looks at a healing surface: what each speaks for, what it moves, and when two cannot both be right."""

from __future__ import annotations

import math
from datetime import datetime
from pathlib import Path

import pytest
from scipy.integrate import quad
from scipy.optimize import brentq

from swardcast.language.voice import Voice
from swardcast.notices.reasons import look_in_words
from swardcast.outlook.sightings import CoverSeen, Look, MarksSeen, RollSeen, contradictions
from swardcast.outlook.states import Milestone, ReasonKind
from swardcast.records.log import Eye
from swardcast.turf.pace import Sighting
from tests.outlook.small_club import HOLES, SmallClub, moment
from tests.turf.law_by_hand import HandJob, left_by_hand, needed_by_hand

JOB = HandJob(2.4, ((1.0, 12.7),))  # 12.7 mm holes and heavy sand: 0.61228 of the surface on day 0
DAY_ZERO = 0.61228


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    """The work is done on 1 June; each day at 20 C is a growth day."""
    small = SmallClub(tmp_path)
    small.job("spring", "06-01")
    small.done("spring", "06-01")
    return small


def said_of(look: Look) -> str:
    return look_in_words(look, Voice.english(look.at.date())).replace("\u00a0", " ")


def _look(club: SmallClub, day: str, *fields: str, name: str = "look", time: str = "10:00") -> str:
    return club.log(name, day, "observation", "job: spring", *fields, time=time)


def _closed(club: SmallClub, as_of: datetime) -> tuple[int, int, int]:
    return club.days("spring", as_of)[Milestone.HOLES_CLOSED]


def _by_integration(share: float, growth: float, error: float, wanted: float) -> float:
    """The log pace that so much of the belief lies below, by scipy.integrate.quad: prior spread 0.24."""

    def density(log: float) -> float:
        left = left_by_hand(growth * math.exp(log), [JOB]) / left_by_hand(0.0, [JOB])
        return math.exp(-((log / 0.24) ** 2 + ((share - left) / error) ** 2) / 2)

    whole = quad(density, -2, 2, points=(0,), epsabs=1e-12)[0]
    return float(brentq(lambda log: quad(density, -2, log, epsabs=1e-12)[0] / whole - wanted, -1.5, 1.5))


def test_a_share_seen_by_eye_or_counted_speaks_for_itself(club: SmallClub) -> None:
    for name, how, error in (("eye", "by eye", 0.10), ("count", "counted", 0.03)):
        _look(club, "06-07", "disruption left: 15 %", f"how: {how}", name=name)
        looks = {look.source: look for look in club.recovery("spring", moment("06-07")).looks}
        assert looks[name].what == MarksSeen(share_left=0.15, how=Eye(how))
        assert said_of(looks[name]) == f"15 % of the first marks left, {how}"
        seen = looks[name].sighting
        assert (seen.share_left, seen.growth_days, seen.error) == pytest.approx((0.15, 6.0, error))
        # 0.07813 / 0.61228 by hand, as in test_held_back.py.
        assert seen.foretold(6.0) == pytest.approx(0.1276, abs=0.0001)


@pytest.mark.parametrize(
    ("share", "how", "error"), [("25 %", "by eye", 0.10), ("10 %", "by eye", 0.10), ("15 %", "counted", 0.03)]
)
def test_the_dates_after_a_look_are_those_of_an_integral(club: SmallClub, share: str, how: str, error: float) -> None:
    """Six growth days on; early, likely and allow until are the need over the 90, 50 and 10 % points of the pace."""
    _look(club, "06-07", f"disruption left: {share}", f"how: {how}")
    need = needed_by_hand(0.02, JOB)
    paces = [_by_integration(float(share.removesuffix(" %")) / 100, 6.0, error, wanted) for wanted in (0.9, 0.5, 0.1)]
    early, likely, until = (need / math.exp(log) for log in paces)
    samples = sorted(club.recovery("spring", moment("06-07")).samples[Milestone.HOLES_CLOSED][0].tolist())
    tenths = [samples[int(len(samples) * tenth)] for tenth in (0.1, 0.5, 0.9)]  # middles of 15 equal shares
    assert tenths == pytest.approx([early, likely, until], rel=0.005)
    assert _closed(club, moment("06-07")) == tuple(map(math.ceil, tenths))


def test_a_photo_of_turf_cover_tells_the_share_of_what_was_bare(club: SmallClub) -> None:
    # 92 % under leaf: 0.08 of 0.61228 are 13.1 %; three points of cover are 0.03 / 0.61228 = 4.9 %.
    _look(club, "06-07", "turf cover: 92 %")
    (look,) = club.recovery("spring", moment("06-07")).looks
    assert look.what == CoverSeen(share=0.92)
    assert said_of(look) == "turf cover 92 %"
    assert (look.sighting.share_left, look.sighting.error) == pytest.approx((0.1307, 0.0490), abs=0.0001)


def test_less_cover_than_the_work_left_is_all_that_it_disturbed(club: SmallClub) -> None:
    _look(club, "06-03", "turf cover: 20 %")
    (look,) = club.recovery("spring", moment("06-03")).looks
    assert look.sighting.share_left == 1


@pytest.mark.parametrize(
    ("speed", "share", "said"),
    # The work takes a fifth of the target of 10 ft, 2 ft. 9 ft: half of that is missing.
    [
        ("9 ft 0 in", 0.5, "90"), ("9 ft 9 in", 0.125, "98"), ("10 ft 6 in", 0.0, "105"), ("7 ft 0 in", 1.0, "70"),
        ("2.7432 m", 0.5, "90"),  # 9 ft by the exact foot of 0.3048 m
    ],
)  # fmt: skip
def test_a_green_speed_tells_how_much_of_the_lost_roll_is_missing(
    club: SmallClub, speed: str, share: float, said: str
) -> None:
    _look(club, "06-11", "readings:", f"  green speed: {speed}")
    (look,) = club.recovery("spring", moment("06-11")).looks
    in_feet = "9 ft 0 in" if speed == "2.7432 m" else speed
    assert said_of(look) == f"green speed {in_feet}, {said} % of the target"
    assert (look.sighting.share_left, look.sighting.error) == pytest.approx((share, 0.25))
    assert isinstance(look.what, RollSeen)
    # The roll comes back evenly up to back to normal, 10.3566 + 13 growth days at 20 C: 1 - 10 / 23.3566.
    assert look.sighting.foretold(10.0) == pytest.approx(0.5719, abs=0.0001)
    assert look.sighting.foretold(30.0) == 0


def test_a_green_speed_means_nothing_without_a_target_or_on_the_day_of_the_work(tmp_path: Path) -> None:
    for name, speed, day in (("without", "", "06-11"), ("same-day", "10 ft", "06-01")):
        club = SmallClub(tmp_path / name, green_speed=speed)
        club.job("spring", "06-01")
        club.done("spring", "06-01")
        _look(club, day, "readings:", "  green speed: 8 ft 0 in", time="15:00")
        recovery = club.recovery("spring", moment("06-12"))
        assert (recovery.looks, recovery.pace) == ((), recovery.prior)


def test_a_slow_green_moves_back_to_normal_later_and_a_quick_one_sooner(tmp_path: Path) -> None:
    likely = {}
    for speed in ("8 ft 6 in", "9 ft 2 in", "10 ft 0 in"):
        club = SmallClub(tmp_path / speed.replace(" ", "-"))
        club.job("spring", "06-01")
        club.done("spring", "06-01")
        _look(club, "06-13", "readings:", f"  green speed: {speed}")
        likely[speed] = club.days("spring", moment("06-13"))[Milestone.BACK_TO_NORMAL][1]
    assert likely["8 ft 6 in"] > likely["9 ft 2 in"] >= likely["10 ft 0 in"]
    assert likely["10 ft 0 in"] < 24 < likely["8 ft 6 in"]  # 24 without a look, test_held_back.py


def test_an_entry_with_several_readings_is_several_looks(club: SmallClub) -> None:
    _look(club, "06-08", "disruption left: 10 %", "turf cover: 94 %", "readings:", "  green speed: 9 ft 0 in")
    looks = club.recovery("spring", moment("06-08")).looks
    assert [type(look.what) for look in looks] == [MarksSeen, CoverSeen, RollSeen]
    assert {look.source for look in looks} == {"look"}


@pytest.mark.parametrize("fields", [("disruption left: 60 %",), ("turf cover: 60 %",)], ids=["by eye", "turf cover"])
def test_a_bad_look_moves_the_dates_later_and_a_good_one_sooner(club: SmallClub, fields: tuple[str, ...]) -> None:
    before = _closed(club, moment("06-06"))
    _look(club, "06-06", *fields)
    bad = _closed(club, moment("06-06"))
    _look(club, "06-06", "disruption left: 5 %", "how: counted")  # in its place
    good = _closed(club, moment("06-06"))
    assert good[1] < before[1] < bad[1]
    assert before[2] < bad[2]


def test_a_look_is_not_known_before_it_was_written_and_not_after_it_was_withdrawn(club: SmallClub) -> None:
    _look(club, "06-06", "disruption left: 50 %")
    club.log("sorry", "06-08", "correction", "corrects: look")
    counts = [len(club.recovery("spring", moment(day)).looks) for day in ("06-05", "06-06", "06-07", "06-08")]
    assert counts == [0, 1, 1, 0]
    assert _closed(club, moment("06-05")) == _closed(club, moment("06-08")) != _closed(club, moment("06-07"))


def test_a_look_before_the_work_is_no_look_at_its_healing(club: SmallClub) -> None:
    """The usual roll is measured before the work, to compare with; the work begins the looks anew."""
    _look(club, "05-30", "disruption left: 0 %", "readings:", "  green speed: 10 ft 0 in")
    assert club.recovery("spring", moment("06-08")).looks == ()


def test_a_look_at_one_green_is_not_one_at_another(club: SmallClub) -> None:
    _look(club, "06-06", "surfaces: green 2", "disruption left: 50 %")
    assert club.recovery("spring", moment("06-06"), "green-1").looks == ()
    assert len(club.recovery("spring", moment("06-06"), "green-2").looks) == 1


def test_a_look_far_from_the_sum_is_told_to_look_again(club: SmallClub) -> None:
    # Ten growth days foretell 0.02223 / 0.61228 = 3.6 %, the slowest twentieth 10 %: nine tenths are far off.
    _look(club, "06-11", "disruption left: 90 %")
    work = club.work("spring", moment("06-11"))
    assert [reason.source for reason in work.reasons if reason.kind is ReasonKind.WILD] == ["look"]
    said = club.explained("spring", moment("06-11"))
    line = next(line for line in said if "is far from the sum" in line)
    assert "What was seen at 10am on Friday 11 June (90 % of the first marks left, by eye) is far from the sum" in line
    assert said[line] == "look"
    _look(club, "06-12", "disruption left: 10 %", name="fine")
    reasons = club.recovery("spring", moment("06-12")).pace_rests_on
    wild = [look for reason in reasons if reason.kind is ReasonKind.WILD for look in reason.looks]
    assert not any("10 % of the first marks" in said_of(look) for look in wild)


# Two looks cannot both be right when they lie more than two standard errors of their difference apart: by eye
# sqrt(0.10² + 0.10²) = 0.1414, so 0.2828; counted 0.0849; one of each 0.2088 (by hand).
def _seen(share: float, growth: float, error: float = 0.10, *, of_roll: bool = False) -> Look:
    sighting = Sighting(share_left=share, growth_days=growth, error=error, foretold=lambda _: 0.5)
    what = RollSeen(roll_mm=0, of_target=1) if of_roll else MarksSeen(share_left=share, how=Eye.BY_EYE)
    return Look(at=moment("06-07"), source=f"{share}", what=what, sighting=sighting)


PAIRS = [
    pytest.param(_seen(0.20, 3), _seen(0.48, 6), False, id="more marks later, but within what eyes may err"),
    pytest.param(_seen(0.20, 3), _seen(0.49, 6), True, id="more marks later, by more than eyes err"),
    pytest.param(_seen(0.20, 3, 0.03), _seen(0.28, 6, 0.03), False, id="more marks later, but counts may err so"),
    pytest.param(_seen(0.20, 3, 0.03), _seen(0.29, 6, 0.03), True, id="more marks later, by more than counts err"),
    pytest.param(_seen(0.20, 3, 0.03), _seen(0.41, 6), True, id="more by eye than was counted before"),
    pytest.param(_seen(0.70, 3), _seen(0.10, 6), False, id="marks that went in three days of growth"),
    pytest.param(_seen(0.70, 3), _seen(0.41, 4), True, id="marks that went in one day of growth"),
    pytest.param(_seen(0.70, 3), _seen(0.41, 4.1), False, id="just more than one day of growth"),
    pytest.param(_seen(0.70, 3), _seen(0.43, 3), False, id="the same time, within what eyes may err"),
    pytest.param(_seen(0.10, 3), _seen(0.90, 6, 0.25, of_roll=True), False, id="closed holes, slow roll"),
    pytest.param(
        _seen(0.10, 3, 0.25, of_roll=True), _seen(0.85, 6, 0.25, of_roll=True), True, id="a roll that was lost again"
    ),
]  # fmt: skip


@pytest.mark.parametrize(("earlier", "later", "contradict"), PAIRS)
def test_looks_contradict_each_other_beyond_two_standard_errors(earlier: Look, later: Look, contradict: bool) -> None:
    assert contradictions([earlier, later]) == ([(earlier, later)] if contradict else [])


def test_every_pair_of_looks_is_compared_not_only_neighbours() -> None:
    first, second, third = _seen(0.10, 3), _seen(0.30, 6), _seen(0.45, 8)
    assert contradictions([first, second, third]) == [(first, third)]


def test_two_looks_that_contradict_each_other_are_explained_with_the_later_entry(club: SmallClub) -> None:
    _look(club, "06-05", "disruption left: 15 %", name="first")
    _look(club, "06-08", "disruption left: 60 %", name="second")
    said = club.explained("spring", moment("06-08"))
    line = next(line for line in said if line.startswith("Two looks contradict each other"))
    assert "15 % of the first marks left, by eye, then 60 % of the first marks left, by eye" in line
    assert said[line] == "second"
    assert not any("contradict" in line for line in club.explained("spring", moment("06-07")))


# A second job on a surface that still heals.


def test_a_second_job_finds_what_the_first_left_and_heals_with_it_by_hand(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "06-01")
    club.job("again", "06-07", HOLES)
    club.done("spring", "06-01")
    club.done("again", "06-07")
    recovery = club.recovery("again", moment("06-08"))
    # Six growth days leave 0.07813 of the first (test_held_back.py); the new holes count 0.1:
    # 1 - 0.92187 x 0.9 = 0.17032.
    assert recovery.before == pytest.approx(0.07813, abs=0.0001)
    assert recovery.day_zero == pytest.approx(0.17032, abs=0.0001)
    need = needed_by_hand(0.02, HandJob(0.0, ((1.0, 12.7),)), HandJob(2.4, ((1.0, 12.7),), ahead=6.0))
    assert recovery.growth_needed(0.02) == pytest.approx(need, abs=0.001)
    assert club.days("again", moment("06-08"))[Milestone.HOLES_CLOSED][1] == math.ceil(need)
    said = club.explained("again", moment("06-08"))
    assert "Earlier work had left 7.8 % of the surface disturbed on that day." in said
    assert "Disturbed on day 0, Monday 7 June: 17 % of the surface." in said


def test_a_second_job_finds_nothing_where_the_first_was_called_normal_or_lies_far_back(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "04-05")
    club.job("again", "06-07", HOLES)
    club.done("spring", "04-05")
    assert club.recovery("again", moment("06-01")).before < 0.0001  # 63 growth days: 0.1 exp(-13.4) = 1.5e-7
    club.normal("spring", "04-12")
    assert club.recovery("again", moment("06-01")).before == 0


def test_a_planned_job_counts_on_what_will_be_left_by_then(tmp_path: Path) -> None:
    """On 2 June the job of the 7th is still to come: six growth days are expected, and they leave 7.8 %."""
    club = SmallClub(tmp_path)
    club.job("spring", "06-01")
    club.job("again", "06-07", HOLES)
    club.done("spring", "06-01")
    assert club.recovery("again", moment("06-02")).before == pytest.approx(0.07813, abs=0.0001)


def test_a_surface_that_was_seen_to_heal_slowly_has_more_left_for_the_second_job(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "06-01")
    club.job("again", "06-07", HOLES)
    club.done("spring", "06-01")
    _look(club, "06-05", "disruption left: 60 %")
    first, second = (club.recovery(job, moment("06-05")) for job in ("spring", "again"))
    assert first.pace.middle < 0.9
    assert second.before == pytest.approx(left_by_hand(6.0 * first.pace.middle, [JOB]), abs=0.0001)
    assert second.before > 0.07813


def test_a_third_job_finds_what_both_earlier_ones_left(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    for job, day in (("spring", "06-01"), ("again", "06-05"), ("once-more", "06-08")):
        club.job(job, day, HOLES)
        club.done(job, day)
    holes = ((1.0, 12.7),)
    left = left_by_hand(0.0, [HandJob(0.0, holes, ahead=7.0), HandJob(0.0, holes, ahead=3.0)])
    assert club.recovery("once-more", moment("06-08")).before == pytest.approx(left, abs=0.0001)


def test_a_surface_called_normal_is_whole_for_the_next_job_however_early_that_was(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "06-01")
    club.job("again", "06-07", HOLES)
    club.done("spring", "06-01")
    club.normal("spring", "06-05")
    assert club.recovery("again", moment("06-04")).before > 0.07
    assert club.recovery("again", moment("06-05")).before == 0


@pytest.mark.parametrize(
    ("day", "adds"),
    # Three growth days leave 0.1 exp(-0.638) = 5.3 % of the holes, ten 0.1 exp(-2.126) = 1.2 %: closed.
    [("06-04", 13.0), ("06-11", 0.0)],
    ids=["on open holes", "on closed ones"],
)
def test_sand_on_holes_that_are_still_open_waits_for_them_to_roll(tmp_path: Path, day: str, adds: float) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "06-01", HOLES)
    club.job("sand", day, "topdressing: {sand: 1 mm}")
    club.done("spring", "06-01")
    club.done("sand", day)
    assert club.recovery("sand", moment(day)).lag_days == adds
