"""The status file: as its published schema says, and the same as the page."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from typing import Any, Final

from lxml.html import HtmlElement

from swardcast.verifying.built_site import BuiltSite, Fault
from swardcast.verifying.shown import shown

__all__ = ["status_faults"]

_STATUS: Final = "status.json"
_SCHEMA: Final = "status.schema.json"
_PAGE: Final = "index.html"


def status_faults(site: BuiltSite) -> Iterator[Fault]:
    """Find where the status file breaks its schema, or says otherwise than the status page.

    Args:
        site: the site.

    Yields:
        A fault where a file is missing or cannot be read, for each place that breaks the schema, and where the page
        lacks the sentence of the file, or shows a surface or a date in other words than the file.
    """
    from jsonschema.validators import validator_for  # noqa: PLC0415 - takes long to load

    try:
        status, schema = (json.loads(site.files[name]) for name in (_STATUS, _SCHEMA))
    except (KeyError, ValueError) as error:
        yield Fault(file=_STATUS, says=f"cannot be read beside {_SCHEMA}: {error!r}")
        return
    kind = validator_for(schema)
    found = [*kind(schema, format_checker=kind.FORMAT_CHECKER).iter_errors(status)]
    yield from (Fault(file=_STATUS, says=f"{one.json_path}: {one.message}") for one in found)
    if not found:
        yield from _against_the_page(status, site)


def _against_the_page(status: dict[str, Any], site: BuiltSite) -> Iterator[Fault]:
    """A theme need not show every line, nor any date; what it shows has to be the same."""
    page = site.pages.get(_PAGE)
    words = shown(page) if page is not None else ""
    if _small(status["sentence"]) not in words and not _in_a_heading(status["sentence"], page):
        yield _lacks("the sentence", status["sentence"])
    for line in status["lines"]:
        where, play = _small(line["where"]), line["play"]["words"]
        if where not in words:
            continue
        if re.search(rf"{re.escape(where)}\W{{1,3}}{re.escape(_small(play))}", words) is None:
            yield _lacks(f"play on {line['where']}", play)
        for date in line["dates"]:
            if f"{_small(date['name'])}:" in words and _small(date["words"]) not in words:
                yield _lacks(f"{date['name']} of {line['where']}", date["words"])


def _in_a_heading(sentence: str, page: HtmlElement | None) -> bool:
    """Whether a heading has the very words: it shows the sentence in two parts, turned round in some languages."""
    headings = page.xpath("//h1") if page is not None else ()
    return any(_words(shown(heading)) == _words(_small(sentence)) for heading in headings)


def _words(text: str) -> list[str]:
    return sorted(re.findall(r"\w+", text))


def _lacks(what: str, wanted: str) -> Fault:
    return Fault(file=_PAGE, says=f"does not show {what} as {_STATUS} has it: {wanted!r}")


def _small(words: str) -> str:
    return " ".join(words.split()).casefold()
