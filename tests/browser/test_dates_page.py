"""The page on when to do a job in a browser: on a telephone and a desk, by day, by night and on paper."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from subprocess import CompletedProcess

import pytest
from playwright.sync_api import ViewportSize

from tests.browser.conftest import OpenPage
from tests.browser.survey import EYES, NARROWEST_PX, axe
from tests.conftest import DEMO

PAPER_PX = 1032  # A4 across less its margins: 273 mm at 96 px to an inch


ONE = ("--job", "greens-renovation-2027")
SEVERAL = ("--jobs", "greens-verticutting-2027,greens-renovation-2027", "--any-order")


@pytest.fixture(scope="module", params=[ONE, SEVERAL], ids=["one job", "several jobs"])
def days(
    request: pytest.FixtureRequest,
    tmp_path_factory: pytest.TempPathFactory,
    run_swardcast: Callable[..., CompletedProcess[str]],
) -> Path:
    page = tmp_path_factory.mktemp("days") / "page.html"
    asked = (*request.param, "--as-of", "2027-05-20 08:00", "--from", "2027-07-01")
    done = run_swardcast("dates", "--club", str(DEMO), *asked, "--to", "2027-10-31", "--page", str(page))
    assert done.returncode == 0, done.stderr
    return page


def test_axe_finds_nothing_wrong_by_day_or_night_narrow_or_wide(days: Path, open_page: OpenPage) -> None:
    page = open_page()
    page.goto(days.as_uri())
    violations, rules = axe(page, "days.html", EYES)
    assert {eyes: told for eyes, told in violations.items() if told} == {}
    assert {"color-contrast", "svg-img-alt", "scrollable-region-focusable"} <= rules


def test_it_asks_for_nothing_but_itself_and_does_not_run_sideways(days: Path, open_page: OpenPage) -> None:
    asked: list[str] = []
    page = open_page(viewport=ViewportSize(width=NARROWEST_PX, height=800))
    page.on("request", lambda request: asked.append(request.url))
    page.goto(days.as_uri())
    assert asked == [days.as_uri()]
    assert page.evaluate("document.documentElement.scrollWidth") <= NARROWEST_PX


def test_on_paper_no_column_is_cut(days: Path, open_page: OpenPage) -> None:
    page = open_page(viewport=ViewportSize(width=PAPER_PX, height=700))
    page.emulate_media(media="print")
    page.goto(days.as_uri())
    assert (
        page.evaluate("Math.max(...[...document.querySelectorAll('table')].map((one) => one.scrollWidth))") <= PAPER_PX
    )
