"""Where the site's sources, its pages and the demo club are: beside the package in a wheel, above it in a checkout."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Final

from swardcast.errors import Problem, SwardcastError
from swardcast.language.catalogue import BUILT_IN

__all__ = ["demo_club", "page_paths", "problems_of_pages", "site_source"]

_OWN: Final = "pages"
"""A club's own folder of pages."""


def _beside_or_above(inside: str, above: str) -> Path:
    package = Path(__file__).resolve().parent
    for candidate in (package / inside, package.parents[1] / above):
        if candidate.is_dir():
            return candidate
    message = f"this installation of Swardcast has no folder {inside!r}; install it again"
    raise SwardcastError(message)


def site_source() -> Path:
    """Find the folder with Pelican's settings, the content and the theme.

    Returns:
        The folder.

    Raises:
        SwardcastError: when the installation is not whole.
    """
    return _beside_or_above("_site", "site_src")


def demo_club() -> Path:
    """Find the invented club folder.

    Returns:
        The folder.

    Raises:
        SwardcastError: when the installation is not whole.
    """
    return _beside_or_above("_demo", "demo_content")


def problems_of_pages(content: Path, paths: Sequence[str], club: Path) -> list[Problem]:
    """Find pages that the menu leads to, and that a club with pages of its own lacks.

    Args:
        content: the site's folder of content.
        paths: folders of pages below it, as Pelican's setting PAGE_PATHS names them.
        club: the club folder.

    Returns:
        A problem for each.
    """
    own = club / _OWN
    if not own.is_dir():
        return []
    needed = {page.name for folder in _divided(content, paths) for page in (folder / BUILT_IN[0]).iterdir()}
    expected = f"a page of this name, since the club's folder '{_OWN}' takes the place of all pages of ours"
    return [
        Problem(file=f"{_OWN}/{name}", found="no such file", expected=expected)
        for name in sorted(needed - {page.name for page in own.iterdir()})
    ]


def _divided(content: Path, paths: Sequence[str]) -> list[Path]:
    """Those folders of pages that are divided by language."""
    return [content / path for path in paths if (content / path / BUILT_IN[0]).is_dir()]


def page_paths(content: Path, paths: Sequence[str], tag: str, club: Path) -> list[str]:
    """Find the folders of the site's own pages in a language.

    The club's folder `pages` takes the place of all of ours. Folders of pages that are not divided by language stay as
    they are: they belong to somebody's own site.

    Args:
        content: the site's folder of content.
        paths: folders of pages below it, as Pelican's setting PAGE_PATHS names them.
        tag: IETF tag of the language.
        club: the club folder.

    Returns:
        What PAGE_PATHS has to be.

    Raises:
        SwardcastError: when there are no pages in the language.
    """
    divided = _divided(content, paths)
    own = club / _OWN
    if own.is_dir():
        return [str(own.resolve())]
    for folder in divided:
        if not (folder / tag).is_dir():
            message = (
                f"the site has no pages in the language {tag!r}: found no folder {folder / tag}. Put pages in that "
                f"language there, or into {own}, with the names of those in {folder / BUILT_IN[0]}."
            )
            raise SwardcastError(message)
    return [f"{path}/{tag}" if content / path in divided else path for path in paths]
