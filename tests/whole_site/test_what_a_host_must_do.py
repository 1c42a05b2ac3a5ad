"""The README tells what a host must do with every kind of file that a build makes."""

from __future__ import annotations

import mimetypes
import re
from pathlib import Path

import pytest

from tests.conftest import ROOT

TABLE = (ROOT / "README.md").read_text(encoding="utf-8").split("### What a host must do")[1].split("\n\n")[1]


def _told() -> dict[str, str]:
    """Each ending with its media type, in the order of the table."""
    told: dict[str, str] = {}
    for row in TABLE.splitlines():
        kinds, what = row.strip("|").split("|")
        endings, types = re.findall(r"`(\.[a-z]+)`", kinds), re.findall(r"`([a-z]+/[a-z0-9.+-]+)`", what)
        told.update(zip(endings, types, strict=False))
    return told


def test_each_ending_of_the_site_has_its_media_type(demo_site: Path) -> None:
    endings = {path.suffix for path in demo_site.rglob("*") if path.is_file() and path.name[0] not in "._"}
    assert endings <= _told().keys()


@pytest.mark.parametrize(
    ("ending", "registered"),
    [(".ics", "text/calendar"), (".rss", "application/rss+xml"), (".atom", "application/atom+xml"),
     (".js", "text/javascript"), (".eml", "message/rfc822"), (".svg", "image/svg+xml"), (".xml", "application/xml")],
)  # fmt: skip
def test_the_media_types_are_those_that_are_registered(ending: str, registered: str) -> None:
    """RFC 5545 (calendar), RFC 4287 (Atom), RFC 9239 (JavaScript), RFC 2046 (messages), RFC 7303 (XML)."""
    assert _told()[ending] == registered


def test_python_names_the_others_alike() -> None:
    for ending in (".html", ".css", ".txt", ".json", ".png", ".pdf"):
        assert mimetypes.guess_type(f"x{ending}", strict=True)[0] == _told()[ending]
