"""The live log: what happened, entry by entry."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from datetime import date, datetime
from enum import Enum
from typing import Final

from swardcast.records.operations import Operation
from swardcast.records.plan import Play

__all__ = [
    "ANNOUNCED",
    "FROST_DELAY",
    "WITHDRAWN",
    "BackToNormal",
    "Change",
    "Correction",
    "Entry",
    "EntryHead",
    "Eye",
    "GrowthHeldBack",
    "HeldBackBy",
    "Limit",
    "MorningStatus",
    "NoteToMembers",
    "Observation",
    "PlanChange",
    "Progress",
    "Step",
    "is_taken_name",
    "morning_name",
]


ANNOUNCED: Final = "announced"
"""Name of the change with which a job is announced; no entry can have it."""
WITHDRAWN: Final = "withdrawn"
"""Name of the news that a notice was withdrawn; no entry can have it."""


def morning_name(day: date) -> str:
    """Name the change that a morning's weather brings; no entry can have such a name.

    Args:
        day: the day.

    Returns:
        "weather-2027-08-23".
    """
    return f"{_MORNING}{day.isoformat()}"


def is_taken_name(name: str) -> bool:
    """Whether changes that no entry made have this name for life, so that feeds would take an entry for one of them.

    Args:
        name: name of an entry.

    Returns:
        True for `ANNOUNCED`, `WITHDRAWN` and whatever `morning_name` may give.
    """
    return name in (ANNOUNCED, WITHDRAWN) or re.fullmatch(rf"{_MORNING}\d{{4}}-\d\d-\d\d", name) is not None


_MORNING: Final = "weather-"

FROST_DELAY: Final = "frost delay"
"""The limit that decides whether to set out at all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryHead:
    """What every entry has.

    Args:
        id: the file's name without its ending.
        at: when it was written down, aware; before that nobody knew it.
        true_from: when it was true; differs from `at` only in a correction.
        by: who says so: an office or initials, as typed.
        words: the manager's own Markdown, or "".
        file: where it is written.
        line: the line of its first field.
        instead_of: id of the entry that it replaces, or "".
        private_note: what the club notes for itself, or ""; members never see it.

    Attributes:
        at_s: `at` as a timestamp, s: entries are put in order by it again and again, and asking for it is slow.
        true_from_s: `true_from` so.
    """

    id: str
    at: datetime
    true_from: datetime
    by: str
    words: str
    file: str
    line: int
    instead_of: str = ""
    private_note: str = ""
    at_s: float = field(init=False, repr=False, compare=False)
    true_from_s: float = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "at_s", self.at.timestamp())
        object.__setattr__(self, "true_from_s", self.true_from.timestamp())


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """A limit on play or on what comes along: typed, never inferred.

    Args:
        name: what it is about: "trolleys", "preferred lies" and so on.
        what: what was decided, as typed; "" when a limit entered before is lifted.
        decided_by: who decided it, as typed, or who made the entry, or "".
        until: the moment at which it ends, aware: the end of a day, or a time of day.
        outlasts: whether it was given a later day than that of the entry.
        rule: number of the Model Local Rule that it is, such as "E-3", or "".
    """

    name: str
    what: str
    decided_by: str
    until: datetime
    outlasts: bool
    rule: str = ""

    @property
    def is_lifted(self) -> bool:
        """Whether it ends a limit entered before."""
        return not self.what


@dataclass(frozen=True, slots=True, kw_only=True)
class MorningStatus:
    """How the course stands this morning.

    Args:
        head: the entry's head.
        play: play on each surface that it names, by id.
        why: why something is not open, or "".
        limits: trolleys, buggies, preferred lies and the like, as decided and typed.
    """

    head: EntryHead
    play: tuple[tuple[str, Play], ...]
    why: str
    limits: tuple[Limit, ...]


class Step(Enum):
    """What happened to the work."""

    STARTED = "work started"
    DONE = "work done"
    HELD_UP = "held up"
    RESUMED = "work resumed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """Work started, done, held up or taken up again.

    Args:
        head: the entry's head.
        step: which of the four.
        job: id of the job.
        surfaces: ids of the surfaces it concerns.
        because: the cause of a hold-up, or "".
        as_done: operations as they were really done, each in the place of the planned one of its kind.
        play: play on these surfaces from now on, where it differs from the plan, or None.
        no_work_before: of a hold-up the first day on which work may go on, or None where that may be at any hour.
    """

    head: EntryHead
    step: Step
    job: str
    surfaces: tuple[str, ...]
    because: str
    as_done: tuple[Operation, ...]
    play: Play | None
    no_work_before: date | None = None


class Eye(Enum):
    """How an observation was made."""

    BY_EYE = "by eye"
    COUNTED = "counted"


@dataclass(frozen=True, slots=True, kw_only=True)
class Observation:
    """Something seen on the course.

    Args:
        head: the entry's head.
        job: id of the job, or "" for a reading that belongs to none.
        surfaces: ids of the surfaces.
        share_left: share of the first disruption that is still there, 0 to 1, or None.
        turf_cover: share of the surface under green leaf, from a photo count, 0 to 1, or None.
        green_speed_mm: length of the roll on the speed meter, mm, or None.
        how: by eye or counted.
        readings: readings by name, as typed: firmness, height of cut and so on.
    """

    head: EntryHead
    job: str
    surfaces: tuple[str, ...]
    share_left: float | None
    turf_cover: float | None
    green_speed_mm: float | None
    how: Eye
    readings: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BackToNormal:
    """The manager says that surfaces roll as before the work."""

    head: EntryHead
    job: str
    surfaces: tuple[str, ...]


class Change(Enum):
    """Changes of plan."""

    POSTPONED = "postponed to"
    PUT_OFF = "postponed"
    BROUGHT_FORWARD = "brought forward to"
    CALLED_OFF = "called off"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanChange:
    """A job moved, postponed to no day that is known yet, or called off.

    Args:
        head: the entry's head.
        job: id of the job.
        change: what kind of change.
        starts: the new first day, or None when it is called off or no new day is known.
        because: the reason for members.
    """

    head: EntryHead
    job: str
    change: Change
    starts: date | None
    because: str


class HeldBackBy(Enum):
    """What holds growth back; each is a key of `turf.growth.BRAKES` (tested)."""

    DULL_WEATHER = "dull weather"
    UNFED = "unfed"
    GROWTH_REGULATOR = "growth regulator"
    FROST_ON_THE_LEAF = "frost on the leaf"


@dataclass(frozen=True, slots=True, kw_only=True)
class GrowthHeldBack:
    """Growth was, or is to be, held back on some surfaces.

    Args:
        head: the entry's head.
        by: what holds it back.
        surfaces: ids of the surfaces.
        first_day: the first such day.
        last_day: the last such day.
    """

    head: EntryHead
    by: HeldBackBy
    surfaces: tuple[str, ...]
    first_day: date
    last_day: date


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteToMembers:
    """A note in the manager's own words, about a job or the course."""

    head: EntryHead
    job: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Correction:
    """An earlier entry withdrawn; a replacement, if there is one, is an entry of its own.

    Args:
        head: the entry's head; its words say why.
        corrects: id of the entry withdrawn.
    """

    head: EntryHead
    corrects: str


Entry = MorningStatus | Progress | Observation | BackToNormal | PlanChange | GrowthHeldBack | NoteToMembers | Correction
