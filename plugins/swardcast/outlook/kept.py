"""What was worked out before and is kept: the core knows of it no more than names, marks and values."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from typing import Protocol

__all__ = ["Kept", "Mark"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """By what a kept value is known to be still true.

    Args:
        until: the last moment that has a part in it, aware.
        latest: the first day of fixtures that have no part in it any more, or None where none has.
        digest: the digest of all that has a part in it.
    """

    until: datetime
    latest: date | None
    digest: str


class Kept(Protocol):
    """What is kept, by name; whoever asks compares the mark first."""

    def mark(self, name: str) -> Mark | None:
        """Give the mark of what is kept under a name, or None."""
        ...

    def value(self, name: str) -> object:
        """Give what is kept under a name, or None where it cannot be read any more."""
        ...

    def keep(self, name: str, mark: Mark, value: object) -> None:
        """Keep a value in the place of what was kept under the name."""
        ...
