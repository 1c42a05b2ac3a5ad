"""Short addresses: the same for life, never two alike, answered by a page that leads to the notice."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from lxml import html

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.outlets.open_graph import OpenGraph
from swardcast.outlets.short_addresses import ALPHABET, CODE_LENGTH, codes_of, short_addresses
from swardcast.outlets.short_pages import short_page_artifacts
from tests.outlook.small_club import SmallClub, moment

DAY = date(2027, 3, 1)


def _two_that_meet() -> tuple[str, str]:
    """Two ids whose codes are the same, found by trying: among 10,000 there are about four pairs."""
    seen: dict[str, str] = {}
    for number in range(10_000):
        name = f"greens-sanding-{number}"
        code = codes_of({name: DAY})[name]
        if code in seen:
            return seen[code], name
        seen[code] = name
    pytest.fail("no two ids with the same code: is it made of the id?")


def test_a_code_is_short_and_hard_to_misread() -> None:
    assert not set(ALPHABET) & set("01loszaeiou")
    code = codes_of({"greens-renovation-2027": DAY})["greens-renovation-2027"]
    assert len(code) == CODE_LENGTH == 5
    assert set(code) <= set(ALPHABET)


def test_a_code_is_for_life() -> None:
    """It stands on posters. By hand: `sha256sum` of the id as a number, divided by 26 five times with a calculator."""
    assert codes_of({"greens-renovation-2027": DAY}) == {"greens-renovation-2027": "mpmcb"}


def test_of_two_jobs_that_meet_the_one_announced_first_keeps_its_code() -> None:
    one, other = _two_that_meet()
    alone = codes_of({one: DAY})[one]
    assert codes_of({other: DAY})[other] == alone
    for first, second in ((one, other), (other, one)):
        codes = codes_of({second: DAY + timedelta(days=1), first: DAY})
        assert codes[first] == alone
        assert codes[second].startswith(alone)
        assert len(codes[second]) == CODE_LENGTH + 1


@given(
    st.dictionaries(st.from_regex(r"[a-z0-9]{1,12}(-[a-z0-9]{1,8})?", fullmatch=True), st.integers(0, 400), min_size=1)
)
def test_codes_differ_and_a_later_job_changes_none(announced: dict[str, int]) -> None:
    days = {name: DAY + timedelta(days=after) for name, after in announced.items()}
    codes = codes_of(days)
    assert len(set(codes.values())) == len(codes)
    cut = sorted(days.values())[len(days) // 2]
    earlier = {name: day for name, day in days.items() if day <= cut}
    assert codes_of(earlier) == {name: codes[name] for name in earlier}


def test_no_address_of_the_demo_ever_changes(
    demo_bulletin_at: Callable[[str], Bulletin], demo_bulletin: Bulletin
) -> None:
    now = short_addresses(demo_bulletin)
    before = short_addresses(demo_bulletin_at("2027-08-25 12:00"))
    assert 0 < len(before) < len(now)
    assert before == {name: now[name] for name in before}


def test_a_new_title_keeps_the_address(demo_bulletin: Bulletin) -> None:
    outlook = demo_bulletin.outlook
    jobs = {name: replace(job, job=replace(job.job, title="Renamed")) for name, job in outlook.jobs.items()}
    renamed = replace(demo_bulletin, outlook=replace(outlook, jobs=jobs))
    assert short_addresses(renamed) == short_addresses(demo_bulletin)


def test_each_short_address_of_the_site_leads_to_its_notice(demo_site: Path, demo_bulletin: Bulletin) -> None:
    for name, address in short_addresses(demo_bulletin).items():
        assert address.startswith("https://quillhaven.example/n/")
        page = demo_site / address.removeprefix("https://quillhaven.example/") / "index.html"
        root = html.parse(page).getroot()
        assert root.xpath("//link[@rel='canonical']/@href") == [f"https://quillhaven.example/notices/{name}/"]
        refresh = root.xpath("//meta[@http-equiv='refresh']/@content")[0]
        (link,) = root.xpath("//a/@href")
        # 0 seconds: a page that moves on later would take it from under a reader (WCAG 2.2, technique H76).
        assert refresh == f"0; url={link}"
        assert (page.parent / link).resolve() == demo_site.resolve() / "notices" / name / "index.html"


def test_a_job_that_was_called_off_answers_with_what_happened(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "05-10")
    before = compose_bulletin(club.records(), moment("05-01"))
    club.log("off", "05-03", "change of plan", "job: spring", "change: called off", "because: no sand was to be had")
    after = compose_bulletin(club.records(), moment("05-04"))
    assert short_addresses(after) == short_addresses(before)
    (page,) = short_page_artifacts(after, OpenGraph(bulletin=after, pictures={}))
    text = " ".join(html.fromstring(page.data.decode()).text_content().split())
    assert "Spring work, greens 1 and 2: called off" in text
    assert "no sand was to be had" in text
    assert "Read the whole notice" in text


def test_a_hostile_title_does_no_harm(demo_bulletin: Bulletin) -> None:
    (notice, *_) = demo_bulletin.notices
    hostile = replace(notice, headline="<script>alert(1)</script> & \"quoted\" 'too' 🏌️ ירוק")
    bulletin = replace(demo_bulletin, notices=(hostile,))
    (page,) = short_page_artifacts(bulletin, OpenGraph(bulletin=bulletin, pictures={}))
    root = html.fromstring(page.data.decode())
    assert not root.xpath("//script")
    assert root.xpath("//meta[@property='og:title']/@content") == [hostile.headline]
    assert root.xpath("//h1")[0].text == hostile.headline
