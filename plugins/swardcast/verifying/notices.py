"""Notices: none is empty, and what a page says of a job the status file, its data and its short address say too."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any, Final

from lxml import html

from swardcast.verifying.built_site import INDEX, STATUS, BuiltSite, Fault
from swardcast.verifying.shown import as_shown, shown

__all__ = ["notice_faults"]

_FOLDER: Final = "notices/"
_LEAST_WORDS: Final = 30
"""Words of a page below which a notice counts as empty; headline, answer and cautions alone have more: judgement."""
_LEAST_WORDS_UNTOLD: Final = 12
"""The same where the status tells nothing of the job: a withdrawn notice has its headline, when and why: judgement."""
_CANCELLED: Final = "https://schema.org/EventCancelled"
_CALLED_OFF: Final = "called off"


def notice_faults(site: BuiltSite) -> Iterator[Fault]:
    """Find empty notices, and notices of which two files say different things.

    Args:
        site: the site.

    Yields:
        A fault for a notice with hardly a word, and where its page lacks the headline or the short answer of the status
        file, its data for search engines differ from them, or its short address leads elsewhere.
    """
    told = {address: one for one in site.status.get("notices", []) if (address := site.page_of(one["address"]))}
    pages = {name for name in site.pages if name.startswith(_FOLDER) and name.endswith(f"/{INDEX}")}
    pages = {name for name in pages if name.count("/") == 2}  # noqa: PLR2004 - notices/ID/index.html
    for name in sorted(pages | set(told)):
        page = site.page(name)
        words = shown(_main(page)) if page is not None else ""
        if len(words.split()) < (_LEAST_WORDS if name in told else _LEAST_WORDS_UNTOLD):
            yield Fault(file=name, says="is a notice without words")
        elif name in told and page is not None:
            yield from _against(told[name], page, words, name)
            yield from _short_address(told[name], name, site)


def _main(page: html.HtmlElement) -> html.HtmlElement:
    """The notice itself, where the theme marks it."""
    found = page.xpath("//main | //article")
    return found[0] if found else page


def _against(told: dict[str, Any], page: html.HtmlElement, words: str, name: str) -> Iterator[Fault]:
    for key in ("headline", "short_answer"):
        if as_shown(told[key]) not in words:
            yield Fault(file=name, says=f"does not show what {STATUS} has as its {key}: {told[key]!r}")
    for script in page.xpath("//script[@type='application/ld+json']"):
        data = json.loads(script.text_content())
        if data.get("@type") != "Event":
            continue
        for key, mine in (("name", "headline"), ("description", "short_answer")):
            if data.get(key) != told[mine]:
                yield Fault(file=name, says=f"its data for search engines has another {mine}: {data.get(key)!r}")
        if (data.get("eventStatus") == _CANCELLED) is not (told["state"]["state"] == _CALLED_OFF):
            yield Fault(
                file=name,
                says=f"its data for search engines says {data.get('eventStatus')} of work that is"
                f" {told['state']['words']}",
            )


def _short_address(told: dict[str, Any], name: str, site: BuiltSite) -> Iterator[Fault]:
    short = site.page_of(told["short_address"])
    page = site.page(short or "")
    if page is None:
        yield Fault(file=name, says=f"nothing answers its short address {told['short_address']}")
    elif name not in {site.page_of(link) or "" for link in _absolute(page, told["short_address"])}:
        yield Fault(file=short or "", says=f"does not lead to {name}")


def _absolute(page: html.HtmlElement, address: str) -> list[str]:
    page.make_links_absolute(address, resolve_base_href=True)
    return [link for _, _, link, _ in page.iterlinks()]
