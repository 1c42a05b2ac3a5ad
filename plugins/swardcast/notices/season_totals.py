"""A season in figures, for each kind of surface: jobs, days of work, days of healing, and fixtures on these days.

Every figure is counted from the days that the season's lists and its picture show, so that they can be counted again.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.season_job import SeasonJob
from swardcast.outlook.states import Work
from swardcast.records.club import SurfaceKind
from swardcast.records.fixtures import Fixture

__all__ = ["Count", "KindTotals", "season_totals"]

_DAY: Final = timedelta(days=1)


@dataclass(frozen=True, slots=True, kw_only=True)
class Count:
    """A number as surely as it is known.

    Args:
        number: the number.
        may_change: whether days that it counts are still to come and may move.
        words: the number as it is told, "about" where it may change.
    """

    number: int
    may_change: bool
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class KindTotals:
    """A season on one kind of surface.

    Args:
        name: the kind as a heading.
        jobs: pieces of work that have a day in the season.
        work_days: days on which at least one surface is worked on.
        healing_days: other days on which at least one heals or is closed after the work.
        fixtures: competitions and visitors' days that fall on any of these days.
    """

    name: str
    jobs: int
    work_days: Count
    healing_days: Count
    fixtures: Count


def season_totals(
    jobs: Sequence[SeasonJob], fixtures: Sequence[Fixture], days: tuple[date, date], voice: Voice
) -> tuple[KindTotals, ...]:
    """Count a season.

    Healing counts up to the day before the one by which all is likely back to normal; where that is over and nobody has
    said so, up to today, no further than the day to allow for; where no day can be told, up to today; of work that
    nobody reports on any more no further than its date or its last report. A day of work in between two others counts
    if it is a working day.

    Args:
        jobs: jobs that have a day in it, without what is called off.
        fixtures: the club's fixtures.
        days: its first and its last day.
        voice: the language.

    Returns:
        One for each kind of surface that has a job, greens first.
    """
    of_kind = ((kind, [job for job in jobs if _is_on(job, kind)]) for kind in SurfaceKind)
    return tuple(_totals(kind, chosen, fixtures, days, voice) for kind, chosen in of_kind if chosen)


def _is_on(job: SeasonJob, kind: SurfaceKind) -> bool:
    return any(work.surface.kind is kind for work in job.matter.outlook.surfaces)


def _totals(
    kind: SurfaceKind, jobs: Sequence[SeasonJob], fixtures: Sequence[Fixture], days: tuple[date, date], voice: Voice
) -> KindTotals:
    worked = {day for job in jobs for day in _days_of_work(job, kind) if days[0] <= day <= days[1]}
    healed = {day for job in jobs for day in _days_of_healing(job) if days[0] <= day <= days[1]} - worked
    disturbed = worked | healed
    met = [one for one in fixtures if disturbed & set(_days(one.first_day, one.last_day))]
    work_may, healing_may = any(map(_work_may_move, jobs)), any(_healing_may_move(job, days[1]) for job in jobs)
    return KindTotals(
        name=voice.name("site-surface", kind),
        jobs=len(jobs),
        work_days=_count(len(worked), voice, may_change=work_may),
        healing_days=_count(len(healed), voice, may_change=work_may or healing_may),
        fixtures=_count(len(met), voice, may_change=work_may or healing_may),
    )


def _count(number: int, voice: Voice, *, may_change: bool) -> Count:
    moves = bool(number) and may_change
    words = voice.say("about", number=str(number)) if moves else str(number)
    return Count(number=number, may_change=moves, words=words)


def _days(first: date, last: date) -> Iterator[date]:
    for number in range((last - first).days + 1):
        yield first + number * _DAY


def _days_of_work(job: SeasonJob, kind: SurfaceKind) -> Iterator[date]:
    working = job.matter.records.club.working_days
    for part in job.parts:
        if any(work.surface.kind is kind for work in part.works):
            ends = (part.first_day, part.last_day)
            yield from (day for day in _days(*ends) if day in ends or day.weekday() in working)


def _days_of_healing(job: SeasonJob) -> Iterator[date]:
    if job.heals_from is None:
        return
    likely, ends, today = job.matter.published.likely, job.last_day_of_healing, job.matter.voice.near
    last = job.heals_from - _DAY if likely is None else likely - _DAY
    if job.matter.outlook.unreported is not None and ends is not None:
        last = ends if likely is None else min(last, ends)
    elif not job.matter.is_over and job.heals_from <= today:
        last = max(last, min(today, ends or today))
    yield from _days(job.heals_from, last)


def _work_may_move(job: SeasonJob) -> bool:
    return job.matter.outlook.work in (Work.PLANNED, Work.UNDER_WAY, Work.HELD_UP)


def _healing_may_move(job: SeasonJob, last: date) -> bool:
    """Whether the end of its healing is not a fact, and may lie before the season's last day."""
    normal = job.matter.published
    if job.heals_from is None or normal.is_fact:
        return False
    soonest = normal.early or normal.likely
    return soonest is None or soonest <= last
