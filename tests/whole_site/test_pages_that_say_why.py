"""The pages "Why we do this": one for each kind of work, with the club's own jobs, readings and numbers."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from lxml import html

from swardcast.compose import Bulletin
from swardcast.language.catalogue import built_in
from swardcast.language.voice import slug_of
from swardcast.notices.kinds import MOST_QUESTIONS
from swardcast.outlets.html import why_index_html
from swardcast.records.operations import Kind

_ALWAYS = ("what", "see", "still", "day", "week", "then", "why", "without", "do", "q1", "a1", "q2", "a2", "q3", "a3")


@pytest.mark.parametrize("tag", ["en-GB", "en-US"])
@pytest.mark.parametrize("kind", list(Kind), ids=slug_of)
def test_each_kind_of_work_has_its_whole_set_of_phrases(kind: Kind, tag: str) -> None:
    """What the issue asks of each kind: what, what you see, play day by day, why, if not, what to do, questions."""
    catalogue = built_in(tag)
    missing = [name for name in _ALWAYS if not catalogue.has(f"kind-{slug_of(kind)}.{name}")]
    assert missing == []
    for number in range(4, MOST_QUESTIONS + 1):
        question, answer = (catalogue.has(f"kind-{slug_of(kind)}.{what}{number}") for what in "qa")
        assert question == answer
    assert not catalogue.has(f"kind-{slug_of(kind)}.q{MOST_QUESTIONS + 1}")


def _text(page: Path) -> str:
    return " ".join(html.parse(page).getroot().find(".//main").text_content().split())


def test_there_is_a_page_for_each_kind_and_a_list_of_them(demo_site: Path) -> None:
    index = html.parse(demo_site / "why" / "index.html").getroot()
    linked = {link.get("href") for link in index.xpath("//main//a")}
    for kind in Kind:
        assert (demo_site / "why" / slug_of(kind) / "index.html").is_file()
        assert f"../why/{slug_of(kind)}/index.html" in linked


def test_a_page_holds_the_clubs_own_numbers_and_readings(demo_site: Path) -> None:
    """5.3 % by hand: pi x 13 x 13 / 4 on 50 x 50 mm is 132.7 / 2,500; the reading is that of the plan."""
    said = _text(demo_site / "why" / "hollow-tining" / "index.html")
    assert "6.4 % (Tuesday 20 April); our aim is 5 % or less" in said
    assert "holes 13 mm wide, 60 mm deep, 50 x 50 mm apart: 5.3 % of the surface" in " ".join(said.split())
    assert "Back to normal" in said


@pytest.mark.parametrize("kind", ["topdressing", "hollow-tining", "verticutting"])
def test_what_is_over_is_folded_away_and_one_job_always_stands_there(demo_site: Path, kind: str) -> None:
    """On 14 September the greens heal from the work of August; verticutting was over in June."""
    root = html.parse(demo_site / "why" / kind / "index.html").getroot()
    (section,) = root.xpath("//section[h2='On our course']")
    folded = {"topdressing": 6, "hollow-tining": 2, "verticutting": 0}[kind]
    assert len(section.xpath("details//h3")) == folded
    assert [one.text_content().split()[0] for one in section.xpath("details/summary")] == [str(folded)] * bool(folded)
    assert len(section.xpath("h3")) >= 1
    links = section.xpath(".//h3/a/@href")
    assert len(set(links)) == len(links)


def test_work_that_the_club_does_not_do_says_so(demo_site: Path) -> None:
    assert "No work of this kind is announced" in _text(demo_site / "why" / "fraise-mowing" / "index.html")


def test_every_link_of_these_pages_leads_somewhere(demo_site: Path) -> None:
    for page in (demo_site / "why").rglob("index.html"):
        for link in html.parse(page).getroot().xpath("//a/@href"):
            if not link.startswith(("http", "mailto:", "tel:", "#")):
                assert (page.parent / link.split("#")[0]).resolve().is_file(), (page, link)


def test_where_nothing_is_announced_no_work_is_called_other_work(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    """The first programme of the demo was announced on 19 April."""
    headings = []
    for moment in ("2027-04-18 08:00", "2027-04-20 08:00"):
        bulletin = demo_bulletin_at(moment)
        page = html.fromstring(f"<div>{why_index_html(bulletin.why, bulletin.voice, '../')}</div>")
        headings.append([heading.text for heading in page.xpath("//h2")])
    assert headings == [["Work on a golf course"], ["What we do here", "Other work on a golf course"]]
