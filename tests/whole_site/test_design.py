"""The design as it is served: contrast, colour-blind eyes, signs, weight, the frame of each page, what a script does."""

from __future__ import annotations

import re
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest
from coloraide import Color
from lxml import etree, html
from PIL import ImageChops

from swardcast.colours import contrast_ratio
from swardcast.outlets.preview_sign import SIGN_COLOURS, sign_mask
from swardcast.records.plan import Play
from tests.conftest import ROOT

CSS = (ROOT / "site_src/theme/static/css/swardcast.css").read_text(encoding="utf-8")
WORDS = {
    "open": "open", "open with care": "open with care", "temporary green": "temporary green", "closed": "closed",
    "not known": "not know",
}  # fmt: skip
"""What has to stand beside each sign; "we do not know" and "not known" both say it."""
STATES = ("open", "care", "temporary", "closed", "unknown")
FIRST_VIEW = (
    "index.html", "club.css", "badge.svg", "theme/css/swardcast.css", "theme/js/page.js", "theme/signs/mark.svg",
)  # fmt: skip
LARGEST_FIRST_VIEW_BYTES = 50_000
LARGEST_WORKER_BYTES = 3_000
SITEMAP = {"s": "http://www.sitemaps.org/schemas/sitemap/0.9"}


def _tokens(block: str) -> dict[str, str]:
    return dict(re.findall(r"--([a-z]+): (#[0-9a-f]{6});", block))


@pytest.fixture(scope="module")
def themes() -> dict[str, dict[str, str]]:
    """The colours of the theme by day and by night."""
    day, night = re.findall(r":root \{(.*?)\n *\}", CSS, flags=re.DOTALL)[:2]
    return {"day": _tokens(day), "night": _tokens(night)}


@pytest.mark.parametrize("theme", ["day", "night"])
def test_words_can_be_read_on_paper(themes: dict[str, dict[str, str]], theme: str) -> None:
    """4.5 : 1, WCAG 2.2 (W3C, 2023), 1.4.3; words of states are written in the states' colours."""
    colours = themes[theme]
    for name in ("ink", "faint", *STATES):
        assert contrast_ratio(colours[name], colours["paper"]) >= 4.5, name


def _as_seen_by(eyes: str, method: str, colour: str) -> str:
    return Color(colour).filter(eyes, method=method, out_space="srgb").clip().to_string(hex=True)


@pytest.mark.parametrize("theme", ["day", "night"])
@pytest.mark.parametrize("eyes", ["protan", "deutan", "tritan"])
@pytest.mark.parametrize("method", ["brettel", "vienot", "machado"])
def test_signs_stand_out_from_paper_to_colour_blind_eyes(
    themes: dict[str, dict[str, str]], theme: str, eyes: str, method: str
) -> None:
    """3 : 1 (WCAG 2.2, 1.4.11) after simulating that one kind of cone is missing altogether.

    The simulations: Brettel, Viénot and Mollon 1997; Viénot, Brettel and Mollon 1999; Machado, Oliveira and Fernandes
    2009, as the library coloraide has them. It proves that a sign is seen, on a screen as modelled. That signs are told
    from each other rests on their shapes and words (below, and in tests/browser/test_signs.py), never on this.
    """
    paper = _as_seen_by(eyes, method, themes[theme]["paper"])
    for state in STATES:
        assert contrast_ratio(_as_seen_by(eyes, method, themes[theme][state]), paper) >= 3, state


def test_a_colour_that_fades_for_colour_blind_eyes_would_be_found(themes: dict[str, dict[str, str]]) -> None:
    paper = themes["day"]["paper"]
    assert contrast_ratio("#ff4040", paper) >= 3
    assert contrast_ratio(_as_seen_by("deutan", "vienot", "#ff4040"), _as_seen_by("deutan", "vienot", paper)) < 3


def test_signs_differ_in_shape_without_any_colour_at_the_size_of_the_hole_grid() -> None:
    """As preview pictures draw them, from the same geometry as the theme's: a quarter of the ink is elsewhere."""
    masks = {play: sign_mask(play, 24) for play in SIGN_COLOURS}
    assert len(masks) == len(Play) == 5
    for one, other in combinations(masks.values(), 2):
        differs = sum(ImageChops.difference(one, other).tobytes())
        assert differs >= 0.25 * max(sum(one.tobytes()), sum(other.tobytes()))


