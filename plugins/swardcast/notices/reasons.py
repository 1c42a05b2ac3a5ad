"""Reasons in words: what a state or a date rests on."""

from __future__ import annotations

from datetime import date, datetime
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.outlook.states import CourseOutlook, Reason, ReasonKind
from swardcast.records.folder import ClubRecords
from swardcast.records.log import FROST_DELAY
from swardcast.records.plan import Play

__all__ = ["dated_ahead", "reason_in_words", "remarks_on"]


_SENTENCES: Final = {
    ReasonKind.MORNING_ENTRY: "Morning entry of {when}{because}.",
    ReasonKind.PLANNED: "Planned to start on {when}.",
    ReasonKind.OVERDUE: "Was planned to start on {when}; no entry says that it has.",
    ReasonKind.MOVED: "Moved to {when}{because}.",
    ReasonKind.CALLED_OFF: "Called off{because}.",
    ReasonKind.STARTED: "Work started at {when}.",
    ReasonKind.HELD_UP: "Held up since {when}{because}.",
    ReasonKind.DONE: "Work done at {when}.",
    ReasonKind.COMPUTED: "Dates computed from the work, the growth from {when} on and past years' weather.",
    ReasonKind.OBSERVED: "Seen on the course at {when}: {words}.",
    ReasonKind.CONTRADICTION: "Two looks contradict each other ({words}); each counts as far as it can be trusted.",
    ReasonKind.WILD: "What was seen at {when} ({words}) is far from the sum. One look moves the date only so far; "
    "if it is so, look again and write it down.",
    ReasonKind.HELD_BACK: "Growth held back from {when} to {until}: {words}.",
    ReasonKind.LEARNT: "Learnt from earlier work ({words}).",
    ReasonKind.SAID_NORMAL: "The course manager called it back to normal at {when}.",
    ReasonKind.COMPUTED_NORMAL: "Computed to be back to normal since {when}; no entry has confirmed it yet.",
    ReasonKind.RULE_OF_THUMB: "Not computed: a usual range ({words}).",
    ReasonKind.NOT_VALIDATED: "No published recoveries of this grass or work were fitted, so the range is drawn wider.",
    ReasonKind.NO_HISTORY: "There is no weather history, so no date can be computed.",
    ReasonKind.TOO_FAR: "The work is more than a year ahead, so no date is computed yet.",
    ReasonKind.NOT_THIS_SEASON: "In more than 1 case in 10 it would not heal this season, so no date is given.",
    ReasonKind.WEATHER_MISSING: "Days without a weather record: {words}. They take the usual temperature.",
    ReasonKind.SHORT_HISTORY: "Past years of weather known here: only {words}, so the range is drawn wider.",
    ReasonKind.NO_HEALING: "This work leaves nothing that has to heal.",
}


def reason_in_words(reason: Reason, voice: Voice) -> str:
    """Say what a state or a date rests on.

    Args:
        reason: the reason.
        voice: the language and the day of the reader.

    Returns:
        One sentence, without the source.
    """
    when = _when(reason.at, voice)
    if reason.kind is ReasonKind.NO_FRESH_ENTRY:
        return f"No entry today; the last one was made at {when}." if when else "No entry was ever made."
    words, until = reason.words.rstrip("."), _when(reason.until, voice)
    return _SENTENCES[reason.kind].format(when=when, until=until, words=words, because=f" ({words})" if words else "")


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


def _when(at: datetime | date | None, voice: Voice) -> str:
    if at is None:
        return ""
    return voice.moment(at) if isinstance(at, datetime) else voice.day(at)
