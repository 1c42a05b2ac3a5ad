"""The sum behind a date, laid out so that a sceptic can follow it with a pocket calculator."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import reduce
from typing import Final

from swardcast.language.measures import length
from swardcast.language.voice import Voice, capital
from swardcast.notices.words import percent, places_in_words, range_in_words, whole_percent
from swardcast.outlook.states import CourseOutlook, JobOutlook, Milestone, Recovery, SurfaceWork, Work
from swardcast.turf.healing import (
    BACK_TO_NORMAL_LAG_DAYS,
    HOLES_CLOSED,
    RIM_GROWTH_MM_PER_GROWTH_DAY,
    SETTLED,
    Layers,
    Part,
)

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
    place = capital(places_in_words([work.surface], voice))
    return SumRow(place=place, sentences=tuple(_sentences(work, recovery, gained, voice)))


def _sentences(work: SurfaceWork, recovery: Recovery, gained: float, voice: Voice) -> Iterator[str]:
    needed = recovery.growth_needed(HOLES_CLOSED)
    to_go = growth_to_go(needed, gained)
    what = _what(recovery)
    yield voice.say("sums-disturbed", share=percent(recovery.day_zero, voice), day=voice.day(recovery.start))
    yield voice.say("sums-needed", needed=_growth(needed, voice), what=what, gained=_growth(gained, voice))
    if 0 < needed <= recovery.rim_growth_days:
        yield _rim(voice)
    if to_go > 0:
        weeks = weeks_in_words(recovery.weeks_ahead, to_go, voice)
        yield voice.say("sums-left", left=_growth(to_go, voice), weeks=weeks)
    if recovery.closes_on is not None:
        yield voice.say("sums-heals", what=what, when=_when(to_go), day=voice.day(recovery.closes_on))
        if recovery.lag_days > 0:
            normal = voice.day(recovery.closes_on + timedelta(days=round(recovery.lag_days)))
            yield voice.say("sums-lag", lag=_lag(recovery, voice), day=normal)
    yield voice.say("sums-normal", date=range_in_words(work.dates[Milestone.BACK_TO_NORMAL], voice))
    yield voice.say("sums-formula", formula=left_formula(recovery.layers, recovery.pace.middle, voice))


def _growth(growth_days: float, voice: Voice) -> str:
    return voice.number(growth_days, decimals=1)


def _rim(voice: Voice) -> str:
    return voice.say("sums-rim", rate=length(RIM_GROWTH_MM_PER_GROWTH_DAY, voice))


def _what(recovery: Recovery) -> str:
    return "holes" if recovery.sums.openings else "turf"


def _when(to_go: float) -> str:
    return "ahead" if to_go > 0 else "past"


def _lag(recovery: Recovery, voice: Voice) -> str:
    days, usual = round(recovery.lag_days), round(BACK_TO_NORMAL_LAG_DAYS)
    if days == usual:
        return voice.say("sums-lag-days", days=days)
    return voice.say("sums-lag-days.own-pace", days=days, usual=usual)


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
    growth = reduce(
        lambda first, next_: voice.say("sums-week-after-week", first=first, next=next_),
        [_growth(week, voice) for week in weeks[:shown]],
    )
    phrase = "sums-weeks.and-so-on" if total < to_go else "sums-weeks"
    return voice.say(phrase, growth=growth, count=shown)


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
        parts = [_part(part, pace, voice) for part in layer if part.amount >= _PRINTED]
        if not parts:
            continue
        largest = parts[0] if len(parts) == 1 else voice.say("sums-largest", parts=voice.clauses(parts))
        factors.append(f"(1 - {largest})")
    return f"1 - {''.join(factors)}"


def _part(part: Part, pace: float, voice: Voice) -> str:
    amount, rate = (voice.number(value, decimals=3) for value in (part.amount, part.per_growth_day * pace))
    return f"{amount} x exp(-{rate} G)"


def pocket_sum(recovery: Recovery, voice: Voice) -> Iterator[str]:
    """Write the sum from growth to days.

    Args:
        recovery: how a surface heals.
        voice: the language and the day of the reader.

    Yields:
        Sentences.
    """
    settled, closed = recovery.growth_needed(SETTLED), recovery.growth_needed(HOLES_CLOSED)
    what = _what(recovery)
    yield voice.say("pocket-settled", share=whole_percent(SETTLED, voice), needed=_growth(settled, voice))
    yield voice.say("pocket-closed", what=what, share=whole_percent(HOLES_CLOSED, voice), needed=_growth(closed, voice))
    if 0 < closed <= recovery.rim_growth_days:
        yield _rim(voice)
    gained = recovery.growth_so_far
    to_go = growth_to_go(closed, gained or 0.0)
    if gained is not None:
        yield voice.say("pocket-gained", gained=_growth(gained, voice), left=_growth(to_go, voice))
    if to_go > 0:
        phrase = "pocket-weeks" if gained is not None else "pocket-weeks.from"
        weeks = weeks_in_words(recovery.weeks_ahead, to_go, voice)
        yield voice.say(phrase, weeks=weeks, day=voice.day(recovery.start))
    if recovery.closes_on is not None:
        yield voice.say("pocket-heals", what=what, when=_when(to_go), day=voice.day(recovery.closes_on))
    if recovery.lag_days > 0:
        yield voice.say("pocket-normal", lag=_lag(recovery, voice))
