"""One look at every page of a site, on a narrow phone and wider, noting what a person would stumble over."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path
from time import monotonic
from typing import Any, Final, NamedTuple
from urllib.parse import urlsplit

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, Request, Response, Route

from tests.browser.hosting import Host

NARROWEST_PX: Final = 320
"""WCAG 2.2 (W3C, 2023), 1.4.10 Reflow: 320 CSS pixels, without scrolling in two dimensions."""
DESK_PX: Final = 1280
ZOOMED_PX: Final = 640
"""A desk of 1280 pixels at 200 % zoom: WCAG 2.2, 1.4.4."""
FIRST: Final = "index.html"
NOTICE: Final = "notices/*/index.html"
LEVELS: Final = ("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa")
MORE: Final = ("best-practice",)
COLOURS: Final = ("color-contrast", "link-in-text-block")
"""The rules that look at colours, which are all that the dark theme changes."""
REFRESH: Final = re.compile(r'<meta http-equiv="refresh"[^>]*>')
"""What sends a short address on at once. Without it that page can be looked at."""
_BLOCKED: Final = "Service Worker registration blocked"
"""Said by Playwright, which was told to do so: a survey is to see the host's files, not kept ones."""
_AXE: Final[str] = Axe().axe_script
_MOST_SECONDS_TO_ANSWER: Final = 30
_LOOK: Final = """() => {
  const seen = (one) => one.checkVisibility({ visibilityProperty: true }) && !one.closest("template");
  const box = (one) => one.getBoundingClientRect();
  return {
    language: document.documentElement.lang,
    title: document.title,
    headings: [...document.querySelectorAll("h1, h2, h3, h4, h5, h6")].filter(seen).map((one) => +one.tagName[1]),
    small: [...document.querySelectorAll("button, summary, nav a")].filter(seen)
      .filter((one) => box(one).width < 24 || box(one).height < 24).map((one) => one.outerHTML),
    tabindex: document.querySelectorAll("[tabindex]").length,
    links: [...document.querySelectorAll("a[href]")].map((one) => one.href),
  };
}"""
_SHIFT: Final = """() => new Promise((done) => {
  let sum = 0;
  new PerformanceObserver((list) => { for (const one of list.getEntries()) sum += one.value; })
    .observe({ type: "layout-shift", buffered: true });
  requestAnimationFrame(() => setTimeout(() => done(sum)));
})"""
_JUDGE: Final = """(options) => axe.run(options)
  .then(({ violations, passes }) => [violations, passes.map((one) => one.id)])"""
_WIDTH: Final = "document.documentElement.scrollWidth"


class Eyes(NamedTuple):
    """How a page is looked at."""

    width_px: int
    dark: bool


EYES: Final = tuple(Eyes(width, dark) for width in (NARROWEST_PX, DESK_PX) for dark in (False, True))
"""All ways of looking: those of `make axe`."""
EYES_OF_TESTS: Final = (Eyes(NARROWEST_PX, dark=False), Eyes(DESK_PX, dark=True))
"""Each theme and each width once."""


@dataclass(frozen=True)
class Seen:
    """What one page showed."""

    violations: dict[Eyes, list[str]]
    """What axe found, for each way in which it looked."""
    rules: frozenset[str]
    """Those of axe that found something to judge."""
    others: frozenset[str]
    """Hosts that were asked beside its own."""
    unanswered: tuple[str, ...]
    console: tuple[str, ...]
    widths_px: dict[int, int]
    """Of the content, by that of the window."""
    shift: float
    """Cumulative layout shift, as browsers report it: Layout Instability (W3C Community Group draft)."""
    bytes: int
    """Of all that the first page loaded, uncompressed; zero for the others."""
    look: dict[str, Any] = field(default_factory=dict)


def pages_of(site: Path) -> list[str]:
    """Every page of a site, whoever makes it."""
    return sorted(page.relative_to(site).as_posix() for page in site.rglob("*.html"))


def kind_of(page: str) -> str:
    """Pages of a kind stand in the same place and come from the same template, such as "notices/*/index.html"."""
    parts = page.split("/")
    return "/".join((parts[0], *("*" for _ in parts[1:-1]), parts[-1])) if len(parts) > 2 else page


def one_of_each_kind(site: Path) -> dict[str, str]:
    """The largest page of each kind, which has most in it; pages of the club's own words are each a kind."""
    found: dict[str, str] = {}
    for page in pages_of(site):
        kind = page if page.startswith("pages/") else kind_of(page)
        if kind not in found or (site / page).stat().st_size > (site / found[kind]).stat().st_size:
            found[kind] = page
    return found


def stay(page: Page, host: Host) -> None:
    """Keep a page of a short address from going on to its notice."""

    def answer(route: Route) -> None:
        text = (host.site / urlsplit(route.request.url).path.removeprefix(urlsplit(host.address).path)).read_text(
            "utf-8"
        )
        route.fulfill(content_type="text/html", body=REFRESH.sub("", text))

    page.route("**/n/*/index.html", answer)


