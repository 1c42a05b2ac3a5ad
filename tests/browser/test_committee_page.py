"""The committee's page in a browser: read on a telephone and a desk, by day, by night and on paper."""

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
def committee(private_page: PrivatePage) -> Path:
    asked = ("--instead-of", "greens-renovation-2027", "--choices", "all", "--as-of", "2027-08-18 09:30")
    return private_page("compare", *asked)


def test_axe_finds_nothing_wrong_by_day_or_night_narrow_or_wide(committee: Path, open_page: OpenPage) -> None:
    assert_fit_for_all(committee, open_page, {"color-contrast", "svg-img-alt", "scrollable-region-focusable"})


def test_it_asks_for_nothing_but_itself_and_does_not_run_sideways(committee: Path, open_page: OpenPage) -> None:
    on_a_telephone(committee, open_page)


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
    page.set_viewport_size(ViewportSize(width=PAPER_PX, height=700))
    assert widest_table_px(page) <= PAPER_PX
