"""The page on when to do a job: one file that asks for nothing, with a picture and the same facts as tables."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date, datetime, timedelta

import html5lib
import pytest
from lxml import html

from swardcast.outlets.committee_page import MARK
from swardcast.outlets.dates_page import dates_page
from swardcast.outlets.pictures.first_days import draw_first_days
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.date_picture import FirstDays, first_days
from swardcast.planning.date_tables import date_reasons, date_tables
from swardcast.planning.dates import Asked, Dates, find_dates
from swardcast.records.folder import ClubRecords

OUTSIDE = re.compile(rb"https?://|//[a-z]|url\(|@import|<script|<link|<img|<iframe", re.IGNORECASE)
AT = date(2027, 5, 20)


@pytest.fixture(scope="module")
def dates(demo_records: ClubRecords) -> Dates:
    """From 2 August to 17 October: a bank holiday and two visits are in the way."""
    job = demo_records.jobs["greens-renovation-2027"]
    asked = Asked(
        job=job, name="<Renovation> & sand", first=date(2027, 8, 2), last=date(2027, 10, 17), instead_of=job.id
    )
    as_of = datetime(2027, 5, 20, 8, tzinfo=demo_records.club.time_zone)
    return find_dates(demo_records, as_of, WeatherBook(demo_records.club, demo_records.weather), asked)


@pytest.fixture(scope="module")
def page(dates: Dates, demo_records: ClubRecords) -> str:
    return dates_page(dates, demo_records)


@pytest.fixture(scope="module")
def picture(dates: Dates, demo_records: ClubRecords) -> FirstDays:
    found = first_days(dates, demo_records.fixtures, demo_records.club.voice(AT))
    assert found is not None
    return found


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
    assert "When to do: <bdi>&lt;Renovation&gt; &amp; sand</bdi>" in page


def test_every_cell_and_every_reason_stands_on_it(page: str, dates: Dates, demo_records: ClubRecords) -> None:
    tree, voice = html.fromstring(page), demo_records.club.voice(AT)
    tables = [table for table in tree.iter("table") if "sc-pic__table" not in (table.get("class") or "")]
    told = date_tables(dates, demo_records.planning, voice)
    assert len(tables) == len(told) == 4
    for table, expected in zip(tables, told, strict=True):
        rows = [[cell.text_content() for cell in row] for row in table.iter("tr")]
        assert rows == [list(expected.columns), *(list(row) for row in expected.rows)]
    reasons = [tuple(part.text_content() for part in one) for one in tree.xpath("//dl/div")]
    assert reasons == list(date_reasons(dates, demo_records.planning, voice))
    assert len(reasons) == len(dates.best) > 1


def test_the_picture_has_every_possible_day_in_runs_over_weekends(picture: FirstDays, dates: Dates) -> None:
    """By the tables: the work cannot begin from 26 to 30 August, 27 to 29 September and 11 to 14 October."""
    drawn = [day.day for run in picture.runs for day in run]
    assert drawn == [day.day for day in dates.possible]
    ends = [(run[0].day, run[-1].day) for run in picture.runs]
    assert ends == [
        (date(2027, 8, 2), date(2027, 8, 25)),
        (date(2027, 8, 31), date(2027, 9, 24)),
        (date(2027, 9, 30), date(2027, 10, 8)),
        (date(2027, 10, 15), date(2027, 10, 15)),
    ]
    assert list(picture.blocked) == [
        (date(2027, 8, 26), date(2027, 8, 30)),
        (date(2027, 9, 27), date(2027, 9, 29)),
        (date(2027, 10, 11), date(2027, 10, 14)),
    ]


def test_the_line_lies_where_its_days_and_costs_are(picture: FirstDays) -> None:
    """Places go evenly with values: the ends of the first run fix the scale, and every other has to lie on it."""
    drawn = html.fromstring(draw_first_days(picture))
    lines = [one.get("d") for one in drawn.iter("path") if one.get("class") == "sc-pic__line"]
    runs = [run for run in picture.runs if len(run) > 1]
    assert len(lines) == len(runs)
    places = [[tuple(map(float, at.split(","))) for at in re.findall(r"[\d.]+,[\d.]+", line)] for line in lines]
    points = [
        (day, place) for run, line in zip(runs, places, strict=True) for day, place in zip(run, line, strict=True)
    ]
    (first, (left, _)), (last, (right, _)) = points[0], points[-1]
    per_day = (right - left) / (last.day - first.day).days
    dear, cheap = max(points, key=lambda one: one[0].weighted), min(points, key=lambda one: one[0].weighted)
    per_cost = (dear[1][1] - cheap[1][1]) / (dear[0].weighted - cheap[0].weighted)
    assert per_day > 0
    assert per_cost < 0, "dearer is further up"
    for day, (x, y) in points:
        assert x == pytest.approx(left + per_day * (day.day - first.day).days, abs=0.2)
        assert y == pytest.approx(cheap[1][1] + per_cost * (day.weighted - cheap[0].weighted), abs=0.2)


def test_a_fixture_that_comes_back_often_is_left_out_and_that_is_said(picture: FirstDays, dates: Dates) -> None:
    names = [
        row.words.split(",")[0]
        for row in picture.told.key
        if row.words.split(",")[0] in ("Twilight nine", "Autumn medal")
    ]
    assert names == ["Autumn medal"]
    assert "Fixtures that come back often are left out here; they count all the same." in picture.told.caption[0]
    assert len(picture.told.tables[0].rows) == len(dates.possible)


def test_without_costs_there_is_no_picture(dates: Dates, demo_records: ClubRecords) -> None:
    days = tuple(replace(day, cost=None) for day in dates.days)
    nothing = replace(dates, days=days, best=())
    assert first_days(nothing, demo_records.fixtures, demo_records.club.voice(AT)) is None
    assert "<svg" not in dates_page(nothing, demo_records)


def test_a_day_out_at_the_edge_is_drawn_inside_the_picture(dates: Dates, demo_records: ClubRecords) -> None:
    first = date(2027, 9, 27)  # a Monday that is out
    days = tuple(day for day in dates.days if first <= day.day <= first + timedelta(days=9))
    asked = replace(dates.asked, first=first, last=days[-1].day)
    picture = first_days(replace(dates, asked=asked, days=days, best=()), (), demo_records.club.voice(AT))
    assert picture is not None
    drawn = html.fromstring(draw_first_days(picture))
    (box,) = [one for one in drawn.iter("rect") if one.get("class") == "sc-pic__range"]
    assert float(box.get("x")) >= 40.0