def test_the_first_view_of_the_status_is_light(demo_site: Path) -> None:
    asked = {"index.html"}
    root = html.parse(demo_site / "index.html").getroot()
    found = root.xpath("//link[@rel='stylesheet' or @rel='icon']/@href | //script/@src | //img/@src")
    asked |= {address.removeprefix("./") for address in found}
    assert asked <= set(FIRST_VIEW)
    assert sum((demo_site / name).stat().st_size for name in FIRST_VIEW) < LARGEST_FIRST_VIEW_BYTES
    assert "url(" not in CSS
    assert "@import" not in CSS


def test_what_a_phone_keeps_is_there_and_its_worker_is_small(demo_site: Path) -> None:
    worker = (demo_site / "offline.js").read_text(encoding="utf-8")
    assert len(worker.encode()) < LARGEST_WORKER_BYTES
    kept = re.findall(r'"([^"]+)"', re.search(r"FILES = \[(.*)\]", worker)[1])  # type: ignore[index] # or it fails
    assert kept == sorted(kept, key=lambda name: name.replace("./", "index.html"))
    assert set(kept) == {*FIRST_VIEW, "status.json", "./"} - {"index.html"}
    for name in kept:
        assert (demo_site / name.replace("./", "index.html")).is_file()
    assert "://" not in worker  # it knows no other host


def _pages(site: Path) -> list[Path]:
    """Pages of the theme; short addresses, posters and e-mails have frames of their own."""
    return [page for page in sorted(site.rglob("index.html")) if page.parent.parent.name != "n"] + [site / "404.html"]


def test_each_page_has_a_title_a_description_one_heading_and_its_frame(demo_site: Path) -> None:
    titles: dict[str, Path] = {}
    for page in _pages(demo_site):
        root = html.parse(page).getroot()
        title = root.findtext(".//title")
        assert title.endswith(": Quillhaven Golf Club"), page
        assert titles.setdefault(title, page) == page
        (description,) = root.xpath("//meta[@name='description']/@content")
        assert len(description) > 20, page
        assert len(root.xpath("//h1[not(ancestor::template)]")) == 1, page
        assert root.xpath("//main[@id='content']"), page
        (badge,) = root.xpath("//header//img")
        assert (badge.get("alt"), badge.get("width"), badge.get("height")) == ("", "44", "44")
        links = root.xpath("//nav[@aria-label and @class='sc-nav']//a")
        assert len(links) == 9, page
        assert len(root.xpath("//nav[@class='sc-nav']/ul/li/a")) == 3  # the others are folded
        assert len(root.xpath("//link[@rel='canonical']")) == (page.name != "404.html"), page


def test_the_page_for_a_missing_address_works_at_any_depth(demo_site: Path) -> None:
    root = html.parse(demo_site / "404.html").getroot()
    inside = [link for _, _, link, _ in root.iterlinks() if not link.startswith(("mailto:", "tel:", "#"))]
    assert inside
    for link in inside:
        assert link.startswith("/")
        assert (demo_site / link[1:]).is_file(), link
    assert {"/index.html", "/notices/index.html"} <= set(root.xpath("//main//a/@href"))
    assert root.xpath("//meta[@name='robots']/@content") == ["noindex"]


def test_the_sitemap_names_every_page_once_with_days_of_the_records(demo_site: Path) -> None:
    """sitemaps.org, protocol 0.9; robots.txt as in RFC 9309."""
    site = "https://quillhaven.example/"
    root = etree.parse(demo_site / "sitemap.xml").getroot()
    named = root.xpath("//s:loc/text()", namespaces=SITEMAP)
    pages = {site + page.relative_to(demo_site).as_posix().removesuffix("index.html") for page in _pages(demo_site)}
    assert len(named) == len(set(named))
    assert set(named) == pages - {f"{site}404.html"}
    days = {
        url.findtext("s:loc", namespaces=SITEMAP): url.findtext("s:lastmod", namespaces=SITEMAP)
        for url in root.xpath("//s:url", namespaces=SITEMAP)
    }
    assert days[site] == "2027-09-14"
    assert days[f"{site}notices/bunkers-resanding-2027/"] == "2027-09-13"  # bunker 11 was started
    assert max(day for day in days.values() if day) <= "2027-09-14"
    assert (demo_site / "robots.txt").read_text(encoding="utf-8").endswith(f"Sitemap: {site}sitemap.xml\n")


