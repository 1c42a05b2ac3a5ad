"""The steps of one surface's sum: what the work disturbed, how fast this course heals, how the grass grows."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Final

from swardcast.language.measures import bulk_density, layer, length, temperature
from swardcast.language.voice import Voice, capital
from swardcast.notices.reasons import look_in_words
from swardcast.notices.sums import left_formula, pocket_sum
from swardcast.notices.words import percent, whole_percent
from swardcast.outlook.lessons import MOST_LOG_PACE
from swardcast.outlook.sightings import Look, RollSeen
from swardcast.outlook.states import Lesson, Recovery, SurfaceWork
from swardcast.records.operations import Grooving, Operation, Stripping, Tining
from swardcast.records.translate import opening_of
from swardcast.turf.growth import GRASSES
from swardcast.turf.healing import (
    HOLE_RATE_MM_PER_GROWTH_DAY,
    OPEN_HOLES_WEIGHT,
    SAND_RATE_PER_GROWTH_DAY,
    STRIPPED_RATE_PER_GROWTH_DAY,
    Opening,
)
from swardcast.turf.pace import Pace
from swardcast.turf.sand import HIDING_DEPTH_MM, hidden_fraction

__all__ = ["explain_sum"]

_WORTH_SAYING: Final = 0.0005  # a share that is printed as 0.0 % is left out


def explain_sum(work: SurfaceWork, recovery: Recovery, voice: Voice) -> Iterator[tuple[str, str]]:
    """Lay out the sum of one surface.

    Args:
        work: the job on the surface.
        recovery: how it heals.
        voice: the language and the day of the reader.

    Yields:
        Sentences, each with the source it came from.
    """
    for operation in work.operations:
        for line in _work_done(operation, voice):
            yield line, f"{work.job.file}, line {work.job.line}"
    for line in (
        *_day_zero(recovery, voice),
        *_pace(recovery, voice),
        *_growth(work, voice),
        *pocket_sum(recovery, voice),
    ):
        yield line, "computed"


def _work_done(operation: Operation, voice: Voice) -> Iterator[str]:
    if isinstance(operation, Stripping):
        yield voice.say(
            "explain-stripped",
            kind=capital(voice.name("kind", operation.kind)),
            share=percent(operation.share, voice),
            rate=voice.number(STRIPPED_RATE_PER_GROWTH_DAY, decimals=3),
        )
    opening = opening_of(operation)
    if opening is None:
        return
    room = layer(opening.room_mm, voice, decimals=2)
    match operation:
        case Tining():
            yield _opened(operation, opening, voice)
            bore = length(operation.inside_diameter_mm or operation.diameter_mm, voice)
            depth = length(operation.depth_mm, voice)
            yield voice.say("explain-room-in-holes", width=bore, depth=depth, room=room)
        case Grooving():
            yield _opened(operation, opening, voice)
            yield voice.say("explain-room-in-grooves", depth=length(operation.depth_mm, voice), room=room)
        case _:
            pass  # nothing else opens the surface


def _opened(operation: Tining | Grooving, opening: Opening, voice: Voice) -> str:
    figure = voice.figure
    if isinstance(operation, Tining):
        pattern = f"{figure(operation.across_mm)} x {figure(operation.along_mm)}"
        formula = f"{figure(3.1416)} x {figure(operation.diameter_mm)}² / (4 x {pattern})"
    else:
        formula = f"{figure(operation.blade_mm)} / {figure(operation.spacing_mm)}"
    if operation.passes > 1:
        formula = voice.say("explain-passes", formula=formula, passes=operation.passes)
    return voice.say(
        "explain-opening" if opening.lasting_share == 1 else "explain-opening.in-part",
        kind=capital(voice.name("kind", operation.kind)),
        formula=formula,
        share=percent(opening.area_fraction, voice),
        lasting=percent(opening.lasting_share, voice),
        tool="tines" if isinstance(operation, Tining) else "blades",
    )


def _day_zero(recovery: Recovery, voice: Voice) -> Iterator[str]:
    sums = recovery.sums
    if sums.spread_mm > 0:
        yield _sand(recovery, voice)
    if sums.openings:
        widest = max(sums.openings, key=lambda opening: opening.lasting_share * opening.heals_as_mm)
        yield voice.say(
            "explain-open-holes",
            share=percent(OPEN_HOLES_WEIGHT * max(opening.lasting_share for opening in sums.openings), voice),
            rate=voice.number(HOLE_RATE_MM_PER_GROWTH_DAY, decimals=2),
            width=voice.figure(widest.heals_as_mm),
        )
    if recovery.before >= _WORTH_SAYING:
        yield voice.say("explain-earlier", share=percent(recovery.before, voice))
    yield voice.say("explain-day-zero", day=voice.day(recovery.start), share=percent(recovery.day_zero, voice))
    yield voice.say("explain-left", formula=left_formula(recovery.layers, recovery.pace.middle, voice))


def _sand(recovery: Recovery, voice: Voice) -> str:
    sums = recovery.sums
    spread = layer(sums.spread_mm, voice, decimals=2)
    if sums.surplus_mm < _WORTH_SAYING:
        return voice.say("explain-sand-fits", spread=spread)
    return voice.say(
        "explain-sand-stays",
        spread=spread,
        inside=layer(sums.infill_mm, voice, decimals=2),
        on_top=layer(sums.surplus_mm, voice, decimals=2),
        hidden=percent(hidden_fraction(sums.surplus_mm), voice),
        surplus=voice.number(sums.surplus_mm, decimals=2),
        depth=voice.figure(HIDING_DEPTH_MM),
        density=bulk_density(sums.density_t_per_m3, voice),
        settling=voice.number(SAND_RATE_PER_GROWTH_DAY, decimals=2),
    )


def _pace(recovery: Recovery, voice: Voice) -> Iterator[str]:
    yield voice.say("explain-usual-pace", pace=whole_percent(1, voice), **_spread(recovery.usual, voice))
    for lesson in recovery.lessons:
        yield _healed_before(lesson, voice)
    if recovery.lessons:
        prior = recovery.prior
        pace = percent(prior.middle, voice)
        yield voice.say("explain-pace-after-lessons", pace=pace, **_spread(prior, voice))
    if len(recovery.held_back) > 1:
        yield voice.say("explain-brakes")
    for look in recovery.looks:
        yield _looked(look, recovery.prior, voice)
    if recovery.looks:
        pace = percent(recovery.pace.middle, voice)
        yield voice.say("explain-pace-after-looks", pace=pace, **_spread(recovery.pace, voice))


def _healed_before(lesson: Lesson, voice: Voice) -> str:
    extreme = abs(lesson.log_pace) >= MOST_LOG_PACE - _WORTH_SAYING
    return voice.say(
        "explain-healed-before",
        title=lesson.title,
        day=voice.day(lesson.normal_on),
        taken=round(lesson.days_taken),
        computed=round(lesson.days_computed),
        pace=("fast" if lesson.log_pace > 0 else "slow") if extreme else "between",
        share=percent(math.exp(lesson.log_pace), voice),
    )


def _looked(look: Look, prior: Pace, voice: Voice) -> str:
    when, seen, sighting = voice.moment(look.at), look_in_words(look, voice), look.sighting
    if sighting.growth_days <= 0:
        return voice.say("explain-look.no-growth", when=when, seen=seen)
    return voice.say(
        "explain-look",
        when=when,
        seen=seen,
        of="roll" if isinstance(look.what, RollSeen) else "marks",
        share=percent(sighting.share_left, voice),
        foretold=percent(sighting.foretold(prior.middle * sighting.growth_days), voice),
        growth=voice.number(sighting.growth_days, decimals=1),
        error=percent(sighting.error, voice),
    )


def _spread(pace: Pace, voice: Voice) -> dict[str, str]:
    tenth = len(pace.logs) // 10
    return {
        "low": percent(math.exp(pace.logs[-1 - tenth]), voice),
        "high": percent(math.exp(pace.logs[tenth]), voice),
    }


def _growth(work: SurfaceWork, voice: Voice) -> Iterator[str]:
    grass = work.surface.grass
    if grass is None:
        return
    curve = GRASSES[grass.value].curve
    optimum = voice.figure(curve.optimum_c)
    yield voice.say(
        "explain-growth.held" if curve.holds_above_optimum else "explain-growth",
        formula=f"exp(-((T - {optimum}) / {voice.figure(curve.width_c)})² / 2)",
        grass=voice.name("grass", grass),
        optimum=optimum,
        best=temperature(curve.optimum_c, voice),
    )
