"""The page on the sites of many clubs in a browser: on a telephone and a desk, by day, by night and on paper."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import ViewportSize

from swardcast.outlets.fleet_page import BuiltClub, State
from tests.browser.conftest import OpenPage
from tests.browser.private_pages import PAPER_PX, assert_fit_for_all, on_a_telephone
from tests.outlets.test_fleet_page import FLEET, page_of

LONG = "north/" + "a-club-with-a-very-long-name-" * 4


@pytest.fixture(scope="module")
def fleet(tmp_path_factory: pytest.TempPathFactory) -> Path:
    long = BuiltClub(club=LONG, name="W" * 60, state=State.FAILED, seconds=1234.5, said="x" * 300)
    page = tmp_path_factory.mktemp("fleet") / "today.html"
    page.write_text(page_of(*FLEET, long), encoding="utf-8")
    return page


def test_axe_finds_nothing_wrong_by_day_or_night_narrow_or_wide(fleet: Path, open_page: OpenPage) -> None:
    assert_fit_for_all(fleet, open_page, {"color-contrast", "link-name"})


def test_it_asks_for_nothing_but_itself_and_does_not_run_sideways(fleet: Path, open_page: OpenPage) -> None:
    page = on_a_telephone(fleet, open_page)
    page.locator("summary").click()
    assert page.get_by_text("Worth another look: one").is_visible()
    page.emulate_media(media="print")
    page.set_viewport_size(ViewportSize(width=PAPER_PX, height=700))
    assert page.evaluate("document.documentElement.scrollWidth") <= PAPER_PX
