"""The site's own pages by language: the same in both Englishes but for their words, and found for every club."""

from __future__ import annotations

import re
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from lxml import html

from swardcast.errors import SwardcastError
from swardcast.language.banned import banned_phrases
from swardcast.language.plain import faults
from swardcast.site_source import page_paths, problems_of_pages
from tests.conftest import ROOT
from tests.outlook.small_club import SmallClub

CONTENT = ROOT / "site_src" / "content"
NAMES = sorted(page.name for page in (CONTENT / "pages" / "en-GB").iterdir())
BRITISH = re.compile(
    r"°C|\bmm\b|course manager|greenkeep|height of cut|learnt|favour|judgement|\d %|meadow-grass|tining|\bfeed,|Dull",
    re.IGNORECASE,
)


def _shape(page: Path) -> list[str]:
    """Slug, headings' levels, list items, parts of the plugin and links: what must not differ."""
    text = page.read_text(encoding="utf-8")
    return re.findall(r"^(?:Slug: .*|#+ |- |\d\. |<!-- .* -->)|\]\([^)]*\)", text, re.MULTILINE)


@pytest.mark.parametrize("name", NAMES)
def test_both_englishes_have_the_same_page(name: str) -> None:
    british, american = (CONTENT / "pages" / tag / name for tag in ("en-GB", "en-US"))
    assert _shape(british) == _shape(american)
    assert not BRITISH.search(american.read_text(encoding="utf-8"))


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("tag", ["en-GB", "en-US"])
def test_our_own_pages_are_as_plain_as_our_notices(tag: str, name: str) -> None:
    _, _, body = (CONTENT / "pages" / tag / name).read_text(encoding="utf-8").partition("\n\n")
    assert [fault.what for fault in faults(body, banned_phrases(tag), markdown=True)] == []


def test_a_club_in_the_united_states_shows_american_pages(
    run_swardcast: Callable[..., subprocess.CompletedProcess[str]], tmp_path: Path
) -> None:
    club, output = SmallClub(tmp_path / "club"), tmp_path / "site"
    club.job("cores", "09-20")
    told = club.folder / "club.yaml"
    told.write_text(told.read_text(encoding="utf-8").replace("language: en-GB", "language: en-US"), encoding="utf-8")
    done = run_swardcast("build", "--club", str(club.folder), "--output", str(output), "--as-of", "2027-09-14 09:30")
    assert done.returncode == 0, done.stderr
    page = html.parse(output / "pages/how-dates-are-worked-out/index.html").getroot()
    assert page.get("lang") == "en-US"
    assert "A day of 68 °F counts as 1" in " ".join(page.text_content().split())  # 20 °C, by hand: 20 * 9 / 5 + 32
    home = " ".join(html.parse(output / "index.html").getroot().text_content().split())
    assert "Made from the club's own records as they stood at 9:30 AM on Tuesday, September 14." in home
    assert (output / "work/hollow-tining/index.html").is_file()  # an address is the same in every language


def test_a_language_without_pages_is_told_with_the_folder(tmp_path: Path) -> None:
    with pytest.raises(SwardcastError) as told:
        page_paths(CONTENT, ["pages"], "sl-SI", tmp_path)
    assert str(told.value).startswith(
        f"the site has no pages in the language 'sl-SI': found no folder {CONTENT / 'pages' / 'sl-SI'}. Put pages"
    )


def test_pages_of_the_club_take_the_place_of_ours(tmp_path: Path) -> None:
    own = shutil.copytree(CONTENT / "pages" / "en-GB", tmp_path / "pages")
    assert page_paths(CONTENT, ["pages"], "sl-SI", tmp_path) == [str(own)]
    (own / "about.md").unlink()
    assert problems_of_pages(CONTENT, ["pages"], tmp_path / "nowhere") == []
    (problem,) = problems_of_pages(CONTENT, ["pages"], tmp_path)
    assert (problem.file, problem.found) == ("pages/about.md", "no such file")


def test_pages_that_are_not_divided_by_language_stay_as_they_are(tmp_path: Path) -> None:
    (tmp_path / "content" / "pages").mkdir(parents=True)
    assert page_paths(tmp_path / "content", ["pages", "more"], "en-US", tmp_path) == ["pages", "more"]
