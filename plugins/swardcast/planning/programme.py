"""Days for several jobs together: each job's days reckoned alone, the best chosen, then all looked at together."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta

from swardcast.outlook.states import Milestone
from swardcast.outlook.weather_book import WeatherBook
from swardcast.outlook.working_days import working_day_after
from swardcast.planning.disturbance import begun_on
from swardcast.planning.gaps import gaps_between
from swardcast.planning.other_work import planned_work, within
from swardcast.planning.schedule import Gap, Schedule, StartDays, Wish, schedules
from swardcast.planning.schedule_blame import Blame, blame_for
from swardcast.planning.start_days import StartDay, start_days
from swardcast.records.folder import ClubRecords
from swardcast.records.plan import Job

__all__ = ["AskedTogether", "Placed", "Together", "find_together"]


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedTogether:
    """What is asked.

    Args:
        jobs: the jobs, in the order in which they are named, two at least.
        first: the first day on which one of them might begin.
        last: the last one.
        until: what ends the disturbance: settled, holes closed or back to normal.
        gap_days: days that have to lie between any two on a common surface, 0 for none.
        in_order: whether they keep the order in which they are named.
        crews: how many of them can be worked on during the same day, 1 or more.
        most: how many trade-offs are told, 1 or more.
    """

    jobs: tuple[Job, ...]
    first: date
    last: date
    until: Milestone = Milestone.BACK_TO_NORMAL
    gap_days: int = 0
    in_order: bool = True
    crews: int = 1
    most: int = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A job on the day that was chosen for it.

    Args:
        job: the job as planned now.
        kept_until: the last day that is kept free for it, spare days included.
        alone: the day as if none of the other jobs were planned: what was chosen by.
        together: the day with all of them where they were put: work on turf that still heals from another takes longer.
        cheapest: of the days reckoned alone the one with the fewest weighted days, the soonest of equals.
        after: the job before it that holds it off, with the gap between them, where it could not begin a day sooner for
            that alone; else None.
    """

    job: Job
    kept_until: date
    alone: StartDay
    together: StartDay
    cheapest: StartDay
    after: Gap | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Together:
    """Days for several jobs.

    Args:
        as_of: the moment, local.
        asked: what was asked.
        days: each job's days, reckoned alone, by its id.
        gaps: what has to lie between them.
        placed: the jobs on the best days, the first first; nothing where they cannot all be done.
        trade_offs: schedules, that of `placed` first; each has more weighted days than the one before and fewer days.
        with_all: for each of them the weighted days of the jobs when all are done as it has them.
        in_all: how many such trade-offs there are.
        blame: what is in the way, or None.
        beside: other work of the plan that falls into days kept for these jobs.
        past_years: past years of temperatures that the dates rest on, 0 without a history.
    """

    as_of: datetime
    asked: AskedTogether
    days: Mapping[str, tuple[StartDay, ...]]
    gaps: tuple[Gap, ...]
    placed: tuple[Placed, ...]
    trade_offs: tuple[Schedule, ...]
    with_all: tuple[float, ...]
    in_all: int
    blame: Blame | None
    beside: tuple[Job, ...]
    past_years: int

    @property
    def weighted_days(self) -> float:
        """The weighted days of all jobs, with all of them where they were put."""
        return sum(_weighted(one.together) for one in self.placed)

    @property
    def plain_days(self) -> float:
        """The disturbed days of all jobs, with all of them where they were put."""
        return sum(one.together.cost.days for one in self.placed if one.together.cost is not None)

    @property
    def has_costs(self) -> bool:
        """Whether the end of any of the jobs is known, so that one day costs more than another."""
        return len(self.without_end) < len(self.asked.jobs)

    @property
    def without_end(self) -> tuple[Job, ...]:
        """The jobs of whose end nothing is known, so that no day costs them more than another."""
        return tuple(job for job in self.asked.jobs if _is_without_end(self.days[job.id]))


