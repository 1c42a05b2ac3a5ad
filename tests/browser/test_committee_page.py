"""The committee's page in a browser: read on a telephone and a desk, by day, by night and on paper."""

from __future__ import annotations

from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from subprocess import CompletedProcess

import pytest
from playwright.sync_api import ViewportSize
from pypdf import PdfReader

from tests.browser.conftest import OpenPage
from tests.browser.survey import EYES, NARROWEST_PX, axe
from tests.conftest import DEMO
from tests.printed import words_of


@pytest.fixture(scope="module")
def committee(tmp_path_factory: pytest.TempPathFactory, run_swardcast: Callable[..., CompletedProcess[str]]) -> Path:
    page = tmp_path_factory.mktemp("committee") / "page.html"
    asked = ("--instead-of", "greens-renovation-2027", "--choices", "all", "--as-of", "2027-08-18 09:30")
    done = run_swardcast("compare", "--club", str(DEMO), *asked, "--page", str(page))
    assert done.returncode == 0, done.stderr
    return page


def test_axe_finds_nothing_wrong_by_day_or_night_narrow_or_wide(committee: Path, open_page: OpenPage) -> None:
    page = open_page()
    page.goto(committee.as_uri())
    violations, rules = axe(page, "committee.html", EYES)
    assert {eyes: told for eyes, told in violations.items() if told} == {}
    assert {"color-contrast", "svg-img-alt", "scrollable-region-focusable"} <= rules


def test_it_asks_for_nothing_but_itself_and_does_not_run_sideways(committee: Path, open_page: OpenPage) -> None:
    asked: list[str] = []
    page = open_page(viewport=ViewportSize(width=NARROWEST_PX, height=800))
    page.on("request", lambda request: asked.append(request.url))
    page.goto(committee.as_uri())
    assert asked == [committee.as_uri()]
    assert page.evaluate("document.documentElement.scrollWidth") <= NARROWEST_PX


def test_on_paper_the_picture_stands_on_the_first_page_and_no_column_is_cut(
    committee: Path, open_page: OpenPage
) -> None:
    page = open_page()
    page.goto(committee.as_uri())
    sheets = PdfReader(BytesIO(page.pdf(prefer_css_page_size=True))).pages
    assert "days until back to normal" in words_of(sheets[0])
    assert "Private, for the committee." in words_of(sheets[0])
    words = words_of(*sheets)
    for heading in ("What is done", "The work", "Healing", "Competitions and visitors", "Times a year, sand"):
        assert heading in words
    page.emulate_media(media="print")
    page.set_viewport_size(
        ViewportSize(width=1032, height=700)
    )  # A4 across less its margins: 273 mm at 96 px to an inch
    assert page.evaluate("Math.max(...[...document.querySelectorAll('table')].map((one) => one.scrollWidth))") <= 1032
