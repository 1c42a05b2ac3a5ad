"""The page of a year's sand in a browser: on a telephone and a desk, by day, by night and on paper."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

import pytest
from playwright.sync_api import ViewportSize
from pypdf import PdfReader

from tests.browser.conftest import OpenPage, PrivatePage
from tests.browser.private_pages import PAPER_PX, assert_fit_for_all, on_a_telephone, widest_table_px
from tests.printed import words_of


@pytest.fixture(scope="module")
def sand(private_page: PrivatePage) -> Path:
    return private_page("sand", "--as-of", "2027-09-14 09:30")


def test_axe_finds_nothing_wrong_by_day_or_night_narrow_or_wide(sand: Path, open_page: OpenPage) -> None:
    assert_fit_for_all(sand, open_page, {"color-contrast", "svg-img-alt", "scrollable-region-focusable"})


def test_it_asks_for_nothing_but_itself_and_does_not_run_sideways(sand: Path, open_page: OpenPage) -> None:
    on_a_telephone(sand, open_page)


def test_on_paper_no_column_is_cut(sand: Path, open_page: OpenPage) -> None:
    page = open_page()
    page.goto(sand.as_uri())
    sheets = PdfReader(BytesIO(page.pdf(prefer_css_page_size=True))).pages
    assert "Private, for the committee." in words_of(sheets[0])
    words = words_of(*sheets)
    for heading in ("What lies in the store", "By month", "The store", "Other materials", "here and in print"):
        assert heading in words
    page.emulate_media(media="print")
    page.set_viewport_size(ViewportSize(width=PAPER_PX, height=700))
    assert widest_table_px(page) <= PAPER_PX
