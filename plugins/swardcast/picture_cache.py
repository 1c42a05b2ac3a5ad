"""Pictures that were drawn before, kept below the user's cache folder; without it every build draws them anew.

Nothing here ever fails a build: what cannot be read is drawn, what cannot be written is not kept, what was damaged is
seen by its checksum and drawn again, and so is what anybody else may have written.
"""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Callable, Iterable
from contextlib import suppress
from hashlib import sha256
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import Final

__all__ = ["MOST_KEPT", "cache_folder", "cached", "is_ours", "tidy", "write_whole"]

MOST_KEPT: Final = 2000
"""Pictures kept in any case, the least lately used going first: 45 MB, those of 80 clubs like the demo. Judgement."""

_FRESH: Final = ".new"
_LONGEST_WRITING_S: Final = 3600.0
"""Whatever is half-written for longer belongs to no build that goes on: judgement."""

_DIGEST_BYTES: Final = sha256().digest_size
_OF_OTHERS: Final = 0o022  # the group, or everybody, may write


def cache_folder() -> Path | None:
    """Find the folder: below XDG_CACHE_HOME where that is set, else where the system keeps what can be made again.

    Returns:
        The folder, which may not exist yet; None where nobody knows a home.
    """
    told = os.environ.get("XDG_CACHE_HOME", "")  # a relative path is to be ignored: XDG Base Directory Specification
    if Path(told).is_absolute():
        return Path(told) / "swardcast"
    try:
        home = Path.home()
    except RuntimeError:
        return None
    match sys.platform:
        case "win32":
            return Path(os.environ.get("LOCALAPPDATA") or home / "AppData" / "Local") / "swardcast" / "Cache"
        case "darwin":
            return home / "Library" / "Caches" / "swardcast"
        case _:
            return home / ".cache" / "swardcast"


def cached(key: str, draw: Callable[[], bytes], folder: Path | None) -> bytes:
    """Give a picture out of the cache, or draw and keep it.

    Args:
        key: name of the picture's content, fit for a file's name.
        draw: draws it.
        folder: the cache folder, or None.

    Returns:
        The picture.
    """
    if folder is None:
        return draw()
    file = folder / f"{key}.picture"
    data = _kept(file)
    if data is None:
        data = draw()
        with suppress(OSError):
            write_whole(file, [sha256(data).digest(), data])
    return data


def _kept(file: Path) -> bytes | None:
    try:
        with file.open("rb") as opened:
            whole = opened.read() if is_ours(os.fstat(opened.fileno())) else b""
    except OSError:
        return None
    digest, data = whole[:_DIGEST_BYTES], whole[_DIGEST_BYTES:]
    if not data or sha256(data).digest() != digest:
        return None
    with suppress(OSError):
        os.utime(file)  # used just now
    return data


def is_ours(told: os.stat_result) -> bool:
    """Tell whether nobody but the user can have written a file, as far as the system knows of users.

    Args:
        told: what the system tells of the file.
    """
    return not hasattr(os, "getuid") or (told.st_uid == os.getuid() and not told.st_mode & _OF_OTHERS)


def write_whole(file: Path, parts: Iterable[bytes]) -> None:
    """Write a file that another build may read or write at the same time, so that it appears at once and whole.

    Args:
        file: the file.
        parts: what is to be in it, one after the other.

    Raises:
        OSError: where it cannot be written; then it is as it was.
    """
    file.parent.mkdir(parents=True, exist_ok=True)
    with NamedTemporaryFile(dir=file.parent, suffix=_FRESH, delete=False) as fresh:
        path = Path(fresh.name)
        try:
            for part in parts:
                fresh.write(part)
            fresh.close()  # writes the rest, so it fails where the disk is full
            path.replace(file)
        except BaseException:
            with suppress(OSError):
                fresh.close()
            path.unlink(missing_ok=True)
            raise


def tidy(folder: Path | None, most: int = MOST_KEPT) -> None:
    """Take pictures out that were not used for long, and what a build that was killed left half-written.

    Args:
        folder: the cache folder, or None.
        most: how many may stay.
    """
    with suppress(OSError):
        for left in folder.glob(f"*{_FRESH}") if folder is not None else ():
            if time.time() - left.stat().st_mtime > _LONGEST_WRITING_S:
                left.unlink(missing_ok=True)
        files = list(folder.glob("*.picture")) if folder is not None else []
        if len(files) > most:
            for file in sorted(files, key=lambda one: one.stat().st_mtime, reverse=True)[most:]:
                file.unlink(missing_ok=True)
