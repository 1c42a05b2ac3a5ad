"""Spans of days in words, and the days of a job's work."""

from __future__ import annotations

from datetime import date

from swardcast.language.voice import Voice
from swardcast.outlook.states import DateRange, JobOutlook, Milestone
from swardcast.outlook.story import JobStory

__all__ = ["days_told_before", "first_day_of_work", "last_day_of_work", "span_in_words", "told_before"]


def span_in_words(first: date, last: date, voice: Voice) -> str:
    """Say a span of days without weekdays: "23 to 25 August", "30 August to 3 September"; with weekday where it is one.

    Args:
        first: the first day.
        last: the last day, not earlier.
        voice: the language and the day of the reader.

    Returns:
        The span.
    """
    if first == last:
        return voice.day(first)
    if (first.year, first.month) == (last.year, last.month):
        year = "days-of-a-month" if last.year == voice.near.year else "days-of-a-month-with-year"
        return voice.say(
            year, first=str(first.day), last=str(last.day), month=voice.on(last).month(last), year=str(last.year)
        )
    return voice.say("days-from-to", first=voice.short_day(first), last=voice.short_day(last))


def first_day_of_work(outlook: JobOutlook) -> date:
    """Tell the first day of the work: the real one, else the planned one.

    Args:
        outlook: how the job stands.

    Returns:
        The day.
    """
    started = (work.started_at.date() for work in outlook.surfaces if work.started_at is not None)
    return min(started, default=outlook.starts)


def last_day_of_work(outlook: JobOutlook) -> DateRange | None:
    """Tell the day on which the last surface is, or is to be, finished.

    Args:
        outlook: how the job stands.

    Returns:
        A fact once all is done; None where the plan gives the days of closure but not of the work.
    """
    days = [work.done_at.date() for work in outlook.surfaces if work.done_at is not None]
    if len(days) == len(outlook.surfaces):
        return DateRange.known(max(days))
    if outlook.job.reopens_after is not None:
        return None
    return outlook.dates[Milestone.REOPENING]  # the follow-up work is done on the same day, or the next morning


def told_before(story: JobStory, outlook: JobOutlook) -> date | None:
    """Tell the first day of the work that members were told before the one that holds.

    Args:
        story: what they were told.
        outlook: how the job stands.

    Returns:
        The last of the other days, or None where they were told no other.
    """
    others = days_told_before(story, outlook)
    return others[-1] if others else None


def days_told_before(story: JobStory, outlook: JobOutlook) -> list[date]:
    """Tell each first day of the work that members were told and that holds no longer.

    Args:
        story: what they were told.
        outlook: how the job stands.

    Returns:
        The days in the order in which they were told, as often as they were.
    """
    told = (first_day_of_work(change.outlook) for change in story.changes)
    return [day for day in told if day != first_day_of_work(outlook)]
