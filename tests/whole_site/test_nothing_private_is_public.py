"""What the club keeps to itself reaches no byte of the built site: prices, aims, choices, private notes, its files."""

from __future__ import annotations

import base64
import gzip
import io
import struct
import subprocess
import zlib
from collections.abc import Callable
from pathlib import Path

import pypdf
import pytest
from pypdf.generic import DecodedStreamObject, DictionaryObject, NameObject

from swardcast.compose import Bulletin
from swardcast.outlets.email import email_artifacts
from swardcast.records.folder import ClubRecords
from tests.conftest import DEMO, bytes_in
from tests.private_values import Private, forms_of, found_in, leaks, private_of, without_private

A_TONNE = Private(words=frozenset({"the club's fat tines"}), numbers=frozenset({"47.35", "1,934.60"}))


@pytest.fixture(scope="module")
def private(demo_records: ClubRecords) -> Private:
    return private_of(DEMO, demo_records)


def test_the_demo_has_private_values_that_tell_themselves(private: Private) -> None:
    assert {"47.35", "83.65", "412.75", "17.63", "8.37", "1,934.60"} <= private.numbers
    assert {"fat hollow tines, wide apart", "wilfred", "his quotation of £1,934.60", "odile"} <= private.words
    assert {"choices.yaml", "plan/2027-late-summer.yaml", "47.35 per tonne"} <= private.words


def test_no_file_of_the_site_says_one_of_them(demo_site: Path, private: Private) -> None:
    assert len(list(demo_site.rglob("*.html"))) > 100
    assert leaks(demo_site, private) == []


def test_no_draft_of_an_email_says_one_of_them(demo_bulletin: Bulletin, private: Private) -> None:
    """A build writes them only when it is asked to."""
    drafts = [one for one in email_artifacts(demo_bulletin, drafts=True) if one.path.endswith(".eml")]
    assert len(drafts) > 10
    assert [one.path for one in drafts if found_in(one.path, one.data, private)] == []


def test_the_site_is_the_same_bytes_without_all_that_is_private(
    demo_site: Path, club: Path, run_swardcast: Callable[..., subprocess.CompletedProcess[str]], tmp_path: Path
) -> None:
    """So nothing on it hangs on any of that, not even the place of a line. Another clock and hash change nothing either."""
    without_private(club)
    again, odd = tmp_path / "again", {"PYTHONHASHSEED": "7", "TZ": "Asia/Tokyo"}
    done = run_swardcast("build", "--club", str(club), "--output", str(again), "--as-of", "2027-09-14 09:30", **odd)
    assert done.returncode == 0, done.stderr
    assert bytes_in(demo_site) == bytes_in(again)


def test_a_copy_without_them_has_none_of_them(club: Path, private: Private) -> None:
    without_private(club)
    for name in ("club.yaml", "plan/2027-late-summer.yaml", "log/2027/2027-08-24-1815-not-the-12th.md"):
        assert found_in(name, (club / name).read_bytes(), private) == []
        assert found_in(name, (DEMO / name).read_bytes(), private) != []
    assert not (club / "choices.yaml").exists()


# One that leaked would be found


def a_picture(kind: bytes, data: bytes) -> bytes:
    return b"\x89PNG\r\n\x1a\n" + struct.pack(">I", len(data)) + kind + data + bytes(4)


def a_pdf(words: str, title: str) -> bytes:
    """A page with a line of text, packed, and a title."""
    writer = pypdf.PdfWriter()
    page = writer.add_blank_page(width=300, height=100)
    names = ("Type", "Subtype", "BaseFont")
    font = DictionaryObject(
        {
            NameObject(f"/{name}"): NameObject(f"/{value}")
            for name, value in zip(names, ("Font", "Type1", "Helvetica"), strict=True)
        }
    )
    fonts = DictionaryObject({NameObject("/F1"): font})
    page[NameObject("/Resources")] = DictionaryObject({NameObject("/Font"): fonts})
    stream = DecodedStreamObject()
    stream.set_data(f"BT /F1 12 Tf 20 50 Td ({words}) Tj ET".encode())
    page[NameObject("/Contents")] = writer._add_object(stream.flate_encode())
    writer.add_metadata({"/Title": title})
    written = io.BytesIO()
    writer.write(written)
    return written.getvalue()


