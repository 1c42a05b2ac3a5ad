"""What every private page has to do in a browser: one file that anybody can read, on a telephone and on paper."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Page, ViewportSize

from tests.browser.conftest import OpenPage
from tests.browser.survey import EYES, NARROWEST_PX, axe

__all__ = ["PAPER_PX", "assert_fit_for_all", "on_a_telephone", "widest_table_px"]

PAPER_PX = 1032
"""A4 across less its margins: 273 mm at 96 px to an inch."""


def assert_fit_for_all(file: Path, open_page: OpenPage, rules: set[str]) -> None:
    """Axe finds nothing wrong by day or night, narrow or wide; these rules of its had something to judge."""
    page = open_page()
    page.goto(file.as_uri())
    violations, judged = axe(page, file.name, EYES)
    wrong = {eyes: told for eyes, told in violations.items() if told}
    assert wrong == {}, wrong
    assert rules <= judged, rules - judged


def on_a_telephone(file: Path, open_page: OpenPage) -> Page:
    """The page on the narrowest screen, where it asks for nothing but itself and does not run sideways."""
    asked: list[str] = []
    page = open_page(viewport=ViewportSize(width=NARROWEST_PX, height=800))
    page.on("request", lambda request: asked.append(request.url))
    page.goto(file.as_uri())
    assert asked == [file.as_uri()], asked
    wide_px = page.evaluate("document.documentElement.scrollWidth")
    assert wide_px <= NARROWEST_PX, wide_px
    return page


def widest_table_px(page: Page) -> float:
    """How wide the widest table of the page is."""
    return float(page.evaluate("Math.max(...[...document.querySelectorAll('table')].map((one) => one.scrollWidth))"))
