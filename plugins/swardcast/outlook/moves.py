"""How far a date has to move before members should hear of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from typing import Final

from swardcast.outlook.dates import DateRange
from swardcast.outlook.fixtures import Side, side_of
from swardcast.records.fixtures import Fixture

__all__ = ["MOVE_THAT_MATTERS_DAYS", "crossed", "matters", "moves"]

MOVE_THAT_MATTERS_DAYS: Final = 2
MOVE_OF_A_WIDE_RANGE_DAYS: Final = 14  # a range told in months does not move by days: judgement

_SIX_IN_TEN: Final = 0.1
"""Share of the range from early to allow until that lies between 5 and 6 chances in 10: 0.253 of 2.563 standard
deviations of a normal distribution; that 6 in 10 are enough is judgement."""


def crossed(published: DateRange, now: DateRange, coming: Sequence[Fixture]) -> tuple[Fixture, ...]:
    """List the fixtures that a date has crossed.

    Args:
        published: the date as told.
        now: the date as computed now.
        coming: fixtures that are not over.

    Returns:
        Those that lie on its other side now.
    """
    return tuple(
        one
        for one in coming
        if Side.NOT_KNOWN not in (sides := (side_of(one, published), side_of(one, now))) and sides[0] is not sides[1]
    )


def _is_clearly_beyond(fixture: Fixture, now: DateRange) -> bool:
    """Near an even chance a fixture would change sides to and fro; it has done so at 6 chances in 10."""
    if now.likely is None or now.allow_until is None:
        return False
    width_days = (now.allow_until - (now.early or now.likely)).days
    return abs((now.likely - fixture.first_day).days) >= _SIX_IN_TEN * width_days


def matters(published: DateRange, now: DateRange, today: date, coming: Sequence[Fixture]) -> bool:
    """Tell whether members should hear of a date that moved.

    Args:
        published: the date as told.
        now: the date as computed now.
        today: the day; of a likely day that has passed by then, only "allow until" is still told.
        coming: fixtures that are not over.

    Returns:
        True when it reads otherwise than before, and moved far enough by itself (see `moves`) or clearly across a
        fixture.
    """
    if published.likely is not None and now.likely is not None and max(published.likely, now.likely) < today:
        now = replace(now, likely=published.likely)
    if published.is_wide and now.is_wide and published.months == now.months:
        return False  # it would read the same
    if not published.is_given and not now.is_given:
        return published.no_date is not now.no_date  # half a date is none: only another reason reads otherwise
    over = crossed(published, now, coming)
    return moves(published, now) or any(_is_clearly_beyond(one, now) for one in over)


def moves(published: DateRange, now: DateRange) -> bool:
    """Tell whether a date moved so far that members should hear of it.

    Args:
        published: the date as told.
        now: the date as computed now.

    Returns:
        True when likely or allow until moved by two days or more, by two weeks or more in a range told in months, or
        when one of the two gives no date.
    """
    least = MOVE_THAT_MATTERS_DAYS
    if published.is_wide:
        least = MOVE_OF_A_WIDE_RANGE_DAYS
    for old, new in ((published.likely, now.likely), (published.allow_until, now.allow_until)):
        if (old is None) is not (new is None):
            return True
        if old is not None and new is not None and abs((new - old).days) >= least:
            return True
    return False
