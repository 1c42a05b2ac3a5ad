"""What happened to a job, entry by entry and date by date, newest first."""

from __future__ import annotations

from collections.abc import Iterator

from swardcast.language.voice import Voice, capital
from swardcast.notices.notice import Event
from swardcast.notices.words import places_in_words, range_in_words
from swardcast.outlook.causes import Cause
from swardcast.outlook.story import JobChange, JobStory
from swardcast.quantities import SandBasis
from swardcast.records.folder import ClubRecords
from swardcast.records.log import (
    BackToNormal,
    Change,
    Correction,
    Entry,
    Eye,
    GrowthHeldBack,
    HeldBackBy,
    NoteToMembers,
    Observation,
    PlanChange,
    Progress,
    Step,
)
from swardcast.records.operations import Dressing, Operation
from swardcast.records.standing import withdrawn_ids

__all__ = ["cause_in_words", "entry_in_words", "events_of"]

_STEPS = {Step.STARTED: "Work started", Step.DONE: "Work done", Step.RESUMED: "Work taken up again"}
_CAUSES = {
    Cause.ANNOUNCED: "First announced",
    Cause.PLAN: "The plan changed",
    Cause.WORK: "The work went other than planned",
    Cause.OBSERVED: "What we saw on the course",
    Cause.HELD_BACK: "Growth is held back",
    Cause.LEARNT: "What our last work taught us",
    Cause.COLDER: "Colder weather than usual",
    Cause.WARMER: "Warmer weather than usual",
    Cause.CORRECTED: "A correction of our log",
    Cause.PARTLY_NORMAL: "Some of it is back to normal",
    Cause.HOTTER: "Hotter weather than is good for grass",
    Cause.COOLER: "Cooler weather after the heat",
    Cause.HOTTER_FORECAST: "A forecast of heat, which slows the grass",
    Cause.COOLER_FORECAST: "A forecast of the end of the heat",
    Cause.COLDER_FORECAST: "A colder forecast",
    Cause.WARMER_FORECAST: "A warmer forecast",
    Cause.WEATHER: "The weather",
}


_HELD_BACK = {
    HeldBackBy.DULL_WEATHER: "dull weather",
    HeldBackBy.UNFED: "want of feed",
    HeldBackBy.GROWTH_REGULATOR: "a growth regulator",
    HeldBackBy.FROST_ON_THE_LEAF: "frost on the leaf",
}


def events_of(story: JobStory, records: ClubRecords, voice: Voice) -> tuple[Event, ...]:
    """Tell what happened to a job.

    Args:
        story: the job's changes.
        records: the club's records as known at the moment.
        voice: the language and the day of the reader.

    Returns:
        Events, newest first.
    """
    job = story.job
    about = [entry for entry in records.entries if getattr(entry, "job", None) == job.id]
    about += [entry for entry in records.entries if entry.head.id in _held_back(story)]
    ids = {entry.head.id for entry in about}
    about += [entry for entry in records.entries if isinstance(entry, Correction) and entry.corrects in ids]
    withdrawn = withdrawn_ids(records.entries)
    events = [_event(entry, records, voice, withdrawn=entry.head.id in withdrawn) for entry in about]
    events += _moves(story, records, voice)
    return tuple(sorted(events, key=lambda event: event.at, reverse=True))


def _held_back(story: JobStory) -> set[str]:
    works = (work for change in story.changes for work in change.outlook.surfaces)
    recoveries = [work.recovery for work in works if work.recovery is not None]
    return {entry.head.id for recovery in recoveries for entry in recovery.held_back}


def _event(entry: Entry, records: ClubRecords, voice: Voice, *, withdrawn: bool) -> Event:
    at = entry.head.true_from
    markdown = "" if entry.head.instead_of else entry.head.words
    sentence = entry_in_words(entry, records, voice)
    return Event(at=at, when=voice.moment(at), sentence=sentence, markdown=markdown, withdrawn=withdrawn)


def _moves(story: JobStory, records: ClubRecords, voice: Voice) -> Iterator[Event]:
    zone = records.club.time_zone
    for change in story.changes:
        if change.news.before is not None:
            at = change.at.astimezone(zone)
            yield Event(at=at, when=voice.moment(at), sentence=_move_in_words(change, voice.on(at.date())))


def _move_in_words(change: JobChange, voice: Voice) -> str:
    before = range_in_words(change.news.before, voice) if change.news.before else ""
    now = range_in_words(change.news.back_to_normal, voice)
    return f"{cause_in_words(change, voice)}: back to normal is now {now}. Before that we said {before}."


def cause_in_words(change: JobChange, voice: Voice) -> str:
    """Say why something about a job changed.

    Args:
        change: the change.
        voice: the language and the day of the reader.

    Returns:
        A few words, without a full stop.
    """
    return f"{_CAUSES[change.cause]} ({change.because})" if change.because else _CAUSES[change.cause]


def entry_in_words(entry: Entry, records: ClubRecords, voice: Voice) -> str:
    """Say what an entry says, without the manager's own words.

    Args:
        entry: the entry.
        records: the club's records.
        voice: the language and the day of the reader.

    Returns:
        One or two sentences.
    """
    match entry:
        case Progress(step=Step.HELD_UP):
            return f"Held up on {_places(entry.surfaces, records, voice)}: {entry.because}."
        case Progress():
            really = _as_done_in_words(entry.as_done, voice)
            return f"{_STEPS[entry.step]} on {_places(entry.surfaces, records, voice)}.{really}"
        case Observation():
            return _seen(entry, records, voice)
        case BackToNormal():
            return f"{capital(_places(entry.surfaces, records, voice))}: back to normal."
        case PlanChange(change=Change.CALLED_OFF):
            return f"Called off: {entry.because}."
        case PlanChange():
            to = voice.day(entry.starts) if entry.starts else ""
            return f"{capital(entry.change.value)} {to}: {entry.because}."
        case Correction():
            return "Correction of an earlier entry."
        case GrowthHeldBack():
            first, last = voice.day(entry.first_day), voice.day(entry.last_day)
            when = f"on {first}" if first == last else f"from {first} to {last}"
            where = capital(_places(entry.surfaces, records, voice))
            return f"{where}: growth held back by {_HELD_BACK[entry.by]} {when}."
        case NoteToMembers():
            return "A note from the course manager."
        case _:
            return "Morning entry."


def _places(names: tuple[str, ...], records: ClubRecords, voice: Voice) -> str:
    return places_in_words((records.surfaces[name] for name in names), voice)


def _seen(entry: Observation, records: ClubRecords, voice: Voice) -> str:
    where = capital(_places(entry.surfaces, records, voice))
    how = "counted" if entry.how is Eye.COUNTED else "by eye"
    parts = (
        [f"about {100 * entry.share_left:.0f} % of the first marks left ({how})"]
        if entry.share_left is not None
        else []
    )
    parts += [f"turf cover {100 * entry.turf_cover:.0f} %"] if entry.turf_cover is not None else []
    parts += [f"{name} {value}" for name, value in entry.readings]
    return f"{where}: {', '.join(parts) or 'looked at'}."


def _as_done_in_words(operations: tuple[Operation, ...], voice: Voice) -> str:
    for operation in operations:
        if isinstance(operation, Dressing):
            unit = {
                SandBasis.TONNES_EACH: "tonnes of sand each",
                SandBasis.TONNES_IN_ALL: "tonnes of sand in all",
                SandBasis.DEPTH_MM: "mm of sand",
                SandBasis.KG_PER_M2: "kg of sand on a square metre",
            }[operation.sand.basis]
            return f" Really used: {operation.sand.amount:g} {unit}."
    return ""
