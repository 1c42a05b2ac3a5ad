"""Growth held back, as the log tells it: dates by hand for a course on which every day is a growth day."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from swardcast.outlook.held_back import slow_days
from swardcast.outlook.states import Milestone
from swardcast.records.log import EntryHead, GrowthHeldBack, HeldBackBy
from tests.outlook.small_club import SmallClub, moment

JUNE = [date(2027, 6, day) for day in range(1, 31)]
DULL, UNFED, REGULATOR, FROST = (
    HeldBackBy.DULL_WEATHER,
    HeldBackBy.UNFED,
    HeldBackBy.GROWTH_REGULATOR,
    HeldBackBy.FROST_ON_THE_LEAF,
)


def _told(cause: HeldBackBy, first: date, last: date) -> GrowthHeldBack:
    at = moment("06-01")
    head = EntryHead(id="told", at=at, true_from=at, by="", words="", file="log/told.md", line=2)
    return GrowthHeldBack(head=head, by=cause, surfaces=("green-1",), first_day=first, last_day=last)


@pytest.fixture
def club(tmp_path: Path) -> SmallClub:
    """12.7 mm holes and heavy sand on 1 June: closed after 10.3566 growth days, likely on the eleventh day."""
    small = SmallClub(tmp_path)
    small.job("spring", "06-01")
    small.done("spring", "06-01")
    return small


def _closed(club: SmallClub, surface: str = "green-1") -> int:
    return club.days("spring", moment("06-08"), surface)[Milestone.HOLES_CLOSED][1]


def test_where_nothing_is_said_every_day_counts(club: SmallClub) -> None:
    # By hand for a spread of 0.24: 10.3566 / 1.3601 = 7.6, 10.4 and 10.3566 x 1.3601 = 14.1; a day begun counts.
    days = club.days("spring", moment("06-08"))
    assert days[Milestone.HOLES_CLOSED] == (8, 11, 15)
    assert days[Milestone.SETTLED] == (6, 8, 11)  # 7.3762: 5.4, 7.4, 10.03
    assert days[Milestone.BACK_TO_NORMAL] == (18, 24, 32)  # 23.3566: 17.2, 23.4, 31.8
    assert club.recovery("spring", moment("06-08")).held_back == ()


HELD_BACK = [
    # Ten days at 0.6 bring 6; the other 4.3566 one a day: 14.36.
    pytest.param(["cause: dull weather", "until: 2027-06-10"], 15, id="ten dull days"),
    # Ten days at 0.7 bring 7: 13.36.
    pytest.param(["cause: unfed", "until: 2027-06-10"], 14, id="ten days unfed"),
    # Fourteen days at 0.75 by themselves bring 10.5, so 10.3566 / 0.75 = 13.81.
    pytest.param(["cause: growth regulator"], 14, id="a growth regulator, two weeks by default"),
    # Four days at 0.75 bring 3: 11.36.
    pytest.param(["cause: growth regulator", "until: 2027-06-04"], 12, id="a growth regulator that wears off"),
    # The day of the entry alone: 11.36.
    pytest.param(["cause: frost on the leaf"], 12, id="frost on one day"),
    pytest.param(["cause: frost on the leaf", "until: 2027-06-03"], 14, id="frost on three days"),
    # From the fifth day on: 4 + 6 x 0.6 = 7.6 after ten days, then 2.7566: 12.76.
    pytest.param(["cause: dull weather", "from: 2027-06-05", "until: 2027-06-10"], 13, id="dull from the fifth day"),
    # Days before the work do not count: five at 0.6.
    pytest.param(["cause: dull weather", "from: 2027-05-20", "until: 2027-06-05"], 13, id="dull since before the work"),
    # 20 June is later than the eleventh day.
    pytest.param(["cause: dull weather", "from: 2027-06-20", "until: 2027-06-30"], 11, id="dull later on"),
    # To come: as_of is the 8th.
    pytest.param(["cause: dull weather", "from: 2027-06-09", "until: 2027-06-18"], 12, id="dull days to come"),
]


@pytest.mark.parametrize(("fields", "likely"), HELD_BACK)
def test_growth_held_back_moves_the_day_by_what_is_left_of_each_day(
    club: SmallClub, fields: list[str], likely: int
) -> None:
    club.log("slow", "06-01", "growth held back", "surfaces: greens 1-2", *fields)
    assert _closed(club) == likely
    assert _closed(club, "green-2") == likely


def test_growth_is_held_back_only_where_the_log_says_so(club: SmallClub) -> None:
    club.log("slow", "06-01", "growth held back", "surfaces: green 2", "cause: dull weather", "until: 2027-06-10")
    assert (_closed(club), _closed(club, "green-2")) == (11, 15)


def test_different_causes_multiply_and_the_same_cause_counts_once() -> None:
    told = [
        _told(DULL, JUNE[0], JUNE[3]),
        _told(DULL, JUNE[2], JUNE[4]),  # said a second time for the 3rd and 4th
        _told(UNFED, JUNE[3], JUNE[5]),
    ]
    # 0.6 x 0.7 = 0.42 on the 4th and 5th.
    shares = dict(slow_days(told, JUNE[0]))
    assert shares == pytest.approx(
        {JUNE[0]: 0.6, JUNE[1]: 0.6, JUNE[2]: 0.6, JUNE[3]: 0.42, JUNE[4]: 0.42, JUNE[5]: 0.7}
    )
    assert slow_days(reversed(told), JUNE[0]) == slow_days(told, JUNE[0])


def test_all_four_causes_on_one_day_leave_no_growth() -> None:
    told = [_told(cause, JUNE[0], JUNE[0]) for cause in HeldBackBy]
    assert slow_days(told, JUNE[0]) == ((JUNE[0], 0.0),)
    # 0.6 x 0.7 x 0.75 = 0.315
    ((_, left),) = slow_days([_told(cause, JUNE[0], JUNE[0]) for cause in (DULL, UNFED, REGULATOR)], JUNE[0])
    assert left == pytest.approx(0.315)
    assert slow_days([_told(FROST, JUNE[0], JUNE[0])], JUNE[1]) == ()


def test_two_causes_at_once_move_the_dates_further_than_one(club: SmallClub) -> None:
    for name, cause in (("dull", "dull weather"), ("unfed", "unfed")):
        club.log(name, "06-01", "growth held back", "surfaces: greens 1-2", f"cause: {cause}", "until: 2027-06-10")
    # Ten days at 0.42 bring 4.2; then 6.1566: 16.16.
    assert _closed(club) == 17
    club.log("again", "06-02", "growth held back", "surfaces: greens 1-2", "cause: unfed", "until: 2027-06-10")
    assert _closed(club) == 17


def test_an_entry_that_was_withdrawn_or_is_not_yet_written_holds_nothing_back(club: SmallClub) -> None:
    club.log("slow", "06-06", "growth held back", "surfaces: greens 1-2", "cause: dull weather", "from: 2027-06-01", "until: 2027-06-10")  # fmt: skip
    club.log("not-dull", "06-09", "correction", "corrects: slow")
    likely = [
        club.days("spring", moment(day))[Milestone.HOLES_CLOSED][1] for day in ("06-05", "06-06", "06-08", "06-09")
    ]
    assert likely == [11, 15, 15, 11]


def test_what_holds_growth_back_is_named_with_its_entry(club: SmallClub) -> None:
    club.log("slow", "06-01", "growth held back", "surfaces: greens 1-2", "cause: dull weather", "until: 2027-06-10")
    said = club.explained("spring", moment("06-08"))
    line = "Growth held back from Tuesday 1 June to Thursday 10 June: dull weather; growth counts 60 %."
    assert said[line] == "slow"
    # Seven days at 0.6 have brought 4.2; 10.4 - 4.2.
    assert "Growth days gained up to yesterday: 4.2, so 6.2 to go." in said


def test_an_entry_that_ended_before_the_work_is_not_named(club: SmallClub) -> None:
    club.log("slow", "05-20", "growth held back", "surfaces: greens 1-2", "cause: dull weather", "until: 2027-05-31")
    assert not any("held back" in line for line in club.explained("spring", moment("06-08")))
    assert _closed(club) == 11


def test_growth_that_was_held_back_before_a_look_is_not_blamed_on_the_pace(club: SmallClub) -> None:
    """Ten dull days are six growth days; what the law leaves after six is just what was foretold."""
    club.log("slow", "06-01", "growth held back", "surfaces: greens 1-2", "cause: dull weather", "until: 2027-06-10")
    # 0.56920 exp(-2.4) = 0.05164, 0.1 exp(-1.27559) = 0.02793: 0.07813 of 0.61228 are 12.8 %.
    club.log("look", "06-11", "observation", "job: spring", "disruption left: 12.8 %", "how: counted")
    recovery = club.recovery("spring", moment("06-11"))
    (look,) = recovery.looks
    assert look.sighting.growth_days == pytest.approx(6.0)
    assert recovery.pace.middle == pytest.approx(1.0, abs=0.01)
