"""Play on a surface: the latest statement of the day rules until the day's end or the next statement.

Precedence, spelled out once:

1. Entries speak in the order in which they were true. A morning entry speaks for the surfaces it names;
   work started or taken up again closes a surface as the plan says; work done opens it again, with care
   where something has to heal; an entry's own `play` goes before all of that.
2. A statement holds until the end of its day. After that play is "not known" until somebody says so again:
   yesterday's state is never repeated as today's.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime

from swardcast.outlook.states import Reason, ReasonKind
from swardcast.records.folder import ClubRecords
from swardcast.records.log import BackToNormal, Entry, MorningStatus, Progress, Step
from swardcast.records.plan import Job, Play

__all__ = ["Statement", "latest_statements", "statements"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Statement:
    """Somebody said how play stands on some surfaces.

    Args:
        at: the moment from which it was true.
        play: play on each surface named, by id.
        reason: the entry it came from.
    """

    at: datetime
    play: Mapping[str, Play]
    reason: Reason


_STEP_REASON = {
    Step.STARTED: ReasonKind.STARTED,
    Step.RESUMED: ReasonKind.STARTED,
    Step.HELD_UP: ReasonKind.HELD_UP,
    Step.DONE: ReasonKind.DONE,
}


def statements(records: ClubRecords, entries: Iterable[Entry]) -> Iterator[Statement]:
    """Read every statement about play out of the log.

    Args:
        records: the club's records.
        entries: entries that stand, oldest first.

    Yields:
        Statements, oldest first.
    """
    for entry in entries:
        head = entry.head
        match entry:
            case MorningStatus():
                reason = Reason(kind=ReasonKind.MORNING_ENTRY, source=head.id, at=head.true_from, words=entry.why)
                yield Statement(at=head.true_from, play=dict(entry.play), reason=reason)
            case Progress():
                play = entry.play or _play_after(entry, records.jobs.get(entry.job))
                if play is not None:
                    kind = _STEP_REASON[entry.step]
                    reason = Reason(kind=kind, source=head.id, at=head.true_from, words=entry.because)
                    yield Statement(at=head.true_from, play=dict.fromkeys(entry.surfaces, play), reason=reason)
            case BackToNormal():
                reason = Reason(kind=ReasonKind.SAID_NORMAL, source=head.id, at=head.true_from)
                yield Statement(at=head.true_from, play=dict.fromkeys(entry.surfaces, Play.OPEN), reason=reason)
            case _:
                pass


def _play_after(entry: Progress, job: Job | None) -> Play | None:
    if job is None or entry.step is Step.HELD_UP:
        return None  # a hold-up by itself does not say whether the surface is open
    if entry.step is not Step.DONE:
        return job.while_working
    return Play.CLOSED if job.reopens_after is not None else Play.OPEN_WITH_CARE


def latest_statements(said: Iterable[Statement]) -> dict[str, tuple[Play, Statement]]:
    """Keep the latest statement about each surface.

    Args:
        said: statements, oldest first.

    Returns:
        Play and the statement, by surface.
    """
    latest: dict[str, tuple[Play, Statement]] = {}
    for statement in said:
        for name, play in statement.play.items():
            latest[name] = (play, statement)
    return latest
