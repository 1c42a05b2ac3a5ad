"""The page for the committee: one file that asks for nothing, with a picture and the same facts as tables."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date, datetime

import html5lib
import pytest
from lxml import html

from swardcast.language.catalogue import built_in
from swardcast.outlets.committee_page import MARK, committee_page
from swardcast.outlets.pictures.trade_off import draw_trade_off
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.compare import Comparison, When, compare
from swardcast.planning.tables import tables_of
from swardcast.planning.trade_off import TradeOff, TradeOffPoint, trade_off
from swardcast.reading.choices_file import usual_choices
from swardcast.records.folder import ClubRecords

OUTSIDE = re.compile(rb"https?://|//[a-z]|url\(|@import|<script|<link|<img|<iframe", re.IGNORECASE)


@pytest.fixture(scope="module")
def comparison(demo_records: ClubRecords) -> Comparison:
    job = demo_records.jobs["greens-renovation-2027"]
    when = When(surfaces=job.surfaces, starts=job.starts, surfaces_a_day=6, spare_days=2, instead_of=job)
    as_of = datetime(2027, 8, 18, 9, 30, tzinfo=demo_records.club.time_zone)
    surfaces = [demo_records.surfaces[name] for name in job.surfaces]
    usual = [choice for choice in usual_choices() if choice.is_for(surfaces)]
    choices = (*demo_records.planning.choices, *usual)
    return compare(demo_records, as_of, WeatherBook(demo_records.club, demo_records.weather), when, choices)


@pytest.fixture(scope="module")
def page(comparison: Comparison, demo_records: ClubRecords) -> str:
    return committee_page(comparison, demo_records.planning, demo_records.club)


@pytest.fixture(scope="module")
def picture(comparison: Comparison, demo_records: ClubRecords) -> TradeOff:
    found = trade_off(comparison, demo_records.club.voice(date(2027, 8, 18)))
    assert found is not None
    return found


def test_it_is_html_without_a_fault_and_asks_for_nothing(page: str) -> None:
    parser = html5lib.HTMLParser()
    parser.parse(page)
    assert parser.errors == []
    asks = page.replace('xmlns="http://www.w3.org/2000/svg"', "").replace(
        'xmlns:xlink="http://www.w3.org/1999/xlink"', ""
    )
    assert OUTSIDE.findall(asks.encode()) == []
    assert page.count("<style>") == 1


def test_it_says_that_it_is_private_to_people_and_to_search_engines(page: str) -> None:
    assert "Private, for the committee. It is no part of the club&#39;s site." in page
    assert '<meta name="robots" content="noindex">' in page
    assert MARK in page


def test_every_cell_of_the_tables_stands_on_it(page: str, comparison: Comparison, demo_records: ClubRecords) -> None:
    tree = html.fromstring(page)
    voice = demo_records.club.voice(date(2027, 8, 18))
    tables = [table for table in tree.iter("table") if "sc-pic__table" not in (table.get("class") or "")]
    told = tables_of(comparison, demo_records.planning, voice)
    assert len(tables) == len(told) == 5
    for table, expected in zip(tables, told, strict=True):
        (caption,) = table.iter("caption")
        assert caption.text_content() == expected.caption
        rows = [[cell.text_content() for cell in row] for row in table.iter("tr")]
        assert rows == [list(expected.columns), *(list(row) for row in expected.rows)]


def test_the_picture_has_a_title_a_description_and_its_facts_as_a_table(page: str, picture: TradeOff) -> None:
    tree = html.fromstring(page)
    (svg,) = [one for one in tree.iter("svg") if one.get("role") == "img"]
    named = {part.get("id"): part.text_content() for part in svg if part.get("id")}
    assert named[svg.get("aria-labelledby")] == "Area worked against days of disturbance"
    assert named[svg.get("aria-describedby")] == picture.told.description
    (table,) = [one for one in tree.iter("table") if "sc-pic__table" in (one.get("class") or "")]
    rows = [[cell.text_content() for cell in row] for row in table.iter("tr")][1:]
    assert [row[0] for row in rows] == [point.number for point in picture.points]
    assert [(int(row[3]), int(row[4])) for row in rows] == [(one.likely_days, one.until_days) for one in picture.points]


def test_a_point_lies_where_its_share_and_days_are(picture: TradeOff) -> None:
    """Places go evenly with values: two of them fix the scale, and every other has to lie on it."""
    drawn = html.fromstring(draw_trade_off(picture))
    circles = [(float(one.get("cx")), float(one.get("cy"))) for one in drawn.iter("circle")]
    points = [point for point in picture.points if not point.is_planned]
    assert len(circles) == len(points)
    far, near = max(points, key=lambda one: one.share), min(points, key=lambda one: one.share)
    slow, fast = max(points, key=lambda one: one.likely_days), min(points, key=lambda one: one.likely_days)
    at = dict(zip((id(point) for point in points), circles, strict=True))
    per_share = (at[id(far)][0] - at[id(near)][0]) / (far.share - near.share)
    per_day = (at[id(slow)][1] - at[id(fast)][1]) / (slow.likely_days - fast.likely_days)
    assert per_share > 0
    assert per_day < 0, "later is further up"
    for point in points:
        x, y = at[id(point)]
        assert x == pytest.approx(at[id(near)][0] + per_share * (point.share - near.share), abs=0.2)
        assert y == pytest.approx(at[id(fast)][1] + per_day * (point.likely_days - fast.likely_days), abs=0.2)


def test_a_broken_line_joins_the_choices_that_have_to_be_traded_and_they_are_named(picture: TradeOff) -> None:
    """From the choice over soonest on, each next one is that with the most area among those that take as long at most."""
    best: dict[int, TradeOffPoint] = {}
    for days in sorted({point.likely_days for point in picture.points}):
        most = max((one for one in picture.points if one.likely_days <= days), key=lambda one: one.share)
        best[most.likely_days] = most
    drawn = html.fromstring(draw_trade_off(picture))
    (line,) = [one.get("d") for one in drawn.iter("path") if one.get("class") == "sc-pic__level"]
    corners = [tuple(map(float, at.split(","))) for at in re.findall(r"[\d.]+,[\d.]+", line)]
    circles = [(float(one.get("cx")), float(one.get("cy"))) for one in drawn.iter("circle")]
    dots = [point for point in picture.points if not point.is_planned]
    assert len(corners) == len(best) > 1
    for corner, point in zip(corners, best.values(), strict=True):
        assert point.is_planned or corner == circles[dots.index(point)]
    *others, last = [point.number for point in best.values()]
    assert f"The broken line joins {', '.join(others)} and {last}: " in picture.told.caption[0]


def test_no_number_of_a_point_lies_on_another_number(picture: TradeOff) -> None:
    drawn = html.fromstring(draw_trade_off(picture))
    numbers = [one for one in drawn.iter("text") if (one.text or "").isdigit() and one.get("text-anchor") == "start"]
    boxes = [
        (
            float(one.get("x")),
            float(one.get("y")) - 11,
            float(one.get("x")) + 9.4 * len(one.text or ""),
            float(one.get("y")),
        )
        for one in numbers
    ]
    assert len(boxes) > len(picture.points) / 2
    for place, one in enumerate(boxes):
        for other in boxes[place + 1 :]:
            assert one[0] >= other[2] or other[0] >= one[2] or one[1] >= other[3] or other[1] >= one[3]


def test_no_number_lies_on_the_line_of_a_point_and_the_caption_says_that_some_are_left_out(picture: TradeOff) -> None:
    drawn = html.fromstring(draw_trade_off(picture))
    numbers = [one for one in drawn.iter("text") if (one.text or "").isdigit() and one.get("text-anchor") == "start"]
    found = [one.get("d") for one in drawn.iter("path") if "whisker" in (one.get("class") or "")]
    lines = [[float(value) for value in re.findall(r"[\d.]+", one)] for one in found]
    assert len(lines) == len(picture.points)
    for number in numbers:
        left, bottom = float(number.get("x")), float(number.get("y"))
        for x, lower, _, upper in lines:
            inside = left + 0.5 < x < left + 9 * len(number.text or "") - 0.5
            assert not (inside and upper < bottom - 1 and lower > bottom - 8), number.text
    assert "A number that would lie on another mark is left out; the table has them all." in picture.told.caption[0]


def test_axes_reach_beyond_every_point(picture: TradeOff) -> None:
    assert picture.shares[0].value == picture.days[0].value == 0
    assert picture.shares[-1].value >= max(point.share for point in picture.points)
    assert picture.days[-1].value >= max(point.until_days for point in picture.points)


def test_what_has_no_date_or_share_is_named_as_left_out(picture: TradeOff, comparison: Comparison) -> None:
    """The contractor's drill and fill and the usual one have a usual range, of which no day is likely."""
    assert len(picture.points) == len(comparison.rows) - 2
    assert "2 choices have no date or no known share, and are not drawn." in picture.told.caption[0]


