"""The live site, the one before it, and how a new one takes its place.

The new site gets a name that tells its own inode (`.site.next-4711`) and then changes places with the live one in one
step of the system. So whatever is found beside the live site after a kill tells by itself what it is: under a name that
fits its inode a new site that never went live, under one that does not fit the site that was live before.
"""

from __future__ import annotations

import os
import re
import shutil
import stat
import sys
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import Any, Final

from swardcast.cli.exchange import exchange
from swardcast.errors import SwardcastError

__all__ = ["beginning_of_new", "go_back", "put_right", "site_before", "swap", "take_away"]

_READ_FILES: Final = stat.S_IRGRP | stat.S_IROTH
_READ_FOLDERS: Final = _READ_FILES | stat.S_IXGRP | stat.S_IXOTH
"""What a file and a folder let others do, so that they may read what is there."""


def beginning_of_new(output: Path) -> str:
    """How the names of folders begin that a build of this site makes beside it and that nobody needs after it."""
    return f".{output.name}.new-"


def swap(fresh: Path, output: Path) -> None:
    """Put a new site in the place of the live one, which becomes the one before.

    Where the system cannot let two folders change places, the live one is moved away first; when the second move fails,
    even by Ctrl-C, it comes back.

    Args:
        fresh: the new site, on the same file system.
        output: the place.
    """
    if not output.exists():
        fresh.rename(output)
        return
    _let_read(fresh, output)
    waiting = output.with_name(f".{output.name}.next-{fresh.stat().st_ino}")
    fresh.rename(waiting)
    try:
        exchanged = exchange(waiting, output)
    except OSError:
        take_away(waiting)
        raise
    _keep(waiting if exchanged else _in_two_steps(waiting, output), output)


def go_back(output: Path) -> None:
    """Let the live site and the one before it change places; done twice, all is as it was.

    Args:
        output: where the live site is.

    Raises:
        SwardcastError: when there is none before it.
    """
    before = site_before(output)
    if not output.exists() or not before.is_dir():
        message = f"there is no site before the one in {output}; each build keeps the one that it replaces"
        raise SwardcastError(message)
    if not exchange(before, output):
        _in_two_steps(before, output).rename(before)


def site_before(output: Path) -> Path:
    """Where the site is kept that was live before this one; there may be none."""
    return output.with_name(f".{output.name}.before")


def put_right(output: Path) -> None:
    """Put right what a build left that was killed; whoever holds the lock knows that no other goes on.

    Args:
        output: where the live site is or was.
    """
    if _bring_back(output):
        print(f"A build was stopped while it swapped sites; the one before is in {output} again.", file=sys.stderr)
    for left in sorted(output.parent.iterdir()):
        if left == _moved(output):
            _keep(left, output)
        elif re.fullmatch(rf"{re.escape(beginning_of_new(output))}[a-z0-9_]+", left.name):
            take_away(left)  # no dot in it: `.site.new-look.before` is of another site beside this one
        elif found := re.fullmatch(rf"\.{re.escape(output.name)}\.next-(\d+)", left.name):
            if int(found[1]) == left.stat().st_ino:
                take_away(left)
            else:
                _keep(left, output)


def take_away(folder: Path) -> None:
    """Delete a folder and everything in it, also where somebody had taken the right to write.

    Args:
        folder: the folder; there may be none.
    """
    with suppress(OSError):
        if sys.version_info >= (3, 12):
            shutil.rmtree(folder, onexc=_with_the_right_to_write)
        else:
            shutil.rmtree(folder, onerror=_with_the_right_to_write)


def _with_the_right_to_write(remove: Callable[[str], None], path: str, error: Any) -> None:
    del error
    with suppress(OSError):
        for one in (Path(path).parent, Path(path)):
            if not one.is_symlink():
                one.chmod(one.stat().st_mode | stat.S_IRWXU)
        if os.path.isdir(path) and not os.path.islink(path):  # noqa: PTH112, PTH114 - rmtree speaks in strings
            take_away(Path(path))
        else:
            remove(path)


def _let_read(fresh: Path, output: Path) -> None:
    """Let everybody read all of a new site who may read the live folder.

    A timer or a shell may have taken that right from all files that it makes (umask), and the web server would find
    a site that it may not read.
    """
    shutil.copymode(output, fresh)
    mode = output.stat().st_mode
    for place, folders, files in os.walk(fresh):
        for names, rights in ((folders, _READ_FOLDERS), (files, _READ_FILES)):
            for path in (Path(place, name) for name in names):
                here = path.lstat().st_mode
                if mode & rights & ~here and not stat.S_ISLNK(here):
                    path.chmod(stat.S_IMODE(here | mode & rights))


def _in_two_steps(coming: Path, output: Path) -> Path:
    """Move the live site away and another into its place; gives where the live one lies now."""
    moved = _moved(output)
    take_away(moved)
    try:
        output.rename(moved)
        coming.rename(output)
    except BaseException:
        _bring_back(output)
        raise
    return moved


def _moved(output: Path) -> Path:
    """Where the live site waits for a moment on systems that cannot exchange two folders."""
    return output.with_name(f".{output.name}.old")


def _bring_back(output: Path) -> bool:
    """A lone old site is the last good one."""
    if output.exists() or not _moved(output).exists():
        return False
    _moved(output).rename(output)
    return True


def _keep(old: Path, output: Path) -> None:
    """Keep the site that was live for `go_back`."""
    before = site_before(output)
    gone = output.with_name(f"{beginning_of_new(output)}gone")
    if before.exists():
        take_away(gone)
        before.rename(gone)
    old.rename(before)
    take_away(gone)
