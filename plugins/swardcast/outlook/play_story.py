"""The story of play: the log replayed, and what of it members should hear of as course status."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from itertools import groupby
from math import inf
from typing import Final

from swardcast.outlook.changes import changed_play
from swardcast.outlook.limits import LimitInForce, limits_after
from swardcast.outlook.play import Statement, latest_statements, says_done_of_what_lasts, statements
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Correction, Entry, MorningStatus, NoteToMembers, Progress, Step
from swardcast.records.plan import Play
from swardcast.records.standing import counts_until, standing_entries

__all__ = ["PlayChange", "play_changes"]

_TWO_DAYS_S: Final = 2 * 24 * 3600.0  # longer than any day, also when the clocks change


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayChange:
    """Play on some surfaces changed from what was last stated, or what was stated was withdrawn.

    Args:
        id: name for life: the entry's.
        at: when it became known.
        play: play on each surface where it changed.
        limits: limits that are new, another than before, or lifted.
        why: the reason as typed, or "".
        words: the manager's own Markdown, or "".
        corrects: whether a correction brought it.
        replaces: whether that correction put another entry in the place of the withdrawn one.
    """

    id: str
    at: datetime
    play: Mapping[str, Play]
    limits: tuple[LimitInForce, ...]
    why: str
    words: str
    corrects: bool
    replaces: bool


def play_changes(records: ClubRecords, as_of: datetime) -> list[PlayChange]:
    """Find the moments at which play or a limit on it became other than last stated.

    What work entries change is told with the job.

    Args:
        records: the club's records.
        as_of: the moment, aware.

    Returns:
        Changes, oldest first; the first statement counts where something is not open.
    """
    known = records.heard_by(as_of)  # what was told of a job stays told when it is withdrawn
    listener = _Listener(known, dict.fromkeys(records.surfaces, Play.OPEN))
    groups = groupby(known.entries, key=lambda entry: entry.head.at)
    return [change for at, group in groups for change in listener.hear(at, list(group))]


@dataclass(slots=True)
class _Listener:
    """Hears the log moment by moment.

    Args:
        records: the club's records as known at the end.
        told: play as last told, by surface.
        told_limits: limits as last told, by name, each with what tells it from another.
    """

    records: ClubRecords
    told: dict[str, Play]
    told_limits: dict[str, object] = field(default_factory=dict)
    _latest: dict[str, tuple[Play, Statement]] = field(default_factory=dict)
    _limits: dict[str, LimitInForce] = field(default_factory=dict)
    _heard: list[Entry] = field(default_factory=list)
    _limiting: list[Entry] = field(default_factory=list)
    _begun_s: dict[str, float] = field(default_factory=dict)

    def hear(self, at: datetime, entries: Sequence[Entry]) -> Iterator[PlayChange]:
        """One item for a moment: the correction, if it withdrew such an entry, or else the morning entry."""
        self._listen(entries)
        opens = [entry for entry in entries if self._opens(entry)]
        play, limits = self._changed_play(at, entries, opens), self._changed_limits(at, entries)
        mornings = [entry for entry in entries if isinstance(entry, MorningStatus)]
        corrections = [entry for entry in entries if isinstance(entry, Correction) and self._is_of_course(entry)]
        speakers = corrections or mornings or opens
        if corrections or (speakers and (play or limits)):
            head = speakers[0].head
            why = mornings[-1].why if mornings else ""
            yield PlayChange(
                id=head.id,
                at=head.at,
                play=play,
                limits=limits,
                why=why,
                words=head.words,
                corrects=bool(corrections),
                replaces=any(entry.head.instead_of for entry in entries),
            )

    def _listen(self, entries: Sequence[Entry]) -> None:
        self._heard += entries
        self._limiting += [one for one in entries if isinstance(one, Correction | MorningStatus)]
        for one in entries:
            if isinstance(one, Progress):
                begun_s = self._begun_s.get(one.job, inf)
                self._begun_s[one.job] = min(begun_s, one.head.true_from_s)
        said = limiting = standing_entries(entries)  # several at a minute speak in their own order
        if not self._come_last(entries):
            said, limiting = standing_entries(self._of_today(entries)), standing_entries(self._limiting)
            self._latest, self._limits = {}, {}  # what was withdrawn must go
        self._latest.update(latest_statements(statements(self.records, said)))
        for entry in limiting:
            self._limits = limits_after(self._limits, entry)

    def _of_today(self, entries: Sequence[Entry]) -> Sequence[Entry]:
        """All that can say how play stands today: nothing from before it, but what work that lasts looks back at."""
        first = begin = entries[0].head.at_s - _TWO_DAYS_S
        for entry in self._heard[self._place(begin) :]:
            if isinstance(entry, Progress) and self._looks_back(entry):
                first = min(first, self._begun_s[entry.job])
        return self._heard[self._place(first) :]

    def _place(self, begin_s: float) -> int:
        """Where they begin that were written down from a moment on: none of the others was true as late as that."""
        return bisect_left(self._heard, begin_s, key=lambda entry: entry.head.at_s)

    def _come_last(self, entries: Sequence[Entry]) -> bool:
        """Whether nothing said before changes by them, nor they by it."""
        if any(isinstance(entry, Correction) or self._looks_back(entry) for entry in entries):
            return False
        return len(entries) == 1 or all(entry.head.true_from == entry.head.at for entry in entries)

    def _looks_back(self, entry: Entry) -> bool:
        return says_done_of_what_lasts(entry, self.records.jobs.get(getattr(entry, "job", "")))

    def _changed_play(self, at: datetime, entries: Sequence[Entry], opens: Sequence[Entry]) -> dict[str, Play]:
        club = self.records.club
        today = at.astimezone(club.time_zone).date()
        fresh = {
            name: play
            for name, (play, said) in self._latest.items()
            if said.at.date() == today and at < counts_until(said.at, club)
        }
        changed = changed_play(self.told, fresh)
        self.told.update(fresh)
        by_work = {entry.head.id for entry in entries if not (isinstance(entry, MorningStatus) or entry in opens)}
        return {name: play for name, play in changed.items() if self._latest[name][1].reason.source not in by_work}

    def _opens(self, entry: Entry) -> bool:
        """Whether it says "done" once more of surfaces that are done, to say how they play now: no news of the job."""
        if not isinstance(entry, Progress) or entry.step is not Step.DONE or entry.play is None:
            return False
        done = {
            name
            for other in self._heard
            if isinstance(other, Progress) and other.step is Step.DONE and other.job == entry.job and other is not entry
            for name in other.surfaces
        }
        return done.issuperset(entry.surfaces)

    def _changed_limits(self, at: datetime, entries: Sequence[Entry]) -> tuple[LimitInForce, ...]:
        if not any(isinstance(entry, MorningStatus | Correction) for entry in entries):
            return ()
        holds = {name: one for name, one in self._limits.items() if one.holds_at(at)}
        now: dict[str, object] = {name: _told_as(one) for name, one in holds.items()}
        ids = {entry.head.id for entry in entries}
        lifted = [
            one
            for name, one in self._limits.items()
            if one.limit.is_lifted and one.source in ids and name in self.told_limits
        ]
        news = [one for name, one in holds.items() if now[name] != self.told_limits.get(name)]
        self.told_limits = now
        return (*news, *lifted)

    def _is_of_course(self, correction: Correction) -> bool:
        """Whether it corrects what was told as course status, and not with a job."""
        corrected = (entry for entry in self._heard if entry.head.id == correction.corrects)
        return any(
            isinstance(entry, MorningStatus) or (isinstance(entry, NoteToMembers) and not entry.job)
            for entry in corrected
        )


def _told_as(held: LimitInForce) -> object:
    """What tells a limit from another: yesterday's, said again today, is the same one."""
    limit = held.limit
    return limit.what, limit.until.date() if limit.outlasts else limit.until.time()
