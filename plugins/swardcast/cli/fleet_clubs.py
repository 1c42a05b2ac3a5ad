"""The club folders below a folder, and where their sites go."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from swardcast.errors import SwardcastError

__all__ = ["ClubPlace", "clubs_below"]

_OF_A_CLUB: Final = ("club.yaml", "surfaces.yaml")
"""Either makes a folder that of a club: one that lacks the first is told to lack it, and not passed over in silence."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClubPlace:
    """One club.

    Args:
        club: the club folder below the folder of all, such as "north/quillhaven".
        folder: that folder.
        site: where its site goes.
    """

    club: str
    folder: Path
    site: Path


def clubs_below(folder: Path, output: Path) -> tuple[ClubPlace, ...]:
    """Find club folders.

    Nothing is looked for in a club folder, in hidden folders and in the sites. A link is followed where it leads to a
    club folder.

    Args:
        folder: the folder of all, absolute.
        output: the folder of all sites, absolute: the site of folder/a/b goes to output/a/b.

    Returns:
        The clubs by the names of their folders.

    Raises:
        SwardcastError: when there is none, or the folders are no two.
    """
    if not folder.is_dir():
        message = f"{folder}: found no such folder; expected a folder with club folders in it"
        raise SwardcastError(message)
    if _is_club(folder):
        message = (
            f"{folder} is itself a club folder; name the folder above it, or build it alone: swardcast build --club"
            f" {folder}"
        )
        raise SwardcastError(message)
    if output.resolve() == folder.resolve():
        message = f"the sites cannot go to {output}, where the club folders are; name another folder"
        raise SwardcastError(message)
    found = [
        ClubPlace(club=one.relative_to(folder).as_posix(), folder=one, site=output / one.relative_to(folder))
        for one in _below(folder, output.resolve())
    ]
    if not found:
        message = (
            f"found no club folder below {folder}; expected folders with a club.yaml; 'swardcast start"
            f" {folder / 'my-club'}' makes one"
        )
        raise SwardcastError(message)
    return tuple(found)


def _is_club(folder: Path) -> bool:
    return any((folder / name).is_file() for name in _OF_A_CLUB)


def _below(folder: Path, sites: Path) -> Iterator[Path]:
    for one in sorted(folder.iterdir()):
        if one.name.startswith(".") or not one.is_dir() or one.resolve() == sites:
            continue
        if _is_club(one):
            yield one
        elif not one.is_symlink():
            yield from _below(one, sites)
