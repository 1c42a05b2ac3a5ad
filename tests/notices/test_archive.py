"""The archive: every notice by the year and the month of its work; which ones the list of notices leaves to it."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Final

from lxml import html

from swardcast.compose import Bulletin
from swardcast.notices.archive import (
    compose_archive,
    in_order_of_list,
    left_by_kinds,
    left_to_archive,
    of_last_seasons,
)
from swardcast.outlets.html import missing_html, why_html
from swardcast.outlook.states import Work
from tests.conftest import DEMO

Run = Callable[..., subprocess.CompletedProcess[str]]


_TO_ARCHIVE: Final = "//main//a[contains(@href, 'archive/')]"


def _links(page: Path) -> list[str]:
    links = html.parse(page).getroot().xpath("//main//h3/a/@href")
    return [str(link).split("notices/")[1].split("/")[0] for link in links]


def _built(run_swardcast: Run, site: Path, as_of: str) -> Path:
    done = run_swardcast("build", "--club", str(DEMO), "--output", str(site), "--as-of", as_of)
    assert done.returncode == 0, done.stderr
    return site


def test_each_notice_stands_once_under_the_month_of_its_work_the_latest_first(demo_bulletin: Bulletin) -> None:
    """Days out of the demo's plan and log."""
    years = compose_archive(demo_bulletin.notices, demo_bulletin.outlook.jobs, demo_bulletin.voice)
    told = {month.name: [one.id for one in month.notices] for year in years for month in year.months}
    assert [(year.year, year.count) for year in years] == [(2028, 1), (2027, 21)]
    assert list(told) == [
        "January 2028", "December 2027", "November 2027", "October 2027", "September 2027", "August 2027", "June 2027",
        "May 2027",
    ]  # fmt: skip
    assert told["June 2027"] == [
        "practice-green-solid-tining-2027", "greens-verticutting-2027", "fairways-tining-2027",
    ]  # fmt: skip
    assert told["September 2027"] == ["bunkers-resanding-2027", "tees-returfing-2027"]  # began on the 7th, on the 6th
    assert sorted(name for names in told.values() for name in names) == sorted(one.id for one in demo_bulletin.notices)


