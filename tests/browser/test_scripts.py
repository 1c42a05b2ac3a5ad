"""What a script adds: the age of what stands on the page, and the last status without a connection."""

from __future__ import annotations

import shutil
from datetime import datetime
from pathlib import Path
from time import monotonic

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import BELOW, PHONE, OpenPage
from tests.browser.hosting import hosted

NEXT_MORNING = datetime.fromisoformat("2027-09-15T08:50:00+01:00")
BEFORE_MIDNIGHT = datetime.fromisoformat("2027-09-14T23:58:30+01:00")
KEPT = "caches.keys().then((names) => names.length)"
MOST_SECONDS = 20


def _until(page: Page, script: str, value: object) -> None:
    """Wait for what a script of a page gives; Playwright's own wait takes any promise for done."""
    until = monotonic() + MOST_SECONDS
    while (found := page.evaluate(script)) != value:
        assert monotonic() < until, (script, found)
        page.wait_for_timeout(25)


def _says_that_it_is_not_known(page: Page) -> None:
    answer = page.get_by_role("heading", level=1)
    expect(answer).to_have_text("We do not know yet how the course is today.")
    assert page.locator(".sc-answer .sc-sign").get_attribute("class") == "sc-sign sc-sign--not-known"
    expect(page.get_by_text("This was true at 6:50am on Tuesday 14 September").first).to_be_visible()
    expect(page.get_by_text("Please check before you set out.")).to_be_visible()
    expect(page.get_by_role("heading", name="What was different when last reported")).to_be_visible()
    for state in page.locator(".sc-line__state").all():
        expect(state).to_contain_text("Not known since Tuesday 14 September")
    # Limits of the day before are gone, the one that the club gave a later end stays.
    assert "Trolleys" not in page.inner_text("main")
    assert "Preferred lies" in page.inner_text("main")
    assert "All 18 holes: not known" in page.locator(".sc-key").inner_text()


def test_on_the_next_morning_the_page_says_that_it_is_not_known(demo_site: Path, open_page: OpenPage) -> None:
    """From a folder, as a member may have kept it: no host is needed for it."""
    page = open_page(viewport=PHONE, at=NEXT_MORNING)
    page.goto((demo_site / "index.html").as_uri())
    _says_that_it_is_not_known(page)
    assert "2 hours" not in page.inner_text("main")
    assert "26 hours ago" in page.locator(".sc-answer").inner_text()


def test_a_page_that_is_left_open_changes_at_midnight_by_itself(demo_site: Path, open_page: OpenPage) -> None:
    page = open_page(at=None)
    page.clock.install(time=BEFORE_MIDNIGHT)
    page.goto((demo_site / "index.html").as_uri())
    expect(page.get_by_role("heading", level=1)).to_contain_text("The course is open")
    page.clock.run_for(3 * 60_000)
    _says_that_it_is_not_known(page)


def test_a_notice_and_the_season_say_of_which_moment_they_tell_and_how_old_that_is(
    demo_site: Path, open_page: OpenPage
) -> None:
    """Under the title, also without script; from midnight on with the age. A build that hangs is seen on every page."""
    told = "True at 9:30am on Tuesday 14 September."
    without, page = open_page(java_script_enabled=False, at=None), open_page(viewport=PHONE)
    for name in (
        "notices/greens-renovation-2027/index.html",
        "notices/greens-autumn-feed-2027/index.html",
        "season/index.html",
    ):
        address = (demo_site / name).as_uri()
        without.goto(address)
        expect(without.locator("h1 + div")).to_have_text(told)
        page.clock.set_fixed_time(BEFORE_MIDNIGHT)
        page.goto(address)
        age = page.locator("h1 + div")
        expect(age).to_have_text(told)
        page.clock.set_fixed_time(datetime.fromisoformat("2027-09-15T11:45:00+01:00"))
        page.reload()
        expect(age).to_be_in_viewport(ratio=1)
        said = " ".join(age.inner_text().split())
        assert said.startswith("This was true at 9:30am on Tuesday 14 September, 26 hours ago. Ask ")
        assert age.get_by_role("link").count() == 2  # the office by e-mail and by telephone
        assert told not in page.inner_text("main")


def test_what_is_over_grows_no_older(demo_site: Path, open_page: OpenPage) -> None:
    page = open_page(at=NEXT_MORNING)
    page.goto((demo_site / "notices/greens-solid-tining-2027/index.html").as_uri())
    assert "This notice is over." in page.inner_text("main")
    assert page.locator("[data-since], [data-until]").count() == 0
    assert "rue at" not in page.inner_text("main")


@pytest.mark.parametrize("language", ["de-DE", "ar"])
def test_the_age_is_told_in_the_language_of_the_page(demo_site: Path, open_page: OpenPage, language: str) -> None:
    page = open_page(at=NEXT_MORNING, locale=language)
    page.goto((demo_site / "index.html").as_uri())
    assert "26 hours ago" in page.locator(".sc-answer").inner_text()


