"""Where a surface's dates come from, step by step, so that a sceptic can follow with a pocket calculator."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.hours import reopening_in_words
from swardcast.notices.reasons import look_in_words, reason_in_words
from swardcast.notices.sums import left_formula, pocket_sum
from swardcast.notices.words import percent, range_in_words
from swardcast.outlook.lessons import MOST_LOG_PACE
from swardcast.outlook.pace_of_work import PLAN_COUNTS_AS
from swardcast.outlook.reopening import HeldUp, Hours
from swardcast.outlook.sightings import Look, RollSeen
from swardcast.outlook.states import CourseOutlook, Milestone, Recovery, SurfaceOutlook, SurfaceWork
from swardcast.records.operations import Grooving, Operation, Stripping, Tining
from swardcast.records.translate import opening_of
from swardcast.turf.growth import GRASSES
from swardcast.turf.healing import (
    HOLE_RATE_MM_PER_GROWTH_DAY,
    OPEN_HOLES_WEIGHT,
    SAND_RATE_PER_GROWTH_DAY,
    STRIPPED_RATE_PER_GROWTH_DAY,
)
from swardcast.turf.pace import Pace
from swardcast.turf.sand import HIDING_DEPTH_MM, hidden_fraction

__all__ = ["Explanation", "explain_surface"]

_WORTH_SAYING: Final = 0.0005  # a share that is printed as 0.0 % is left out


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """A part of an explanation: a heading and its lines, each with the source it came from or ""."""

    heading: str
    lines: tuple[tuple[str, str], ...]


def explain_surface(surface: SurfaceOutlook, outlook: CourseOutlook, voice: Voice) -> list[Explanation]:
    """Explain a surface's state and dates.

    Args:
        surface: the surface.
        outlook: the course at the moment.
        voice: the language and the day of the reader.

    Returns:
        Parts in order: play, then each job on the surface, oldest first.
    """
    play = [(f"{capital(surface.play.value)}. {reason_in_words(surface.reasons[0], voice)}", surface.reasons[0].source)]
    parts = [Explanation(heading="Play", lines=tuple(play))]
    jobs = sorted(outlook.jobs.values(), key=lambda job: (job.starts, job.job.id))
    works = [work for job in jobs for work in job.surfaces if work.surface.id == surface.surface.id]
    parts += [
        Explanation(heading=f"{work.job.title}: {work.work.value}", lines=tuple(_job(work, outlook.as_of, voice)))
        for work in works
    ]
    return parts


def _job(work: SurfaceWork, as_of: datetime, voice: Voice) -> Iterator[tuple[str, str]]:
    for reason in work.reasons:
        yield reason_in_words(reason, voice), reason.source
    if work.recovery is not None and work.job.normal_after is None:
        yield from _sum(work, work.recovery, voice)
    for milestone in Milestone:
        given = work.dates[milestone]
        if milestone is Milestone.REOPENING and work.hours is not None:
            for line in (*_pace_of_work(work.hours, voice), reopening_in_words([work], as_of, voice)):
                yield f"Reopening: {line}.", "computed"
            continue
        if given.likely is not None or milestone is Milestone.BACK_TO_NORMAL:
            early = f" (1 chance in 10 by {voice.day(given.early)})" if given.early and not given.is_fact else ""
            yield f"{capital(milestone.value)}: {range_in_words(given, voice)}{early}.", "computed"


def _pace_of_work(hours: Hours | HeldUp, voice: Voice) -> Iterator[str]:
    if isinstance(hours, Hours) and hours.pace is not None:
        seen = hours.pace.seen - PLAN_COUNTS_AS
        yield (
            f"{hours.pace.minutes:.0f} minutes of working time for a surface, from {seen:.0f} finished so far and the "
            f"plan, which counts as {PLAN_COUNTS_AS:.0f}"
        )


def _sum(work: SurfaceWork, recovery: Recovery, voice: Voice) -> Iterator[tuple[str, str]]:
    for operation in work.operations:
        for line in _opening_lines(operation, voice):
            yield line, f"{work.job.file}, line {work.job.line}"
    for line in (
        *_day_zero(recovery, voice),
        *_pace(recovery, voice),
        *_growth(work, voice),
        *pocket_sum(recovery, voice),
    ):
        yield line, "computed"


def _day_zero(recovery: Recovery, voice: Voice) -> Iterator[str]:
    sums = recovery.sums
    if sums.spread_mm > 0 and sums.surplus_mm < _WORTH_SAYING:
        yield f"Sand: {sums.spread_mm:.2f} mm spread; all of it fits into holes and grooves."
    elif sums.spread_mm > 0:
        hidden = percent(hidden_fraction(sums.surplus_mm), voice)
        yield (
            f"Sand: {sums.spread_mm:.2f} mm spread, {sums.infill_mm:.2f} mm fits into holes and grooves, "
            f"{sums.surplus_mm:.2f} mm stays on top and hides {hidden} of the leaf "
            f"(1 - exp(-{sums.surplus_mm:.2f} / {HIDING_DEPTH_MM:g}); bulk density {sums.density_t_per_m3:g} t/m3). "
            f"It works in at {SAND_RATE_PER_GROWTH_DAY:.2f} per growth day."
        )
    if sums.openings:
        widest = max(sums.openings, key=lambda opening: opening.lasting_share * opening.heals_as_mm)
        counts = percent(OPEN_HOLES_WEIGHT * max(opening.lasting_share for opening in sums.openings), voice)
        yield (
            f"Open holes and grooves count as {counts} of the surface in play, whatever their spacing. They close at "
            f"{HOLE_RATE_MM_PER_GROWTH_DAY:.2f} / {widest.heals_as_mm:g} per growth day: a wide hole takes longer."
        )
    if recovery.before >= _WORTH_SAYING:
        yield f"Earlier work had left {percent(recovery.before, voice)} of the surface disturbed on that day."
    on = voice.day(recovery.start)
    yield f"Disturbed on day 0, {on}: {percent(recovery.day_zero, voice)} of the surface."
    yield f"Left after G growth days: {left_formula(recovery.layers, recovery.pace.middle, voice)}."


def _opening_lines(operation: Operation, voice: Voice) -> Iterator[str]:
    if isinstance(operation, Stripping):
        yield (
            f"{capital(operation.kind.value)}: {percent(operation.share, voice)} of the surface loses its crowns and "
            f"grows back at {STRIPPED_RATE_PER_GROWTH_DAY:.3f} per growth day."
        )
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
    share, lasting = percent(opening.area_fraction, voice), percent(opening.lasting_share, voice)
    why = "nothing is taken out" if isinstance(operation, Tining) else "a shallow cut"
    counted = "" if opening.lasting_share == 1 else f", of which {lasting} counts ({why})"
    yield f"{capital(operation.kind.value)}: {said} = {share} of the surface{counted}."
    yield f"Room for sand: {room} take {opening.room_mm:.2f} mm."


def _pace(recovery: Recovery, voice: Voice) -> Iterator[str]:
    usual = _spread(recovery.usual, voice)
    yield f"Healing pace before anything was known of this course: 100 % of the fitted one{usual}."
    for lesson in recovery.lessons:
        on = voice.day(lesson.normal_on)
        yield (
            f"Healed before: {lesson.title}, back to normal on {on} after {lesson.days_taken:.0f} days. The fitted "
            f"pace gives {lesson.days_computed:.0f}, so it healed {_at_pace(lesson.log_pace, voice)}."
        )
    if recovery.lessons:
        prior = recovery.prior
        after = f"{percent(prior.middle, voice)}{_spread(prior, voice)}"
        yield f"Healing pace after that: {after}; a healed job counts in part only."
    if len(recovery.held_back) > 1:
        yield "Different things that hold growth back multiply; the same one told twice counts once."
    for look in recovery.looks:
        when, sighting = voice.moment(look.at), look.sighting
        if sighting.growth_days <= 0:
            yield f"Seen at {when}: {look_in_words(look, voice)}. No growth since the work, so it teaches nothing yet."
            continue
        foretold = percent(sighting.foretold(recovery.prior.middle * sighting.growth_days), voice)
        yield (
            f"Seen at {when}: {look_in_words(look, voice)}. {_share_of(look, voice)}, where {foretold} was computed "
            f"after "
            f"{sighting.growth_days:.1f} growth days; such a look is right within "
            f"{percent(sighting.error, voice)}."
        )
    if recovery.looks:
        after = f"{percent(recovery.pace.middle, voice)}{_spread(recovery.pace, voice)}"
        yield f"Healing pace after what was seen: {after}."


def _at_pace(log_pace: float, voice: Voice) -> str:
    if abs(log_pace) >= MOST_LOG_PACE - _WORTH_SAYING:
        return f"more than three times as {'fast' if log_pace > 0 else 'slowly'}"
    return f"at {percent(math.exp(log_pace), voice)} of it"


def _share_of(look: Look, voice: Voice) -> str:
    share = percent(look.sighting.share_left, voice)
    return (
        f"{share} of the lost roll is still missing"
        if isinstance(look.what, RollSeen)
        else f"{share} of the first marks are left"
    )


def _spread(pace: Pace, voice: Voice) -> str:
    tenth = len(pace.logs) // 10
    low, high = (percent(math.exp(pace.logs[place]), voice) for place in (-1 - tenth, tenth))
    return f", in 8 cases of 10 from {low} to {high}"


def _growth(work: SurfaceWork, voice: Voice) -> Iterator[str]:
    grass = work.surface.grass
    if grass is not None:
        curve = GRASSES[grass.value].curve
        formula = f"exp(-((T - {curve.optimum_c:g}) / {curve.width_c:g})² / 2)"
        held = f", and 1 above {curve.optimum_c:g} °C" if curve.holds_above_optimum else ""
        yield f"Growth of a day: {formula}{held}, for {grass.value} turf, T its mean in °C."
