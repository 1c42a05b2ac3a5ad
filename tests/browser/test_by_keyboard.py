"""With the keyboard alone, and with less movement: what is reached, in which order, and where one is."""

from __future__ import annotations

import re
from typing import Any

import pytest
from playwright.sync_api import Page, ViewportSize, expect

from swardcast.colours import contrast_ratio
from tests.browser.conftest import DESK, PHONE, OpenPage
from tests.browser.hosting import Host

PAGES = (
    "index.html",
    "notices/greens-renovation-2027/index.html",
    "pages/for-the-pro-shop/index.html",
    "why/index.html",
)
REACHABLE = """() => [...document.querySelectorAll("a[href], button, summary")]
  .filter((one) => one.checkVisibility({ visibilityProperty: true, contentVisibilityAuto: true }) && !one.closest("template"))
  .map((one) => one.outerHTML)"""
WHERE = """() => {
  const one = document.activeElement;
  if (one === document.body) return null;
  const style = getComputedStyle(one);
  const inside = parseFloat(style.outlineOffset) < 0;
  let ground = inside ? one : one.parentElement;
  while (ground.parentElement && getComputedStyle(ground).backgroundColor === "rgba(0, 0, 0, 0)") ground = ground.parentElement;
  const box = one.getBoundingClientRect();
  return {
    html: one.outerHTML,
    seen: one.matches(":focus-visible") && box.right > 0 && box.bottom > 0 && box.left < innerWidth && box.top < innerHeight,
    outline: style.outlineStyle, width: parseFloat(style.outlineWidth), colour: style.outlineColor,
    ground: getComputedStyle(ground).backgroundColor,
  };
}"""
MOST_STOPS = 400


def _stops(page: Page) -> list[dict[str, Any]]:
    """Where Tab leads, from the top of a page until it leaves it."""
    stops: list[dict[str, Any]] = []
    while len(stops) < MOST_STOPS:
        page.keyboard.press("Tab")
        stop = page.evaluate(WHERE)
        if stop is None or (stops and stop["html"] == stops[0]["html"]):
            return stops
        stops.append(stop)
    message = f"Tab never left {page.url}"
    raise AssertionError(message)


def _as_hex(colour: str) -> str:
    red, green, blue = (int(part) for part in re.findall(r"\d+", colour)[:3])
    return f"#{red:02x}{green:02x}{blue:02x}"


@pytest.mark.parametrize("dark", [False, True], ids=["light", "dark"])
@pytest.mark.parametrize("name", PAGES)
def test_tab_reaches_all_that_can_be_used_in_the_order_of_the_page_and_shows_where_it_is(
    demo_host: Host, open_page: OpenPage, name: str, dark: bool
) -> None:
    """WCAG 2.2: 2.1.1, 2.4.3, 2.4.7, and 3 : 1 for the mark of where one is (1.4.11)."""
    page = open_page(dark=dark, viewport=PHONE if dark else DESK, reduced_motion="reduce")
    page.goto(demo_host.page(name))
    expected = page.evaluate(REACHABLE)
    stops = _stops(page)
    assert [stop["html"] for stop in stops] == expected
    assert len(stops) > 10
    for stop in stops:
        assert stop["seen"], stop
        assert stop["outline"] == "solid", stop
        assert stop["width"] >= 2, stop
        assert contrast_ratio(_as_hex(stop["colour"]), _as_hex(stop["ground"])) >= 3, stop


def test_the_first_stop_leads_past_the_menu(demo_host: Host, open_page: OpenPage) -> None:
    page = open_page(viewport=PHONE)
    page.goto(demo_host.address)
    page.keyboard.press("Tab")
    skip = page.get_by_role("link", name="Go to the content")
    expect(skip).to_be_focused()
    expect(skip).to_be_in_viewport(ratio=1)
    page.keyboard.press("Enter")
    page.wait_for_url("**#content")
    page.keyboard.press("Tab")
    assert page.evaluate("document.querySelector('main').contains(document.activeElement)")


