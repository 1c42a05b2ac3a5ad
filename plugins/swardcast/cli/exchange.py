"""Two folders change places in one step of the operating system, so that nobody ever finds none of them."""

from __future__ import annotations

import ctypes
import errno
import os
import sys
from pathlib import Path
from typing import Any, Final

__all__ = ["exchange"]

_EXCHANGE: Final = 2
"""RENAME_EXCHANGE of Linux (renameat2(2), Linux manual pages); RENAME_SWAP of macOS is the same figure (renamex_np(2),
from memory)."""
_WORKING_FOLDER: Final = -100
"""AT_FDCWD of Linux: paths count from the working folder."""
_CANNOT: Final = {errno.EINVAL, errno.ENOSYS, errno.ENOTSUP, errno.EOPNOTSUPP}
"""What a system, or a file system, says that does not know such a step."""


def exchange(one: Path, other: Path) -> bool:
    """Let two folders change places.

    Assumes that both lie on the same file system.

    Args:
        one: a folder.
        other: another.

    Returns:
        True when they have changed places; False where the system has no such step, and nothing was done.

    Raises:
        OSError: when the system has such a step and refused it.
    """
    found = _function()
    if found is None:
        return False
    first, second = os.fsencode(one), os.fsencode(other)
    if sys.platform == "darwin":
        failed = found(first, second, _EXCHANGE)
    else:
        failed = found(_WORKING_FOLDER, first, _WORKING_FOLDER, second, _EXCHANGE)
    if not failed:
        return True
    code = ctypes.get_errno()
    if code in _CANNOT:
        return False
    raise OSError(code, os.strerror(code), str(other))


def _function() -> Any:
    """The system's function, or None where it has none."""
    if sys.platform == "win32":
        return None
    name = "renamex_np" if sys.platform == "darwin" else "renameat2"
    return getattr(ctypes.CDLL(None, use_errno=True), name, None)
