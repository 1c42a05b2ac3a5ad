"""The pages on how dates are worked out and on how good they have been: figures that a reader can check."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path

import pytest
from lxml import html

from swardcast.compose import Bulletin
from swardcast.outlets.html import published_html, sums_html, track_record_html
from swardcast.outlook.states import Milestone
from swardcast.turf.published_recoveries import PUBLISHED_RECOVERIES
from tests.cli.printed_formula import left_after
from tests.conftest import ROOT

PAGES = ROOT / "site_src" / "content" / "pages"
MONTHS = (
    "January", "February", "March", "April", "May", "June", "July",
    "August", "September", "October", "November", "December",
)  # fmt: skip


def _day(words: str) -> date:
    """ "Friday 24 September" of the demo's year."""
    _, number, month, *year = words.replace(".", "").split()
    return date(int(year[0]) if year else 2027, MONTHS.index(month) + 1, int(number))


def _found(pattern: str, text: str) -> re.Match[str]:
    match = re.search(pattern, text)
    assert match, f"{pattern!r} is not in {text!r}"
    return match


@pytest.fixture(scope="module")
def first_of_september(demo_bulletin_at: Callable[[str], Bulletin]) -> Bulletin:
    return demo_bulletin_at("2027-09-01 08:00")


@dataclass(frozen=True)
class _Printed:
    """The figures of one place as the page prints them, in the sentences of the first one or in the tables' columns."""

    start: date
    needed: float
    gained: float
    weeks: list[float]
    closes: date
    added: int
    likely: date


def _sums(bulletin: Bulletin) -> dict[str, _Printed]:
    """The figures of each place of the greens on the page."""
    page = html.fromstring(f"<div>{sums_html(bulletin.sums, bulletin.voice)}</div>".replace("\u00a0", " "))
    (heading,) = page.xpath("//h3[.='Hollow tining, scarifying and sanding the greens']")
    first, table, details = heading.xpath("following-sibling::*[self::p[strong] or self::table or self::details]")[:3]
    place, sentences = first.text_content().strip().split(". ", 1)
    places = {place: _in_sentences(sentences)}
    steps = dict(_rows(details.xpath("table")[0]))
    assert set(steps) == {place, *dict(_rows(table))}
    for name, cells in _rows(table):
        places[name] = _in_columns(cells, steps[name])
    closes, added = steps[place][2:]
    assert (_tick(closes), int(added)) == (places[place].closes, places[place].added)
    return places


def _rows(table: html.HtmlElement) -> list[tuple[str, list[str]]]:
    rows = table.xpath("tbody/tr")
    return [(row.xpath("th")[0].text_content(), [cell.text_content() for cell in row.xpath("td")]) for row in rows]


def _tick(words: str) -> date:
    """ "24 Sept" of the demo's year."""
    number, month = words.split()
    (name,) = (name for name in MONTHS if name.startswith(month[:3]))
    return date(2027, MONTHS.index(name) + 1, int(number))


def _in_sentences(sentences: str) -> _Printed:
    weeks = re.search(r"We expect ([\d., then]+) in the coming week", sentences)
    closes = _found(r"the holes closed? about (\w+ \d+ \w+)\.", sentences)
    added = _found(r"Add (\d+) days .*?: about (\w+ \d+ \w+)\.", sentences)
    assert _day(closes[1]) + timedelta(days=int(added[1])) == _day(added[2])
    return _Printed(
        start=_day(_found(r"disturbed on (\w+ \d+ \w+)\.", sentences)[1]),
        needed=float(_found(r"needs ([\d.]+) growth days", sentences)[1]),
        gained=float(_found(r"gained ([\d.]+)\.", sentences)[1]),
        weeks=[float(week) for week in weeks[1].split(", then ")] if weeks else [],
        closes=_day(closes[1]),
        added=int(added[1]),
        likely=_day(_found(r"Back to normal: likely by (\w+ \d+ \w+);", sentences)[1]),
    )


def _in_columns(dates: list[str], steps: list[str]) -> _Printed:
    gained, needed = dates[1].split(" / ")
    return _Printed(
        start=_tick(dates[0]),
        needed=float(needed),
        gained=float(gained),
        weeks=[] if steps[1] == "none" else [float(week) for week in steps[1].split(", then ")],
        closes=_tick(steps[2]),
        added=int(steps[3]),
        likely=_tick(dates[2]),
    )


