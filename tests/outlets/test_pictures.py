"""Pictures as a browser gets them: shapes in their places, readable letters, colours that can be told apart."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from lxml import etree, html

from swardcast.compose import Bulletin, Pictures, compose_pictures
from swardcast.language.voice import Voice
from swardcast.notices.as_told import NoticesAsTold
from swardcast.notices.pictures import AsOf, FixtureMark, KeyRow, Sign, Table, Tick, Told
from swardcast.notices.promises_picture import DayMark, PromiseBar, PromisesPicture
from swardcast.notices.season_bars import SeasonBars, SeasonRow
from swardcast.outlets.feed_content import in_full
from swardcast.outlets.pictures.canvas import _PLAIN, LETTERS, LINE, WIDTH, lanes, shortened
from swardcast.outlets.pictures.figure import figure_html
from swardcast.outlets.pictures.growth import draw_growth
from swardcast.outlets.pictures.healing import draw_healing
from swardcast.outlets.pictures.promises import draw_promises
from swardcast.outlets.pictures.season import draw_season
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from tests.conftest import ROOT
from tests.outlets.contrast import contrast

SVG = "{http://www.w3.org/2000/svg}"
CSS = (ROOT / "site_src/theme/static/css/swardcast.css").read_text(encoding="utf-8")
PAGES_CSS = (ROOT / "site_src/theme/static/css/pages.css").read_text(encoding="utf-8")
LOOKS = {f"sc-pic__{look}" for look in _PLAIN}
NARROWEST_PX = 284  # of a picture on a screen of 320 px: the sheet's margins are 18 px each


@pytest.fixture(scope="module")
def pictures(demo_bulletin: Bulletin, demo_records: ClubRecords) -> Pictures:
    return compose_pictures(demo_bulletin, demo_records, WeatherBook(demo_records.club, demo_records.weather))


@pytest.fixture(scope="module")
def season(demo_bulletin: Bulletin) -> SeasonBars:
    """A year of 360 days on 348 units, so that 30 days are 29 units."""
    first = date(2027, 1, 1)

    def day(number: int) -> date:
        return first + timedelta(days=number)

    told = Told(
        name="season", title="Work & healing", description="Two jobs.", caption=("A bar is a job.",),
        key=(KeyRow(sign=Sign.WORK, words="Work"), KeyRow(sign=Sign.HEALING, words="Healing")),
        tables=(Table(caption="Jobs", columns=("Work", "Normal"), rows=(("Tining", "April"),)),),
    )  # fmt: skip
    return SeasonBars(
        told=told, first=first, last=day(348), ticks=(Tick(day=day(0), words="1 Jan"), Tick(day=day(174), words="24 Jun")),
        rows=(
            SeasonRow(
                name="Tining", work=((day(20), day(29)), (day(40), day(49))), waits=((day(30), day(39)),),
                heals_from=day(50), likely=day(80), allow_until=day(100),
            ),
            SeasonRow(
                name="A feed <b>", work=((day(200), day(200)),), heals_from=None, likely=None, allow_until=None,
                words="called off",
            ),
        ),
        fixtures=tuple(FixtureMark(number=str(n), first_day=day(60 + n), last_day=day(60 + n)) for n in range(1, 10)),
        as_of=AsOf(day=day(120), words="as of 1 May"),
    )  # fmt: skip


@pytest.fixture(scope="module")
def drawn(pictures: Pictures, season: SeasonBars) -> dict[str, str]:
    assert pictures.growth is not None
    assert pictures.promises is not None
    return {
        **{name: draw_healing(picture) for name, picture in pictures.healing.items()},
        "growth": draw_growth(pictures.growth),
        "promises": draw_promises(pictures.promises),
        "season": draw_season(season),
    }


def _all(svg: str, name: str, look: str = "") -> list[Any]:
    return [
        one for one in etree.fromstring(svg).iter(f"{SVG}{name}") if not look or one.get("class") == f"sc-pic__{look}"
    ]


def test_each_has_a_title_and_a_description_that_its_root_names(drawn: dict[str, str]) -> None:
    for name, svg in drawn.items():
        root = etree.fromstring(svg)
        assert root.get("role") == "img"
        told = {one.get("id"): one.text for one in root.iter(f"{SVG}title", f"{SVG}desc")}
        assert told[root.get("aria-labelledby")], name
        assert told[root.get("aria-describedby")], name


def test_letters_are_12_px_at_least_on_the_narrowest_screen_and_none_leaves_the_picture(drawn: dict[str, str]) -> None:
    """Letters are at least half as wide as high in any font; so much must fit."""
    for name, svg in drawn.items():
        width, height = map(float, etree.fromstring(svg).get("viewBox").split()[2:])
        assert width == WIDTH
        for text in _all(svg, "text"):
            size, x, y = (float(text.get(key)) for key in ("font-size", "x", "y"))
            assert size * NARROWEST_PX / width >= 12
            wide = len(text.text) * size / 2
            before = {"start": 0.0, "middle": wide / 2, "end": wide}[text.get("text-anchor")]
            assert x - before >= 0, (name, text.text)
            assert x - before + wide <= width, (name, text.text)
            assert LETTERS / 2 < y <= height, (name, text.text)


def test_nothing_in_it_is_a_style_or_a_script_and_all_shapes_have_a_look(drawn: dict[str, str]) -> None:
    for svg in drawn.values():
        for one in etree.fromstring(svg).iter():
            assert one.tag not in (f"{SVG}style", f"{SVG}script")
            assert not [name for name in one.attrib if name == "style" or name.startswith("on")]
            if one.tag in (f"{SVG}path", f"{SVG}rect", f"{SVG}circle", f"{SVG}text"):
                assert one.get("fill"), "a theme without our sheet would paint it black"
                assert one.get("class") in LOOKS


def test_places_have_one_decimal_and_come_out_the_same(drawn: dict[str, str], pictures: Pictures) -> None:
    for name, picture in pictures.healing.items():
        assert draw_healing(picture) == drawn[name]
        for path in _all(drawn[name], "path"):
            assert all(len(place) <= 1 for place in re.findall(r"\.(\d+)", path.get("d")))


def test_the_curve_crosses_the_level_line_where_the_day_of_the_notice_is(
    pictures: Pictures, drawn: dict[str, str]
) -> None:
    """Holes closed likely on 16 September, read off the drawing: the first corner of the line on the level or below."""
    picture, svg = pictures.healing["greens-renovation-2027"], drawn["greens-renovation-2027"]
    (line,) = _all(svg, "path", "line")
    levels = [float(path.get("d").split(",")[1].split(" ")[0]) for path in _all(svg, "path", "level")]
    corners = [tuple(map(float, one.split(","))) for one in re.findall(r"[\d.]+,[\d.]+", line.get("d"))]
    below = next(place for place, (_, y) in enumerate(corners) if y >= max(levels))  # y goes down
    assert picture.curve[0].day + timedelta(days=below) == date(2027, 9, 16)


def test_a_season_stands_in_its_places(season: SeasonBars) -> None:
    """One day is one unit; healing is shaded from the end of work to the likely day, open until the day to allow for."""
    svg = draw_season(season)

    def boxes(look: str) -> list[tuple[float, float]]:
        return [(float(box.get("x")), float(box.get("width"))) for box in _all(svg, "rect", look)]

    assert boxes("work") == [(26.0, 10.0), (46.0, 10.0), (206.0, 2.5)]
    (waits,) = _all(svg, "path", "whisker")
    assert re.findall(r"([\d.]+),", waits.get("d")) == ["36.0", "46.0"]
    assert boxes("range") == [(56.0, 30.0)]
    assert boxes("open") == [(86.0, 20.0)]
    (as_of,) = _all(svg, "path", "as-of")
    assert as_of.get("d").startswith("M126.0,")
    texts = [text.text for text in _all(svg, "text")]
    assert {"Tining", "A feed <b>", "called off", "as of 1 May", *"123456789"} <= set(texts)


def test_healing_told_in_months_alone_is_open_to_its_last_month_or_leads_past_the_edge(season: SeasonBars) -> None:
    """One day is one unit, from 6 on: the work of the first job ends on day 49, so the bar begins at 56."""
    last = season.first + timedelta(days=300)
    for until, boxes, arrows in ((last, [(56.0, 250.0)], 0), (season.last + timedelta(days=1), [], 1)):
        row = replace(season.rows[0], likely=None, allow_until=None, in_months_until=until)
        svg = draw_season(replace(season, rows=(row,)))
        assert [(float(box.get("x")), float(box.get("width"))) for box in _all(svg, "rect", "open")] == boxes
        assert [path.get("d").split()[2] for path in _all(svg, "path", "open")] == ["L354.0,54.0"] * arrows


def test_a_bar_that_goes_on_after_the_axis_ends_in_an_arrow_whatever_its_look(season: SeasonBars) -> None:
    for likely, boxes, arrows in (
        (day_after(season, 1), [], ["range"]),
        (day_after(season, -8), [(56.0, 290.0)], ["open"]),
    ):
        row = replace(season.rows[0], likely=likely, allow_until=day_after(season, 30))
        svg = draw_season(replace(season, rows=(row,)))
        assert [(float(box.get("x")), float(box.get("width"))) for box in _all(svg, "rect", "range")] == boxes
        drawn = [look for look in ("range", "open") for path in _all(svg, "path", look) if "L354.0," in path.get("d")]
        assert drawn == arrows


def day_after(season: SeasonBars, days: int) -> date:
    return season.last + timedelta(days=days)


def test_a_long_name_takes_two_lines_and_the_rows_below_make_room(season: SeasonBars) -> None:
    """Two jobs whose names begin alike cannot be told apart by their beginnings."""
    name = "Hollow tining, scarifying and sanding the practice green"
    long = replace(season, rows=(replace(season.rows[0], name=name), *season.rows[1:]))
    texts = [text.text for text in _all(draw_season(long), "text")]
    assert " ".join(texts[1:3]) == name
    heights = [float(etree.fromstring(draw_season(one)).get("viewBox").split()[3]) for one in (season, long)]
    assert heights[1] - heights[0] == LINE


def test_fixtures_near_each_other_take_lanes_of_their_own(season: SeasonBars) -> None:
    places = [
        (float(t.get("x")), float(t.get("y"))) for t in _all(draw_season(season), "text") if t.text in set("123456789")
    ]
    for place, (x, y) in enumerate(places):
        assert all(abs(x - other_x) >= 20 or abs(y - other_y) >= LETTERS for other_x, other_y in places[:place])
    assert lanes([0, 10, 40], 30) == [0, 1, 0]


def test_a_promise_that_was_not_kept_has_a_sign_and_a_word_of_its_own() -> None:
    told = Told(name="promises", title="t", description="d", caption=(), key=(), tables=())
    bars = (
        PromiseBar(title="Kept", early_days=-5, allow_until_days=5, came_days=2, is_inside=True, verdict="inside"),
        PromiseBar(title="Missed", early_days=-5, allow_until_days=5, came_days=9, is_inside=False, verdict="outside"),
    )
    marks = (DayMark(days=0, words="0"),)
    svg = draw_promises(
        PromisesPicture(told=told, bars=bars, first_days=-10, last_days=10, marks=marks, before="sooner", after="later")
    )
    assert len(_all(svg, "path", "inside")) == 1  # a diamond
    assert len(_all(svg, "path", "outside")) == 2  # a cross
    assert [text.text for text in _all(svg, "text")][:4] == ["Kept", "inside", "Missed", "outside"]
    ranges = [(float(box.get("x")), float(box.get("width"))) for box in _all(svg, "rect", "range")]
    assert len({*ranges}) == 1


@pytest.mark.parametrize(("words", "room", "cut"), [
    ("Tining", 100, "Tining"),
    ("Hollow tining, scarifying and sanding", 200, "Hollow tining,"),
    ("Unbreakable-beyond-all-measure", 60, "Unbre"),
])  # fmt: skip
def test_long_words_are_cut_at_a_blank(words: str, room: float, cut: str) -> None:
    told = shortened(words, room)
    assert told.rstrip("…") == cut.rstrip(",")
    assert told.endswith("…") is (told != words)


def test_words_are_escaped(season: SeasonBars, demo_bulletin: Bulletin) -> None:
    hostile = replace(season.told, title="<script>1</script>", caption=("<i>",), description="& <b>")
    page = str(figure_html(hostile, draw_season(replace(season, told=hostile)), demo_bulletin.voice))
    assert "<script>" not in page
    assert "<i>" not in page
    assert "&amp; &lt;b&gt;" in page


def _tokens(block: str) -> dict[str, str]:
    return dict(re.findall(r"--([a-z-]+): (#[0-9a-f]{3,6});", block))


def _themes() -> dict[str, dict[str, str]]:
    light, dark = (_tokens(one) for one in re.findall(r":root \{(.*?)\}", CSS, re.DOTALL)[:2])
    printed = " ".join(re.findall(r"@media print \{\s*:root \{(.*?)\}", CSS, re.DOTALL))
    paper = {
        name: f"#{''.join(2 * one for one in colour[1:])}" if len(colour) == 4 else colour
        for name, colour in _tokens(printed).items()
    }
    return {"light": light, "dark": {**light, **dark}, "print": {**light, **paper}}


def test_shapes_and_letters_can_be_told_from_the_paper() -> None:
    """3 to 1 for what must be seen (WCAG 2.2, 1.4.11) and 4.5 to 1 for letters (1.4.3), in light, dark and on paper.

    The pale grid only helps the eye: each of its lines has its figure beside it.
    """
    own = PAGES_CSS[PAGES_CSS.index("/* Pictures:") :]
    used: dict[str, set[str]] = {}
    for selectors, rule in re.findall(r"([^{}]+)\{([^{}]*)\}", own):
        for look in re.findall(r"\.sc-pic__([a-z-]+)", selectors):
            used.setdefault(look, set()).update(re.findall(r"(?:fill|stroke|color): var\(--([a-z]+)\)", rule))
    assert {"line", "edge", "range", "open", "work", "seen", "inside", "outside", "axis"} <= used.keys()
    assert {"as-of", "fixture"} == set(_PLAIN) - used.keys()  # in the ink of the page
    for name, theme in _themes().items():
        for look, colours in used.items():
            assert colours - theme.keys() <= {"link"}  # a club's own, where it stands elsewhere
            for colour in colours & theme.keys() - {"paper", "rule"}:
                assert contrast(theme[colour], theme["paper"]) >= 3, (name, look, colour)
        assert contrast(theme["ink"], theme["paper"]) >= 4.5


def test_only_the_sites_own_pages_have_pictures(demo_site: Path, demo_bulletin: Bulletin) -> None:
    """Not feeds, e-mails or posters, whose words of a notice stay as they are."""
    for page in demo_site.rglob("*"):
        if page.suffix in (".rss", ".atom", ".json") or page.name in ("email.html", "poster.html"):
            assert b"sc-pic" not in page.read_bytes(), page
    notices = NoticesAsTold(demo_bulletin.records, demo_bulletin.stories)
    assert all("sc-pic" not in in_full(item, demo_bulletin, notices) for item in demo_bulletin.items[:10])
    assert b"sc-pic__svg" in (demo_site / "notices/greens-renovation-2027/index.html").read_bytes()


def test_ids_are_unique_and_tables_say_what_their_headings_are_of(demo_site: Path) -> None:
    shown = 0
    for path in demo_site.rglob("*.html"):
        page = html.parse(path).getroot()
        ids = page.xpath("//@id")
        assert len(ids) == len(set(ids)), path
        for table in page.xpath("//*[@class='sc-pic']//table"):
            shown += 1
            assert table.xpath("caption")
            assert set(table.xpath(".//th/@scope")) == {"col", "row"}
            assert not table.xpath(".//th[not(@scope)]")
    assert shown > 15


def test_the_key_of_a_notice_explains_each_sign_once(pictures: Pictures, demo_bulletin: Bulletin) -> None:
    voice: Voice = demo_bulletin.voice
    picture = pictures.healing["greens-renovation-2027"]
    page = html.fromstring(str(figure_html(picture.told, draw_healing(picture), voice)))
    rows = page.xpath("//ul[@class='sc-pic__key']/li")
    assert len(rows) == len({row.text_content() for row in rows}) == 4 + 7  # work, seen twice, normal; seven fixtures
    assert all(row.xpath("svg/@aria-hidden") == ["true"] for row in rows)
