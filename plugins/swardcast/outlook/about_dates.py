"""What the dates of a job on a surface rest on: a sum with all that went into it, a usual time, or nothing."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from swardcast.outlook.believed import is_validated
from swardcast.outlook.states import DateRange, NoDate, Reason, ReasonKind, Recovery
from swardcast.outlook.weather_view import WeatherView
from swardcast.records.club import Surface
from swardcast.records.plan import Job
from swardcast.turf.few_years import ENOUGH_YEARS
from swardcast.turf.growth import GRASSES

__all__ = ["about_closure", "about_dates"]


def about_dates(
    surface: Surface, job: Job, normal: DateRange, recovery: Recovery | None, view: WeatherView | None
) -> Iterator[Sequence[Reason]]:
    """Say what the dates of healing rest on.

    Args:
        surface: the surface.
        job: the job.
        normal: the date for back to normal.
        recovery: how the surface heals, or None.
        view: the weather as known, or None when there is no history.

    Yields:
        Runs of reasons.
    """
    if job.normal_after is not None:
        source = f"{job.file}, line {job.line}"
        yield (Reason(kind=ReasonKind.RULE_OF_THUMB, source=source, words=job.normal_after.source),)
    elif view is None:
        yield (Reason(kind=ReasonKind.NO_HISTORY, source="weather/history"),)
    elif normal.no_date is NoDate.TOO_FAR:
        yield (Reason(kind=ReasonKind.TOO_FAR, source="computed"),)
    elif recovery is not None:
        yield tuple(_about_sum(recovery, normal))
        yield recovery.pace_rests_on
        yield tuple(_about_records(surface, recovery, view))


def about_closure(job: Job) -> Iterator[Reason]:
    """Say whose experience a closure rests on, where the plan tells one.

    Args:
        job: the job.

    Yields:
        Reasons.
    """
    if job.reopens_after is not None:
        source = f"{job.file}, line {job.line}"
        yield Reason(kind=ReasonKind.RULE_OF_THUMB, source=source, words=job.reopens_after.source)


def _about_sum(recovery: Recovery, normal: DateRange) -> Iterator[Reason]:
    if not normal.is_given:
        yield Reason(kind=ReasonKind.NOT_THIS_SEASON, source="computed")
    yield Reason(kind=ReasonKind.COMPUTED, source="computed", at=recovery.start)


def _about_records(surface: Surface, recovery: Recovery, view: WeatherView) -> Iterator[Reason]:
    if not is_validated(surface, recovery.sums) or (surface.grass and not GRASSES[surface.grass.value].fitted):
        yield Reason(kind=ReasonKind.NOT_VALIDATED, source="computed")
    if (years := view.past_years) < ENOUGH_YEARS:
        yield Reason(kind=ReasonKind.SHORT_HISTORY, source="weather/history", count=years)
    missing = view.unobserved_days(recovery.start)
    if missing:
        yield Reason(kind=ReasonKind.WEATHER_MISSING, source="weather/observed.csv", count=missing)
