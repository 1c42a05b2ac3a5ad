"""What the club keeps to itself reaches no byte of the built site: prices, aims, choices and their names."""

from __future__ import annotations

import html
import re
import zlib
from collections.abc import Iterator
from pathlib import Path

import pytest
import yaml

from tests.conftest import DEMO

LEAST_LETTERS = 4
"""A shorter text, such as "GBP" or "6", may stand anywhere by chance."""
COMMON = {"greens", "hollow tining", "solid tining", "topdressing", "brushing in", "scarifying", "sand injection"}
"""Words of the trade, which the plan has too."""
OF_THE_PLAN_TOO = {"the club's own experience"}
"""The plan says so of other work, in public."""


TEXTS = {".html", ".ics", ".rss", ".atom", ".json", ".xml", ".txt", ".svg", ".eml"}
"""Files whose letters may be written as references, or whose lines folded."""


def scalars(value: object) -> Iterator[str]:
    """Every text and number below a value of YAML, keys left out but for names."""
    match value:
        case dict():
            for one in value.values():
                yield from scalars(one)
        case list():
            for one in value:
                yield from scalars(one)
        case None:
            return
        case _:
            yield str(value)


def private_values(club: Path) -> set[str]:
    """What stands in the block "planning" of club.yaml and in choices.yaml."""
    block = yaml.safe_load((club / "club.yaml").read_text(encoding="utf-8"))["planning"]
    choices = yaml.safe_load((club / "choices.yaml").read_text(encoding="utf-8"))
    costs = {cost for one in choices["choices"] if (cost := one.get("cost per surface")) is not None}
    names = {one["name"] for one in choices["choices"]}
    usual = {one["normal after"]["source"] for one in choices["choices"] if "normal after" in one}
    found = {*scalars(block), *map(str, costs), *names, *usual} | {"choices.yaml"}
    found |= {text.split(" per ")[0].split(" ")[0] for text in found if text[:1].isdigit()}
    return {text for text in found if len(text) >= LEAST_LETTERS} - COMMON - OF_THE_PLAN_TOO


def bytes_of(path: Path) -> bytes:
    """A file's bytes, and what else they say: words packed into a picture, lines of a calendar unfolded, HTML read."""
    data = path.read_bytes()
    packed = b""
    if path.suffix == ".png":
        place = 8
        while place + 8 <= len(data):
            size, kind = int.from_bytes(data[place : place + 4], "big"), data[place + 4 : place + 8]
            packed += data[place + 8 : place + 8 + size] if kind in (b"tEXt", b"iTXt") else b""
            packed += (
                zlib.decompress(data[place + 8 : place + 8 + size].split(b"\0\0", 1)[1]) if kind == b"zTXt" else b""
            )
            place += 12 + size
    if path.suffix in TEXTS:
        unfolded = re.sub(rb"\r?\n[ \t]", b"", data)
        packed += unfolded + html.unescape(data.decode("utf-8", errors="replace")).encode()
    return data + packed


def found_in(data: bytes, value: str) -> bool:
    """Whether a value stands there; a number only where it is no part of another one."""
    written = re.escape(value.encode())
    if re.fullmatch(r"[\d.]+", value):
        written = rb"(?<![\d.])" + written + rb"(?!\d)"
    return re.search(written, data) is not None


def leaks(site: Path, values: set[str]) -> list[tuple[str, str]]:
    """Files of a site that hold a private value."""
    return [
        (path.relative_to(site).as_posix(), value)
        for path in sorted(site.rglob("*"))
        if path.is_file()
        for data in [bytes_of(path)]
        for value in sorted(values)
        if found_in(data, value)
    ]


def test_the_demo_has_private_values_that_tell_themselves() -> None:
    values = private_values(DEMO)
    assert {"47.35", "83.65", "412.75", "17.63", "8.37", "Fat hollow tines, wide apart"} <= values
    assert len(values) > 15


def test_no_byte_of_the_site_holds_one_of_them(demo_site: Path) -> None:
    assert len(list(demo_site.rglob("*.html"))) > 100
    assert leaks(demo_site, private_values(DEMO)) == []


@pytest.mark.parametrize("name", ["status.json", "deep/below/notes.txt", "picture.png"])
def test_one_that_leaked_would_be_found(tmp_path: Path, name: str) -> None:
    place = tmp_path / name
    place.parent.mkdir(parents=True, exist_ok=True)
    place.write_bytes(b"\x89PNG\r\n\x1a\n" + b"sand at 47.35 a tonne")
    assert leaks(tmp_path, private_values(DEMO)) == [(name, "47.35")]


@pytest.mark.parametrize(
    ("name", "written"),
    [
        ("page.html", b"<p>the club&#39;s fat tines</p>"),
        ("feed.rss", b"<title>the club&apos;s fat tines</title>"),
        ("calendar.ics", b"SUMMARY:with the club's fa\r\n t tines\r\n"),
    ],
)
def test_one_that_leaked_in_another_spelling_would_be_found(tmp_path: Path, name: str, written: bytes) -> None:
    (tmp_path / name).write_bytes(written)
    assert leaks(tmp_path, {"the club's fat tines"}) == [(name, "the club's fat tines")]
