"""Play on a surface and limits on play: who says what, until when, and which word counts.

Precedence, spelled out once:

1. Only the log says how play stands. The plan says what play will be while work is going on; the sums say when it
   changes back; neither ever opens or closes a surface.
2. Entries speak in the order in which they were true (`records.standing`): a morning entry for the surfaces that it
   names; work started or taken up again closes a surface as the plan says; work done opens it again, with care but
   where the plan has it simply open during work that leaves nothing, unless by plan it stays closed (or on its
   temporary green) for a time or has follow-up work to come; an entry's own `play` goes before all of that. A hold-up
   alone says nothing of play. The latest word on a surface counts.
3. A word holds until the end of its day, or as long as the club lets an entry count where that is shorter
   (`records.standing.counts_until`). After that play is "not known since" until somebody says so again:
   yesterday's state is never repeated as today's.
4. A limit (trolleys, preferred lies, frost delay and so on) holds to the end of its day, or until the time of that day
   or the later day that was typed, or until it is named again, also as "lifted". A later entry that does not name it
   leaves it as it is. Who decided it is what was typed. A limit changes no play: even a frost delay closes
   nothing by itself.
5. Work is what the log says of a surface: under way from "work started", held up until taken up again, healing from
   "work done". A surface that is half done is not done: it stays under way or held up, and nothing heals before the
   whole of it is entered as done. Where several jobs meet on a surface, work going on counts before what heals, what
   heals before what is planned; the later one's dates include what the earlier one left.
6. Work that lasts (a hole on its temporary green, a green under its cover: `Job.lasts`) begins with its first entry. It
   ends with the entry that calls the surface open in words of its own: a morning entry, `play:`, or back to normal.
   Said to be done after that, it takes nothing out of play again.
7. An entry counts from the moment at which it was made (`at`), so one with a moment to come says nothing yet.
   A correction counts from its own moment and speaks of the moment of the entry that stands instead.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Final

from swardcast.outlook.states import Reason, ReasonKind
from swardcast.records.folder import ClubRecords
from swardcast.records.log import BackToNormal, Entry, MorningStatus, Progress, Step
from swardcast.records.operations import LEAVES_NOTHING
from swardcast.records.plan import Job, Play
from swardcast.records.standing import surfaces_named

__all__ = [
    "OPEN",
    "Statement",
    "ended",
    "latest_play",
    "latest_statement",
    "latest_statements",
    "says_done_of_what_lasts",
    "statements",
]

OPEN: Final = (Play.OPEN, Play.OPEN_WITH_CARE)
"""Play on the surface itself."""


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
        entries: entries that stand, oldest first; what ends work that lasts must be among them.

    Yields:
        Statements, oldest first.
    """
    said, first = list[Entry](), dict[str, int]()
    for entry in entries:
        begins = first.setdefault(getattr(entry, "job", ""), len(said))
        said.append(entry)
        statement = _statement_of(entry, records, said, begins)
        if statement is not None:
            yield statement


def _statement_of(entry: Entry, records: ClubRecords, said: Sequence[Entry], begins: int = 0) -> Statement | None:
    """What one entry says; "done" of what lasts depends on what was said up to it, since its job's first entry."""
    head = entry.head
    match entry:
        case MorningStatus():
            reason = Reason(kind=ReasonKind.MORNING_ENTRY, source=head.id, at=head.true_from, words=entry.why)
            return Statement(at=head.true_from, play=dict(entry.play), reason=reason)
        case Progress():
            job = records.jobs.get(entry.job)
            play = entry.play or _play_after(entry, job)
            names = entry.surfaces
            if says_done_of_what_lasts(entry, job) and job is not None:
                over = ended(job, records, said[begins:])
                names = tuple(name for name in names if name not in over)
            if play is None or not names:
                return None
            reason = Reason(kind=_STEP_REASON[entry.step], source=head.id, at=head.true_from, words=entry.because)
            return Statement(at=head.true_from, play=dict.fromkeys(names, play), reason=reason)
        case BackToNormal():
            reason = Reason(kind=ReasonKind.SAID_NORMAL, source=head.id, at=head.true_from)
            return Statement(at=head.true_from, play=dict.fromkeys(entry.surfaces, Play.OPEN), reason=reason)
        case _:
            return None


