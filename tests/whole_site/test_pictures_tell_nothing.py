"""No picture of a site tells who made it, with what, when or where; and no page or feed names anybody whom nobody typed."""

from __future__ import annotations

import io
import json
import re
import struct
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from lxml import etree
from PIL import Image, PngImagePlugin

from tests.conftest import bytes_in
from tests.outlook.small_club import SmallClub
from tests.png import chunks_of

SVG = "http://www.w3.org/2000/svg"
NOTE = "By The Kitchen Door"
SECONDS = (4012, 97)
"""Of a place, as a fraction that stands nowhere else (Exif 2.32, GPSLatitude: two numbers of 32 bits)."""


def test_every_picture_of_the_demo_is_a_png_or_an_svg(demo_site: Path) -> None:
    texts = {".html", ".css", ".js", ".txt", ".json", ".xml", ".rss", ".atom", ".ics"}
    others = {path.suffix for path in demo_site.rglob("*.*") if path.is_file() and not path.name.startswith((".", "_"))}
    assert others - texts == {".png", ".svg"}


def test_its_pngs_hold_nothing_but_what_is_seen(demo_site: Path) -> None:
    found = {path: {*chunks_of(path.read_bytes())} for path in demo_site.rglob("*.png")}
    assert len(found) > 10
    assert {kind for kinds in found.values() for kind in kinds} <= {"IHDR", "PLTE", "tRNS", "IDAT", "IEND"}


def _told_by(drawing: etree._Element) -> list[str]:
    """What in a drawing is not drawn: remarks, instructions, <metadata>, and names of other programs."""
    told = []
    for one in drawing.iter():
        names = [one.tag, *one.attrib] if isinstance(one.tag, str) else []
        if not names or one.tag == f"{{{SVG}}}metadata":
            told.append(str(one))
        told.extend(name for name in names if name.startswith("{") and not name.startswith(f"{{{SVG}}}"))
    return told


def test_its_drawings_hold_nothing_but_what_is_seen(demo_site: Path) -> None:
    files = [*demo_site.rglob("*.svg")]
    assert {path.name for path in files} == {"badge.svg", "mark.svg"}
    for path in files:
        drawing = etree.parse(path).getroot()
        assert (_told_by(drawing), drawing.getprevious(), drawing.getnext()) == ([], None, None), path
    drawn = {
        svg for path in demo_site.rglob("*.html") for svg in re.findall(r"<svg.*?</svg>", path.read_text(), re.DOTALL)
    }
    assert len(drawn) > 10
    for svg in drawn:
        assert not re.search(
            r"<!--|<\?|<metadata|<desc>[^<]*generat|\s(?!xlink:|xml:|xmlns:xlink)[a-z]+:[a-z-]+=", svg
        ), svg


def test_no_page_names_a_program_or_a_person_in_its_head(demo_site: Path) -> None:
    for path in demo_site.rglob("*.html"):
        assert not re.search(r'<meta\s+name="?(generator|author|creator)', path.read_text(encoding="utf-8")), path


def test_feeds_have_the_club_for_an_author_and_nobody_else(demo_site: Path) -> None:
    feeds = {path.name: path.read_text(encoding="utf-8") for path in demo_site.glob("feeds/*.*")}
    authors = {one for text in feeds.values() for one in re.findall(r"<author>.*?<name>(.*?)</name>", text, re.DOTALL)}
    for name, text in feeds.items():
        assert not re.search(r"<(dc:creator|managingEditor|webMaster|contributor)", text), name
        if name.endswith(".json"):
            authors |= {one["name"] for one in json.loads(text).get("authors", [])}
    assert authors == {"Quillhaven Golf Club"}


# Pictures that a club brings


def _noted() -> Image.Exif:
    exif = Image.Exif()
    exif[0x010E] = exif[0x013B] = NOTE  # ImageDescription, Artist
    exif.get_ifd(0x8825).update({1: "N", 2: (51.0, 28.0, SECONDS[0] / SECONDS[1]), 28: NOTE.encode()})
    return exif


def _saved(form: str, **more: object) -> bytes:
    data = io.BytesIO()
    Image.linear_gradient("L").save(data, form, exif=_noted(), **more)
    return data.getvalue()


@pytest.fixture(scope="module")
def own_pictures() -> dict[str, bytes]:
    texts = PngImagePlugin.PngInfo()
    texts.add_text("Author", NOTE)
    return {
        "badge.png": _saved("PNG", pnginfo=texts),
        "web/green.jpg": _saved("JPEG"),
        "web/green.webp": _saved("WEBP"),
    }


@pytest.fixture(scope="module")
def site(
    own_pictures: dict[str, bytes],
    run_swardcast: Callable[..., subprocess.CompletedProcess[str]],
    tmp_path_factory: pytest.TempPathFactory,
) -> Path:
    club = SmallClub(tmp_path_factory.mktemp("pictures") / "club")
    club.job("cores", "09-20")
    with (club.folder / "club.yaml").open("a", encoding="utf-8") as file:
        file.write("look: {badge: badge.png}\n")
    (club.folder / "web").mkdir()
    for name, data in own_pictures.items():
        (club.folder / name).write_bytes(data)
    output = club.folder.with_name("site")
    done = run_swardcast("build", "--club", str(club.folder), "--output", str(output), "--as-of", "2027-09-14 09:30")
    assert done.returncode == 0, done.stderr
    return output


def test_what_a_camera_noted_does_not_reach_the_site(own_pictures: dict[str, bytes], site: Path) -> None:
    place = [struct.pack(order, *SECONDS) for order in ("<II", ">II")]
    for data in own_pictures.values():
        assert NOTE.encode() in data
        assert any(one in data for one in place)
    for name, data in bytes_in(site).items():
        assert NOTE.encode() not in data, name
        assert not any(one in data for one in place), name


def test_the_pictures_do(own_pictures: dict[str, bytes], site: Path) -> None:
    for name, data in own_pictures.items():
        with Image.open(io.BytesIO(data)) as noted, Image.open(site / Path(name).name) as shown:
            assert shown.tobytes() == noted.tobytes()
            assert not shown.getexif()
