"""Days on which a job cannot begin, each with its reason."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime, time, timedelta
from enum import Enum
from typing import Final

from swardcast.outlook.daylight import daylight
from swardcast.outlook.working_days import finishing_days
from swardcast.planning.public_holidays import public_holidays
from swardcast.records.club import Club
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from swardcast.records.operations import Kind
from swardcast.records.plan import Job
from swardcast.records.planning import Planning

__all__ = ["Because", "Blocked", "WorkCalendar", "days_of_work", "is_weekday_off", "work_calendar"]


class Because(Enum):
    """Why no work is done on a day, or none can begin."""

    WEEKDAY = "not a working day"
    HOLIDAY = "public holiday"
    CLUB = "blocked by the club"
    FIXTURE = "fixture"
    DAYLIGHT = "too little daylight"
    CONTRACTOR = "not a day of the contractor"


_DAYS_OFF: Final = {Because.WEEKDAY, Because.HOLIDAY, Because.CLUB}


@dataclass(frozen=True, slots=True, kw_only=True)
class Blocked:
    """One reason why a job cannot begin on a day.

    Args:
        because: the sort of reason.
        day: the day that is in the way: the first one itself, or a later one that the work would run into.
        words: name of the holiday or of the fixture, or the club's own words; "" where there are none.
        kind: the work that waits for a contractor, or None.
        runs_into: whether it is a later day.
    """

    because: Because
    day: date
    words: str = ""
    kind: Kind | None = None
    runs_into: bool = False


def is_weekday_off(reasons: Sequence[Blocked]) -> bool:
    """Tell whether a day is out since the club never works on its weekday, whatever else speaks against it.

    Args:
        reasons: why it is out.

    Returns:
        True for a weekday off.
    """
    return any(reason.because is Because.WEEKDAY for reason in reasons)


def days_of_work(job: Job, starts: date, working_days: Sequence[int]) -> tuple[date, ...]:
    """Name the days on which a job is worked on, as its notice lays it out.

    Args:
        job: the job.
        starts: its first day.
        working_days: the club's working weekdays.

    Returns:
        Working days from the first one on.
    """
    finishes = finishing_days(starts, len(job.surfaces), a_day=job.surfaces_a_day, weekdays=working_days)
    span = (finishes[-1] - starts).days
    days = (starts + timedelta(days=place) for place in range(span + 1))
    return tuple(day for day in days if day.weekday() in working_days)


@dataclass(slots=True, kw_only=True)
class WorkCalendar:
    """When a club works.

    Args:
        club: the club.
        planning: what it keeps to itself.
        fixtures: its fixtures.
        holidays: public holidays by day.
    """

    club: Club
    planning: Planning
    fixtures: Sequence[Fixture]
    holidays: Mapping[date, str]
    _known: dict[date, tuple[Blocked, ...]] = field(default_factory=dict, init=False)

    def no_work(self, day: date) -> tuple[Blocked, ...]:
        """Tell why nobody works on a day.

        Args:
            day: the day.

        Returns:
            Reasons; nothing on a day of work.
        """
        if day not in self._known:
            self._known[day] = tuple(self._reasons(day))
        return self._known[day]

    def is_worked(self, day: date) -> bool:
        """Tell whether the club works on a day, whatever is played on it and however short it is.

        Args:
            day: the day.

        Returns:
            False on weekdays off, public holidays that it keeps and days that it blocked.
        """
        return not any(reason.because in _DAYS_OFF for reason in self.no_work(day))

    def blocked(self, job: Job, starts: date) -> tuple[Blocked, ...]:
        """Tell why a job cannot begin on a day.

        Args:
            job: the job.
            starts: the day.

        Returns:
            Reasons of the day itself, else those of later days that the work would run into; nothing where it can.
        """
        here = (*self.no_work(starts), *self._no_contractor(job, starts))
        if here:
            return here
        later = days_of_work(job, starts, self.club.working_days)[1:]
        return tuple(replace(reason, runs_into=True) for day in later for reason in self.no_work(day))

    def _reasons(self, day: date) -> Iterator[Blocked]:
        without = self.planning.days_without_work
        if day.weekday() not in self.club.working_days:
            yield Blocked(because=Because.WEEKDAY, day=day)
        if day in self.holidays:
            yield Blocked(because=Because.HOLIDAY, day=day, words=self.holidays[day])
        for one in without.blocked:
            if one.span.holds(day):
                yield Blocked(because=Because.CLUB, day=day, words=one.why)
        if not without.works_on_fixtures:
            for fixture in self.fixtures:
                if fixture.first_day <= day <= fixture.last_day and self._meets_work(fixture, day):
                    yield Blocked(because=Because.FIXTURE, day=day, words=fixture.name)
        if without.least_daylight_h is not None and self._daylight_h(day) < without.least_daylight_h:
            yield Blocked(because=Because.DAYLIGHT, day=day)

    def _meets_work(self, fixture: Fixture, day: date) -> bool:
        """Whether a fixture is on in working hours: an evening's match keeps nobody from the morning's work."""
        zone, hours = self.club.time_zone, self.club.working_hours
        begins = datetime.combine(day, hours.begins, tzinfo=zone)
        ends = datetime.combine(day, hours.ends, tzinfo=zone)
        midnight = datetime.combine(day + timedelta(days=1), time(), tzinfo=zone)
        on_from = fixture.starts_at or datetime.combine(day, time(), tzinfo=zone)
        on_until = fixture.ends_at or midnight
        return on_from.timestamp() < ends.timestamp() and on_until.timestamp() > begins.timestamp()

    def _daylight_h(self, day: date) -> float:
        light = daylight(self.club, day)
        return 0.0 if light is None else (light[1].timestamp() - light[0].timestamp()) / 3600

    def _no_contractor(self, job: Job, starts: date) -> Iterator[Blocked]:
        told = self.planning.days_without_work.contractor
        for kind in dict.fromkeys(operation.kind for operation in job.operations):
            mine = [one for one in told if not one.kinds or kind in one.kinds]
            if mine and not any(span.holds(starts) for one in mine for span in one.spans):
                yield Blocked(because=Because.CONTRACTOR, day=starts, kind=kind)


def work_calendar(records: ClubRecords, first: date, last: date) -> WorkCalendar:
    """Lay out when a club works.

    Args:
        records: the club's records.
        first: the first day asked about.
        last: the last one; work that begins then may run into the year after.

    Returns:
        Its calendar.
    """
    code = records.planning.days_without_work.public_holidays
    return WorkCalendar(
        club=records.club,
        planning=records.planning,
        fixtures=records.fixtures,
        holidays=public_holidays(code, first, last.replace(year=last.year + 1, day=1)),
    )
