"""Short addresses: the same for life, never two alike, answered by a page that leads to the notice."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from lxml import html

from swardcast.compose import Bulletin, compose_bulletin
from swardcast.outlets.open_graph import OpenGraph
from swardcast.outlets.short_addresses import short_addresses
from swardcast.outlets.short_pages import short_page_artifacts
from swardcast.records.short_codes import ALPHABET, CODE_LENGTH, code_of
from tests.conftest import problems_of
from tests.outlook.small_club import SmallClub, moment


def _two_that_meet() -> tuple[str, str]:
    """Two ids whose codes are the same, found by trying: among 10,000 there are about four pairs."""
    seen: dict[str, str] = {}
    for number in range(10_000):
        name = f"greens-sanding-{number}"
        if code_of(name) in seen:
            return seen[code_of(name)], name
        seen[code_of(name)] = name
    pytest.fail("no two ids with the same code: is it made of the id?")


def test_a_code_is_short_and_hard_to_misread() -> None:
    assert not set(ALPHABET) & set("01loszaeiou")
    code = code_of("greens-renovation-2027")
    assert len(code) == CODE_LENGTH == 5
    assert set(code) <= set(ALPHABET)


def test_a_code_is_for_life() -> None:
    """It stands on posters. By hand: `sha256sum` of the id as a number, divided by 26 five times with a calculator."""
    assert code_of("greens-renovation-2027") == "mpmcb"


def test_two_jobs_that_meet_are_told_before_anybody_has_the_second_address(tmp_path: Path) -> None:
    """Also when the plan puts the new one first: what members have seen keeps its address, so the later one is told."""
    seen, new = _two_that_meet()
    club = SmallClub(tmp_path)
    club.job(seen, "05-10", announced="03-02")
    club.job(new, "06-10", announced="03-09")
    (said,) = problems_of(tmp_path)
    assert said == (
        f"plan/{new}.yaml: line 4, id: found '{new}', whose short address /n/{code_of(new)}/ is that of '{seen}'"
        f" (plan/{seen}.yaml, line 4); expected an id with a short address of its own, such as '{new}-2'."
        " Change the id of whichever of the two members have not seen yet."
    )
    assert code_of(f"{new}-2") != code_of(seen)
    club.job(new, "06-10", announced="03-01")  # dated back: now the other one is told, and nothing is built
    (said,) = problems_of(tmp_path)
    assert said.startswith(f"plan/{seen}.yaml")


def test_no_other_job_changes_a_code(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("spring", "05-10")
    before = short_addresses(compose_bulletin(club.records(), moment("05-01")))
    club.job("summer", "06-10", announced="03-01")
    after = short_addresses(compose_bulletin(club.records(), moment("05-01")))
    assert before.items() < after.items()


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
