"""The club's badge and colours as typed, and what is said when they cannot be used."""

from __future__ import annotations

import struct
import zlib
from pathlib import Path

import pytest

from swardcast.colours import USUAL_PALETTE
from swardcast.reading.folder import read_club_folder
from tests.conftest import DEMO
from tests.reading.breaking import assert_said, fault, replace

COLOUR, SECOND = '  colour: "#5d2b5a"\n', '  second colour: "#e3b341"\n'
BADGE = "  badge: badge.svg\n"
SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10">{}</svg>'


def test_the_demo_has_a_badge_and_two_colours(club: Path) -> None:
    look = read_club_folder(club).club.look
    assert (look.palette.band, look.palette.stripe) == ("#5d2b5a", "#e3b341")
    assert look.badge is not None
    assert (look.badge.name, look.badge.media_type, look.badge.ratio) == ("badge.svg", "image/svg+xml", 1.0)
    assert look.badge.data == (DEMO / "badge.svg").read_bytes()


def test_american_spelling_is_read_too(club: Path) -> None:
    replace(club / "club.yaml", COLOUR + SECOND, COLOUR.replace("colour", "color") + SECOND.replace("colour", "color"))
    assert read_club_folder(club).club.look.palette.stripe == "#e3b341"


def test_without_a_look_the_usual_colours_stand_and_no_badge(club: Path) -> None:
    replace(club / "club.yaml", "look:\n" + BADGE + COLOUR + SECOND, "")
    (club / "badge.svg").unlink()
    look = read_club_folder(club).club.look
    assert (look.badge, look.palette) == (None, USUAL_PALETTE)


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        fault(
            "a light colour", COLOUR, '  colour: "#ffd200"\n',
            "line «colour: », look.colour: found '#ffd200', whose contrast with the paper (links have it) is 1.3 : 1; "
            "expected at least 4.5 : 1. The nearest colour that would do is '#8c6e00'.",
        ),
        fault(
            "two dark colours", SECOND, '  second colour: "#123456"\n',
            "line «second colour: », look.second colour: found '#123456', whose contrast with the first colour #5d2b5a is "
            "1.1 : 1; expected at least 3.0 : 1. The nearest colour that would do is '…'.",
        ),
        fault(
            "no quotation marks", COLOUR, "  colour: #5d2b5a\n",
            'line «colour: », look.colour: found nothing; expected a colour, such as "#5d2b5a". Put it between quotation '
            "marks: without them everything behind a # is a remark.",
        ),
        fault(
            "a name", COLOUR, "  colour: purple\n",
            "line «colour: », look.colour: found 'purple'; expected a colour as '#' and six digits from 0 to f, such as "
            "'#5d2b5a'",
        ),
        fault(
            "both spellings", COLOUR, COLOUR + '  color: "#5d2b5a"\n',
            "line « color: », look.color: found the same in both spellings; expected one of them",
        ),
        fault(
            "the second alone", COLOUR, "",
            "line «second colour: », look.second colour: found a second colour alone; expected the field 'colour' beside it",
        ),
        fault(
            "a misspelt field", COLOUR, '  coluor: "#5d2b5a"\n',
            "line «coluor: », look.coluor: found the unknown field 'coluor'; expected one of: …. Did you mean 'color'?",
        ),
    ],
)  # fmt: skip
def test_a_colour_that_cannot_be_used_is_told(club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(club / "club.yaml", old, new)
    assert_said(club, "club.yaml", says)


@pytest.mark.parametrize(
    ("inside", "says"),
    [
        ("<script>alert(1)</script>", " with <script>"),
        ("<style>@import 'x.css'</style>", " with <style>"),
        ('<a xmlns="http://www.w3.org/2000/svg" href="#x"/>', " with <a>"),
        ('<foreignObject><p xmlns="http://www.w3.org/1999/xhtml"/></foreignObject>', " with <foreignObject>"),
        ('<path d="M0 0" onload="alert(1)"/>', " with the event handler 'onload'"),
        ('<use href="https://elsewhere.example/a.svg#b"/>', " with the address 'https://elsewhere.example/a.svg#b'"),
        ('<use xmlns:xlink="http://www.w3.org/1999/xlink" xlink:href="a.svg#b"/>', " with the address 'a.svg#b'"),
        ('<rect fill="url(a.svg#b)"/>', " with the address 'url(a.svg#b)'"),
        ("<rect style=\"fill: url('//elsewhere.example/b')\"/>", " with the address"),
        ('<rect style="background: u\\72l(a)"/>', " with the address"),
        ("<g>", ", which is no well-formed SVG (mismatched tag: line 1, column"),
    ],
)  # fmt: skip
def test_an_svg_that_does_more_than_draw_is_refused(club: Path, inside: str, says: str) -> None:
    (club / "badge.svg").write_text(SVG.format(inside), encoding="utf-8")
    assert_said(club, "club.yaml", (f"line «badge: », look.badge: found 'badge.svg'{says}…expected …",))


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"GIF89a", "found 'badge.svg', which is neither SVG nor PNG; expected the badge as SVG or PNG"),
        (b"\xff\xd8\xff\xe0", "found 'badge.svg', which is neither SVG nor PNG; expected the badge as SVG or PNG"),
        (b"<html><svg/></html>", "found 'badge.svg', which is neither SVG nor PNG; expected the badge as SVG or PNG"),
        (b'<!DOCTYPE svg [<!ENTITY a "b">]><svg/>', "found 'badge.svg' with <!DOCTYPE> or <!ENTITY>; expected …"),
        (SVG.format("<!--" + "x" * 50_000 + "-->").encode(), "found 'badge.svg' with 50 KB; expected at most 50 KB"),
        (SVG.replace(' viewBox="0 0 10 10"', "").encode(), "found 'badge.svg' without a size; expected …"),
        (SVG.replace("0 0 10 10", "0 0 90 10").encode(), "found 'badge.svg', 9 times as wide as high; expected …"),
        (SVG.replace("0 0 10 10", "0 0 10 nan").encode(), "found 'badge.svg' without a size; expected …"),
        (b"\x89PNG\r\n\x1a\n" + bytes(40), "found 'badge.svg', a PNG that is cut off; expected a whole picture"),
    ],
)  # fmt: skip
def test_a_file_that_is_no_fit_badge_is_refused(club: Path, data: bytes, says: str) -> None:
    (club / "badge.svg").write_bytes(data)
    assert_said(club, "club.yaml", (f"line «badge: », look.badge: {says}",))