def test_the_menu_opens_and_closes_by_keyboard(demo_host: Host, open_page: OpenPage) -> None:
    page = open_page(viewport=PHONE)
    page.goto(demo_host.address)
    more = page.locator("nav summary")
    hidden = page.get_by_role("link", name="About and contact")
    expect(hidden).to_be_hidden()
    more.focus()
    page.keyboard.press("Enter")
    expect(hidden).to_be_visible()
    page.keyboard.press("Tab")
    expect(page.locator("nav details a").first).to_be_focused()
    more.focus()
    page.keyboard.press("Space")
    expect(hidden).to_be_hidden()


@pytest.mark.parametrize("screen", [PHONE, DESK], ids=["phone", "desk"])
def test_the_menu_takes_one_row(demo_host: Host, open_page: OpenPage, screen: ViewportSize) -> None:
    page = open_page(viewport=screen)
    page.goto(demo_host.address)
    assert page.locator("nav").first.evaluate("(one) => one.offsetHeight") < 2 * 44


def test_the_figures_of_a_picture_unfold_by_keyboard(demo_host: Host, open_page: OpenPage) -> None:
    page = open_page()
    page.goto(demo_host.page("notices/greens-renovation-2027/index.html"))
    table = page.locator("main details table").first
    expect(table).to_be_hidden()
    page.locator("main details summary").first.focus()
    page.keyboard.press("Enter")
    expect(table).to_be_visible()


@pytest.mark.parametrize(("wish", "scrolls"), [("reduce", "auto"), ("no-preference", "smooth")])
def test_who_wishes_for_less_movement_gets_none(demo_host: Host, open_page: OpenPage, wish: str, scrolls: str) -> None:
    page = open_page(reduced_motion=wish)
    page.goto(demo_host.address)
    assert page.evaluate("getComputedStyle(document.documentElement).scrollBehavior") == scrolls
    assert page.evaluate("document.getAnimations().length") == 0


def test_forced_colours_leave_signs_and_the_mark_of_where_one_is(demo_host: Host, open_page: OpenPage) -> None:
    page = open_page(forced_colors="active")
    page.goto(demo_host.address)
    sign = page.locator(".sc-answer .sc-sign")
    assert sign.is_visible()
    colour = sign.evaluate("(one) => getComputedStyle(one).fill")
    ground = page.evaluate("getComputedStyle(document.body).backgroundColor")
    assert contrast_ratio(_as_hex(colour), _as_hex(ground)) >= 3
    page.keyboard.press("Tab")
    assert page.evaluate(WHERE)["outline"] == "solid"


def test_a_folded_month_opens_by_key_and_from_the_list_of_months_and_none_is_folded_on_paper(
    demo_host: Host, open_page: OpenPage
) -> None:
    page = open_page(viewport=PHONE, reduced_motion="reduce")  # a page glides as long as its clock goes
    page.goto(demo_host.page("season/"))
    november = page.locator("#month-2027-11")
    work = november.get_by_role("link", name="Tree work beside the 16th green")
    expect(november.get_by_role("heading", name="November 2027")).to_be_visible()
    expect(november.get_by_text("5 jobs, 5 healing or closed")).to_be_visible()
    expect(work).to_be_hidden()
    november.locator("summary").focus()
    page.keyboard.press("Enter")
    expect(work).to_be_visible()
    december = page.locator("#month-2027-12")
    page.get_by_role("navigation", name="Months").get_by_role("link", name="December 2027").press("Enter")
    expect(december.get_by_text("Temporary greens on the two low holes").first).to_be_visible()
    expect(december.get_by_role("heading", name="December 2027")).to_be_in_viewport()
    page.reload()
    page.emulate_media(media="print")
    links = page.locator(".sc-month__what a").all()
    assert len(links) > 30
    assert [link.inner_text() for link in links if not link.is_visible()] == []
