"""Every notice by the year of its work; the order in the list of notices, and what that leaves to the archive."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import groupby
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.ends import has_no_day
from swardcast.notices.notice import Notice
from swardcast.notices.spans import first_day_of_work
from swardcast.outlook.states import JobOutlook, Milestone, Work

__all__ = [
    "LISTED",
    "LISTED_BY_KIND",
    "ArchiveMonth",
    "ArchiveYear",
    "compose_archive",
    "in_order_of_list",
    "left_by_kinds",
    "left_to_archive",
    "of_last_seasons",
]

LISTED: Final = timedelta(days=183)
"""How long a notice that is over stays in the list of notices: half a year, a season. Judgement."""

LISTED_BY_KIND: Final = timedelta(days=731)
"""How long among notices of its kind of work, which are looked up beside each other: two years. Judgement."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ArchiveMonth:
    """Notices of one month.

    Args:
        first_day: its first day.
        name: its name with the year.
        notices: those whose work began in it, or was to begin, the latest first.
    """

    first_day: date
    name: str
    notices: tuple[Notice, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ArchiveYear:
    """Notices of one year.

    Args:
        year: the year.
        months: those that have notices, the latest first.
    """

    year: int
    months: tuple[ArchiveMonth, ...]

    @property
    def count(self) -> int:
        """How many notices it has."""
        return sum(len(month.notices) for month in self.months)


def compose_archive(notices: Iterable[Notice], jobs: Mapping[str, JobOutlook], voice: Voice) -> tuple[ArchiveYear, ...]:
    """Put every notice under the year and the month in which its work began, or is planned to begin.

    Args:
        notices: notices that stand; withdrawn ones are in no list.
        jobs: how each job stands, by its id.
        voice: the language and the day of the reader.

    Returns:
        Years, the latest first.
    """
    dated = [(first_day_of_work(jobs[notice.id]), notice) for notice in notices]
    dated.sort(key=lambda one: (one[0], one[1].id), reverse=True)
    return tuple(
        ArchiveYear(year=year, months=tuple(_months(group, voice)))
        for year, group in groupby(dated, key=lambda one: one[0].year)
    )


def _months(dated: Iterable[tuple[date, Notice]], voice: Voice) -> Iterator[ArchiveMonth]:
    for first_day, group in groupby(dated, key=lambda one: one[0].replace(day=1)):
        name = capital(voice.month_with_year(first_day))
        yield ArchiveMonth(first_day=first_day, name=name, notices=tuple(notice for _, notice in group))


def left_to_archive(notices: Iterable[Notice], jobs: Mapping[str, JobOutlook], today: date) -> frozenset[str]:
    """Tell which notices have been over for longer than a season: the list of notices leaves them to the archive.

    Args:
        notices: notices that stand.
        jobs: how each job stands, by its id.
        today: the day, in the club's local time.

    Returns:
        Their ids.
    """
    return frozenset(notice.id for notice, since in _over(notices, jobs) if today - since > LISTED)


def left_by_kinds(notices: Iterable[Notice], jobs: Mapping[str, JobOutlook], today: date) -> frozenset[str]:
    """Tell what the lists of kinds of work leave to the archive: what has been over for longer than two years.

    Args:
        notices: notices that stand.
        jobs: how each job stands, by its id.
        today: the day, in the club's local time.

    Returns:
        Their ids; never the latest of a kind, however long ago that was.
    """
    over: dict[str, dict[str, date]] = {}
    for notice, since in _over(notices, jobs):
        over.setdefault(notice.category, {})[notice.id] = since
    return frozenset(name for of_kind in over.values() for name in _long_over(of_kind, today))


def of_last_seasons(jobs: Sequence[JobOutlook], today: date) -> tuple[JobOutlook, ...]:
    """Leave out of jobs of a kind of work what its list of notices leaves to the archive.

    Args:
        jobs: jobs of one kind, none of them called off.
        today: the day, in the club's local time.

    Returns:
        The others, in the same order.
    """
    over = {job.job.id: since for job in jobs if (since := _normal_since(job)) is not None}
    left = set(_long_over(over, today))
    return tuple(job for job in jobs if job.job.id not in left)


def _long_over(since: Mapping[str, date], today: date) -> Iterator[str]:
    """All but the latest, which can be looked up however seldom such work is done."""
    latest_last = sorted(since, key=lambda name: (since[name], name))
    return (name for name in latest_last[:-1] if today - since[name] > LISTED_BY_KIND)


def in_order_of_list(notices: Iterable[Notice], jobs: Mapping[str, JobOutlook], voice: Voice) -> tuple[str, ...]:
    """Put notices in the order in which members look for them.

    Args:
        notices: notices that stand.
        jobs: how each job stands, by its id.
        voice: the day of the reader.

    Returns:
        Their ids: going on, the latest news first; to come, the first day first, those without a day last; over, the
        latest end first.
    """

    def place(notice: Notice) -> tuple[int, bool, float, str]:
        job = jobs[notice.id]
        if job.work is Work.PLANNED:
            return 1, has_no_day(job, voice), job.starts.toordinal(), notice.id
        if job.work.is_over:
            return 2, False, -(_over_since(notice, job) or notice.revised_at.date()).toordinal(), notice.id
        return 0, False, -notice.revised_at.timestamp(), notice.id

    return tuple(notice.id for notice in sorted(notices, key=place))


def _over(notices: Iterable[Notice], jobs: Mapping[str, JobOutlook]) -> Iterator[tuple[Notice, date]]:
    for notice in notices:
        since = _over_since(notice, jobs[notice.id])
        if since is not None:
            yield notice, since


def _over_since(notice: Notice, job: JobOutlook) -> date | None:
    return notice.revised_at.date() if job.work is Work.CALLED_OFF else _normal_since(job)


def _normal_since(job: JobOutlook) -> date | None:
    """The day from which nobody waits for anything of it; where that is only computed, the day to allow for."""
    return job.dates[Milestone.BACK_TO_NORMAL].allow_until if job.work is Work.BACK_TO_NORMAL else None
