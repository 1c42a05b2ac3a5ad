"""What speaks for and against a first day, in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.chances import FEWEST, chance_in_words
from swardcast.notices.dates_in_words import range_in_words
from swardcast.notices.fixtures import fixture_in_words
from swardcast.notices.kinds import kind_name
from swardcast.notices.words import whole_percent
from swardcast.outlook.closures import Touch
from swardcast.outlook.fixtures import FixtureOutlook
from swardcast.outlook.states import DateRange, RestsOn
from swardcast.planning.blocked_days import Because, Blocked
from swardcast.planning.compare import count_touched, is_touched
from swardcast.planning.dates import BestTime, Dates
from swardcast.planning.start_days import Cost, StartDay
from swardcast.planning.words import first_day_cell, last_day_cell
from swardcast.records.planning import Planning
from swardcast.turf.ensemble import HORIZON_DAYS

__all__ = ["blocked_in_words", "end_cell", "fixture_reasons", "reasons_in_words", "touched", "weighted_cell"]

_ABOUT_A_DAY: Final = 0.5  # a difference below half a day rounds to none
_LONG_TAIL: Final = 0.5
"""What cold weather may add to the likely time before it is worth a sentence, as a share of it: judgement."""


def touched(day: StartDay) -> tuple[FixtureOutlook, ...]:
    """List the fixtures that a job begun on a day touches.

    Args:
        day: the day.

    Returns:
        Fixtures in days of the work, or with more than 1 chance in 10 of finding some of the surfaces disturbed.
    """
    return tuple(met for met in day.meets if is_touched(met))


def weighted_cell(cost: Cost | None, voice: Voice) -> str:
    """Say weighted days and their range in few letters: "42 (31 to 58)".

    Args:
        cost: the cost, or None where it is not known.
        voice: the language.

    Returns:
        The words.
    """
    if cost is None:
        return voice.say("planning-not-known")
    middle, low, high = (voice.number(value) for value in (cost.weighted_days, cost.low, cost.high))
    return voice.say("startdays-with-range", middle=middle, low=low, high=high)


def end_cell(ends: DateRange | None, voice: Voice) -> str:
    """Say when it is over in few letters: the likely day, and the day to allow until.

    Args:
        ends: the range, or None where there is none.
        voice: the language and the day of the reader.

    Returns:
        Both days; months where the range is wide; the ends of somebody's usual time; why there is no date.
    """
    if ends is None:
        return voice.say("planning-not-known")
    if ends.likely is None or ends.allow_until is None:
        return voice.name("planning-no-date", ends.no_date)
    if ends.rests_on is RestsOn.USUAL_TIME:
        first = first_day_cell(ends.early or ends.likely, ends.allow_until, voice)
        return voice.say("planning-usually", first=first, last=last_day_cell(ends.allow_until, voice))
    if ends.is_wide:
        return range_in_words(ends, voice, briefly=True)
    likely = first_day_cell(ends.likely, ends.allow_until, voice)
    return voice.say("planning-likely-until", likely=likely, until=last_day_cell(ends.allow_until, voice))


def blocked_in_words(reason: Blocked, planning: Planning, voice: Voice) -> str:
    """Say why a day is out.

    Args:
        reason: the reason.
        planning: what the club keeps to itself.
        voice: the language.

    Returns:
        A few words, with a capital.
    """
    match reason.because:
        case Because.WEEKDAY:
            return voice.say("startdays-because-weekday")
        case Because.HOLIDAY:
            return voice.say("startdays-because-holiday", name=reason.words)
        case Because.FIXTURE:
            return voice.say("startdays-because-fixture", name=reason.words)
        case Because.CLUB:
            return voice.say("startdays-because-club", why=reason.words)
        case Because.DAYLIGHT:
            hours = planning.days_without_work.least_daylight_h or 0.0
            return voice.say("startdays-because-daylight", hours=voice.figure(hours))
        case Because.CONTRACTOR:
            kind = kind_name(reason.kind, voice) if reason.kind is not None else ""
            return voice.say("startdays-because-contractor", kind=kind)


def reasons_in_words(time: BestTime, dates: Dates, planning: Planning, voice: Voice) -> str:
    """Say what speaks for one of the best times, and what may go wrong.

    Args:
        time: the time.
        dates: what it was found among.
        planning: what the club keeps to itself.
        voice: the language and the day of the reader.

    Returns:
        A paragraph.
    """
    day = time.window.best
    said = [
        *_growth(time, dates, voice),
        *fixture_reasons(day, voice),
        *_weather(day, dates, voice),
        *_risks(day, voice),
        *_same_days(time, voice),
        *_neighbours("startdays-before-out", time.window.before, planning, voice),
        *_neighbours("startdays-after-out", time.window.after, planning, voice),
    ]
    return voice.sentences(said)


def _growth(time: BestTime, dates: Dates, voice: Voice) -> Iterator[str]:
    if time.growth is not None and dates.end_rests_on is RestsOn.SUM:
        yield voice.say("startdays-grows", share=whole_percent(time.growth, voice))
    if time.days_longer < _ABOUT_A_DAY:
        yield voice.say("startdays-quickest")
    else:
        yield voice.say("startdays-longer", days=round(time.days_longer))


def fixture_reasons(day: StartDay, voice: Voice) -> Iterator[str]:
    """Say which fixture a job begun on a day touches first.

    Args:
        day: the day.
        voice: the language and the day of the reader.

    Yields:
        One sentence.
    """
    first = next(iter(touched(day)), None)
    if first is None:
        known = count_touched(day.meets) is not None
        yield voice.say("startdays-meets-none" if known else "startdays-meets-not-known")
        return
    fixture = fixture_in_words(first.fixture, voice)
    if first.in_work is Touch.YES:
        yield voice.say("startdays-meets-work", fixture=fixture)
    elif first.not_normal is None or first.in_work is Touch.PERHAPS:
        yield voice.say("startdays-meets-perhaps", fixture=fixture)
    else:
        yield voice.say("startdays-meets", fixture=fixture, chance=chance_in_words(first.not_normal, voice))


def _weather(day: StartDay, dates: Dates, voice: Voice) -> Iterator[str]:
    chances = dates.chances.get(day.day)
    if chances is None or chances.often_enough is None:
        return
    spare = chances.often_enough
    yield voice.say(
        "startdays-spare-needed",
        spare=spare,
        enough=voice.number(chances.enough_in(spare)),
        years=voice.number(len(chances.spare_days)),
    )


def _risks(day: StartDay, voice: Voice) -> Iterator[str]:
    if day.cost is not None and day.cost.never >= FEWEST:
        chance = chance_in_words(day.cost.never, voice)
        yield capital(voice.say("startdays-never", chance=chance, days=voice.number(HORIZON_DAYS)))
    if day.ends is None or day.ends.likely is None or day.ends.allow_until is None:
        return
    more, likely = (day.ends.allow_until - day.ends.likely).days, (day.ends.likely - day.day).days
    if day.ends.rests_on is RestsOn.SUM and more > _LONG_TAIL * likely:
        yield voice.say("startdays-cold", days=voice.number(more))


def _same_days(time: BestTime, voice: Voice) -> Iterator[str]:
    if time.same_days:
        yield voice.say("startdays-same-days", jobs=voice.listed([job.title for job in time.same_days]))


def _neighbours(phrase: str, reasons: Sequence[Blocked], planning: Planning, voice: Voice) -> Iterator[str]:
    if reasons:
        yield voice.say(phrase, reason=blocked_in_words(reasons[0], planning, voice))
