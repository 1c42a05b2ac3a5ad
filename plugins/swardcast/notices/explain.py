"""Where a surface's dates come from, step by step, so that a sceptic can follow with a pocket calculator."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from swardcast.notices.reasons import reason_in_words
from swardcast.notices.words import capital, day_in_words, moment_in_words, percent, range_in_words
from swardcast.outlook.states import CourseOutlook, Milestone, Recovery, SurfaceOutlook, SurfaceWork
from swardcast.records.operations import Grooving, Operation, Tining
from swardcast.records.translate import opening_of
from swardcast.turf.growth import GRASSES
from swardcast.turf.healing import BACK_TO_NORMAL_LAG_DAYS, HOLES_CLOSED, SETTLED, growth_days_needed
from swardcast.turf.sand import HIDING_DEPTH_MM, hidden_fraction

__all__ = ["Explanation", "explain_surface"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """A part of an explanation: a heading and its lines, each with the source it came from or ""."""

    heading: str
    lines: tuple[tuple[str, str], ...]


def explain_surface(surface: SurfaceOutlook, outlook: CourseOutlook) -> list[Explanation]:
    """Explain a surface's state and dates.

    Args:
        surface: the surface.
        outlook: the course at the moment.

    Returns:
        Parts in order: play, then each job on the surface, oldest first.
    """
    near = outlook.as_of.date()
    play = [(f"{capital(surface.play.value)}. {reason_in_words(surface.reasons[0], near)}", surface.reasons[0].source)]
    parts = [Explanation(heading="Play", lines=tuple(play))]
    jobs = sorted(outlook.jobs.values(), key=lambda job: (job.starts, job.job.id))
    works = [work for job in jobs for work in job.surfaces if work.surface.id == surface.surface.id]
    parts += [
        Explanation(heading=f"{work.job.title}: {work.work.value}", lines=tuple(_job(work, near))) for work in works
    ]
    return parts


def _job(work: SurfaceWork, near: date) -> Iterator[tuple[str, str]]:
    for reason in work.reasons:
        yield reason_in_words(reason, near), reason.source
    if work.recovery is not None and work.job.normal_after is None:
        yield from _sum(work, work.recovery, near)
    for milestone in Milestone:
        given = work.dates[milestone]
        if given.likely is not None or milestone is Milestone.BACK_TO_NORMAL:
            early = (
                f" (1 chance in 10 by {day_in_words(given.early, near)})" if given.early and not given.is_fact else ""
            )
            yield f"{capital(milestone.value)}: {range_in_words(given, near)}{early}.", "computed"


def _sum(work: SurfaceWork, recovery: Recovery, near: date) -> Iterator[tuple[str, str]]:
    for operation in work.operations:
        for line in _opening_lines(operation):
            yield line, f"{work.job.file}, line {work.job.line}"
    for line in (*_day_zero(recovery, near), *_rate(recovery, near), *_growth(work, recovery)):
        yield line, "computed"
    if recovery.growth_so_far is not None:
        yield f"Growth days gained up to yesterday: {recovery.growth_so_far:.1f}.", "weather/observed.csv"
    yield f"Growth days to be expected in the coming week: {recovery.growth_a_week:.1f}.", "weather"


def _day_zero(recovery: Recovery, near: date) -> Iterator[str]:
    sums = recovery.sums
    if sums.spread_mm > 0:
        yield (
            f"Sand: {sums.spread_mm:.2f} mm spread, {sums.infill_mm:.2f} mm fits into holes and grooves, "
            f"{sums.surplus_mm:.2f} mm stays on top and hides {percent(hidden_fraction(sums.surplus_mm))} of the leaf "
            f"(1 - exp(-{sums.surplus_mm:.2f} / {HIDING_DEPTH_MM:g}); bulk density {sums.density_t_per_m3:g} t/m3)."
        )
    if recovery.before > 0:
        yield f"Earlier work had left {percent(recovery.before)} of the surface disturbed on that day."
    on = day_in_words(recovery.start, near)
    yield f"Disturbed on day 0, {on}: {percent(recovery.day_zero)} of the surface."


def _opening_lines(operation: Operation) -> Iterator[str]:
    opening = opening_of(operation)
    if opening is None:
        return
    match operation:
        case Tining():
            pattern = f"{operation.across_mm:g} x {operation.along_mm:g}"
            formula = f"3.1416 x {operation.diameter_mm:g}² / (4 x {pattern})"
            bore = operation.inside_diameter_mm or operation.diameter_mm
            room = f"holes {bore:g} mm inside and {operation.depth_mm:g} mm deep"
        case Grooving():
            formula = f"{operation.blade_mm:g} / {operation.spacing_mm:g}"
            room = f"grooves {operation.depth_mm:g} mm deep"
        case _:
            return
    said = formula + (f" x {operation.passes} passes" if operation.passes > 1 else "")
    share, lasting = percent(opening.area_fraction), percent(opening.lasting_share)
    counted = "" if opening.lasting_share == 1 else f", of which {lasting} counts (nothing is taken out)"
    yield f"{capital(operation.kind.value)}: {said} = {share} of the surface{counted}."
    yield f"Room for sand: {room} take {opening.room_mm:.2f} mm."


def _rate(recovery: Recovery, near: date) -> Iterator[str]:
    yield f"Healing rate before anything was seen: {recovery.prior.per_growth_day:.2f} per growth day."
    for at, left, growth in recovery.shown:
        when = moment_in_words(at, near)
        yield f"Seen at {when}: {percent(left)} of the first marks left after {growth:.1f} growth days."
    if recovery.shown:
        rate = recovery.rate.per_growth_day
        yield f"Healing rate after that: {rate:.3f} per growth day (a look counts only as far as it can be trusted)."


def _growth(work: SurfaceWork, recovery: Recovery) -> Iterator[str]:
    grass = work.surface.grass
    if grass is not None:
        curve = GRASSES[grass.value].curve
        formula = f"exp(-((T - {curve.optimum_c:g}) / {curve.width_c:g})² / 2)"
        yield f"Growth of a day: {formula}, {grass.value} grass, T its mean in °C."
    rate = recovery.rate.per_growth_day
    rim = recovery.sums.half_width_mm
    settled = growth_days_needed(recovery.day_zero, SETTLED, rate_per_growth_day=rate)
    closed = growth_days_needed(recovery.day_zero, HOLES_CLOSED, rate_per_growth_day=rate, half_width_mm=rim)
    day_zero = 100 * recovery.day_zero
    yield f"Growth days needed to settle: ln({day_zero:.1f} / {100 * SETTLED:.0f}) / {rate:.3f} = {settled:.1f}."
    yield f"Growth days needed to close: ln({day_zero:.1f} / {100 * HOLES_CLOSED:.0f}) / {rate:.3f} = {closed:.1f}."
    if recovery.sums.openings:
        yield f"Back to normal: {BACK_TO_NORMAL_LAG_DAYS:.0f} days after holes closed."
