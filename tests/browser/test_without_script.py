"""Without script everything is there: a script only adds what it alone can do."""

from __future__ import annotations

import pytest

from tests.browser.conftest import OpenPage
from tests.browser.hosting import Host
from tests.browser.survey import one_of_each_kind

ADDED = {
    "pages/for-the-pro-shop/index.html": "Copy the ",
    "pages/follow/index.html": "The last course status is kept here.",
}
"""Pages on which a script adds buttons, and words of what it adds."""


@pytest.fixture
def texts(demo_host: Host, open_page: OpenPage) -> dict[str, tuple[str, str]]:
    """What each kind of page says in its main part, without script and with it."""
    without, with_script = open_page(java_script_enabled=False, at=None), open_page()
    said = {}
    for name in one_of_each_kind(demo_host.site).values():
        if name.startswith("n/") or name in ("404.html", "email.html") or name.endswith("/email.html"):
            continue
        for page in (without, with_script):
            page.goto(demo_host.page(name))
        said[name] = (without.locator("main").inner_text(), with_script.locator("main").inner_text())
    return said


def test_every_kind_of_page_says_the_same_with_and_without_script(texts: dict[str, tuple[str, str]]) -> None:
    assert len(texts) > 10
    for name, (without, with_script) in texts.items():
        assert len(without) > 40, name
        if name in ADDED:
            assert with_script.count(ADDED[name]) > without.count(ADDED[name]), name
            # Nothing is lost: what stands there without script comes in the same order with it.
            rest = iter(with_script.split())
            assert all(word in rest for word in without.split()), name
        else:
            assert with_script == without, name


def test_the_menu_unfolds_without_script(demo_host: Host, open_page: OpenPage) -> None:
    page = open_page(java_script_enabled=False, at=None, viewport={"width": 360, "height": 800})
    page.goto(demo_host.address)
    page.locator("nav summary").click()
    page.get_by_role("link", name="About and contact").click()
    assert page.url.endswith("/pages/about/index.html")
