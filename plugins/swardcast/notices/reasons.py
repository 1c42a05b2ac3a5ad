"""Reasons in words: what a state or a date rests on."""

from __future__ import annotations

from datetime import date, datetime

from swardcast.notices.words import day_in_words, moment_in_words
from swardcast.outlook.states import Reason, ReasonKind

__all__ = ["reason_in_words"]


def reason_in_words(reason: Reason, near: date) -> str:
    """Say what a state or a date rests on.

    Args:
        reason: the reason.
        near: the day of the reader.

    Returns:
        One sentence, without the source.
    """
    when = _when(reason.at, near)
    because = f" ({reason.words})" if reason.words else ""
    match reason.kind:
        case ReasonKind.MORNING_ENTRY:
            return f"Morning entry of {when}{because}."
        case ReasonKind.NO_FRESH_ENTRY:
            return f"No entry today; the last one was made at {when}." if when else "No entry was ever made."
        case ReasonKind.PLANNED:
            return f"Planned to start on {when}."
        case ReasonKind.OVERDUE:
            return f"Was planned to start on {when}; no entry says that it has."
        case ReasonKind.MOVED:
            return f"Moved to {when}{because}."
        case ReasonKind.CALLED_OFF:
            return f"Called off{because}."
        case ReasonKind.STARTED:
            return f"Work started at {when}."
        case ReasonKind.HELD_UP:
            return f"Held up since {when}{because}."
        case ReasonKind.DONE:
            return f"Work done at {when}."
        case ReasonKind.COMPUTED:
            return f"Dates computed from the work, the growth since {when} and past years' weather."
        case ReasonKind.OBSERVED:
            return f"Seen on the course at {when}: {reason.words} of the first marks were left."
        case _:
            return _about_the_date(reason, when)


def _about_the_date(reason: Reason, when: str) -> str:
    match reason.kind:
        case ReasonKind.SAID_NORMAL:
            return f"The course manager called it back to normal at {when}."
        case ReasonKind.COMPUTED_NORMAL:
            return f"Computed to be back to normal since {when}; no entry has confirmed it yet."
        case ReasonKind.RULE_OF_THUMB:
            return f"Not computed: a usual range ({reason.words})."
        case ReasonKind.NOT_VALIDATED:
            return "No published recoveries of this grass or work were fitted, so the range is drawn wider."
        case ReasonKind.NO_HISTORY:
            return "There is no weather history, so no date can be computed."
        case ReasonKind.NOT_THIS_SEASON:
            return "In more than 1 past year in 10 it would not heal this season, so no date is given."
        case ReasonKind.WEATHER_MISSING:
            return f"The weather of {reason.words} days since the work is missing; the usual temperature was used."
        case ReasonKind.NO_HEALING:
            return "This work leaves nothing that has to heal."
        case _:
            return f"{reason.kind.value} {when} {reason.words}".strip()


def _when(at: datetime | date | None, near: date) -> str:
    if at is None:
        return ""
    return moment_in_words(at, near) if isinstance(at, datetime) else day_in_words(at, near)