def test_what_is_over_for_half_a_year_is_left_to_the_archive(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    """The greens were back to normal on 31 May, 189 days before 6 December, the tees on 9 June, 180 days before."""
    bulletin = demo_bulletin_at("2027-12-06 08:00")
    left = left_to_archive(bulletin.notices, bulletin.outlook.jobs, bulletin.as_of.date())
    assert left == {"greens-solid-tining-2027"}
    earlier = demo_bulletin_at("2027-09-14 09:30")
    assert left_to_archive(earlier.notices, earlier.outlook.jobs, earlier.as_of.date()) == frozenset()


def test_a_list_of_a_kind_of_work_keeps_two_years_and_the_latest_however_long_ago(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """Back to normal in 2027: the greens on 31 May, the tees on 9 June, the practice green on 13 September. Two years
    with a 29 February are 731 days."""
    bulletin = demo_bulletin_at("2027-12-06 08:00")
    greens, tees, practice_green = (f"{where}-solid-tining-2027" for where in ("greens", "tees", "practice-green"))

    def left(year: int, month: int, day: int) -> set[str]:
        names = left_by_kinds(bulletin.notices, bulletin.outlook.jobs, date(year, month, day))
        return {name for name in names if "solid-tining" in name}

    assert left(2029, 5, 31) == set()
    assert left(2029, 6, 1) == {greens}
    assert left(2029, 6, 10) == {greens, tees}
    assert left(2050, 1, 1) == {greens, tees}
    jobs = [bulletin.outlook.jobs[name] for name in (practice_green, tees, greens)]
    assert of_last_seasons(jobs, date(2029, 6, 1)) == (*jobs[:2],)
    assert of_last_seasons(jobs, date(2050, 1, 1)) == (*jobs[:1],)


def test_a_page_on_a_kind_of_work_says_where_its_earlier_jobs_are(demo_bulletin: Bulletin) -> None:
    (page,) = (one for one in demo_bulletin.why if one.slug == "solid-tining")
    assert not page.leaves_jobs
    there, left = (why_html(one, demo_bulletin.voice, "../../") for one in (page, replace(page, leaves_jobs=True)))
    assert "archive" not in there
    assert "What has been over for more than two years is in the archive." in left
    assert 'href="../../archive/index.html"' in left


def test_a_notice_of_last_season_leaves_the_list_and_keeps_its_address(run_swardcast: Run, tmp_path: Path) -> None:
    site = _built(run_swardcast, tmp_path / "site", "2027-12-06 08:00")
    old = "greens-solid-tining-2027"
    listed, archived = _links(site / "notices" / "index.html"), _links(site / "archive" / "2027" / "index.html")
    assert old not in listed
    assert len(listed) == 21
    assert archived[-1] == old  # of 4 May, the earliest
    assert (site / "notices" / old / "index.html").is_file()
    surfaces, kinds = (site / name / "index.html" for name in ("surfaces/greens", "work/solid-tining"))
    assert old not in _links(surfaces)
    assert html.parse(surfaces).getroot().xpath("//main//a[@href='../../archive/index.html']")
    assert old in _links(kinds)  # few a year, which are looked up beside each other
    year = html.parse(site / "archive" / "2027" / "index.html").getroot().text_content()
    assert "Greens 1 to 18 were back to normal from this work on Monday 31 May." in " ".join(year.split())
    archive = html.parse(site / "archive" / "index.html").getroot()
    assert [" ".join(one.text_content().split()) for one in archive.xpath("//main//li")] == [
        "2028: 1 notice", "2027: 21 notices",
    ]  # fmt: skip
    years = archive.xpath("//main//li/a/@href")
    assert years == ["../archive/2028/index.html", "../archive/2027/index.html"]
    assert html.parse(site / "notices" / "index.html").getroot().xpath("//main//a[@href='../archive/index.html']")


def test_before_the_first_notice_nothing_leads_to_an_archive_and_its_page_says_why(
    run_swardcast: Run, tmp_path: Path
) -> None:
    """The demo announces its first work on 19 April."""
    site = _built(run_swardcast, tmp_path / "site", "2027-04-18 12:00")
    leading = [page for page in site.rglob("*.html") if html.parse(page).getroot().xpath(_TO_ARCHIVE)]
    assert leading == []
    words = html.parse(site / "archive" / "index.html").getroot().xpath("//main//p")
    assert [" ".join(one.text_content().split()) for one in words] == [
        "There is no notice yet. Each one stands here from the day on which we publish it."
    ]


def test_with_the_first_notice_the_season_leads_to_the_archive(demo_site: Path) -> None:
    (link,) = html.parse(demo_site / "season" / "index.html").getroot().xpath(_TO_ARCHIVE)
    assert (link.get("href"), link.text_content()) == ("../archive/index.html", "Notices of all years")


def test_the_page_for_a_lost_address_leads_to_the_status_the_notices_and_the_archive(demo_bulletin: Bulletin) -> None:
    """Such a page is shown below any address, so its links begin at the host's root."""
    page = html.fromstring(f"<div>{missing_html(demo_bulletin.voice, '/', has_archive=True)}</div>")
    links = {link.get("href"): " ".join(link.getparent().text_content().split()) for link in page.iter("a")}
    assert links == {
        "/index.html": "Course status: what is open today.",
        "/notices/index.html": "Notices: work that is planned, going on or healing.",
        "/archive/index.html": "Archive: notices of all years.",
    }


def test_the_list_has_what_comes_first_on_top_and_what_has_no_day_below(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """On 6 December nobody has entered anything since September: days out of the demo's plan."""
    bulletin = demo_bulletin_at("2027-12-06 08:00")
    jobs = bulletin.outlook.jobs
    listed = in_order_of_list(bulletin.notices, jobs, bulletin.voice)
    assert sorted(listed) == sorted(one.id for one in bulletin.notices)
    works = [jobs[one].work for one in listed]
    first = works.index(Work.PLANNED)
    assert all(work not in works[first:] for work in (Work.UNDER_WAY, Work.HEALING))
    to_come = [jobs[one].starts.isoformat() for one in listed if jobs[one].work is Work.PLANNED]
    dated = [day for day in to_come if day >= "2027-12-06"]
    assert to_come[:3] == ["2027-12-06", "2027-12-13", "2028-01-17"]
    assert to_come == [*dated, *sorted(day for day in to_come if day < "2027-12-06")]
    over = [one for one in listed if jobs[one].work.is_over]
    assert over[-1] == "greens-solid-tining-2027"  # back to normal on 31 May, the earliest


def test_the_status_counts_the_jobs_that_the_list_of_notices_has_to_come(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    bulletin = demo_bulletin_at("2027-12-06 08:00")
    listed = in_order_of_list(bulletin.notices, bulletin.outlook.jobs, bulletin.voice)
    to_come = [one for one in listed if bulletin.outlook.jobs[one].work is Work.PLANNED]
    assert [work.notice_id for work in bulletin.status.coming] == to_come
    assert not set(to_come) & left_to_archive(bulletin.notices, bulletin.outlook.jobs, bulletin.as_of.date())
    assert len(to_come) > 6
