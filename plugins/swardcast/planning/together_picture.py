"""Trade-offs between first days for several jobs, ready to be drawn."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.pictures import KeyRow, Sign, Table, Told
from swardcast.planning.axis_marks import AxisMark, marks_around
from swardcast.planning.programme import Together
from swardcast.planning.programme_tables import together_tables

__all__ = ["DaysPoint", "DaysTradeOffs", "days_trade_offs"]

_STEPS: Final = (0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200)


@dataclass(frozen=True, slots=True, kw_only=True)
class DaysPoint:
    """One trade-off.

    Args:
        number: its number in the table.
        weighted_days: weighted days in all.
        plain_days: days disturbed in all.
    """

    number: str
    weighted_days: float
    plain_days: float


@dataclass(frozen=True, slots=True, kw_only=True)
class DaysTradeOffs:
    """Trade-offs as points.

    Args:
        told: the picture in words.
        points: the trade-offs, that with the fewest weighted days first.
        plain_marks: days disturbed that are named along the bottom, from below the fewest to above the most.
        weighted_marks: weighted days that are named up the side, likewise.
        plain_words: what the bottom counts.
        weighted_words: what the side counts.
    """

    told: Told
    points: tuple[DaysPoint, ...]
    plain_marks: tuple[AxisMark, ...]
    weighted_marks: tuple[AxisMark, ...]
    plain_words: str
    weighted_words: str


def days_trade_offs(together: Together, voice: Voice) -> DaysTradeOffs | None:
    """Lay out the trade-offs.

    Args:
        together: what was found.
        voice: the language and the day of the reader.

    Returns:
        The picture, or None where there are fewer than two.
    """
    if len(together.trade_offs) < 2:  # noqa: PLR2004 - one has nothing to be traded against
        return None
    points = tuple(
        DaysPoint(number=voice.number(number), weighted_days=one.weighted_days, plain_days=one.plain_days)
        for number, one in enumerate(together.trade_offs, start=1)
    )
    return DaysTradeOffs(
        told=_told(together, voice),
        points=points,
        plain_marks=_marks([point.plain_days for point in points], voice),
        weighted_marks=_marks([point.weighted_days for point in points], voice),
        plain_words=voice.say("startdays-column-days"),
        weighted_words=voice.say("startdays-column-weighted"),
    )


def _marks(values: Sequence[float], voice: Voice) -> tuple[AxisMark, ...]:
    marks = marks_around(values, _STEPS)
    decimals = int(marks[1] - marks[0] < 1)
    return tuple(AxisMark(value=value, words=voice.number(value, decimals=decimals)) for value in marks)


def _told(together: Together, voice: Voice) -> Told:
    best, other = together.trade_offs[0], together.trade_offs[-1]
    summary = voice.say(
        "together-picture-summary",
        more=voice.number(other.weighted_days - best.weighted_days, decimals=1),
        fewer=voice.number(best.plain_days - other.plain_days, decimals=1),
    )
    said = [summary, voice.say("together-picture-reads"), voice.say("together-picture-axes")]
    table: Table = together_tables(together, voice)[1]
    return Told(
        name="days-trade-offs",
        title=voice.say("together-picture-title"),
        description=summary,
        caption=(voice.sentences(said),),
        key=(
            KeyRow(sign=Sign.BEST_DAY, words=voice.say("together-picture-best"), number=voice.number(1)),
            KeyRow(sign=Sign.CHOICE, words=voice.say("together-picture-others")),
        ),
        tables=(table,),
    )
