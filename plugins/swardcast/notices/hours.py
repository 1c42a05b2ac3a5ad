"""Hours of reopening in words; the only table of such words.

Rounding: "likely from" to the nearest quarter of an hour, "at the latest" up to the next one, "not before" down.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, date, datetime, timedelta
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.notice import Fact
from swardcast.notices.words import places_in_words, range_in_words
from swardcast.outlook.job_ranges import range_of_all
from swardcast.outlook.reopening import HeldUp, Hours
from swardcast.outlook.states import JobOutlook, Milestone, SurfaceWork, Work
from swardcast.records.plan import Play

__all__ = ["hours_in_words", "hours_of_all", "reopening_facts", "reopening_in_words"]

_QUARTER: Final = timedelta(minutes=15)
_MIDNIGHT: Final = datetime(2000, 1, 1, tzinfo=UTC)  # a midnight to count quarters from


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


def hours_in_words(
    hours: Hours | HeldUp, as_of: datetime, voice: Voice, *, count: int = 1, becomes: str = "open"
) -> str:
    """Say when surfaces reopen, to the hour.

    Args:
        hours: when, as sure as it is.
        as_of: the moment of the reader, local.
        voice: the language and the day of the reader.
        count: how many surfaces it is about.
        becomes: what they are then: "open", or "done" where they are in play already.

    Returns:
        "likely from 2:30pm, by 4pm at the latest", with the day where it is not today; that it is due, or overdue with
        no entry; or that it is held up.
    """
    if isinstance(hours, HeldUp):
        return _held_up(hours, voice)
    likely = _rounded(hours.likely, _QUARTER / 2)
    latest = max(_rounded(hours.latest, _QUARTER - timedelta(microseconds=1)), likely, key=datetime.timestamp)
    if latest < as_of:
        return _overdue(_moment(latest, voice), count, becomes, voice)
    if likely <= as_of:
        return f"due now, by {_moment(latest, voice)} at the latest"
    if likely == latest:
        return f"likely from {_moment(likely, voice)}"
    if likely.date() == latest.date():
        day = _day(likely.date(), voice)
        begins, ends = voice.time(likely), voice.time(latest)
        return f"{day}{', ' if day else ''}likely from {begins}, by {ends} at the latest"
    return f"likely from {_moment(likely, voice)}; by {_moment(latest, voice)}, at the latest"


def reopening_in_words(
    works: Sequence[SurfaceWork], as_of: datetime, voice: Voice, *, becomes: str = "open", is_closed: bool = False
) -> str:
    """Say when the last of some surfaces reopens: to the hour where that is known of all, else the day.

    Args:
        works: one job on some surfaces, at least one.
        as_of: the moment of the reader, local.
        voice: the language and the day of the reader.
        becomes: what they are then, as in `hours_in_words`.
        is_closed: whether the log calls them closed after their work was done.

    Returns:
        Words of `hours_in_words` or of `range_in_words`.
    """
    hours = [work.hours for work in works if work.hours is not None]
    if len(hours) == len(works):
        return hours_in_words(hours_of_all(hours), as_of, voice, count=len(works), becomes=becomes)
    days = range_of_all(works, Milestone.REOPENING)
    if is_closed and days.allow_until is not None and days.allow_until < voice.near:
        return _overdue(voice.day(days.allow_until), len(works), becomes, voice)
    return range_in_words(days, voice)


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
            sets.setdefault((work.work, one_by_one), []).append(work)
    in_play = outlook.job.while_working in (Play.OPEN, Play.OPEN_WITH_CARE)
    name, becomes = ("Work finished", "done") if in_play else ("Open again", "open")
    facts = []
    for works in sets.values():
        where = (
            ""
            if len(works) == len(outlook.surfaces)
            else f": {places_in_words((work.surface for work in works), voice)}"
        )
        facts.append(Fact(name=name + where, value=capital(reopening_in_words(works, as_of, voice, becomes=becomes))))
    return facts


def _overdue(by: str, count: int, becomes: str, voice: Voice) -> str:
    return f"was due by {by}; nobody has entered {'it' if count == 1 else 'them'} as {becomes} yet"


def _held_up(held: HeldUp, voice: Voice) -> str:
    first = _moment(_rounded(held.not_before, timedelta()), voice)
    return (
        f"held up since {_moment(held.since, voice)}: no time until work is taken up again; "
        f"not before {first}{',' if ' ' in first else ''} even if that is now"
    )


def _rounded(moment: datetime, up_by: timedelta) -> datetime:
    """The last quarter of an hour of the local day that is not after the moment moved up."""
    moved = (moment.astimezone(UTC) + up_by).astimezone(moment.tzinfo)
    return (moved.astimezone(UTC) - (moved.replace(tzinfo=UTC) - _MIDNIGHT) % _QUARTER).astimezone(moment.tzinfo)


def _moment(moment: datetime, voice: Voice) -> str:
    day = _day(moment.date(), voice)
    said = voice.time(moment)
    if not day:
        return said
    return f"{said} {day}" if day.startswith("tomorrow") else f"{said} on {day}"


def _day(day: date, voice: Voice) -> str:
    if day == voice.near:
        return ""
    return f"{'tomorrow, ' if day == voice.near + timedelta(days=1) else ''}{voice.day(day)}"
