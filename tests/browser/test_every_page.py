"""Every page of the demo in a real browser: read by axe-core, and alone with its own host."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest

from tests.browser.conftest import WITHDRAWN, OpenPage
from tests.browser.hosting import Host
from tests.browser.survey import EYES_OF_TESTS, Eyes, Seen, axe, one_of_each_kind, pages_of, stay

Survey = Mapping[str, Seen]
EXPECTED_KINDS = {
    "index.html", "404.html", "email.html", "archive/index.html", "archive/*/index.html", "season/index.html",
    "n/*/index.html", "notices/index.html", "notices/*/index.html",
    "notices/*/email.html", "notices/*/poster.html", "pages/about/index.html", "pages/follow/index.html",
    "pages/for-the-pro-shop/index.html", "pages/how-dates-are-worked-out/index.html",
    "pages/how-good-our-dates-have-been/index.html", "surfaces/*/index.html", "why/index.html", "why/*/index.html",
    "work/*/index.html",
}  # fmt: skip


def _of_each_kind(site: Path) -> list[str]:
    """Without the page for a missing address, which belongs at a root, and short addresses, which lead on at once."""
    return sorted(name for kind, name in one_of_each_kind(site).items() if kind not in ("404.html", "n/*/index.html"))


def test_the_survey_saw_every_kind_of_page_and_found_something_to_judge(survey: Survey, demo_site: Path) -> None:
    assert set(one_of_each_kind(demo_site)) >= EXPECTED_KINDS
    judged = frozenset[str]().union(*(seen.rules for seen in survey.values()))
    assert judged >= {
        "color-contrast", "target-size", "heading-order", "landmark-one-main", "link-name", "button-name", "list",
        "html-has-lang", "image-alt", "svg-img-alt", "skip-link", "summary-name",
    }  # fmt: skip


@pytest.mark.parametrize(
    "eyes", EYES_OF_TESTS, ids=lambda eyes: f"{eyes.width_px} px {'dark' if eyes.dark else 'light'}"
)
def test_axe_finds_no_fault(survey: Survey, demo_site: Path, eyes: Eyes) -> None:
    judged = {page: seen.violations[eyes] for page, seen in survey.items() if eyes in seen.violations}
    expected = one_of_each_kind(demo_site)
    if eyes.dark:
        del expected["n/*/index.html"]  # it has no colours of its own
    assert set(judged) >= set(expected.values())
    assert {page: told for page, told in judged.items() if told} == {}


def test_axe_finds_no_fault_in_winter(winter_host: Host, open_page: OpenPage) -> None:
    """No entry for months, a notice that was withdrawn, a club without a look of its own."""
    page = open_page(at=None)
    stay(page, winter_host)
    short = next(
        name for name in pages_of(winter_host.site)
        if name.startswith("n/") and f"notices/{WITHDRAWN}/" in (winter_host.site / name).read_text("utf-8")
    )  # fmt: skip
    for name in ("index.html", "notices/index.html", short, f"notices/{WITHDRAWN}/index.html"):
        page.goto(winter_host.page(name))
        told, _ = axe(page, name, EYES_OF_TESTS)
        assert {eyes: found for eyes, found in told.items() if found} == {}, name
    assert "withdr" in page.inner_text("main")


def test_no_page_asks_another_host(survey: Survey) -> None:
    assert {page: seen.others for page, seen in survey.items() if seen.others} == {}


def test_all_that_a_page_loads_is_there_and_nothing_is_said_on_the_console(survey: Survey) -> None:
    assert {page: seen.unanswered for page, seen in survey.items() if seen.unanswered} == {}
    assert {page: seen.console for page, seen in survey.items() if seen.console} == {}


def test_below_a_folder_of_a_host_each_kind_of_page_has_its_style(demo_host: Host, open_page: OpenPage) -> None:
    page = open_page()
    failed: list[str] = []
    page.on("response", lambda answer: failed.append(answer.url) if not answer.ok else None)
    for name in _of_each_kind(demo_host.site):
        page.goto(demo_host.page(name))
        assert page.url.startswith(demo_host.address)
    assert failed == []


def test_from_a_folder_each_kind_of_page_has_its_style(demo_site: Path, open_page: OpenPage) -> None:
    page = open_page()
    failed: list[str] = []
    page.on("requestfailed", lambda request: failed.append(request.url))
    for name in _of_each_kind(demo_site):
        page.goto((demo_site / name).as_uri())
        if page.locator(".sc-sheet").count():
            font = page.locator("h1").evaluate("(one) => getComputedStyle(one).fontFamily")
            assert "Georgia" in font, name
    assert failed == []


def test_an_address_that_is_not_there_shows_the_clubs_own_page(root_host: Host, open_page: OpenPage) -> None:
    page = open_page()
    answer = page.goto(root_host.page("notices/long/gone/index.html"))
    assert answer is not None
    assert answer.status == 404
    page.get_by_role("main").get_by_role("link").first.click()
    assert page.url.startswith(root_host.address)
    assert page.locator("h1").is_visible()
