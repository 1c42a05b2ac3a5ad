"""Jobs taken out of the plan: where members are sent instead, and entries that speak of them all the same."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from zoneinfo import ZoneInfo

from swardcast.errors import Problem, nearest
from swardcast.records.log import BackToNormal, Correction, Entry, Progress
from swardcast.records.plan import Job, Withdrawal
from swardcast.records.standing import standing_entries

__all__ = ["entries_of_withdrawn", "led_nowhere"]


def led_nowhere(jobs: Mapping[str, Job], zone: ZoneInfo) -> Iterator[Problem]:
    """Find withdrawn jobs that send members to a notice which is not there.

    Args:
        jobs: the plan.
        zone: the club's time zone.

    Yields:
        Problems.
    """
    for job in jobs.values():
        if job.withdrawn is None or not job.withdrawn.instead:
            continue
        found = _wrong_with(job.withdrawn, job, jobs, zone)
        if found:
            others = [name for name in jobs if name != job.id]
            yield Problem(
                file=job.file,
                line=job.withdrawn.line,
                field="withdrawn.instead",
                found=f"{job.withdrawn.instead!r}, {found}",
                expected="the id of another job, announced by then and not withdrawn, or nothing",
                hint="" if job.withdrawn.instead in jobs else nearest(job.withdrawn.instead, others),
            )


def _wrong_with(withdrawn: Withdrawal, job: Job, jobs: Mapping[str, Job], zone: ZoneInfo) -> str:
    other = jobs.get(withdrawn.instead)
    if other is None:
        return "which is not in the plan"
    if other is job:
        return "the job itself"
    if withdrawn.at.astimezone(zone).date() < other.announced:
        return f"which is announced only on {other.announced}"
    return "which is withdrawn itself" if other.is_withdrawn(withdrawn.at) else ""


def entries_of_withdrawn(entries: Sequence[Entry], jobs: Mapping[str, Job]) -> Iterator[Problem]:
    """Find entries of a job that was withdrawn by then, and work that had been entered for it and still stands.

    Args:
        entries: all entries, in any order.
        jobs: the plan.

    Yields:
        Problems.
    """
    corrections = [entry for entry in entries if isinstance(entry, Correction)]
    for job in jobs.values():
        if job.withdrawn is None:
            continue
        mine = [entry for entry in entries if getattr(entry, "job", "") == job.id]
        when = f"withdrawn on {job.withdrawn.at:%Y-%m-%d at %H:%M} ({job.file}, line {job.withdrawn.line})"
        for entry in mine:
            if job.is_withdrawn(entry.head.at):
                expected = "a job of the plan, or a moment before that"
                if job.withdrawn.instead:
                    expected = f"{job.withdrawn.instead!r}, which is to be read instead, or a moment before that"
                yield _problem(entry, f"{job.id!r}, {when}", expected, "")
        before = (entry for entry in (*mine, *corrections) if not job.is_withdrawn(entry.head.at))
        for entry in standing_entries(before):
            if isinstance(entry, Progress | BackToNormal):
                hint = "First correct this entry, with the other job under 'instead' if the work was done for that."
                yield _problem(entry, f"work of {job.id!r}, {when}", "no work for a job that is withdrawn", hint)


def _problem(entry: Entry, found: str, expected: str, hint: str) -> Problem:
    return Problem(file=entry.head.file, line=entry.head.line, field="job", found=found, expected=expected, hint=hint)
