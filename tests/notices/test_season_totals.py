"""The season in figures: each figure counted by hand out of the demo's plan, log and fixtures."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from lxml import html

from swardcast.compose import Bulletin, compose_bulletin, season_of
from swardcast.notices.season_totals import Count, KindTotals
from swardcast.outlets.html import season_months_html
from swardcast.records.folder import ClubRecords
from tests.notices.calendar_events import at
from tests.outlook.small_club import SmallClub, moment


def _told(bulletin: Bulletin) -> dict[str, KindTotals]:
    return {row.name: row for row in season_of(bulletin).totals}


def test_greens_on_14_september(demo_bulletin: Bulletin) -> None:
    """August to January, nine jobs on greens.

    Work: 20 August on the practice green; 23, 24, 26 and 27 August; 4 and 5 October sanding, the 6th a feed, 20 and 21
    a wetting agent, the 25th against a disease; 1 November winter height, 8 to 11 trees beside the 16th green; 13
    December temporary greens. That is 1 + 4 + 6 + 5 + 1 = 17.

    Healing: 21 August to 30 September (likely by 1 October) is 41 days, less 4 of work; 5 to 15 October (likely by the
    16th) is 11, less 2 of work; from 14 December to the end of January (likely by 17 February) is 18 + 31. That is
    37 + 9 + 49 = 95.

    Fixtures: the Twilight nine of 1, 8, 15, 23 and 29 September, the medal of the 18th, the day of the 25th, visitors of
    the 29th and of 13 October. The foursomes of 2 October lie between two times of healing.
    """
    greens = _told(demo_bulletin)["Greens"]
    assert greens.jobs == 9
    assert greens.work_days == Count(number=17, may_change=True, words="about 17")
    assert greens.healing_days == Count(number=95, may_change=True, words="about 95")
    assert greens.fixtures == Count(number=9, may_change=True, words="about 9")


def test_what_no_later_day_can_change_is_told_without_about(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    """Two tees were laid on the working days from 6 to 17 September, the first by the 9th, and are closed until March at
    least: 144 days from 10 September to 31 January, less 6 of work. One Twilight nine was before them, on 1 September."""
    bulletin = demo_bulletin_at("2027-12-06 08:00")
    tees = _told(bulletin)["Tees"]
    assert tees.jobs == 1
    assert tees.work_days == Count(number=10, may_change=False, words="10")
    assert tees.healing_days == Count(number=138, may_change=False, words="138")
    assert tees.fixtures == Count(number=9, may_change=False, words="9")


def test_the_table_says_about_where_days_may_move_and_what_each_figure_is(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    bulletin = demo_bulletin_at("2027-12-06 08:00")
    page = html.fromstring(f"<div>{season_months_html(season_of(bulletin), bulletin.voice, '../')}</div>")
    (part,) = page.xpath(".//section[@id='figures']")
    rows = {
        row.find("th").text: [cell.text_content() for cell in row.iter("td")] for row in part.iterfind(".//tbody/tr")
    }
    assert rows["Tees"] == ["1", "10", "138", "9"]
    assert rows["Greens"][0] == "3"
    assert rows["Greens"][1:] == ["about 1", "about 79", "about 8"]
    assert [len(one.text_content().split(". ")) for one in part.iterfind("./ul/li")] == [1] * 5
    assert "10 jobs without a day yet are not counted." in part.text_content()
    assert page.xpath(".//nav//a[@href='#figures']")


@pytest.mark.parametrize("has_fixtures", [True, False])
def test_a_club_without_fixtures_has_no_column_of_them(demo_bulletin: Bulletin, has_fixtures: bool) -> None:
    fixtures = demo_bulletin.records.fixtures if has_fixtures else ()
    bulletin = replace(demo_bulletin, records=replace(demo_bulletin.records, fixtures=fixtures))
    said = season_months_html(season_of(bulletin), bulletin.voice, "../")
    (part,) = html.fromstring(f"<div>{said}</div>").xpath(".//section[@id='figures']")
    assert ("Fixtures" in [head.text for head in part.iterfind(".//thead/tr/th")]) is has_fixtures
    assert ("Fixtures are" in part.text_content()) is has_fixtures


def test_work_that_nobody_reports_on_does_not_heal_on_until_today(tmp_path: Path) -> None:
    """Green 1 was done on 1 June, green 2 begun on the 2nd; nobody said any more. Likely by 25 June was the last word.

    From 2 to 24 June are 23 days. The list goes on to the day to allow for, and no further either.
    """
    club = SmallClub(tmp_path)
    club.job("spring", "06-01", more="    spare days: 2\n")
    club.done("spring", "06-01", "surfaces: green 1")
    club.log("second", "06-02", "work started", "job: spring", "surfaces: green 2", time="07:00")
    for day in ("06-20", "07-20"):
        bulletin = compose_bulletin(club.records(), moment(day))
        published, season = bulletin.stories["spring"].published, season_of(bulletin)
        assert published.likely == date(2027, 6, 25)
        assert _told(bulletin)["Greens"].healing_days.number == 23
        listed = [run.last for month in season.months for run in month.healing if run.last is not None]
        assert max(listed) <= (published.allow_until or date.min)


def test_without_a_job_there_is_no_table(demo_records: ClubRecords) -> None:
    records = replace(demo_records, jobs={}, entries=())
    season = season_of(compose_bulletin(records, at(records, "2027-09-14 09:30")))
    assert season.totals == ()
    assert "figures" not in season_months_html(
        season, records.club.voice(at(records, "2027-09-14 09:30").date()), "../"
    )
