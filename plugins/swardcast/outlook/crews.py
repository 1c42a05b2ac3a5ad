"""The log's starts, hold-ups and finishes of one job: who works where, and in what working time surfaces got done."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime

from swardcast.outlook.working_clock import WorkingClock
from swardcast.records.log import Progress, Step

__all__ = ["Crew", "Finish", "WorkSoFar", "work_so_far"]


@dataclass(slots=True, kw_only=True)
class Finish:
    """Surfaces that one crew finished.

    Args:
        count: how many; those of one entry share its time.
        minutes: working time of the whole staff on the job, above 0.
    """

    count: int
    minutes: float


@dataclass(slots=True, kw_only=True)
class Crew:
    """People who work through surfaces one after the other, from the entry that started them there.

    Args:
        surfaces: ids of those still to be finished, in the order of the job.
        held: those of them that are held up, with the entry that says so.
        minutes: working time spent since the last finish, counted like a finish's.
        last: what it finished last, or None.
    """

    surfaces: list[str]
    held: dict[str, Progress] = field(default_factory=dict)
    minutes: float = 0.0
    last: Finish | None = None

    @property
    def going(self) -> list[str]:
        """The surfaces that are not held up, in order."""
        return [name for name in self.surfaces if name not in self.held]


@dataclass(slots=True, kw_only=True)
class WorkSoFar:
    """How the work on a job stands.

    Args:
        crews: crews with something left to finish.
        finishes: what was finished and in what time.
        done: ids of the surfaces finished.
        at: the moment of the last entry, or None.
    """

    crews: list[Crew] = field(default_factory=list)
    finishes: list[Finish] = field(default_factory=list)
    done: set[str] = field(default_factory=set)
    at: datetime | None = None

    @property
    def at_work(self) -> int:
        """How many crews are at work at the same time."""
        return sum(1 for crew in self.crews if crew.going)


def work_so_far(surfaces: Sequence[str], entries: Sequence[Progress], clock: WorkingClock) -> WorkSoFar:
    """Follow the work through the log.

    A set of surfaces started by an entry of its own has a crew of its own. Crews at work at the same time share the
    staff alike: a minute of two crews counts half for each.

    Args:
        surfaces: the job's surfaces in order.
        entries: the job's entries of progress that stand, oldest first.
        clock: the working clock; hold-ups stop it for those held up.

    Returns:
        How the work stands after the last entry.
    """
    so_far = WorkSoFar()
    for entry in entries:
        at = entry.head.true_from
        if so_far.at is not None:
            _let_time_pass(so_far, clock.minutes(so_far.at, at))
        so_far.at = at
        match entry.step:
            case Step.DONE:
                _finish(so_far, entry)
            case Step.HELD_UP:
                for crew in so_far.crews:
                    crew.held.update({name: entry for name in entry.surfaces if name in crew.surfaces})
            case Step.STARTED | Step.RESUMED:
                _begin(so_far, surfaces, entry)
    return so_far


def _let_time_pass(so_far: WorkSoFar, minutes: float) -> None:
    shares = so_far.at_work
    for crew in so_far.crews:
        if crew.going:
            crew.minutes += minutes / shares


def _begin(so_far: WorkSoFar, surfaces: Sequence[str], entry: Progress) -> None:
    """Start surfaces or take them up again; new ones join the crew that the entry also names."""
    named = [crew for crew in so_far.crews if set(crew.surfaces) & set(entry.surfaces)]
    for crew in named:
        for name in entry.surfaces:
            crew.held.pop(name, None)
    known = {name for crew in named for name in crew.surfaces}
    new = set(entry.surfaces) - known
    if entry.step is Step.RESUMED:
        new -= so_far.done
    so_far.done -= new
    if not new:
        return
    if not named:
        named = [Crew(surfaces=[])]
        so_far.crews.append(named[0])
    joined = new | set(named[0].surfaces)
    named[0].surfaces = [name for name in surfaces if name in joined]


def _finish(so_far: WorkSoFar, entry: Progress) -> None:
    so_far.done |= set(entry.surfaces)
    for crew in so_far.crews:
        done = [name for name in crew.surfaces if name in entry.surfaces]
        if not done:
            continue
        was_going = bool(crew.going)
        crew.surfaces = [name for name in crew.surfaces if name not in done]
        for name in done:
            crew.held.pop(name, None)
        if was_going and crew.minutes > 0:
            crew.last = Finish(count=len(done), minutes=crew.minutes)
            so_far.finishes.append(crew.last)
        elif was_going and crew.last is not None:
            crew.last.count += len(done)  # entered one after the other, worked on together
        # Finished while held up: nobody entered when it was taken up again, so that it teaches nothing.
        crew.minutes = 0.0
    so_far.crews = [crew for crew in so_far.crews if crew.surfaces]
