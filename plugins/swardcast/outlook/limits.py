"""Limits on play that hold at a moment; `play` spells out how long each holds."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime

from swardcast.records.log import Entry, Limit, MorningStatus

__all__ = ["LimitInForce", "limits_after", "limits_in_force"]


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

    def holds_at(self, moment: datetime) -> bool:
        """Whether it holds at a moment, aware, not before it was said."""
        return not self.limit.is_lifted and moment < self.limit.until


def limits_after(held: Mapping[str, LimitInForce], entry: Entry) -> dict[str, LimitInForce]:
    """Add what an entry says to the limits said before.

    Args:
        held: the latest word on each limit, by its name, ended ones too.
        entry: the next entry.

    Returns:
        The latest word on each limit, in the order in which they were first named.
    """
    said = entry.limits if isinstance(entry, MorningStatus) else ()
    news = {limit.name: LimitInForce(limit=limit, source=entry.head.id, at=entry.head.true_from) for limit in said}
    return {**held, **news}


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
        if isinstance(entry, MorningStatus) and entry.limits:
            held = limits_after(held, entry)
    return tuple(one for one in held.values() if one.holds_at(as_of))
