"""The best times for a job: first days beside each other that cost about the same."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from swardcast.planning.blocked_days import Blocked, is_weekday_off
from swardcast.planning.start_days import StartDay

__all__ = ["Window", "best_windows"]

_ABOUT_THE_SAME: Final = 0.10
"""What a first day may cost more than the best one near it, to be as good in practice: judgement."""
_NEAR: Final = timedelta(days=7)
"""Two times whose best days lie nearer are one: judgement; a week also evens out weekdays."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """First days beside each other.

    Args:
        best: the one that costs least, the earliest of several.
        days: all of them, those included.
        before: why the job cannot begin on the working day before them; nothing where it costs more then, or is not
            asked about.
        after: the same for the working day after them.
    """

    best: StartDay
    days: tuple[StartDay, ...]
    before: tuple[Blocked, ...]
    after: tuple[Blocked, ...]


def best_windows(days: Sequence[StartDay], most: int) -> tuple[Window, ...]:
    """Find the best times.

    The first one holds the best day of all. A further one has the best day within a week of it, and lies in none before
    it.

    Args:
        days: first days, the earliest first.
        most: how many times at most, 0 or more.

    Returns:
        Times, that of the best day first; fewer where there are not so many.
    """
    found: list[Window] = []
    taken: set[int] = set()
    for place in sorted(_best_near(days), key=lambda place: (_weighted(days[place]), place)):
        if len(found) == most:
            break
        if place in taken:
            continue
        back, before = _reach(days, place, range(place - 1, -1, -1), taken)
        on, after = _reach(days, place, range(place + 1, len(days)), taken)
        places = [*reversed(back), place, *on]
        taken.update(places)
        window = tuple(days[one] for one in places)
        found.append(Window(best=days[place], days=window, before=before, after=after))
    return tuple(found)


def _weighted(day: StartDay) -> float:
    return float("inf") if day.cost is None else day.cost.weighted_days


def _best_near(days: Sequence[StartDay]) -> list[int]:
    """Places of the days that nothing within a week beats."""
    possible = [place for place, day in enumerate(days) if day.cost is not None]
    return [
        place
        for place in possible
        if all(
            (_weighted(days[place]), place) <= (_weighted(days[other]), other)
            for other in possible
            if abs(days[other].day - days[place].day) <= _NEAR
        )
    ]


def _reach(
    days: Sequence[StartDay], best: int, places: Iterable[int], taken: set[int]
) -> tuple[list[int], tuple[Blocked, ...]]:
    """Go on over days that cost about the same, and over weekdays off; tell what stopped it, where that is no cost.

    It also stops before a day that costs less: that one belongs to another time.
    """
    least = _weighted(days[best])
    reached: list[int] = []
    for place in places:
        day = days[place]
        if is_weekday_off(day.blocked):
            continue
        if day.blocked:
            return reached, day.blocked
        if place in taken or not least <= _weighted(day) <= (1 + _ABOUT_THE_SAME) * least:
            break
        reached.append(place)
    return reached, ()
