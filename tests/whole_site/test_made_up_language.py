"""The demo's whole site in a made-up language: no English phrase of ours is left, in pages, titles and the feed."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any

import feedparser
import pytest
import vobject
from babel import Locale
from lxml import html

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.language.house_phrases import with_house_phrases
from swardcast.outlets.html import (
    item_html,
    notice_html,
    record_year_html,
    status_html,
    sums_html,
    track_record_html,
)
from swardcast.outlets.pictures.canvas import LETTER_WIDTH, WIDTH, broken, shortened
from swardcast.outlets.preview import home_card, notice_card
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from swardcast.turf.published_recoveries import PUBLISHED_RECOVERIES
from tests.conftest import DEMO, ROOT, built_once
from tests.language.made_up import LOCALE, MARKS, TAG, made_up_page, made_up_phrases
from tests.whole_site.typed import TypedWords, texts_of_html, typed_in

PAGES = ROOT / "site_src" / "content" / "pages" / "en-GB"
ENGLISH = re.compile(r"[A-Za-z]+")
ADDRESS = re.compile(r"https?://\S+")
SAID_IN_STATUS = {
    "sentence", "sentence_once_over", "name", "words", "where", "why", "also", "entered", "headline", "short_answer",
}  # fmt: skip
ALLOWED = {
    "exp": "the exponential function in the formula of what is left",
    "x": "times, in that formula",
    "G": "growth days, in that formula",
}


@pytest.fixture(scope="module")
def site(
    tmp_path_factory: pytest.TempPathFactory, run_swardcast: Callable[..., subprocess.CompletedProcess[str]]
) -> Path:
    """The demo in the made-up language, built once by the first of the processes that asks."""
    folder = tmp_path_factory.mktemp("made-up")

    def build(output: Path) -> str:
        club = _in_the_made_up_language(folder)
        done = run_swardcast("build", "--club", str(club), "--output", str(output), "--as-of", "2027-09-14 09:30")
        return "" if done.returncode == 0 else done.stderr or "it said nothing"

    return built_once(tmp_path_factory, "made-up-site", build)


def _in_the_made_up_language(folder: Path) -> Path:
    club = Path(shutil.copytree(DEMO, folder / "club"))
    told = club / "club.yaml"
    told.write_text(told.read_text(encoding="utf-8").replace("language: en-GB", f"language: {TAG}"), encoding="utf-8")
    for name in ("phrases", "pages"):
        (club / name).mkdir()
    (club / "phrases" / "made-up.ftl").write_text(made_up_phrases(), encoding="utf-8")
    for page in PAGES.iterdir():
        (club / "pages" / page.name).write_text(made_up_page(page.read_text(encoding="utf-8")), encoding="utf-8")
    return club


@pytest.fixture(scope="module")
def bulletin_at(demo_records: ClubRecords) -> Callable[[str], Bulletin]:
    """The demo in the made-up language at a moment, without a build; what was worked out once is remembered."""
    catalogue = with_house_phrases(TAG, {"phrases/made-up.ftl": made_up_phrases()})
    club = replace(demo_records.club, language=TAG, catalogue=catalogue)
    records, book = replace(demo_records, club=club), WeatherBook(club, demo_records.weather)

    def at(moment: str) -> Bulletin:
        return compose_bulletin(records, datetime.fromisoformat(moment).replace(tzinfo=club.time_zone), book)

    return at


@pytest.fixture(scope="module")
def typed(demo_records: ClubRecords) -> TypedWords:
    """What the demo typed, the published recoveries' names and sources, and the calendar's own names of days."""
    days = Locale.parse(LOCALE)
    names = [
        name
        for kinds in (days.days, days.months)
        for widths in kinds.values()
        for wide in ("wide", "abbreviated")
        for name in widths[wide].values()
    ]
    rooms = [WIDTH - letters * LETTER_WIDTH for letters in range(20)]  # in a picture, where words may stand beside
    cut = [shortened(job.title, room).rstrip("…") for job in demo_records.jobs.values() for room in rooms]
    return TypedWords([*typed_in(demo_records), *typed_in(PUBLISHED_RECOVERIES), *names, *cut])


def _english(texts: Iterator[str], typed: TypedWords) -> dict[str, list[str]]:
    left: dict[str, list[str]] = {}
    for text in texts:
        words = [word for word in ENGLISH.findall(typed.taken_out_of(ADDRESS.sub(" ", text))) if word not in ALLOWED]
        if words:
            left[text] = words
    return left


@pytest.fixture(scope="module")
def broken_titles(demo_records: ClubRecords) -> frozenset[str]:
    """Lines of the titles that a picture breaks in two: only a line as a whole is a title's, not a word of it."""
    rooms = [WIDTH - letters * LETTER_WIDTH for letters in range(20)]
    titles = [job.title for job in demo_records.jobs.values()]
    return frozenset(line for title in titles for room in rooms for line in broken(title, room, WIDTH))


def test_no_page_says_an_english_phrase(site: Path, typed: TypedWords, broken_titles: frozenset[str]) -> None:
    pages = sorted(site.rglob("*.html"))
    assert len(pages) > 20
    left: dict[str, list[str]] = {}
    for page in pages:
        root = html.parse(page).getroot()
        assert root.get("lang") == TAG
        for message in root.xpath("//*[@class='sc-copy' and contains(@id, '-message')]"):
            message.drop_tree()  # in the letters of phones, which have none of the made-up ones
        for link in root.xpath("//*[@class='sc-address']/a"):  # a poster says its address
            assert link.get("href") == f"https://{link.text}"
            link.drop_tree()
        for link in root.xpath("//*[@class='sc-copy' and contains(@id, '-address')]/a"):  # with a place to break
            assert link.get("href") == link.text_content()
            link.drop_tree()
        for line in root.xpath("//*[name()='svg']/*[name()='text']"):
            if line.text in broken_titles:
                line.drop_tree()
        left |= _english(texts_of_html(root), typed)
    assert left == {}


