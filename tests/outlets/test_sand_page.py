"""The page of a year's sand: one file that asks for nothing, with two pictures and the same facts as tables."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date, datetime

import html5lib
import pytest
from lxml import html

from swardcast.language.catalogue import built_in
from swardcast.outlets.committee_page import MARK
from swardcast.outlets.pictures.sand import draw_sand_in_print, draw_sand_store
from swardcast.outlets.sand_page import sand_page
from swardcast.planning.sand_pictures import print_picture, store_picture
from swardcast.planning.sand_tables import sand_tables
from swardcast.planning.sand_year import SandYear, sand_year
from swardcast.records.folder import ClubRecords
from swardcast.records.sand_store import SandStore

OUTSIDE = re.compile(rb"https?://|//[a-z]|url\(|@import|<script|<link|<img|<iframe", re.IGNORECASE)


@pytest.fixture(scope="module")
def year(demo_records: ClubRecords) -> SandYear:
    as_of = datetime(2027, 9, 14, 9, 30, tzinfo=demo_records.club.time_zone)
    return sand_year(demo_records, as_of, date(2027, 1, 1), date(2027, 12, 31))


@pytest.fixture(scope="module")
def page(year: SandYear, demo_records: ClubRecords) -> str:
    return sand_page(year, demo_records.planning, demo_records.club)


def test_it_is_html_without_a_fault_and_asks_for_nothing(page: str) -> None:
    parser = html5lib.HTMLParser()
    parser.parse(page)
    assert parser.errors == []
    names = ("http://www.w3.org/2000/svg", "http://www.w3.org/1999/xlink")
    asks = page.replace(f'xmlns="{names[0]}"', "").replace(f'xmlns:xlink="{names[1]}"', "")
    assert OUTSIDE.findall(asks.encode()) == []
    assert MARK in page
    assert '<meta name="robots" content="noindex">' in page


def test_every_cell_of_the_tables_stands_on_it(page: str, year: SandYear, demo_records: ClubRecords) -> None:
    tree = html.fromstring(page)
    told = sand_tables(year, demo_records.planning, demo_records.club.voice(date(2027, 9, 14)))
    tables = [table for table in tree.iter("table") if "sc-pic__table" not in (table.get("class") or "")]
    assert len(tables) == len(told) == 7
    for table, expected in zip(tables, told, strict=True):
        rows = [[cell.text_content() for cell in row] for row in table.iter("tr")]
        assert rows == [list(expected.columns), *(list(row) for row in expected.rows)]


def test_each_picture_has_a_title_a_description_and_its_facts_as_a_table(page: str) -> None:
    tree = html.fromstring(page)
    pictures = [one for one in tree.iter("svg") if "sc-pic__svg" in (one.get("class") or "")]
    assert len(pictures) == 2
    for picture in pictures:
        for name in ("aria-labelledby", "aria-describedby"):
            (words,) = (one for one in picture.iter() if one.get("id") == picture.get(name))
            assert words.text_content().strip()
    assert len([one for one in tree.iter("table") if "sc-pic__table" in (one.get("class") or "")]) == 2


def test_the_line_of_the_store_steps_as_the_balance_does(year: SandYear, demo_records: ClubRecords) -> None:
    """For each change a level stretch and a step; heights go down as masses go up."""
    picture = store_picture(year, demo_records.club.voice(date(2027, 9, 14)))
    assert picture is not None
    svg = draw_sand_store(picture)
    (path,) = re.findall(r'<path d="([^"]+)"[^>]*class="sc-pic__line"', svg) or re.findall(
        r'class="sc-pic__line"[^>]* d="([^"]+)"', svg
    )
    points = [tuple(map(float, one.split(","))) for one in re.findall(r"[-\d.]+,[-\d.]+", path)]
    assert len(points) == 2 * len(picture.steps)
    ends = points[0::2]
    masses = [mass for _, mass in picture.steps]
    assert sorted(range(len(masses)), key=lambda place: masses[place]) == sorted(
        range(len(masses)), key=lambda place: -ends[place][1]
    )
    assert svg.count("sc-pic__inside") == 5, "a diamond for each delivery"
    assert svg.count("sc-pic__seen") == 2, "a dot for each count"


def test_a_store_in_a_picture_is_told_in_words_too(year: SandYear, demo_records: ClubRecords) -> None:
    picture = store_picture(year, demo_records.club.voice(date(2027, 9, 14)))
    assert picture is not None
    assert picture.told.description == (
        "From 1 March to 31 December the store holds 117 tonnes at most, as weighed, and is 0.3 tonnes short at worst."
    )
    (table,) = picture.told.tables
    assert len(table.rows) == len(picture.steps)


def test_american_units_come_in_american(year: SandYear, demo_records: ClubRecords) -> None:
    """252 t are 278 short tons; 6.5 mm are 0.26 in; 8.37 lb are not said of sand."""
    voice = replace(demo_records.club.voice(date(2027, 9, 14)), catalogue=built_in("en-US"))
    tables = sand_tables(year, demo_records.planning, voice)
    assert tables[0].caption.endswith("(tons of dry sand)")
    assert tables[0].rows[-1][-3] == "277.5"  # 251.785 t x 1.10231
    assert any("0.26 in" in row[2] for row in tables[-1].rows)
    assert draw_sand_in_print(print_picture(year, voice)).count("sc-pic__range") == 4


def test_without_a_count_there_is_one_picture_and_no_table_of_the_store(demo_records: ClubRecords) -> None:
    records = replace(demo_records, planning=replace(demo_records.planning, sand_store=SandStore()))
    as_of = datetime(2027, 9, 14, 9, 30, tzinfo=records.club.time_zone)
    bare = sand_year(records, as_of, date(2027, 1, 1), date(2027, 12, 31))
    page = sand_page(bare, records.planning, records.club)
    assert page.count('class="sc-pic__svg"') == 1
    assert "The store (tonnes" not in page
