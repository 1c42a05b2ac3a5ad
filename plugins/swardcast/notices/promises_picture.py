"""What was promised beside what happened, in words and figures, ready to be drawn."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.pictures import KeyRow, Sign, Table, Told
from swardcast.outlook.track_record import Kept

__all__ = ["DayMark", "PromiseBar", "PromisesPicture", "promises_picture"]

_MOST_BARS: Final = 12
"""Jobs in one picture, the latest first: judgement, what a screen of a telephone shows twice over."""
_STEPS_DAYS: Final = (5, 10, 20, 50)
_MOST_MARKS: Final = 7


@dataclass(frozen=True, slots=True, kw_only=True)
class PromiseBar:
    """One job; its days count from the likely day that was promised.

    Args:
        title: the job.
        early_days: the day with 1 chance in 10, 0 or less.
        allow_until_days: the day to allow for, 0 or more.
        came_days: the day on which it was back to normal.
        is_inside: whether that lies between the two.
        verdict: the same in a word.
    """

    title: str
    early_days: int
    allow_until_days: int
    came_days: int
    is_inside: bool
    verdict: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DayMark:
    """A number of days that is named on the axis.

    Args:
        days: days after the likely day, below 0 before it.
        words: what stands there.
    """

    days: int
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PromisesPicture:
    """Promised ranges and what happened.

    Args:
        told: the picture in words.
        bars: one for each judged job, the latest first.
        first_days: where the axis begins, days after the likely day, below 0.
        last_days: where it ends.
        marks: days that are named.
        before: what stands at the axis's beginning.
        after: what stands at its end.
    """

    told: Told
    bars: tuple[PromiseBar, ...]
    first_days: int
    last_days: int
    marks: tuple[DayMark, ...]
    before: str
    after: str


def promises_picture(kept: Sequence[Kept], voice: Voice) -> PromisesPicture | None:
    """Lay promised ranges out beside what happened.

    Args:
        kept: finished jobs, oldest first.
        voice: the language and the day of the reader.

    Returns:
        The picture of the latest judged jobs, or None where none can be judged.
    """
    judged = [one for one in reversed(kept) if one.is_judged]
    shown = judged[:_MOST_BARS]
    bars = tuple(bar for one in shown for bar in _bars(one, voice))
    if not bars:
        return None
    step, first, last = _axis(bars)
    return PromisesPicture(
        told=_told(bars, len(judged), voice),
        bars=bars,
        first_days=first,
        last_days=last,
        marks=tuple(DayMark(days=days, words=_signed(days, voice)) for days in range(first, last + 1, step)),
        before=voice.say("picture-promises-sooner"),
        after=voice.say("picture-promises-later"),
    )


def _bars(one: Kept, voice: Voice) -> Iterator[PromiseBar]:
    likely, until = one.promised.likely, one.promised.allow_until
    if likely is None or until is None or one.late_days is None:
        return
    yield PromiseBar(
        title=one.job.title,
        early_days=((one.promised.early or likely) - likely).days,
        allow_until_days=(until - likely).days,
        came_days=one.late_days,
        is_inside=one.is_inside,
        verdict=voice.name("picture-promise", one.outcome),
    )


def _axis(bars: Sequence[PromiseBar]) -> tuple[int, int, int]:
    lowest = min(min(bar.early_days, bar.came_days) for bar in bars)
    highest = max(max(bar.allow_until_days, bar.came_days) for bar in bars)
    for step in _STEPS_DAYS:
        first, last = step * (lowest // step), -step * (-highest // step)
        if (last - first) // step < _MOST_MARKS:
            break
    return step, first, max(last, first + step)


def _signed(days: int, voice: Voice) -> str:
    return voice.say(
        "picture-days-after", days=str(abs(days)), side="after" if days > 0 else "before" if days else "on"
    )


def _told(bars: Sequence[PromiseBar], judged: int, voice: Voice) -> Told:
    inside = sum(bar.is_inside for bar in bars)
    summary = voice.say("picture-promises-summary", count=len(bars), inside=inside)
    caption = [voice.say("picture-promises-bars")]
    if len(bars) < judged:
        caption.append(voice.say("picture-promises-latest", count=len(bars)))
    return Told(
        name="promises",
        title=voice.say("picture-promises-title"),
        description=summary,
        caption=(voice.sentences(caption),),
        key=(
            KeyRow(sign=Sign.PROMISED, words=voice.say("picture-key-promised")),
            KeyRow(sign=Sign.INSIDE, words=voice.say("picture-key-inside")),
            KeyRow(sign=Sign.OUTSIDE, words=voice.say("picture-key-outside")),
        ),
        tables=(
            Table(
                caption=voice.say("picture-promises-days"),
                columns=(
                    voice.say("picture-column-job"),
                    voice.say("picture-column-promised"),
                    voice.say("picture-column-came"),
                    voice.say("picture-column-verdict"),
                ),
                rows=tuple(_row(bar, voice) for bar in bars),
            ),
        ),
    )


def _row(bar: PromiseBar, voice: Voice) -> tuple[str, str, str, str]:
    promised = voice.say(
        "picture-from-to", first=_signed(bar.early_days, voice), last=_signed(bar.allow_until_days, voice)
    )
    return bar.title, promised, _signed(bar.came_days, voice), bar.verdict
