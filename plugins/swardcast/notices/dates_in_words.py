"""Dates in words; the same uncertainty gives the same words everywhere.

The words themselves stand in the catalogue's `dates.ftl`, the one table of them.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from enum import Enum
from typing import Final

from swardcast.language.voice import Voice
from swardcast.outlook.states import DateRange, NoDate, RestsOn

__all__ = ["first_and_last_in_words", "range_in_words", "says_allow_until", "told_before_in_words"]

_APART: Final = timedelta(days=3)
"""Likely days that lie farther apart are told as the first and the last of them: judgement."""

_NO_DATES = {
    NoDate.NOT_THIS_SEASON: "no-date-not-this-season",
    NoDate.NO_HISTORY: "no-date-no-history",
    NoDate.TOO_FAR: "no-date-too-far",
    NoDate.NOT_REPORTED: "no-date-until-done",
}

_WHY = {RestsOn.PLAN: "label", RestsOn.SPARE_DAYS: "weather", RestsOn.PACE: "weather"}  # a plan keeps a further day


def range_in_words(given: DateRange, voice: Voice, *, briefly: bool = False, seen_on: date | None = None) -> str:
    """Say a date as surely as it is known; this is the only table of such words.

    Args:
        given: early, likely and allow until.
        voice: the language and the day of the reader.
        briefly: whether to leave out the weekdays.
        seen_on: the day from which its days are past or to come, or None for that of the reader, whose years are said.

    Returns:
        "on Friday 24 September" for a fact; "likely by ...; allow until ..." for a computed date; "usually between ..."
        for somebody's usual time and "planned for ..." for a plan, which have no chances; the months to come where the
        range is wider than eight weeks; no date where the season does not bring one.
    """
    if given.likely is None or given.allow_until is None:
        return voice.say(_NO_DATES[given.no_date])
    say_day = voice.short_day if briefly else voice.day
    likely, allow_until = say_day(given.likely), say_day(given.allow_until)
    near = voice.near if seen_on is None else seen_on
    match _form_of(given, given.likely, given.allow_until, near):
        case _Form.FACT:
            return voice.say("on-day", day=likely)
        case _Form.BY_NOW:
            return voice.say("by-now")
        case _Form.DUE_NOW:
            return voice.say("due-now", until=allow_until)
        case _Form.MONTHS:
            return _months_in_words(given, given.allow_until, voice, near)
        case _Form.USUALLY:
            return _usually_in_words(say_day(given.early or given.likely), given, allow_until, voice, near)
        case _Form.PLANNED:
            return _planned_in_words(given, likely, allow_until, voice)
        case _Form.ONE_DAY:
            return voice.say("likely-by", day=likely)
        case _Form.RANGE:
            return voice.say("likely-by-allow-until", day=likely, until=allow_until)


def first_and_last_in_words(likely_days: Sequence[date], last: DateRange, voice: Voice) -> str:
    """Say when the first and when the last of several surfaces is there.

    Args:
        likely_days: the likely day of each, in any order; none where not every one has such a day.
        last: the date of the last of them.
        voice: the language and the day of the reader.

    Returns:
        "the first of them likely by ..., the last likely by ...; allow until ...", or "" where the date of the last is
        not said by its days, or lies so near the first that one date says as much.
    """
    if not likely_days or last.likely is None or last.allow_until is None:
        return ""
    first = min(likely_days)
    is_range = _form_of(last, last.likely, last.allow_until, voice.near) is _Form.RANGE
    if not is_range or last.likely - first <= _APART:
        return ""
    begins = voice.say("first-due-now") if first < voice.near else voice.say("first-likely-by", day=voice.day(first))
    return voice.say("first-and-last", first=begins, last=voice.day(last.likely), until=voice.day(last.allow_until))


def _months_in_words(given: DateRange, last_day: date, voice: Voice, near: date) -> str:
    first, last = _months(given, last_day, near)
    begins = (voice.on(last) if first.year == last.year else voice).month(first)  # one year is said once
    usual = "usual-months-from-to" if given.rests_on is RestsOn.USUAL_TIME else "months-from-to"
    return voice.say(usual, first=begins, last=voice.month(last))


def _usually_in_words(first: str, given: DateRange, last: str, voice: Voice, near: date) -> str:
    """The days of a usual time, or the last of them once they have begun."""
    begins = given.early or given.likely
    if begins is None or begins < near or begins == given.allow_until:
        return voice.say("usually-by", day=last)
    return voice.say("usually-between", first=first, last=last)


def _planned_in_words(given: DateRange, day: str, last: str, voice: Voice) -> str:
    """The day of the plan, and the last one that it keeps; why it keeps it where that is the weather."""
    why, how = _WHY[given.rests_on], "expected" if given.rests_on is RestsOn.PACE else "planned"
    if given.likely == given.allow_until:
        return voice.say("planned-for", how=how, day=day)
    if given.likely is not None and given.likely + timedelta(days=1) == given.allow_until:
        return voice.say("planned-for-or-next-day", how=how, day=day, why=why)
    return voice.say("planned-for-or-by", how=how, day=day, last=last, why=why)


class _Form(Enum):
    """How a date is said."""

    FACT = "a fact"
    BY_NOW = "by now"
    DUE_NOW = "due now"
    MONTHS = "months"
    USUALLY = "a usual time"
    PLANNED = "planned"
    ONE_DAY = "one day"
    RANGE = "likely and allow until"


def _form_of(given: DateRange, likely: date, allow_until: date, near: date) -> _Form:
    if given.is_fact:
        return _Form.FACT
    if allow_until < near:
        return _Form.BY_NOW
    if likely < near and given.rests_on is not RestsOn.USUAL_TIME:
        return _Form.DUE_NOW
    first, last = _months(given, allow_until, near)
    if given.is_wide and (first.year, first.month) != (last.year, last.month):
        return _Form.MONTHS
    if given.rests_on is RestsOn.USUAL_TIME:
        return _Form.USUALLY
    if given.rests_on in _WHY:
        return _Form.PLANNED
    return _Form.ONE_DAY if allow_until == likely else _Form.RANGE


def _months(given: DateRange, allow_until: date, near: date) -> tuple[date, date]:
    """A day of the first and of the last month of a range that are still to come."""
    return max(given.early or given.likely or allow_until, near), allow_until


def says_allow_until(given: DateRange, voice: Voice) -> bool:
    """Tell whether a date is said with "allow until", so that a reader may ask what that means.

    Args:
        given: early, likely and allow until.
        voice: the day of the reader.

    Returns:
        Whether the words of `range_in_words` have it.
    """
    if given.likely is None or given.allow_until is None:
        return False
    return _form_of(given, given.likely, given.allow_until, voice.near) in (_Form.DUE_NOW, _Form.RANGE)


def told_before_in_words(told: DateRange, voice: Voice, told_on: date | None = None) -> str:
    """Say a date as it was told before, even where its days have passed since.

    Args:
        told: the date as it was told.
        voice: the language and the day of the reader.
        told_on: the day on which it was first told, or None for one before its days: of a likely day that had passed by
            then, members were only told how long to allow.

    Returns:
        Words of `range_in_words`, or "allow until ..." alone.
    """
    if told.likely is None or told.allow_until is None or told.is_fact:
        return range_in_words(told, voice)
    seen_on = min(voice.near, told.early or told.likely)
    if told_on is not None:
        seen_on = max(seen_on, told_on)
    if _form_of(told, told.likely, told.allow_until, seen_on) is _Form.DUE_NOW:
        return voice.say("allow-until", until=voice.day(told.allow_until))
    return range_in_words(told, voice, seen_on=seen_on)
