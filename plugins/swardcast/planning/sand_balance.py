"""What lies in the sand store day by day: counted, delivered, used by the log, to be used by the plan.

Masses are as weighed, with the water that sand in the yard has.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from enum import Enum
from typing import Final

from swardcast.planning.sand_moves import SandMove
from swardcast.planning.stages import Stage
from swardcast.records.plan import Job
from swardcast.records.sand_store import SandStore

__all__ = ["SandBalance", "StoreLine", "StoreWhat", "Trouble", "sand_balance"]

_ROUNDING_T: Final = 1e-9  # sand used up to the last grain is not less than none


class StoreWhat(Enum):
    """What changes the store, in the order in which it counts on one day."""

    COUNTED = "counted"
    DELIVERED = "delivered"
    WORK = "work"


class Trouble(Enum):
    """What is wrong with the store on a day."""

    RUNS_OUT = "runs out"
    BELOW_LEAST = "below the least"
    DOES_NOT_FIT = "does not fit"


@dataclass(frozen=True, slots=True, kw_only=True)
class StoreLine:
    """One change of the store.

    Args:
        day: the day.
        what: what it is.
        change_t: by how much, tonnes; of a count after the first one, by how much it differs from the sums.
        after_t: what lies there then; below 0 for what is missing.
        job: the job that takes it, or None.
        note: words on a delivery as typed, or "".
        is_to_come: whether it is still to come.
        is_whole: whether all the sand of the work is known.
        trouble: what is wrong then, or None.
    """

    day: date
    what: StoreWhat
    change_t: float
    after_t: float
    job: Job | None = None
    note: str = ""
    is_to_come: bool = False
    is_whole: bool = True
    trouble: Trouble | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SandBalance:
    """The store over a period.

    Args:
        since: the day of the first count, from which the sums go.
        opening_t: what lies there at the beginning of the period, or of the day of that count where it is later.
        lines: its changes in the period, the first first.
        today: the day of the reader.
        room_t: how much it holds, or None.
        least_t: what is kept back.
    """

    since: date
    opening_t: float
    lines: tuple[StoreLine, ...]
    today: date
    room_t: float | None
    least_t: float

    @property
    def closing_t(self) -> float:
        """What lies there at the end of the period."""
        return self.lines[-1].after_t if self.lines else self.opening_t

    @property
    def to_come(self) -> tuple[StoreLine, ...]:
        """Changes still to come."""
        return tuple(line for line in self.lines if line.is_to_come)

    @property
    def first_trouble(self) -> StoreLine | None:
        """The first change to come that does not work out."""
        return next((line for line in self.to_come if line.trouble is not None), None)

    @property
    def disagrees(self) -> tuple[StoreLine, ...]:
        """Changes that are over and leave less than nothing: log, deliveries and count do not agree."""
        return tuple(line for line in self.lines if not line.is_to_come and line.after_t < -_ROUNDING_T)

    @property
    def needed_by(self) -> StoreLine | None:
        """The first work to come that leaves less than is kept back: a further delivery has to be there before it."""
        return next((line for line in self.to_come if line.after_t < self.least_t - _ROUNDING_T), None)

    @property
    def missing_t(self) -> float:
        """How much more has to be delivered so that what is kept back is always there; 0 where nothing is missing."""
        return max([0.0, *(self.least_t - line.after_t for line in self.to_come)])

    def room_before(self, line: StoreLine) -> float | None:
        """Tell how much more fits in just before a change.

        Args:
            line: one of the changes.

        Returns:
            Tonnes, 0 or more; None where the room is not known.
        """
        return None if self.room_t is None else max(0.0, self.room_t - (line.after_t - line.change_t))


def sand_balance(
    store: SandStore, moves: Iterable[SandMove], *, today: date, first: date, last: date
) -> SandBalance | None:
    """Follow the store from its first count on.

    On one day a count comes first, then deliveries, then work. Sand used is that of the log, sand to come that of the
    plan.

    Args:
        store: what the club tells of it.
        moves: sand of all jobs, in and out of the period.
        today: the day; counts after it do not exist.
        first: the first day of the period.
        last: its last day.

    Returns:
        The store over the period; None where nobody counted it up to its last day.
    """
    counts = [count for count in store.counts if count.on <= min(today, last)]
    if not counts:
        return None
    since = counts[0].on
    found = [
        *(StoreLine(day=one.on, what=StoreWhat.COUNTED, change_t=one.mass_t, after_t=one.mass_t) for one in counts),
        *_deliveries(store, today),
        *_works(store, moves),
    ]
    places = {what: place for place, what in enumerate(StoreWhat)}
    ordered = sorted(
        (line for line in found if since <= line.day <= last), key=lambda line: (line.day, places[line.what])
    )
    lines = tuple(_followed(ordered, store))
    before = [line for line in lines if line.day < first]
    within = [line for line in lines if line.day >= first]
    return SandBalance(
        since=since,
        opening_t=before[-1].after_t if before else counts[0].mass_t,
        lines=tuple(within),
        today=today,
        room_t=store.room_t,
        least_t=store.least_t,
    )


def _deliveries(store: SandStore, today: date) -> Iterator[StoreLine]:
    for one in store.deliveries:
        yield StoreLine(
            day=one.on,
            what=StoreWhat.DELIVERED,
            change_t=one.mass_t,
            after_t=0.0,
            note=one.note,
            is_to_come=one.on > today,
        )


def _works(store: SandStore, moves: Iterable[SandMove]) -> Iterator[StoreLine]:
    """One line for each job and day."""
    days: dict[tuple[date, str, Stage], list[SandMove]] = {}
    for move in moves:
        if move.stage is not Stage.PLANNED and move.day is not None and move.kind in store.kinds:
            days.setdefault((move.day, move.job.id, move.stage), []).append(move)
    for (day, _, stage), taken in days.items():
        dry_t = sum(move.dry_t for move in taken if move.dry_t is not None)
        yield StoreLine(
            day=day,
            what=StoreWhat.WORK,
            change_t=-store.weighed_t(dry_t),
            after_t=0.0,
            job=taken[0].job,
            is_to_come=stage is Stage.TO_COME,
            is_whole=all(move.dry_t is not None for move in taken),
        )


def _followed(lines: Sequence[StoreLine], store: SandStore) -> Iterator[StoreLine]:
    """Add up from line to line; a count begins anew, and tells by how much the sums were wrong."""
    there = 0.0
    for place, line in enumerate(lines):
        if line.what is StoreWhat.COUNTED:
            change = line.change_t if place == 0 else line.after_t - there
            there = line.after_t
            yield replace(line, change_t=change)
            continue
        there += line.change_t
        yield replace(line, after_t=there, trouble=_trouble(line, there, store) if line.is_to_come else None)


def _trouble(line: StoreLine, after_t: float, store: SandStore) -> Trouble | None:
    if line.what is StoreWhat.DELIVERED:
        is_too_much = store.room_t is not None and after_t > store.room_t + _ROUNDING_T
        return Trouble.DOES_NOT_FIT if is_too_much else None
    if after_t < -_ROUNDING_T:
        return Trouble.RUNS_OUT
    return Trouble.BELOW_LEAST if after_t < store.least_t - _ROUNDING_T else None
