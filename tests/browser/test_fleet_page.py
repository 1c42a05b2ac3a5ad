"""The page on the sites of many clubs in a browser: on a telephone and a desk, by day, by night and on paper."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import ViewportSize

from swardcast.outlets.fleet_page import BuiltClub, State
from tests.browser.conftest import OpenPage
from tests.browser.survey import EYES, NARROWEST_PX, axe
from tests.outlets.test_fleet_page import FLEET, page_of

LONG = "north/" + "a-club-with-a-very-long-name-" * 4


@pytest.fixture(scope="module")
def fleet(tmp_path_factory: pytest.TempPathFactory) -> Path:
    long = BuiltClub(club=LONG, name="W" * 60, state=State.FAILED, seconds=1234.5, said="x" * 300)
    page = tmp_path_factory.mktemp("fleet") / "today.html"
    page.write_text(page_of(*FLEET, long), encoding="utf-8")
    return page


def test_axe_finds_nothing_wrong_by_day_or_night_narrow_or_wide(fleet: Path, open_page: OpenPage) -> None:
    page = open_page()
    page.goto(fleet.as_uri())
    violations, rules = axe(page, "today.html", EYES)
    assert {eyes: told for eyes, told in violations.items() if told} == {}
    assert {"color-contrast", "link-name"} <= rules


def test_it_asks_for_nothing_but_itself_and_does_not_run_sideways(fleet: Path, open_page: OpenPage) -> None:
    asked: list[str] = []
    page = open_page(viewport=ViewportSize(width=NARROWEST_PX, height=800))
    page.on("request", lambda request: asked.append(request.url))
    page.goto(fleet.as_uri())
    assert asked == [fleet.as_uri()]
    assert page.evaluate("document.documentElement.scrollWidth") <= NARROWEST_PX
    page.locator("summary").click()
    assert page.get_by_text("Worth another look: one").is_visible()
    page.emulate_media(media="print")
    page.set_viewport_size(ViewportSize(width=1032, height=700))
    assert page.evaluate("document.documentElement.scrollWidth") <= 1032
