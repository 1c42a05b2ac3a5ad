"""The moments at which something became known of a job: they come from the records, never from the clock."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from functools import cached_property
from typing import Final

from swardcast.outlook.nearby import Nearby
from swardcast.records.folder import ClubRecords
from swardcast.records.log import (
    ANNOUNCED,
    BackToNormal,
    Entry,
    GrowthHeldBack,
    MorningStatus,
    NoteToMembers,
    Observation,
    Progress,
    morning_name,
)
from swardcast.records.operations import label_counts
from swardcast.records.plan import Job
from swardcast.records.standing import rank

__all__ = ["FOLLOWED_DAYS", "Log", "Moment", "moments_of"]

_Key = tuple[float, int, str]

_MORNING: Final = time(7, 0)  # when a new day's weather counts as known to members
_DAY: Final = timedelta(days=1)
FOLLOWED_DAYS: Final = 300
"""Days since the last entry for which a job is followed, through a winter: as far as the weather is kept."""
_FOLLOWED: Final = timedelta(days=FOLLOWED_DAYS)
_NO_WORK: Final = (Observation, GrowthHeldBack, NoteToMembers)


@dataclass(frozen=True, slots=True, kw_only=True)
class Moment:
    """A moment at which something became known.

    Args:
        at: the moment, aware.
        id: name for life, from the record that brought it.
        entry: the entry that brought it, or None for the announcement and for a morning.
    """

    at: datetime
    id: str
    entry: Entry | None = None

    @property
    def order(self) -> _Key:
        """Of several entries at a minute, the one that says most is what members are told: done rather than started."""
        return self.at.timestamp(), -rank(self.entry) if self.entry else 0, self.id


class Log:
    """The log as a story asks it: sought through once for all jobs.

    Args:
        nearby: the club's records, and what each job in them depends on.
    """

    def __init__(self, nearby: Nearby) -> None:
        self.records = nearby.records
        self._log = nearby.log

    def concerning(self, job: Job) -> Sequence[Entry]:
        """List the entries that concern a job, as entered: its own, growth held back there, and what corrects them."""
        there = [place for place, entry in self._log.of_growth if not set(entry.surfaces).isdisjoint(job.surfaces)]
        return self._log.with_corrections([*self._log.places_of(job.id), *there])

    def mornings_between(self, first: datetime, last: datetime) -> Sequence[MorningStatus]:
        """List the morning entries from a moment up to another, as entered."""
        begin = bisect_left(self._mornings, first.timestamp(), key=_at_s)
        return self._mornings[begin : bisect_right(self._mornings, last.timestamp(), key=_at_s)]

    def normal_between(self, at: datetime, true_by: date) -> Iterator[BackToNormal]:
        """List the entries after a moment that call any job back to normal, where that was true by a day."""
        latest = datetime.combine(true_by + _DAY, time(0), tzinfo=at.tzinfo).timestamp() + self._latest_s
        begin, end = (bisect_right(self._normal, moment, key=_at_s) for moment in (at.timestamp(), latest))
        return (entry for entry in self._normal[begin:end] if entry.head.true_from.date() <= true_by)

    @cached_property
    def _latest_s(self) -> float:
        """How long after it was true such an entry was made at the latest, s."""
        return max((entry.head.at_s - entry.head.true_from_s for entry in self._normal), default=0.0)

    @cached_property
    def _mornings(self) -> list[MorningStatus]:
        return [one for one in self.records.entries if isinstance(one, MorningStatus)]

    @cached_property
    def _normal(self) -> list[BackToNormal]:
        return [one for one in self.records.entries if isinstance(one, BackToNormal)]


def _at_s(entry: Entry) -> float:
    return entry.head.at_s


def moments_of(
    log: Log, job: Job, as_of: datetime, is_quiet: Callable[[datetime], bool], after: datetime | None = None
) -> Iterator[Moment]:
    """Give the moments of a job, one after the other.

    Args:
        log: the club's log.
        job: the job, announced by then.
        as_of: the last moment, aware.
        is_quiet: whether mornings up to the next entry change nothing any more from a moment on.
        after: the moment up to which they are not wanted, or None for all.

    Yields:
        Its announcement, its entries, and mornings that may bring something.
    """
    zone = log.records.club.time_zone
    entries = [entry for entry in log.concerning(job) if entry.head.at <= as_of]
    worked = [entry.head.true_from.date() for entry in entries if not isinstance(entry, _NO_WORK)]
    begun = [entry.head.true_from.date() for entry in entries if isinstance(entry, Progress)]
    first = datetime.combine(job.announced, time(0, 0), tzinfo=zone)
    wanted_from = first if after is None else max(first, after)
    told = [Moment(at=first, id=ANNOUNCED)] if after is None else []
    said = [entry for entry in entries if entry.head.at > first]
    if begun and (job.lasts or label_counts(job.operations)):  # then a morning entry may end it
        said += _mornings_heard(log, datetime.combine(min(begun), time(0), tzinfo=zone), entries)
    # What another job teaches can move a plan, until its own work begins.
    until = min(worked) if worked else as_of.astimezone(zone).date()
    others = (entry for entry in log.normal_between(wanted_from, until) if entry.job != job.id)
    said += [entry for entry in others if entry.head.at > first]
    told += [Moment(at=entry.head.at, id=entry.head.id, entry=entry) for entry in said]
    told = sorted((one for one in told if _is_wanted(one, after, as_of)), key=lambda one: one.order)
    if not worked:
        yield from told
        return
    first_morning = max(min(worked) + _DAY, job.announced)  # a correction may say that it was done before
    mornings = _Mornings(log.records, as_of, first_morning, min(begun, default=None), after)
    for moment in told:
        yield from mornings.before(moment, is_quiet)
        yield moment
    yield from mornings.before(None, is_quiet)


def _mornings_heard(log: Log, begun: datetime, entries: Sequence[Entry]) -> Iterator[MorningStatus]:
    """Morning entries since work began, each not longer after the last of the job's own than a job is followed."""
    own = list(map(_at_s, entries))
    last = datetime.fromtimestamp(own[-1], begun.tzinfo) + _FOLLOWED
    for morning in log.mornings_between(begun, last):
        before = bisect_right(own, morning.head.at_s)
        if not before or morning.head.at_s - own[before - 1] <= _FOLLOWED.total_seconds():
            yield morning


