"""How good the dates have been, in words: the club's own promises, and the published recoveries."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from statistics import fmean
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.words import range_in_words
from swardcast.outlook.track_record import Kept
from swardcast.turf.recovery_table import RecoveryRow, recovery_table

__all__ = ["Comparison", "Comparisons", "compose_published", "compose_track_record"]

ENOUGH_JOBS: Final = 5
"""Fewer finished jobs than this say nothing about the dates: judgement."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """One line: what was computed, what came, how they compare.

    Args:
        what: the job, or where and when.
        work: the work, or "".
        notice_id: id of the job's notice, or "".
        computed: what was computed, in words.
        came: what came, in words.
        verdict: how they compare, in words.
        is_inside: whether it came as computed; None when it cannot be judged.
        source: where it was published and what had to be assumed, or "".
    """

    what: str
    work: str
    notice_id: str
    computed: str
    came: str
    verdict: str
    is_inside: bool | None
    source: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparisons:
    """What was computed beside what came: the club's own promises, or the published recoveries.

    Args:
        sentences: what they come to.
        lines: one for each job, latest first, or for each record.
    """

    sentences: tuple[str, ...]
    lines: tuple[Comparison, ...]


def compose_track_record(kept: Sequence[Kept], voice: Voice) -> Comparisons:
    """Word the club's own track record.

    Args:
        kept: finished jobs, oldest first.
        voice: the language and the day of the reader.

    Returns:
        Sentences and lines; with fewer than five judged jobs, that it is too early to judge.
    """
    judged = [one for one in kept if one.is_judged]
    lines = tuple(_line(one, voice) for one in reversed(kept))
    return Comparisons(sentences=tuple(_own_sentences(judged, voice)), lines=lines)


def _own_sentences(judged: Sequence[Kept], voice: Voice) -> Iterable[str]:
    number = len(judged)
    if number < ENOUGH_JOBS:
        jobs = "No job" if number == 0 else "1 job" if number == 1 else f"{number} jobs"
        has = "has" if number < 2 else "have"  # noqa: PLR2004 - none or one
        yield (
            f"{jobs} with a computed date {has} come to an end so far. "
            f"That is too early to judge: {ENOUGH_JOBS} are needed at the least."
        )
        return
    inside = sum(one.is_inside for one in judged)
    by_then = sum(
        one.promised.allow_until is not None and one.normal_on is not None and one.normal_on <= one.promised.allow_until
        for one in judged
    )
    late = [one.late_days for one in judged if one.late_days is not None]
    yield f"Of {number} jobs, {inside} ended inside the range that we gave on the day of the work (expected: 8 in 10)."
    yield f"{by_then} of {number} were back to normal by the day that we said to allow until (expected: 9 in 10)."
    yield f"The likely day was missed by {fmean(map(abs, late)):.1f} days on average; {_lean(fmean(late), voice)}."


def _lean(mean_days: float, voice: Voice) -> str:
    if abs(mean_days) < 0.5:  # noqa: PLR2004 - half a day is no day
        return "neither too hopeful nor too careful"
    way = "too hopeful" if mean_days > 0 else "too careful"
    return f"we were {abs(mean_days):.1f} days {way}"


def _line(one: Kept, voice: Voice) -> Comparison:
    voice = voice.on(one.done_on)
    early = one.promised.early
    from_day = f" (1 chance in 10 by {voice.day(early)})" if early and one.promised.is_given else ""
    return Comparison(
        what=one.job.title,
        work=f"Done on {_day(one.done_on, voice)}",
        notice_id=one.job.id,
        computed=capital(range_in_words(one.promised, voice)) + from_day,
        came=capital(_day(one.normal_on, voice)) if one.normal_on else "Not called back to normal yet",
        verdict=_verdict(one, voice),
        is_inside=one.is_inside if one.is_judged else None,
    )


def _day(day: date, voice: Voice) -> str:
    return voice.on(date.min).day(day)


def _verdict(one: Kept, voice: Voice) -> str:
    if one.late_days is None or not one.is_judged:
        return "Cannot be judged yet" if one.normal_on is None else "No date was given"
    side = "Inside the range" if one.is_inside else "Outside the range"
    return f"{side}, {_off(one.late_days, voice)} the likely day" if one.late_days else f"{side}, on the likely day"


def _off(days: int, voice: Voice) -> str:
    number = f"{abs(days)} day{'' if abs(days) == 1 else 's'}"
    return f"{number} after" if days > 0 else f"{number} before"


def compose_published(voice: Voice, rows: Sequence[RecoveryRow] | None = None) -> Comparisons:
    """Word the published recoveries, so that a reader sees where the model misses.

    Args:
        voice: the language.
        rows: the rows, or None for all of them.

    Returns:
        Sentences and lines.
    """
    table = recovery_table() if rows is None else rows
    dated = [row.miss_days for row in table if row.miss_days is not None]
    inside = sum(row.is_inside for row in table)
    how_many = (
        f"For {inside} of {len(table)} published recoveries the computed day lies inside the days that were seen."
    )
    how_near = (
        f"{len(dated)} of them say when to within a month. There the sum misses the middle of the days seen by "
        f"{fmean(map(abs, dated)):.1f} days on average, and leans {_to_one_side(fmean(dated), voice)}. "
        "It takes the usual temperatures of the place, since those of the days were not published."
    )
    return Comparisons(sentences=(how_many, how_near), lines=tuple(_published_line(row, voice) for row in table))


def _to_one_side(mean_days: float, voice: Voice) -> str:
    if abs(mean_days) < 0.25:  # noqa: PLR2004 - a quarter of a day is no lean
        return "to neither side"
    return f"{abs(mean_days):.1f} days to the {'late' if mean_days > 0 else 'early'} side"


def _published_line(row: RecoveryRow, voice: Voice) -> Comparison:
    recovery, days = row.recovery, round(row.computed_days)
    ends = recovery.to_day != float("inf")
    came = (
        f"{recovery.from_day:.0f} to {recovery.to_day:.0f} days"
        if ends
        else f"Not yet after {recovery.from_day:.0f} days"
    )
    if row.is_inside:
        verdict = "Fits"
    else:
        too_late = days > recovery.to_day
        by = days - recovery.to_day if too_late else recovery.from_day - days
        verdict = f"{by:.0f} day{'' if round(by) == 1 else 's'} too {'late' if too_late else 'early'}"
    kind = "Trial" if recovery.is_trial else "Report"
    assumed = f" Assumed: {'; '.join(recovery.assumed)}." if recovery.assumed else ""
    return Comparison(
        what=recovery.name,
        work=f"{kind}: {recovery.work}",
        notice_id="",
        computed=f"{capital(recovery.seen.value)} after {days} days",
        came=came,
        verdict=verdict,
        is_inside=row.is_inside,
        source=f"Source: {recovery.source}.{assumed}",
    )
