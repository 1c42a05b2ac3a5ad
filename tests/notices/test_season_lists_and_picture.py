"""The season's lists and its picture tell the same of every month, on every evening of the demo and in its winter."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from swardcast.compose import Bulletin, compose_bulletin, season_of
from swardcast.notices.season import Season
from swardcast.notices.season_bars import SeasonBars
from swardcast.notices.season_picture import season_bars
from swardcast.outlook.states import Work
from tests.outlook.small_club import SmallClub, moment

BUNKERS, TEES, GREENS = "bunkers-resanding-2027", "tees-returfing-2027", "greens-renovation-2027"
WINTER = (
    "2027-10-10",
    "2027-10-31",
    "2027-11-15",
    "2027-12-06",
    "2027-12-31",
    "2028-01-20",
    "2028-02-29",
    "2028-03-31",
)
"""Nobody enters anything after 20 September, so that much is overdue, and more is not finished."""


def _months(runs: Iterable[tuple[date, date]]) -> set[str]:
    """Counted day by day, so that no sum of months is shared with what is tested."""
    return {f"{first + timedelta(days=n):%Y-%m}" for first, last in runs for n in range((last - first).days + 1)}


def _in_lists(season: Season, bars: SeasonBars, title: str) -> set[str]:
    shown = [month for month in season.months if month.first_day <= bars.last and month.last_day >= bars.first]
    of = ((month, one) for month in shown for one in (*month.work, *month.healing))
    return {f"{month.first_day:%Y-%m}" for month, one in of if one.title == title and not one.is_called_off}


def _compared(bulletin: Bulletin) -> Iterator[tuple[str, set[str], set[str]]]:
    season = season_of(bulletin)
    bars = season_bars(season, bulletin.records.fixtures, bulletin.voice)
    for row in bars.rows if bars is not None else ():
        assert bars is not None
        yield row.name, _months(row.days_within(bars.first, bars.last)), _in_lists(season, bars, row.name)


def test_on_every_evening_a_month_with_a_bar_has_the_job_in_its_lists_and_no_other(
    evenings: dict[date, Bulletin],
) -> None:
    compared = [(day, *one) for day, bulletin in evenings.items() for one in _compared(bulletin)]
    assert len(compared) > 1000
    assert [one for one in compared if one[2] != one[3]] == []


@pytest.mark.parametrize("day", WINTER)
def test_so_they_do_in_winter(day: str, demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    compared = list(_compared(demo_bulletin_at(f"{day} 18:00")))
    assert len(compared) > 1
    assert [one for one in compared if one[1] != one[2]] == []


def test_work_that_nobody_reports_on_any_more_stands_in_the_months_of_its_reports_and_under_no_day(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """Four of six bunkers were done by 15 September; no entry speaks of the other two. They are on the 17th hole."""
    season = season_of(demo_bulletin_at("2027-12-06 08:00"))
    told = {
        month.name: [(one.when, one.where) for one in month.work if one.notice_id == BUNKERS] for month in season.months
    }
    assert told == {
        "September 2027": [("7 to 15 September, 4 of 6 done", "4 bunkers")],
        **{f"{month}": [] for month in ("October 2027", "November 2027", "December 2027", "January 2028")},
    }
    assert [one.where for one in season.no_day if one.notice_id == BUNKERS] == ["2 bunkers"]
    for name in (BUNKERS, TEES):
        healing = [month.name for month in season.months for one in month.healing if one.notice_id == name]
        assert healing == list(told), name  # from the day after the first of them was done until spring at least


def test_what_was_called_back_to_normal_is_not_said_to_be_due(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    """Greens 1 to 11 were entered as back to normal on 20 September, a Monday; of 12 to 18 nobody has."""
    season = season_of(demo_bulletin_at("2027-12-06 08:00"))
    told = [
        (month.name, one.when.replace("\u00a0", " "), one.where)
        for month in season.months
        for one in month.healing
        if one.notice_id == GREENS
    ]
    due = "was due by Monday 11 October; nobody has reported it yet"
    assert told == [
        (
            "September 2027",
            f"Back to normal: greens 1 to 11 on Monday 20 September. Greens 12 to 18: {due}",
            "Greens 1 to 18",
        ),
        ("October 2027", f"Back to normal: {due}", "Greens 12 to 18"),
    ]


def test_what_should_be_over_and_is_not_said_to_be_heals_no_longer_than_the_day_to_allow_for(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """The tees were laid by 17 September and are to be opened by an entry, which nobody has made by July.

    The turf of tee 13 was laid on the 17th, and takes 34 weeks at most: 238 days, so until 12 May. What became of them
    since, nobody knows, so they stand among what has no day. From 1 April to 12 May are 42 days.
    """
    bulletin = demo_bulletin_at("2028-07-01 08:00")
    season = season_of(bulletin)
    healing = [month.name for month in season.months for one in month.healing if one.notice_id == TEES]
    assert healing == ["April 2028", "May 2028"]
    (tees,) = (one for one in season.no_day if one.notice_id == TEES)
    assert tees.when.replace("\u00a0", " ") == (
        "Back to normal: was due by Friday 12 May; nobody has reported them as open yet"
    )
    assert {one.name: one.healing_days.number for one in season.totals}["Tees"] == 42
    later = season_of(demo_bulletin_at("2029-04-18 12:00"))
    assert [one.name for one in later.totals] == []  # nothing has been heard of for a year
    assert later.no_day[0].notice_id == TEES


def test_what_heals_a_day_longer_than_was_told_heals_until_today(tmp_path: Path) -> None:
    """Done on 1 June, and told for 3 July at the latest; a cold 15 June costs a day, which is less than is told.

    On 4 July the greens are open and still heal by the sum, and nobody owes a report.
    """
    club = SmallClub(tmp_path, tmean_c=lambda day: 5.0 if day == date(2027, 6, 15) else 20.0)
    club.job("spring", "06-01", play="open")
    club.done("spring", "06-01")
    bulletin = compose_bulletin(club.records(), moment("07-04", "06:00"))
    assert bulletin.stories["spring"].published.allow_until == date(2027, 7, 3)
    assert bulletin.outlook.jobs["spring"].work is Work.HEALING
    season = season_of(bulletin)
    assert season.no_day == ()
    (july,) = (month for month in season.months if month.name == "July 2027")
    assert [one.notice_id for one in july.healing] == ["spring"]
    (greens,) = season.totals
    assert greens.healing_days.number == 33  # from 2 June to 4 July