def test_an_american_club_reads_inches_tons_and_its_dates(comparison: Comparison, demo_records: ClubRecords) -> None:
    club = replace(demo_records.club, catalogue=built_in("en-US"), language="en-US")
    page = committee_page(comparison, demo_records.planning, club)
    assert '<html lang="en-US">' in page
    cells = [cell.text_content() for row in html.fromstring(page).iter("tr") for cell in row[2:]]
    assert any("1/2 in" in cell for cell in cells)
    assert any("tons" in cell for cell in cells)
    assert [
        cell for cell in cells if re.search(r"\bmm\b|tonne|kg", cell) and "practice" not in cell and "Woods" not in cell
    ] == []
    assert "Sept 25 (Oct 6)" in cells or "Sep 25 (Oct 6)" in cells
    assert "£42.96 a ton" in page  # 47.35 a tonne of 1,000 kg, by hand 47.35 x 0.90718474


def test_names_and_sources_that_somebody_typed_are_escaped(
    demo_records: ClubRecords, comparison: Comparison, page: str
) -> None:
    bold = replace(comparison.rows[1].choice, name="<b>fat & wide</b>", source="<script>x</script>")
    rows = (comparison.rows[0], replace(comparison.rows[1], choice=bold))
    written = committee_page(replace(comparison, rows=rows), demo_records.planning, demo_records.club)
    assert "&lt;b&gt;fat &amp; wide&lt;/b&gt;" in written
    assert "<script" not in written
    assert "<b>fat" not in written