def _play_after(entry: Progress, job: Job | None) -> Play | None:
    if job is None or entry.step is Step.HELD_UP:
        return None  # a hold-up by itself does not say whether the surface is open
    if entry.step is not Step.DONE:
        return job.while_working
    if job.reopens_after is not None:
        return Play.TEMPORARY_GREEN if job.while_working is Play.TEMPORARY_GREEN else Play.CLOSED
    if job.follow_up is not None:
        return job.while_working  # until an entry calls it open
    work = (*job.operations, *entry.as_done)
    leaves_nothing = job.normal_after is None and all(one.kind in LEAVES_NOTHING for one in work)
    needs_no_care = leaves_nothing and job.while_working is Play.OPEN
    return Play.OPEN if needs_no_care else Play.OPEN_WITH_CARE


def says_done_of_what_lasts(entry: Entry, job: Job | None) -> bool:
    """Tell whether an entry says no more than that work is done which lasts on, so that what was said before matters.

    Args:
        entry: the entry.
        job: its job, or None.

    Returns:
        Whether it does.
    """
    done = isinstance(entry, Progress) and entry.step is Step.DONE and entry.play is None
    return done and job is not None and job.lasts


def ended(job: Job, records: ClubRecords, entries: Iterable[Entry], own: int | None = None) -> dict[str, Statement]:
    """Find which entry said in words of its own that a surface is open, after a job that lasts had begun there.

    Of a job that does not last, it must come after "work done": then a label's time is over.

    Args:
        job: the job.
        records: the club's records.
        entries: entries that stand, oldest first.
        own: how many of them are the job's, after which no more is sought than surfaces that wait for it; None where
            that is not known.

    Returns:
        The first such statement, by surface.
    """
    begun: set[str] = set()
    found: dict[str, Statement] = {}
    heard = 0
    for entry in entries:
        heard += getattr(entry, "job", "") == job.id
        step = entry.step if isinstance(entry, Progress) and entry.job == job.id else None
        names = getattr(entry, "surfaces", ()) if step is not None else ()
        if step is Step.STARTED:  # anew
            begun.difference_update(names)
            found = {name: said for name, said in found.items() if name not in names}
        if step is Step.DONE:
            begun.update(names)
        for said in statements(records, [entry]) if begun and _speaks_of_play(entry) else ():
            found = {name: said for name, play in said.play.items() if play in OPEN and name in begun} | found
        if job.lasts and step in (Step.STARTED, Step.RESUMED):
            begun.update(names)
        if heard == own and begun <= found.keys():
            break
    return found


def _speaks_of_play(entry: Entry) -> bool:
    """Whether it does so in words of its own, and not by what the plan says of the work."""
    if isinstance(entry, Progress):
        return entry.play is not None
    return isinstance(entry, MorningStatus | BackToNormal)


def latest_statement(
    name: str, records: ClubRecords, entries: Sequence[Entry], stands: Callable[[Entry], bool] = lambda _: True
) -> tuple[Play, Statement] | None:
    """Find the latest statement about a surface.

    Args:
        name: id of the surface.
        records: the club's records.
        entries: entries, oldest first; what ends work that lasts must be among them.
        stands: tells whether one of them stands; all do where nothing else is said.

    Returns:
        Play there and the statement, or None where none of them says anything of it.
    """
    for place in reversed(range(len(entries))):
        entry = entries[place]
        if name not in surfaces_named(entry) or not stands(entry):
            continue
        lasts = says_done_of_what_lasts(entry, records.jobs.get(getattr(entry, "job", "")))
        said = _statement_of(entry, records, list(filter(stands, entries[: place + 1])) if lasts else [entry])
        if said is not None and name in said.play:
            return said.play[name], said
    return None


def latest_play(name: str, records: ClubRecords, entries: Sequence[Entry]) -> Play | None:
    """Tell how the latest statement about a surface says that play stands there.

    Args:
        name: id of the surface.
        records: the club's records.
        entries: entries that stand, oldest first; what ends work that lasts must be among them.

    Returns:
        Play, or None where none of them says anything of it.
    """
    latest = latest_statement(name, records, entries)
    return latest[0] if latest is not None else None


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
