"""A club's own template, badge and colours: they reach the site, and a template that fails publishes nothing."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from lxml import html
from PIL import Image

from tests.reading.breaking import replace

Run = Callable[..., subprocess.CompletedProcess[str]]


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
    assert "Sitemap: https://host.example/on/course/sitemap.xml" in (site / "robots.txt").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("template", "says"),
    [
        (
            "{% extends '!theme/page.html' %}\n\n{% block content %}{% if %}{% endblock %}",
            "line 3: found a template that",
        ),
        ("{% extends '!theme/page.html' %}\n{% block content %}{{ nobody.knows.it }}{% endblock %}", "line 2: found a"),
        (
            "{% extends '!theme/page.html' %}\n{% block content %}{{ 1 + 'a' }}{% endblock %}",
            "line 2: found a template",
        ),
        ("\n{% include 'nowhere.html' %}", "line 2: found a template that fails (no template 'nowhere.html')"),
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


def test_a_template_that_would_never_be_used_is_told(
    club: Path, build: Callable[[], subprocess.CompletedProcess[str]]
) -> None:
    (club / "templates" / "artcle.html").write_text("", encoding="utf-8")
    done = build()
    assert done.returncode == 1
    assert done.stderr.startswith("templates/artcle.html\n  the file: found a template that the theme does not have")
    assert "Did you mean 'article.html'?" in done.stderr
