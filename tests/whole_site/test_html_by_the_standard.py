"""Every page read by the rules of browsers (WHATWG HTML, as html5lib has them): not one parse error."""

from __future__ import annotations

from pathlib import Path

import html5lib
import pytest


def _errors(text: str) -> list[str]:
    parser = html5lib.HTMLParser()
    parser.parse(text)
    return [f"line {place[0]}: {code} {values}" for place, code, values in parser.errors]


@pytest.mark.parametrize("broken", ["<!DOCTYPE html><p><div></p>", "<!DOCTYPE html><b><i></b></i>", "<p>no doctype"])
def test_the_parser_tells_errors(broken: str) -> None:
    assert _errors(broken)


def test_no_page_has_a_parse_error(demo_site: Path) -> None:
    pages = sorted(demo_site.rglob("*.html"))
    assert len(pages) > 100
    assert {
        page.relative_to(demo_site).as_posix(): found for page in pages if (found := _errors(page.read_text("utf-8")))
    } == {}