def test_a_reader_with_a_pocket_calculator_comes_to_the_day_on_which_the_holes_close(
    first_of_september: Bulletin,
) -> None:
    """To go = needed - gained; then week after week, evenly within a week: by hand, from the page's own figures."""
    still_open = 0
    for place, printed in _sums(first_of_september).items():
        if not printed.weeks:
            continue
        still_open += 1
        to_go, days = printed.needed - printed.gained, 0.0
        for week in printed.weeks:
            if to_go <= week:
                days += 7 * to_go / week
                break
            to_go -= week
            days += 7
        assert abs((printed.closes - date(2027, 9, 1)).days - days) <= 1.2, place
    assert still_open >= 10


def test_the_days_to_the_usual_height_of_cut_lead_within_two_days_to_the_likely_date(
    first_of_september: Bulletin,
) -> None:
    """The likely date is the middle of all years and errors; the sum takes their mean weather."""
    for place, printed in _sums(first_of_september).items():
        assert printed.added in (13, 15), place
        assert abs((printed.closes + timedelta(days=printed.added) - printed.likely).days) <= 2, place


@pytest.mark.parametrize(("tag", "warm", "mild", "cold"), [("en-GB", 20, 12, 5), ("en-US", 68, 54, 41)])
def test_the_example_is_right_about_warm_mild_and_cold_days(tag: str, warm: int, mild: int, cold: int) -> None:
    """By hand: exp(-((t - 20) / s)^2 / 2), Gelernter & Stowell 2005, with s = 7 C as fitted: 0.52 at 12 C, 0.10 at 5 C."""
    page = " ".join((PAGES / tag / "how-dates-are-worked-out.md").read_text(encoding="utf-8").split())
    growth = 11 * 1
    assert f"Say it needs {growth} full growing days." in page
    days = [growth / math.exp(-(((one - 20) / 7) ** 2) / 2) for one in (20, 12, 5)]
    assert days == pytest.approx([11, 22, 110], rel=0.05)
    assert f"at {warm} °" in page
    told = _found(
        r"the holes close in (\d+) days\. At (\d+) °[CF] they take about (\d+), at (\d+) °[CF] about (\d+)", page
    )
    assert [int(number) for number in told.groups()] == [11, mild, 22, cold, 110]


def test_every_healing_green_has_its_figures_and_the_last_one_its_sum_in_words(first_of_september: Bulletin) -> None:
    work = first_of_september.outlook.jobs["greens-renovation-2027"]
    healing = [one for one in work.surfaces if one.recovery is not None and one.work.value == "healing"]
    printed = _sums(first_of_september)
    assert len(printed) == len(healing) == 18
    likely = {f"Green {one.surface.hole}": one.dates[Milestone.BACK_TO_NORMAL].likely for one in healing}
    assert {place: one.likely for place, one in printed.items()} == likely
    assert next(iter(printed.values())).likely == max(one.likely for one in printed.values())


def test_every_place_has_its_formula_and_the_day_to_allow_for(first_of_september: Bulletin) -> None:
    """The formula of a green leaves its share of the first day at G = 0, and 2 % once it has the growth that it needs."""
    page = html.fromstring(f"<div>{sums_html(first_of_september.sums, first_of_september.voice)}</div>")
    formulas = dict(item.text_content().replace("\u00a0", " ").split(": ", 1) for item in page.xpath("//li"))
    printed = _sums(first_of_september)
    assert printed.keys() <= formulas.keys()
    work = first_of_september.outlook.jobs["greens-renovation-2027"]
    for one in work.surfaces:
        place = f"Green {one.surface.hole}"
        left = left_after(f"Left after G growth days: {formulas[place]}.")
        assert one.recovery, place
        assert left(0.0) == pytest.approx(one.recovery.day_zero, abs=0.002), place
        assert left(printed[place].needed) == pytest.approx(0.02, abs=0.002), place
    (heading,) = page.xpath("//h3[.='Hollow tining, scarifying and sanding the greens']")
    allowed = [cells[3] for _, cells in _rows(heading.xpath("following-sibling::table")[0])]
    by_place = {f"Green {one.surface.hole}": one.dates[Milestone.BACK_TO_NORMAL].allow_until for one in work.surfaces}
    assert [_tick(day) for day in allowed] == [by_place[place] for place in list(printed)[1:]]


