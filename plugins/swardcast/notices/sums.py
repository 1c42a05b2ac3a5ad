"""The sum behind a date, laid out so that a sceptic can follow it with a pocket calculator."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.words import percent, range_in_words
from swardcast.outlook.states import CourseOutlook, JobOutlook, Milestone, Recovery, SurfaceWork, Work
from swardcast.turf.healing import BACK_TO_NORMAL_LAG_DAYS, HOLES_CLOSED, SETTLED, Layers

__all__ = ["JobSums", "SumRow", "growth_to_go", "job_sums", "left_formula", "pocket_sum", "weeks_in_words"]

_PRINTED: Final = 0.0005  # a part that is printed as 0.000 is left out


@dataclass(frozen=True, slots=True, kw_only=True)
class SumRow:
    """The sum of one surface, in sentences with the figures that were used.

    Args:
        place: the surface.
        sentences: disturbed at the start, growth days needed, gained, to come; then the dates.
    """

    place: str
    sentences: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class JobSums:
    """The sums of a job's healing surfaces.

    Args:
        notice_id: id of its notice.
        title: the job.
        rows: one for each surface that heals.
    """

    notice_id: str
    title: str
    rows: tuple[SumRow, ...]


def job_sums(outlook: CourseOutlook, voice: Voice) -> tuple[JobSums, ...]:
    """Lay out the sums of everything that is healing.

    Args:
        outlook: the course at the moment.
        voice: the language and the day of the reader.

    Returns:
        A table for each job that has healing surfaces with a computed date.
    """
    tables = ((job, tuple(_rows(job, voice))) for job in outlook.jobs.values())
    return tuple(JobSums(notice_id=job.job.id, title=job.job.title, rows=rows) for job, rows in tables if rows)


def _rows(job: JobOutlook, voice: Voice) -> Iterator[SumRow]:
    if job.job.normal_after is not None:
        return
    healing = [work for work in job.surfaces if work.work is Work.HEALING and work.recovery is not None]
    for work in sorted(healing, key=_last_first):
        if work.recovery is not None and work.recovery.growth_so_far is not None:
            yield _row(work, work.recovery, work.recovery.growth_so_far, voice)


def _last_first(work: SurfaceWork) -> int:
    likely = work.dates[Milestone.BACK_TO_NORMAL].likely
    return -(likely or date.max).toordinal()


def _row(work: SurfaceWork, recovery: Recovery, gained: float, voice: Voice) -> SumRow:
    return SumRow(place=capital(work.surface.name), sentences=tuple(_sentences(work, recovery, gained, voice)))


def _sentences(work: SurfaceWork, recovery: Recovery, gained: float, voice: Voice) -> Iterator[str]:
    needed = recovery.growth_needed(HOLES_CLOSED)
    to_go = growth_to_go(needed, gained)
    yield f"{percent(recovery.day_zero, voice)} of the surface was disturbed on {voice.day(recovery.start)}."
    yield f"It needs {needed:.1f} growth days until {_healed(recovery, voice)}. It has gained {gained:.1f}."
    if needed > 0 and needed <= recovery.rim_growth_days:
        yield _RIM
    if to_go > 0:
        yield f"That leaves {to_go:.1f}. We expect {weeks_in_words(recovery.weeks_ahead, to_go, voice)}."
    if recovery.closes_on is not None:
        yield f"So {_heals(recovery, to_go, voice)} about {voice.day(recovery.closes_on)}."
        if recovery.lag_days > 0:
            normal = voice.day(recovery.closes_on + timedelta(days=round(recovery.lag_days)))
            yield f"Add {_lag(recovery, voice)} for the height of cut and the feed to come back: about {normal}."
    yield f"Back to normal: {range_in_words(work.dates[Milestone.BACK_TO_NORMAL], voice)}."
    yield f"In figures, left after G growth days: {left_formula(recovery.layers, recovery.pace.middle, voice)}."


_RIM: Final = "The rim of the widest hole needs that much at least: its radius at 0.9 mm per growth day."


def _healed(recovery: Recovery, voice: Voice) -> str:
    return "the holes count as closed" if recovery.sums.openings else "it counts as healed"


def _heals(recovery: Recovery, to_go: float, voice: Voice) -> str:
    if recovery.sums.openings:
        return "the holes close" if to_go > 0 else "the holes closed"
    return "it is healed" if to_go > 0 else "it was healed"


def _lag(recovery: Recovery, voice: Voice) -> str:
    days = round(recovery.lag_days)
    usual = round(BACK_TO_NORMAL_LAG_DAYS)
    return (
        f"{days} days" if days == usual else f"{days} days (the usual {usual}, at the pace that this course has shown)"
    )


def growth_to_go(needed: float, gained: float) -> float:
    """Take the growth gained from the growth needed, as both are printed.

    Args:
        needed: growth days, 0 or more.
        gained: growth days so far, 0 or more.

    Returns:
        Growth days with one decimal; above 0 as long as something is missing.
    """
    return max(0.1, round(round(needed, 1) - round(gained, 1), 1)) if gained < needed else 0.0


def weeks_in_words(weeks: Sequence[float], to_go: float, voice: Voice) -> str:
    """Say the growth to be expected, as many weeks as are needed and one at least.

    Args:
        weeks: growth days of each coming week.
        to_go: growth days still to come.
        voice: the language and the day of the reader.

    Returns:
        Such as "4.1 in the coming week" or "4.1, then 3.8 in the coming weeks".
    """
    shown, total = 0, 0.0
    while shown < len(weeks) and (shown == 0 or total < to_go):
        total += weeks[shown]
        shown += 1
    listed = ", then ".join(f"{week:.1f}" for week in weeks[:shown])
    if total < to_go:
        listed += " and so on"
    return f"{listed} in the coming week{'' if shown == 1 else 's'}"


def left_formula(layers: Layers, pace: float, voice: Voice) -> str:
    """Write the formula of what is left after G growth days, with the figures of one surface.

    Args:
        layers: the disruption on day 0.
        pace: the pace used.
        voice: the language and the day of the reader.

    Returns:
        Such as "1 - (1 - 0.433 x exp(-0.400 G))(1 - 0.100 x exp(-0.208 G))".
    """
    factors = []
    for layer in layers:
        parts = [
            f"{part.amount:.3f} x exp(-{part.per_growth_day * pace:.3f} G)" for part in layer if part.amount >= _PRINTED
        ]
        if not parts:
            continue
        largest = parts[0] if len(parts) == 1 else f"the largest of [{'; '.join(parts)}]"
        factors.append(f"(1 - {largest})")
    return f"1 - {''.join(factors)}"


def pocket_sum(recovery: Recovery, voice: Voice) -> Iterator[str]:
    """Write the sum from growth to days.

    Args:
        recovery: how a surface heals.
        voice: the language and the day of the reader.

    Yields:
        Sentences.
    """
    settled, closed = recovery.growth_needed(SETTLED), recovery.growth_needed(HOLES_CLOSED)
    yield f"Growth days needed to settle (left: {100 * SETTLED:.0f} %): {settled:.1f}."
    yield f"Growth days needed until {_healed(recovery, voice)} (left: {100 * HOLES_CLOSED:.0f} %): {closed:.1f}."
    if closed > 0 and closed <= recovery.rim_growth_days:
        yield _RIM
    to_go = growth_to_go(closed, recovery.growth_so_far or 0.0)
    when = "" if recovery.growth_so_far is not None else f", counted from {voice.day(recovery.start)}"
    if recovery.growth_so_far is not None:
        yield f"Growth days gained up to yesterday: {recovery.growth_so_far:.1f}, so {to_go:.1f} to go."
    if to_go > 0:
        yield f"Growth days to be expected: {weeks_in_words(recovery.weeks_ahead, to_go, voice)}{when}."
    if recovery.closes_on is not None:
        yield f"By these sums {_heals(recovery, to_go, voice)} about {voice.day(recovery.closes_on)}."
    if recovery.lag_days > 0:
        yield f"Back to normal: {_lag(recovery, voice)} after that."
