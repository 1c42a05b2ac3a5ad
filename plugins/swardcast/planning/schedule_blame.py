"""Why several jobs cannot all be done, and what would have to give way."""

from __future__ import annotations

from dataclasses import dataclass, replace

from swardcast.planning.schedule import Gap, Wish, is_possible

__all__ = ["Blame", "Eased", "blame_for"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Eased:
    """A gap that alone is too long.

    Args:
        gap: as it was wished.
        most_days: the most days that would do, all else as wished.
    """

    gap: Gap
    most_days: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Blame:
    """What is in the way.

    Args:
        never: ids of jobs that can start on no day at all; where there are any, nothing else was looked for.
        eased: gaps of which each alone, made shorter, would do.
        gaps: whether all would fit without any gap, each on the next day at the soonest.
        order: whether all would fit in another order.
        crew: whether all would fit with one crew more.
    """

    never: tuple[str, ...] = ()
    eased: tuple[Eased, ...] = ()
    gaps: bool = False
    order: bool = False
    crew: bool = False


def blame_for(wish: Wish) -> Blame:
    """Find what is in the way of jobs that cannot all be done.

    Args:
        wish: what is wished, known to be impossible.

    Returns:
        What would do when it alone gave way.
    """
    never = tuple(job.job for job in wish.jobs if not job.first_days)
    if never:
        return Blame(never=never)
    longest = [(gap, _longest(wish, gap)) for gap in wish.gaps if gap.least_days > 1]
    return Blame(
        eased=tuple(Eased(gap=gap, most_days=days) for gap, days in longest if days is not None),
        gaps=is_possible(replace(wish, gaps=tuple(replace(gap, least_days=1) for gap in wish.gaps))),
        order=is_possible(replace(wish, gaps=tuple(replace(gap, in_order=False) for gap in wish.gaps))),
        crew=is_possible(replace(wish, crews=wish.crews + 1)),
    )


def _longest(wish: Wish, gap: Gap) -> int | None:
    """The most days that one gap may have, below what it has; by halves, since a longer one never helps."""
    if not is_possible(_with(wish, gap, 1)):
        return None
    possible, too_long = 1, gap.least_days
    while too_long - possible > 1:
        middle = (possible + too_long) // 2
        if is_possible(_with(wish, gap, middle)):
            possible = middle
        else:
            too_long = middle
    return possible


def _with(wish: Wish, gap: Gap, days: int) -> Wish:
    return replace(wish, gaps=tuple(replace(one, least_days=days) if one is gap else one for one in wish.gaps))
