"""The one way in which outlets render their templates: escaped, with the words of the catalogue."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache

from jinja2 import Environment, PackageLoader
from markupsafe import Markup, escape

from swardcast.language.voice import Voice, capital
from swardcast.outlets.own_words import own_words_html
from swardcast.outlets.policy import OF_ONE_FILE, OF_PAGES
from swardcast.outlets.saying import words_for_templates

__all__ = ["rendered"]


@cache
def _environment() -> Environment:
    environment = Environment(
        loader=PackageLoader("swardcast", "outlets/templates"), autoescape=True, trim_blocks=True, lstrip_blocks=True
    )
    environment.globals.update(policy_of_pages=OF_PAGES, policy_of_one_file=OF_ONE_FILE)
    environment.filters["capital"] = capital
    environment.filters["own_words"] = lambda text: Markup(own_words_html(text))  # noqa: S704 - cleaned by nh3
    environment.filters["with_links"] = _with_links
    return environment


def _with_links(text: str, ways: Iterable[tuple[str, str, str]]) -> Markup:
    """A text with links on the ways to reach somebody that it names."""
    told = escape(text)
    for address, words, shown in ways:
        link = Markup('<a href="{}">{}</a>').format(address, shown)
        told = told.replace(escape(words), link)
    return told


def rendered(template: str, voice: Voice, **values: object) -> str:
    """Render a template of `outlets/templates`.

    Args:
        template: its file name.
        voice: the language and the day of the reader.
        **values: what it shows, by name.

    Returns:
        HTML; every text is escaped.
    """
    return _environment().get_template(template).render(words_for_templates(voice), **values)
