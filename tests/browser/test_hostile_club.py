"""A club folder in which somebody typed to do harm: in a browser nothing of it runs, asks another host, or leads away."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from lxml.html import fragment_fromstring
from playwright.sync_api import Dialog, Page, Route, expect

from tests.browser.conftest import OpenPage
from tests.browser.hosting import Host, hosted
from tests.browser.survey import one_of_each_kind, stay
from tests.conftest import DEMO, built_once

Run = Callable[..., subprocess.CompletedProcess[str]]
EVIL = "https://evil.example"
SCRIPT = f"</script></title></style><script>alert(1)</script><img src={EVIL}/a.png onerror=alert(2)>"
"""Words that end what they may stand in, and would run twice and ask twice."""
MARKDOWN = f"""\
{SCRIPT} ]]> <svg onload=alert(3)> <iframe src="{EVIL}"></iframe> <style>@import "{EVIL}/a.css";</style>
<base href="{EVIL}/"> <form action="{EVIL}"><button>x</button></form> <meta http-equiv="refresh" content="0;url={EVIL}">

![picture]({EVIL}/b.png) [a](javascript:alert(4)) [b](JaVaScRiPt&colon;alert(5)) [c](data:text/html,<script>alert(6)</script>)
[d](vbscript:x) [e][far] <javascript:alert(7)> [f](  java&#10;script:alert(8)) [g](file:///etc/passwd) [h](https://good.example/)
[i](mailto:office@quillhaven.example) [j](tel:+441632960317) [k](blob:x) [l](intent://x)

[far]: javascript:alert(9) "title' onclick=alert(10) x"
"""
TITLE = f"%0d%0aBcc: spy@evil.example ]]> {SCRIPT}"
SCHEMES = {"http:", "https:", "mailto:", "tel:"}
LEADS = """() => [...document.querySelectorAll("[href], [src], [action], [data], [srcset], [formaction]")].flatMap((one) =>
  ["href", "src", "action", "data", "srcset", "formaction"].filter((name) => one.hasAttribute(name) && !one.closest("svg"))
    .map((name) => [one.localName, new URL(one.getAttribute(name), document.baseURI).href]))"""


def _changed(file: Path, told: str, hostile: str) -> None:
    words = file.read_text(encoding="utf-8")
    assert told in words, file
    file.write_text(words.replace(told, hostile, 1), encoding="utf-8")


@pytest.fixture(scope="session")
def hostile_site(tmp_path_factory: pytest.TempPathFactory, run_swardcast: Run) -> Path:
    def build(output: Path) -> str:
        club = Path(shutil.copytree(DEMO, output.parent / "club"))
        quoted = TITLE.replace('"', '\\"')
        plan = club / "plan/2027-late-summer.yaml"
        _changed(plan, "title: Hollow tining, scarifying and sanding the greens", f'title: "{quoted}"')
        _changed(plan, "says: Free relief", f"says: '{SCRIPT} Free relief")
        _changed(plan, "stance or line.\n", "stance or line.'\n")
        _changed(plan, "- The top of the greens", f"- {SCRIPT} The top of the greens")
        _changed(club / "club.yaml", "name: Quillhaven Golf Club", f'name: "Quillhaven {SCRIPT}"')
        _changed(club / "club.yaml", "office: the course", f"office: {SCRIPT} the course")
        _changed(club / "club.yaml", "decides: The", f"decides: {SCRIPT} The")
        _changed(club / "fixtures.ics", "SUMMARY:Autumn medal", "SUMMARY:Medal\\nEND:VEVENT <script>alert(1)</script>")
        morning = club / "log/2027/2027-09-14-0650-morning.md"
        _changed(morning, "why: The 5th", f"why: {SCRIPT} The 5th")
        _changed(morning, "Milder at last.", f"{MARKDOWN}\nMilder at last.")
        note = "---\nat: 2027-09-14 07:00\nkind: note to members\njob: greens-renovation-2027\n---\n\n"
        (club / "log/2027/2027-09-14-0700-note.md").write_text(note + MARKDOWN, encoding="utf-8")
        done = run_swardcast(
            "build", "--club", str(club), "--output", str(output), "--as-of", "2027-09-14 09:30", "--eml"
        )
        return "" if done.returncode == 0 else done.stderr or "it said nothing"

    return built_once(tmp_path_factory, "hostile-site", build)


@pytest.fixture(scope="module")
def hostile_host(hostile_site: Path) -> Iterator[Host]:
    with hosted(hostile_site) as host:
        yield host


class _Harm:
    """What a page did that it should not."""

    def __init__(self, page: Page, host: Host) -> None:
        self.ran: list[str] = []
        self.asked: list[str] = []
        self.said: list[str] = []

        def dismissed(dialog: Dialog) -> None:
            self.ran.append(dialog.message)
            dialog.dismiss()

        def refused(route: Route) -> None:
            self.asked.append(route.request.url)
            route.abort()

        page.on("dialog", dismissed)
        # What a policy stops is told as a request too, but is never sent, so it gets to no route.
        page.route(re.compile(f"^(?!{re.escape(host.address)})"), refused)
        page.on("console", lambda one: self.said.append(one.text) if "Content Security Policy" in one.text else None)


def test_nothing_that_was_typed_runs_asks_another_host_or_leads_elsewhere_than_links_may(
    hostile_host: Host, open_page: OpenPage
) -> None:
    page = open_page()
    harm = _Harm(page, hostile_host)
    stay(page, hostile_host)
    names = {*one_of_each_kind(hostile_host.site).values(), *_pages_of_the_job(hostile_host.site)}
    shown = 0
    for name in sorted(names):
        page.goto(hostile_host.page(name))
        shown += "<script>alert(1)</script>" in page.inner_text("body")
        for element, address in page.evaluate(LEADS):
            assert address.partition(":")[0] + ":" in SCHEMES, (name, element, address)
            assert element == "a" or address.startswith((hostile_host.address, "https://quillhaven.example")), (
                name,
                address,
            )
        assert (harm.ran, harm.asked, harm.said) == ([], [], []), name
    assert shown >= len(names) / 2  # the club's name and office stand on almost all


def _pages_of_the_job(site: Path) -> Iterator[str]:
    yield "index.html"
    for page in (site / "notices/greens-renovation-2027").glob("*.html"):
        yield page.relative_to(site).as_posix()


def test_good_links_of_the_same_words_are_left(hostile_host: Host, open_page: OpenPage) -> None:
    page = open_page()
    page.goto(hostile_host.page("notices/greens-renovation-2027/index.html"))
    links = page.locator(".sc-notice .sc-own a, .sc-notice a").evaluate_all("(all) => all.map((one) => one.href)")
    for address in ("https://good.example/", "mailto:office@quillhaven.example", "tel:+441632960317"):
        assert address in links


def test_scripts_run_and_the_last_status_is_kept_all_the_same(hostile_site: Path, open_page: OpenPage) -> None:
    page = open_page(keeps=True)
    with hosted(hostile_site) as host:
        harm = _Harm(page, host)
        page.goto(host.address)
        page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    page.context.set_offline(True)
    page.reload()
    expect(page.locator("[data-offline-bar]")).to_be_visible()
    assert "Georgia" in page.locator("h1").evaluate("(one) => getComputedStyle(one).fontFamily")
    assert (harm.ran, harm.asked, harm.said) == ([], [], [])


def test_calendar_and_mail_have_no_line_that_was_typed(hostile_site: Path) -> None:
    """A line of its own would begin with its name: RFC 5545, 3.1, and RFC 5322, 2.2."""
    calendar = (hostile_site / "calendar.ics").read_bytes().decode()
    assert len(re.findall(r"^BEGIN:VEVENT\r$", calendar, re.MULTILINE)) == len(
        re.findall(r"^END:VEVENT", calendar, re.MULTILINE)
    )
    for draft in hostile_site.rglob("*.eml"):
        head = draft.read_bytes().replace(b"\r\n", b"\n").partition(b"\n\n")[0]
        assert not re.search(rb"^(bcc|cc|to):.*evil", head, re.MULTILINE | re.IGNORECASE), draft


def test_feeds_hold_only_links_that_may_be_there(hostile_site: Path) -> None:
    """Programs that read feeds have no policy of ours."""
    entries = json.loads((hostile_site / "feeds/status.json").read_bytes())["items"]
    told = [fragment_fromstring(entry["content_html"], create_parent="div") for entry in entries]
    links = {str(link) for one in told for link in one.xpath(".//@href | .//@src")}
    assert {"https://good.example/", "tel:+441632960317"} <= links
    assert {f"{link.partition(':')[0]}:" for link in links} <= SCHEMES
    loads = ".//script | .//style | .//iframe | .//img | .//form | .//base"
    assert not [one for words in told for one in words.xpath(loads)]


BREACHES = {
    "a script in the page": "<script>alert(1)</script>",
    "an event": "<img src=nowhere.png onerror=alert(1)>",
    "a script of another host": f"<script src={EVIL}/a.js></script>",
    "a picture of another host": f"<img src={EVIL}/a.png>",
    "a style of another host": f"<link rel=stylesheet href={EVIL}/a.css>",
    "a style in the page": "<style>main { display: none }</style>",
    "a frame of another host": f"<iframe src={EVIL}/></iframe>",
    "an object": f"<object data={EVIL}/a.html></object>",
    "another base": f"<base href={EVIL}/>",
    "an address that is a script": "<iframe src='javascript:parent.alert(1)'></iframe>",
}


@pytest.mark.parametrize("breach", BREACHES.values(), ids=BREACHES)
def test_if_words_came_through_as_html_the_policy_of_the_page_alone_would_stop_them(
    demo_site: Path, open_page: OpenPage, tmp_path: Path, breach: str
) -> None:
    """Without the headers of a host; and the same page without its policy shows that there was something to stop."""
    written = (demo_site / "pages/about/index.html").read_text(encoding="utf-8")
    policy = re.compile(r'<meta http-equiv="Content-Security-Policy"[^>]*>')
    assert policy.search(written)
    for name, words in (("guarded", written), ("open", policy.sub("", written))):
        place = tmp_path / name / "pages/about"
        shutil.copytree(demo_site / "theme", tmp_path / name / "theme")
        place.mkdir(parents=True)
        (place / "index.html").write_text(words.replace("</h1>", f"</h1>{breach}", 1), encoding="utf-8")
        with hosted(tmp_path / name) as host:
            page = open_page()
            harm = _Harm(page, host)
            page.goto(host.page("pages/about/index.html"))
            hidden = page.locator("main").is_hidden() or page.evaluate(f"document.baseURI.startsWith('{EVIL}')")
            did = bool(harm.ran or harm.asked or hidden)
            assert did == (name == "open"), (name, harm.ran, harm.asked)
            assert bool(harm.said) == (name == "guarded")
