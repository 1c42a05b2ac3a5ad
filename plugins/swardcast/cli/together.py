"""Several files, written all or not at all."""

from __future__ import annotations

import os
import shutil
from collections.abc import Mapping
from pathlib import Path

__all__ = ["write_together"]


def write_together(folder: Path, files: Mapping[str, bytes]) -> None:
    """Write files beside their places first, then move each into its place; when anything stops that, undo it.

    Args:
        folder: the folder.
        files: bytes by path below it.

    Raises:
        OSError: when a file cannot be written; then everything is as it was.
    """
    before = {name: _bytes_of(folder / name) for name in files}
    made: list[Path] = []
    moved: list[str] = []
    try:
        for name, data in files.items():
            _make_parents((folder / name).parent, made)
            beside = _beside(folder / name)
            made.append(beside)
            with beside.open("wb") as file:
                file.write(data)
                file.flush()
                os.fsync(file.fileno())
            if before[name] is not None:
                shutil.copymode(folder / name, beside)  # what others must not read stays so
        for name in files:
            moved.append(name)
            _beside(folder / name).replace(folder / name)
    except BaseException:  # Ctrl-C too
        for name in moved:
            _put_back(folder / name, before[name])
        for path in reversed(made):
            _remove(path)
        raise


def _beside(path: Path) -> Path:
    return path.with_name(f".{path.name}.new")


def _bytes_of(path: Path) -> bytes | None:
    return path.read_bytes() if path.is_file() else None


def _make_parents(folder: Path, made: list[Path]) -> None:
    for parent in reversed([folder, *folder.parents]):
        if not parent.exists():
            parent.mkdir()
            made.append(parent)


def _put_back(path: Path, data: bytes | None) -> None:
    if data is None:
        path.unlink(missing_ok=True)
    elif path.read_bytes() != data:
        path.write_bytes(data)


def _remove(path: Path) -> None:
    if path.is_dir():
        path.rmdir()
    else:
        path.unlink(missing_ok=True)
