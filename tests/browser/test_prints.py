"""Pages as a browser prints them."""

from __future__ import annotations

from io import BytesIO

import pypdf
import pytest

from tests.browser.conftest import OpenPage
from tests.browser.hosting import Host
from tests.browser.survey import one_of_each_kind
from tests.printed import lines_of, words_of

A4_POINTS = (595, 842)
"""ISO 216 in 1/72 inch."""


def _printed(page: object) -> pypdf.PdfReader:
    return pypdf.PdfReader(BytesIO(page.pdf(prefer_css_page_size=True)))  # type: ignore[attr-defined] # a page


@pytest.mark.parametrize("dark", [False, True], ids=["light", "dark"])
def test_the_status_fits_on_two_sheets_without_menu_and_news(demo_host: Host, open_page: OpenPage, dark: bool) -> None:
    page = open_page(dark=dark)
    page.goto(demo_host.address)
    printed = _printed(page)
    assert len(printed.pages) <= 2
    assert tuple(round(float(length)) for length in printed.pages[0].mediabox[2:]) == A4_POINTS
    said = words_of(*printed.pages)
    for words in ("The course is open", "What is different today", "Greens 1 to 18", "Hole by hole", "What comes next"):
        assert words in said
    for words in ("More", "For the pro shop", "Latest news", "Go to the content", "We do not know yet"):
        assert words not in said


def test_a_notice_prints_all_its_parts_and_no_heading_alone(demo_host: Host, open_page: OpenPage) -> None:
    page = open_page()
    page.goto(demo_host.page("notices/greens-renovation-2027/index.html"))
    headings = page.locator("main h2").all_inner_texts()
    assert len(headings) > 10
    printed = _printed(page)
    assert len(printed.pages) <= 5
    said = words_of(*printed.pages)
    for heading in headings:
        assert heading in said
    for sheet in printed.pages:
        assert lines_of(sheet)[-1] not in headings


def test_what_is_folded_is_not_printed_and_the_page_says_where_it_is(demo_host: Host, open_page: OpenPage) -> None:
    page = open_page()
    page.goto(demo_host.page("notices/greens-renovation-2027/index.html"))
    said = words_of(*_printed(page).pages)
    assert "https://quillhaven.example/notices/greens-renovation-2027/" in said
    for folded in ("The same in figures", "What happened before", "Poster to print"):
        assert page.get_by_text(folded).count() == 1
        assert folded not in said
    page.locator("summary", has_text="What happened before").click()
    assert "What happened before" in words_of(*_printed(page).pages)
    page.goto(demo_host.page("season/index.html"))
    assert "23 to 27 August, done" in words_of(*_printed(page).pages)  # of a folded month


def test_each_kind_of_page_prints_dark_ink_on_white_also_from_a_dark_screen_and_no_empty_last_sheet(
    demo_host: Host, open_page: OpenPage
) -> None:
    page = open_page(dark=True)
    page.emulate_media(media="print", color_scheme="dark")
    for name in one_of_each_kind(demo_host.site).values():
        if name.startswith(("n/", "404")):
            continue
        page.goto(demo_host.page(name))
        assert lines_of(_printed(page).pages[-1]), name
        if name.endswith("email.html"):
            continue  # an e-mail has its own colours
        ink, *papers = page.evaluate(
            "[getComputedStyle(document.querySelector('h1')).color, ...['html', 'body', 'main']"
            ".map((one) => getComputedStyle(document.querySelector(one)).backgroundColor)]"
        )
        assert ink == "rgb(0, 0, 0)", name
        assert set(papers) <= {"rgb(255, 255, 255)", "rgba(0, 0, 0, 0)"}, name
