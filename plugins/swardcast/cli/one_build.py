"""The place of a build: one build of a site at a time, beside the live folder.

The lock is the system's, so it ends with the process that holds it, however that ends; what a killed build left is put
right by the next one.
"""

from __future__ import annotations

import errno
import os
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from tempfile import mkdtemp
from typing import Final

from swardcast.cli.swapping import beginning_of_new, put_right, take_away
from swardcast.errors import SwardcastError

__all__ = ["LONGEST_WAIT_S", "lock_of", "only_build"]

LONGEST_WAIT_S: Final = 120.0
"""How long a build waits for another one: some builds of a large club; judgement."""

_ASKED_EVERY_S: Final = 0.2
_LOCKED_BYTE: Final = 1 << 30
"""Far behind the words of the file: where a lock keeps others from reading (Windows), they can still read those."""
_HELD: Final = {errno.EACCES, errno.EAGAIN, errno.EDEADLK, errno.ENOENT}
"""What a system says of a lock that another process has, or that went with its file (POSIX, fcntl; Windows from memory:
_locking)."""


def lock_of(output: Path) -> Path:
    """Where the lock of a build of this site is; there is none while none goes on, unless one was killed."""
    return output.with_name(f".{output.name}.lock")


@contextmanager
def only_build(output: Path) -> Iterator[Path]:
    """Wait until no other build of the same site goes on, and give this one a folder.

    Args:
        output: where the site is to stand.

    Yields:
        A new folder of its own on the same file system, which is taken away at the end with all that is still in it.

    Raises:
        SwardcastError: when another build goes on for longer than `LONGEST_WAIT_S`, or nothing can be written there.
    """
    with _needing_the_folder(output.parent):
        output.parent.mkdir(parents=True, exist_ok=True)
    with _locked(lock_of(output), output):
        with _needing_the_folder(output.parent):
            put_right(output)
            folder = Path(mkdtemp(prefix=beginning_of_new(output), dir=output.parent))
        try:
            yield folder
        finally:
            take_away(folder)


@contextmanager
def _needing_the_folder(folder: Path) -> Iterator[None]:
    """Say what a build needs of the folder in which the site stands; names of ours would tell nobody anything."""
    try:
        yield
    except OSError as error:
        message = (
            f"{folder}: {error.strerror}; nothing was published, the last good site stays.\n"
            "A build makes the new site in this folder, beside the live one, so whoever runs it has to be able to write"
            " there. Or name another place with --output."
        )
        raise SwardcastError(message) from error


@contextmanager
def _locked(file: Path, output: Path) -> Iterator[None]:
    begun, told = time.monotonic(), False
    while True:
        _refuse_no_file(file)
        with _needing_the_folder(output.parent):
            descriptor = _lock(file)
        if descriptor is not None:
            break
        holder = _holder(file)
        if time.monotonic() - begun > LONGEST_WAIT_S:
            message = (
                f"another build{holder} has been writing {output} for more than {LONGEST_WAIT_S:.0f} seconds.\n"
                "Nothing was published. Try again when it is over, or end it: the live site stays whole all the same."
            )
            raise SwardcastError(message)
        if not told:
            print(f"Another build{holder} is writing {output}; waiting for it.", file=sys.stderr)
            told = True
        time.sleep(_ASKED_EVERY_S)
    try:
        yield
    finally:
        with suppress(OSError):
            file.unlink()  # before the lock ends, so that nobody waits for a file that is gone; not on Windows
        os.close(descriptor)
        if sys.platform == "win32":
            with suppress(OSError):
                file.unlink()


def _refuse_no_file(file: Path) -> None:
    """Say what stands in the place of the lock, where nothing but a file of a build should be."""
    if file.is_symlink():
        what = "a symbolic link, and a build follows none: it would empty the file to which it leads"
    elif file.exists() and not file.is_file():
        what = "a folder" if file.is_dir() else "no file"
    else:
        return
    message = (
        f"{file} is {what}. Nothing was published, the last good site stays.\n"
        "A build keeps a file of this name beside the site, so that only one at a time writes it. Find out who put the"
        " other there, and take it away."
    )
    raise SwardcastError(message)


def _holder(file: Path) -> str:
    with suppress(OSError, UnicodeError):
        process = file.read_text(encoding="ascii").strip()
        if process:
            return f" (process {process})"
    return ""


def _lock(file: Path) -> int | None:
    """Lock a file: its descriptor, or None while another process has it."""
    follow_no_link = getattr(os, "O_NOFOLLOW", 0)  # or somebody's link beside the site would have any file emptied
    descriptor = os.open(file, os.O_RDWR | os.O_CREAT | follow_no_link, 0o666)
    try:
        _lock_descriptor(descriptor)
        if not os.path.samestat(os.fstat(descriptor), file.stat()):  # its last holder took it away
            raise FileNotFoundError(errno.ENOENT, "gone")
        os.ftruncate(descriptor, 0)
        os.lseek(descriptor, 0, os.SEEK_SET)
        os.write(descriptor, str(os.getpid()).encode("ascii"))
    except OSError as error:
        os.close(descriptor)
        if error.errno in _HELD:
            return None
        raise
    return descriptor


if sys.platform == "win32":
    import msvcrt

    def _lock_descriptor(descriptor: int) -> None:
        os.lseek(descriptor, _LOCKED_BYTE, os.SEEK_SET)
        msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    def _lock_descriptor(descriptor: int) -> None:
        fcntl.lockf(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB, 1, _LOCKED_BYTE)
