"""A club's own template, badge and colours: they reach the site, and a template that fails publishes nothing."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from jinja2.defaults import DEFAULT_NAMESPACE
from lxml import html
from PIL import Image

from swardcast.club_templates import ATTRIBUTES_OF_ARTICLES, NAMES_OF_ALL_PAGES, NAMES_OF_PAGES
from tests.conftest import ROOT
from tests.reading.breaking import replace

Run = Callable[..., subprocess.CompletedProcess[str]]


NAMES = "<p id='names'>{{ self._TemplateReference__context.parent|list|join(' ') }}</p>"
"""Words of a template that lists what Pelican and the plugin gave it: there is no open way."""
HAS = "{% if article is defined %}<p id='has'>{{ article.__dir__()|join(' ') }}</p>{% endif %}"
MADE_FROM = {
    "index.html": "status.html",
    "404.html": "missing.html",
    "notices/index.html": "index.html",
    "notices/greens-renovation-2027/index.html": "article.html",
    "pages/about/index.html": "page.html",
    "surfaces/greens/index.html": "tag.html",
    "work/topdressing/index.html": "category.html",
}


def _has_the_names_that_templates_may_use(site: Path) -> None:
    for page, template in MADE_FROM.items():
        (names,) = html.parse(site / page).getroot().xpath("//p[@id='names']/text()")
        given = {name for name in names.split() if not name.isupper()} - DEFAULT_NAMESPACE.keys()
        assert given == NAMES_OF_ALL_PAGES | NAMES_OF_PAGES[template], page
    assert set(MADE_FROM.values()) == set(NAMES_OF_PAGES)
    (has,) = html.parse(site / "notices/greens-renovation-2027/index.html").getroot().xpath("//p[@id='has']/text()")
    given = {name for name in has.split() if not name.startswith("_")}
    assert given == ATTRIBUTES_OF_ARTICLES - {"author", "authors"}  # nobody is named there


@pytest.fixture
def build(club: Path, tmp_path: Path, run_swardcast: Run) -> Callable[[], subprocess.CompletedProcess[str]]:
    (club / "templates").mkdir()

    def run() -> subprocess.CompletedProcess[str]:
        output = str(tmp_path / "site")
        return run_swardcast("build", "--club", str(club), "--output", output, "--as-of", "2027-09-14 09:30")

    return run


def test_one_template_of_the_club_takes_the_place_of_the_themes(
    club: Path, tmp_path: Path, build: Callable[[], subprocess.CompletedProcess[str]]
) -> None:
    """In one build with a site in a folder of its host, another colour and a long badge."""
    told = club / "club.yaml"
    replace(told, "site: https://quillhaven.example", "site: https://host.example/on/course")
    replace(told, '"#5d2b5a"', '"#14213d"')
    replace(club / "badge.svg", 'viewBox="0 0 64 64"', 'viewBox="0 0 128 64"')
    (club / "templates" / "tag.html").write_text(
        '{% extends "!theme/tag.html" %}\n{% block heading %}{% include "_ours.html" %}{% endblock %}\n', "utf-8"
    )
    (club / "templates" / "_ours.html").write_text("<em>{{ tag.slug }}</em>", encoding="utf-8")
    frame = (ROOT / "site_src/theme/templates/base.html").read_text(encoding="utf-8")
    assert "</footer>" in frame
    (club / "templates" / "base.html").write_text(
        frame.replace("</footer>", f"{NAMES}{HAS}</footer>"), encoding="utf-8"
    )
    done = build()
    assert done.returncode == 0, done.stderr
    site = tmp_path / "site"
    tags = html.parse(site / "surfaces" / "greens" / "index.html").getroot()
    assert tags.xpath("//h1/em/text()") == ["greens"]
    assert tags.xpath("//nav[@class='sc-nav']")  # the rest is the theme's
    style = (site / "club.css").read_text(encoding="utf-8")
    assert "--club: #14213d;" in style
    assert "--stripe: #e3b341;" in style
    (badge,) = tags.xpath("//header//img")
    assert (badge.get("width"), badge.get("height")) == ("88", "44")
    assert "#14213d" in (site / "email.html").read_text(encoding="utf-8")
    with Image.open(site / "preview.png") as picture:
        assert picture.convert("RGB").getpixel((5, 5)) == (0x14, 0x21, 0x3D)
    missing = html.parse(site / "404.html").getroot()
    inside = {link for _, _, link, _ in missing.iterlinks() if not link.startswith(("mailto:", "tel:", "#"))}
    assert {link[: len("/on/course/")] for link in inside} == {"/on/course/"}
    _has_the_names_that_templates_may_use(site)
    assert "Sitemap: https://host.example/on/course/sitemap.xml" in (site / "robots.txt").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("template", "says"),
    [
        (
            "{% extends '!theme/page.html' %}\n{% block content %}{{ page.knows.it }}{% endblock %}",
            "line 2: found a template that fails",
        ),
        (
            "{% extends '!theme/page.html' %}\n{% block content %}{{ 1 + 'a' }}{% endblock %}",
            "line 2: found a template that fails",
        ),
    ],
)
def test_a_template_that_fails_is_told_with_its_line_and_nothing_is_published(
    club: Path, tmp_path: Path, build: Callable[[], subprocess.CompletedProcess[str]], template: str, says: str
) -> None:
    (club / "templates" / "page.html").write_text(template, encoding="utf-8")
    done = build()
    assert done.returncode == 1
    assert done.stderr.startswith(f"templates/page.html\n  {says}")
    assert done.stderr.endswith("1 thing needs attention; nothing was published.\n")
    assert "Traceback" not in done.stderr
    assert not (tmp_path / "site").exists()


def test_a_build_tells_what_check_tells_of_templates_together_with_all_other_faults(
    club: Path, tmp_path: Path, build: Callable[[], subprocess.CompletedProcess[str]]
) -> None:
    (club / "templates" / "artcle.html").write_text("", encoding="utf-8")
    replace(club / "club.yaml", "latitude: 55.6", "latitude: 155.6")
    done = build()
    assert done.returncode == 1
    assert "  line 6, place.latitude: found '155.6'" in done.stderr
    assert "templates/artcle.html\n  the file: found a template that the theme does not have" in done.stderr
    assert "Did you mean 'article.html'?" in done.stderr
    assert done.stderr.endswith("2 things need attention; nothing was published.\n")
    assert not (tmp_path / "site").exists()
