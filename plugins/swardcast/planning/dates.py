"""When to do a job: every possible first day, the best times, and what the weather of past years says of them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from swardcast.outlook.states import Milestone, RestsOn
from swardcast.outlook.weather_book import WeatherBook
from swardcast.outlook.weather_view import WeatherView
from swardcast.planning.blocked_days import WorkCalendar, work_calendar
from swardcast.planning.other_work import planned_work, within
from swardcast.planning.start_days import StartDay, start_days
from swardcast.planning.weather_chances import PastWork, WeatherChances
from swardcast.planning.weights import named_of
from swardcast.planning.windows import Window, best_windows
from swardcast.records.club import Surface
from swardcast.records.folder import ClubRecords
from swardcast.records.importance import NamedFixtures
from swardcast.records.plan import Job

__all__ = ["Asked", "BestTime", "Dates", "find_dates", "not_found"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What is asked.

    Args:
        job: the job, with its operations, surfaces and pace; its own first day does not count.
        name: what it is called.
        first: the first day on which it might begin.
        last: the last one.
        until: what ends the disturbance: settled, holes closed or back to normal.
        most: how many of the best times are told.
        instead_of: id of the planned job in whose place it stands, or "".
        planned_for: the first day of that job, as planned or as moved by the log; None without one.
    """

    job: Job
    name: str
    first: date
    last: date
    until: Milestone = Milestone.BACK_TO_NORMAL
    most: int = 5
    instead_of: str = ""
    planned_for: date | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class BestTime:
    """One of the best times.

    Args:
        window: its first days.
        growth: growth of a day there, as a share of the best there is, from the best day to the likely end; None where
            it is not known.
        days_longer: expected days of disturbance more than on the shortest first day of all, 0 or more.
        same_days: other work of the plan that falls into the days of the work from the best first day.
    """

    window: Window
    growth: float | None
    days_longer: float
    same_days: tuple[Job, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Dates:
    """When to do a job.

    Args:
        as_of: the moment, local.
        asked: what was asked.
        surfaces: the surfaces, in the order of the work.
        days: every day asked about, the earliest first.
        best: the best times, that of the best day first.
        chances: what the past years say of each possible first day; nothing where they tell neither rain nor frost.
        past_years: past years of temperatures that the dates rest on, 0 without a history.
        forecast_until: the last day that a forecast reaches, or None.
        not_found: names of fixtures that are to count more, or less, and that no fixture has.
    """

    as_of: datetime
    asked: Asked
    surfaces: tuple[Surface, ...]
    days: tuple[StartDay, ...]
    best: tuple[BestTime, ...]
    chances: Mapping[date, WeatherChances]
    past_years: int
    forecast_until: date | None
    not_found: tuple[NamedFixtures, ...]

    @property
    def possible(self) -> tuple[StartDay, ...]:
        """The days on which the job can begin."""
        return tuple(day for day in self.days if day.is_possible)

    @property
    def end_rests_on(self) -> RestsOn:
        """What the ends of the work are: those of a sum have chances."""
        ends = (day.ends for day in self.days if day.ends is not None and day.ends.is_given)
        return next((end.rests_on for end in ends), RestsOn.SUM)

    def rests_on_forecast(self, day: StartDay) -> bool:
        """Whether a forecast reaches a first day."""
        return self.forecast_until is not None and day.day <= self.forecast_until


def find_dates(records: ClubRecords, as_of: datetime, book: WeatherBook, asked: Asked) -> Dates:
    """Work out when to do a job.

    Args:
        records: the club's records, with what it keeps to itself.
        as_of: the moment, aware; no day asked about lies before its day.
        book: the club's weather.
        asked: what is asked.

    Returns:
        Every day with its cost, and the best times.
    """
    span = (asked.last - asked.first).days
    run = [asked.first + timedelta(days=place) for place in range(span + 1)]
    days = start_days(records, as_of, book, asked.job, run, until=asked.until, instead_of=asked.instead_of)
    view = book.at(as_of)
    shortest = min((day.cost.days for day in days if day.cost is not None), default=0.0)
    surfaces = tuple(records.surfaces[name] for name in asked.job.surfaces)
    calendar = work_calendar(records, asked.first, asked.last)
    local = as_of.astimezone(records.club.time_zone)
    others = [one for one in planned_work(records, as_of) if one.job.id != asked.instead_of]
    reached = [day for one in records.weather.forecasts if one.issued_at <= as_of for day in one.tmean_c]
    return Dates(
        as_of=local,
        asked=asked,
        surfaces=surfaces,
        days=days,
        best=tuple(
            BestTime(
                window=window,
                growth=_growth(window.best, surfaces, view),
                days_longer=window.best.cost.days - shortest if window.best.cost is not None else 0.0,
                same_days=within(others, [(window.best.day, window.best.work_days[-1])]),
            )
            for window in best_windows(days, asked.most)
        ),
        chances=_chances(records, days, calendar, before=local.year),
        past_years=view.past_years if view is not None else 0,
        forecast_until=max(reached, default=None) if view is not None and view.issued_at is not None else None,
        not_found=not_found(records),
    )


def not_found(records: ClubRecords) -> tuple[NamedFixtures, ...]:
    """List the names that are to count more, or less, and that no fixture has.

    Args:
        records: the club's records.

    Returns:
        Names with their weights.
    """
    named = records.planning.importance.named
    return tuple(one for one in named if not any(named_of(fixture, one) for fixture in records.fixtures))


def _growth(day: StartDay, surfaces: tuple[Surface, ...], view: WeatherView | None) -> float | None:
    grass = next((surface.grass for surface in surfaces if surface.grass is not None), None)
    if view is None or grass is None or day.ends is None or day.ends.likely is None or day.ends.likely <= day.day:
        return None
    return view.growth_between(day.day, day.ends.likely, grass) / (day.ends.likely - day.day).days


def _chances(
    records: ClubRecords, days: tuple[StartDay, ...], calendar: WorkCalendar, *, before: int
) -> dict[date, WeatherChances]:
    past = PastWork(weather=records.weather, limits=records.planning.days_without_work, before=before)
    found = {}
    for day in days:
        if day.is_possible:
            found[day.day] = past.chances(
                day.day, len(day.work_days), is_worked=lambda other: not calendar.no_work(other)
            )
    return {day: chances for day, chances in found.items() if chances is not None}
