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
from swardcast.turf.healing import HOLES_CLOSED, SETTLED, growth_days_needed
from swardcast.turf.sand import hidden_fraction

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
    for job in sorted(outlook.jobs.values(), key=lambda job: job.starts):
        for work in job.surfaces:
            if work.surface.id == surface.surface.id:
                parts.append(Explanation(heading=f"{job.job.title}: {work.work.value}", lines=tuple(_job(work, near))))
    return parts


def _job(work: SurfaceWork, near: date) -> Iterator[tuple[str, str]]:
    for reason in work.reasons:
        yield reason_in_words(reason, near), reason.source
    if work.recovery is not None and work.job.normal_after is None:
        yield from _sum(work, work.recovery, near)
    for milestone in Milestone:
        given = work.dates[milestone]
        if given.likely is not None or milestone is Milestone.BACK_TO_NORMAL:
            early = f" (1 chance in 10 by {day_in_words(given.early, near)})" if given.early and not given.is_fact else ""
            yield f"{capital(milestone.value)}: {range_in_words(given, near)}{early}.", "computed"


def _sum(work: SurfaceWork, recovery: Recovery, near: date) -> Iterator[tuple[str, str]]:
    sums = recovery.sums
    for operation in work.job.operations:
        line = _opening_line(operation)
        if line:
            yield line, f"{work.job.file}, line {work.job.line}"
    if sums.spread_mm > 0:
        yield (
            f"Sand: {sums.spread_mm:.2f} mm spread, {sums.infill_mm:.2f} mm fits into holes and grooves, "
            f"{sums.surplus_mm:.2f} mm stays on top and hides {percent(hidden_fraction(sums.surplus_mm))} of the leaf "
            f"(1 - exp(-{sums.surplus_mm:.2f} / 2.85); bulk density {sums.density_t_per_m3:g} t/m3).",
            "computed",
        )
    if recovery.before > 0:
        yield f"Earlier work had left {percent(recovery.before)} of the surface disturbed on that day.", "computed"
    yield f"Disturbed on day 0, {day_in_words(recovery.start, near)}: {percent(recovery.day_zero)} of the surface.", "computed"
    yield from _rate(recovery, near)
    yield from _growth(work, recovery)


def _opening_line(operation: Operation) -> str:
    opening = opening_of(operation)
    if opening is None:
        return ""
    share = percent(opening.area_fraction)
    match operation:
        case Tining():
            passes = f" x {operation.passes} passes" if operation.passes > 1 else ""
            formula = f"3.1416 x {operation.diameter_mm:g}² / (4 x {operation.across_mm:g} x {operation.along_mm:g}){passes}"
        case Grooving():
            passes = f" x {operation.passes} passes" if operation.passes > 1 else ""
            formula = f"{operation.blade_mm:g} / {operation.spacing_mm:g}{passes}"
        case _:
            return ""
    counted = "" if opening.lasting_share == 1 else f", of which {percent(opening.lasting_share)} counts (nothing is taken out)"
    return f"{capital(operation.kind.value)}: {formula} = {share} of the surface{counted}."


def _rate(recovery: Recovery, near: date) -> Iterator[tuple[str, str]]:
    prior, rate = recovery.prior, recovery.rate
    yield f"Healing rate before anything was seen: {prior.per_growth_day:.2f} per growth day.", "computed"
    for at, left, growth in recovery.shown:
        yield f"Seen at {moment_in_words(at, near)}: {percent(left)} of the first marks left after {growth:.1f} growth days.", "log"
    if recovery.shown:
        yield f"Healing rate after that: {rate.per_growth_day:.3f} per growth day (each look counts only as far as it can be trusted).", "computed"


def _growth(work: SurfaceWork, recovery: Recovery) -> Iterator[tuple[str, str]]:
    grass = work.surface.grass
    curve = GRASSES[grass.value].curve if grass else None
    if grass and curve:
        yield f"Growth of a day: exp(-((T - {curve.optimum_c:g}) / {curve.width_c:g})² / 2), {grass.value} grass, T its mean in °C.", "computed"
    needs = [
        f"{milestone.value} {growth_days_needed(recovery.day_zero, threshold, rate_per_growth_day=recovery.rate.per_growth_day, half_width_mm=rim):.1f}"
        for milestone, threshold, rim in (
            (Milestone.SETTLED, SETTLED, 0.0),
            (Milestone.HOLES_CLOSED, HOLES_CLOSED, recovery.sums.half_width_mm),
        )
    ]
    yield f"Growth days needed: {', '.join(needs)}; back to normal 13 days after holes closed where there are holes.", "computed"
    if recovery.growth_so_far is not None:
        yield f"Growth days gained up to yesterday: {recovery.growth_so_far:.1f}.", "weather/observed.csv"
    yield f"Growth days to be expected in the coming week: {recovery.growth_a_week:.1f}.", "weather"
