"""What every picture has: a name, its words, a key of its signs, and the same facts as tables."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from enum import Enum
from typing import Final

from swardcast.language.voice import Voice
from swardcast.records.fixtures import Fixture

__all__ = [
    "LETTERS_ON_AXIS",
    "AsOf",
    "FixtureMark",
    "KeyRow",
    "Sign",
    "Table",
    "Tick",
    "Told",
    "as_of_mark",
    "day_ticks",
    "numbered",
]

LETTERS_ON_AXIS: Final = 33
"""Letters that fit beside each other along the axis of a picture, in a wide font."""

_STEPS_DAYS: Final = (1, 2, 4, 7, 14, 28, 56, 91, 182, 365)


class Sign(Enum):
    """A sign in a picture; each has a shape of its own."""

    SEEN = "seen"
    SEEN_ELSEWHERE = "seen where less was left"
    WORK = "days of work"
    WAITING = "between days of work"
    CAME = "was back to normal"
    NORMAL = "back to normal"
    PROMISED = "promised range"
    FIXTURE = "fixture"
    GREW = "grew"
    NOT_RECORDED = "not recorded"
    EXPECTED = "expected"
    USUAL = "usual year"
    INSIDE = "inside the range"
    OUTSIDE = "outside the range"
    HEALING = "healing"
    ALLOWANCE = "until the day to allow for"
    CHOICE = "a choice of work"
    AS_PLANNED = "the choice that is planned"
    BEST_DAY = "the best first day"
    NO_WORK = "no work can begin"
    AIM = "what is aimed at"


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyRow:
    """A line of the key below a picture.

    Args:
        sign: the sign.
        number: the number beside it in the picture, or "".
        words: what it stands for.
    """

    sign: Sign
    words: str
    number: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """Facts of a picture in figures.

    Args:
        caption: what they are.
        columns: headings.
        rows: cells in words, as many as headings; the first one names the row.
    """

    caption: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """A picture in words.

    Args:
        name: its name among the pictures of a page, for ids and addresses: small letters and hyphens.
        title: its title.
        description: what it shows, for those who cannot see it.
        caption: paragraphs below it.
        key: its signs.
        tables: every fact of it.
    """

    name: str
    title: str
    description: str
    caption: tuple[str, ...]
    key: tuple[KeyRow, ...]
    tables: tuple[Table, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Tick:
    """A day of an axis.

    Args:
        day: the day.
        words: what stands there.
    """

    day: date
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FixtureMark:
    """A competition or visitors' day on the axis.

    Args:
        number: its number in the key.
        first_day: its first day.
        last_day: its last day.
    """

    number: str
    first_day: date
    last_day: date


@dataclass(frozen=True, slots=True, kw_only=True)
class AsOf:
    """The day up to which the weather is known.

    Args:
        day: the first day that is not over.
        words: what stands beside the line.
    """

    day: date
    words: str


def numbered(fixtures: Iterable[Fixture]) -> tuple[FixtureMark, ...]:
    """Number fixtures for the axis of a picture and its key.

    Args:
        fixtures: competitions and visitors' days in the order of the key.

    Returns:
        A mark for each, from "1" on.
    """
    return tuple(
        FixtureMark(number=str(number), first_day=one.first_day, last_day=one.last_day)
        for number, one in enumerate(fixtures, start=1)
    )


def as_of_mark(first: date, last: date, voice: Voice) -> AsOf | None:
    """Mark the day of the reader where an axis has it.

    Args:
        first: the axis's first day.
        last: its last.
        voice: the language and the day of the reader.

    Returns:
        The mark, or None.
    """
    if not first <= voice.near <= last:
        return None
    return AsOf(day=voice.near, words=voice.say("picture-as-of", day=voice.tick_day(voice.near)))


def day_ticks(first: date, last: date, voice: Voice) -> tuple[Tick, ...]:
    """Choose the days that are named on an axis: as many as fit on a small telephone.

    Args:
        first: the axis's first day.
        last: its last.
        voice: the language and the day of the reader.

    Returns:
        Days at even steps from the first one on.
    """
    days = (last - first).days
    for step in _STEPS_DAYS:
        ticks = [Tick(day=day, words=voice.tick_day(day)) for day in _stepped(first, days, step)]
        widest = max(len(tick.words) for tick in ticks) + 1
        if widest * days <= LETTERS_ON_AXIS * step:
            break
    return tuple(ticks)


def _stepped(first: date, days: int, step: int) -> Iterator[date]:
    for place in range(0, days + 1, step):
        yield first + timedelta(days=place)
