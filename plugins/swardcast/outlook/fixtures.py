"""Which competitions and visitors' days a job touches, and with what chance.

A fixture is judged on its first morning, or today where it has begun. A chance is that of the last of the job's
surfaces, from the same equally likely days as its dates: on the day of allow until, 1 chance in 10 at most is left. A
usual range that somebody gave has no chances: there a fixture lies before it, within it or after it.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import Enum
from typing import Final

from swardcast.outlook.closures import Touch, before_end_of, in_closure
from swardcast.outlook.job_ranges import open_works, sampled_recoveries, samples_of_last
from swardcast.outlook.states import WIDE_RANGE_DAYS, DateRange, JobOutlook, Milestone, SurfaceWork, Work
from swardcast.records.fixtures import Fixture
from swardcast.turf.milestones import chance_by

__all__ = [
    "Basis",
    "FixtureOutlook",
    "Side",
    "fixtures_ahead",
    "meeting_of",
    "side_of",
    "worth_telling",
]

_MOST_TOLD: Final = 7
"""Fixtures that a notice names besides the reassuring one: judgement, what a reader still takes in."""
_EVEN: Final = 0.5


class Side(Enum):
    """Where a fixture lies beside the day by which a job is likely back to normal."""

    BEFORE_NORMAL = "before it is likely back to normal"
    AFTER_NORMAL = "when it is likely back to normal"
    NOT_KNOWN = "not known"


class Basis(Enum):
    """What is known of the healing that a fixture meets."""

    COMPUTED = "computed"
    USUAL_RANGE = "usual range"
    NOT_KNOWN = "not known"


@dataclass(frozen=True, slots=True, kw_only=True)
class FixtureOutlook:
    """What a fixture meets of one job.

    Args:
        fixture: the fixture.
        in_work: whether it falls into the days of the work, or of the closure after it where the job has one; perhaps,
            in the days kept free for weather and within the range of the reopening.
        basis: what the rest rests on.
        not_normal: chance that the last of the surfaces is not back to normal yet, 0 to 1, or None where not computed.
        unsettled: chance that most putts do not roll true yet on the last of them, 0 to 1, or None.
        in_range: whether the fixture lies before the end of the job's range for back to normal: yes before the range,
            perhaps within, no after it; None where there is no range.
    """

    fixture: Fixture
    in_work: Touch
    basis: Basis
    not_normal: float | None
    unsettled: float | None
    in_range: Touch | None


def side_of(fixture: Fixture, published: DateRange) -> Side:
    """Tell whether a job is likely back to normal by the first morning of a fixture.

    Args:
        fixture: the fixture.
        published: the date for back to normal that stands on the site.

    Returns:
        The side; not known where no date is told.
    """
    if not published.is_given or published.likely is None:
        return Side.NOT_KNOWN
    return Side.AFTER_NORMAL if published.likely <= fixture.first_day else Side.BEFORE_NORMAL


def fixtures_ahead(outlook: JobOutlook, fixtures: Iterable[Fixture], today: date) -> tuple[FixtureOutlook, ...]:
    """List the coming fixtures that matter to a job.

    These are, as long as the work has a day and is neither over nor called off: those from the first day of the work
    until the day of allow until, and the first one from that day on, which reassures. Without such a date those of
    eight weeks where chances can be computed, and those in the days of the work. A fixture is coming until its last day
    is over.

    Args:
        outlook: how the job stands.
        fixtures: the club's fixtures, the first first.
        today: the day, in the club's local time.

    Returns:
        The fixtures that matter, the first first.
    """
    if outlook.work in (Work.CALLED_OFF, Work.BACK_TO_NORMAL) or outlook.is_put_off:
        return ()
    first_day = _first_day_of_work(outlook.surfaces, outlook.starts)
    coming = [fixture for fixture in fixtures if fixture.last_day >= max(today, first_day)]
    return tuple(_until_normal((_met(outlook, fixture, first_day, today) for fixture in coming), max(today, first_day)))


def meeting_of(
    outlook: JobOutlook, fixture: Fixture, today: date, chances_of_not: tuple[float, float] | None = None
) -> FixtureOutlook:
    """Tell what one fixture meets of a job, whether or not it matters to the notice.

    Args:
        outlook: how the job stands.
        fixture: a fixture that is not over before the work begins.
        today: the day, in the club's local time.
        chances_of_not: chances that the last of the surfaces is not back to normal, and not settled, on the fixture's
            first morning or today, where they are worked out already; used only where chances are computed.

    Returns:
        What it meets.
    """
    return _met(outlook, fixture, _first_day_of_work(outlook.surfaces, outlook.starts), today, chances_of_not)


def _until_normal(met: Iterable[FixtureOutlook], begin: date) -> Iterator[FixtureOutlook]:
    eight_weeks = begin + timedelta(days=WIDE_RANGE_DAYS)
    for one in met:
        computed = one.basis is Basis.COMPUTED and one.fixture.first_day < eight_weeks
        if one.in_range is not None or computed or one.in_work is not Touch.NO:
            yield one
        if one.in_range is Touch.NO:
            return


def _first_day_of_work(works: Sequence[SurfaceWork], planned: date) -> date:
    begun = [at.date() for work in works for at in (work.started_at, work.done_at) if at is not None]
    return min(begun, default=planned)


def _met(
    outlook: JobOutlook,
    fixture: Fixture,
    first_day: date,
    today: date,
    chances_of_not: tuple[float, float] | None = None,
) -> FixtureOutlook:
    morning = max(fixture.first_day, today)
    works = open_works(outlook.surfaces)
    normal = outlook.dates[Milestone.BACK_TO_NORMAL]
    basis = _basis(works)
    not_normal = unsettled = None
    if basis is Basis.COMPUTED:
        not_normal, unsettled = chances_of_not or (
            _chance_of_not(works, Milestone.BACK_TO_NORMAL, morning),
            _chance_of_not(works, Milestone.SETTLED, morning),
        )
    return FixtureOutlook(
        fixture=fixture,
        in_work=_in_work(outlook, max(morning, first_day)),
        basis=basis,
        not_normal=not_normal,
        unsettled=unsettled,
        in_range=before_end_of(normal, morning),
    )


def _basis(works: Sequence[SurfaceWork]) -> Basis:
    if any(work.job.normal_after is not None for work in works):
        return Basis.USUAL_RANGE
    unknown = [work for work in works if work.recovery is None and work.dates[Milestone.BACK_TO_NORMAL].likely is None]
    return Basis.NOT_KNOWN if unknown else Basis.COMPUTED


def _in_work(outlook: JobOutlook, day: date) -> Touch:
    """Compare a day, not before the first one of the work, with the end of the work or of the closure after it."""
    if outlook.work is Work.HEALING and outlook.job.reopens_after is None:
        return Touch.NO  # all surfaces are done
    return in_closure(outlook.dates, day)


def _chance_of_not(works: Sequence[SurfaceWork], milestone: Milestone, day: date) -> float:
    """The chance that the last of the surfaces has not reached a milestone by the morning of a day."""
    recoveries = sampled_recoveries(works)
    if not recoveries:
        return 0.0  # nothing has to heal
    samples, first = samples_of_last(recoveries, milestone)
    return 1.0 - chance_by(samples, (day - first).days)


def worth_telling(met: Sequence[FixtureOutlook], named: Collection[str] = ()) -> tuple[FixtureOutlook, ...]:
    """Choose what a reader can take in.

    Of a fixture that comes back, the next one and the first that has a better than even chance of surfaces back to
    normal; of all that is left the first few. The one after allow until, which reassures, always stays.

    Args:
        met: fixtures that matter, the first first.
        named: ids of fixtures that the notice names anyway, since the date crossed them; they are always chosen.

    Returns:
        The chosen ones, in the same order.
    """
    reassuring = [one for one in met[-1:] if one.in_range is Touch.NO]
    chosen: list[FixtureOutlook] = []
    told: dict[str, bool] = {}  # by series: whether one with a better than even chance was told
    for one in met[: len(met) - len(reassuring)]:
        series = one.fixture.series
        better = one.not_normal is not None and one.not_normal < _EVEN and one.in_work is Touch.NO
        if series not in told or (better and not told[series]):
            told[series] = better
            chosen.append(one)
        elif one.fixture.id in named:
            chosen.append(one)
    others = [one for one in chosen if one.fixture.id not in named][:_MOST_TOLD]
    return (*(one for one in chosen if one.fixture.id in named or one in others), *reassuring)