def test_a_badge_that_is_not_there_is_told(club: Path) -> None:
    (club / "badge.svg").unlink()
    says = "found no file 'badge.svg' beside club.yaml; expected the badge as SVG or PNG"
    assert_said(club, "club.yaml", (f"line «badge: », look.badge: {says}",))


@pytest.mark.parametrize("name", ["../badge.svg", "/etc/hostname", "pictures/badge.svg"])
def test_a_badge_lies_beside_the_club_file(club: Path, name: str) -> None:
    replace(club / "club.yaml", BADGE + COLOUR + SECOND, f"  badge: {name}\n")
    (club / "badge.svg").unlink()
    says = f"found {name!r}; expected the name of a file beside club.yaml, such as 'badge.svg'"
    assert_said(club, "club.yaml", (f"line «badge: », look.badge: {says}",))


def _png(width: int, height: int) -> bytes:
    """A grey picture (W3C, Portable Network Graphics, third edition, section 5)."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    rows = zlib.compress((b"\0" + b"\x80" * width) * height)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")


def test_a_png_is_known_by_its_content_and_its_size(club: Path) -> None:
    (club / "badge.svg").write_bytes(_png(200, 100))
    badge = read_club_folder(club).club.look.badge
    assert badge is not None
    assert (badge.name, badge.media_type, badge.ratio) == ("badge.png", "image/png", 2.0)
    (club / "badge.svg").write_bytes(_png(40, 40))
    assert_said(
        club,
        "club.yaml",
        ("line «badge: », look.badge: found 'badge.svg' with 40 x 40 pixels; expected at least 88 each way",),
    )


def test_a_stray_picture_is_still_a_stranger(club: Path) -> None:
    (club / "other.svg").write_text(SVG.format(""), encoding="utf-8")
    assert_said(club, "other.svg", ("the file: found a file or folder that is not part of a club folder; expected …",))
