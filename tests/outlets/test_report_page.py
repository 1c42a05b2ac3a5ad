"""The committee's report as a page and as Markdown: the same words in both, private, with its pictures inside."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime

import html5lib
import pytest
from babel import Locale
from lxml import html
from markdown_it import MarkdownIt

from swardcast.language.catalogue import Catalogue, built_in
from swardcast.language.house_phrases import with_house_phrases
from swardcast.language.voice import Voice
from swardcast.notices.pictures import Table
from swardcast.outlets.committee_page import MARK
from swardcast.outlets.report_markdown import report_markdown
from swardcast.outlets.report_page import report_page
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.periods import Period
from swardcast.planning.report import report_of
from swardcast.planning.report_sections import ReportInWords, report_in_words
from swardcast.planning.report_words import Section
from swardcast.records.folder import ClubRecords
from tests.conftest import DEMO
from tests.language.made_up import LOCALE, TAG, made_up_phrases
from tests.outlets.test_committee_page import OUTSIDE
from tests.whole_site.typed import TypedWords, typed_in

CLUB = "Quillhaven Golf Club"
NASTY = "a|b <i>c</i> [d](e) `f` *g* _h_ \\| &amp; # 1. - ~~j~~ ![k](l)"


@pytest.fixture(scope="module")
def told_in(demo_records: ClubRecords) -> Callable[[Catalogue], ReportInWords]:
    """The demo's report in a language; the weather is worked out once."""
    as_of = datetime(2027, 10, 31, 9, 0, tzinfo=demo_records.club.time_zone)
    period = Period(first=date(2027, 8, 1), last=date(2027, 9, 30))
    book = WeatherBook(demo_records.club, demo_records.weather)

    def in_words(catalogue: Catalogue) -> ReportInWords:
        records = replace(demo_records, club=replace(demo_records.club, language=catalogue.tag, catalogue=catalogue))
        return report_in_words(report_of(records, as_of, book, period), records)

    return in_words


@pytest.fixture(scope="module")
def told(told_in: Callable[[Catalogue], ReportInWords]) -> ReportInWords:
    return told_in(built_in("en-GB"))


@pytest.fixture(scope="module")
def page(told: ReportInWords, demo_records: ClubRecords) -> str:
    return report_page(told, demo_records.club, demo_records.club.voice(date(2027, 10, 31)))


def tables_in(tree: html.HtmlElement) -> list[list[list[str]]]:
    """The cells of each table, those of pictures left out."""
    return [
        [[" ".join(cell.text_content().split()) for cell in row] for row in table.iter("tr")]
        for table in tree.iter("table")
        if "sc-pic__table" not in (table.get("class") or "")
    ]


def told_tables(told: ReportInWords) -> list[list[list[str]]]:
    return [
        [[" ".join(cell.split()) for cell in row] for row in (table.columns, *table.rows)]
        for section in told.sections
        for table in section.tables
    ]


def test_the_page_is_html_without_a_fault_asks_for_nothing_and_is_private(page: str) -> None:
    parser = html5lib.HTMLParser()
    parser.parse(page)
    assert parser.errors == []
    asks = page.replace('xmlns="http://www.w3.org/2000/svg"', "").replace(
        'xmlns:xlink="http://www.w3.org/1999/xlink"', ""
    )
    assert OUTSIDE.findall(asks.encode()) == []
    assert MARK in page.partition("<style>")[0]
    assert '<meta name="robots" content="noindex">' in page
    assert "Private, for the committee. It is no part of the club&#39;s site." in page


def test_every_cell_of_the_tables_stands_on_the_page_and_in_the_markdown(page: str, told: ReportInWords) -> None:
    expected = told_tables(told)
    assert len(expected) > 10
    assert tables_in(html.fromstring(page)) == expected
    assert tables_in(html.fromstring(rendered(report_markdown(told, CLUB)))) == expected


def test_its_pictures_are_inside_with_a_heading_and_a_description_each(page: str) -> None:
    tree = html.fromstring(page)
    drawings = [one for one in tree.iter("svg") if one.get("role") == "img"]
    assert [one.text_content() for one in tree.iter("h3")] == [
        "Green speed over time", "Firmness over time", "Moisture over time", "Height of cut over time",
        "Organic matter over time", "What we said on the day of the work, and what came",
    ]  # fmt: skip
    assert len(drawings) == 6
    ids = [one.get("id") for one in tree.iter() if one.get("id")]
    assert len(ids) == len(set(ids))
    for drawing in drawings:
        assert drawing.get("aria-labelledby") in ids
        assert drawing.get("aria-describedby") in ids


