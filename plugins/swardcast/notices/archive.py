"""Every notice by the year of its work; the order in the list of notices, and what that leaves to the archive."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import groupby
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.ends import has_no_day
from swardcast.notices.notice import Notice
from swardcast.notices.spans import first_day_of_work
from swardcast.outlook.states import JobOutlook, Milestone, Work

__all__ = ["LISTED", "ArchiveMonth", "ArchiveYear", "compose_archive", "in_order_of_list", "left_to_archive"]

LISTED: Final = timedelta(days=183)
"""How long a notice that is over stays in the list of notices: half a year, a season. Judgement."""


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
    over = ((notice.id, _over_since(notice, jobs[notice.id])) for notice in notices)
    return frozenset(name for name, since in over if since is not None and today - since > LISTED)


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


def _over_since(notice: Notice, job: JobOutlook) -> date | None:
    """The day from which nobody waits for anything of it; where that is only computed, the day to allow for."""
    if job.work is Work.BACK_TO_NORMAL:
        return job.dates[Milestone.BACK_TO_NORMAL].allow_until
    return notice.revised_at.date() if job.work is Work.CALLED_OFF else None