def a_draft(words: str) -> bytes:
    head = b"Subject: The week\r\nMIME-Version: 1.0\r\nContent-Type: text/plain; charset=utf-8\r\n"
    return head + b"Content-Transfer-Encoding: base64\r\n\r\n" + base64.encodebytes(words.encode())


@pytest.mark.parametrize(
    ("name", "written"),
    [
        ("status.json", b'{"sentence": "with the club\\u0027s fat tines"}'),
        ("deep/below/notes.txt", "The Club’s fat\ntines".encode()),
        ("page.html", b"<p>the club&#39;s <em>fat</em> tines</p>"),
        ("feed.rss", b"<description>&lt;p&gt;the club&amp;#39;s fat tines&lt;/p&gt;</description>"),
        ("address.html", b'<a href="/?q=the%20club%27s%20fat%20tines">'),
        ("calendar.ics", b"BEGIN:VCALENDAR\r\nSUMMARY:with the club's fa\r\n t tines\r\n"),
        ("email.eml", a_draft("They use the club's fat tines.")),
        ("drawn.svg", b"<svg><title>the club's fat tines</title></svg>"),
        (
            "inside.css",
            b"url(data:image/svg+xml;base64," + base64.b64encode(b"<svg><desc>the club's fat tines</desc></svg>"),
        ),
        ("picture.png", a_picture(b"tEXt", b"Comment\0the club's fat tines")),
        ("packed.png", a_picture(b"zTXt", b"Comment\0\0" + zlib.compress(b"the club's fat tines"))),
        ("poster.pdf", a_pdf("the club's fat tines", "A poster")),
        ("title.pdf", a_pdf("Closed", "the club's fat tines")),
        ("page.html.gz", gzip.compress(b"the club's fat tines", mtime=0)),
    ],
)
def test_words_that_leaked_would_be_found(tmp_path: Path, name: str, written: bytes) -> None:
    place = tmp_path / name
    place.parent.mkdir(parents=True, exist_ok=True)
    place.write_bytes(written)
    assert leaks(tmp_path, A_TONNE) == [(name, "the club's fat tines")]


@pytest.mark.parametrize(
    ("name", "written", "found"),
    [
        ("page.html", b"<p>at 47.35 a tonne</p>", "47.35"),
        ("page.html", b"<td>&pound;47.35</td>", "47.35"),
        ("status.json", b'{"price": 47.35}', "47.35"),
        ("notes.txt", b"in all 1,934.60 pounds", "1,934.60"),
        ("poster.pdf", a_pdf("Sand at 47.35", "A poster"), "47.35"),
        ("picture.svg", b'<svg><text x="12">47.35</text></svg>', "47.35"),
    ],
)
def test_a_number_that_leaked_would_be_found(name: str, written: bytes, found: str) -> None:
    assert found_in(name, written, A_TONNE) == [found]


@pytest.mark.parametrize("written", [b"<p>147.35</p>", b"<p>47.351</p>", b'<path d="M 47.35 2"/>', b"<p>7.35</p>"])
def test_another_number_or_a_place_in_a_drawing_is_no_leak(written: bytes) -> None:
    assert found_in("page.html", written, A_TONNE) == []


def test_a_number_is_looked_for_as_it_may_be_written() -> None:
    # 412.75 with a comma; 1934.6 with its thousands parted; 47.35 per tonne is 42.96 per US ton of 907.185 kg;
    # 0.1763 of the surface is 17.63 %.
    assert {"412.75", "412,75"} <= set(forms_of("412.75"))
    assert {"1934.60", "1,934.60", "1.934,60", "1 934,60"} <= set(forms_of("£1,934.60"))
    assert {"47.35", "42.96"} <= set(forms_of("47.35 per tonne"))
    assert "17.63" in set(forms_of("0.1763"))


def test_a_number_that_may_stand_anywhere_is_not_looked_for() -> None:
    assert set(forms_of("6")) | set(forms_of("15 %")) | set(forms_of("2027-09-18")) | set(forms_of("2027")) == set()
