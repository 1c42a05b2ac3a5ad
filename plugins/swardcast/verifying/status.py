"""The status file: as its published schema says, and the same as the page."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from typing import Any, Final

from lxml.html import HtmlElement

from swardcast.verifying.built_site import INDEX, STATUS, BuiltSite, Fault
from swardcast.verifying.shown import as_shown, shown

__all__ = ["status_faults"]

_SCHEMA: Final = "status.schema.json"


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
        status, schema = (json.loads(site.files[name]) for name in (STATUS, _SCHEMA))
    except (KeyError, ValueError) as error:
        yield Fault(file=STATUS, says=f"cannot be read beside {_SCHEMA}: {error!r}")
        return
    kind = validator_for(schema)
    found = [*kind(schema, format_checker=kind.FORMAT_CHECKER).iter_errors(status)]
    yield from (Fault(file=STATUS, says=f"{one.json_path}: {one.message}") for one in found)
    if not found:
        yield from _against_the_page(status, site)


def _against_the_page(status: dict[str, Any], site: BuiltSite) -> Iterator[Fault]:
    """A theme need not show every line, nor any date; what it shows has to be the same."""
    page = site.page(INDEX)
    words = shown(page) if page is not None else ""
    if as_shown(status["sentence"]) not in words and not _in_a_heading(status["sentence"], page):
        yield _lacks("the sentence", status["sentence"])
    for line in status["lines"]:
        where, play = as_shown(line["where"]), line["play"]["words"]
        if where not in words:
            continue
        if re.search(rf"{re.escape(where)}\W{{1,3}}{re.escape(as_shown(play))}", words) is None:
            yield _lacks(f"play on {line['where']}", play)
        for date in line["dates"]:
            if f"{as_shown(date['name'])}:" in words and as_shown(date["words"]) not in words:
                yield _lacks(f"{date['name']} of {line['where']}", date["words"])


def _in_a_heading(sentence: str, page: HtmlElement | None) -> bool:
    """Whether a heading has the very words: it shows the sentence in two parts, turned round in some languages."""
    headings = page.xpath("//h1") if page is not None else ()
    return any(_words(shown(heading)) == _words(as_shown(sentence)) for heading in headings)


def _words(text: str) -> list[str]:
    return sorted(re.findall(r"\w+", text))


def _lacks(what: str, wanted: str) -> Fault:
    return Fault(file=INDEX, says=f"does not show {what} as {STATUS} has it: {wanted!r}")
