"""Hours of reopening in words; the only table of such words.

Rounding: "likely from" to the nearest quarter of an hour, "at the latest" up to the next one, "not before" down.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, date, datetime, timedelta
from enum import Enum
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.dates_in_words import range_in_words
from swardcast.notices.notice import Fact
from swardcast.notices.words import places_in_words
from swardcast.outlook.job_ranges import range_of_all
from swardcast.outlook.reopening import HeldUp, Hours
from swardcast.outlook.states import DateRange, JobOutlook, Milestone, SurfaceWork, Work
from swardcast.records.plan import Play

__all__ = [
    "Ending",
    "hours_in_words",
    "hours_of_all",
    "overdue_in_words",
    "reopening_as_dates",
    "reopening_facts",
    "reopening_in_words",
    "rounded_hours",
]

_QUARTER: Final = timedelta(minutes=15)
_MIDNIGHT: Final = datetime(2000, 1, 1, tzinfo=UTC)  # a midnight to count quarters from


class Ending(Enum):
    """What surfaces are when the work is over, as the log has to say."""

    OPEN = "open"
    DONE = "done"

    def name_in(self, voice: Voice) -> str:
        """Head a row about it: where surfaces are in play during the work they are done, and not opened."""
        return voice.say("hours-work-finished" if self is Ending.DONE else "hours-open-again")


def hours_of_all(hours: Sequence[Hours | HeldUp]) -> Hours | HeldUp:
    """Give the hours of the last of some surfaces.

    Args:
        hours: at least one; where one of them is held up, so is the last.

    Returns:
        Held up if one of them is; else a range.
    """
    held = [one for one in hours if isinstance(one, HeldUp)]
    if held:
        return max(held, key=lambda one: one.not_before.timestamp())
    going = [one for one in hours if isinstance(one, Hours)]
    early, likely, latest = (
        max((getattr(one, name) for one in going), key=datetime.timestamp) for name in ("early", "likely", "latest")
    )
    return Hours(early=early, likely=likely, latest=latest, together=going[0].together)


def rounded_hours(hours: Hours) -> tuple[datetime, datetime]:
    """Round a moment to what is told of it.

    Args:
        hours: when, as sure as it is.

    Returns:
        Likely from, and at the latest, not earlier.
    """
    likely = _rounded(hours.likely, _QUARTER / 2)
    latest = _rounded(hours.latest, _QUARTER - timedelta(microseconds=1))
    return likely, max(latest, likely, key=datetime.timestamp)


def hours_in_words(
    hours: Hours | HeldUp, as_of: datetime, voice: Voice, *, count: int = 1, ends: Ending = Ending.OPEN
) -> str:
    """Say when surfaces reopen, to the hour.

    Args:
        hours: when, as sure as it is.
        as_of: the moment of the reader, local.
        voice: the language and the day of the reader.
        count: how many surfaces it is about.
        ends: what they are then: open, or done where they are in play already.

    Returns:
        "likely from 2:30pm, by 4pm at the latest", with the day where it is not today; that it is due, or overdue with
        no entry; or that it is held up.
    """
    if isinstance(hours, HeldUp):
        return _held_up(hours, voice)
    likely, latest = rounded_hours(hours)
    if latest < as_of:
        return overdue_in_words(_moment(latest, voice), count, ends, voice)
    if likely <= as_of:
        return voice.say("hours-due-now", latest=_moment(latest, voice))
    if likely == latest:
        return voice.say("hours-from", first=_moment(likely, voice))
    if likely.date() != latest.date():
        return voice.say("hours-from-by-another-day", first=_moment(likely, voice), latest=_moment(latest, voice))
    first, last = voice.time(likely), voice.time(latest)
    if likely.date() == voice.near:
        return voice.say("hours-from-by", first=first, latest=last)
    return voice.say("hours-day-from-by", day=_day(likely.date(), voice), first=first, latest=last)


def reopening_in_words(
    works: Sequence[SurfaceWork],
    as_of: datetime,
    voice: Voice,
    *,
    ends: Ending = Ending.OPEN,
    is_closed: bool = False,
    briefly: bool = False,
) -> str:
    """Say when the last of some surfaces reopens: to the hour where that is known of all, else the day.

    Args:
        works: one job on some surfaces, at least one.
        as_of: the moment of the reader, local.
        voice: the language and the day of the reader.
        ends: what they are then, as in `hours_in_words`.
        is_closed: whether the log calls them closed after their work was done.
        briefly: whether to leave out the weekdays where days are said.

    Returns:
        Words of `hours_in_words` or of `range_in_words`.
    """
    silence = next((work.unreported for work in works if work.unreported is not None), None)
    hours = [work.hours for work in works if work.hours is not None]
    if len(hours) == len(works):
        last = hours_of_all(hours)
        if silence is not None and isinstance(last, HeldUp):
            return voice.say("hours-held-up-not-reported", since=_moment(last.since, voice))
        return hours_in_words(last, as_of, voice, count=len(works), ends=ends)
    days, say_day = range_of_all(works, Milestone.REOPENING), voice.short_day if briefly else voice.day
    if _closed_again(works) and days.likely is not None:
        return voice.say("hours-closed-again", day=say_day(days.likely), count=len(works))
    says_open = is_closed or (ends is Ending.OPEN and not days.is_fact)  # a day that has passed opens nothing
    if (says_open or silence is not None) and days.allow_until is not None and days.allow_until < voice.near:
        return overdue_in_words(say_day(days.allow_until), len(works), ends, voice)
    said = range_in_words(days, voice, briefly=briefly)
    return said if silence is None else voice.say("date-as-last-told", date=said)


def overdue_in_words(by: str, count: int, ends: Ending, voice: Voice) -> str:
    """Say that a time has passed and that no entry says so.

    Args:
        by: the moment or day that has passed, in words.
        count: how many surfaces it is about.
        ends: what they are then, as in `hours_in_words`.
        voice: the language.

    Returns:
        "was due by Friday 26 November; nobody has entered it as open yet".
    """
    if ends is Ending.DONE:
        return voice.say("hours-overdue-done", by=by, count=count)
    return voice.say("hours-overdue-open", by=by, count=count)


def reopening_as_dates(works: Sequence[SurfaceWork], as_of: datetime, voice: Voice) -> DateRange | None:
    """Give the days of what `reopening_in_words` says.

    Args:
        works: one job on some surfaces, at least one.
        as_of: the moment of the reader, local.
        voice: the day of the reader.

    Returns:
        The range of days, or None where the words give none: held up, overdue, or closed again.
    """
    hours = [work.hours for work in works if work.hours is not None]
    if len(hours) == len(works):
        last = hours_of_all(hours)
        if isinstance(last, HeldUp):
            return None
        likely, latest = rounded_hours(last)
        if latest < as_of:
            return None
        early = min(last.early, likely, key=datetime.timestamp)
        return DateRange(early=early.date(), likely=likely.date(), allow_until=latest.date())
    days = range_of_all(works, Milestone.REOPENING)
    if _closed_again(works):
        return None
    return days if days.is_given and not days.passed_untold(voice.near) else None


def reopening_facts(outlook: JobOutlook, as_of: datetime, voice: Voice) -> list[Fact]:
    """List when the surfaces of a job reopen that are not open: a row for each set that reopens at a time of its own.

    Args:
        outlook: the job.
        as_of: the moment of the reader, local.
        voice: the language and the day of the reader.

    Returns:
        Rows; none where nothing is being worked on and no range of days is in the plan.
    """
    sets: dict[object, list[SurfaceWork]] = {}
    for work in outlook.surfaces:
        if work.work is Work.BACK_TO_NORMAL:
            continue  # nobody waits for it any more, even if it was never entered as open
        if work.hours is not None:
            sets.setdefault(work.hours.together, []).append(work)
        elif outlook.job.reopens_after is not None:
            one_by_one = None if work.done_at is None else work.dates[Milestone.REOPENING]
            sets.setdefault((work.work, one_by_one, work.is_closed_again), []).append(work)
    in_play = outlook.job.while_working in (Play.OPEN, Play.OPEN_WITH_CARE)
    ends = Ending.DONE if in_play else Ending.OPEN
    whole = len(outlook.surfaces)
    return [
        Fact(
            name=_head(works, ends, voice) if len(works) < whole else ends.name_in(voice),
            value=capital(reopening_in_words(works, as_of, voice, ends=ends)),
            is_of_today=True,
        )
        for works in sets.values()
    ]


def _closed_again(works: Sequence[SurfaceWork]) -> bool:
    return all(work.heals_closed_again for work in works)


def _head(works: Sequence[SurfaceWork], ends: Ending, voice: Voice) -> str:
    places = places_in_words((work.surface for work in works), voice)
    if ends is Ending.DONE:
        return voice.say("hours-work-finished-where", places=places)
    return voice.say("hours-open-again-where", places=places)


def _held_up(held: HeldUp, voice: Voice) -> str:
    not_before = _rounded(held.not_before, timedelta())
    since, first = _moment(held.since, voice), _moment(not_before, voice)
    if held.no_work_before is not None:
        if _is_tomorrow(held.no_work_before, voice):
            return voice.say("hours-held-up-for-today", since=since, first=first)
        return voice.say("hours-held-up-until", since=since, day=voice.day(held.no_work_before), first=first)
    if not_before.date() == voice.near:
        return voice.say("hours-held-up", since=since, first=first)
    return voice.say("hours-held-up-to-another-day", since=since, first=first)


def _rounded(moment: datetime, up_by: timedelta) -> datetime:
    """The last quarter of an hour of the local day that is not after the moment moved up."""
    moved = (moment.astimezone(UTC) + up_by).astimezone(moment.tzinfo)
    return (moved.astimezone(UTC) - (moved.replace(tzinfo=UTC) - _MIDNIGHT) % _QUARTER).astimezone(moment.tzinfo)


def _moment(moment: datetime, voice: Voice) -> str:
    """A time of day, with its day where that is not today."""
    time, day = voice.time(moment), moment.date()
    if day == voice.near:
        return time
    if _is_tomorrow(day, voice):
        return voice.say("hours-time-tomorrow", time=time, day=voice.day(day))
    return voice.moment(moment)


def _day(day: date, voice: Voice) -> str:
    said = voice.day(day)
    return voice.say("hours-tomorrow", day=said) if _is_tomorrow(day, voice) else said


def _is_tomorrow(day: date, voice: Voice) -> bool:
    return day == voice.near + timedelta(days=1)