def test_where_nothing_heals_the_page_says_so(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    bulletin = demo_bulletin_at("2027-04-20 08:00")
    assert "Nothing whose date is computed is healing just now" in sums_html(bulletin.sums, bulletin.voice)


def test_all_published_recoveries_are_shown_and_counted_as_they_stand(first_of_september: Bulletin) -> None:
    page = html.fromstring(f"<div>{published_html(first_of_september.published, first_of_september.voice)}</div>")
    items = [" ".join(item.text_content().split()) for item in page.xpath("//li")]
    assert len(items) == len(PUBLISHED_RECOVERIES) == 26
    fits = 0
    for item in items:
        computed = _found(r"Computed: .*? after (\d+) days\.", item)
        interval = re.search(r"Seen: (\d+) to (\d+) days\.", item)
        open_end = re.search(r"Seen: Not yet after (\d+) days\.", item)
        assert interval or open_end, item
        low, high = (int(interval[1]), int(interval[2])) if interval else (int(open_end[1]) if open_end else 0, 10**6)
        inside = low <= int(computed[1]) <= high
        assert ("Fits" in item) is inside, item
        fits += inside
    assert f"For {fits} of 26 published recoveries" in page.text_content()


def test_the_track_record_counts_its_own_lines(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    record = demo_bulletin_at("2027-09-14 09:30").track_record
    judged = [line for line in record.lines if line.is_inside is not None]
    inside = sum(line.verdict.startswith("Kept") for line in judged)
    assert len(judged) == 6
    assert record.sentences[0].startswith(f"Of 6 jobs, {inside} kept the dates that we gave, {6 - inside} missed them")
    for line in judged:
        early = _found(r"early day: (\w+ \d+ \w+)\)", line.computed)
        last = _found(r"allow until (\w+ \d+ \w+)", line.computed)
        assert (_day(early[1]) <= _day(line.came) <= _day(last[1])) is line.verdict.startswith("Kept"), line


def test_what_was_promised_is_what_the_site_said_on_the_day_of_the_work(
    demo_bulletin_at: Callable[[str], Bulletin],
) -> None:
    """The tees were finished at 3pm on 11 May; the site built then is the promise."""
    then = demo_bulletin_at("2027-05-11 15:00").outlook.jobs["tees-solid-tining-2027"].dates[Milestone.BACK_TO_NORMAL]
    (line,) = [
        line
        for line in demo_bulletin_at("2027-09-14 09:30").track_record.lines
        if line.notice_id == "tees-solid-tining-2027"
    ]
    last = _found(r"Likely by (\w+ \d+ \w+); allow until (\w+ \d+ \w+)", line.computed)
    assert (_day(last[1]), _day(last[2])) == (then.likely, then.allow_until)


def test_before_five_jobs_are_over_it_is_too_early_to_judge(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    """By 30 June three jobs had been called back to normal: the greens twice, the tees once."""
    (sentence,) = demo_bulletin_at("2027-06-30 08:00").track_record.sentences
    assert (
        sentence
        == "3 jobs with a computed date have come to an end so far. That is too early to judge: 5 are needed at the least."
    )


def test_before_any_work_there_is_nothing_to_judge(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    bulletin = demo_bulletin_at("2027-04-20 08:00")
    record = bulletin.track_record
    assert record.lines == ()
    assert record.sentences[0].startswith("No job with a computed date has come to an end so far.")
    assert "No job with a computed date has been finished yet." in track_record_html(record, "../../", bulletin.voice)


def test_both_pages_stand_in_the_site_with_their_figures_filled_in(demo_site: Path) -> None:
    dates = (demo_site / "pages/how-dates-are-worked-out/index.html").read_text(encoding="utf-8")
    record = (demo_site / "pages/how-good-our-dates-have-been/index.html").read_text(encoding="utf-8")
    assert "swardcast:" not in dates + record
    assert "growth days until the holes count as closed" in dates
    assert "Of 6 jobs," in record
    assert 'href="../../notices/tees-solid-tining-2027/index.html"' in record


def test_the_page_on_dates_is_read_in_five_minutes(demo_site: Path) -> None:
    """200 words a minute: judgement, below the 238 of Brysbaert 2019, "How many words do we read per minute?" (Journal of
    Memory and Language 109; from memory). What is folded, drawn or in a table is not read but looked up."""
    page = html.parse(demo_site / "pages/how-dates-are-worked-out/index.html").getroot()
    main = page.find(".//main")
    for apart in main.xpath(".//details/*[not(self::summary)] | .//svg | .//table"):
        apart.drop_tree()
    assert len(main.text_content().split()) <= 5 * 200
