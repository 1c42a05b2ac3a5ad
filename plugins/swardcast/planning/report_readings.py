"""Readings of the course over time, beside the club's own targets."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from swardcast.planning.report_places import Place, in_log
from swardcast.records.course_readings import READINGS, Measured, measured
from swardcast.records.log import Entry, Observation
from swardcast.records.targets import Beside, Target

__all__ = ["ReadingTaken", "Readings", "readings_in"]

_EARLIER_YEARS = 1  # how far back the picture of a reading goes, so that a month's report shows a trend too: judgement


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingTaken:
    """One reading.

    Args:
        on: its day.
        surfaces: ids of the surfaces on which it was taken, or whose mean it is.
        typed: the reading as typed.
        found: the same as a number.
        beside: where it lies beside the club's target; None without one, or where it was read with another meter.
        place: the entry that has it.
    """

    on: date
    surfaces: tuple[str, ...]
    typed: str
    found: Measured
    beside: Beside | None
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Readings:
    """All readings of one name.

    Args:
        name: what was read.
        target: the club's target, or None.
        taken: those of the period, oldest first.
        before: those of the year up to the period's last day that came before the period, oldest first.
    """

    name: str
    target: Target | None
    taken: tuple[ReadingTaken, ...]
    before: tuple[ReadingTaken, ...]

    @property
    def drawn(self) -> tuple[ReadingTaken, ...]:
        """Those that compare as numbers: read with the target's meter, else with that of the newest one."""
        both = (*self.before, *self.taken)
        meter = self.target.meter if self.target is not None else both[-1].found.meter if both else None
        return tuple(one for one in both if one.found.meter is meter)


def readings_in(entries: Iterable[Entry], first: date, last: date, targets: Sequence[Target]) -> tuple[Readings, ...]:
    """Gather the readings of a period.

    Args:
        entries: entries that stand, oldest first.
        first: the period's first day.
        last: its last day.
        targets: the club's targets.

    Returns:
        One for each reading that was taken in the period or in the year up to its end, or has a target.
    """
    seen = [entry for entry in entries if isinstance(entry, Observation)]
    aims = {target.reading: target for target in targets}
    begins = _a_year_before(last)
    found = []
    for name in READINGS:
        taken = [one for entry in seen if (one := _taken(entry, name, aims.get(name))) is not None]
        within = tuple(one for one in taken if first <= one.on <= last)
        before = tuple(one for one in taken if begins < one.on < first)
        if within or before or name in aims:
            found.append(Readings(name=name, target=aims.get(name), taken=within, before=before))
    return tuple(found)


def _a_year_before(day: date) -> date:
    return date(day.year - _EARLIER_YEARS, day.month, min(day.day, 28))


def _taken(entry: Observation, name: str, target: Target | None) -> ReadingTaken | None:
    typed = dict(entry.readings).get(name)
    if typed is None:
        return None
    found = measured(name, typed)
    return ReadingTaken(
        on=entry.head.true_from.date(),
        surfaces=entry.surfaces,
        typed=typed,
        found=found,
        beside=target.beside(found) if target is not None else None,
        place=in_log(entry.head),
    )
