"""Dates, amounts and places in words; the same uncertainty gives the same words everywhere.

The words themselves stand in the catalogue's `dates.ftl`, the one table of them.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date, timedelta
from enum import Enum
from typing import Final

from swardcast.language.voice import Voice, slug_of
from swardcast.outlook.states import DateRange, NoDate, RestsOn
from swardcast.records.club import Contact, Surface, SurfaceKind

__all__ = [
    "amount",
    "as_clause",
    "contact_in_words",
    "few_words_for",
    "first_and_last_in_words",
    "holes_in_words",
    "kind_in_words",
    "percent",
    "place_list",
    "places_in_brief",
    "places_in_words",
    "range_in_words",
    "says_allow_until",
    "told_before_in_words",
    "whole_percent",
]

_APART: Final = timedelta(days=3)
"""Likely days that lie farther apart are told as the first and the last of them: judgement."""

_MOST_NAMED: Final = 2
"""Places with names of their own, such as bunkers, that are named one by one; more are counted: judgement."""

_MOST_WORDS_IN_A_LINE = 12  # of a name in a short answer or a headline: judgement
_NO_DATES = {
    NoDate.NOT_THIS_SEASON: "no-date-not-this-season",
    NoDate.NO_HISTORY: "no-date-no-history",
    NoDate.TOO_FAR: "no-date-too-far",
    NoDate.NOT_REPORTED: "no-date-until-done",
}

_WHY = {RestsOn.PLAN: "label", RestsOn.SPARE_DAYS: "weather", RestsOn.PACE: "weather"}  # a plan keeps a further day


def range_in_words(given: DateRange, voice: Voice, *, briefly: bool = False) -> str:
    """Say a date as surely as it is known; this is the only table of such words.

    Args:
        given: early, likely and allow until.
        voice: the language and the day of the reader.
        briefly: whether to leave out the weekdays.

    Returns:
        "on Friday 24 September" for a fact; "likely by ...; allow until ..." for a computed date; "usually between ..."
        for somebody's usual time and "planned for ..." for a plan, which have no chances; the months to come where the
        range is wider than eight weeks; no date where the season does not bring one.
    """
    if given.likely is None or given.allow_until is None:
        return voice.say(_NO_DATES[given.no_date])
    say_day = voice.short_day if briefly else voice.day
    likely, allow_until = say_day(given.likely), say_day(given.allow_until)
    match _form_of(given, given.likely, given.allow_until, voice.near):
        case _Form.FACT:
            return voice.say("on-day", day=likely)
        case _Form.BY_NOW:
            return voice.say("by-now")
        case _Form.DUE_NOW:
            return voice.say("due-now", until=allow_until)
        case _Form.MONTHS:
            return _months_in_words(given, given.allow_until, voice)
        case _Form.USUALLY:
            return _usually_in_words(say_day(given.early or given.likely), given, allow_until, voice)
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


def _months_in_words(given: DateRange, last_day: date, voice: Voice) -> str:
    first, last = _months(given, last_day, voice.near)
    begins = (voice.on(last) if first.year == last.year else voice).month(first)  # one year is said once
    usual = "usual-months-from-to" if given.rests_on is RestsOn.USUAL_TIME else "months-from-to"
    return voice.say(usual, first=begins, last=voice.month(last))


def _usually_in_words(first: str, given: DateRange, last: str, voice: Voice) -> str:
    """The days of a usual time, or the last of them once they have begun."""
    begins = given.early or given.likely
    if begins is None or begins < voice.near or begins == given.allow_until:
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
    near = min(voice.near, told.early or told.likely)
    told_in = voice.on(near if told_on is None else max(near, told_on))
    if _form_of(told, told.likely, told.allow_until, told_in.near) is _Form.DUE_NOW:
        return told_in.say("allow-until", until=told_in.day(told.allow_until))
    return range_in_words(told, told_in)


def as_clause(typed: str) -> str:
    """Take the full stop off typed words that go into a sentence of ours, which brings its own."""
    return typed.rstrip(".")


def contact_in_words(contact: Contact, voice: Voice) -> str:
    """Say how the office is reached: by e-mail, by telephone, or by either.

    Args:
        contact: whom to ask.
        voice: the language.

    Returns:
        The address, the number or both; "" where the club gives neither.
    """
    if contact.email and contact.telephone:
        return voice.say("contact-email-or-telephone", email=contact.email, telephone=contact.telephone)
    return contact.email or contact.telephone


def amount(value: float, voice: Voice) -> str:
    """Say a number, rounded to two figures that people can use: 151,872 becomes "about 150,000"."""
    if value < 100:  # noqa: PLR2004 - small numbers are counted
        return voice.number(max(0.0, value))
    digits = len(str(int(value))) - 2
    return voice.say("about", number=voice.number(round(value / 10**digits) * 10**digits))


def percent(fraction: float, voice: Voice) -> str:
    """Say a share: "5.3 %", "14 %"."""
    share = 100 * fraction
    number = voice.number(share, decimals=1 if round(share, 1) < 10 else 0)  # noqa: PLR2004 - below ten a decimal tells
    return voice.say("percent", number=number)


def whole_percent(fraction: float, voice: Voice) -> str:
    """Say a share that was looked at or typed, without decimals: "5 %", "100 %"."""
    return voice.say("percent", number=voice.number(100 * fraction))


def kind_in_words(kind: SurfaceKind, count: int, voice: Voice) -> str:
    """Name a kind of surface: "green" or "greens".

    Args:
        kind: the kind.
        count: how many there are.
        voice: the language.

    Returns:
        The word in the form that goes with the count.
    """
    return voice.say(f"surface-{slug_of(kind)}", count=count)


def places_in_words(surfaces: Iterable[Surface], voice: Voice) -> str:
    """Name surfaces as in a sentence: "greens 1 to 9 and 14 and the practice green"; a club's own name for them first.

    Args:
        surfaces: the surfaces.
        voice: the language and the club's own names of sets.

    Returns:
        Their names.
    """
    return voice.joined(place_list(surfaces, voice))


def place_list(surfaces: Iterable[Surface], voice: Voice) -> list[str]:
    """Name surfaces one by one, runs of numbers together.

    Args:
        surfaces: the surfaces.
        voice: the language and the club's own names of sets.

    Returns:
        Names, by kind of surface.
    """
    chosen = list(surfaces)
    if (own := voice.set_name(surface.id for surface in chosen)) is not None:
        return [own]
    parts = []
    for kind in SurfaceKind:
        of_kind = [surface for surface in chosen if surface.kind is kind]
        if of_kind and (own := voice.set_name(surface.id for surface in of_kind)) is not None:
            parts.append(own)
            continue
        numbered = [surface for surface in of_kind if surface.is_numbered]
        parts += _numbered(kind, sorted(surface.hole or 0 for surface in numbered), voice)
        parts += [surface.name for surface in of_kind if not surface.is_numbered]
    return parts


def places_in_brief(surfaces: Iterable[Surface], voice: Voice) -> str:
    """Name surfaces as `places_in_words` does, but count those with long names where there are several of a kind.

    Args:
        surfaces: the surfaces.
        voice: the language and the club's own names of sets.

    Returns:
        "the front greenside bunker on the 7th" for one; "3 bunkers on holes 4 and 7" for more than two.
    """
    chosen = list(surfaces)
    if voice.set_name(surface.id for surface in chosen) is not None:
        return places_in_words(chosen, voice)
    parts = []
    for kind in SurfaceKind:
        of_kind = [surface for surface in chosen if surface.kind is kind]
        named = [surface for surface in of_kind if not surface.is_numbered and surface.hole is not None]
        holes = sorted({surface.hole for surface in named if surface.hole is not None})
        if len(named) <= _MOST_NAMED or voice.set_name(surface.id for surface in of_kind) is not None:
            parts += place_list(of_kind, voice) if of_kind else []
            continue
        parts += place_list((surface for surface in of_kind if surface not in named), voice)
        counted = voice.say("counted", count=len(named), kind=kind_in_words(kind, len(named), voice))
        said = holes_in_words(holes, voice)
        parts.append(voice.say("counted-on-holes", counted=counted, holes=said, count=len(holes)))
    return voice.joined(parts)


def few_words_for(surfaces: Iterable[Surface], voice: Voice) -> str:
    """Name surfaces, or count them where their names would not fit into a line: "6 bunkers".

    Args:
        surfaces: the surfaces.
        voice: the language and the club's own names of sets.

    Returns:
        A few words.
    """
    chosen = list(surfaces)
    named = places_in_words(chosen, voice)
    if len(named.split()) <= _MOST_WORDS_IN_A_LINE:
        return named
    counts = [(kind, sum(surface.kind is kind for surface in chosen)) for kind in SurfaceKind]
    return voice.joined(
        [voice.say("counted", count=count, kind=kind_in_words(kind, count, voice)) for kind, count in counts if count]
    )


def _numbered(kind: SurfaceKind, holes: Sequence[int], voice: Voice) -> list[str]:
    if not holes:
        return []
    name = kind_in_words(kind, len(holes), voice)
    return [voice.say("numbered", kind=name, holes=holes_in_words(holes, voice), count=len(holes))]


def holes_in_words(holes: Sequence[int], voice: Voice) -> str:
    """Say numbers of holes: "1 to 4, 6 and 7".

    Args:
        holes: numbers in order, at least one.
        voice: the language.

    Returns:
        Runs of three or more as a range.
    """
    runs: list[list[int]] = []
    for hole in holes:
        if runs and hole == runs[-1][-1] + 1:
            runs[-1].append(hole)
        else:
            runs.append([hole])
    said: list[str] = []
    for run in runs:
        if len(run) > 2:  # noqa: PLR2004 - "1 and 2"
            said.append(voice.say("holes-from-to", first=str(run[0]), last=str(run[-1])))
        else:
            said += [str(hole) for hole in run]
    return voice.joined(said)