def test_what_the_page_says_later_stands_in_it_already(demo_site: Path) -> None:
    """The script knows no words: at midnight it shows these."""
    root = html.parse(demo_site / "index.html").getroot()
    midnight = "2027-09-15T00:00:00+01:00"
    (answer,) = root.xpath("//div[@class='sc-answer']")
    assert answer.get("data-until") == midnight
    (later,) = answer.xpath("./template")
    assert later.xpath(".//svg/@class") == ["sc-sign sc-sign--not-known"]
    said = " ".join(later.text_content().split())
    assert said.startswith(
        "We do not know yet how the course is today. This was true at 6:50am on Tuesday 14 September"
    )
    assert later.xpath(".//@data-since") == ["2027-09-14T06:50:00+01:00"]
    lines = root.xpath("//li[@class='sc-line']")
    assert len(lines) == 5
    for line in lines:
        assert line.xpath(".//@data-until[not(parent::p)]") == [midnight, midnight]
        assert "ot known since Tuesday 14 September" in " ".join(line.xpath("string(.//strong/template)").split())
    gone = [p.text for line in lines for p in line.xpath("./p[@data-until]") if p.get("data-until") == midnight]
    assert gone == ["The hole is played from the forward markers."] * 2  # said of that day alone
    assert not [one for one in root.xpath("//*[@data-until]") if len(one.xpath("./template")) > 1]


def test_scripts_ask_no_other_host_and_write_no_markup(demo_site: Path) -> None:
    for name in ("theme/js/page.js", "offline.js", "status.js"):
        script = (demo_site / name).read_text(encoding="utf-8")
        code = re.sub(r"/\*.*?\*/|(?<!:)//[^\n]*", "", script, flags=re.DOTALL)
        assert "://" not in code
        assert not re.search(r"innerHTML|outerHTML|insertAdjacentHTML|document\.write|eval\(|\.style\b", code), name


@pytest.mark.parametrize(
    "selector", [":focus-visible", "prefers-reduced-motion", "prefers-contrast", "forced-colors", "@media print"]
)
def test_the_style_sheet_thinks_of(selector: str) -> None:
    assert selector in CSS


def _holes(site: Path) -> Any:
    return html.parse(site / "index.html").getroot().xpath("//ol[@class='sc-card']/li")


def test_the_plan_of_the_holes_is_a_list_that_is_read_out(demo_site: Path) -> None:
    said = [" ".join(hole.text_content().split()) for hole in _holes(demo_site)]
    assert len(said) == 18
    assert said[6] == "Hole 7: green open with care"
    assert said[4] == "Hole 5: green open with care and tee closed, so played from other markers"


def test_each_sign_has_the_word_of_its_state_beside_it(demo_site: Path) -> None:
    """Nobody has to know a sign, nor see a colour: its word is in the same row, or in the key to the plan of the holes."""
    root = html.parse(demo_site / "index.html").getroot()
    signs = root.xpath("//svg[starts-with(@class, 'sc-sign ')]")
    states = {sign.get("class").split("--")[1] for sign in signs}
    assert states >= {"open-with-care", "closed", "not-known"}
    for sign in signs:
        (row, *_) = sign.xpath("ancestor::*[self::li or self::template or @class='sc-answer'][1]")
        if row.tag == "template" and row.getparent().tag == "span":
            row = row.xpath("ancestor::li")[
                0
            ]  # what stands there once nobody knows has its word in the row's other template
        word = sign.get("class").split("--")[1].replace("-", " ")
        assert WORDS[word] in row.text_content().lower(), (word, row.text_content())
    keys = {tuple(sign.get("class") for sign in row.xpath(".//svg")) for row in root.xpath("//ul[@class='sc-key']/li")}
    assert {tuple(sign.get("class") for sign in hole.xpath(".//svg")) for hole in _holes(demo_site)} <= keys


def test_a_hole_in_play_where_something_is_closed_carries_that_sign_too(demo_site: Path) -> None:
    """On 14 September the 5th and the 13th tee and a bunker on the 11th are closed, by the morning entry."""
    shown = {
        number: [sign.get("class").split("--")[1] for sign in hole.xpath(".//svg")]
        for number, hole in enumerate(_holes(demo_site), start=1)
    }
    marked = {number for number, signs in shown.items() if signs == ["open-with-care", "closed"]}
    assert marked == {5, 11, 13}
    assert all(signs == ["open-with-care"] for number, signs in shown.items() if number not in marked)
