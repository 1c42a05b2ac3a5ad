"""Reasons in words: what a state or a date rests on."""

from __future__ import annotations

from datetime import datetime
from typing import Final

from swardcast.language.measures import roll
from swardcast.language.voice import Voice, capital, slug_of
from swardcast.notices.words import as_clause, whole_percent
from swardcast.outlook.sightings import CoverSeen, Look, MarksSeen, RollSeen
from swardcast.outlook.states import CourseOutlook, Reason, ReasonKind
from swardcast.records.folder import ClubRecords
from swardcast.records.log import FROST_DELAY
from swardcast.records.operations import ProductUse
from swardcast.records.plan import Play
from swardcast.turf.growth import BRAKES

__all__ = ["dated_ahead", "labels_read_ahead", "look_in_words", "reason_in_words", "remarks_on"]


_MAY_SAY_WHY: Final = (
    ReasonKind.MORNING_ENTRY,
    ReasonKind.MOVED,
    ReasonKind.PUT_OFF,
    ReasonKind.CALLED_OFF,
    ReasonKind.HELD_UP,
)


def reason_in_words(reason: Reason, voice: Voice) -> str:
    """Say what a state or a date rests on.

    Args:
        reason: the reason.
        voice: the language and the day of the reader.

    Returns:
        One sentence, without the source.
    """
    phrase = f"reason-{slug_of(reason.kind)}"
    if reason.kind in _MAY_SAY_WHY and reason.words:
        phrase += ".because"
    if reason.kind is ReasonKind.NO_FRESH_ENTRY and reason.at is None:
        phrase += ".never"
    return voice.say(phrase, **_slots(reason, voice))


def _slots(reason: Reason, voice: Voice) -> dict[str, str | float]:
    slots: dict[str, str | float] = {"because": as_clause(reason.words), "count": reason.count}
    if reason.at is not None:
        slots["when"] = voice.moment(reason.at) if isinstance(reason.at, datetime) else voice.day(reason.at)
    if reason.until is not None:
        slots["until"] = voice.day(reason.until)
    if reason.looks:
        slots |= {"before": look_in_words(reason.looks[0], voice), "seen": look_in_words(reason.looks[-1], voice)}
    if reason.lesson is not None:
        taken, computed = round(reason.lesson.days_taken), round(reason.lesson.days_computed)
        slots |= {"title": reason.lesson.title, "taken": taken, "computed": computed}
    if reason.held_back_by is not None:
        share = whole_percent(BRAKES[reason.held_back_by.value].growth_left, voice)
        slots |= {"brake": voice.name("brake", reason.held_back_by), "share": share}
    return slots


def look_in_words(look: Look, voice: Voice) -> str:
    """Say what was seen: "15 % of the first marks left, by eye".

    Args:
        look: the look.
        voice: the language.

    Returns:
        A clause.
    """
    match look.what:
        case MarksSeen(share_left=share, how=how):
            return voice.say("look-marks", share=whole_percent(share, voice), how=slug_of(how))
        case CoverSeen(share=share):
            return voice.say("look-cover", share=whole_percent(share, voice))
        case RollSeen(roll_mm=roll_mm, of_target=share):
            return voice.say("look-roll", roll=roll(roll_mm, voice), share=whole_percent(share, voice))


def remarks_on(outlook: CourseOutlook, voice: Voice) -> tuple[str, ...]:
    """List what the manager should look at again: looks far from the sum or from each other, an open course in frost.

    Args:
        outlook: the course at the moment.
        voice: the language and the day of the reader.

    Returns:
        Sentences with the place and the entry, each once.
    """
    found = list[str]()
    for held in outlook.limits:
        if held.limit.name == FROST_DELAY and any(there.play is Play.OPEN for there in outlook.surfaces.values()):
            said = "A frost delay is in force while surfaces are entered as open; it closes nothing by itself"
            found.append(f"{said} [{held.source}]")
    for job in outlook.jobs.values():
        for work in job.surfaces:
            for reason in work.reasons:
                if reason.kind in (ReasonKind.CONTRADICTION, ReasonKind.WILD):
                    found.append(f"{capital(work.surface.name)}: {reason_in_words(reason, voice)} [{reason.source}]")
    return tuple(dict.fromkeys(found))


def labels_read_ahead(records: ClubRecords, now: datetime, voice: Voice) -> tuple[str, ...]:
    """Say that a label is called read on a day to come, though its notice tells what it says.

    Args:
        records: the club's records.
        now: the present moment, aware.
        voice: the language.

    Returns:
        A sentence for each product of a job that is announced.
    """
    today = now.astimezone(records.club.time_zone).date()
    return tuple(
        f"{job.file}, line {job.line}: the label of the {use.kind.value} is to be read on"
        f" {voice.on(today).day(use.label_read_on)}, and the notice tells it as read already."
        for job in records.jobs.values()
        if job.announced <= today and not job.is_withdrawn(now)
        for use in job.operations
        if isinstance(use, ProductUse) and use.label_read_on > today
    )


def dated_ahead(records: ClubRecords, now: datetime, voice: Voice) -> tuple[str, ...]:
    """Say that entries carry a moment to come: perhaps a slip of the pen, for they say nothing until then.

    Args:
        records: the club's records.
        now: the present moment, aware.
        voice: the language.

    Returns:
        One sentence, or none.
    """
    ahead = [entry.head for entry in records.entries if entry.head.at > now]
    if not ahead:
        return ()
    first = ahead[0]
    when = voice.on(now.date()).moment(first.at.astimezone(records.club.time_zone))
    many = f"{len(ahead)} entries are dated ahead and say nothing yet; the first"
    one = "An entry is dated ahead and says nothing yet: it"
    return (f"{many if len(ahead) > 1 else one} counts from {when} [{first.id}].",)
