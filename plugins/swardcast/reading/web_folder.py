"""The folder `web` of a club: files of others that lie at the root of its site as they are, pictures without notes."""

from __future__ import annotations

import os
import re
from collections.abc import Iterable, Iterator
from pathlib import Path, PurePosixPath
from typing import Final

from swardcast.errors import InputNeedsAttention, Problem
from swardcast.reading.picture_notes import NotesCannotGoError, without_notes

__all__ = [
    "LEFT_BY_SYSTEMS",
    "REPOSITORIES",
    "WEB",
    "clashes",
    "folders_above",
    "problems_of_web",
    "unless_gone",
    "web_files",
]

WEB: Final = "web"
"""The folder, in the club folder."""
LEFT_BY_SYSTEMS: Final = frozenset({".DS_Store", "Icon\r", "Thumbs.db", "desktop.ini"})
"""Files that desktops and shared folders leave wherever somebody looks (from memory); they are no part of a site."""

REPOSITORIES: Final = frozenset({".git", ".hg", ".svn"})
"""Folders in which versions are kept: they would show what a file once said."""

_SAFE: Final = re.compile(r"[A-Za-z0-9._~+@-]*[A-Za-z0-9_~+@-]")
"""Names that stand for themselves in an address and on every system (RFC 3986, section 2.3, with + and @)."""
_LARGEST_BYTES: Final = 10_000_000
"""Of one file: what a telephone on the course still fetches; judgement."""
_LARGEST_SUM_BYTES: Final = 50_000_000
"""Of all: they are written anew with each build, and the site before is kept; judgement."""


def web_files(club: Path) -> dict[str, bytes]:
    """Read the files that a club brings to its site.

    Args:
        club: the club folder.

    Returns:
        The bytes of each by its place in the site, with forward slashes, pictures without what was noted in them; none
        where there is no folder `web`.

    Raises:
        InputNeedsAttention: with everything that is wrong with them.
    """
    if problems := problems_of_web(club):
        raise InputNeedsAttention(problems)
    top = club / WEB
    files = {path.relative_to(top).as_posix(): path for path in _entries(top) if path.is_file()}
    return {name: without_notes(path.read_bytes()) for name, path in files.items()}


def problems_of_web(club: Path) -> list[Problem]:
    """Find what keeps files of the folder `web` out of a site.

    Args:
        club: the club folder.

    Returns:
        A problem for each name that is not safe, link, repository, file that is too large or cannot be read, picture
        out of which notes cannot be taken, and for names that differ by capitals alone.
    """
    top = club / WEB
    if top.is_symlink() or (top.exists() and not top.is_dir()):
        return [Problem(file=WEB, found="no folder", expected="a folder with files for the root of the site")]
    problems: list[Problem] = []
    seen: dict[str, str] = {}
    total = 0
    for path in _entries(top):
        name = path.relative_to(club).as_posix()
        found, expected, hint = _fault(path)
        first = seen.setdefault(name.casefold(), name)
        if not found and first != name:
            found, expected = f"a name that differs from {first} by capitals alone", "names that every host keeps apart"
        if found:
            problems.append(Problem(file=name, found=found, expected=expected, hint=hint))
        elif path.is_file():
            total += path.stat().st_size
    if total > _LARGEST_SUM_BYTES:
        expected = f"at most {_LARGEST_SUM_BYTES / 1e6:.0f} MB in all"
        problems.append(Problem(file=WEB, found=f"{total / 1e6:.0f} MB", expected=expected))
    return problems


def clashes(names: Iterable[str], made: Iterable[str]) -> list[Problem]:
    """Find files of the folder `web` that would take the place of a file or folder that the build makes.

    Args:
        names: places of the files of `web` in the site.
        made: places of the files that the build has made.

    Returns:
        A problem for each; capitals make no difference, since they make none on some hosts.
    """
    files = {name.casefold(): name for name in made}
    folders = {above for name in files for above in folders_above(name)}
    problems = []
    for name in names:
        taken = [files[one] for one in (name.casefold(), *folders_above(name.casefold())) if one in files]
        if taken or name.casefold() in folders:
            found = f"the name of {taken[0] if taken else f'the folder {name}'}, which the build makes itself"
            problems.append(Problem(file=f"{WEB}/{name}", found=found, expected="another name"))
    return problems


def folders_above(name: str) -> tuple[str, ...]:
    """Name the folders in which a file lies.

    Args:
        name: its place, with forward slashes.

    Returns:
        Their places, the nearest first.
    """
    return tuple(str(one) for one in PurePosixPath(name).parents)[:-1]


def _entries(top: Path) -> Iterator[Path]:
    """What lies in a folder at any depth, in order; nobody looks into a link or a repository."""
    for place, folders, files in os.walk(top, onerror=unless_gone):
        here = sorted({*folders, *files} - LEFT_BY_SYSTEMS)
        folders[:] = sorted(name for name in folders if name not in REPOSITORIES)
        yield from (Path(place, name) for name in here)


def unless_gone(error: OSError) -> None:
    """Let no folder be left out while files are looked for, as `os.walk` does by itself.

    Args:
        error: what it met; that the folder is not there is none.

    Raises:
        OSError: any other.
    """
    if not isinstance(error, FileNotFoundError):  # most clubs have no such folder
        raise error


def _fault(path: Path) -> tuple[str, str, str]:
    """What was found wrong, what was expected, and a hint; "" where nothing is wrong."""
    if path.is_symlink():
        return "a symbolic link", "the file itself", "Copy it there."
    if path.name in REPOSITORIES:
        hint = "Keep the repository elsewhere: all that is in web can be read by anybody."
        return "a repository with its history", "only files for the site", hint
    if _SAFE.fullmatch(path.name) is None:
        expected = "a name of the letters A to Z and a to z, digits and . _ ~ + @ - that does not end in a dot"
        return f"the name {path.name!r}", expected, "Rename it: members and programs would have to type it."
    if path.is_dir():
        return "", "", ""
    if not path.is_file():
        return "something that is neither file nor folder", "a file", ""
    if path.stat().st_size > _LARGEST_BYTES:
        expected = f"at most {_LARGEST_BYTES / 1e6:.0f} MB for one file"
        return f"{path.stat().st_size / 1e6:.0f} MB", expected, "Members open it on a telephone; make it smaller."
    if not os.access(path, os.R_OK):
        return "a file that cannot be read", "a readable file", ""
    try:
        without_notes(path.read_bytes())
    except NotesCannotGoError as error:
        return error.found, error.expected, error.hint
    return "", "", ""