def test_a_clock_that_is_behind_the_entry_tells_no_age(winter_site: Path, open_page: OpenPage) -> None:
    """The last entry is of 18 September; one computer takes it for the 1st, the other knows that it is November."""
    for day, is_told in (("2027-09-01", False), ("2027-11-20", True)):
        page = open_page(at=datetime.fromisoformat(f"{day}T09:00:00+01:00"))
        page.goto((winter_site / "index.html").as_uri())
        assert ("That was " in page.inner_text("main")) is is_told, day
        assert "0 hours" not in page.inner_text("main")


def _visited(page: Page, address: str) -> None:
    page.goto(address)
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    _until(page, KEPT, 1)


def test_without_a_connection_the_last_status_is_read_with_its_moment(demo_site: Path, open_page: OpenPage) -> None:
    page = open_page(keeps=True, viewport=PHONE, locale="de-DE")
    with hosted(demo_site, BELOW) as host:
        _visited(page, host.address)
        bar = page.locator("[data-offline-bar]")
        expect(bar).to_be_hidden()
    page.context.set_offline(True)  # and the host is gone as well
    page.reload()
    expect(bar).to_have_text("You are offline. This is what was known at 9:30am on Tuesday 14 September.")
    expect(page.get_by_role("heading", level=1)).to_contain_text("The course is open")
    # With its look and the club's badge, from what was kept.
    assert "Georgia" in page.locator("h1").evaluate("(one) => getComputedStyle(one).fontFamily")
    assert page.locator(".sc-badge").evaluate("(one) => one.naturalWidth") > 0
    # Any other page leads there too.
    page.goto(host.page("notices/index.html"))
    assert page.url == host.address
    expect(bar).to_be_visible()


def test_a_copy_from_yesterday_says_that_today_is_not_known(demo_site: Path, open_page: OpenPage) -> None:
    page = open_page(keeps=True)
    with hosted(demo_site, BELOW) as host:
        _visited(page, host.address)
    page.context.set_offline(True)
    page.clock.set_fixed_time(NEXT_MORNING)
    page.reload()
    expect(page.locator("[data-offline-bar]")).to_be_visible()
    _says_that_it_is_not_known(page)


def test_who_switches_reading_offline_off_keeps_nothing_until_it_is_on_again(
    demo_site: Path, open_page: OpenPage
) -> None:
    page = open_page(keeps=True)
    with hosted(demo_site, BELOW) as host:
        _visited(page, host.address)
        page.goto(host.page("pages/follow/index.html"))
        keep = page.locator("#keep")
        before = keep.inner_text()
        keep.get_by_role("button").click()
        expect(keep).not_to_have_text(before)
        _until(page, KEPT, 0)
        assert page.evaluate("navigator.serviceWorker.getRegistrations().then((all) => all.length)") == 0
        page.goto(host.address)
        page.wait_for_load_state("networkidle")
        assert page.evaluate(KEPT) == 0
        page.goto(host.page("pages/follow/index.html"))
        keep.get_by_role("button").click()
        _until(page, KEPT, 1)
        assert keep.inner_text() == before


def test_a_new_build_takes_the_place_of_the_kept_one(demo_site: Path, open_page: OpenPage, tmp_path: Path) -> None:
    site = Path(shutil.copytree(demo_site, tmp_path / "site"))
    page = open_page(keeps=True)
    with hosted(site, BELOW) as host:
        _visited(page, host.address)
        (first,) = page.evaluate("caches.keys()")
        worker = site / "offline.js"
        worker.write_text(worker.read_text("utf-8").replace('VERSION = "', 'VERSION = "new'), encoding="utf-8")
        page.evaluate("navigator.serviceWorker.ready.then((one) => one.update()).then(() => true)")
        *place, version = first.split(" ")
        _until(page, "caches.keys()", [" ".join((*place, f"new{version}"))])


def test_sites_in_other_folders_of_a_host_leave_each_other_alone(
    demo_site: Path, open_page: OpenPage, tmp_path: Path
) -> None:
    for name in ("east", "west"):
        (tmp_path / name).symlink_to(demo_site, target_is_directory=True)
    page = open_page(keeps=True)
    with hosted(tmp_path) as host:
        for number, name in enumerate(("east", "west"), start=1):
            page.goto(host.page(f"{name}/"))
            page.evaluate("navigator.serviceWorker.ready.then(() => true)")
            _until(page, KEPT, number)
        page.goto(host.page("east/pages/follow/index.html"))
        page.locator("#keep").get_by_role("button").click()
        _until(page, KEPT, 1)
        (left,) = page.evaluate("caches.keys()")
        assert host.page("west/") in left
        scopes = page.evaluate("navigator.serviceWorker.getRegistrations().then((all) => all.map((one) => one.scope))")
        assert scopes == [host.page("west/")]
