"""What a browser may load and run: each page says it before it loads anything, and hosts say no less.

Names of directives and what they mean: Content Security Policy Level 3 (W3C Working Draft), from memory.
"""

from __future__ import annotations

import re
import runpy
from pathlib import Path

from lxml import html
from markdown import Markdown
from pelican.settings import DEFAULT_CONFIG

from swardcast.outlets.policy import HEADERS_PATH, OF_HOSTS, OF_ONE_FILE, OF_PAGES
from tests.conftest import ROOT

SAID = re.compile(r"<meta http-equiv=\"Content-Security-Policy\" content=\"([^\"]+)\">")
LOADS = re.compile(r"<(?:link|script|img|iframe|style|svg)\b|<meta http-equiv=\"refresh\"")


def _directives(policy: str) -> dict[str, set[str]]:
    return {name: set(sources) for name, *sources in (one.split() for one in policy.split(";"))}


def test_every_page_but_those_for_mail_programs_says_its_policy_before_it_loads_anything(demo_site: Path) -> None:
    kinds = set()
    for page in demo_site.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        said, first = SAID.search(text), LOADS.search(text)
        if page.name == "email.html":
            assert said is None, page
            continue
        assert said is not None, page
        assert first is None or said.start() < first.start(), page
        (policy,) = html.fromstring(text).xpath("//meta[@http-equiv='Content-Security-Policy']/@content")
        assert policy == OF_PAGES, page
        kinds.add(page.name)
    assert {"index.html", "404.html", "poster.html"} <= kinds


def test_no_script_and_no_style_stands_in_a_page(demo_site: Path) -> None:
    """So no policy needs an exception. Data that no browser runs (application/ld+json) are no script."""
    for page in demo_site.rglob("*.html"):
        root = html.fromstring(page.read_bytes())
        assert not root.xpath("//script[not(@src) and not(@type='application/ld+json')]"), page
        assert not root.xpath("//@*[starts-with(name(), 'on')]"), page
        if page.name != "email.html":
            assert not root.xpath("//style | //@style"), page


def test_columns_of_a_table_in_a_page_of_the_clubs_own_need_no_style() -> None:
    settings = runpy.run_path(str(ROOT / "site_src/pelicanconf.py"))["MARKDOWN"]
    assert settings["extension_configs"].keys() == DEFAULT_CONFIG["MARKDOWN"]["extension_configs"].keys()
    table = "| a | b |\n|--:|:-:|\n| 1 | 2 |"
    written = Markdown(extensions=[*settings["extension_configs"]], **settings).convert(table)
    cells = html.fromstring(written).xpath("//td")
    assert [dict(cell.attrib) for cell in cells] == [{"align": "right"}, {"align": "center"}]


def test_all_that_is_not_named_is_forbidden_and_nothing_comes_from_another_host() -> None:
    for policy in (OF_PAGES, OF_HOSTS, OF_ONE_FILE):
        told = _directives(policy)
        assert told["default-src"] == told["base-uri"] == told["form-action"] == {"'none'"}
        assert {one for sources in told.values() for one in sources} <= {"'none'", "'self'", "file:", "'unsafe-inline'"}
    assert _directives(OF_PAGES)["script-src"] == {"'self'", "file:"}
    assert _directives(OF_HOSTS)["script-src"] == {"'self'"}
    assert "script-src" not in _directives(OF_ONE_FILE)


def test_hosts_say_what_pages_say_but_for_styles_of_emails_and_for_frames() -> None:
    pages, hosts = _directives(OF_PAGES), _directives(OF_HOSTS)
    pages = {name: sources - {"file:"} for name, sources in pages.items()}
    pages["style-src"] |= {"'unsafe-inline'"}
    assert hosts == {**pages, "frame-ancestors": {"'self'"}}


def test_the_file_for_hosts_has_the_policy_on_all_paths_and_lets_others_read_the_status(demo_site: Path) -> None:
    assert (demo_site / HEADERS_PATH).read_text(encoding="utf-8").splitlines()[1:] == [
        "/*",
        f"  Content-Security-Policy: {OF_HOSTS}",
        "  X-Content-Type-Options: nosniff",
        "/status.json",
        "  Access-Control-Allow-Origin: *",
        "/season.json",
        "  Access-Control-Allow-Origin: *",
    ]


def test_the_readme_has_the_policy_for_a_server_of_ones_own() -> None:
    assert f'add_header Content-Security-Policy "{OF_HOSTS}" always;' in (ROOT / "README.md").read_text(
        encoding="utf-8"
    )
