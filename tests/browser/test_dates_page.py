"""The page on when to do a job in a browser: on a telephone and a desk, by day, by night and on paper."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import ViewportSize

from tests.browser.conftest import OpenPage, PrivatePage
from tests.browser.private_pages import PAPER_PX, assert_fit_for_all, on_a_telephone, widest_table_px

ONE = ("--job", "greens-renovation-2027")
SEVERAL = ("--jobs", "greens-verticutting-2027,greens-renovation-2027", "--any-order")


@pytest.fixture(scope="module", params=[ONE, SEVERAL], ids=["one job", "several jobs"])
def days(request: pytest.FixtureRequest, private_page: PrivatePage) -> Path:
    asked = (*request.param, "--as-of", "2027-05-20 08:00", "--from", "2027-07-01", "--to", "2027-10-31")
    return private_page("dates", *asked)


def test_axe_finds_nothing_wrong_by_day_or_night_narrow_or_wide(days: Path, open_page: OpenPage) -> None:
    assert_fit_for_all(days, open_page, {"color-contrast", "svg-img-alt", "scrollable-region-focusable"})


def test_it_asks_for_nothing_but_itself_and_does_not_run_sideways(days: Path, open_page: OpenPage) -> None:
    on_a_telephone(days, open_page)


def test_on_paper_no_column_is_cut(days: Path, open_page: OpenPage) -> None:
    page = open_page(viewport=ViewportSize(width=PAPER_PX, height=700))
    page.emulate_media(media="print")
    page.goto(days.as_uri())
    assert widest_table_px(page) <= PAPER_PX
