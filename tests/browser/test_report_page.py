"""The committee's report in a browser: read on a telephone and a desk, by day, by night and on paper."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

import pytest
from playwright.sync_api import ViewportSize
from pypdf import PdfReader

from tests.browser.conftest import OpenPage, PrivatePage
from tests.browser.private_pages import assert_fit_for_all, on_a_telephone, widest_table_px
from tests.printed import lines_of

A4_PT = (595, 842)
BETWEEN_MARGINS_PX = 688  # 210 mm less 14 mm on either side, at 96 px to an inch


@pytest.fixture(scope="module")
def report(private_page: PrivatePage) -> Path:
    return private_page("report", "--year", "2027", "--as-of", "2027-12-01 09:00")


def test_axe_finds_nothing_wrong_by_day_or_night_narrow_or_wide(report: Path, open_page: OpenPage) -> None:
    assert_fit_for_all(report, open_page, {"color-contrast", "svg-img-alt", "scrollable-region-focusable"})


def test_it_asks_for_nothing_but_itself_and_does_not_run_sideways(report: Path, open_page: OpenPage) -> None:
    on_a_telephone(report, open_page)


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
    assert widest_table_px(page) <= BETWEEN_MARGINS_PX