def _is_wanted(moment: Moment, after: datetime | None, as_of: datetime) -> bool:
    at = moment.at.timestamp()
    return at <= as_of.timestamp() and (after is None or at > after.timestamp())


class _Mornings:
    """Mornings after a day whose weather was recorded, and all after the day on which the work began.

    Work that goes on takes a day longer with each day, and what heals without a record grows as in past years.

    Args:
        records: the club's records.
        as_of: the last moment, aware.
        first: the first day.
        begun: the day on which the work began, or None.
        after: the moment up to which they are not wanted, or None for all.
    """

    def __init__(
        self, records: ClubRecords, as_of: datetime, first: date, begun: date | None, after: datetime | None
    ) -> None:
        self._zone = records.club.time_zone
        self._observed = records.weather.observed_c
        self._begun = begun
        self._last = as_of
        self._after = after
        self._day = first if after is None else max(first, after.astimezone(self._zone).date())

    def before(self, moment: Moment | None, is_quiet: Callable[[datetime], bool]) -> Iterator[Moment]:
        """Give those before a moment that were not given yet, as long as they may bring something."""
        end = self._last.astimezone(self._zone).date() if moment is None else moment.at.astimezone(self._zone).date()
        while self._day <= end:
            morning = Moment(at=datetime.combine(self._day, _MORNING, tzinfo=self._zone), id=morning_name(self._day))
            if not _is_wanted(morning, None, self._last) or (moment is not None and morning.order > moment.order):
                return
            if is_quiet(morning.at):
                self._day = max(self._day + _DAY, end)
                if moment is None:
                    return
                continue
            is_told = _is_wanted(morning, self._after, self._last) and self._brings_something()
            self._day += _DAY
            if is_told:
                yield morning

    def _brings_something(self) -> bool:
        has_begun = self._begun is not None and self._day > self._begun
        return has_begun or self._day - _DAY in self._observed
