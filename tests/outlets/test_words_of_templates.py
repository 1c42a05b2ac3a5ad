"""Templates hold no words of their own; what they say comes from the catalogue, escaped, with links in its slots."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

import pytest
from jinja2 import Environment, nodes
from markupsafe import Markup

from swardcast.language.catalogue import built_in
from swardcast.language.house_phrases import with_house_phrases
from swardcast.language.voice import Voice
from swardcast.outlets.saying import say_html
from tests.conftest import ROOT

TEMPLATES = sorted(
    [
        *(ROOT / "site_src/theme/templates").glob("*.html"),
        *(ROOT / "plugins/swardcast/templates").glob("*.html"),
        *(ROOT / "plugins/swardcast/outlets/templates").glob("*.html"),
    ]
)
SHOWN = re.compile(r'(?:aria-label|alt|title|content)="([^"]*)"')
NO_WORDS = {"width=device-width, initial-scale=1", "light dark", "noindex"}  # for browsers


def _voice(tag: str, own: str = "") -> Voice:
    return Voice(catalogue=with_house_phrases(tag, {"phrases/own.ftl": own}), near=date(2027, 9, 14))


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: f"{path.parents[1].name}-{path.name}")
def test_a_template_has_no_word_of_its_own(path: Path) -> None:
    tree = Environment(autoescape=True, extensions=["jinja2.ext.do"]).parse(path.read_text(encoding="utf-8"))
    # What is put in stands as a dash, so that tags with links or classes in them stay whole.
    parts = [
        part.data if isinstance(part, nodes.TemplateData) else "-"
        for output in tree.find_all(nodes.Output)
        for part in output.nodes
    ]
    text = "".join(parts)
    shown = [one for one in SHOWN.findall(text) if one not in NO_WORDS]
    attributes = [one.removeprefix("0; url=") for one in shown]  # of a page that leads on
    plain = re.sub(r"<style\b.*?</style>", " ", text, flags=re.DOTALL)  # an e-mail has its styles with it
    left = re.sub(r"<[^>]*>", " ", re.sub(r"<!DOCTYPE html>", "", plain))
    assert not re.search(r"[^\W\d_]", " ".join([left, *attributes])), (left.split(), attributes)


def test_a_link_stands_where_the_phrase_wants_it() -> None:
    voice = _voice("en-GB", "site-last-news = { $day }: the last news\n")
    said = say_html(voice, "site-last-news", day=Markup("<time>Monday</time>"))
    assert said == "<time>Monday</time>: the last news"


def test_words_are_escaped_and_what_is_put_in_too() -> None:
    voice = _voice("en-GB", "site-also = <b>Also</b> { $what }\n")
    assert say_html(voice, "site-also", what="<i>tees</i>") == "&lt;b&gt;Also&lt;/b&gt; &lt;i&gt;tees&lt;/i&gt;"


def test_a_typed_character_of_private_use_brings_nothing_in() -> None:
    """U+E000 and the next are what HTML hides behind while a phrase is escaped."""
    voice, strong = _voice("en-GB"), Markup("<strong>A</strong>")
    assert say_html(voice, "site-fact", name=strong, value="typed \ue000 mark") == "<strong>A</strong>: typed  mark"
    own = Markup("<em>typed \ue001</em>")
    assert say_html(voice, "site-fact", name=own, value=Markup("<b>B</b>")) == "<em>typed \ue001</em>: <b>B</b>"


def test_a_number_still_brings_its_plural() -> None:
    assert say_html(_voice("en-GB"), "site-holes", holes="7", count=1) == "Hole 7:"
    assert say_html(_voice("en-GB"), "site-holes", holes="7 and 8", count=2) == "Holes 7 and 8:"
    assert say_html(_voice("en-GB"), "sums-other-places", count=1) == "The other place of this work"


def test_americans_hear_from_the_superintendent() -> None:
    assert built_in("en-GB").say("site-from-the-manager", {}) == "From the course manager"
    assert built_in("en-US").say("site-from-the-manager", {}) == "From the superintendent"
