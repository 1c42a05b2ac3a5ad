"""How jobs stand by plan and log at a moment, and the surfaces on which a step is next. No sums."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Final

from swardcast.outlook.ledger import JobFacts, SurfaceFacts, job_facts
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Entry
from swardcast.records.plan import Job
from swardcast.records.standing import standing_entries

__all__ = ["Standing", "standing_at"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """What plan and log say at a moment.

    Args:
        records: the club's records.
        at: the moment, in the club's time.
        entries: entries known then that stand, oldest first.
        facts: each job announced by then, by id.
    """

    records: ClubRecords
    at: datetime
    entries: tuple[Entry, ...]
    facts: Mapping[str, JobFacts]

    @property
    def jobs(self) -> tuple[Job, ...]:
        """The jobs announced by then, in the plan's order."""
        return tuple(facts.job for facts in self.facts.values())

    def able(self, job: str, word: str) -> tuple[str, ...]:
        """Tell the surfaces of a job on which a step can come next.

        Args:
            job: id of the job.
            word: the step, a word of `kinds.KINDS`.

        Returns:
            Ids, in the order of the work; none when the job cannot take this step.
        """
        facts = self.facts[job]
        if word not in _NEXT:
            over = facts.called_off is not None or all(there.normal for there in facts.surfaces.values())
            return () if over else facts.job.surfaces
        if facts.called_off is not None and word in _ONLY_PLANNED:
            return ()
        if word in _BEFORE_WORK:
            begun = any(there.started or there.done for there in facts.surfaces.values())
            return () if begun else facts.job.surfaces
        if word == "normal" and facts.job.lasts:  # it ends without being done
            return tuple(name for name, there in facts.surfaces.items() if there.started and not there.normal)
        return tuple(name for name in facts.job.surfaces if _NEXT[word](facts.surfaces[name]))

    def usual(self, job: str, word: str) -> tuple[str, ...]:
        """Tell the surfaces that a step most likely means where none are named.

        Args:
            job: id of the job.
            word: the step.

        Returns:
            For the start of work a day's worth of surfaces; for its end and a hold-up those under way, and where there
            is none, a day's worth or all that are not done; for its resumption those held up that had been started,
            maybe none; else all that can take the step; where none can, all of the job.
        """
        able = self.able(job, word)
        facts = self.facts[job]
        a_day = max(1, math.ceil(facts.job.surfaces_a_day))
        begun = tuple(name for name in able if facts.surfaces[name].started)
        match word:
            case "started":
                return able[:a_day] or facts.job.surfaces
            case "resumed":
                return begun  # which of those not begun comes next, nobody has said
            case "done":
                in_hand = tuple(name for name in begun if not facts.surfaces[name].held)
                return in_hand or able[:a_day] or facts.job.surfaces
            case "held-up":
                return begun or able or facts.job.surfaces
            case _:
                return able or facts.job.surfaces

    def is_in_hand(self, job: str) -> bool:
        """Tell whether a job is started somewhere, not done there, and not held up."""
        return any(there.started and not there.done and not there.held for there in self.facts[job].surfaces.values())

    def is_begun(self, job: str) -> bool:
        """Tell whether a job is under way or held up somewhere, be it by rain before the work."""
        return self.is_under_way(job) or any(there.held for there in self.facts[job].surfaces.values())

    def is_under_way(self, job: str) -> bool:
        """Tell whether a job is started somewhere and not done there."""
        return any(there.started and not there.done for there in self.facts[job].surfaces.values())


def standing_at(records: ClubRecords, at: datetime) -> Standing:
    """Gather what plan and log say at a moment.

    Args:
        records: the club's records.
        at: the moment, aware.

    Returns:
        How the jobs stand.
    """
    known = records.known_at(at)
    entries = standing_entries(known.entries)
    facts = {name: job_facts(job, entries) for name, job in known.jobs.items()}
    return Standing(records=records, at=at.astimezone(records.club.time_zone), entries=entries, facts=facts)


_NEXT: Final[Mapping[str, Callable[[SurfaceFacts], bool]]] = {
    "started": lambda here: here.started is None and here.done is None,
    "done": lambda here: here.done is None,
    "held-up": lambda here: here.done is None and here.held is None,
    "resumed": lambda here: here.held is not None,
    "seen": lambda here: here.done is not None and here.normal is None,
    "normal": lambda here: here.done is not None and here.normal is None,
    "postponed": lambda _: True,
    "forward": lambda _: True,
    "called-off": lambda here: here.done is None,
}
_BEFORE_WORK: Final = ("postponed", "forward")
_ONLY_PLANNED: Final = ("started", "done", "held-up", "resumed", "called-off")
