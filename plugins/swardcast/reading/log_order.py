"""What one entry says of another, or of the plan: nothing corrected or done, moved the wrong way, unread labels."""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping, Sequence
from typing import Final

from swardcast.errors import Problem, first_of, nearest
from swardcast.records.club import Surface
from swardcast.records.log import BackToNormal, Change, Correction, Entry, PlanChange, Progress, Step
from swardcast.records.operations import ProductUse
from swardcast.records.plan import Job
from swardcast.records.standing import StandingEntries

__all__ = ["before_the_label_was_read", "dangling", "moved_the_wrong_way", "never_done", "postponed_once_begun"]

_MOST_NAMED: Final = 3
"""Surfaces named one by one; judgement."""


def never_done(
    standing: StandingEntries, jobs: Mapping[str, Job], surfaces: Mapping[str, Surface]
) -> Iterator[Problem]:
    """Find surfaces that are called back to normal before the log says that their work was done.

    Work that lasts, such as temporary greens, need only have begun.

    Args:
        standing: all entries that stand; with one that could not be read, this cannot be told.
        jobs: the plan.
        surfaces: the club's surfaces.

    Yields:
        Problems.
    """
    for entry in standing:
        if isinstance(entry, BackToNormal):
            begins = frozenset(Step) - {Step.HELD_UP} if jobs[entry.job].lasts else {Step.DONE}
            yield from _never_done(entry, standing.of_job(entry.job), begins, surfaces)


def _never_done(
    entry: BackToNormal, of_job: Sequence[Entry], begins: Container[Step], surfaces: Mapping[str, Surface]
) -> Iterator[Problem]:
    done = {
        name
        for other in of_job
        if isinstance(other, Progress) and other.step in begins
        if other.head.true_from <= entry.head.true_from
        for name in other.surfaces
    }
    lacking = [surfaces[name].name for name in entry.surfaces if name not in done]
    if lacking:
        yield _problem(
            entry,
            field="surfaces",
            found=f"{first_of(lacking, _MOST_NAMED)} back to normal, with no 'work done' of {entry.job!r} there before",
            expected="an entry 'work done' first, or only the surfaces that were done",
        )


def _problem(entry: Entry, field: str, found: str, expected: str, hint: str = "") -> Problem:
    return Problem(file=entry.head.file, line=entry.head.line, field=field, found=found, expected=expected, hint=hint)


def dangling(entries: Sequence[Entry], known: Mapping[str, str]) -> Iterator[Problem]:
    """Find corrections that correct nothing.

    Args:
        entries: all entries that could be read, in any order.
        known: file of each entry's name, also of those that could not be read.

    Yields:
        Problems.
    """
    by_id = {entry.head.id: entry for entry in entries}
    corrections = [entry for entry in entries if isinstance(entry, Correction)]
    for entry in corrections:
        head, target = entry.head, by_id.get(entry.corrects)
        if target is None and entry.corrects not in known:
            yield _problem(
                entry,
                field="corrects",
                found=f"{entry.corrects!r}, which is no entry of the log",
                expected="the name of an earlier entry's file",
                hint=nearest(entry.corrects, known),
            )
        elif (first := _first_to_correct(entry, corrections)) is not None:
            yield _problem(
                entry,
                field="corrects",
                found=f"{entry.corrects!r}, which {first.head.id!r} has corrected already",
                expected="an entry that stands",
                hint=f"Correct '{first.head.id}-instead'." if f"{first.head.id}-instead" in by_id else "",
            )
        elif target is not None and (isinstance(target, Correction) or target.head.at >= head.at):
            yield _problem(
                entry,
                field="corrects",
                found=f"{entry.corrects!r}, which is a correction or not earlier",
                expected="an earlier entry that is no correction",
            )


def _first_to_correct(correction: Correction, corrections: Sequence[Correction]) -> Correction | None:
    """Another correction of the same entry that was made before, or None."""
    others = [other for other in corrections if other.corrects == correction.corrects]
    first = min(others, key=lambda other: (other.head.at_s, other.head.id))
    return None if first is correction else first


def before_the_label_was_read(standing: StandingEntries, jobs: Mapping[str, Job]) -> Iterator[Problem]:
    """Find work that is begun, done or brought forward to a day on which nobody had read the label of its product.

    Args:
        standing: all entries that stand.
        jobs: the plan.

    Yields:
        Problems.
    """
    newest = {entry.job: entry for entry in standing if isinstance(entry, PlanChange)}
    for entry in standing:
        if isinstance(entry, PlanChange) and entry.starts is not None and newest[entry.job] is entry:
            day, field = entry.starts, "starts"
        elif isinstance(entry, Progress) and entry.step is not Step.HELD_UP:
            day, field = entry.head.true_from.date(), "at"
        else:
            continue
        for use in jobs[entry.job].operations:
            if isinstance(use, ProductUse) and use.label_read_on > day:
                found = f"{day}; the label of the {use.kind.value} was read on {use.label_read_on}"
                expected = "a day not before the label was read"
                hint = "Read the label first, and put that day into 'label read on' in the plan."
                yield _problem(entry, field=field, found=found, expected=expected, hint=hint)


def moved_the_wrong_way(standing: StandingEntries, jobs: Mapping[str, Job]) -> Iterator[Problem]:
    """Find jobs that are postponed to a day that is no later, or brought forward to one that is no earlier.

    After a postponement to no day that is known, any day from the entry's own may be the new one.

    Args:
        standing: all entries that stand.
        jobs: the plan.

    Yields:
        Problems.
    """
    starts = {name: job.starts for name, job in jobs.items()}
    latest: dict[str, Change] = {}
    for entry in standing:
        if not isinstance(entry, PlanChange):
            continue
        had_no_day = latest.get(entry.job) is Change.PUT_OFF
        latest[entry.job] = entry.change
        if entry.starts is None:
            continue
        now, new = starts[entry.job], entry.starts
        on = entry.head.true_from.date()
        expected = ""
        if entry.change is Change.POSTPONED and had_no_day:
            expected = "" if new >= on else f"a day from {on}, the day of the entry"
        elif entry.change is Change.POSTPONED and new <= now:
            expected = f"a day after {now}, on which it starts so far"
        elif entry.change is Change.BROUGHT_FORWARD and not on <= new < now:
            expected = f"a day from {on}, the day of the entry, and before {now}, on which it starts so far"
        if expected:
            yield _problem(
                entry,
                field="starts",
                found=f"{entry.job!r} {entry.change.value} {new}",
                expected=expected,
            )
        starts[entry.job] = new


def postponed_once_begun(standing: StandingEntries) -> Iterator[Problem]:
    """Find jobs that are postponed to no day that is known after they have begun: such work is held up.

    Args:
        standing: all entries that stand.

    Yields:
        Problems.
    """
    begun: set[str] = set()
    for entry in standing:
        if isinstance(entry, Progress) and entry.step is not Step.HELD_UP:
            begun.add(entry.job)
        if isinstance(entry, PlanChange) and entry.change is Change.PUT_OFF and entry.job in begun:
            found = f"{entry.job!r} {entry.change.value}, which has begun"
            hint = "Work that has begun and waits is 'kind: held up'."
            yield _problem(entry, field="change", found=found, expected="work that has not begun", hint=hint)
