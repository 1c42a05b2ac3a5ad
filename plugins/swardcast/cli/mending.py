"""`swardcast check --mend`: an older club folder is brought to the format of this program."""

from __future__ import annotations

import shutil
import sys
from collections.abc import Mapping
from difflib import unified_diff
from itertools import count
from pathlib import Path

from swardcast.cli.together import write_together
from swardcast.errors import InputNeedsAttention, Problem
from swardcast.reading.files import Files
from swardcast.reading.format_changes import FORMAT, find_changes, refuse_newer
from swardcast.reading.mending import mended_texts
from swardcast.reading.surfaces_file import surfaces_from

__all__ = ["mend"]


def mend(club: Path) -> None:
    """Show what has to change, keep each file as it was in a folder of the club folder that nothing reads, and write.

    Args:
        club: the club folder.

    Raises:
        InputNeedsAttention: when its format is newer, or something has to be changed by hand; then nothing is written.
        OSError: when a file cannot be written; then everything is as it was.
    """
    problems: list[Problem] = []
    files = Files(club, problems)
    document = files.club_file() if (club / "club.yaml").is_file() else None
    if document is None or not isinstance(document.value, dict) or not document.value:
        return  # the check that follows says so
    refuse_newer(document)
    found = list(find_changes(files))
    if not found:
        print("Nothing of an older format was found; nothing was changed.", file=sys.stderr)
        return
    document = files.yaml("surfaces.yaml")
    surfaces = surfaces_from(document, file="surfaces.yaml", problems=problems) if document is not None else None
    if problems or not surfaces:
        raise InputNeedsAttention([*problems, *(one.problem for one in found)])
    by_hand: list[Problem] = []
    kinds = {surface.kind for surface in surfaces.values()}
    texts = mended_texts(found, kinds, lambda name: _text(club / name), problems=by_hand)
    if by_hand:
        raise InputNeedsAttention([*by_hand, *(one.problem for one in found)])
    _show(club, texts)
    kept = _free_folder(club)
    copies = {f"{kept}/{name}": (club / name).read_bytes() for name in texts}
    write_together(club, copies | {name: text.encode() for name, text in texts.items()})
    for name in texts:
        shutil.copymode(club / name, club / kept / name)
    told = f"Mended {', '.join(texts)}; the folder is of format {FORMAT} now. As it was before: {club / kept}."
    print(told, file=sys.stderr)


def _text(path: Path) -> str:
    return path.read_bytes().decode()


def _free_folder(club: Path) -> str:
    """A name that begins with a point, as no reader of the club folder looks at one."""
    name = f".before-format-{FORMAT}"
    names = (name if number == 1 else f"{name}-{number}" for number in count(1))
    return next(name for name in names if not (club / name).exists())


def _show(club: Path, texts: Mapping[str, str]) -> None:
    for name, text in texts.items():
        old, new = (one.removeprefix("\ufeff").replace("\r\n", "\n") for one in (_text(club / name), text))
        lines = unified_diff(old.split("\n"), new.split("\n"), f"{name} (before)", name, lineterm="")
        print("\n".join(lines))
