"""Limits on play that hold at a moment; `play` spells out how long each holds."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from swardcast.records.log import Entry, Limit, MorningStatus

__all__ = ["LimitInForce", "limits_in_force"]


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitInForce:
    """A limit that holds at the moment.

    Args:
        limit: the limit.
        source: id of the entry that it came from.
        at: when that was said.
    """

    limit: Limit
    source: str
    at: datetime


def limits_in_force(entries: Iterable[Entry], as_of: datetime) -> tuple[LimitInForce, ...]:
    """Tell which limits hold at a moment.

    Args:
        entries: entries that stand, oldest first, none later than the moment.
        as_of: the moment, aware.

    Returns:
        Limits, in the order in which they were first named.
    """
    held: dict[str, LimitInForce] = {}
    for entry in entries:
        if not isinstance(entry, MorningStatus):
            continue
        held = {name: one for name, one in held.items() if one.limit.outlasts}
        for limit in entry.limits:
            held[limit.name] = LimitInForce(limit=limit, source=entry.head.id, at=entry.head.true_from)
    return tuple(one for one in held.values() if not one.limit.is_lifted and as_of < one.limit.until)
