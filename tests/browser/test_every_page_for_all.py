"""Every page of the demo in a real browser: narrow and zoomed, its headings, what a thumb and a keyboard find, its links."""

from __future__ import annotations

from collections.abc import Mapping
from http.client import HTTPConnection
from itertools import pairwise
from urllib.parse import urlsplit

from tests.browser.conftest import BELOW
from tests.browser.hosting import Host
from tests.browser.survey import Seen

Survey = Mapping[str, Seen]
PRINTED = "/poster.html"
"""Made for paper alone: its sheet is as wide as the paper."""
MOST_BYTES_OF_A_FIRST_VIEW = 50_000


def test_no_page_scrolls_sideways_on_a_narrow_phone_or_at_200_percent(survey: Survey) -> None:
    assert {
        page: seen.widths_px
        for page, seen in survey.items()
        if not page.endswith(PRINTED) and any(content > window for window, content in seen.widths_px.items())
    } == {}


def test_nothing_moves_while_a_page_loads(survey: Survey) -> None:
    assert {page: seen.shift for page, seen in survey.items() if seen.shift} == {}


def test_every_page_names_its_language_and_itself(survey: Survey) -> None:
    assert {
        page for page, seen in survey.items() if seen.look["language"] != "en-GB" or not seen.look["title"]
    } == set()


def test_headings_begin_with_the_one_of_the_page_and_leave_out_no_level(survey: Survey) -> None:
    for page, seen in survey.items():
        levels = seen.look["headings"]
        assert levels[:1] == [1], page
        assert levels.count(1) == 1, page
        assert all(after - before <= 1 for before, after in pairwise(levels)), (page, levels)


def test_what_is_pressed_is_large_enough_for_a_thumb(survey: Survey) -> None:
    """24 px, WCAG 2.2, 2.5.8; axe looks at the other links, which may be smaller in a line of text."""
    assert {page: seen.look["small"] for page, seen in survey.items() if seen.look["small"]} == {}


def test_no_page_changes_the_order_of_tab(survey: Survey) -> None:
    assert {page for page, seen in survey.items() if seen.look["tabindex"]} == set()


def test_the_first_view_of_the_status_loads_less_than_50_kb(survey: Survey) -> None:
    assert 20_000 < survey["index.html"].bytes < MOST_BYTES_OF_A_FIRST_VIEW


def test_below_a_folder_of_a_host_every_page_and_link_answers(survey: Survey, demo_host: Host) -> None:
    """Links of the page for a missing address begin at the root, where hosts keep it."""
    named = {
        urlsplit(link).path
        for page, seen in survey.items()
        if page != "404.html"
        for link in seen.look["links"]
        if link.startswith("/")
    }
    assert len(named) > 100
    connection = HTTPConnection("localhost", demo_host.port, timeout=10)
    lost = []
    for path in sorted({*named, *(f"/{page}" for page in survey)}):
        connection.request("GET", BELOW + path.removeprefix("/"))
        answer = connection.getresponse()
        answer.read()
        if answer.status != 200:
            lost.append(path)
    connection.close()
    assert lost == []
