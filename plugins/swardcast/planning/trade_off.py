"""Area worked against days of disturbance, ready to be drawn."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.pictures import KeyRow, Sign, Table, Told
from swardcast.notices.words import percent, whole_percent
from swardcast.outlook.states import Milestone
from swardcast.planning.axis_marks import AxisMark, even_marks
from swardcast.planning.compare import Compared, Comparison
from swardcast.planning.work_in_words import choice_name

__all__ = ["TradeOff", "TradeOffPoint", "front_of", "trade_off"]

_STEPS_OF_SHARE: Final = (0.01, 0.02, 0.05, 0.1, 0.2, 0.5)
_STEPS_DAYS: Final = (5, 10, 20, 50, 100)


@dataclass(frozen=True, slots=True, kw_only=True)
class TradeOffPoint:
    """One choice.

    Args:
        number: its number in the tables.
        is_planned: whether it is what the plan has now.
        share: share of the surface disturbed.
        likely_days: days from the first day of the work to the likely day of back to normal.
        until_days: days to the day to allow until.
    """

    number: str
    is_planned: bool
    share: float
    likely_days: int
    until_days: int


@dataclass(frozen=True, slots=True, kw_only=True)
class TradeOff:
    """Choices as points.

    Args:
        told: the picture in words.
        points: the choices that have dates.
        shares: marks along the bottom, from 0 to beyond the largest share.
        days: marks up the side, from 0 to beyond the latest day.
        share_words: what the bottom counts.
        days_words: what the side counts.
    """

    told: Told
    points: tuple[TradeOffPoint, ...]
    shares: tuple[AxisMark, ...]
    days: tuple[AxisMark, ...]
    share_words: str
    days_words: str

    @property
    def front(self) -> tuple[TradeOffPoint, ...]:
        """The points of which no other has as much area in as few days, from the least area to the most."""
        return front_of(self.points)


def front_of(points: Sequence[TradeOffPoint]) -> tuple[TradeOffPoint, ...]:
    """Pick the choices between which area has to be traded for days.

    Args:
        points: choices.

    Returns:
        Those of which no other works at least as much of the surface in no more likely days, and does better in one of
        the two; from the least area to the most. Depth, sand and cost do not count.
    """
    kept = [one for one in points if not any(_is_better(other, one) for other in points)]
    return tuple(sorted(kept, key=lambda one: (one.share, one.likely_days)))


def _is_better(one: TradeOffPoint, other: TradeOffPoint) -> bool:
    never_worse = one.share >= other.share and one.likely_days <= other.likely_days
    return never_worse and (one.share > other.share or one.likely_days < other.likely_days)


def trade_off(comparison: Comparison, voice: Voice) -> TradeOff | None:
    """Lay out how much is worked against how long it disturbs.

    Args:
        comparison: the comparison.
        voice: the language and the day of the reader.

    Returns:
        The picture, or None where no choice has a date.
    """
    drawn = [(row, point) for row in comparison.rows if (point := _point(row, voice)) is not None]
    if not drawn:
        return None
    points = tuple(point for _, point in drawn)
    shares = even_marks(max(point.share for point in points), _STEPS_OF_SHARE)
    days = even_marks(max(point.until_days for point in points), _STEPS_DAYS)
    return TradeOff(
        told=_told(comparison, drawn, voice),
        points=points,
        shares=tuple(AxisMark(value=value, words=whole_percent(value, voice)) for value in shares),
        days=tuple(AxisMark(value=value, words=voice.number(value)) for value in days),
        share_words=voice.say("planning-picture-share"),
        days_words=voice.say("planning-picture-days"),
    )


def _point(row: Compared, voice: Voice) -> TradeOffPoint | None:
    given = row.range_of(Milestone.BACK_TO_NORMAL)
    likely, until = row.days_until(given.likely), row.days_until(given.allow_until)
    share = row.amounts.disturbed_fraction
    if likely is None or until is None or share is None or row.is_usual_time:
        return None
    return TradeOffPoint(
        number=voice.number(row.number),
        is_planned=row.is_planned,
        share=share,
        likely_days=likely,
        until_days=until,
    )


def _told(comparison: Comparison, drawn: Sequence[tuple[Compared, TradeOffPoint]], voice: Voice) -> Told:
    shares = [point.share for _, point in drawn]
    likely = [point.likely_days for _, point in drawn]
    summary = voice.say(
        "planning-picture-summary",
        count=len(drawn),
        low=_share(min(shares), voice),
        high=_share(max(shares), voice),
        least=voice.number(min(likely)),
        most=voice.number(max(likely)),
    )
    caption = [summary, voice.say("planning-picture-reads"), voice.say("planning-picture-line")]
    caption += _front(front_of([point for _, point in drawn]), len(drawn), voice)
    caption.append(voice.say("planning-picture-numbers"))
    if left_out := len(comparison.rows) - len(drawn):
        caption.append(voice.say("planning-picture-left-out", count=left_out))
    return Told(
        name="trade-off",
        title=voice.say("planning-picture-title"),
        description=summary,
        caption=(voice.sentences(caption),),
        key=tuple(
            KeyRow(
                sign=Sign.AS_PLANNED if point.is_planned else Sign.CHOICE,
                number=point.number,
                words=choice_name(row, voice),
            )
            for row, point in drawn
        ),
        tables=(
            Table(
                caption=voice.say("planning-picture-table"),
                columns=(
                    voice.say("planning-column-number"),
                    voice.say("planning-column-choice"),
                    voice.say("planning-column-disturbed"),
                    voice.say("planning-picture-likely-days"),
                    voice.say("planning-picture-until-days"),
                ),
                rows=tuple(_row(row, point, voice) for row, point in drawn),
            ),
        ),
    )


def _front(front: Sequence[TradeOffPoint], all_points: int, voice: Voice) -> list[str]:
    if all_points == 1:
        return []
    numbers = voice.joined([point.number for point in front])
    return [
        voice.say("planning-picture-front", count=len(front), numbers=numbers),
        voice.say("planning-picture-front-alone"),
    ]


def _share(fraction: float, voice: Voice) -> str:
    return percent(fraction, voice) if fraction else whole_percent(fraction, voice)


def _row(row: Compared, point: TradeOffPoint, voice: Voice) -> tuple[str, ...]:
    return (
        point.number,
        choice_name(row, voice),
        _share(point.share, voice),
        voice.number(point.likely_days),
        voice.number(point.until_days),
    )
