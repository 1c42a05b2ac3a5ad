"""What happened to a job, entry by entry and date by date, newest first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from swardcast.language.measures import length, sand_mass, sand_rate
from swardcast.language.voice import Voice, capital, slug_of
from swardcast.notices.dates_in_words import told_before_in_words
from swardcast.notices.ends import end_of, published_in_words
from swardcast.notices.notice import Event
from swardcast.notices.words import as_clause, few_words_for, percent, places_in_brief, whole_percent
from swardcast.outlook.causes import Cause
from swardcast.outlook.moved_surfaces import MovedSurfaces
from swardcast.outlook.sightings import MarksSeen
from swardcast.outlook.states import Work
from swardcast.outlook.story import JobChange, JobStory
from swardcast.quantities import Sand, SandBasis
from swardcast.records.folder import ClubRecords
from swardcast.records.log import (
    BackToNormal,
    Correction,
    Entry,
    Eye,
    GrowthHeldBack,
    NoteToMembers,
    Observation,
    PlanChange,
    Progress,
    Step,
)
from swardcast.records.operations import Dressing
from swardcast.records.standing import withdrawn_ids

__all__ = ["cause_in_words", "entry_in_words", "events_of", "moved_in_words", "new_day_in_words"]


def events_of(story: JobStory, log: Sequence[Entry], records: ClubRecords, voice: Voice) -> tuple[Event, ...]:
    """Tell what happened to a job.

    Args:
        story: the job's changes.
        log: what the log tells of the job by the moment, oldest first.
        records: the club's records as known at the moment.
        voice: the language and the day of the reader.

    Returns:
        Events, newest first.
    """
    job, held_back = story.job, _held_back(story)
    about = [entry for entry in log if getattr(entry, "job", None) == job.id]
    about += [entry for entry in log if entry.head.id in held_back]
    ids = {entry.head.id for entry in about}
    about += [entry for entry in log if isinstance(entry, Correction) and entry.corrects in ids]
    withdrawn = withdrawn_ids(log)
    shares = _shares_of_surface(story)
    events = [
        _event(entry, records, voice, shares.get(entry.head.id, ()), withdrawn=entry.head.id in withdrawn)
        for entry in about
    ]
    events += _moves(story, records, voice)
    return tuple(sorted(events, key=lambda event: event.at, reverse=True))


def _held_back(story: JobStory) -> set[str]:
    works = (work for change in story.changes for work in change.outlook.surfaces)
    recoveries = [work.recovery for work in works if work.recovery is not None]
    return {entry.head.id for recovery in recoveries for entry in recovery.held_back}


def _shares_of_surface(story: JobStory) -> dict[str, list[float]]:
    """What each entry saw, as the share that was still disturbed of each surface."""
    shares: dict[str, list[float]] = {}
    for work in story.changes[-1].outlook.surfaces:
        for look in work.recovery.looks if work.recovery is not None else ():
            if isinstance(look.what, MarksSeen) and work.recovery is not None:
                shares.setdefault(look.source, []).append(look.what.share_left * work.recovery.day_zero)
    return shares


def _event(
    entry: Entry, records: ClubRecords, voice: Voice, shares_of_surface: Sequence[float], *, withdrawn: bool
) -> Event:
    at = entry.head.true_from
    markdown = "" if entry.head.instead_of else entry.head.words
    sentence = entry_in_words(entry, records, voice, shares_of_surface)
    return Event(
        at=at, when=voice.moment(at), sentence=sentence, source=entry.head.id, markdown=markdown, withdrawn=withdrawn
    )


def _moves(story: JobStory, records: ClubRecords, voice: Voice) -> Iterator[Event]:
    zone = records.club.time_zone
    for change in story.changes:
        if change.news.before is not None and change.outlook.work is not Work.CALLED_OFF:
            at = change.at.astimezone(zone)
            source = change.entry.head.id if change.entry is not None else change.id
            moved = _move_in_words(change, voice.on(at.date()))
            yield Event(at=at, when=voice.moment(at), sentence=moved, source=source)
        elif change.news.moved and change.outlook.work is not Work.CALLED_OFF:
            at = change.at.astimezone(zone)
            source = change.entry.head.id if change.entry is not None else change.id
            moved = _moves_of_surfaces(change, records, voice.on(at.date()))
            yield Event(at=at, when=voice.moment(at), sentence=moved, source=source)


def _move_in_words(change: JobChange, voice: Voice) -> str:
    news = change.news
    before = told_before_in_words(news.before, voice, news.before_told_on) if news.before else ""
    now, end = published_in_words(news.back_to_normal, change.outlook, voice), end_of(change.outlook).value
    return voice.say("event-date-moved", cause=cause_in_words(change, voice), end=end, now=now, before=before)


def _moves_of_surfaces(change: JobChange, records: ClubRecords, voice: Voice) -> str:
    cause = voice.sentence(cause_in_words(change, voice))
    return voice.sentences([cause, *moved_in_words(change.news.moved, records, voice)])


def moved_in_words(moved: Sequence[MovedSurfaces], records: ClubRecords, voice: Voice) -> Iterator[str]:
    """Say the new day of some surfaces, or that of the last of them, and the one that was told before.

    Args:
        moved: the surfaces and their days, at least one.
        records: the club's records.
        voice: the language and the day of the reader.

    Yields:
        Two sentences.
    """
    yield capital(voice.sentence(new_day_in_words(moved, records, voice)))
    yield voice.say("news-told-before", before=told_before_in_words(_last_of(moved).before, voice))


def new_day_in_words(moved: Sequence[MovedSurfaces], records: ClubRecords, voice: Voice) -> str:
    """Say the new day of some surfaces, or that of the last of them, as it was told: a day that passes opens nothing.

    Args:
        moved: the surfaces and their days, at least one.
        records: the club's records.
        voice: the language and the day of the reader.

    Returns:
        "new date for tee 13 to open again: likely by Friday 12 November; allow until Friday 26 November".
    """
    places = few_words_for((records.surfaces[name] for one in moved for name in one.surfaces), voice)
    last = _last_of(moved)
    when, ends = told_before_in_words(last.now, voice), "open" if last.opens else "done"
    return voice.say("news-new-date-of-some", places=places, ends=ends, when=when, sets=len(moved))


def _last_of(moved: Sequence[MovedSurfaces]) -> MovedSurfaces:
    return max(moved, key=lambda one: (one.now.allow_until or date.min, one.now.likely or date.min))


def cause_in_words(change: JobChange, voice: Voice) -> str:
    """Say why something about a job changed.

    Args:
        change: the change.
        voice: the language and the day of the reader.

    Returns:
        A few words, without a full stop.
    """
    by_report = change.cause is Cause.WORK and _is_plainly_done(change.entry)
    cause = voice.say("cause-work-reported-done") if by_report else voice.name("cause", change.cause)
    return voice.say("cause-because", cause=cause, because=as_clause(change.because)) if change.because else cause


def _is_plainly_done(entry: Entry | None) -> bool:
    """Whether it says that work is done, and not that anything else was done than planned."""
    return isinstance(entry, Progress) and entry.step is Step.DONE and not entry.as_done


def entry_in_words(entry: Entry, records: ClubRecords, voice: Voice, shares_of_surface: Sequence[float] = ()) -> str:
    """Say what an entry says, without the manager's own words.

    Args:
        entry: the entry.
        records: the club's records.
        voice: the language and the day of the reader.
        shares_of_surface: what an observation saw, as a share of each surface, 0 to 1; none where that is not known.

    Returns:
        One or two sentences.
    """
    match entry:
        case Progress():
            return _step(entry, records, voice)
        case Observation():
            return _seen(entry, records, voice, shares_of_surface)
        case BackToNormal():
            return capital(voice.say("event-back-to-normal", places=_places(entry.surfaces, records, voice)))
        case PlanChange(starts=date() as starts):
            return voice.say(f"event-{slug_of(entry.change)}", day=voice.day(starts), because=as_clause(entry.because))
        case PlanChange():
            return voice.say(f"event-{slug_of(entry.change)}", because=as_clause(entry.because))
        case Correction():
            return voice.say("event-correction")
        case GrowthHeldBack():
            return capital(_held_back_in_words(entry, records, voice))
        case NoteToMembers():
            return voice.say("event-note")
        case _:
            return voice.say("event-morning")


def _step(entry: Progress, records: ClubRecords, voice: Voice) -> str:
    places = _places(entry.surfaces, records, voice)
    if entry.step is Step.HELD_UP:
        return voice.say("event-held-up", places=places, because=as_clause(entry.because))
    said = voice.say(f"event-{slug_of(entry.step)}", places=places)
    used = [operation.sand for operation in entry.as_done if isinstance(operation, Dressing)]
    return voice.sentences([said, *(_used(sand, voice) for sand in used[:1])])


def _held_back_in_words(entry: GrowthHeldBack, records: ClubRecords, voice: Voice) -> str:
    places, by = _places(entry.surfaces, records, voice), voice.name("held-back", entry.by)
    first, last = voice.day(entry.first_day), voice.day(entry.last_day)
    if first == last:
        return voice.say("event-held-back-on", places=places, by=by, day=first)
    return voice.say("event-held-back-from-to", places=places, by=by, first=first, last=last)


def _places(names: tuple[str, ...], records: ClubRecords, voice: Voice) -> str:
    return places_in_brief((records.surfaces[name] for name in names), voice)


def _seen(entry: Observation, records: ClubRecords, voice: Voice, shares_of_surface: Sequence[float]) -> str:
    seen = []
    if entry.share_left is not None:
        share, how = whole_percent(entry.share_left, voice), "counted" if entry.how is Eye.COUNTED else "by-eye"
        if not shares_of_surface:
            seen.append(voice.say(f"event-marks-left-{how}", share=share))
        else:
            least, most = (percent(edge(shares_of_surface), voice) for edge in (min, max))
            alike = "yes" if least == most else "no"
            seen.append(voice.say(f"event-still-disturbed-{how}", ofsurface=most, alike=alike, share=share))
    if entry.turf_cover is not None:
        seen.append(voice.say("event-turf-cover", share=whole_percent(entry.turf_cover, voice)))
    for reading, value in entry.readings:
        name = voice.say(f"reading-{reading.replace(' ', '-')}")
        seen.append(voice.say("event-reading", name=name, value=value))
    what = voice.listed(seen) or voice.say("event-looked-at")
    return capital(voice.say("event-seen", places=_places(entry.surfaces, records, voice), seen=what))


def _used(sand: Sand, voice: Voice) -> str:
    match sand.basis:
        case SandBasis.TONNES_EACH:
            return voice.say("event-sand-each", mass=sand_mass(sand.amount, voice))
        case SandBasis.TONNES_IN_ALL:
            return voice.say("event-sand-in-all", mass=sand_mass(sand.amount, voice))
        case SandBasis.DEPTH_MM:
            return voice.say("event-sand-depth", depth=length(sand.amount, voice))
        case SandBasis.KG_PER_M2:
            return voice.say("event-sand-rate", rate=sand_rate(sand.amount, voice))
