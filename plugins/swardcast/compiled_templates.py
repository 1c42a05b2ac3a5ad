"""Templates compiled before, kept in this process: builds of several clubs have the theme's in common."""

from __future__ import annotations

from typing import Final

from jinja2 import BytecodeCache
from jinja2.bccache import Bucket

__all__ = ["COMPILED", "MOST_KEPT", "Compiled"]

MOST_KEPT: Final = 300
"""Templates kept: some themes' with those of some clubs that have their own; judgement."""


class Compiled(BytecodeCache):
    """Code by a template's name and file; Jinja compiles anew what has changed since.

    Args:
        most: templates kept; with one more all are compiled anew, so that a process that goes on does not grow.
    """

    def __init__(self, most: int = MOST_KEPT) -> None:
        self._most = most
        self._codes: dict[str, bytes] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        if bucket.key in self._codes:
            bucket.bytecode_from_string(self._codes[bucket.key])

    def dump_bytecode(self, bucket: Bucket) -> None:
        if len(self._codes) >= self._most:
            self._codes.clear()
        self._codes[bucket.key] = bucket.bytecode_to_string()


COMPILED: Final = Compiled()
"""That of the process. Nothing but speed depends on it: the same templates give the same code."""
