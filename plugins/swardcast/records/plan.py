"""The plan: programmes of jobs."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from enum import Enum
from typing import Final

from swardcast.records.operations import LASTING, Operation

__all__ = [
    "COURSE_STATUS",
    "FollowUp",
    "Job",
    "LocalRule",
    "OwnWords",
    "Part",
    "Play",
    "Reading",
    "Stretch",
    "Withdrawal",
]

COURSE_STATUS: Final = "course-status"
"""Name of the course's own news in the feeds; no job can have it."""


class Play(Enum):
    """Play on a surface."""

    OPEN = "open"
    OPEN_WITH_CARE = "open with care"
    TEMPORARY_GREEN = "temporary green"
    CLOSED = "closed"
    NOT_KNOWN = "not known"


class Part(Enum):
    """Parts of a notice, in their fixed order; the plan's own words name them so."""

    SHORT_ANSWER = "short answer"
    DAY_BY_DAY = "day by day"
    WHERE = "where"
    WHY_NOW = "why now"
    IN_NUMBERS = "in numbers"
    WHAT_CHANGED = "what changed"
    WHAT_YOU_CAN_DO = "what you can do"
    THE_RULES = "the Rules"
    TAKE_CARE = "please take care"
    HOW_THE_DATE = "how the date is worked out"
    WHO_DECIDES = "who decides"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """A measurement that is a reason for the work.

    Args:
        what: what was measured, in the trade's words.
        found: the reading as typed, with its unit.
        target: the club's aim as typed.
        on: the day of the reading, or None.
    """

    what: str
    found: str
    target: str
    on: date | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """A range of days that the manager or a published source gives, where nothing is computed.

    Args:
        from_days: the short end, 0 or more.
        to_days: the long end, at least `from_days`.
        source: whose range it is.
    """

    from_days: float
    to_days: float
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FollowUp:
    """Time from the end of the work on a surface until players may be on it: sand dries, is brushed in, is rolled.

    Args:
        from_minutes: the short end, 0 or more.
        to_minutes: the long end, at least `from_minutes`.
    """

    from_minutes: float
    to_minutes: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LocalRule:
    """A Model Local Rule that the Committee adopted for a job: typed, never inferred.

    Args:
        rule: its number, such as "E-4".
        says: what the Committee decided, as typed, or "".
        decided_by: who adopted it, as typed.
        starts: the first day on which it holds, or None.
        until: the last day on which it holds, or None.
    """

    rule: str
    says: str
    decided_by: str
    starts: date | None
    until: date | None


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnWords:
    """The manager's own Markdown for one part of the notice.

    Args:
        part: which part.
        instead: whether it replaces our words; else it comes after them.
        markdown: the words.
    """

    part: Part
    instead: bool
    markdown: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Withdrawal:
    """A job taken out of the plan: its notice was a mistake, or another one has taken its place.

    Args:
        at: from when on it is withdrawn, aware.
        because: why, for members, as typed.
        instead: id of the job whose notice members are to read instead, or "".
        line: where it is written, in the job's file.
    """

    at: datetime
    because: str
    instead: str
    line: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """Operations on named surfaces in one window.

    Args:
        id: name for life: feed guid, calendar UID and address.
        title: what members read, without a date.
        programme: title of the programme that it belongs to.
        announced: the day from which the notice is public.
        starts: first day of the work.
        surfaces: ids of the surfaces, in the order of the work.
        operations: what is done, in order.
        surfaces_a_day: pace of the work.
        spare_days: working days kept free for weather.
        while_working: play on a surface while it is worked on.
        reopens_after: time from the end of the work on a surface (from its beginning, where it `lasts`) to its
            reopening, or None for the same day.
        follow_up: minutes from the end of the work to reopening, or None for at once; `reopens_after` goes before it.
        normal_after: time to back to normal where nothing is computed, or None.
        why: reasons, one sentence each.
        readings: measurements that led to it.
        own_words: the manager's Markdown for the head of the notice.
        own_parts: the manager's Markdown for single parts of it.
        local_rules: Local Rules that the Committee adopted for it.
        scores: the club's own words on scores and handicap, or "".
        meanwhile: the club's own words on how holes are played while surfaces are out of play, or "".
        withdrawn: when and why it was taken out of the plan, or None.
        private_note: what the club notes for itself, or ""; members never see it.
        file: where it is written, for reasons and errors.
        line: the line in that file.
    """

    id: str
    title: str
    programme: str
    announced: date
    starts: date
    surfaces: tuple[str, ...]
    operations: tuple[Operation, ...]
    surfaces_a_day: float
    spare_days: int
    while_working: Play
    reopens_after: Stretch | None
    follow_up: FollowUp | None
    normal_after: Stretch | None
    why: tuple[str, ...]
    readings: tuple[Reading, ...]
    own_words: str
    file: str
    line: int
    own_parts: tuple[OwnWords, ...] = ()
    local_rules: tuple[LocalRule, ...] = ()
    scores: str = ""
    meanwhile: str = ""
    withdrawn: Withdrawal | None = None
    private_note: str = ""

    def is_withdrawn(self, at: datetime) -> bool:
        """Whether it is out of the plan at a moment, aware."""
        return self.withdrawn is not None and self.withdrawn.at.timestamp() <= at.timestamp()

    @property
    def lasts(self) -> bool:
        """Whether it is nothing but a state that takes surfaces out of play: temporary greens, winter protection."""
        kinds = {operation.kind for operation in self.operations}
        return kinds <= LASTING and self.while_working in (Play.CLOSED, Play.TEMPORARY_GREEN)
