"""Days that notices tell, followed from one bulletin to the next: a day that moves has to be told."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from datetime import date, timedelta

from swardcast.compose import Bulletin
from swardcast.moments import MONTHS

__all__ = ["Followed", "Silent"]

Key = tuple[str, str]
"""The notice's id, and the name of what has the days."""
Silent = tuple[date, Key, list[date], list[date]]
"""The day on which a bulletin had other days than were told, what has them, the days as told, the days that it had."""

_NAMED_DAY = re.compile(
    rf"(?:by|until|from|between|and|for) (?:\w+day )?(\d{{1,2}}) ({'|'.join(MONTHS)})\b(?: (\d{{4}}))?"
)
_NORMAL = "back to normal"
_MOST_WORKING_DAYS = 2
"""A day of a surface that moves by as many is told (`outlook/moved_surfaces.py`); the date of back to normal never moves untold."""


def _days_said(bulletin: Bulletin) -> Iterator[tuple[Key, list[date]]]:
    """The days of each notice on which surfaces open again, their work is finished, or all is back to normal."""
    for notice in bulletin.notices:
        rows = [(fact.name, fact.value) for section in notice.sections for fact in section.facts]
        for name, value in (*rows, (_NORMAL, notice.normal)):
            said, words = (" ".join(text.split()) for text in (name.lower(), value))
            if said.startswith(("open again", "work finished")) or name == _NORMAL:
                found = _NAMED_DAY.findall(words)
                days = [_day(day, month, year, bulletin.as_of.year) for day, month, year in found]
                if len(days) == 1 and ", or the day after" in words:
                    days.append(days[0] + timedelta(days=1))
                if name == _NORMAL:
                    days = days[-2:]  # of several places the last one's
                if len(days) == 2:
                    yield (notice.id, said), days


def _day(day: str, month: str, year: str, reader: int) -> date:
    return date(int(year or reader), MONTHS.index(month) + 1, int(day))


def _working_days_apart(one: date, other: date) -> int:
    first, last = sorted((one, other))
    return sum((first + timedelta(days=n)).weekday() < 5 for n in range(1, (last - first).days + 1))


@dataclass
class Followed:
    """Follows the days from bulletin to bulletin: those told hold until an item that comes by the next bulletin."""

    compared: int = 0
    _told: dict[Key, list[date]] = field(default_factory=dict)
    _revisions: dict[str, int] = field(default_factory=dict)
    _last: Bulletin | None = None

    def take(self, bulletin: Bulletin) -> list[Silent]:
        """What the bulletin before this one said otherwise than told, and this one has no news of either."""
        last, self._last = self._last, bulletin
        return [] if last is None else list(self._silent(last, bulletin))

    def take_all(self, bulletins: Iterable[Bulletin]) -> list[Silent]:
        """The same of many, in their order, with the last one's own."""
        found = [silent for bulletin in bulletins for silent in self.take(bulletin)]
        return found if self._last is None else [*found, *self._silent(self._last, self._last)]

    def _silent(self, last: Bulletin, now: Bulletin) -> Iterator[Silent]:
        day = last.as_of.date()
        fresh = {item.notice_id for item in now.items if item.at > last.as_of}
        revisions = {notice.id: notice.revision for notice in last.notices}
        for key, days in _days_said(last):
            name = key[0]
            if key in self._told and self._revisions.get(name) == revisions[name] and name not in fresh:
                self.compared += 1
                told = self._told[key]
                if told != days and (
                    key[1] == _NORMAL or max(map(_working_days_apart, told, days)) >= _MOST_WORKING_DAYS
                ):
                    yield day, key, told, days
            else:
                self._told[key] = days
        self._revisions |= revisions
