"""What has to lie between several jobs: by their surfaces, their kinds of work and the order of their names."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

from swardcast.planning.schedule import Gap
from swardcast.records.gaps import KindGap
from swardcast.records.plan import Job

__all__ = ["gaps_between"]


def gaps_between(
    jobs: Sequence[Job], kind_gaps: Sequence[KindGap], *, least_days: int = 0, in_order: bool = True
) -> tuple[Gap, ...]:
    """Tell what has to lie between jobs.

    Gaps hold between jobs that share a surface; others only keep their order.

    Args:
        jobs: the jobs, in the order in which they are named.
        kind_gaps: the club's gaps between kinds of work; where several hold, the longest.
        least_days: days that have to lie between any two jobs on a common surface, 0 for none.
        in_order: whether the jobs keep the order in which they are named.

    Returns:
        Gaps: jobs on a common surface never share a day.
    """
    return tuple(_gaps(jobs, kind_gaps, least_days, in_order=in_order))


def _gaps(jobs: Sequence[Job], kind_gaps: Sequence[KindGap], least_days: int, *, in_order: bool) -> Iterator[Gap]:
    for (place, one), (other_place, other) in combinations(enumerate(jobs), 2):
        is_next, is_shared = other_place == place + 1, bool(set(one.surfaces) & set(other.surfaces))
        if is_shared or (in_order and is_next):
            days = _least(one, other, kind_gaps, least_days) if is_shared else 1
            yield Gap(earlier=one.id, later=other.id, least_days=days, in_order=in_order)
        if is_shared and not in_order:
            days = _least(other, one, kind_gaps, least_days)
            yield Gap(earlier=other.id, later=one.id, least_days=days)


def _least(earlier: Job, later: Job, kind_gaps: Sequence[KindGap], least_days: int) -> int:
    before, after = ({operation.kind for operation in job.operations} for job in (earlier, later))
    told = [gap.least_days for gap in kind_gaps if gap.earlier in before and gap.later in after]
    return max(1, least_days, *told)
