"""Pages with the reader's own colours, and with letters so large that a line has room for two words."""

from __future__ import annotations

import pytest

from tests.browser.conftest import OpenPage
from tests.browser.hosting import Host

LARGE_LETTERS_PX = 180
"""A phone of 360 px whose page is shown at 200 % (WCAG 2.2, 1.4.4)."""


def test_forced_colours_reach_the_signs_and_mark_one_page_in_the_menu(demo_host: Host, open_page: OpenPage) -> None:
    page = open_page()
    page.emulate_media(forced_colors="active")
    page.goto(demo_host.address)
    ink, *signs = page.evaluate(
        "[getComputedStyle(document.body).color, ...[...document.querySelectorAll('.sc-sign')]"
        ".map((one) => getComputedStyle(one).color)]"
    )
    assert len(signs) > 18
    assert set(signs) == {ink}
    paper, *edges = page.evaluate(
        "[getComputedStyle(document.querySelector('.sc-sheet')).backgroundColor,"
        " ...[...document.querySelectorAll('.sc-nav > ul > li > a')]"
        ".map((one) => getComputedStyle(one).borderBottomColor)]"
    )
    assert [edge != paper for edge in edges] == [True, False, False]


@pytest.mark.parametrize(
    "name",
    ["index.html", "season/index.html", "notices/index.html", "notices/greens-renovation-2027/index.html"],
)
def test_with_letters_twice_as_large_nothing_runs_out_of_the_sheet(
    demo_host: Host, open_page: OpenPage, name: str
) -> None:
    page = open_page()
    page.set_viewport_size({"width": LARGE_LETTERS_PX, "height": 640})
    page.goto(demo_host.page(name))
    page.evaluate("document.querySelectorAll('main details').forEach((one) => { one.open = true; })")
    assert page.evaluate("document.documentElement.scrollWidth") <= LARGE_LETTERS_PX
