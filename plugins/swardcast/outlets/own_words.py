"""The manager's own Markdown -> harmless HTML: log and plan come from several hands."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final
from unicodedata import bidirectional
from urllib.parse import urljoin

import markdown
import nh3

__all__ = ["own_words_for_mail", "own_words_html"]

_TAGS: Final = {
    "a", "abbr", "blockquote", "br", "code", "em", "h3", "h4", "hr", "li", "ol", "p", "pre", "strong", "table",
    "tbody", "td", "th", "thead", "tr", "ul",
}  # fmt: skip
_TAG: Final = re.compile("<[^>]*>")
_NO_LINKS_OF_PELICAN: Final = {ord(sign): f"&#{ord(sign)};" for sign in "{}|"}
"""Pelican puts addresses of its own for `{author}me` or `|filename|x` wherever they stand in a tag."""
_SAID_IN: Final = ("h3", "h4", "li", "p", "td", "th")
_SCHEMES: Final = {"http", "https", "mailto", "tel"}


def own_words_for_mail(text: str, page: str) -> str:
    """Render the manager's Markdown for an e-mail, where a link has to be whole.

    Args:
        text: Markdown.
        page: address of the page from which its links were meant.

    Returns:
        HTML as `own_words_html` gives it, every link absolute.
    """

    def whole(tag: str, attribute: str, value: str) -> str:
        del tag
        return urljoin(page, value) if attribute == "href" else value

    attributes = {"a": {"href", "title"}, **{tag: {"dir"} for tag in _SAID_IN}}
    return nh3.clean(own_words_html(text), attributes=attributes, attribute_filter=whole, link_rel=None)


@lru_cache(maxsize=512)
def own_words_html(text: str) -> str:
    """Render the manager's Markdown; raw HTML is dropped, links go only to the web, mail and telephone.

    Args:
        text: Markdown.

    Returns:
        HTML with block elements; headings start at h3. Where letters run from right to left, each block goes by its
        own first letter.
    """
    writer = markdown.Markdown(extensions=["fenced_code", "sane_lists", "tables"], output_format="html")
    writer.preprocessors.deregister("html_block")
    writer.inlinePatterns.deregister("html")
    rendered = writer.convert(text)
    for level, lower in (("2", "4"), ("1", "3")):
        rendered = rendered.replace(f"<h{level}>", f"<h{lower}>").replace(f"</h{level}>", f"</h{lower}>")
    runs_left = any(bidirectional(letter) in ("R", "AL") for letter in text)  # Unicode Standard Annex 9, table 4
    clean = nh3.clean(
        rendered,
        tags=_TAGS,
        attributes={"a": {"href", "title"}},
        set_tag_attribute_values={tag: {"dir": "auto"} for tag in _SAID_IN} if runs_left else {},
        url_schemes=_SCHEMES,
        link_rel="noopener",
    )
    return _TAG.sub(lambda tag: tag[0].translate(_NO_LINKS_OF_PELICAN), clean)