@pytest.mark.parametrize("name", ["status.rss", "status.atom", "status/1.rss", "greens.atom"])
def test_no_feed_says_an_english_phrase(site: Path, typed: TypedWords, name: str) -> None:
    feed = feedparser.parse((site / "feeds" / name).read_bytes())
    assert not feed.bozo
    assert feed.feed.language == TAG
    texts = [feed.feed.title, feed.feed.subtitle]
    for entry in feed.entries:
        texts += [entry.title, entry.summary, *(tag.term for tag in entry.tags)]
        texts += texts_of_html(html.fromstring(f"<html><body>{entry.content[0].value}</body></html>"))
    assert len(feed.entries) > 20
    assert _english(iter(texts), typed) == {}


def _words_of_status(value: Any, key: str = "") -> Iterator[str]:
    if isinstance(value, dict):
        for name, part in value.items():
            yield from _words_of_status(part, name)
    elif isinstance(value, list):
        for part in value:
            yield from _words_of_status(part, key)
    elif key in SAID_IN_STATUS:
        yield value


def test_the_status_file_says_no_english_phrase(site: Path, typed: TypedWords) -> None:
    words = list(_words_of_status(json.loads((site / "status.json").read_text(encoding="utf-8"))))
    assert len(words) > 100
    assert _english(iter(words), typed) == {}


def test_no_email_says_an_english_phrase(site: Path, typed: TypedWords) -> None:
    texts = [page.read_text(encoding="utf-8") for page in sorted(site.rglob("email.txt"))]
    assert len(texts) > 15
    assert _english((" ".join(text.split()) for text in texts), typed) == {}


def test_the_calendar_says_no_english_phrase(site: Path, typed: TypedWords) -> None:
    calendar = vobject.readOne((site / "calendar.ics").read_text(encoding="utf-8"))
    texts = [calendar.x_wr_calname.value, calendar.x_wr_caldesc.value]
    for event in calendar.vevent_list:
        *said, link = event.description.value.splitlines()
        assert link == event.url.value
        texts += [event.summary.value, *said, *event.categories.value]
    assert len(calendar.vevent_list) > 40
    assert _english(iter(texts), typed) == {}


@pytest.mark.parametrize(
    "moment",
    [
        pytest.param("2027-05-04 12:00", id="spring work under way"),
        pytest.param("2027-08-25 12:00", id="held up by rain"),
        pytest.param("2027-08-26 11:30", id="work that goes on"),
        pytest.param("2027-09-16 05:00", id="no morning entry yet"),
        pytest.param("2027-12-24 09:00", id="winter"),
    ],
)
def test_no_other_moment_says_an_english_phrase(
    bulletin_at: Callable[[str], Bulletin], typed: TypedWords, moment: str
) -> None:
    """Without a build: what the plugin gives to any theme, the plain status page among it."""
    bulletin = bulletin_at(moment)
    voice = bulletin.voice
    old = tuple(replace(year, is_apart=True) for year in bulletin.track_record.years)
    years_ago = replace(bulletin.track_record, years=(*bulletin.track_record.years, *old))
    rendered = [
        status_html(bulletin.status, voice, bulletin.weather_sources),
        sums_html(bulletin.sums, voice),
        track_record_html(bulletin.track_record, "../", voice),
        track_record_html(years_ago, "../", voice),
        *(record_year_html(year, voice, "../../../") for year in years_ago.years),
        *(notice_html(notice, voice, "../../") for notice in bulletin.notices),
        *(item_html(item, "", voice, "../") for item in bulletin.items),
    ]
    texts = [item.title for item in bulletin.items]
    for part in rendered:
        texts += texts_of_html(html.fromstring(f"<html><body>{part}</body></html>"))
    for card in (home_card(bulletin), *(notice_card(notice, bulletin) for notice in bulletin.notices)):
        texts += [card.headline, card.state, card.where, card.label, card.normal]
        texts += [card.told] if card.told != bulletin.club.site else []
    assert _english(iter(texts), typed) == {}


def test_each_plural_form_is_chosen_by_its_count(site: Path) -> None:
    home = " ".join(html.parse(site / "index.html").getroot().text_content().split())
    said = home + "".join(page.read_text(encoding="utf-8") for page in (site / "notices").rglob("*.html"))
    assert {mark for mark in MARKS.values() if mark in said} == set(MARKS.values())
    # Slovenian says "two" of tees 5 and 13, and "other" of greens 1 to 18.
    assert re.search(r"13 ñ?á?ñ?đ? ?5 ťééš②", home)
    assert re.search(r"18 ťó 1 ğřééñš④|1 ťó 18 ğřééñš④", home)


def test_addresses_are_the_same_in_every_language(site: Path, demo_site: Path) -> None:
    ours, theirs = ({path.relative_to(top) for path in top.rglob("*") if path.is_file()} for top in (demo_site, site))
    assert theirs <= ours
    missing = ours - theirs
    assert missing  # pictures with letters of this language that no font has
    assert {path.name for path in missing} == {"preview.png"}
