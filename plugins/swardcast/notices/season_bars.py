"""A season of work and healing, ready to be drawn: plain facts, whoever puts them together."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from swardcast.notices.pictures import AsOf, FixtureMark, Tick, Told

__all__ = ["SeasonBars", "SeasonRow"]


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonRow:
    """One job of a season.

    Args:
        name: the job, in few words.
        work: days of work as runs (first, last), in order; at least one.
        likely: the day by which it is likely back to normal, or None where none may be told.
        allow_until: the day to allow for, or None.
        words: what is said of it, such as "called off", or "".
        in_months_until: the last day of healing or of a closure that is told in months alone, or None.
    """

    name: str
    work: tuple[tuple[date, date], ...]
    likely: date | None
    allow_until: date | None
    words: str = ""
    in_months_until: date | None = None


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
