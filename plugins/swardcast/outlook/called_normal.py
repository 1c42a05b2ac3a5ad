"""Which jobs the log ever called back to normal, and when: what they teach is cut out of the records by that."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from swardcast.records.log import BackToNormal, Entry

__all__ = ["CalledNormal", "called_normal"]


@dataclass(frozen=True, slots=True, kw_only=True)
class CalledNormal:
    """A job that was called back to normal.

    Args:
        job: its id.
        order: its place among the others, by its first call.
        first: when such a call became known first, as a timestamp.
        last: until when one was true, as a timestamp; nothing later has a part in its lesson.
    """

    job: str
    order: tuple[float, float, str]
    first: float
    last: float


def called_normal(entries: Iterable[Entry]) -> tuple[CalledNormal, ...]:
    """List the jobs that were ever called back to normal, also where that was withdrawn.

    Args:
        entries: entries, in any order.

    Returns:
        Them, in the order of their first calls.
    """
    found: dict[str, list[BackToNormal]] = {}
    for entry in sorted((entry for entry in entries if isinstance(entry, BackToNormal)), key=_order):
        found.setdefault(entry.job, []).append(entry)
    return tuple(
        CalledNormal(
            job=name,
            order=_order(calls[0]),
            first=min(entry.head.at_s for entry in calls),
            last=calls[-1].head.true_from_s,
        )
        for name, calls in found.items()
    )


def _order(entry: BackToNormal) -> tuple[float, float, str]:
    return entry.head.true_from_s, entry.head.at_s, entry.head.id
