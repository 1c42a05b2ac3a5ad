"""The story of play: the log replayed, and what of it members should hear of as course status."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import groupby

from swardcast.outlook.changes import changed_play
from swardcast.outlook.play import Statement, latest_statements, statements
from swardcast.records.folder import ClubRecords
from swardcast.records.log import Correction, Entry, MorningStatus
from swardcast.records.plan import Play
from swardcast.records.standing import standing_entries

__all__ = ["PlayChange", "play_changes"]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayChange:
    """Play on some surfaces changed from what was last stated, or what was stated was withdrawn.

    Args:
        id: name for life: the entry's.
        at: when it became known.
        play: play on each surface where it changed.
        why: the reason as typed, or "".
        words: the manager's own Markdown, or "".
        corrects: whether a correction brought it.
    """

    id: str
    at: datetime
    play: Mapping[str, Play]
    why: str
    words: str
    corrects: bool


def play_changes(records: ClubRecords, as_of: datetime) -> list[PlayChange]:
    """Find the moments at which play became other than last stated.

    What work entries change is told with the job.

    Args:
        records: the club's records.
        as_of: the moment, aware.

    Returns:
        Changes, oldest first; the first statement counts where something is not open.
    """
    known = records.known_at(as_of)
    told: dict[str, Play] = dict.fromkeys(records.surfaces, Play.OPEN)
    latest: dict[str, tuple[Play, Statement]] = {}
    heard: list[Entry] = []
    changes: list[PlayChange] = []
    for at, group in groupby(known.entries, key=lambda entry: entry.head.at):
        entries = list(group)
        heard += entries
        if len(entries) == 1 and not isinstance(entries[0], Correction):
            latest.update(latest_statements(statements(known, entries)))
        else:
            latest = latest_statements(statements(known, standing_entries(heard)))
        today = at.astimezone(records.club.time_zone).date()
        fresh = {name: play for name, (play, said) in latest.items() if said.at.date() == today}
        changed = changed_play(told, fresh)
        told.update(fresh)
        by_work = {entry.head.id for entry in entries if not isinstance(entry, MorningStatus)}
        of_course = {name: play for name, play in changed.items() if latest[name][1].reason.source not in by_work}
        changes += _told(entries, heard, of_course)
    return changes


def _told(entries: Sequence[Entry], heard: Sequence[Entry], changed: Mapping[str, Play]) -> Iterator[PlayChange]:
    """One item for a moment: the correction, if it withdrew a morning entry, or else the morning entry."""
    mornings = [entry for entry in entries if isinstance(entry, MorningStatus)]
    earlier = {entry.head.id for entry in heard if isinstance(entry, MorningStatus)}
    corrections = [entry for entry in entries if isinstance(entry, Correction) and entry.corrects in earlier]
    if not corrections and not (mornings and changed):
        return
    head = (corrections or mornings)[0].head
    why = mornings[-1].why if mornings else ""
    yield PlayChange(id=head.id, at=head.at, play=changed, why=why, words=head.words, corrects=bool(corrections))
