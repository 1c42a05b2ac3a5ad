"""Readings of the course over time, ready to be drawn: a dot for each, and the club's own target."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from statistics import fmean
from typing import Final

from swardcast.language.measures import System, length, roll, system_of
from swardcast.language.voice import Voice, capital
from swardcast.notices.pictures import KeyRow, Sign, Table, Tick, Told, day_ticks
from swardcast.planning.axis_marks import AxisMark, marks_around
from swardcast.planning.report_readings import Readings, ReadingTaken
from swardcast.quantities import LENGTH_MM
from swardcast.records.course_readings import Meter
from swardcast.records.targets import Target

__all__ = ["ReadingDot", "ReadingsPicture", "reading_name", "readings_picture"]

_FEWEST: Final = 2  # of which a picture tells more than a table
_INCH: Final = LENGTH_MM["in"]
_STEPS: Final = {
    Meter.SHARE: (0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2),
    Meter.ROLL: tuple(inches * _INCH for inches in (1, 2, 3, 6, 12, 24, 48)),
    Meter.HAMMER: (1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0),
}
_STEPS_OF_LENGTH: Final = {
    System.METRIC: (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0),
    System.CUSTOMARY: tuple(_INCH / parts for parts in (64, 32, 16, 8, 4, 2, 1)),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingDot:
    """A reading.

    Args:
        on: its day.
        value: the reading in its meter's unit.
    """

    on: date
    value: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingsPicture:
    """Readings of one name over time.

    Args:
        told: the picture in words.
        dots: the readings, oldest first.
        means: the mean of each day that has one, oldest first; a reading of several surfaces counts for each of them.
        first: where the axis of days begins.
        last: where it ends.
        ticks: days that are named.
        marks: values that are named, from the lowest end of the axis to the highest.
        least: the lower end of the club's target, or None.
        most: the upper end, or None.
        period_from: the period's first day, or None where it is not inside the axis.
    """

    told: Told
    dots: tuple[ReadingDot, ...]
    means: tuple[ReadingDot, ...]
    first: date
    last: date
    ticks: tuple[Tick, ...]
    marks: tuple[AxisMark, ...]
    least: float | None
    most: float | None
    period_from: date | None


def reading_name(name: str, voice: Voice) -> str:
    """Name a reading as inside a sentence.

    Args:
        name: its name in the records.
        voice: the language.

    Returns:
        The name.
    """
    return voice.say(f"reading-{name.replace(' ', '-')}")


def readings_picture(readings: Readings, period_from: date, voice: Voice) -> ReadingsPicture | None:
    """Lay readings out over time.

    Args:
        readings: all of one name.
        period_from: the first day of the report's period.
        voice: the language and the day of the report.

    Returns:
        The picture, or None where fewer than two compare, or all of them are of one day.
    """
    drawn = readings.drawn
    days = sorted({one.on for one in drawn})
    if len(drawn) < _FEWEST or len(days) < _FEWEST:
        return None
    first, last, target = days[0], days[-1], readings.target
    begins = period_from if first < period_from <= last else None
    return ReadingsPicture(
        told=_told(readings, drawn, voice, has_begin=begins is not None),
        dots=tuple(ReadingDot(on=one.on, value=one.found.value) for one in drawn),
        means=tuple(_mean_of(day, drawn) for day in days),
        first=first,
        last=last,
        ticks=day_ticks(first, last, voice),
        marks=_marks(drawn, target, voice),
        least=target.least if target is not None else None,
        most=target.most if target is not None else None,
        period_from=begins,
    )


def _mean_of(day: date, drawn: Sequence[ReadingTaken]) -> ReadingDot:
    """The mean over the surfaces read on a day: one that stands for eleven greens weighs eleven times that of one."""
    read = [one for one in drawn if one.on == day]
    return ReadingDot(on=day, value=fmean((one.found.value for one in read), [len(one.surfaces) for one in read]))


def _marks(drawn: Sequence[ReadingTaken], target: Target | None, voice: Voice) -> tuple[AxisMark, ...]:
    values = [one.found.value for one in drawn]
    if target is not None:
        values += [end for end in (target.least, target.most) if end is not None]
    meter = drawn[0].found.meter
    steps = _STEPS_OF_LENGTH[system_of(voice)] if meter is Meter.LENGTH else _STEPS[meter]
    return tuple(AxisMark(value=value, words=_value(value, meter, voice)) for value in marks_around(values, steps))


def _value(value: float, meter: Meter, voice: Voice) -> str:
    match meter:
        case Meter.SHARE:
            return voice.say("percent", number=voice.figure(round(100 * value, 6)))
        case Meter.ROLL:
            return roll(value, voice)
        case Meter.LENGTH:
            return length(round(value, 6), voice)
        case Meter.HAMMER:
            return voice.figure(value)


def _told(readings: Readings, drawn: Sequence[ReadingTaken], voice: Voice, *, has_begin: bool) -> Told:
    name, target = reading_name(readings.name, voice), readings.target
    lowest, highest = (edge(drawn, key=lambda one: one.found.value) for edge in (min, max))
    summary = voice.say(
        "report-picture-summary",
        name=name,
        count=voice.number(len(drawn)),
        first=voice.short_day(drawn[0].on),
        last=voice.short_day(drawn[-1].on),
        low=lowest.typed,
        high=highest.typed,
    )
    caption = [voice.say("report-picture-line")]
    key = [KeyRow(sign=Sign.SEEN, words=voice.say("report-picture-key-reading"))]
    if target is not None and target.least is not None and target.most is not None:
        key.append(KeyRow(sign=Sign.AIM, words=voice.say("report-picture-key-target", target=target.typed)))
    elif target is not None:
        caption.append(voice.say("report-picture-target-end", target=target.typed))
    if has_begin:
        caption.append(voice.say("report-picture-period"))
    return Told(
        name=f"reading-{readings.name.replace(' ', '-')}",
        title=voice.say("report-picture-title", name=capital(name)),
        description=summary,
        caption=(voice.sentences(caption),),
        key=tuple(key),
        tables=(
            Table(
                caption=voice.say("report-picture-title", name=capital(name)),
                columns=(voice.say("report-column-day"), voice.say("report-column-reading")),
                rows=tuple((voice.short_day(one.on), one.typed) for one in drawn),
            ),
        ),
    )
