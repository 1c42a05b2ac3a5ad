"""The end of a job: which milestone it is, by one name everywhere, and the published date of it in words."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from enum import Enum
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.dates_in_words import range_in_words
from swardcast.notices.hours import Ending, overdue_in_words
from swardcast.notices.spans import last_day_of_work
from swardcast.outlook.changes import is_only_computed
from swardcast.outlook.job_ranges import open_works
from swardcast.outlook.play import OPEN
from swardcast.outlook.states import DateRange, JobOutlook, Milestone, SurfaceWork, Unreported, Work
from swardcast.records.club import Surface

__all__ = [
    "End",
    "end_of",
    "has_no_date_until_done",
    "has_no_day",
    "is_long_due_to_open",
    "is_over_by_sum",
    "is_over_with_the_work",
    "leaves_turf_whole",
    "published_in_words",
    "settles",
    "stands_still",
    "surface_work_in_words",
    "unopened",
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
        "planned", "under way" and so on; of planned work without a day "postponed", or "no start reported" once that
        day is over; of work that leaves nothing to heal, "finished" at its end; "should be back to normal" where no
        entry says so of all its surfaces, "not reported as open" where they were to be opened first; and of work that
        nobody reports on any more, since when.
    """
    if outlook.unreported is not None:
        return _no_report(outlook.unreported, voice)
    if outlook.is_put_off and outlook.work is Work.PLANNED:
        return voice.say("work-postponed")
    if has_no_day(outlook, voice):
        return voice.say("work-not-started")
    if outlook.work is Work.BACK_TO_NORMAL and end_of(outlook) is End.FINISHED:
        return voice.say("work-finished")
    if outlook.work is Work.HEALING and is_long_due_to_open(outlook.surfaces, voice):
        return voice.say("work-not-opened")
    if outlook.work is Work.HEALING and settles([work.surface for work in outlook.surfaces]):
        return voice.say("work-settling")
    return voice.say("work-should-be-normal") if is_over_by_sum(outlook) else voice.name("work", outlook.work)


def is_over_by_sum(outlook: JobOutlook) -> bool:
    """Tell whether the days of a job are past, and no entry says of all its surfaces that they are back to normal.

    Args:
        outlook: how the job stands.

    Returns:
        Whether it is so; no of work that leaves nothing to heal, which is finished once it is entered as done.
    """
    is_end_of_work = outlook.work is Work.BACK_TO_NORMAL and end_of(outlook) is End.FINISHED
    by_sum = any(is_only_computed(work) for work in outlook.surfaces)
    return by_sum and outlook.work.is_over and not is_end_of_work


def is_long_due_to_open(works: Sequence[SurfaceWork], voice: Voice) -> bool:
    """Tell whether even the day to allow for of back to normal is past, and no entry calls the surfaces open.

    Args:
        works: one job on some surfaces.
        voice: the day of the reader.

    Returns:
        Whether it is so of all on which it is not over: then nobody knows whether they still heal.
    """
    left = open_works(works)
    healing = all(work.work is Work.HEALING and not work.is_closed_again for work in left)
    return bool(left) and healing and all(w.dates[Milestone.BACK_TO_NORMAL].passed_untold(voice.near) for w in left)


def settles(surfaces: Collection[Surface]) -> bool:
    """Tell whether what is left after the work settles and does not heal, since none of it has grass.

    Args:
        surfaces: the surfaces.

    Returns:
        Whether all are of sand alone.
    """
    return all(surface.grass is None for surface in surfaces)


def surface_work_in_words(work: Work, surfaces: Collection[Surface], silence: Unreported | None, voice: Voice) -> str:
    """Say how the work stands on surfaces on which it goes on, heals or settles.

    Args:
        work: its state there.
        surfaces: the surfaces.
        silence: that nobody reports on it any more, or None.
        voice: the language.

    Returns:
        "work under way", "work held up", "healing", "settling", "should be back to normal", or "no report since 15
        September".
    """
    if silence is not None:
        return _no_report(silence, voice)
    if work is Work.HEALING and settles(surfaces):
        return voice.say("status-work-settling")
    return voice.say("work-should-be-normal") if work is Work.BACK_TO_NORMAL else voice.name("status-work", work)


def _no_report(silence: Unreported, voice: Voice) -> str:
    return voice.say("work-not-reported", day=voice.short_day(silence.last_report.date()))


def unopened(outlook: JobOutlook, voice: Voice) -> list[SurfaceWork]:
    """List surfaces that are done and were due to open before today, and that no entry calls open.

    Args:
        outlook: how the job stands.
        voice: the day of the reader.

    Returns:
        Those surfaces; none where they stay in play during the work, or once nobody waits for them any more.
    """
    return [
        work
        for work in outlook.surfaces
        if work.work is Work.HEALING
        and outlook.job.while_working not in OPEN
        and work.dates[Milestone.REOPENING].passed_untold(voice.near)
    ]


def published_in_words(published: DateRange, outlook: JobOutlook, voice: Voice, *, briefly: bool = False) -> str:
    """Say the published date, or that it holds no more.

    Args:
        published: the date that stands on the site.
        outlook: how the job stands.
        voice: the language and the day of the reader.
        briefly: whether to leave out the weekdays.

    Returns:
        Words of `range_in_words`, or that there is no date until the work is done; of a date that has passed, that no
        entry says so; of work that nobody reports on any more, that it was last told so.
    """
    end = end_of(outlook)
    if has_no_date_until_done(published, outlook, voice):
        waits_for_work = end is End.NORMAL and not outlook.job.lasts  # what lasts is never done before its end
        return voice.say("no-date-until-done" if waits_for_work else "no-day-known")
    done = last_day_of_work(outlook) if end is End.FINISHED and not outlook.job.lasts else None
    is_past = published.passed_untold(voice.near)
    if (published.is_fact or is_past) and done is not None and done.is_fact:
        return range_in_words(done, voice, briefly=briefly)  # it may have opened later
    if is_past and published.allow_until is not None:
        by = (voice.short_day if briefly else voice.day)(published.allow_until)
        if waiting := unopened(outlook, voice):
            return overdue_in_words(by, len(waiting), Ending.OPEN, voice)
        if outlook.work is Work.BACK_TO_NORMAL:
            return voice.say("normal-by-sum", by=by)
    said = range_in_words(published, voice, briefly=briefly)
    if outlook.unreported is not None and published.is_given and not published.is_fact:
        return voice.say("date-as-last-told", date=said)
    return said


def has_no_day(outlook: JobOutlook, voice: Voice) -> bool:
    """Tell whether no day of planned work holds: it is postponed to none, or its day is over and no entry says started.

    Args:
        outlook: how the job stands.
        voice: the day of the reader.

    Returns:
        Whether it is so: then no date of it holds any more.
    """
    return outlook.work is Work.PLANNED and (outlook.is_put_off or outlook.starts < voice.near)


def stands_still(outlook: JobOutlook, voice: Voice) -> bool:
    """Tell whether no date of a job can be counted on: it has no day, or nobody reports on it any more.

    Args:
        outlook: how the job stands.
        voice: the day of the reader.

    Returns:
        Whether it is so.
    """
    return has_no_day(outlook, voice) or outlook.unreported is not None


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
    return has_no_day(outlook, voice) or (unfinished and published.is_past(voice.near))
