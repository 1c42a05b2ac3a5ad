"""Choices of work beside each other, for the same surfaces and the same first day."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta

from swardcast.outlook.believed import is_validated
from swardcast.outlook.closures import Touch
from swardcast.outlook.fixtures import FixtureOutlook, meeting_of
from swardcast.outlook.states import WIDE_RANGE_DAYS, DateRange, JobOutlook, Milestone, ReasonKind, RestsOn
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.amounts import Amounts, amounts_of
from swardcast.planning.costs import Cost, cost_of
from swardcast.planning.disturbance import Disturbance, disturbances
from swardcast.planning.done_this_year import DoneThisYear, done_in_year
from swardcast.planning.goals import TimesAYear, times_a_year
from swardcast.planning.organic_matter import OrganicReading, latest_reading, organic_after
from swardcast.records.club import Surface
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Job, Play
from swardcast.records.planning import Choice
from swardcast.records.standing import standing_entries
from swardcast.records.translate import density_of

__all__ = ["Compared", "Comparison", "When", "compare", "count_touched", "is_touched", "job_of_choice"]

_ALLOWED_FOR = 0.1  # the chance that is left on the day of allow until


@dataclass(frozen=True, slots=True, kw_only=True)
class When:
    """Where and when the work would be.

    Args:
        surfaces: ids of the surfaces, in the order of the work.
        starts: its first day.
        surfaces_a_day: pace of the work, above 0, or None where each choice has its own, or for all in a day.
        spare_days: working days kept free for weather.
        instead_of: the planned job in whose place it would be, or None.
    """

    surfaces: tuple[str, ...]
    starts: date
    surfaces_a_day: float | None
    spare_days: int = 0
    instead_of: Job | None = None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Compared:
    """One choice and what comes of it.

    Args:
        number: its number in the comparison, from 1 on.
        choice: the choice.
        is_planned: whether it is what the plan has now.
        disturbance: how long it would disturb play, with its dates.
        amounts: holes, shares, sand.
        cost: what it costs, or None where the club tells no prices.
        organic_after: organic matter after it, or None.
        times: times a year to reach what the club wants in a year.
        times_left: times in the year of the work to reach what is left of that.
        meets: what each fixture of the comparison meets of it, in their order.
    """

    number: int
    choice: Choice
    is_planned: bool
    disturbance: Disturbance
    amounts: Amounts
    cost: Cost | None
    organic_after: float | None
    times: TimesAYear
    times_left: TimesAYear
    meets: tuple[FixtureOutlook, ...]

    def range_of(self, milestone: Milestone) -> DateRange:
        """The date of a milestone for the last of the surfaces."""
        return self.disturbance.outlook.dates[milestone]

    @property
    def is_usual_time(self) -> bool:
        """Whether back to normal is somebody's usual time, of which no chance is known."""
        return self.range_of(Milestone.BACK_TO_NORMAL).rests_on is RestsOn.USUAL_TIME

    @property
    def is_validated(self) -> bool:
        """Whether such work on such surfaces was among the recoveries that the dates were fitted on."""
        healing = [work for work in self.disturbance.outlook.surfaces if work.recovery is not None]
        return self.is_usual_time or all(is_validated(work.surface, work.sums) for work in healing)

    @property
    def is_as_published(self) -> bool:
        """Whether work and grass are such as many recoveries were published of, as the notices' reasons tell."""
        works = self.disturbance.outlook.surfaces
        return not any(reason.kind is ReasonKind.NOT_VALIDATED for work in works for reason in work.reasons)

    def days_until(self, day: date | None) -> int | None:
        """Days from the first day of the work to a day, or None where there is none."""
        return None if day is None else (day - self.disturbance.starts).days

    @property
    def days_a_year(self) -> float | None:
        """Likely days of disturbance in a year that reaches its goals, each time as long as this one.

        None where there is no goal or no computed date, infinite where a goal is never reached.
        """
        days, times = self.days_until(self.range_of(Milestone.BACK_TO_NORMAL).likely), self.times.most
        if days is None or times is None or self.is_usual_time:
            return None
        return math.inf if math.isinf(times) else days * times

    @property
    def fixtures_touched(self) -> int | None:
        """Fixtures that fall into the work, or on surfaces that may well be healing; None where that is not known."""
        return count_touched(self.meets)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Comparison:
    """Choices beside each other.

    Args:
        as_of: the moment, local.
        when: where and when the work would be.
        surfaces: the surfaces, in the order of the work.
        rows: the choices, in their order.
        fixtures: competitions and visitors' days of the period, the first first.
        reading: the club's readings of organic matter, or None.
        density_t_per_m3: bulk density of the sand.
        done: what the year of the work has brought to the surfaces already.
        past_years: past years of weather that the dates rest on, 0 without a history.
        has_forecast: whether a forecast reaches the first day of the work.
        besides: jobs planned there about that day, which count besides the choices.
        left_out: the club's own choices that are for other surfaces.
    """

    as_of: datetime
    when: When
    surfaces: tuple[Surface, ...]
    rows: tuple[Compared, ...]
    fixtures: tuple[Fixture, ...]
    reading: OrganicReading | None
    density_t_per_m3: float
    done: DoneThisYear
    past_years: int
    has_forecast: bool
    besides: tuple[Job, ...] = ()
    left_out: int = 0


