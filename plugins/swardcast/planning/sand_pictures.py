"""The store over a period, and a year's sand beside amounts in print, ready to be drawn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import Final

from swardcast.language.measures import layer, length, sand_mass
from swardcast.language.voice import Voice
from swardcast.notices.pictures import AsOf, KeyRow, Sign, Table, Tick, Told, as_of_mark, day_ticks
from swardcast.planning.axis_marks import AxisMark, even_marks
from swardcast.planning.published_sand import PUBLISHED, layers_mm
from swardcast.planning.sand_balance import SandBalance, StoreWhat
from swardcast.planning.sand_words import in_tonnes, layers_in_words, there_in_tonnes
from swardcast.planning.sand_year import SandYear

__all__ = ["PrintPicture", "PrintRow", "StorePicture", "print_picture", "store_picture"]

_STEPS_T: Final = (1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0)
_STEPS_MM: Final = (1.0, 2.0, 5.0, 10.0, 20.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class StorePicture:
    """What lies in the store, day by day; masses in the unit of the language.

    Args:
        told: the picture in words.
        first: the first day.
        last: the last day.
        steps: from which day on how much lies there, the first first.
        counts: days and masses of counts.
        deliveries: days of deliveries, and what lies there after them.
        levels: named lines: the room, and what is kept back.
        masses: marks up the side.
        ticks: days along the bottom.
        as_of: the day of the reader, or None.
        axis_words: what the side counts.
    """

    told: Told
    first: date
    last: date
    steps: tuple[tuple[date, float], ...]
    counts: tuple[tuple[date, float], ...]
    deliveries: tuple[tuple[date, float], ...]
    levels: tuple[AxisMark, ...]
    masses: tuple[AxisMark, ...]
    ticks: tuple[Tick, ...]
    as_of: AsOf | None
    axis_words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintRow:
    """An amount in print.

    Args:
        words: what it is.
        low_mm: the lower end of it as a layer.
        high_mm: the upper end, or the same.
    """

    words: str
    low_mm: float
    high_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintPicture:
    """A year's sand beside amounts in print.

    Args:
        told: the picture in words.
        rows: amounts in print.
        here_mm: layer on the club's greens, or None.
        layers: marks along the bottom.
        here_words: what stands beside the line of the club's greens.
    """

    told: Told
    rows: tuple[PrintRow, ...]
    here_mm: float | None
    layers: tuple[AxisMark, ...]
    here_words: str


def store_picture(year: SandYear, voice: Voice) -> StorePicture | None:
    """Lay out what lies in the store.

    Args:
        year: the sand of a period.
        voice: the language and the day of the reader.

    Returns:
        The picture, or None where nobody counted the store.
    """
    balance = year.balance
    if balance is None:
        return None
    first = max(year.first, balance.since)
    steps = tuple((day, in_tonnes(mass, voice)) for day, mass in _steps(balance, first))
    masses = [mass for _, mass in steps]
    levels = tuple(_levels(balance, voice))
    marks = even_marks(max([*masses, *(level.value for level in levels)]), _STEPS_T)
    below = [-mark for mark in even_marks(-min(masses), (marks[1],))[1:]] if min(masses) < 0 else []
    return StorePicture(
        told=_store_told(balance, first, year.last, voice),
        first=first,
        last=year.last,
        steps=steps,
        counts=_marked(balance, StoreWhat.COUNTED, voice),
        deliveries=_marked(balance, StoreWhat.DELIVERED, voice),
        levels=levels,
        masses=tuple(AxisMark(value=mark, words=voice.number(mark)) for mark in (*reversed(below), *marks)),
        ticks=day_ticks(first, year.last, voice),
        as_of=as_of_mark(first, year.last, voice),
        axis_words=voice.say("sand-picture-axis", unit=voice.say("sand-unit")),
    )


def _steps(balance: SandBalance, first: date) -> Iterator[tuple[date, float]]:
    if not balance.lines or balance.lines[0].day > first:
        yield first, balance.opening_t
    yield from ((line.day, line.after_t) for line in balance.lines)


def _levels(balance: SandBalance, voice: Voice) -> Iterator[AxisMark]:
    if balance.room_t is not None:
        yield AxisMark(value=in_tonnes(balance.room_t, voice), words=voice.say("sand-picture-room"))
    if balance.least_t:
        yield AxisMark(value=in_tonnes(balance.least_t, voice), words=voice.say("sand-picture-least"))


def _marked(balance: SandBalance, what: StoreWhat, voice: Voice) -> tuple[tuple[date, float], ...]:
    return tuple((line.day, in_tonnes(line.after_t, voice)) for line in balance.lines if line.what is what)


def _store_told(balance: SandBalance, first: date, last: date, voice: Voice) -> Told:
    there = [mass for _, mass in _steps(balance, first)]
    least, most = min(there), max(there)
    phrase = "sand-picture-store-summary" if least >= 0 else "sand-picture-store-short"
    summary = voice.say(
        phrase,
        first=voice.short_day(first),
        last=voice.short_day(last),
        least=sand_mass(abs(least), voice),
        most=sand_mass(max(0.0, most), voice),
    )
    rows = tuple((voice.short_day(day), there_in_tonnes(mass, voice)) for day, mass in _steps(balance, first))
    return Told(
        name="sand-store",
        title=voice.say("sand-picture-store"),
        description=summary,
        caption=(voice.sentences([summary, voice.say("sand-picture-store-line")]),),
        key=(
            KeyRow(sign=Sign.SEEN, words=voice.say("sand-picture-count")),
            KeyRow(sign=Sign.INSIDE, words=voice.say("sand-picture-delivery")),
        ),
        tables=(
            Table(
                caption=voice.say("sand-table-store", unit=voice.say("sand-unit")),
                columns=(voice.say("sand-column-day"), voice.say("sand-column-there")),
                rows=rows,
            ),
        ),
    )


def print_picture(year: SandYear, voice: Voice) -> PrintPicture:
    """Lay out a year's sand on greens beside amounts in print, on one axis.

    Args:
        year: the sand of a period.
        voice: the language.

    Returns:
        The picture; it judges nothing.
    """
    rows = tuple(_print_rows(year, voice))
    here = year.greens.depth_mm
    marks = even_marks(max([*(row.high_mm for row in rows), here or 0.0]), _STEPS_MM)
    return PrintPicture(
        told=_print_told(rows, here, voice),
        rows=rows,
        here_mm=here,
        layers=tuple(AxisMark(value=mark, words=length(mark, voice)) for mark in marks),
        here_words="" if here is None else layer(here, voice),
    )


def _print_rows(year: SandYear, voice: Voice) -> Iterator[PrintRow]:
    for one in PUBLISHED:
        ends = layers_mm(one, density_t_per_m3=year.density_t_per_m3, greens_m2=year.course_m2)
        if ends is not None:
            words = voice.say(f"published-sand-{one.name}")
            yield PrintRow(words=words, low_mm=ends[0], high_mm=ends[1])


def _print_told(rows: tuple[PrintRow, ...], here_mm: float | None, voice: Voice) -> Told:
    low = layer(min(row.low_mm for row in rows), voice)
    high = layer(max(row.high_mm for row in rows), voice)
    if here_mm is None:
        summary = voice.say("sand-picture-published-no-area", low=low, high=high)
    else:
        summary = voice.say("sand-picture-published-summary", layer=layer(here_mm, voice), low=low, high=high)
    cells = [(row.words, layers_in_words((row.low_mm, row.high_mm), voice)) for row in rows]
    if here_mm is not None:
        cells.insert(0, (voice.say("sand-these-greens"), layer(here_mm, voice)))
    return Told(
        name="sand-in-print",
        title=voice.say("sand-picture-published"),
        description=summary,
        caption=(voice.sentences([summary, voice.say("sand-picture-published-reads")]),),
        key=(
            KeyRow(sign=Sign.HEALING, words=voice.say("sand-picture-range")),
            KeyRow(sign=Sign.SEEN, words=voice.say("sand-picture-one")),
        ),
        tables=(
            Table(
                caption=voice.say("sand-table-published"),
                columns=(voice.say("sand-column-what"), voice.say("sand-column-layer")),
                rows=tuple(cells),
            ),
        ),
    )
