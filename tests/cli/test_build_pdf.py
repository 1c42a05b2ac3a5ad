"""`build --pdf`: what it says and how it ends with a browser, without one, and with one that fails or hangs."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from swardcast.cli import build_pdf
from tests.outlook.small_club import SmallClub


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """A site with two posters, one on the paper of the United States."""
    for name, paper in (("a", "A4"), ("b", "letter")):
        folder = tmp_path / "site" / "notices" / name
        folder.mkdir(parents=True)
        (folder / "poster.html").write_text(f'<html lang="en" id="A4" data-paper="{paper}">', encoding="utf-8")
    return tmp_path / "site"


@pytest.fixture
def browser(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[[str], None]:
    """Put a browser of our own, a script, on a PATH that has nothing else."""
    folder = tmp_path / "bin"
    folder.mkdir()
    monkeypatch.setenv("PATH", str(folder))

    def put(script: str) -> None:
        (folder / "chromium-browser").write_text(f"#!/bin/sh\n{script}\n", encoding="utf-8")
        (folder / "chromium-browser").chmod(0o755)

    return put


PRINTS = 'for one in "$@"; do case "$one" in --print-to-pdf=*) file="${one#*=}";; file:*) page="$one";; esac; done\necho "$page" > "$file"'


def test_each_poster_is_printed_on_its_paper(
    site: Path, browser: Callable[[str], None], capsys: pytest.CaptureFixture[str]
) -> None:
    browser(PRINTS)
    assert build_pdf.print_posters(site) == 0
    printed = {path.parent.name: path.read_text(encoding="utf-8").strip() for path in site.rglob("poster.pdf")}
    assert printed == {
        "a": (site / "notices/a/poster.html").as_uri() + "#A4",
        "b": (site / "notices/b/poster.html").as_uri() + "#letter",
    }
    said = capsys.readouterr()
    assert (said.out, said.err) == ("", "Posters made into PDFs: 2 of 2.\n")


def test_a_poster_does_not_tell_when_it_was_printed_and_its_parts_stay_where_they_are(
    site: Path, browser: Callable[[str], None]
) -> None:
    told = (
        "<</Title (Day)\n/Creator (us)\n/CreationDate (D:20270914093012+01'00')\n/ModDate (D:20270914093012Z)>>\nxref"
    )
    browser(f'{PRINTS}\nprintf %s "{told}" > "$file"')
    assert build_pdf.print_posters(site) == 0
    printed = (site / "notices/a/poster.pdf").read_bytes()
    assert printed.split() == [b"<</Title", b"(Day)", b"/Creator", b"(us)", b">>", b"xref"]
    assert (len(printed), printed.index(b"xref")) == (len(told), told.index("xref"))


def test_without_a_browser_it_says_so_and_the_site_is_built(
    run_swardcast: Callable[..., subprocess.CompletedProcess[str]], tmp_path: Path
) -> None:
    club, output, empty = SmallClub(tmp_path / "club"), tmp_path / "site", tmp_path / "empty"
    club.job("cores", "09-20")
    empty.mkdir()
    done = run_swardcast(
        "build",
        "--club",
        str(club.folder),
        "--output",
        str(output),
        "--as-of",
        "2027-09-14 09:30",
        "--pdf",
        PATH=str(empty),
    )
    assert done.returncode == 0, done.stderr
    assert (output / "notices/cores/poster.html").is_file()
    assert not list(output.rglob("*.pdf"))
    assert "no browser was found on the PATH (looked for chromium, chromium-browser, google-chrome)" in done.stderr
    assert done.stdout == f"{output / 'index.html'}\n"


def test_a_browser_that_fails_is_named_with_what_it_said(
    site: Path, browser: Callable[[str], None], capsys: pytest.CaptureFixture[str]
) -> None:
    browser("echo starting >&2\necho 'no room left on the disk' >&2\nexit 3")
    assert build_pdf.print_posters(site) == 1
    said = capsys.readouterr().err
    assert "notices/a/poster.html: chromium-browser could not print it: no room left on the disk" in said
    assert "Posters made into PDFs: 0 of 2." in said


def test_a_browser_that_hangs_is_given_up(
    site: Path, browser: Callable[[str], None], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    browser("while :; do :; done")
    monkeypatch.setattr(build_pdf, "_SECONDS", 0.2)
    assert build_pdf.print_posters(site) == 1
    assert "did not print it within 0.2 seconds" in capsys.readouterr().err
