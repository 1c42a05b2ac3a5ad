"""The page for whoever runs many sites: one file that asks for nothing and says first what has to be put right."""

from __future__ import annotations

import re
from datetime import datetime
from zoneinfo import ZoneInfo

import html5lib
import pytest
from lxml import html

from swardcast.language.voice import Voice
from swardcast.outlets.committee_page import MARK
from swardcast.outlets.fleet_page import BuiltClub, State, fleet_page
from swardcast.outlets.policy import OF_ONE_FILE
from tests.outlets.test_committee_page import OUTSIDE

MADE = datetime(2027, 9, 14, 6, 45, tzinfo=ZoneInfo("Europe/London"))
HOSTILE = '"><script src=//evil.example></script><b onclick=x>&amp;'
FLEET = (
    BuiltClub(club="north/heath", name="Heath", state=State.PUBLISHED, seconds=2.14, said=""),
    BuiltClub(
        club="north/links", name=HOSTILE, state=State.FAILED, seconds=0.1, said=f"plan.yaml\n  line 4: {HOSTILE}"
    ),
    BuiltClub(club="park", name="Park", state=State.UNCHANGED, seconds=1.96, said="Worth another look: one\nanother"),
    BuiltClub(club=HOSTILE, name="", state=State.FAILED, seconds=0.0, said="nothing"),
)
HOMES = {"north/heath": "sites/north/heath/index.html", "north/links": "a%22%3E/index.html", "park": "park/index.html"}


def page_of(*built: BuiltClub, seconds: float = 754.0) -> str:
    return fleet_page(built, Voice.english(MADE.date()), folder="clubs", made=MADE, seconds=seconds, homes=HOMES)


def words_of(part: html.HtmlElement) -> str:
    return " ".join(part.text_content().split())


@pytest.fixture(scope="module")
def page() -> str:
    return page_of(*FLEET)


def test_it_is_html_without_a_fault_is_private_and_asks_for_nothing(page: str) -> None:
    parser = html5lib.HTMLParser()
    parser.parse(page)
    assert parser.errors == []
    assert MARK in page
    assert '<meta name="robots" content="noindex">' in page
    assert html.fromstring(page).xpath("//meta[@http-equiv='Content-Security-Policy']/@content") == [OF_ONE_FILE]
    assert OUTSIDE.findall(page_of(FLEET[0], FLEET[2]).encode()) == []


def test_what_clubs_typed_is_shown_as_typed_and_is_nothing_else(page: str) -> None:
    tree = html.fromstring(page)
    assert [*tree.iter("script", "b")] == []
    assert tree.xpath("//@onclick") == []
    assert [words_of(one) for one in tree.iter("h3")] == [HOSTILE, HOSTILE]
    assert [one.text_content() for one in tree.xpath("//pre")] == [FLEET[1].said, "nothing", FLEET[2].said]


def test_it_says_how_many_and_when_and_what_to_put_right_first(page: str) -> None:
    tree = html.fromstring(page)
    assert words_of(next(tree.iter("h1"))) == "The sites of 4 clubs"
    (private,) = tree.xpath("//p[@class='private']")
    assert words_of(private).endswith("Finished at 6:45am on Tuesday 14 September. It took 12 min 34 s.")
    assert (
        words_of(tree.xpath("//p[@class='private']/following-sibling::p")[0])
        == "1 published, 1 unchanged and 2 failed."
    )
    assert [words_of(one) for one in tree.iter("h2")] == ["Put these right first", "All clubs", "Worth another look"]


def test_each_club_has_a_line_with_its_site_its_state_and_its_seconds(page: str) -> None:
    rows = [
        ([*row.xpath("th/a/@href")], [words_of(cell) for cell in row])
        for row in html.fromstring(page).xpath("//tbody/tr")
    ]
    assert rows == [
        ([HOMES["north/heath"]], ["Heath north/heath", "published", "2.1"]),
        ([HOMES["north/links"]], [f"{HOSTILE} north/links", "failed", "0.1"]),
        ([HOMES["park"]], ["Park park", "unchanged", "2.0"]),
        ([], [HOSTILE, "failed", "0.0"]),
    ]


def test_where_all_is_well_it_says_no_more_than_that() -> None:
    tree = html.fromstring(page_of(FLEET[0], seconds=1.4))
    assert words_of(next(tree.iter("h1"))) == "The site of 1 club"
    assert words_of(tree.xpath("//p[@class='private']")[0]).endswith("It took 1 second.")
    assert [words_of(one) for one in tree.iter("h2")] == ["All clubs"]
    assert re.findall(r"failed|unchanged", words_of(next(tree.iter("main")))) == []


def test_what_is_worth_another_look_is_folded_away_and_counted(page: str) -> None:
    (folded,) = html.fromstring(page).iter("details")
    assert words_of(next(folded.iter("summary"))) == "Park: 2 lines"
