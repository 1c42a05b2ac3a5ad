"""The pages on how dates are worked out and on how good they have been: figures that a reader can check."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path

import pytest
from lxml import html

from swardcast.compose import Bulletin
from swardcast.outlets.html import published_html, sums_html, track_record_html
from swardcast.outlook.states import Milestone
from swardcast.turf.published_recoveries import PUBLISHED_RECOVERIES

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


def _sums(bulletin: Bulletin) -> dict[str, str]:
    """The sentences of each place on the page."""
    page = html.fromstring(sums_html(bulletin.sums, bulletin.voice))
    places: dict[str, str] = {}
    for paragraph in page.xpath("//p[strong]"):
        place, sentences = paragraph.text_content().replace("\u00a0", " ").split(". ", 1)
        places.setdefault(place.strip(), sentences)
    return places


def _figures(sentences: str) -> tuple[date, float, float, list[float]]:
    start = _found(r"disturbed on (\w+ \d+ \w+)\.", sentences)
    needed = _found(r"needs ([\d.]+) growth days", sentences)
    gained = _found(r"gained ([\d.]+)\.", sentences)
    weeks = re.search(r"We expect ([\d., then]+) in the coming week", sentences)
    coming = [float(week) for week in weeks[1].split(", then ")] if weeks else []
    return _day(start[1]), float(needed[1]), float(gained[1]), coming


def test_a_reader_with_a_pocket_calculator_comes_to_the_day_on_which_the_holes_close(
    first_of_september: Bulletin,
) -> None:
    """To go = needed - gained; then week after week, evenly within a week: by hand, from the page's own figures."""
    still_open = 0
    for place, sentences in _sums(first_of_september).items():
        _, needed, gained, weeks = _figures(sentences)
        if not weeks:
            continue
        still_open += 1
        to_go, days = needed - gained, 0.0
        for week in weeks:
            if to_go <= week:
                days += 7 * to_go / week
                break
            to_go -= week
            days += 7
        said = re.search(r"the holes close about (\w+ \d+ \w+)\.", sentences)
        assert said, place
        assert abs((_day(said[1]) - date(2027, 9, 1)).days - days) <= 1.2, place
    assert still_open >= 10


def test_the_days_to_the_usual_height_of_cut_are_added_as_the_page_says(first_of_september: Bulletin) -> None:
    for sentences in _sums(first_of_september).values():
        closes = _found(r"the holes closed? about (\w+ \d+ \w+)\.", sentences)
        added = _found(r"Add (\d+) days .*?: about (\w+ \d+ \w+)\.", sentences)
        assert _day(closes[1]) + timedelta(days=int(added[1])) == _day(added[2])


def test_the_sum_comes_within_two_days_of_the_likely_date_that_the_notice_gives(first_of_september: Bulletin) -> None:
    """The likely date is the middle of all years and errors; the sum takes their mean weather."""
    for place, sentences in _sums(first_of_september).items():
        added = _found(r"Add \d+ days .*?: about (\w+ \d+ \w+)\.", sentences)
        likely = _found(r"Back to normal: likely by (\w+ \d+ \w+);", sentences)
        assert abs((_day(added[1]) - _day(likely[1])).days) <= 2, place


def test_every_healing_green_has_its_sum_and_the_last_one_comes_first(first_of_september: Bulletin) -> None:
    work = first_of_september.outlook.jobs["greens-renovation-2027"]
    healing = [one for one in work.surfaces if one.recovery is not None and one.work.value == "healing"]
    (table,) = [table for table in first_of_september.sums if table.notice_id == "greens-renovation-2027"]
    assert len(table.rows) == len(healing) == 18
    last = max(one.dates[Milestone.BACK_TO_NORMAL].likely or date.max for one in healing)
    likely = _found(r"likely by (\w+ \d+ \w+);", table.rows[0].sentences[-2])
    assert _day(likely[1]) == last


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
    inside = sum(line.verdict.startswith("Inside") for line in judged)
    assert len(judged) == 6
    assert record.sentences[0].startswith(f"Of 6 jobs, {inside} ended inside the range")
    for line in judged:
        early = _found(r"1 chance in 10 by (\w+ \d+ \w+)\)", line.computed)
        last = _found(r"allow until (\w+ \d+ \w+)", line.computed)
        assert (_day(early[1]) <= _day(line.came) <= _day(last[1])) is line.verdict.startswith("Inside"), line


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
    assert "No job with a computed date has been finished yet." in track_record_html(record, "../", bulletin.voice)


def test_both_pages_stand_in_the_site_with_their_figures_filled_in(demo_site: Path) -> None:
    dates = (demo_site / "pages/how-dates-are-worked-out/index.html").read_text(encoding="utf-8")
    record = (demo_site / "pages/how-good-our-dates-have-been/index.html").read_text(encoding="utf-8")
    assert "swardcast:" not in dates + record
    assert "growth days until the holes count as closed" in dates
    assert "Of 6 jobs," in record
    assert 'href="../../notices/tees-solid-tining-2027/index.html"' in record
