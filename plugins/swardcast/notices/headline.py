"""The headline of a notice, and when its work is."""

from __future__ import annotations

from swardcast.language.voice import Voice
from swardcast.notices.ends import work_in_words
from swardcast.notices.spans import first_day_of_work, last_day_of_work, span_in_words
from swardcast.notices.words import kind_in_words
from swardcast.outlook.states import JobOutlook, Work

__all__ = ["headline_of", "names_place", "state_in_short", "when_in_short", "when_in_words"]


def headline_of(outlook: JobOutlook, where: str, voice: Voice) -> str:
    """Say what, where and when in one line; the place is left to the plan's title where that names it.

    Args:
        outlook: how the job stands.
        where: its surfaces in words.
        voice: the language and the day of the reader.

    Returns:
        The headline.
    """
    title, when = outlook.job.title, when_in_short(outlook, voice)
    if names_place(outlook, voice):
        return voice.say("headline", title=title, when=when)
    return voice.say("headline-with-place", title=title, where=where, when=when)


def names_place(outlook: JobOutlook, voice: Voice) -> bool:
    """Tell whether a job's title names the kind of each surface, or a surface that has a name of its own.

    Args:
        outlook: how the job stands.
        voice: the language.

    Returns:
        Whether it does, so that the place need not be said beside it.
    """
    said = outlook.job.title.casefold()
    for surface in (work.surface for work in outlook.surfaces):
        words = [kind_in_words(surface.kind, count, voice).casefold() for count in (1, 2)]
        if not any(word in said for word in [*words, surface.name.casefold()]):
            return False
    return True


def when_in_short(outlook: JobOutlook, voice: Voice) -> str:
    """Say when the work is in a few words, as a headline does.

    Args:
        outlook: how the job stands.
        voice: the language and the day of the reader.

    Returns:
        "planned for 23 to 25 August", "since 23 August", "called off" and so on, without a capital.
    """
    first = first_day_of_work(outlook)
    finished = last_day_of_work(outlook)
    last = max(first, (finished.likely if finished is not None else None) or first)
    match outlook.work:
        case Work.CALLED_OFF:
            return voice.say("when-called-off")
        case Work.PLANNED if outlook.is_put_off:
            return voice.say("when-put-off")
        case Work.PLANNED if first < voice.near:
            return voice.say("when-not-started", day=voice.short_day(first))
        case Work.PLANNED if finished is None and len(outlook.surfaces) > 1:
            return voice.say("when-planned-from", day=voice.short_day(first))
        case Work.PLANNED:
            return voice.say("when-planned", days=span_in_words(first, last, voice))
        case _:
            pass
    if outlook.unreported is not None:
        reported = voice.short_day(outlook.unreported.last_report.date())
        return voice.say("when-not-reported", day=voice.short_day(first), last=reported)
    if any(work.done_at is None for work in outlook.surfaces):
        return voice.say("when-under-way", day=voice.short_day(first))
    return span_in_words(first, last, voice)


def state_in_short(outlook: JobOutlook, voice: Voice, *, briefly: bool = False) -> str:
    """Say how the work stands in a few words, for a line that stands alone.

    Args:
        outlook: how the job stands.
        voice: the language and the day of the reader.
        briefly: whether to leave out days that do no harm when they are missing.

    Returns:
        "under way since 23 August", "under way", "held up", "planned for 23 to 25 August", "called off"; of work that
        is done its days, or "" where they are left out.
    """
    if outlook.unreported is not None:
        return work_in_words(outlook, voice)
    match outlook.work:
        case Work.UNDER_WAY if not briefly:
            return voice.say("when-under-way-since", day=voice.short_day(first_day_of_work(outlook)))
        case Work.UNDER_WAY | Work.HELD_UP:
            return voice.name("work", outlook.work)
        case Work.PLANNED | Work.CALLED_OFF:
            return when_in_short(outlook, voice)
        case _:
            return "" if briefly else when_in_short(outlook, voice)


def when_in_words(outlook: JobOutlook, voice: Voice) -> str:
    """Say when the work is, with weekdays.

    Args:
        outlook: how the job stands.
        voice: the language and the day of the reader.

    Returns:
        "planned from Monday 23 August to Wednesday 25 August", "called off" and so on, without a capital.
    """
    first = first_day_of_work(outlook)
    finished = last_day_of_work(outlook)
    last = finished.likely if finished is not None else None
    match outlook.work:
        case Work.CALLED_OFF:
            return voice.say("when-called-off")
        case Work.PLANNED if outlook.is_put_off:
            return voice.say("when-put-off")
        case Work.PLANNED if first < voice.near:
            return voice.say("when-was-planned", day=voice.day(first))
        case _:
            pass
    if outlook.unreported is not None:
        reported = voice.day(outlook.unreported.last_report.date())
        return voice.say("when-not-reported", day=voice.day(first), last=reported)
    state = "planned" if outlook.work is Work.PLANNED else "done"
    if outlook.work is not Work.PLANNED and any(work.done_at is None for work in outlook.surfaces):
        return voice.say("when-still-to-do", day=voice.day(first))
    if last is None or last <= first:
        return voice.say("when-on-a-day", state=state, day=voice.day(first))
    return voice.say("when-from-to", state=state, first=voice.day(first), last=voice.day(last))
