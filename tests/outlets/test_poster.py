"""A poster: the essentials always whole, the rest by rule; its code read from its picture by another library."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
import zxingcpp
from hypothesis import given
from hypothesis import strategies as st
from lxml import html
from numpy.typing import NDArray

from swardcast.compose import Bulletin
from swardcast.language.catalogue import built_in
from swardcast.notices.notice import Notice, Sentence
from swardcast.outlets import poster, poster_fit
from swardcast.outlets.open_graph import OpenGraph
from swardcast.outlets.poster import Poster, poster_artifacts, poster_of
from swardcast.outlets.poster_fit import SCALES, Block, Style, fits, headline_size
from swardcast.outlets.short_addresses import short_addresses
from swardcast.records.plan import Part
from tests.conftest import ROOT

CSS = (ROOT / "plugins/swardcast/outlets/static/poster.css").read_text(encoding="utf-8")
MOMENTS = ("2027-08-25 12:00", "2027-09-14 09:30")
LABEL = "The label says: keep people and animals off until the spray has dried."
WORDS = st.lists(st.text(st.characters(exclude_categories=("C", "Z")), min_size=1, max_size=12), min_size=1).map(
    " ".join
)


def _notice(bulletin: Bulletin, name: str) -> Notice:
    return next(notice for notice in bulletin.notices if notice.id == name)


def _page(notice: Notice, bulletin: Bulletin) -> html.HtmlElement:
    """The poster of one notice, through the bulletin that has no other."""
    alone = replace(bulletin, notices=(notice,))
    _, page = poster_artifacts(alone, OpenGraph(bulletin=alone, pictures={}))
    return html.document_fromstring(page.data.decode("utf-8"))


def _text(page: html.HtmlElement) -> str:
    return " ".join(page.body.text_content().split())


def _with_labels(notice: Notice, *labels: str) -> Notice:
    points = tuple(Sentence(text=label, source=notice.planned_in) for label in labels)
    sections = [
        replace(one, points=(*points, *one.points)) if one.part is Part.TAKE_CARE else one for one in notice.sections
    ]
    return replace(notice, sections=tuple(sections))


def _drawn(page: html.HtmlElement) -> NDArray[np.uint8]:
    """The code as dots, 8 for a module, drawn here from the strokes of its SVG (SVG 2, section 9.3)."""
    (svg,) = page.xpath("//*[local-name()='svg']")
    width, height = (int(number) for number in (svg.get("viewbox") or svg.get("viewBox")).split()[2:])
    dots = np.full((height, width), 255, np.uint8)
    (path,) = svg.xpath(".//*[local-name()='path'][@stroke]/@d")
    x = y = 0.0
    for command, first, second in re.findall(r"([Mmh])(-?[\d.]+)(?:[ ,]?(-?[\d.]+))?", path):
        if command == "h":
            dots[int(y), int(x) : int(x + float(first))] = 0
            x += float(first)
        else:
            x, y = (float(first), float(second)) if command == "M" else (x + float(first), y + float(second))
    return np.kron(dots, np.ones((8, 8), np.uint8))


@pytest.mark.parametrize("moment", MOMENTS)
def test_every_poster_has_the_essentials_and_its_code_leads_to_the_notice(
    demo_bulletin_at: Callable[[str], Bulletin], moment: str
) -> None:
    bulletin = demo_bulletin_at(moment)
    addresses = short_addresses(bulletin)
    for notice in bulletin.notices:
        page = _page(notice, bulletin)
        said = _text(page)
        for essential in ("Quillhaven Golf Club", notice.headline, notice.short_answer):
            assert essential in said
        assert addresses[notice.id].removeprefix("https://") in said
        assert f"how it stood at {bulletin.voice.moment(bulletin.as_of)} 2027." in said
        assert [code.text for code in zxingcpp.read_barcodes(_drawn(page))] == [addresses[notice.id]]
        assert not page.xpath("//script | //style | //*[@style]")


def test_the_words_of_a_label_stand_there_whole_with_their_caution(demo_bulletin: Bulletin) -> None:
    said = _text(_page(_notice(demo_bulletin, "greens-leaf-disease-2027"), demo_bulletin))
    assert LABEL in said
    assert "taken down when it is dry." in said
    assert "Follow the signs, the product label and local rules" in said


def test_the_label_stays_when_everything_else_is_long(demo_bulletin: Bulletin) -> None:
    labels = [
        f"The label says: {'keep off the grass until it is dry ' * 6}and read part {number}." for number in "1234567"
    ]
    notice = _with_labels(_notice(demo_bulletin, "greens-renovation-2027"), *labels)
    notice = replace(notice, own_words="\n\n".join([notice.before_the_work] * 9), headline=f"{notice.headline} " * 4)
    chosen = poster_of(notice, demo_bulletin)
    assert chosen.label == tuple(labels)
    assert (chosen.own_words, len(chosen.cautions) > 0) == ((), True)
    assert chosen.scale < 100
    said = _text(_page(notice, demo_bulletin))
    assert all(label in said for label in labels)


def test_what_falls_away_first_is_the_managers_then_the_longest_row_then_the_last_caution(
    demo_bulletin: Bulletin, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The order of the module's rule, seen by refusing one choice after the other."""
    seen: list[Poster] = []

    def refuse(choice: Poster, *_: object) -> bool:
        seen.append(choice)
        return False

    monkeypatch.setattr(poster, "_fits", refuse)
    notice = _notice(demo_bulletin, "greens-renovation-2027")
    poster_of(replace(notice, own_words=notice.before_the_work), demo_bulletin)
    counts = [(len(one.own_words), len(one.rows), len(one.cautions)) for one in seen if one.scale == 100]
    own, rows, cautions = counts[0]
    assert (own, rows) == (2, 4)  # "Most putts roll true" and "Back to normal" stand in the short answer
    assert cautions > 3
    expected = [(left, 4, cautions) for left in (2, 1, 0)]
    expected += [(0, 3, left) for left in range(cautions, 1, -1)]
    assert counts[: len(expected)] == expected
    assert counts[len(expected) :] == [(0, 2, 2), (0, 1, 2), (0, 1, 1), (0, 0, 1)]
    first, fourth = seen[0], seen[3]
    (gone,) = set(first.rows) - set(fourth.rows)
    assert len(" ".join(gone)) == max(len(" ".join(row)) for row in first.rows)
    assert list(dict.fromkeys(one.scale for one in seen)) == list(SCALES)  # then anew in smaller type
    assert [replace(one, scale=100) for one in seen if one.scale == 92] == seen[: len(counts)]


