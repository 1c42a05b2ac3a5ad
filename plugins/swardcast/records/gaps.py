"""How long the club leaves turf alone between two kinds of work. It stays private."""

from __future__ import annotations

from dataclasses import dataclass

from swardcast.records.operations import Kind

__all__ = ["KindGap"]


@dataclass(frozen=True, slots=True, kw_only=True)
class KindGap:
    """Days between two kinds of work on the same surface.

    Args:
        earlier: the kind of work that comes first.
        later: the kind of work that comes after it.
        least_days: days from the last day of the one to the first of the other, 1 or more.
    """

    earlier: Kind
    later: Kind
    least_days: int
