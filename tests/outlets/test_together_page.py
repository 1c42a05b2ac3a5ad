"""The page on days for several jobs: one file that asks for nothing, with a picture and the same facts as tables."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date, datetime

import html5lib
import pytest
from lxml import html

from swardcast.outlets.committee_page import MARK
from swardcast.outlets.pictures.days_trade_offs import draw_days_trade_offs
from swardcast.outlets.together_page import together_page
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.programme import AskedTogether, Together, find_together
from swardcast.planning.programme_tables import together_reasons, together_tables
from swardcast.planning.together_picture import days_trade_offs
from swardcast.records.folder import ClubRecords

OUTSIDE = re.compile(rb"https?://|//[a-z]|url\(|@import|<script|<link|<img|<iframe", re.IGNORECASE)
AT = date(2027, 4, 20)
JOBS = ("greens-solid-tining-2027", "greens-verticutting-2027", "greens-renovation-2027")


@pytest.fixture(scope="module")
def asked(demo_records: ClubRecords) -> AskedTogether:
    first, *others = (demo_records.jobs[job] for job in JOBS)
    named = replace(first, title="<Tining> & sand")
    return AskedTogether(jobs=(named, *others), first=date(2027, 7, 1), last=date(2027, 8, 27), in_order=False)


@pytest.fixture(scope="module")
def together(demo_records: ClubRecords, asked: AskedTogether) -> Together:
    as_of = datetime(2027, 4, 20, 8, tzinfo=demo_records.club.time_zone)
    found = find_together(demo_records, as_of, WeatherBook(demo_records.club, demo_records.weather), asked)
    assert found.in_all > 2
    return found


@pytest.fixture(scope="module")
def page(together: Together, demo_records: ClubRecords) -> str:
    return together_page(together, demo_records)


def test_it_is_private_html_without_a_fault_and_asks_for_nothing(page: str) -> None:
    parser = html5lib.HTMLParser()
    parser.parse(page)
    assert parser.errors == []
    asks = page.replace('xmlns="http://www.w3.org/2000/svg"', "").replace(
        'xmlns:xlink="http://www.w3.org/1999/xlink"', ""
    )
    assert OUTSIDE.findall(asks.encode()) == []
    assert MARK in page
    assert "Private, for the committee." in page
    assert "&lt;Tining&gt; &amp; sand" in page
    assert "<Tining>" not in page


def test_every_cell_and_every_reason_stands_on_it(page: str, together: Together, demo_records: ClubRecords) -> None:
    tree, voice = html.fromstring(page), demo_records.club.voice(AT)
    tables = [table for table in tree.iter("table") if "sc-pic__table" not in (table.get("class") or "")]
    told = together_tables(together, voice)
    assert len(tables) == len(told) == 3
    for table, expected in zip(tables, told, strict=True):
        rows = [[cell.text_content() for cell in row] for row in table.iter("tr")]
        assert rows == [list(expected.columns), *(list(row) for row in expected.rows)]
    reasons = [tuple(part.text_content() for part in one) for one in tree.xpath("//dl/div")]
    assert reasons == list(together_reasons(together, voice))


def test_the_picture_has_every_trade_off_where_its_days_are(together: Together, demo_records: ClubRecords) -> None:
    """Fewer days disturbed lie to the left, more weighted days higher up; the first one is the diamond."""
    picture = days_trade_offs(together, demo_records.club.voice(AT))
    assert picture is not None
    for marks, values in (
        (picture.plain_marks, [one.plain_days for one in together.trade_offs]),
        (picture.weighted_marks, [one.weighted_days for one in together.trade_offs]),
    ):
        assert marks[0].value <= min(values)
        assert marks[-1].value >= max(values)
        assert 2 <= len(marks) <= 6
    drawn = html.fromstring(draw_days_trade_offs(picture))
    dots = [(float(dot.get("cx")), float(dot.get("cy"))) for dot in drawn.iter("circle")]
    assert len(dots) == len(together.trade_offs) - 1
    assert dots == sorted(dots, reverse=True)  # each farther left and higher up than the one before
    assert [y for _, y in dots] == sorted((y for _, y in dots), reverse=True)


def test_one_schedule_alone_has_no_picture_and_none_says_why(
    together: Together, asked: AskedTogether, demo_records: ClubRecords
) -> None:
    alone = replace(together, trade_offs=together.trade_offs[:1], with_all=together.with_all[:1], in_all=1)
    assert days_trade_offs(alone, demo_records.club.voice(AT)) is None
    assert "<svg" not in together_page(alone, demo_records)
    book = WeatherBook(demo_records.club, demo_records.weather)
    none = find_together(
        demo_records, together.as_of, book, replace(asked, first=date(2027, 7, 5), last=date(2027, 7, 6))
    )
    text = html.fromstring(together_page(none, demo_records)).text_content()
    assert "The jobs cannot all be done from Monday 5 July to Tuesday 6 July." in text
    assert "A: <Tining> & sand" in text
