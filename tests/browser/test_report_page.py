"""The committee's report in a browser: read on a telephone and a desk, by day, by night and on paper."""

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
from tests.printed import lines_of

A4_PT = (595, 842)
BETWEEN_MARGINS_PX = 688  # 210 mm less 14 mm on either side, at 96 px to an inch


@pytest.fixture(scope="module")
def report(tmp_path_factory: pytest.TempPathFactory, run_swardcast: Callable[..., CompletedProcess[str]]) -> Path:
    page = tmp_path_factory.mktemp("report") / "page.html"
    asked = ("--year", "2027", "--as-of", "2027-12-01 09:00")
    done = run_swardcast("report", "--club", str(DEMO), *asked, "--page", str(page))
    assert done.returncode == 0, done.stderr
    return page


def test_axe_finds_nothing_wrong_by_day_or_night_narrow_or_wide(report: Path, open_page: OpenPage) -> None:
    page = open_page()
    page.goto(report.as_uri())
    violations, rules = axe(page, "report.html", EYES)
    assert {eyes: told for eyes, told in violations.items() if told} == {}
    assert {"color-contrast", "svg-img-alt", "scrollable-region-focusable"} <= rules


def test_it_asks_for_nothing_but_itself_and_does_not_run_sideways(report: Path, open_page: OpenPage) -> None:
    asked: list[str] = []
    page = open_page(viewport=ViewportSize(width=NARROWEST_PX, height=800))
    page.on("request", lambda request: asked.append(request.url))
    page.goto(report.as_uri())
    assert asked == [report.as_uri()]
    assert page.evaluate("document.documentElement.scrollWidth") <= NARROWEST_PX


def test_on_paper_every_sheet_says_that_it_is_private_and_none_ends_with_a_heading(
    report: Path, open_page: OpenPage
) -> None:
    page = open_page()
    page.goto(report.as_uri())
    headings = page.locator("h2, h3, caption").all_inner_texts()
    sheets = PdfReader(BytesIO(page.pdf(prefer_css_page_size=True))).pages
    assert [round(float(side)) for side in (sheets[0].mediabox.width, sheets[0].mediabox.height)] == list(A4_PT)
    assert len(sheets) > 4
    for number, sheet in enumerate(sheets, start=1):
        lines = lines_of(sheet)
        margins = ("Private: for the committee", f"{number} / {len(sheets)}")
        assert all(line in lines for line in margins), lines
        assert [line for line in lines if line not in margins][-1] not in headings
    page.emulate_media(media="print")
    page.set_viewport_size(ViewportSize(width=BETWEEN_MARGINS_PX, height=1000))
    widest = page.evaluate("Math.max(...[...document.querySelectorAll('table')].map((one) => one.scrollWidth))")
    assert widest <= BETWEEN_MARGINS_PX
