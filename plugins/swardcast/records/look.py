"""How a club is known by sight: its badge and its colours."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from swardcast.colours import USUAL_PALETTE, Palette

__all__ = ["USUAL_LOOK", "Badge", "Look"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Badge:
    """The club's badge, checked to be a picture and nothing else.

    Args:
        name: "badge.svg" or "badge.png", by what it is.
        media_type: its IANA media type.
        data: the file.
        ratio: its width / height, from 1/3 to 3.
    """

    name: str
    media_type: str
    data: bytes
    ratio: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """A club's badge and colours.

    Args:
        badge: the badge, or None.
        palette: its colours, or those of a club that names none.
    """

    badge: Badge | None = None
    palette: Palette = USUAL_PALETTE


USUAL_LOOK: Final = Look()
"""Of a club that says nothing about it."""
