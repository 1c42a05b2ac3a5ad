"""A real browser, one to a test process, and sites on a host of their own."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
from collections.abc import Callable, Iterator, Mapping
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, Playwright, ViewportSize, sync_playwright

from swardcast.cli.build_pdf import BROWSERS
from tests.browser.hosting import Host, hosted
from tests.browser.survey import Seen, eyes_for, one_of_each_kind, pages_of, surveyor
from tests.conftest import DEMO, NO_BROWSER, built_once, shared_out

OpenPage = Callable[..., Page]
PrivatePage = Callable[..., Path]
BELOW = "/a/b/"
"""A host may show the site in a folder within a folder."""
PHONE, DESK = ViewportSize(width=360, height=800), ViewportSize(width=1280, height=900)
WITHDRAWN = "trees-16-2027"
MOMENT = datetime.fromisoformat("2027-09-14T09:35:00+01:00")
"""Five minutes after the demo was built."""


@pytest.fixture(scope="session")
def browser_path() -> str:
    found = next(filter(None, map(shutil.which, BROWSERS)), None)
    if found:
        return found
    told = f"{NO_BROWSER} on the PATH ({', '.join(BROWSERS)})"
    if os.environ.get("SWARDCAST_BROWSER") == "required":
        pytest.fail(f"{told}, and SWARDCAST_BROWSER says that one is required", pytrace=False)
    pytest.skip(told)


@pytest.fixture(scope="session", autouse=True)
def _before_anything_is_built(browser_path: str) -> None:
    """Without a browser no site is built for these tests."""


@pytest.fixture(scope="package")
def playwright() -> Iterator[Playwright]:
    """Closed with the last test of this folder: its event loop stays in the way of others' as long as it is open."""
    with sync_playwright() as started:
        yield started


@pytest.fixture(scope="package")
def browser(browser_path: str, playwright: Playwright) -> Iterator[Browser]:
    # Chromium refuses its sandbox to root, as which tests run in containers.
    arguments = ["--no-sandbox"] if hasattr(os, "geteuid") and os.geteuid() == 0 else []
    started = playwright.chromium.launch(executable_path=browser_path, args=arguments)
    yield started
    started.close()


@pytest.fixture
def open_page(browser: Browser) -> Iterator[OpenPage]:
    """A page of a person of their own: nothing is kept from one to the next. It may not have a fault of script."""
    contexts, faults = [], []

    def opened(*, dark: bool = False, at: datetime | None = MOMENT, keeps: bool = False, **more: Any) -> Page:
        settings: dict[str, Any] = {
            "viewport": DESK,
            "color_scheme": "dark" if dark else "light",
            "service_workers": "allow" if keeps else "block",
            "timezone_id": "America/New_York",  # words on a page are of the club's time, wherever it is read
            **more,
        }
        context = browser.new_context(**settings)
        context.set_default_timeout(30_000)
        contexts.append(context)
        page = context.new_page()
        if at is not None:
            page.clock.set_fixed_time(at)
        page.on("pageerror", lambda fault: faults.append(str(fault)))
        return page

    yield opened
    for context in contexts:
        context.close()
    assert not faults


@pytest.fixture(scope="session")
def private_page(
    tmp_path_factory: pytest.TempPathFactory, run_swardcast: Callable[..., subprocess.CompletedProcess[str]]
) -> PrivatePage:
    """Gives the page that a command writes about the demo."""

    def made(command: str, *asked: str) -> Path:
        page = tmp_path_factory.mktemp(command) / "page.html"
        done = run_swardcast(command, "--club", str(DEMO), *asked, "--page", str(page))
        assert done.returncode == 0, done.stderr
        return page

    return made


@pytest.fixture(scope="package")
def demo_host(demo_site: Path) -> Iterator[Host]:
    """The demo, in a folder of a host."""
    with hosted(demo_site, BELOW) as host:
        yield host


@pytest.fixture(scope="package")
def root_host(demo_site: Path) -> Iterator[Host]:
    """The demo at the root of a host, where its page for a missing address belongs."""
    with hosted(demo_site) as host:
        yield host


@pytest.fixture(scope="package")
def survey(tmp_path_factory: pytest.TempPathFactory, browser: Browser, root_host: Host) -> Mapping[str, Seen]:
    """What every page of the demo showed. All processes that ask for it look at pages until none is left."""
    largest = set(one_of_each_kind(root_host.site).values())
    # Those that take longest come first, so that no process waits long for the last one.
    names = sorted(pages_of(root_host.site), key=lambda name: -len(eyes_for(name, largest)))
    context = browser.new_context(viewport=DESK, service_workers="block")
    look = surveyor(context.new_page(), root_host, MOMENT)
    seen = shared_out(tmp_path_factory, "survey", names, lambda name: look(name, eyes_for(name, largest)))
    context.close()
    return seen


@pytest.fixture(scope="session")
def winter_site(
    tmp_path_factory: pytest.TempPathFactory, run_swardcast: Callable[..., subprocess.CompletedProcess[str]]
) -> Path:
    """The demo on a morning without an entry, with a notice that was withdrawn and without a look of its own."""

    def build(output: Path) -> str:
        club = Path(shutil.copytree(DEMO, output.parent / "club"))
        plan = club / "plan/2027-autumn-winter.yaml"
        words, job = plan.read_text(encoding="utf-8"), f"  - id: {WITHDRAWN}\n"
        assert job in words
        reason = f"{job}    withdrawn: {{at: 2027-11-01 09:00, because: entered twice}}\n"
        plan.write_text(words.replace(job, reason), encoding="utf-8")
        settings = club / "club.yaml"
        words = settings.read_text(encoding="utf-8")
        settings.write_text(re.sub(r"^look:\n(?: .*\n)+", "", words, flags=re.MULTILINE), encoding="utf-8")
        (club / "badge.svg").unlink()
        done = run_swardcast("build", "--club", str(club), "--output", str(output), "--as-of", "2027-12-06 08:00")
        return "" if done.returncode == 0 else done.stderr or "it said nothing"

    return built_once(tmp_path_factory, "winter-site", build)


@pytest.fixture(scope="package")
def winter_host(winter_site: Path) -> Iterator[Host]:
    with hosted(winter_site, BELOW) as host:
        yield host
