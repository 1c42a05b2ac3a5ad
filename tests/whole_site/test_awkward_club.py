"""A club whose address and words are awkward, built whole."""

from __future__ import annotations

import json
import re
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from lxml import etree, html

from swardcast.outlets.own_words import own_words_html
from tests.outlook.small_club import SmallClub

AS_TYPED, AS_SENT = "https://club.example/gréens", "https://club.example/gr%C3%A9ens"
"""RFC 3986, section 2.5: the octets of UTF-8, percent-encoded."""
WORDS = (
    "[a]({author}me) [b]({static}/x.pdf) [c]({filename}y.md) [d](|filename|z.md) [e]({index}) [f]({category}news)\n"
    "[g](https://a.example/ \"href='{author}me'\")\n"
)


@pytest.fixture(scope="module")
def site(
    tmp_path_factory: pytest.TempPathFactory, run_swardcast: Callable[..., subprocess.CompletedProcess[str]]
) -> Path:
    folder = tmp_path_factory.mktemp("awkward")
    club = SmallClub(folder / "club")
    club.job("spring", "05-10")
    club.log("begun", "05-10", "work started", "job: spring", time="07:00")
    club.log("note", "05-10", "note to members", "job: spring")
    note = folder / "club/log/2027/note.md"
    note.write_text(note.read_text(encoding="utf-8") + WORDS, encoding="utf-8")
    file = folder / "club/club.yaml"
    text = file.read_text(encoding="utf-8")
    file.write_text(text.replace("https://saltmarsh-ladder.example", AS_TYPED), encoding="utf-8")
    options = ("--output", str(folder / "site"), "--as-of", "2027-05-10 18:00", "--eml")
    done = run_swardcast("build", "--club", str(club.folder), *options)
    assert done.returncode == 0, done.stderr
    return folder / "site"


def test_an_address_with_letters_beyond_ascii_is_sent_in_one_way(site: Path) -> None:
    page = html.parse(site / "notices/spring/index.html").getroot()
    (canonical,) = page.xpath("//link[@rel='canonical']/@href")
    (graph,) = page.xpath("//meta[@property='og:url']/@content")
    (data,) = page.xpath("//script[@type='application/ld+json']/text()")
    calendar = (site / "calendar.ics").read_bytes().decode().replace("\r\n ", "")
    (event, *_) = re.findall(r"^URL:(.*/notices/.*)\r$", calendar, re.MULTILINE)
    (first, *_) = [link.text for link in etree.parse(site / "feeds/status.rss").iterfind(".//item/link")]
    status = json.loads((site / "status.json").read_text(encoding="utf-8"))
    same = {canonical, graph, json.loads(data)["url"], event, first, status["notices"][0]["address"]}
    assert same == {f"{AS_SENT}/notices/spring/"}


def test_no_file_has_the_address_as_it_was_typed(site: Path) -> None:
    for path in site.rglob("*"):
        if path.suffix in {".html", ".ics", ".json", ".rss", ".atom", ".txt", ".eml"}:
            assert "/gréens" not in path.read_bytes().decode(), path


def test_own_words_never_become_links_of_pelicans(site: Path) -> None:
    page = html.parse(site / "notices/spring/index.html").getroot()
    links = {link.text: link.get("href") for link in page.xpath("//a") if link.text in set("abcdefg")}
    assert links == {
        "a": "{author}me", "b": "{static}/x.pdf", "c": "{filename}y.md", "d": "|filename|z.md", "e": "{index}",
        "f": "{category}news", "g": "https://a.example/",
    }  # fmt: skip
    (titled,) = page.xpath("//a[@title]/@title")
    assert titled == "href='{author}me'"


def test_braces_outside_a_tag_stay_as_they_are() -> None:
    assert own_words_html("Sand {fine} | coarse") == "<p>Sand {fine} | coarse</p>"
