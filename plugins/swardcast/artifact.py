"""A finished file that is waiting to be written: the only thing an outlet makes."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import PurePosixPath

__all__ = ["Artifact"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Artifact:
    """One file of the site, complete in memory.

    Assumes nothing about the disk; the shell decides where `path` hangs.

    Args:
        path: place inside the site, relative, with forward slashes, never leaving the site.
        media_type: IANA media type, for example "application/rss+xml".
        data: the bytes.

    Raises:
        ValueError: when `path` is absolute, empty or climbs out with "..".
    """

    path: str
    media_type: str
    data: bytes

    def __post_init__(self) -> None:
        parts = PurePosixPath(self.path)
        if not parts.parts or parts.is_absolute() or ".." in parts.parts:
            message = f"an artifact's path must stay inside the site, not {self.path!r}"
            raise ValueError(message)