def is_touched(met: FixtureOutlook) -> bool:
    """Tell whether a fixture counts as touched by the work.

    Args:
        met: what it meets.

    Returns:
        True in days that the work or the closure may take, and as long as there is more than 1 chance in 10 that not
        all is back to normal; that is, before the day of allow until.
    """
    healing = met.not_normal is not None and met.not_normal > _ALLOWED_FOR
    in_range = met.in_range in (Touch.YES, Touch.PERHAPS) and met.not_normal is None
    return met.in_work is not Touch.NO or healing or in_range


def count_touched(meets: Sequence[FixtureOutlook]) -> int | None:
    """Count the fixtures that the work touches.

    Args:
        meets: what each fixture meets.

    Returns:
        Their number, or None where one comes after the work and nothing is known of the healing that it meets.
    """
    of_healing = [met for met in meets if met.in_work is Touch.NO]
    if any(met.not_normal is None and met.in_range is None for met in of_healing):
        return None
    return sum(map(is_touched, meets))


def compare(
    records: ClubRecords, as_of: datetime, book: WeatherBook, when: When, choices: Sequence[Choice]
) -> Comparison:
    """Compare ways of doing a job.

    Args:
        records: the club's records.
        as_of: the moment, aware; the work does not start before its day.
        book: the club's weather.
        when: where and when the work would be.
        choices: the choices; what the plan has comes before them where they stand in a job's place.

    Returns:
        The comparison.
    """
    today = as_of.astimezone(records.club.time_zone).date()
    jobs = [job_of_choice(choice, number, when, today) for number, choice in enumerate(choices, start=1)]
    asked = list(choices)
    if when.instead_of is not None:
        asked.insert(0, Choice(name="", operations=when.instead_of.operations, file=when.instead_of.file))
        jobs.insert(0, _as_planned(when.instead_of, when, today))
    instead_of = when.instead_of.id if when.instead_of is not None else ""
    found = disturbances(records, as_of, book, jobs, instead_of=instead_of)
    fixtures = _in_period(records.fixtures, when.starts, [one.outlook for one in found])
    entries = standing_entries(records.known_at(as_of).entries)
    reading = latest_reading(entries, when.surfaces)
    density = density_of(records.club)
    surfaces = tuple(records.surfaces[name] for name in when.surfaces)
    goal = records.planning.goal.of(surfaces)
    done = done_in_year(records, as_of, when.surfaces, when.starts.year)
    rows = []
    for number, (choice, one) in enumerate(zip(asked, found, strict=True), start=1):
        works = one.outlook.surfaces
        amounts = amounts_of(works)
        layer_mm, sums = records.planning.organic_layer_mm, [work.sums for work in works]
        row = Compared(
            number=number,
            choice=choice,
            is_planned=when.instead_of is not None and number == 1,
            disturbance=one,
            amounts=amounts,
            cost=cost_of(choice, amounts, records.planning),
            organic_after=organic_after(reading, choice.operations, sums, layer_mm=layer_mm),
            times=times_a_year(goal, amounts, density_t_per_m3=density),
            times_left=times_a_year(goal, amounts, density_t_per_m3=density, done=done),
            meets=_meetings(one, fixtures, today),
        )
        rows.append(row)
    view = book.at(as_of)
    reached = [day for forecast in records.weather.forecasts if forecast.issued_at <= as_of for day in forecast.tmean_c]
    return Comparison(
        as_of=as_of.astimezone(records.club.time_zone),
        when=when,
        surfaces=surfaces,
        rows=tuple(rows),
        fixtures=fixtures,
        reading=reading,
        density_t_per_m3=density,
        done=done,
        past_years=view.past_years if view is not None else 0,
        has_forecast=view is not None and view.issued_at is not None and max(reached, default=today) >= when.starts,
    )


