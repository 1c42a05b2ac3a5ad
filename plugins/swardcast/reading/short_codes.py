"""Jobs whose short addresses would be the same: told while the later one still has no notice that anybody has seen."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import count

from swardcast.errors import Problem
from swardcast.records.plan import Job
from swardcast.records.short_codes import code_of

__all__ = ["alike_in_short"]


def alike_in_short(jobs: Iterable[Job]) -> Iterator[Problem]:
    """Find jobs whose short address another job of the plan has.

    Args:
        jobs: the whole plan, withdrawn jobs too: their addresses are theirs for life.

    Yields:
        A problem for the one that is announced later; of one day, for the one that stands later in the plan.
    """
    owners: dict[str, Job] = {}
    plan = sorted(jobs, key=lambda job: job.announced)
    taken = {code_of(job.id) for job in plan}
    for job in plan:
        code = code_of(job.id)
        first = owners.setdefault(code, job)
        if first is job:
            continue
        free = next(name for number in count(2) if code_of(name := f"{job.id}-{number}") not in taken)
        owner = f"{first.id!r} ({first.file}, line {first.line})"
        yield Problem(
            file=job.file,
            line=job.line,
            field="id",
            found=f"{job.id!r}, whose short address /n/{code}/ is that of {owner}",
            expected=f"an id with a short address of its own, such as {free!r}",
            hint="Change the id of whichever of the two members have not seen yet.",
        )