def test_each_printed_page_says_that_it_is_private(page: str) -> None:
    (said,) = re.findall(r"@top-center \{ content: \"([^\"]*)\"", page)
    assert re.sub(r"\\([0-9a-f]+) ", lambda code: chr(int(code[1], 16)), said) == "Private: for the committee"


def rendered(markdown: str) -> str:
    """HTML by a parser of CommonMark with the pipe tables of GitHub Flavored Markdown."""
    return f"<div>{MarkdownIt('commonmark').enable('table').render(markdown)}</div>"


def test_the_markdown_has_the_headings_lines_and_sentences_of_the_report(told: ReportInWords) -> None:
    markdown = report_markdown(told, CLUB)
    assert markdown.startswith(f"<!-- {MARK} -->\n\n# Report to the committee: August to September 2027\n")
    assert markdown.endswith("\n")
    assert not markdown.endswith("\n\n")
    tree = html.fromstring(rendered(markdown))
    assert [one.text_content() for one in tree.iter("h2")] == [section.title for section in told.sections]
    lines = [" ".join(line.split()) for section in told.sections for line in section.lines]
    assert [one.text_content() for one in tree.iter("li")] == lines
    paragraphs = {one.text_content() for one in tree.iter("p")}
    for section in told.sections:
        assert {" ".join(one.split()) for one in (*section.sentences, *section.notes)} <= paragraphs


@pytest.mark.parametrize("begins", ["", "# ", "1. ", "1) ", "- ", "+ ", "> ", "=== ", "    ", "\\"])
def test_what_somebody_typed_means_nothing_in_markdown_and_html(begins: str, demo_records: ClubRecords) -> None:
    typed = begins + NASTY
    shown = " ".join(typed.split())
    table = Table(caption=typed, columns=("One", typed), rows=((typed, typed), ("two", "|")))
    section = Section(name="x", title=typed, lines=(typed,), sentences=(typed,), tables=(table,), notes=(typed,))
    report = ReportInWords(title=typed, made=typed, lead=(typed,), sections=(section,))
    tree = html.fromstring(rendered(report_markdown(report, typed)))
    assert tables_in(tree) == [[["One", shown], [shown, shown], ["two", "|"]]]
    assert [one.text_content() for one in tree.iter("li")] == [shown]
    assert [one.text_content() for one in (*tree.iter("h1"), *tree.iter("h2"))] == [shown, shown]
    assert [one.text_content() for one in tree.iter("p")] == [shown] * 6
    assert list(tree.iter("a", "i", "em", "code", "img", "del")) == []
    page = html.fromstring(report_page(report, replace(demo_records.club, name=typed), Voice.english(date(2027, 9, 1))))
    assert tables_in(page) == [[["One", shown], [shown, shown], ["two", "|"]]]


def test_all_its_words_come_from_the_catalogue(
    told_in: Callable[[Catalogue], ReportInWords], demo_records: ClubRecords
) -> None:
    """In a made-up language no letter of English is left but in what the club typed, and in names of its files."""
    report = told_in(with_house_phrases(TAG, {"phrases/made-up.ftl": made_up_phrases()}))
    files = {path.relative_to(DEMO).as_posix() for path in DEMO.rglob("*") if path.is_file()}
    months = [
        name for names in Locale.parse(LOCALE).months.values() for wide in names.values() for name in wide.values()
    ]
    days = [name for names in Locale.parse(LOCALE).days.values() for wide in names.values() for name in wide.values()]
    targets = [target.typed for target in demo_records.planning.targets]
    typed = TypedWords([*typed_in(demo_records), *files, *months, *days, *targets])
    left: dict[str, list[str]] = {}
    for section in report.sections:
        cells = [cell for table in section.tables for row in (table.columns, *table.rows) for cell in row]
        texts = [section.title, *section.lines, *section.sentences, *section.notes, *cells]
        told = [one.told for one in section.pictures]
        texts += [
            text for one in told for text in (one.title, one.description, *one.caption, *(k.words for k in one.key))
        ]
        left |= {text: words for text in texts if (words := re.findall("[A-Za-z]+", typed.taken_out_of(text)))}
    assert left == {}


def test_an_american_club_reads_of_tons(told_in: Callable[[Catalogue], ReportInWords]) -> None:
    lines = told_in(built_in("en-US")).sections[0].lines
    assert "tons planned" in lines[2]
    assert "tonnes" not in lines[2]