def _meetings(disturbance: Disturbance, fixtures: Sequence[Fixture], today: date) -> tuple[FixtureOutlook, ...]:
    mornings = [max(fixture.first_day, today, disturbance.starts) for fixture in fixtures]
    not_normal = disturbance.chance_on(mornings)
    unsettled = disturbance.chance_on(mornings, Milestone.SETTLED)
    if not_normal is None or unsettled is None:
        return tuple(meeting_of(disturbance.outlook, fixture, today) for fixture in fixtures)
    chances = zip(not_normal.tolist(), unsettled.tolist(), strict=True)
    return tuple(
        meeting_of(disturbance.outlook, fixture, today, of_not)
        for fixture, of_not in zip(fixtures, chances, strict=True)
    )


def job_of_choice(choice: Choice, number: int, when: When, today: date) -> Job:
    """Make a job of a choice of work.

    Args:
        choice: the choice; its own pace goes before that of `when`.
        number: its number.
        when: where and when the work would be.
        today: the day on which it counts as announced.

    Returns:
        A job that no plan has.
    """
    like = when.instead_of
    return Job(
        id=f"choice-{number}",
        title=choice.name,
        programme="",
        announced=today,
        starts=when.starts,
        surfaces=when.surfaces,
        operations=choice.operations,
        surfaces_a_day=choice.surfaces_a_day or when.surfaces_a_day or float(len(when.surfaces)),
        spare_days=when.spare_days,
        while_working=like.while_working if like is not None else Play.CLOSED,
        reopens_after=None,
        follow_up=like.follow_up if like is not None else None,
        normal_after=choice.normal_after,
        why=(),
        readings=(),
        own_words="",
        file=choice.file,
        line=choice.line,
    )


def _as_planned(job: Job, when: When, today: date) -> Job:
    """The planned job itself, on the surfaces, the day and at the pace that are compared."""
    return replace(
        job,
        announced=today,
        starts=when.starts,
        surfaces=when.surfaces,
        surfaces_a_day=when.surfaces_a_day or job.surfaces_a_day,
        spare_days=when.spare_days,
    )


def _in_period(fixtures: Sequence[Fixture], starts: date, outlooks: Sequence[JobOutlook]) -> tuple[Fixture, ...]:
    """Fixtures from the first day of the work until the last choice is surely over, or for eight weeks."""
    normal = [outlook.dates[Milestone.BACK_TO_NORMAL] for outlook in outlooks]
    eight_weeks = starts + timedelta(days=WIDE_RANGE_DAYS)
    ends = [one.allow_until if one.allow_until is not None and one.is_given else eight_weeks for one in normal]
    last = max(ends, default=eight_weeks)
    return tuple(one for one in fixtures if one.last_day >= starts and one.first_day <= last)
