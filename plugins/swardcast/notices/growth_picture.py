"""The week's growth beside a usual year in words and figures, ready to be drawn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.pictures import AsOf, KeyRow, Sign, Table, Tick, Told
from swardcast.outlook.week_growth import DAYS_BACK, DayOfGrowth, WeekOfGrowth

__all__ = ["GrowthPicture", "ValueMark", "growth_picture"]

_MARKS: Final = (0.0, 0.5, 1.0)
_TICK_STEP_DAYS: Final = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class ValueMark:
    """A value that is named on an axis.

    Args:
        value: the value.
        words: what stands there.
    """

    value: float
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class GrowthPicture:
    """Growth of seven days and of the next seven, as shares of the best growing day.

    Args:
        told: the picture in words.
        days: the days in order.
        ticks: days that are named.
        marks: values that are named, 0 to 1.
        as_of: the first day that is not over.
    """

    told: Told
    days: tuple[DayOfGrowth, ...]
    ticks: tuple[Tick, ...]
    marks: tuple[ValueMark, ...]
    as_of: AsOf


def growth_picture(week: WeekOfGrowth, voice: Voice) -> GrowthPicture:
    """Lay the growth of two weeks out for a picture.

    Args:
        week: growth day by day.
        voice: the language and the day of the reader.

    Returns:
        The picture.
    """
    shown = week.days[::_TICK_STEP_DAYS]
    return GrowthPicture(
        told=_told(week, voice),
        days=week.days,
        ticks=tuple(Tick(day=one.day, words=voice.tick_day(one.day)) for one in shown),
        marks=tuple(ValueMark(value=value, words=voice.number(value, decimals=1)) for value in _MARKS),
        as_of=AsOf(day=week.today, words=voice.say("picture-as-of", day=voice.tick_day(week.today))),
    )


def _told(week: WeekOfGrowth, voice: Voice) -> Told:
    summary = _summary(week, voice)
    caption = voice.sentences([voice.say("picture-growth-bars"), voice.say("picture-growth-usual")])
    over = week.days[:DAYS_BACK]
    signs = [
        *([(Sign.GREW, "picture-key-grew")] if any(one.is_observed for one in over) else []),
        *([] if all(one.is_observed for one in over) else [(Sign.NOT_RECORDED, "picture-key-not-recorded")]),
        (Sign.EXPECTED, "picture-key-expected"),
        (Sign.USUAL, "picture-key-usual"),
    ]
    return Told(
        name="growth",
        title=voice.say("picture-growth-title"),
        description=summary,
        caption=(summary, caption),
        key=tuple(KeyRow(sign=sign, words=voice.say(phrase)) for sign, phrase in signs),
        tables=(_table(week, voice),),
    )


def _summary(week: WeekOfGrowth, voice: Voice) -> str:
    """What the recorded days brought, and the same days of past years; of days without a record nothing is claimed."""
    over = week.days[:DAYS_BACK]
    recorded = [one for one in over if one.is_observed]
    usual = _growth(sum(one.usual for one in recorded or over), voice, decimals=1)
    grass = voice.name("grass", week.grass)
    if not recorded:
        return voice.say("picture-growth-summary-unknown", usual=usual, grass=grass)
    growth = _growth(sum(one.growth for one in recorded), voice, decimals=1)
    if len(recorded) == len(over):
        return voice.say("picture-growth-summary", growth=growth, usual=usual, grass=grass)
    missing = len(over) - len(recorded)
    return voice.say(
        "picture-growth-summary-in-part",
        growth=growth,
        usual=usual,
        grass=grass,
        count=len(recorded),
        missing=missing,
    )


def _growth(value: float, voice: Voice, decimals: int = 2) -> str:
    return voice.number(value, decimals=decimals)


def _table(week: WeekOfGrowth, voice: Voice) -> Table:
    return Table(
        caption=voice.say("picture-growth-days"),
        columns=(
            voice.say("picture-column-day"),
            voice.say("picture-column-growth"),
            voice.say("picture-column-usual"),
            voice.say("picture-column-usual-range"),
        ),
        rows=tuple(tuple(_cells(one, week.today, voice)) for one in week.days),
    )


def _cells(one: DayOfGrowth, today: date, voice: Voice) -> Iterator[str]:
    yield voice.day(one.day)
    growth = _growth(one.growth, voice)
    if one.is_observed:
        yield growth
    elif one.day < today:
        yield voice.say("picture-growth-not-recorded", growth=growth)
    else:
        low, high = _growth(one.low, voice), _growth(one.high, voice)
        yield voice.say("picture-growth-expected", growth=growth, low=low, high=high)
    yield _growth(one.usual, voice)
    yield voice.say("picture-from-to", first=_growth(one.usual_low, voice), last=_growth(one.usual_high, voice))
