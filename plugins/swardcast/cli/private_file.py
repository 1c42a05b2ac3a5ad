"""Files that must not be published by accident: they are written nowhere near the site or the club's own files."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import Final

from swardcast.errors import InputNeedsAttention, Problem, SwardcastError
from swardcast.site_source import site_source

__all__ = ["MARKDOWN", "PAGES", "refuse_place", "refuse_published", "write_private"]

_SITE_MARKS: Final = (("feeds", "status.rss"), ("status.json",))
"""Files by which a built site is known."""
PAGES: Final = (".html", ".htm")
"""Endings of a page."""
MARKDOWN: Final = (".md", ".markdown")
"""Endings of a text in Markdown."""
_INSTALLED: Final = {"site-packages", "dist-packages"}


def write_private(path: Path, text: str, *, club: Path, endings: Sequence[str] = PAGES) -> None:
    """Write a private page, or a private text, and remind of it; an older one is known by its mark and overwritten.

    Args:
        path: where to; its folder must be there.
        text: the page.
        club: the club folder.
        endings: how its name may end, the usual ending first.

    Raises:
        SwardcastError: when the page could be published from there, or another file is there.
    """
    refuse_place(path, club=club, endings=endings)
    path.write_text(text, encoding="utf-8")
    print(f"Wrote {path}. It is private: do not put it on the site.", file=sys.stderr)


def refuse_place(path: Path, *, club: Path, endings: Sequence[str] = PAGES) -> None:
    """Refuse a place at which a private page must not lie, before anything is written.

    Args:
        path: where it is to go.
        club: the club folder.
        endings: how its name may end, the usual ending first.

    Raises:
        SwardcastError: when the page could be published from there, or another file is there.
    """
    from swardcast.outlets.committee_page import MARK

    place = path.resolve()
    if place.suffix.lower() not in endings:
        message = f"{path}: expected a file that ends in {endings[0]}"
        raise SwardcastError(message)
    if refused := _published_by(place, club.resolve()):
        message = f"{path} would lie {refused}; name a place outside"
        raise SwardcastError(message)
    if place.is_dir():
        message = f"{path} is a folder; name a file in it"
        raise SwardcastError(message)
    if place.exists() and MARK not in place.read_text(encoding="utf-8", errors="replace"):
        message = f"{path} is there already and is no such page; name another file"
        raise SwardcastError(message)
    if not place.parent.is_dir():
        message = f"{path}: there is no folder {place.parent}"
        raise SwardcastError(message)


def refuse_published(folders: Iterable[Path], *, mark: str, hidden: bool = False) -> None:
    """Stop before anybody can read a private page that lies among what is published.

    Args:
        folders: folders of which a site is made, or the site itself.
        mark: what a private page holds.
        hidden: whether hidden folders are looked into, of which a site may be made too.

    Raises:
        InputNeedsAttention: when there is one; all are named.
    """
    looked_for = mark.encode()
    found = [file for folder in folders for file in _files_in(folder, hidden=hidden) if looked_for in file.read_bytes()]
    if found:
        raise InputNeedsAttention(
            [
                Problem(
                    file=str(file),
                    found="a private page for the committee",
                    expected="none among the files of which the site is made",
                    hint="Move it to a folder of your own papers.",
                )
                for file in found
            ]
        )


def _files_in(folder: Path, *, hidden: bool) -> Iterator[Path]:
    for place, folders, files in os.walk(folder):
        folders[:] = sorted(name for name in folders if hidden or not name.startswith("."))
        yield from (Path(place, name) for name in sorted(files) if Path(place, name).is_file())


def _published_by(place: Path, club: Path) -> str:
    """Why anybody may come to read a file there; "" where nothing speaks against it."""
    for folder in place.parents:
        if _is_site(folder):
            return f"in the site {folder}, where anybody can read it"
    if club in place.parents:
        return "in the club folder, of which parts are published"
    for folder in place.parents:
        if folder == site_source() or _is_source(folder):
            return f"in {folder}, of which a site is made"
        if folder.name in _INSTALLED or folder == Path(__file__).resolve().parents[1]:
            return f"in {folder}, where programs are installed"
    if place.parent.is_dir():
        for beside in sorted(place.parent.iterdir()):
            if _is_site(beside):
                return f"beside the site {beside}, perhaps in a folder that is published as a whole"
    return ""


def _is_site(folder: Path) -> bool:
    return any(_is_there(folder.joinpath(*mark)) for mark in _SITE_MARKS)


def _is_there(file: Path) -> bool:
    try:
        return file.exists()
    except OSError:  # a folder of somebody else's, into which nobody may look
        return False


def _is_source(folder: Path) -> bool:
    """Whether it holds settings of Pelican, or looks like a theme."""
    theme = _is_there(folder / "templates" / "base.html") and _is_there(folder / "static")
    return theme or _is_there(folder / "pelicanconf.py")