def test_lines_on_today_stand_longest_the_reopening_to_the_last(
    demo_bulletin_at: Callable[[str], Bulletin], monkeypatch: pytest.MonkeyPatch
) -> None:
    seen: list[list[str]] = []
    monkeypatch.setattr(poster, "_fits", lambda one, *_: seen.append([name for name, _ in one.rows]))
    bulletin = demo_bulletin_at("2027-08-25 12:00")
    poster_of(_notice(bulletin, "greens-renovation-2027"), bulletin)
    first, half, then, last = "Done so far", "Half done", "Still to do", "Open again: green 12"
    assert seen[0] == [
        first, half, then, last, "Where", "On the day", "When work goes on", "Meanwhile", "Why it is held up",
        "Work finished: greens 13 to 18", "The days after", "Most putts roll true", "Aeration holes healed", "After that",
    ]  # fmt: skip
    shorter = [names for number, names in enumerate(seen) if number and len(names) < len(seen[number - 1])]
    today = [first, half, then, last]
    assert shorter[-5:] == [[*today, "Where"], *(today[number:] for number in range(4))]


def test_opening_words_are_left_out_once_the_work_is_done(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    for moment, is_there in (("2027-08-25 12:00", True), ("2027-09-14 09:30", False), ("2027-12-06 08:00", False)):
        bulletin = demo_bulletin_at(moment)
        notice = _notice(bulletin, "greens-renovation-2027")
        assert "looks forward to this week" in (notice.own_words if is_there else notice.before_the_work)
        assert bool(poster._fullest(notice, bulletin).own_words) is is_there


@pytest.mark.parametrize(
    ("moment", "name", "places"),
    [
        pytest.param("2027-09-14 09:30", "greens-leaf-disease-2027", ["4, 11 and 16"], id="beside a long label"),
        pytest.param("2027-08-25 12:00", "bunkers-resanding-2027",
                     ["left greenside bunker on the 4th", "right greenside bunker on the 4th", "bunker on the 7th",
                      "bunker on the 11th", "left greenside bunker on the 17th", "right greenside bunker on the 17th"],
                     id="each by its name"),
        pytest.param("2027-08-25 12:00", "greens-renovation-2027", ["greens 12 to 18", "greens 13 to 18", "green 12"], id="in another line"),
    ],
)  # fmt: skip
def test_a_poster_says_where(
    demo_bulletin_at: Callable[[str], Bulletin], moment: str, name: str, places: list[str]
) -> None:
    bulletin = demo_bulletin_at(moment)
    said = _text(_page(_notice(bulletin, name), bulletin)).casefold()
    assert all(place.casefold() in said for place in places)


def test_where_is_not_said_twice_and_a_very_long_list_is_left_to_the_notice(demo_bulletin: Bulletin) -> None:
    notice = _notice(demo_bulletin, "path-10-2027")
    said = replace(notice, headline="Work beside green 12: since 5 May")
    for places, is_there in (("green 12",), False), (("green 1",), True), (("a bunker of many words",) * 13, False):
        assert bool(poster._fullest(replace(said, places=places), demo_bulletin).where) is is_there


def test_a_hostile_title_does_no_harm_and_comes_through(demo_bulletin: Bulletin) -> None:
    hostile = "<script>alert(1)</script> & \"quoted\" 'too' 🏌️ ירוק"
    page = _page(replace(demo_bulletin.notices[0], headline=hostile), demo_bulletin)
    assert not page.xpath("//script")
    assert page.xpath("//h1")[0].text == hostile


def test_a_title_from_right_to_left_turns_nothing_around_it(demo_bulletin: Bulletin) -> None:
    """The heading goes by our words, since dir="auto" passes over what stands in a bdi (HTML, the dir attribute)."""
    typed, headline = "חול 2027", "חול 2027, greens 1 to 18: planned for 23 to 25 August"
    notice = replace(_notice(demo_bulletin, "greens-light-sanding-2027"), title=typed, headline=headline)
    (heading,) = _page(notice, demo_bulletin).xpath("//h1[@dir='auto']")
    assert heading.xpath("bdi/text()") == [typed]
    assert heading.text_content() == headline


def test_a_title_with_a_word_longer_than_a_line_is_smaller_and_the_rest_is_not(demo_bulletin: Bulletin) -> None:
    long = replace(_notice(demo_bulletin, "path-10-2027"), headline="Bewässerungsleitungs" * 4)
    chosen = poster_of(long, demo_bulletin)
    assert (chosen.headline_pt, chosen.scale) == (9, 100)
    assert headline_size("Bewässerungsleitung") > 26


def test_the_paper_of_a_pdf_is_that_of_the_clubs_language(demo_bulletin: Bulletin) -> None:
    notice = _notice(demo_bulletin, "path-10-2027")
    american = replace(demo_bulletin, club=replace(demo_bulletin.club, language="en-US", catalogue=built_in("en-US")))
    assert _page(notice, demo_bulletin).get("data-paper") == "A4"
    assert _page(notice, american).get("data-paper") == "letter"


def test_the_style_sheet_has_the_sizes_that_were_reckoned_with() -> None:
    for style, selector in (
        (poster._CLUB, ".sc-club"), (poster._ANSWER, ".sc-short"), (poster._ROW, ".sc-days li"), (poster._OWN, ".sc-own p"),
        (poster._HEADING, ".sc-care h2"), (poster._CARE, ".sc-care li"), (poster._FOOT, ".sc-told p"),
        (poster._ADDRESS, ".sc-told p.sc-address"), (poster._SOURCE, ".sc-source"),
    ):  # fmt: skip
        (rule,) = re.findall(rf"^{re.escape(selector)} \{{(.*)\}}", CSS, re.MULTILINE)
        assert f"font-size: {style.size_pt / 10:.1f}rem; line-height: {style.line:g};" in rule, selector
        assert ("font-weight: bold" in rule) or selector == ".sc-care h2" or not style.bold
    for scale in SCALES:
        assert f"html.sc-scale-{scale} {{ font-size: {scale / 10:g}pt; }}" in CSS
    for size in (44, 38, 32, 26, 20, 16, 12, 9):
        assert f".sc-headline-{size} {{ font-size: {size / 10}rem; }}" in CSS


@given(WORDS, st.sampled_from(SCALES[:8]))
def test_what_fits_fits_in_smaller_type_too_and_without_its_last_word(text: str, scale: int) -> None:
    style = Style(size_pt=40)
    if fits([Block(text=text, style=style)], scale, 400.0):
        assert fits([Block(text=text, style=style)], SCALES[SCALES.index(scale) + 1], 400.0)
        assert fits([Block(text=text.rpartition(" ")[0], style=style)], scale, 400.0)


def test_lines_are_counted_as_by_hand() -> None:
    """186 mm are 527 pt; at 50 pt an "n" is 28.5 pt: 18 of them fill a line, and 4 words of 4 do with their blanks."""
    style = Style(size_pt=50)
    assert poster_fit._lines("n" * 18, style, 1.0) == 1
    assert poster_fit._lines("n" * 19, style, 1.0) is None
    assert poster_fit._lines("nnnn " * 4, style, 1.0) == 1
    assert poster_fit._lines("nnnn " * 5, style, 1.0) == 2
