"""Whom to ask: a number to press wherever the office is named, and the quickest way where a page may be out of date."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from lxml import html

from swardcast.compose import Bulletin
from swardcast.language.catalogue import built_in
from swardcast.language.voice import Voice
from swardcast.outlets.html import contact_html
from swardcast.outlets.open_graph import OpenGraph
from swardcast.outlets.poster import poster_artifacts
from swardcast.records.club import Contact
from tests.conftest import DEMO
from tests.outlook.small_club import SmallClub

BOTH = Contact(office="the office", email="green@a.example", telephone="01632 960001")
READ = "pages/about", "pages/follow", "notices/greens-renovation-2027", "season", "."


def _text(of: str) -> str:
    return " ".join(html.fromstring(of).text_content().split())


@pytest.mark.parametrize("page", READ)
def test_every_page_has_the_demos_number_to_press(demo_site: Path, page: str) -> None:
    root = html.parse(demo_site / page / "index.html").getroot()
    links = root.xpath("//a[@href='tel:01632960317']")
    assert links
    assert {link.text_content() for link in links} == {"01632\u00a0960317"}  # a line never breaks in it


def test_the_demos_number_is_one_that_is_kept_for_drama() -> None:
    """Ofcom, "Telephone numbers for use in TV and radio drama programmes": 01632 960000 to 960999; from memory."""
    told = re.search(r"^  telephone: 01632 (\d{6})$", (DEMO / "club.yaml").read_text(encoding="utf-8"), re.MULTILINE)
    assert told
    assert 960000 <= int(told[1]) <= 960999


@pytest.mark.parametrize(
    ("tag", "contact", "said"),
    [
        ("en-GB", BOTH, "Ask the office, green@a.example, or ring 01632 960001."),
        ("en-US", BOTH, "Ask the office, green@a.example, or call 01632 960001."),
        ("en-GB", replace(BOTH, telephone=""), "Ask the office, green@a.example."),
        ("en-GB", replace(BOTH, email=""), "Ask the office, 01632 960001."),
        ("en-GB", replace(BOTH, email="", telephone=""), "Ask the office."),
    ],
)
def test_it_is_said_as_the_club_can_be_reached(tag: str, contact: Contact, said: str) -> None:
    page = contact_html(contact, Voice(catalogue=built_in(tag), near=date(2027, 9, 14)))
    assert _text(page) == said
    links = [link for _, _, link, _ in html.fromstring(f"<p>{page}</p>").iterlinks()]
    assert links == [
        *(["mailto:green@a.example"] if contact.email else []),
        *(["tel:01632960001"] if contact.telephone else []),
    ]


@pytest.mark.parametrize(
    ("contact", "said"),
    [
        (BOTH, "Questions: ring the office, 01632 960001"),
        (replace(BOTH, telephone=""), "Questions: the office, green@a.example"),
    ],
)
def test_a_poster_names_one_way_for_nobody_presses_a_link_on_paper(
    demo_bulletin: Bulletin, contact: Contact, said: str
) -> None:
    told = replace(demo_bulletin, notices=demo_bulletin.notices[:1], club=replace(demo_bulletin.club, contact=contact))
    _, page = poster_artifacts(told, OpenGraph(bulletin=told, pictures={}))
    assert said in _text(page.data.decode())


def test_a_poster_without_any_way_asks_nothing(demo_bulletin: Bulletin) -> None:
    club = replace(demo_bulletin.club, contact=replace(BOTH, email="", telephone=""))
    told = replace(demo_bulletin, notices=demo_bulletin.notices[:1], club=club)
    _, page = poster_artifacts(told, OpenGraph(bulletin=told, pictures={}))
    assert "Questions" not in _text(page.data.decode())


def test_a_status_that_is_out_of_date_says_whom_to_ring(
    run_swardcast: Callable[..., subprocess.CompletedProcess[str]], tmp_path: Path
) -> None:
    club, output = SmallClub(tmp_path / "club"), tmp_path / "site"
    club.job("cores", "09-20")
    told = club.folder / "club.yaml"
    contact = "contact: {office: the office, email: green@a.example, telephone: 01632 960001}"
    told.write_text(told.read_text("utf-8").replace("contact: {office: the office}", contact), encoding="utf-8")
    done = run_swardcast("build", "--club", str(club.folder), "--output", str(output), "--as-of", "2027-09-14 09:30")
    assert done.returncode == 0, done.stderr
    (stale,) = html.parse(output / "index.html").getroot().xpath("//p[@class='sc-stale']")
    assert _text(html.tostring(stale, encoding="unicode")) == (
        "Please check before you set out. Ring the office: 01632 960001."
    )
    assert stale.xpath("a/@href") == ["tel:01632960001"]
