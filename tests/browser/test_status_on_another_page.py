"""The course status on a page of the club's own, on another host than the notices."""

from __future__ import annotations

import shutil
from datetime import datetime
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import BELOW, MOMENT, OpenPage
from tests.browser.hosting import Host, hosted

SENTENCE = "The course is open, but holes 5 and 13 are played from other markers"
LINK = "How the course is today"


def _club_page(folder: Path, notices: Host) -> Path:
    folder.mkdir()
    (folder / "index.html").write_text(
        f'<!DOCTYPE html><html lang="de"><title>Club</title><p id="course-status"><a href="{notices.address}">{LINK}</a></p>'
        f'<script src="{notices.address}status.js" data-into="course-status" defer></script>',
        encoding="utf-8",
    )
    return folder


def _shown(page: Page, folder: Path, notices: Host) -> None:
    """Show the club's own page, after its script has asked."""
    with hosted(_club_page(folder, notices)) as own:
        assert own.origin != notices.origin
        with page.expect_event("requestfinished", lambda request: request.url.endswith("status.json")):
            page.goto(own.address)


@pytest.mark.parametrize(
    ("at", "said", "state"),
    [
        (MOMENT, SENTENCE, "fresh"),
        (datetime.fromisoformat("2027-09-15T08:50:00+01:00"), "We do not know yet how the course is today", "old"),
    ],
    ids=["on the day", "on the next morning"],
)
def test_it_tells_the_status_before_the_link(
    demo_site: Path, open_page: OpenPage, tmp_path: Path, at: datetime, said: str, state: str
) -> None:
    page = open_page(at=at)
    with hosted(demo_site, BELOW, shared=True) as notices:
        _shown(page, tmp_path / "own", notices)
        place = page.locator("#course-status")
        expect(place).to_have_attribute("data-course-status", state)
        assert place.inner_text().startswith(said)
        assert place.inner_text().endswith(LINK)
        assert place.locator("span").get_attribute("lang") == "en-GB"
        assert page.context.cookies() == []


def test_where_the_host_does_not_let_others_read_the_link_stays(
    demo_host: Host, open_page: OpenPage, tmp_path: Path
) -> None:
    page = open_page()
    with hosted(_club_page(tmp_path / "own", demo_host)) as own:
        with page.expect_event("requestfailed", lambda request: request.url.endswith("status.json")):
            page.goto(own.address)
        expect(page.locator("#course-status")).to_have_text(LINK)


def test_without_script_the_link_stays(demo_host: Host, open_page: OpenPage, tmp_path: Path) -> None:
    page = open_page(java_script_enabled=False, at=None)
    with hosted(_club_page(tmp_path / "own", demo_host)) as own:
        page.goto(own.address)
        page.get_by_role("link", name=LINK).click()
        expect(page.get_by_role("heading", level=1)).to_contain_text("The course is open")


NEWER = '{"version": "2.0", "sentence": "x", "fresh_until": "2099-01-01T00:00:00Z", "club": {"language": "en-GB"}}'


@pytest.mark.parametrize("broken", ["{", "{}", NEWER], ids=["half", "empty", "newer"])
def test_with_a_file_that_is_broken_or_of_another_time_the_link_stays(
    demo_site: Path, open_page: OpenPage, tmp_path: Path, broken: str
) -> None:
    site = tmp_path / "notices"
    site.mkdir()
    shutil.copy(demo_site / "status.js", site)
    (site / "status.json").write_text(broken, encoding="utf-8")
    page = open_page()
    with hosted(site, shared=True) as notices:
        _shown(page, tmp_path / "own", notices)
        page.evaluate("new Promise((done) => setTimeout(done, 50))")  # what was read is worked on after it came
        expect(page.locator("#course-status")).to_have_text(LINK)
