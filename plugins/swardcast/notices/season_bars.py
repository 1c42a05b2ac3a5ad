"""A season of work and healing, ready to be drawn: plain facts, whoever puts them together."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from swardcast.notices.pictures import AsOf, FixtureMark, Tick, Told

__all__ = ["SeasonBars", "SeasonRow"]


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonRow:
    """One job of a season.

    Args:
        name: the job, in few words.
        work: days of work on the axis as runs (first, last), in order.
        waits: days between those of the work, or since, on which nobody is at work and it is not finished, as runs.
        heals_from: the first day of healing or of a closure, which surfaces that are finished may begin before the
            last day of work; or None.
        likely: the day by which it is likely back to normal, or None where none may be told; like the days below, it
            may lie after the axis.
        allow_until: the day to allow for, or None; where no date can be told, the day up to which it has been healing.
        words: what is said of it, such as "called off", or "".
        in_months_until: the last day of healing or of a closure that is told in months alone, or None.
    """

    name: str
    work: tuple[tuple[date, date], ...]
    waits: tuple[tuple[date, date], ...] = ()
    heals_from: date | None
    likely: date | None
    allow_until: date | None
    words: str = ""
    in_months_until: date | None = None

    def days_within(self, first: date, last: date) -> Iterator[tuple[date, date]]:
        """Give the runs of days that its bars take on an axis, in no order.

        Args:
            first: the first day of the axis.
            last: its last day.

        Returns:
            Runs (first, last) that have at least a day on the axis, cut at its ends.
        """
        heals_until = self.in_months_until or self.allow_until or self.likely
        heals = ((self.heals_from, heals_until),) if self.heals_from is not None and heals_until is not None else ()
        for begin, end in (*self.work, *self.waits, *heals):
            if begin <= last and end >= first:
                yield max(begin, first), min(end, last)


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonBars:
    """Work and healing over a season, one row for each job.

    Args:
        told: the picture in words; its tables have every fact.
        first: the axis's first day.
        last: its last day, after the first.
        ticks: days that are named, in order, about as many as `pictures.day_ticks` gives.
        rows: the jobs in the order in which they stand, from top to bottom.
        fixtures: competitions and visitors' days.
        as_of: the day up to which things are known, or None where the axis does not have it.
    """

    told: Told
    first: date
    last: date
    ticks: tuple[Tick, ...]
    rows: tuple[SeasonRow, ...]
    fixtures: tuple[FixtureMark, ...]
    as_of: AsOf | None
