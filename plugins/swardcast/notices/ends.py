"""The end of a job: which milestone it is, by one name everywhere, and the published date of it in words."""

from __future__ import annotations

from enum import Enum
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.spans import last_day_of_work
from swardcast.notices.words import range_in_words
from swardcast.outlook.states import DateRange, JobOutlook, Work

__all__ = [
    "End",
    "end_of",
    "has_no_date_until_done",
    "has_no_day",
    "is_over_with_the_work",
    "leaves_turf_whole",
    "published_in_words",
    "work_in_words",
]


class End(Enum):
    """What members wait for, as a phrase's slot has it."""

    NORMAL = "normal"
    FINISHED = "finished"
    OPEN = "open"

    def name_in(self, voice: Voice) -> str:
        """Name it, as a row of a notice does."""
        return voice.say(_ROWS[self])


_ROWS: Final = {
    End.NORMAL: "row-back-to-normal",
    End.FINISHED: "row-work-finished",
    End.OPEN: "hours-open-again",
}


def leaves_turf_whole(outlook: JobOutlook) -> bool:
    """Tell whether nothing of the work has to heal, and nobody gave a time for it to come back.

    Args:
        outlook: how the job stands.

    Returns:
        Whether it is so.
    """
    heals = any(work.sums.layers and work.surface.grass for work in outlook.surfaces)
    return outlook.job.normal_after is None and not heals


def is_over_with_the_work(outlook: JobOutlook) -> bool:
    """Tell whether all is over once the work is finished: "back to normal" would promise that the ropes are gone.

    Args:
        outlook: how the job stands.

    Returns:
        Whether it is so.
    """
    return leaves_turf_whole(outlook) and outlook.job.reopens_after is None


def end_of(outlook: JobOutlook) -> End:
    """Tell what members wait for.

    Args:
        outlook: how the job stands.

    Returns:
        Back to normal; of work that leaves nothing to heal that it is finished and, once it is done where it closed a
        surface, that this is open again.
    """
    if not is_over_with_the_work(outlook):
        return End.NORMAL
    return End.OPEN if outlook.work is Work.HEALING else End.FINISHED


def work_in_words(outlook: JobOutlook, voice: Voice) -> str:
    """Say how the work stands, in a word or two.

    Args:
        outlook: how the job stands.
        voice: the language.

    Returns:
        "planned", "under way" and so on; of planned work without a day "postponed", and of work that leaves nothing to
        heal, "finished" at its end.
    """
    if outlook.is_put_off and outlook.work is Work.PLANNED:
        return voice.say("work-postponed")
    is_finished = outlook.work is Work.BACK_TO_NORMAL and end_of(outlook) is End.FINISHED
    return voice.say("work-finished") if is_finished else voice.name("work", outlook.work)


def published_in_words(published: DateRange, outlook: JobOutlook, voice: Voice, *, briefly: bool = False) -> str:
    """Say the published date, or that it holds no more.

    Args:
        published: the date that stands on the site.
        outlook: how the job stands.
        voice: the language and the day of the reader.
        briefly: whether to leave out the weekdays.

    Returns:
        Words of `range_in_words`, or that there is no date until the work is done.
    """
    end = end_of(outlook)
    if has_no_date_until_done(published, outlook, voice):
        return voice.say("no-date-until-done" if end is End.NORMAL else "no-day-known")
    done = last_day_of_work(outlook) if end is End.FINISHED and not outlook.job.lasts else None
    if published.is_fact and done is not None and done.is_fact:
        return range_in_words(done, voice, briefly=briefly)  # it may have opened later
    return range_in_words(published, voice, briefly=briefly)


def has_no_day(outlook: JobOutlook, voice: Voice) -> bool:
    """Tell whether no day of planned work holds: it is postponed to none, or its day is over and no entry says started.

    Args:
        outlook: how the job stands.
        voice: the day of the reader.

    Returns:
        Whether it is so: then no date of it holds any more.
    """
    return outlook.work is Work.PLANNED and (outlook.is_put_off or outlook.starts < voice.near)


def has_no_date_until_done(published: DateRange, outlook: JobOutlook, voice: Voice) -> bool:
    """Tell whether the published date, or the day of the work, has passed with the work still to do.

    Args:
        published: the date that stands on the site.
        outlook: how the job stands.
        voice: the day of the reader.

    Returns:
        Whether it has: then the date holds no more.
    """
    unfinished = outlook.work in (Work.PLANNED, Work.UNDER_WAY, Work.HELD_UP)
    has_passed = published.allow_until is not None and published.allow_until < voice.near
    return has_no_day(outlook, voice) or (unfinished and has_passed)
