"""`swardcast check` reads the club's own templates: what they name has to be there, before anything is built."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.conftest import Done

Check = Callable[[], Done]


@pytest.fixture
def check(swardcast: Callable[..., Done], club: Path) -> Check:
    (club / "templates").mkdir()
    return lambda: swardcast("check", "--club", str(club), "--as-of", "2027-09-14")


def _put(club: Path, **templates: str) -> None:
    for name, text in templates.items():
        (club / "templates" / f"{name}.html").write_text(text, encoding="utf-8")


def test_templates_in_order_are_fine(check: Check, club: Path) -> None:
    """With all that is allowed: parts, names that a parent or whoever includes it has set, and questions about names."""
    _put(
        club,
        page=(
            '{% extends "!theme/page.html" %}{% from "_macros.html" import said_on as on, titled with context %}\n'
            '{% block title %}{{ titled(page.title) }}{% endblock %}\n'
            '{% block content %}{% set mark = "*" %}{{ super() }}{% include "_ours.html" %}{{ on(bulletin.as_of) }}\n'
            '{% block of_our_own %}{{ badge }}{% endblock %}{{ say("site-skip") }}{{ words|own_words if words is defined }}\n'
            '{% include "_none.html" ignore missing %}{% include ["_none.html", "_ours.html"] %}{% endblock %}\n'
        ),
        base='{% if article %}{{ article.title|capitalize }}{% endif %}{{ here|default("") }}{% for a in articles %}{{ loop.index }}{% endfor %}'
        "{% block title %}{% endblock %}{% set badge = SITENAME %}{% block content %}{% endblock %}",
        _ours="{{ mark }}{% macro m(a) %}{{ a }}{{ caller() }}{{ varargs }}{% endmacro %}{{ page.title }}"
        '{% if article %}{{ article.titel|default("") }}{{ article.reading_time }}{{ article.__class__ }}{% endif %}',
    )  # fmt: skip
    done = check()
    assert done.err == ""
    assert done.code == 0


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("{% extends '!theme/page.html' %}\n\n{% block content %}{% if %}{% endblock %}", "line 3: found a template that Jinja cannot read (Expected an expression, got 'end of statement block')"),
        ("\n{% blok content %}", "line 2: found a template that Jinja cannot read (Encountered unknown tag 'blok'.). Did you mean 'block'?"),
        ("{% block a %}{% endblock %}\n{% block a %}{% endblock %}", "line 2: found a template that Jinja cannot read (block 'a' defined twice)"),
        ("\n{% include '_of_ours_alone.html' %}", "line 2: found a template that is not there, '_of_ours_alone.html'; expected one of the theme's, or a part of your own"),
        ("{% extends '!theme/pge.html' %}", "line 1: found a template that is not there, '!theme/pge.html'; expected one of the theme's, or a part of your own. Did you mean '!theme/page.html'?"),
        ("\n{% extends 'page.html' %}", "line 2: found 'page.html', which extends itself; expected the theme's template, which begins with '!theme/'. Did you mean '!theme/page.html'?"),
        ("{% from '_macros.html' import sgin with context %}", "line 1: found the name 'sgin'; expected one that '_macros.html' has. Did you mean 'sign'?"),
        ("{% extends '!theme/page.html' %}\n{% block contnt %}{% block ours %}{% endblock %}{% endblock %}", "line 2: found the block 'contnt', which nothing shows; expected one of: the theme's. Did you mean 'content'?"),
        ("{% extends '!theme/page.html' %}\nHello", "line 2: found words outside of the blocks, which nothing shows; expected words inside a block"),
        ("\n{{ bulletn.as_of }}", "line 2: found the name 'bulletn', which no page has; expected a name that pages have. Did you mean 'bulletin'?"),
        ("\n\n{{ article.title }}", "line 3: found the name 'article', which not all pages of it have; expected a name that they have. Ask first whether it is there: {% if article %}."),
        ("{% for article in articles %}{{ article.title }}{% endfor %}\n{{ article }}", "line 2: found the name 'article', which not all pages of it have; expected a name that they have. Ask first whether it is there: {% if article %}."),
        ("{{ page.title|uper }}", "line 1: found the filter 'uper'; expected one that Jinja has. Did you mean 'upper'?"),
        ("{{ page is defned }}", "line 1: found the test 'defned'; expected one that Jinja has. Did you mean 'defined'?"),
        ("{% for article in articles %}\n{{ article.titel }}{% endfor %}", "line 2: found 'article.titel', which is not there; expected what 'article' has. Did you mean 'title'?"),
        ("{{ bulletin.as_off }}", "line 1: found 'bulletin.as_off', which is not there; expected what 'bulletin' has. Did you mean 'as_of'?"),
        ("\n{{ say('site-skp') }}", "line 2: found the phrase 'site-skp'; expected one of the catalogue's. Did you mean 'site-skip'?"),
    ],
)  # fmt: skip
def test_what_is_wrong_with_a_template_is_told_with_its_line_and_the_nearest_right_name(
    check: Check, club: Path, text: str, said: str
) -> None:
    _put(club, page=text)
    done = check()
    assert (done.code, done.out) == (1, "")
    # Which blocks there are is the theme's matter.
    told = re.sub(r"(which nothing shows; expected one of: )[a-z_, ]+", r"\1the theme's", done.err)
    assert told.splitlines() == [
        "templates/page.html",
        f"  {said}",
        "1 thing needs attention.",
    ]


def test_all_faults_of_templates_are_told_at_once_with_those_of_other_files(check: Check, club: Path) -> None:
    _put(club, page="{{ nobody }}\n{{ 1|nothing }}{% block a %}{% endblock %}", artcle="", _ours="\n{% else %}")
    (club / "templates/tag.html").write_bytes(b"\xff")
    (club / "templates/sub").mkdir()
    (club / "templates/sub/index.html").touch()
    told = club / "club.yaml"
    told.write_text(told.read_text(encoding="utf-8").replace("latitude: 55.6", "latitude: 155.6"), encoding="utf-8")
    lines = check().err.splitlines()
    assert [line for line in lines if not line.startswith("  ")] == [
        "club.yaml",
        "templates/_ours.html",
        "templates/artcle.html",
        "templates/page.html",
        "templates/sub/index.html",
        "templates/tag.html",
        "7 things need attention.",
    ]
    beginnings = [line.partition(";")[0] for line in lines if line.startswith("  ")]
    assert beginnings[1].startswith("  line 2: found a template that Jinja cannot read (Encountered unknown tag 'else'")
    assert beginnings[2:] == [
        "  the file: found a template that the theme does not have",
        "  line 1: found the name 'nobody', which no page has",
        "  line 2: found the filter 'nothing'",
        "  the file: found a template that the theme does not have",
        "  line 1: found a character that is not UTF-8",
    ]
    assert lines[-3 - 1].endswith("Put it into templates/ itself.")


def test_a_theme_of_ones_own_has_its_own_templates(check: Check, club: Path, swardcast: Callable[..., Done]) -> None:
    theme = club.parent / "theme" / "templates"
    theme.mkdir(parents=True)
    (theme / "base.html").write_text("{% block ours %}{% endblock %}", encoding="utf-8")
    (theme / "score.html").touch()
    _put(club, score="{% extends 'base.html' %}{% block ours %}{% endblock %}")
    assert "a template that the theme does not have" in check().err
    done = swardcast("check", "--club", str(club), "--as-of", "2027-09-14", "--theme", str(theme.parent))
    assert (done.code, done.err) == (0, "")
    for command, *more in (("check",), ("build", "--output", str(club.parent / "site"))):
        done = swardcast(command, "--club", str(club), "--theme", str(club / "no-theme"), *more)
        assert (done.code, done.out) == (1, "")
        assert done.err.startswith(f"found no theme at {club / 'no-theme'}; expected a folder")


def test_check_finds_no_theme_also_for_a_club_without_templates(club: Path, swardcast: Callable[..., Done]) -> None:
    done = swardcast("check", "--club", str(club), "--theme", str(club / "no-theme"))
    assert (done.code, done.out) == (1, "")
    assert done.err.startswith(f"found no theme at {club / 'no-theme'}; expected a folder")
