"""Files that must not be published by accident: they are written nowhere near the site or the club's own files."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from swardcast.errors import SwardcastError

__all__ = ["write_private"]

_SITE_MARKS: Final = (("feeds", "status.rss"), ("status.json",))
"""Files by which a built site is known."""
_ENDINGS: Final = (".html", ".htm")


def write_private(path: Path, text: str, *, mark: str, club: Path) -> None:
    """Write a private page.

    Args:
        path: where to; its folder must be there.
        text: the page.
        mark: what such a page holds, by which an older one is known that may be overwritten.
        club: the club folder.

    Raises:
        SwardcastError: when the place is inside a site or the club folder, or holds another file.
    """
    place = path.resolve()
    if place.suffix.lower() not in _ENDINGS:
        message = f"{path}: expected a page that ends in .html"
        raise SwardcastError(message)
    site = next((folder for folder in place.parents if _is_site(folder)), None)
    if site is not None:
        message = f"{path} would lie in the site {site}, where anybody can read it; name a place outside"
        raise SwardcastError(message)
    own = club.resolve()
    if own == place.parent or own in place.parents:
        message = f"{path} would lie in the club folder, of which parts are published; name a place outside"
        raise SwardcastError(message)
    if place.is_dir():
        message = f"{path} is a folder; name a file in it"
        raise SwardcastError(message)
    if place.exists() and mark not in place.read_text(encoding="utf-8", errors="replace"):
        message = f"{path} is there already and is no such page; name another file"
        raise SwardcastError(message)
    if not place.parent.is_dir():
        message = f"{path}: there is no folder {place.parent}"
        raise SwardcastError(message)
    place.write_text(text, encoding="utf-8")


def _is_site(folder: Path) -> bool:
    return any(folder.joinpath(*mark).is_file() for mark in _SITE_MARKS)
