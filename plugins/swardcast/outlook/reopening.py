"""When surfaces that are being worked on reopen, to the hour: work left, pace, follow-up work, hours of work, daylight.

What is likely is worked out at each entry and stands until the next one. A day that ends without an entry moves it to
the next working morning: what was not finished by then will be finished after it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from typing import Final, TypeVar

from swardcast.outlook.crews import Crew, WorkSoFar, work_so_far
from swardcast.outlook.ledger import JobFacts
from swardcast.outlook.pace_of_work import PaceOfWork, pace_of_work
from swardcast.outlook.working_clock import WorkingClock
from swardcast.records.club import Club
from swardcast.records.log import Progress, Step
from swardcast.records.plan import FollowUp
from swardcast.turf.milestones import cases_at

__all__ = ["HeldUp", "Hours", "Times", "times_of_work"]

ValueT = TypeVar("ValueT", float, datetime)

_EARLY, _LIKELY, _LATEST = 0.1, 0.5, 0.9
_FOLLOW_UPS: Final = 5  # equally likely lengths of the follow-up work


@dataclass(frozen=True, slots=True, kw_only=True)
class Hours:
    """A moment as it is known, and the surfaces that are worked on together.

    Args:
        early: 1 chance in 10 that it is by this local moment.
        likely: an even chance.
        latest: 9 chances in 10.
        together: ids of the surfaces of the same set, in order.
        pace: the pace it was worked out with, or None where only follow-up work is left.
    """

    early: datetime
    likely: datetime
    latest: datetime
    together: tuple[str, ...]
    pace: PaceOfWork | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class HeldUp:
    """No moment can be told until the work is taken up again.

    Args:
        since: the local moment at which it was held up.
        because: why, as typed.
        not_before: 1 chance in 10 that it reopens by then if the work were taken up again at the moment of asking, or
            on the day before which nobody works.
        together: ids of the surfaces held up by the same entry, in order.
        no_work_before: the first day on which work may go on, as long as that is to come, or None.
    """

    since: datetime
    because: str
    not_before: datetime
    together: tuple[str, ...]
    no_work_before: date | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Times:
    """When a surface is finished and when it reopens.

    Args:
        finish: when the work there is finished, or None while it is held up or when it is done.
        reopening: when players may be on it again.
    """

    finish: Hours | None
    reopening: Hours | HeldUp


def times_of_work(facts: JobFacts, club: Club, as_of: datetime, opened: Mapping[str, datetime]) -> dict[str, Times]:
    """Tell when the surfaces of a job reopen that are begun, and not open again.

    Args:
        facts: what plan and log say of the job.
        club: its hours, days and place.
        as_of: the moment, aware.
        opened: when the log first called surfaces open after their work was done, by id.

    Returns:
        Times by id; nothing for surfaces that were never started, and for those that reopen as soon as they are done.
    """
    starts = (entry for entry in facts.progress if entry.step in (Step.STARTED, Step.RESUMED))
    worked_on = frozenset(entry.head.true_from.astimezone(club.time_zone).date() for entry in starts)
    told = _Told(facts=facts, clock=WorkingClock(club, worked_on), as_of=as_of)
    return {**told.awaited(opened), **told.unfinished()}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Told:
    facts: JobFacts
    clock: WorkingClock
    as_of: datetime

    def awaited(self, opened: Mapping[str, datetime]) -> dict[str, Times]:
        """Surfaces that are done, and whose follow-up work nobody has called over."""
        follow_up = self.facts.job.follow_up
        if follow_up is None:
            return {}
        waiting = {name: s.done for name, s in self.facts.surfaces.items() if s.done and name not in opened}
        times = {}
        for name, done in waiting.items():
            together = tuple(other for other in waiting if waiting[other] is done)
            moments = [self._reopens(done.head.true_from.astimezone(UTC), wait) for wait in _waits(follow_up)]
            times[name] = Times(finish=None, reopening=self._hours(moments, together))
        return times

    def unfinished(self) -> dict[str, Times]:
        """Surfaces under way or held up."""
        job = self.facts.job
        so_far = work_so_far(job.surfaces, self.facts.progress, self.clock)
        if so_far.at is None or not so_far.crews:
            return {}
        pace = pace_of_work(self.clock.day_minutes / job.surfaces_a_day, so_far.finishes)
        times: dict[str, Times] = {}
        for crew in so_far.crews:
            times.update(self._going(crew, so_far, so_far.at, pace))
            times.update(self._held(crew, so_far, so_far.at, pace))
        return times

    def _going(self, crew: Crew, so_far: WorkSoFar, at: datetime, pace: PaceOfWork) -> Iterator[tuple[str, Times]]:
        if not crew.going:
            return
        counts_from = max(at, self.clock.day_begins(self.as_of))
        spent = crew.minutes + self.clock.minutes(at, counts_from) / so_far.at_work
        together = tuple(crew.going)
        for place, name in enumerate(together, start=1):
            ends = [self.clock.after(counts_from, left * so_far.at_work) for left in _left(pace, place, spent)]
            reopens = [self._reopens(end, wait) for end in ends for wait in _waits(self.facts.job.follow_up)]
            yield name, Times(finish=self._hours(ends, together, pace), reopening=self._hours(reopens, together, pace))

    def _held(self, crew: Crew, so_far: WorkSoFar, at: datetime, pace: PaceOfWork) -> Iterator[tuple[str, Times]]:
        spent, shares = crew.minutes, so_far.at_work
        if crew.going:
            spent += self.clock.minutes(at, self.as_of) / shares
        else:
            shares += 1
        for place, name in enumerate(crew.surfaces, start=1):
            if name not in crew.held:
                continue
            entry = crew.held[name]
            end = self.clock.after(self._goes_on(entry), _at(_EARLY, _left(pace, place, spent)) * shares)
            yield name, Times(finish=None, reopening=self._held_up(entry, end, crew))

    def _goes_on(self, entry: Progress) -> datetime:
        """The first moment at which the work can be taken up again."""
        if not self._is_given_up(entry) or entry.no_work_before is None:
            return self.as_of
        return datetime.combine(entry.no_work_before, time(0), tzinfo=self.clock.club.time_zone)

    def _is_given_up(self, entry: Progress) -> bool:
        return entry.no_work_before is not None and self._local(self.as_of).date() < entry.no_work_before

    def _held_up(self, entry: Progress, end: datetime, crew: Crew) -> HeldUp:
        return HeldUp(
            since=self._local(entry.head.true_from),
            because=entry.because,
            not_before=self._local(self._reopens(end, min(_waits(self.facts.job.follow_up)))),
            together=tuple(name for name in crew.surfaces if crew.held.get(name) is entry),
            no_work_before=entry.no_work_before if self._is_given_up(entry) else None,
        )

    def _reopens(self, end: datetime, wait: timedelta) -> datetime:
        """Sand dries at night too; but somebody must be there to open the surface."""
        return self.clock.after(end + wait, 0)

    def _hours(self, moments: Sequence[datetime], together: tuple[str, ...], pace: PaceOfWork | None = None) -> Hours:
        early, likely, latest = (self._local(_at(share, moments)) for share in (_EARLY, _LIKELY, _LATEST))
        return Hours(early=early, likely=likely, latest=latest, together=together, pace=pace)

    def _local(self, moment: datetime) -> datetime:
        return moment.astimezone(self.clock.club.time_zone)


def _left(pace: PaceOfWork, place: int, spent: float) -> list[float]:
    """Working time left for the surface at a place; what took longer than it should have is taken as all but done."""
    return [
        max(0.0, for_all - min(spent, for_first))
        for for_all, for_first in zip(pace.minutes_for(place), pace.minutes_for(1), strict=True)
    ]


def _waits(follow_up: FollowUp | None) -> list[timedelta]:
    if follow_up is None:
        return [timedelta()]
    width = follow_up.to_minutes - follow_up.from_minutes
    shares = [(number + 0.5) / _FOLLOW_UPS for number in range(_FOLLOW_UPS)] if width else [0.0]
    return [timedelta(minutes=follow_up.from_minutes + share * width) for share in shares]


def _at(share: float, values: Sequence[ValueT]) -> ValueT:
    """The least value that at least this share of equally likely ones does not exceed; moments are in UTC."""
    return sorted(values)[cases_at(share, len(values)) - 1]
