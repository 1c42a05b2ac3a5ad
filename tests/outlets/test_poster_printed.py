"""Posters as a browser prints them: one page of each paper, every word on it, the code read from the picture."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pypdf
import pypdfium2
import pytest
import zxingcpp

from swardcast.cli import build_pdf
from swardcast.compose import Bulletin
from swardcast.notices.notice import Notice, Sentence
from swardcast.outlets.open_graph import OpenGraph
from swardcast.outlets.poster import poster_artifacts
from swardcast.outlets.short_addresses import short_addresses
from swardcast.records.plan import Part
from tests.printed import words_of

BROWSER = next(filter(None, map(shutil.which, build_pdf.BROWSERS)), None)
pytestmark = pytest.mark.skipif(
    BROWSER is None, reason=f"no browser that prints ({', '.join(build_pdf.BROWSERS)}): posters are not printed"
)
# ISO 216 and ANSI/ASME Y14.1 in points of 1/72 inch.
PAPERS = {"A4": (595, 842), "letter": (612, 792)}


def _longer(notice: Notice) -> Notice:
    """Everything long: title, own words, two labels."""
    labels = [
        Sentence(text=f"Label {n}: {'keep off until it has dried, ' * 12}ends.", source=notice.planned_in) for n in "ab"
    ]
    sections = [replace(s, points=(*labels, *s.points)) if s.part is Part.TAKE_CARE else s for s in notice.sections]
    return replace(
        notice,
        headline=f"{'Hollow tining, scarifying, sanding and overseeding ' * 5}of the greens",
        own_words="\n\n".join(["Words of the course manager that go on for a while. " * 5] * 12),
        sections=tuple(sections),
    )


CASES: dict[str, tuple[str, Callable[[Notice], Notice]]] = {
    "work that heals": ("greens-renovation-2027", lambda notice: notice),
    "a label": ("greens-leaf-disease-2027", lambda notice: notice),
    "a title of days": ("winter-ropes-2027", lambda notice: notice),
    "everything long": ("greens-renovation-2027", _longer),
    "one long word": ("path-10-2027", lambda notice: replace(notice, headline="Bewässerungsleitungs" * 4)),
    "broad letters": ("path-10-2027", lambda notice: replace(notice, headline="WWWW MMMM @@@@ " * 12)),
    "right to left": ("path-10-2027", lambda notice: replace(notice, headline="עבודה על השביל בגומה 10 & <b> 🏌️ " * 4)),
}  # fmt: skip


def _one(bulletin: Bulletin, case: str) -> Notice:
    name, change = CASES[case]
    return change(next(notice for notice in bulletin.notices if notice.id == name))


def _print(folder: Path, bulletin: Bulletin, paper: str) -> Path:
    for artifact in poster_artifacts(bulletin, OpenGraph(bulletin=bulletin, pictures={})):
        target = folder / artifact.path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(artifact.data.replace(b'data-paper="A4"', f'data-paper="{paper}"'.encode()))
    assert build_pdf.print_posters(folder) == 0
    (pdf,) = folder.rglob("poster.pdf")
    return pdf


@pytest.mark.parametrize(
    ("case", "paper"), [*((case, "letter") for case in CASES), ("work that heals", "A4"), ("everything long", "A4")]
)
def test_a_poster_is_one_page_with_every_word_that_must_stand_there(
    demo_bulletin: Bulletin, tmp_path: Path, case: str, paper: str
) -> None:
    notice = _one(demo_bulletin, case)
    pdf = _print(tmp_path, replace(demo_bulletin, notices=(notice,)), paper)
    (page,) = (read := pypdf.PdfReader(pdf)).pages
    assert {name: told for name, told in (read.metadata or {}).items() if name not in ("/Title", "/Producer")} == {
        "/Creator": "Swardcast"
    }
    assert (round(float(page.mediabox.width)), round(float(page.mediabox.height))) == PAPERS[paper]
    drawn = pypdfium2.PdfDocument(pdf)[0].render(scale=2).to_numpy()
    address = short_addresses(demo_bulletin)[notice.id]
    assert [code.text for code in zxingcpp.read_barcodes(drawn)] == [address]
    said = words_of(page)
    labels = [
        p.text for s in notice.sections if s.part is Part.TAKE_CARE for p in s.points if p.source == notice.planned_in
    ]
    for words in (notice.short_answer, address.removeprefix("https://"), "Quillhaven Golf Club", *labels):
        assert words in said
    if case != "right to left":  # a PDF keeps the order of letters as they are drawn
        assert " ".join(notice.headline.split()) in said