def axe(page: Page, name: str, by: Iterable[Eyes]) -> tuple[dict[Eyes, list[str]], frozenset[str]]:
    """Judge the page that is shown.

    A page of an e-mail is shown whole but made for mail programs, which have no landmarks: it is held to WCAG alone.
    A page of a short address has no style, so axe takes its background for white where a dark browser has its own.

    Returns:
        Violations as text, for each way of looking, and the rules that had something to judge.
    """
    tags = LEVELS if name.endswith("email.html") else LEVELS + MORE
    off = {rule: {"enabled": False} for rule in COLOURS} if name.startswith("n/") else {}
    # What axe would load anew is only for a rule of "experimental", which is not asked.
    whole = {"runOnly": list(tags), "rules": off, "resultTypes": ["violations"], "preload": False}
    colours = {**whole, "runOnly": [rule for rule in COLOURS if rule not in off]}
    told: dict[Eyes, list[str]] = {}
    rules: set[str] = set()
    for number, eyes in enumerate(by):
        if eyes.dark and not colours["runOnly"]:
            continue
        if number == 0:
            page.evaluate(_AXE)
        page.set_viewport_size({"width": eyes.width_px, "height": 800})
        page.emulate_media(color_scheme="dark" if eyes.dark else "light")
        violations, passed = page.evaluate(_JUDGE, colours if eyes.dark else whole)
        told[eyes] = [f"{one['id']}: {[node['html'][:200] for node in one['nodes']]}" for one in violations]
        rules.update(passed)
    page.emulate_media(color_scheme="light")
    return told, frozenset(rules)


def _openly(page: Page) -> None:
    """Unfold all that is folded, but not a page within the page."""
    page.evaluate("for (const one of document.querySelectorAll('main details:not(:has(iframe))')) one.open = true")


class _Watch:
    """What a page asks for and says, until it is forgotten."""

    def __init__(self, page: Page) -> None:
        self._page = page
        self.asked: list[Request] = []
        self.ended: list[Request] = []
        self.failed: list[Request] = []
        self.answers: list[Response] = []
        self.said: list[str] = []
        notes: dict[str, list[Any]] = {
            "request": self.asked,
            "requestfinished": self.ended,
            "requestfailed": self.failed,
            "response": self.answers,
        }
        for event, noted in notes.items():
            # Playwright marks whom it tells, and the bound method of a list cannot be marked.
            page.on(event, lambda one, noted=noted: noted.append(one))  # type: ignore[call-overload]
        page.on("console", lambda one: self.said.append(one.text))

    def forget(self) -> None:
        for noted in (self.asked, self.ended, self.failed, self.answers, self.said):
            noted.clear()

    def wait(self) -> None:
        """Until all that was asked for has come or failed, so that nothing is cut off, or told of the next page."""
        until = monotonic() + _MOST_SECONDS_TO_ANSWER
        while len(self.ended) + len(self.failed) < len(self.asked) and monotonic() < until:
            self._page.wait_for_timeout(10)


def surveyor(page: Page, host: Host, at: datetime) -> Callable[[str, Iterable[Eyes]], Seen]:
    """Make ready to look at the pages of a site, one after the other in one window.

    Args:
        page: the window.
        host: where the site is.
        at: what the clock says all the time.

    Returns:
        A function that looks at a page; axe, which takes most of the time, looks with the eyes given.
    """
    page.clock.set_fixed_time(at)
    watch = _Watch(page)
    stay(page, host)
    own = urlsplit(host.address).netloc

    def look(name: str, by: Iterable[Eyes]) -> Seen:
        page.set_viewport_size({"width": DESK_PX, "height": 900})
        watch.forget()
        page.goto(host.page(name))
        shift = page.evaluate(_SHIFT)
        watch.wait()
        size = sum(len(answer.body()) for answer in watch.answers) if name == FIRST else 0
        _openly(page)
        widths = {}
        for width in (ZOOMED_PX, NARROWEST_PX):
            page.set_viewport_size({"width": width, "height": 800})
            widths[width] = page.evaluate(_WIDTH)
        seen = page.evaluate(_LOOK)
        seen["links"] = [link.removeprefix(host.origin) for link in seen["links"]]
        violations, rules = axe(page, name, by)
        watch.wait()
        return Seen(
            violations=violations,
            rules=rules,
            others=frozenset(filter(None, (urlsplit(one.url).netloc for one in watch.asked))) - {own},
            unanswered=(
                *(one.url.removeprefix(host.origin) for one in watch.failed),
                *(one.url.removeprefix(host.origin) for one in watch.answers if not one.ok),
            ),
            console=tuple(line for line in watch.said if _BLOCKED not in line),
            widths_px=widths,
            shift=shift,
            bytes=size,
            look=seen,
        )

    return look


def eyes_for(name: str, largest: Iterable[str]) -> tuple[Eyes, ...]:
    """With which eyes axe looks at a page in the tests: in each theme and at each width once, at the largest of each kind.

    Notices, which differ most, are each looked at once. Other pages of a kind are alike but for what was typed;
    `make axe` has all eyes look at all of them.
    """
    return EYES_OF_TESTS if name in largest else EYES_OF_TESTS[:1] if kind_of(name) == NOTICE else ()
