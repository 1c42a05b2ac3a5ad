"""What every possible first day of a job costs: days on which play is disturbed, each by how much it matters."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

import numpy as np
from numpy.typing import NDArray

from swardcast.outlook.fixtures import FixtureOutlook, meeting_of
from swardcast.outlook.states import DateRange, Milestone, RestsOn
from swardcast.outlook.weather_book import WeatherBook
from swardcast.planning.blocked_days import Blocked, days_of_work, work_calendar
from swardcast.planning.disturbance import Disturbance, begun_on, disturbances
from swardcast.planning.weights import weights_of
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Job
from swardcast.turf.ensemble import HORIZON_DAYS

__all__ = ["Cost", "StartDay", "start_days"]

Floats = NDArray[np.float64]
Counts = NDArray[np.int64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost:
    """What a first day costs.

    Args:
        weighted_days: disturbed days, each with its weight, in ordinary days: the expected sum; of a usual time, which
            has no chances, that of its middle.
        low: 1 chance in 10 that it is not more; of a usual time its short end.
        high: 9 chances in 10 that it is not more; of a usual time its long end.
        days: the same as `weighted_days` with every day counted once.
        never: chance that the horizon does not bring the end; the horizon is counted then.
    """

    weighted_days: float
    low: float
    high: float
    days: float
    never: float


@dataclass(frozen=True, slots=True, kw_only=True)
class StartDay:
    """One possible first day.

    Args:
        day: the day.
        blocked: why the job cannot begin then; nothing where it can.
        work_days: days on which it would be worked on.
        cost: what it costs, or None where it is blocked, or nothing is known of its end.
        ends: when the last surface is no longer disturbed, or None where it is blocked.
        meets: fixtures that it meets or may meet, the first first; `not_normal` is the chance that they find it
            disturbed.
    """

    day: date
    blocked: tuple[Blocked, ...]
    work_days: tuple[date, ...]
    cost: Cost | None = None
    ends: DateRange | None = None
    meets: tuple[FixtureOutlook, ...] = ()

    @property
    def is_possible(self) -> bool:
        """Whether the job can begin then."""
        return not self.blocked


def start_days(
    records: ClubRecords,
    as_of: datetime,
    book: WeatherBook,
    job: Job,
    days: Sequence[date],
    *,
    until: Milestone = Milestone.BACK_TO_NORMAL,
    instead_of: str = "",
) -> tuple[StartDay, ...]:
    """Work out what each first day of a job costs.

    Play counts as disturbed from the first day of the work until the last of the surfaces reaches a milestone. What
    else is planned there is done as planned.

    Args:
        records: the club's records, with what it keeps to itself.
        as_of: the moment, aware.
        book: the club's weather.
        job: the job, with its operations, surfaces and pace; its own first day does not count.
        days: first days asked about, at least one, none before the day of `as_of`.
        until: what ends the disturbance: settled, holes closed or back to normal.
        instead_of: id of the planned job in whose place it stands, or "".

    Returns:
        Each day with its cost, or with the reasons why the job cannot begin then.
    """
    calendar = work_calendar(records, min(days), max(days))
    reasons = {day: calendar.blocked(job, day) for day in days}
    possible = [day for day in days if not reasons[day]]
    moved = [begun_on(job, day) for day in possible]
    found = disturbances(records, as_of, book, moved, instead_of=instead_of) if moved else ()
    by_day = dict(zip(possible, found, strict=True))
    today = as_of.astimezone(records.club.time_zone).date()
    scale = _Scale.of(records, min(days), found)
    answers = []
    for day in days:
        disturbance, work_days = by_day.get(day), days_of_work(job, day, records.club.working_days)
        if disturbance is None:
            answers.append(StartDay(day=day, blocked=reasons[day], work_days=work_days))
            continue
        answers.append(
            StartDay(
                day=day,
                blocked=(),
                work_days=work_days,
                cost=_cost(disturbance, until, scale),
                ends=disturbance.outlook.dates[_milestone_of(disturbance, until)],
                meets=_meets(disturbance, until, records.fixtures, today),
            )
        )
    return tuple(answers)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Scale:
    """Weights from a day on, summed up: the weight of the days before each place."""

    first: date
    sums: Floats

    @classmethod
    def of(cls, records: ClubRecords, first: date, found: Sequence[Disturbance]) -> _Scale:
        """Weigh every day on which one of these may disturb play."""
        ends = [given.allow_until for one in found for given in one.outlook.dates.values() if given.allow_until]
        last = max([first, *ends, *(one.starts + timedelta(days=HORIZON_DAYS) for one in found)])
        weights = weights_of(first, (last - first).days + 1, records.planning.importance, records.fixtures)
        return cls(first=first, sums=np.concatenate([[0.0], np.cumsum(weights)]))

    def sum_of(self, starts: date, counts: Counts) -> Floats:
        """The weight of so many days from a day on."""
        place = (starts - self.first).days
        return np.asarray(self.sums[place + counts] - self.sums[place])


def _milestone_of(disturbance: Disturbance, until: Milestone) -> Milestone:
    """A usual time knows one milestone alone."""
    return Milestone.BACK_TO_NORMAL if disturbance.outlook.job.normal_after is not None else until


def _cost(disturbance: Disturbance, until: Milestone, scale: _Scale) -> Cost | None:
    starts = disturbance.starts
    if until in disturbance.days:
        days = disturbance.days[until].ravel()
        # A day that has begun is a whole one: its morning was disturbed.
        counts = np.ceil(np.minimum(days, HORIZON_DAYS) - 1e-9).astype(np.int64)
        sums = scale.sum_of(starts, counts)
        low, high = np.quantile(sums, (0.1, 0.9), method="inverted_cdf")
        return Cost(
            weighted_days=float(sums.mean()),
            low=float(low),
            high=float(high),
            days=float(counts.mean()),
            never=float(np.isinf(days).mean()),
        )
    given = disturbance.outlook.dates[_milestone_of(disturbance, until)]
    if given.likely is None or given.allow_until is None:
        return None
    # Where nothing heals, the last day of the work itself is disturbed; a usual time or a closure ends on its day.
    whole = given.rests_on is not RestsOn.USUAL_TIME
    ends = [given.early or given.likely, given.likely, given.allow_until]
    counts = np.array([(end - starts).days + whole for end in ends], dtype=np.int64)
    low, middle, high = scale.sum_of(starts, counts).tolist()
    return Cost(weighted_days=middle, low=low, high=high, days=float(counts[1]), never=0.0)


def _meets(
    disturbance: Disturbance, until: Milestone, fixtures: Sequence[Fixture], today: date
) -> tuple[FixtureOutlook, ...]:
    given = disturbance.outlook.dates[_milestone_of(disturbance, until)]
    last = given.allow_until or disturbance.starts + timedelta(days=HORIZON_DAYS)
    near = [one for one in fixtures if one.last_day >= disturbance.starts and one.first_day <= last]
    mornings = [max(one.first_day, today, disturbance.starts) for one in near]
    chances, unsettled = disturbance.chance_on(mornings, until), disturbance.chance_on(mornings, Milestone.SETTLED)
    if chances is None or unsettled is None:
        return tuple(meeting_of(disturbance.outlook, one, today) for one in near)
    pairs = zip(chances.tolist(), unsettled.tolist(), strict=True)
    return tuple(meeting_of(disturbance.outlook, one, today, of_not) for one, of_not in zip(near, pairs, strict=True))
