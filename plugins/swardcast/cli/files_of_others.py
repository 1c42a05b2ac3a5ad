"""Files of others at the root of a site: those that the club brings, and those that somebody put into the live folder.

Each site lists its own files, so the list changes places together with the site and can be of no other.
"""

from __future__ import annotations

import os
from collections.abc import Collection, Iterator, Mapping
from pathlib import Path
from typing import Final

from swardcast.errors import InputNeedsAttention, SwardcastError, first_of
from swardcast.outlets.policy import HEADERS_PATH
from swardcast.reading.web_folder import LEFT_BY_SYSTEMS, REPOSITORIES, WEB, clashes, folders_above, unless_gone

__all__ = ["LIST", "bring", "list_files", "refuse_broken", "refuse_others"]

LIST: Final = ".made-by-swardcast"
"""The list at the root of a site: the place of each of its files, one a line."""

_MOST_TOLD: Final = 10
"""Names told one by one; judgement."""


def bring(files: Mapping[str, bytes], site: Path) -> None:
    """Put the files that a club brings into a site that was just built.

    What a host is to say with its answers is for the club to decide: its own file stands in the place of ours.

    Args:
        files: the bytes of each by its place.
        site: the site.

    Raises:
        InputNeedsAttention: when one would take the place of what the build made; then none is there.
    """
    made = {*_names_in(site), LIST} - ({HEADERS_PATH} & files.keys())
    if problems := clashes(files, made):
        raise InputNeedsAttention(problems)
    for name, data in files.items():
        path = site / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)


def list_files(site: Path) -> None:
    """Write into a site what it is made of, once all of it is there."""
    names = sorted({*_names_in(site), LIST})
    (site / LIST).write_text("".join(f"{name}\n" for name in names), encoding="utf-8")


def refuse_broken(site: Path) -> None:
    """Refuse to make a site live of which something was lost while it was kept.

    Args:
        site: a site that was live before.

    Raises:
        SwardcastError: when a file of its list is gone, or it has no list and no home page.
    """
    try:
        ours = (site / LIST).read_text(encoding="utf-8").splitlines()
    except FileNotFoundError:
        ours = ["index.html", "status.json"]  # of every version
    lost = [name for name in ours if not (site / name).is_file()]
    if lost:
        message = (
            f"{site} is not whole any more: {first_of(lost, _MOST_TOLD)} missing. Nothing was changed, the live site"
            " stays. Build anew instead."
        )
        raise SwardcastError(message)


def refuse_others(output: Path, coming: Path) -> None:
    """Refuse to take a live site away while it holds what no build made: nobody would find it again.

    A site without a list (made by an older version, or by Pelican alone) may hold whatever lies where the coming site
    has something of its own. Empty folders, and what desktops leave, are nobody's.

    Args:
        output: where the live site is; there may be none.
        coming: the site that is to take its place.

    Raises:
        SwardcastError: when there is anything; it is named.
    """
    found = [*_names_in(output)]
    ours = {*_names_in(coming)}
    try:
        ours.update((output / LIST).read_text(encoding="utf-8").splitlines())
    except (FileNotFoundError, NotADirectoryError):
        tops = {name.partition("/")[0] for name in ours}
        ours.update(name for name in found if name.partition("/")[0] in tops)
    others = _at_the_top(set(found) - ours, ours)
    if not others:
        return
    lines = [
        f"{output} holds what no build has made: {first_of(others, _MOST_TOLD)}.",
        "Another site would take its place. Nothing was changed, the live site stays.",
        f"What belongs to the site goes into the folder {WEB} of the club folder, and each build brings it along.",
        "Move the rest away.",
    ]
    if any(name in REPOSITORIES for name in others):
        lines.append("A repository belongs in no site: build into a folder of its own, and copy the site over.")
    raise SwardcastError("\n".join(lines))


def _at_the_top(others: Collection[str], ours: Collection[str]) -> list[str]:
    """Whole folders where nothing in them is ours, or else files."""
    shared = {above for name in ours for above in folders_above(name)}
    return sorted({next((one for one in reversed(folders_above(name)) if one not in shared), name) for name in others})


def _names_in(site: Path) -> Iterator[str]:
    """Every file in a folder, and every link, as a place with forward slashes."""
    for place, folders, files in os.walk(site, onerror=unless_gone):
        links = [name for name in folders if Path(place, name).is_symlink()]
        folder = Path(place).relative_to(site).as_posix()
        for name in (*files, *links):
            if name not in LEFT_BY_SYSTEMS:
                yield name if folder == "." else f"{folder}/{name}"