def find_together(records: ClubRecords, as_of: datetime, book: WeatherBook, asked: AskedTogether) -> Together:
    """Find days for several jobs.

    Args:
        records: the club's records, with what it keeps to itself.
        as_of: the moment, aware; no day asked about lies before its day.
        book: the club's weather.
        asked: what is asked.

    Returns:
        The best days, all trade-offs between the two costs, or what is in the way.
    """
    run = [asked.first + timedelta(days=place) for place in range((asked.last - asked.first).days + 1)]
    bare = _with(records, asked.jobs, {})
    days = {job.id: start_days(bare, as_of, book, job, run, until=asked.until) for job in asked.jobs}
    gaps = gaps_between(asked.jobs, records.planning.gaps, least_days=asked.gap_days, in_order=asked.in_order)
    wish = Wish(
        jobs=tuple(_choices(job, days[job.id], records.club.working_days) for job in asked.jobs),
        gaps=gaps,
        crews=asked.crews,
    )
    found = schedules(wish, most=asked.most)
    view = book.at(as_of)
    together = Together(
        as_of=as_of.astimezone(records.club.time_zone),
        asked=asked,
        days=days,
        gaps=gaps,
        placed=(),
        trade_offs=found.shown,
        with_all=(),
        in_all=found.in_all,
        blame=None if found.shown else blame_for(wish),
        beside=(),
        past_years=view.past_years if view is not None else 0,
    )
    if not found.shown:
        return together
    of_each = [_with_all(records, book, together, schedule) for schedule in found.shown]
    placed = _placed(records, together, of_each[0])
    return replace(
        together,
        placed=placed,
        with_all=tuple(sum(_weighted(day) for day in days.values()) for days in of_each),
        beside=within(planned_work(bare, as_of), [(one.together.day, one.kept_until) for one in placed]),
    )


def _with(records: ClubRecords, jobs: tuple[Job, ...], first_days: Mapping[str, date]) -> ClubRecords:
    """The records with these jobs on other days, or out of the plan; what the log says of their days is past."""
    moved = {job.id: begun_on(job, first_days[job.id]) for job in jobs if job.id in first_days}
    asked = {job.id for job in jobs}
    plan = {name: moved.get(name, job) for name, job in records.jobs.items() if name in moved or name not in asked}
    entries = tuple(entry for entry in records.entries if getattr(entry, "job", "") not in asked)
    return replace(records, jobs=plan, entries=entries)


def _choices(job: Job, days: tuple[StartDay, ...], working_days: tuple[int, ...]) -> StartDays:
    possible = [day for day in days if day.is_possible]
    return StartDays(
        job=job.id,
        first_days=tuple(day.day for day in possible),
        last_days=tuple(_kept_until(job, day, working_days) for day in possible),
        weighted_days=tuple(map(_weighted, possible)),
        plain_days=tuple(day.cost.days if day.cost is not None else 0.0 for day in possible),
    )


def _kept_until(job: Job, day: StartDay, working_days: tuple[int, ...]) -> date:
    return working_day_after(day.work_days[-1], job.spare_days, working_days)


def _is_without_end(days: tuple[StartDay, ...]) -> bool:
    return all(day.cost is None for day in days)


def _weighted(day: StartDay) -> float:
    return day.cost.weighted_days if day.cost is not None else 0.0


def _with_all(records: ClubRecords, book: WeatherBook, found: Together, schedule: Schedule) -> dict[str, StartDay]:
    """Each job of a schedule reckoned again, with the others where they were put."""
    asked, answers = found.asked, {}
    moved = _with(records, asked.jobs, schedule.first_days)
    for job in asked.jobs:
        day = schedule.first_days[job.id]
        (answers[job.id],) = start_days(moved, found.as_of, book, job, [day], until=asked.until, instead_of=job.id)
    return answers


def _placed(records: ClubRecords, found: Together, with_all: Mapping[str, StartDay]) -> tuple[Placed, ...]:
    asked, first_days = found.asked, found.trade_offs[0].first_days
    ends: dict[str, date] = {}
    placed = []
    for job in sorted(asked.jobs, key=lambda job: first_days[job.id]):
        day = first_days[job.id]
        alone = next(one for one in found.days[job.id] if one.day == day)
        placed.append(
            Placed(
                job=job,
                kept_until=_kept_until(job, alone, records.club.working_days),
                alone=alone,
                together=with_all[job.id],
                cheapest=_cheapest(found.days[job.id]),
                after=_holding_off(job.id, found, ends),
            )
        )
        ends[job.id] = placed[-1].kept_until
    return tuple(placed)


def _cheapest(days: tuple[StartDay, ...]) -> StartDay:
    possible = [day for day in days if day.is_possible]
    return min(possible, key=_weighted)


def _holding_off(name: str, found: Together, ends: Mapping[str, date]) -> Gap | None:
    """The gap for which a job could not begin on the possible day before."""
    day = found.trade_offs[0].first_days[name]
    before = [one.day for one in found.days[name] if one.is_possible and one.day < day]
    holding = [
        gap
        for gap in found.gaps
        if gap.later == name
        and gap.earlier in ends
        and before
        and (before[-1] - ends[gap.earlier]).days < gap.least_days
    ]
    return max(holding, key=lambda gap: ends[gap.earlier] + timedelta(days=gap.least_days), default=None)
