"""The committee's page is written nowhere where a build would publish it, and a build that finds one stops."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

import swardcast
from swardcast.cli.private_file import refuse_published, write_private
from swardcast.errors import InputNeedsAttention, SwardcastError
from swardcast.outlets.committee_page import MARK
from swardcast.outlets.report_markdown import report_markdown
from swardcast.planning.report_sections import ReportInWords
from swardcast.site_source import site_source
from tests.cli.conftest import Done
from tests.conftest import DEMO

PAGE = f"<!DOCTYPE html><html><head><title>Ours</title>{MARK}</head><body><p>47.35 a tonne</p></body></html>"
REPORT = ReportInWords(title="Report", made="Private", lead=(), sections=())
Command = Callable[..., Done]


def refused(place: Path, club: Path) -> str:
    """What is said when the page is to go there; nothing may be written."""
    with pytest.raises(SwardcastError) as told:
        write_private(place, PAGE, club=club)
    assert not place.exists()
    return str(told.value)


@pytest.mark.parametrize("below", ["content/pages/en-GB", "content", "theme/static", "theme/templates"])
def test_no_page_goes_into_the_sources_of_the_site(club: Path, below: str) -> None:
    place = site_source() / below / "committee.html"
    assert "of which a site is made; name a place outside" in refused(place, club)


def test_nor_into_the_program_itself(club: Path) -> None:
    place = Path(swardcast.__file__).parent / "outlets" / "static" / "committee.html"
    assert "where programs are installed; name a place outside" in refused(place, club)


def test_nor_into_a_theme_or_sources_of_somebodys_own(club: Path, tmp_path: Path) -> None:
    theme = Path(shutil.copytree(site_source() / "theme", tmp_path / "our-look"))
    assert f"in {theme}, of which a site is made" in refused(theme / "static" / "committee.html", club)
    (tmp_path / "ours" / "content" / "extra").mkdir(parents=True)
    (tmp_path / "ours" / "pelicanconf.py").write_text("", encoding="utf-8")
    assert "of which a site is made" in refused(tmp_path / "ours" / "content" / "extra" / "committee.html", club)


def test_nor_beside_a_site_where_the_whole_folder_may_be_published(club: Path, tmp_path: Path) -> None:
    site = tmp_path / "www" / "golf"
    (site / "feeds").mkdir(parents=True)
    (site / "feeds" / "status.rss").write_text("<rss/>", encoding="utf-8")
    said = refused(tmp_path / "www" / "committee.html", club)
    assert f"beside the site {site}, perhaps in a folder that is published as a whole" in said


@pytest.mark.parametrize("below", ["theme/static", "theme/templates", "club/pages", "club/templates"])
def test_a_build_stops_at_a_page_that_lies_among_what_it_would_publish(
    swardcast: Command, club: Path, tmp_path: Path, below: str
) -> None:
    """Copied there by hand; a page of ours below `pages` would lose the mark on its way into the site."""
    shutil.copytree(site_source() / "theme", tmp_path / "theme")
    page = tmp_path / below / "committee.html"
    page.parent.mkdir(parents=True, exist_ok=True)
    page.write_text(PAGE, encoding="utf-8")
    done = swardcast(
        "build", "--club", str(club), "--output", str(tmp_path / "out"), "--theme", str(tmp_path / "theme")
    )
    assert done.code == 1
    assert str(page) in done.err
    assert "found a private page for the committee; expected none among the files of which the site is made" in done.err
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("below", ["theme/static", "club/pages", "club/log/2027", "club"])
def test_a_build_stops_at_a_report_in_markdown_too(swardcast: Command, club: Path, tmp_path: Path, below: str) -> None:
    """As the report is written, and named like an entry, a page or anything else."""
    shutil.copytree(site_source() / "theme", tmp_path / "theme")
    report = tmp_path / below / "report.md"
    report.parent.mkdir(parents=True, exist_ok=True)
    report.write_text(report_markdown(REPORT, "Ours"), encoding="utf-8")
    done = swardcast(
        "build", "--club", str(club), "--output", str(tmp_path / "out"), "--theme", str(tmp_path / "theme")
    )
    assert done.code == 1
    assert str(report) in done.err
    assert "found a private page for the committee; expected none" in done.err
    assert not (tmp_path / "out").exists()


def test_a_page_among_what_was_built_is_found_at_any_depth(tmp_path: Path) -> None:
    (tmp_path / "a" / "b").mkdir(parents=True)
    (tmp_path / "a" / "plain.html").write_text("<p>open</p>", encoding="utf-8")
    refuse_published([tmp_path], mark=MARK)
    (tmp_path / "a" / "b" / "renamed.txt").write_text(PAGE, encoding="utf-8")
    with pytest.raises(InputNeedsAttention) as told:
        refuse_published([tmp_path], mark=MARK)
    assert [problem.file for problem in told.value.problems] == [str(tmp_path / "a" / "b" / "renamed.txt")]


@pytest.mark.parametrize(
    "asked",
    [
        ("compare", "--instead-of", "greens-renovation-2027"),
        ("dates", "--job", "greens-renovation-2027", "--from", "2027-08-23", "--to", "2027-08-24"),
        ("sand",),
        ("report", "--month", "2027-07"),
    ],
    ids=lambda asked: asked[0],
)
def test_where_the_page_is_refused_nothing_is_shown(swardcast: Command, tmp_path: Path, asked: tuple[str, ...]) -> None:
    page = tmp_path / "none/page.html"
    done = swardcast(*asked, "--club", str(DEMO), "--as-of", "2027-08-18 09:30", "--page", str(page))
    assert (done.code, done.out) == (1, "")
    assert f"{page}: there is no folder {page.parent}" in done.err


def test_a_report_whose_text_is_refused_writes_no_page_either(swardcast: Command, tmp_path: Path) -> None:
    page, text = tmp_path / "report.html", tmp_path / "report.txt"
    given = ("--club", str(DEMO), "--as-of", "2027-08-18 09:30", "--month", "2027-07")
    done = swardcast("report", *given, "--page", str(page), "--output", str(text))
    assert done.code == 1
    assert "expected a file that ends in .md" in done.err
    assert list(tmp_path.iterdir()) == []
