"""The clock of the work: it runs in working hours by daylight, and stands still in breaks, at night and at weekends."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta
from typing import Final

from swardcast.outlook.daylight import daylight
from swardcast.records.club import Club, without_breaks

__all__ = ["WorkingClock"]

_A_MINUTE: Final = timedelta(minutes=1)
_A_DAY: Final = timedelta(days=1)
_ROUNDING: Final = timedelta(seconds=1)  # a sum of fractions may end a hair after the day's end

Span = tuple[datetime, datetime]


@dataclass(slots=True)
class WorkingClock:
    """Counts working time at a club.

    Moments are counted in UTC, so that a day on which the clocks change is as long as it is.

    Args:
        club: its working days and hours, breaks, place and time zone.
        worked_on: days on which the log shows work though they are no working days; they count like those.
    """

    club: Club
    worked_on: frozenset[date] = frozenset()
    _known: dict[date, tuple[Span, ...]] = field(default_factory=dict)

    @property
    def day_minutes(self) -> float:
        """Length of a working day without its breaks, in a season of long days; minutes, above 0."""
        left = without_breaks(self.club.working_hours, self.club.breaks)
        return float(sum((s.ends.hour - s.begins.hour) * 60 + s.ends.minute - s.begins.minute for s in left))

    def minutes(self, begins: datetime, ends: datetime) -> float:
        """Count the working time between two moments.

        Args:
            begins: aware.
            ends: aware; before `begins` it counts as the same moment.

        Returns:
            Minutes, 0 or more.
        """
        first, last = begins.astimezone(UTC), ends.astimezone(UTC)
        total = timedelta()
        day, end_day = self._local(begins).date(), self._local(ends).date()
        while day <= end_day:
            for start, end in self._spans(day):
                total += max(timedelta(), min(end, last) - max(start, first))
            day += _A_DAY
        return total / _A_MINUTE

    def after(self, begins: datetime, minutes: float) -> datetime:
        """Name the moment at which a working time is over.

        Args:
            begins: aware.
            minutes: working time, 0 or more; 0 is the first working moment from `begins` on.

        Returns:
            A moment in working hours, in UTC.
        """
        left = timedelta(minutes=minutes)
        for start, end in self._spans_from(begins.astimezone(UTC)):
            if left <= end - start + _ROUNDING:
                return min(start + left, end)
            left -= end - start
        raise AssertionError  # every club has a working day each week

    def day_begins(self, moment: datetime) -> datetime:
        """Name the beginning of the working day that a moment lies in, or of the next one once it is over.

        Args:
            moment: aware.

        Returns:
            A moment in UTC, perhaps later than `moment`.
        """
        day, now = self._local(moment).date(), moment.astimezone(UTC)
        while not (spans := self._spans(day)) or spans[-1][1] < now:
            day += _A_DAY
        return spans[0][0]

    def _local(self, moment: datetime) -> datetime:
        return moment.astimezone(self.club.time_zone)

    def _spans_from(self, begins: datetime) -> Iterator[Span]:
        day = self._local(begins).date()
        while True:
            for start, end in self._spans(day):
                if end >= begins:
                    yield max(start, begins), end
            day += _A_DAY

    def _spans(self, day: date) -> tuple[Span, ...]:
        if day.weekday() not in self.club.working_days and day not in self.worked_on:
            return ()
        if day not in self._known:
            self._known[day] = self._spans_of_a_working_day(day)
        return self._known[day]

    def _spans_of_a_working_day(self, day: date) -> tuple[Span, ...]:
        zone = self.club.time_zone
        hours = [
            tuple(datetime.combine(day, at, tzinfo=zone).astimezone(UTC) for at in (span.begins, span.ends))
            for span in without_breaks(self.club.working_hours, self.club.breaks)
        ]
        light = daylight(self.club, day)
        # Hours that lie wholly in the dark are worked under lamps: judgement.
        sunrise, sunset = (one.astimezone(UTC) for one in light or hours[0])
        lit = tuple((max(begins, sunrise), min(ends, sunset)) for begins, ends in hours)
        return tuple(span for span in lit if span[0] < span[1]) or tuple((begins, ends) for begins, ends in hours)
