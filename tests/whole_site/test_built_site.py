"""The whole site as built: pages, links, feed, the plain theme, the same bytes each time, nothing hostile."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Callable
from email.utils import parsedate_to_datetime
from pathlib import Path

import feedparser
import pytest
from lxml import etree, html

from swardcast.compose import Bulletin
from swardcast.records.folder import ClubRecords
from tests.conftest import DEMO

Run = Callable[..., subprocess.CompletedProcess[str]]
AS_OF = ("--as-of", "2027-09-14 09:30")


def test_each_job_has_a_notice_under_its_id(demo_site: Path, demo_records: ClubRecords) -> None:
    for name in demo_records.jobs:
        assert (demo_site / "notices" / name / "index.html").is_file()


def test_every_link_inside_the_site_leads_somewhere(demo_site: Path) -> None:
    for page in demo_site.rglob("*.html"):
        for link in html.parse(page).getroot().iterlinks():
            target = link[2].split("#")[0]
            if target and "://" not in target and not target.startswith(("mailto:", "tel:")):
                # The page for a missing address is shown at any depth, so it begins at the root.
                place = demo_site / target[1:] if page.name == "404.html" else (page.parent / target).resolve()
                assert (place / "index.html" if place.is_dir() else place).is_file(), (page, target)


def test_the_home_page_says_the_sentence_and_the_dates(demo_site: Path, demo_bulletin: Bulletin) -> None:
    text = " ".join(html.parse(demo_site / "index.html").getroot().text_content().split())
    assert "The course is open" in text
    for line in demo_bulletin.status.lines:
        assert line.where in text
        for fact in line.dates:
            assert fact.value in text or fact.value[1:] in text


def test_no_page_has_a_script_or_a_style_of_its_own(demo_site: Path) -> None:
    for page in demo_site.rglob("*.html"):
        if page.name == "email.html":  # a block for mail programs, which know no style sheets
            continue
        root = html.parse(page).getroot()
        # JSON-LD is data, which no browser runs.
        own = "//script[not(@src or @type='application/ld+json')]"
        assert not root.xpath(f"{own} | //style | //*[@style] | //*[starts-with(name(@*), 'on')]"), page


def test_a_notice_reads_well_in_pelicans_own_plain_theme(run_swardcast: Run, tmp_path: Path) -> None:
    output = tmp_path / "plain"
    done = run_swardcast("build", "--club", str(DEMO), "--output", str(output), *AS_OF, "--theme", "simple")
    assert done.returncode == 0, done.stderr
    page = html.parse(output / "notices" / "greens-renovation-2027" / "index.html").getroot()
    headings = [heading.text for heading in page.xpath("//section/h2")]
    assert headings == [
        "Day by day", "What you see now", "Competitions and visitors' days", "Why now", "Healing day by day", "In numbers",
        "What changed and why", "What you can do", "The Rules", "Please take care", "How the date is worked out",
        "Who decides and whom to ask", "What happened",
    ]  # fmt: skip
    assert "What is different" in (output / "index.html").read_text(encoding="utf-8")


def test_the_feed_is_rss_that_a_reader_accepts(demo_site: Path) -> None:
    """RSS 2.0 and the RSS Advisory Board's profile: self link, guids, RFC 822 dates, absolute links, full content."""
    data = (demo_site / "feeds" / "status.rss").read_bytes()
    feed = feedparser.parse(data)
    assert not feed.bozo
    assert feed.version == "rss20"
    root = etree.fromstring(data)
    self_link = root.xpath("//channel/atom:link[@rel='self']/@href", namespaces={"atom": "http://www.w3.org/2005/Atom"})
    assert self_link == ["https://quillhaven.example/feeds/status.rss"]
    guids = root.xpath("//item/guid")
    assert len({guid.text for guid in guids}) == len(guids) > 20
    assert {guid.get("isPermaLink") for guid in guids} == {"false"}
    for item in root.xpath("//item"):
        assert parsedate_to_datetime(item.findtext("pubDate")).tzinfo is not None
        assert item.findtext("link").startswith("https://quillhaven.example/")
        assert item.findtext("{http://purl.org/rss/1.0/modules/content/}encoded")


def test_a_later_feed_keeps_every_earlier_item_as_it_was(
    demo_bulletin_at: Callable[[str], Bulletin], demo_bulletin: Bulletin
) -> None:
    earlier = demo_bulletin_at("2027-09-01 08:00")
    known = {item.id: item for item in demo_bulletin.items}
    assert len(earlier.items) < len(demo_bulletin.items)
    for item in earlier.items:
        assert known[item.id] == item


@pytest.mark.parametrize("theme", [(), ("--theme", "simple")], ids=["our theme", "a theme that takes names as HTML"])
def test_hostile_words_do_no_harm(club: Path, run_swardcast: Run, tmp_path: Path, theme: tuple[str, ...]) -> None:
    entry = club / "log" / "2027" / "2027-09-13-1630-hostile.md"
    entry.write_text(
        "---\nat: 2027-09-13 16:30\nkind: note to members\njob: greens-renovation-2027\n---\n"
        "<script>alert(1)</script> [x](javascript:alert(2)) <img src=x onerror=alert(3)>\n",
        encoding="utf-8",
    )
    held_up = (
        "---\nat: 2027-09-14 07:00\nkind: held up\njob: greens-renovation-2027\nsurfaces: green 18\nbecause: {}\n---\n"
    )
    (entry.parent / "2027-09-14-0700-hostile.md").write_text(held_up.format("<img src=x onerror=alert(4)>"), "utf-8")
    for file, told, hostile in (
        ("plan/2027-late-summer.yaml", "title: Deep tining", 'title: <b onclick=x>" onclick="x& Deep tining'),
        ("club.yaml", "name: Quillhaven", "name: <b onclick=x></title><b onclick=x>Quillhaven"),
    ):
        text = (club / file).read_text(encoding="utf-8")
        assert told in text
        (club / file).write_text(text.replace(told, hostile, 1), encoding="utf-8")
    output = tmp_path / "site"
    done = run_swardcast("build", "--club", str(club), "--output", str(output), *AS_OF, *theme)
    assert done.returncode == 0, done.stderr
    for page in output.rglob("*.html"):
        root = html.parse(page).getroot()
        assert not root.xpath(
            "//script[not(@src or @type='application/ld+json')] | //img[@onerror]"
            " | //*[@onclick] | //a[starts-with(@href, 'javascript')]"
        ), page
        scripts = root.xpath("//script/@src")
        assert all(re.fullmatch(r"(\./|(\.\./)*|/)theme/js/(page|copy)\.js", script) for script in scripts), page
    for ending in ("rss", "atom"):
        feed = (output / "feeds" / f"status.{ending}").read_bytes()
        assert not feedparser.parse(feed).bozo
        assert "<script" not in "".join(entry.content[0].value for entry in feedparser.parse(feed).entries)
    # A reader takes descriptions of RSS as HTML.
    descriptions = etree.parse(output / "feeds" / "status.rss").xpath("//description/text()")
    assert any("&lt;b onclick" in description for description in descriptions)
    assert not any("<" in description for description in descriptions)
