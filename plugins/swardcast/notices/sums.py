"""The sum behind a date, laid out so that a sceptic can follow it with a pocket calculator."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import reduce
from typing import Final

from swardcast.language.measures import length
from swardcast.language.voice import Voice, capital
from swardcast.notices.dates_in_words import range_in_words, says_allow_until
from swardcast.notices.ends import published_in_words
from swardcast.notices.words import percent, places_in_words, whole_percent
from swardcast.outlook.job_ranges import without_called_off
from swardcast.outlook.states import CourseOutlook, JobOutlook, Milestone, Recovery, SurfaceWork, Work
from swardcast.outlook.story import JobStory
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
    """The sum of one surface with the figures that were used: in sentences, and for the columns of two tables.

    Args:
        place: the surface.
        sentences: disturbed at the start, growth days needed, gained, to come; then the dates.
        dates: day of the work, growth so far and needed, likely by, allow until; where the last two have no days, their
            words in one.
        steps: disturbed at first, growth to come week by week, closed about, days after that.
        formula: what is left after G growth days.
    """

    place: str
    sentences: tuple[str, ...]
    dates: tuple[str, ...]
    steps: tuple[str, ...]
    formula: str


@dataclass(frozen=True, slots=True, kw_only=True)
class JobSums:
    """The sums of a job's healing surfaces.

    Args:
        notice_id: id of its notice.
        title: the job.
        what: what closes, as a key of phrases.
        in_the_notice: the date of the whole job, as its notice gives it.
        rows: one for each surface that heals, the one with the latest likely day first.
    """

    notice_id: str
    title: str
    what: str
    in_the_notice: str
    rows: tuple[SumRow, ...]


@dataclass(frozen=True, slots=True)
class _Healing:
    """Work on a surface that heals, with growth days since its day 0."""

    work: SurfaceWork
    recovery: Recovery
    gained: float


def job_sums(outlook: CourseOutlook, stories: Mapping[str, JobStory], voice: Voice) -> tuple[JobSums, ...]:
    """Lay out the sums of everything that is healing.

    Args:
        outlook: the course at the moment.
        stories: published dates by job.
        voice: the language and the day of the reader.

    Returns:
        A table for each job that has healing surfaces with a computed date.
    """
    tables = ((job, list(_healing(job))) for job in outlook.jobs.values())
    return tuple(_table(job, stories[job.job.id], healing, voice) for job, healing in tables if healing)


def _healing(job: JobOutlook) -> Iterator[_Healing]:
    if job.job.normal_after is not None:
        return
    for work in sorted(job.surfaces, key=_last_first):
        recovery = work.recovery
        if work.work is Work.HEALING and recovery is not None and recovery.growth_so_far is not None:
            yield _Healing(work=work, recovery=recovery, gained=recovery.growth_so_far)


def _last_first(work: SurfaceWork) -> int:
    likely = work.dates[Milestone.BACK_TO_NORMAL].likely
    return -(likely or date.max).toordinal()


def _table(job: JobOutlook, story: JobStory, healing: Sequence[_Healing], voice: Voice) -> JobSums:
    return JobSums(
        notice_id=job.job.id,
        title=job.job.title,
        what=_what(healing[0].recovery),
        in_the_notice=published_in_words(story.published, without_called_off(job), voice),
        rows=tuple(_row(one, voice) for one in healing),
    )


def _row(one: _Healing, voice: Voice) -> SumRow:
    return SumRow(
        place=capital(places_in_words([one.work.surface], voice)),
        sentences=tuple(_sentences(one.work, one.recovery, one.gained, voice)),
        dates=tuple(_dates(one, voice)),
        steps=tuple(_steps(one, voice)),
        formula=left_formula(one.recovery.layers, one.recovery.pace.middle, voice),
    )


def _dates(one: _Healing, voice: Voice) -> Iterator[str]:
    gained, needed = _growth(one.gained, voice), _growth(one.recovery.growth_needed(HOLES_CLOSED), voice)
    yield _few_letters(one.recovery.start, voice)
    yield voice.say("sums-gained-of-needed", gained=gained, needed=needed)
    normal = one.work.dates[Milestone.BACK_TO_NORMAL]
    if says_allow_until(normal, voice) and normal.likely and normal.allow_until:
        yield _few_letters(normal.likely, voice)
        yield _few_letters(normal.allow_until, voice)
    else:
        yield range_in_words(normal, voice, briefly=True)


def _steps(one: _Healing, voice: Voice) -> Iterator[str]:
    recovery, nothing = one.recovery, voice.say("sums-no-figure")
    to_go = growth_to_go(recovery.growth_needed(HOLES_CLOSED), one.gained)
    yield percent(recovery.day_zero, voice)
    yield _week_after_week(_weeks(recovery.weeks_ahead, to_go), voice) if to_go > 0 else nothing
    yield _few_letters(recovery.closes_on, voice) if recovery.closes_on is not None else nothing
    yield voice.number(round(recovery.lag_days)) if recovery.lag_days > 0 else nothing


def _few_letters(day: date, voice: Voice) -> str:
    return voice.tick_day(day) if day.year == voice.near.year else voice.short_day(day)


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
    shown = _weeks(weeks, to_go)
    growth = _week_after_week(shown, voice)
    phrase = "sums-weeks.and-so-on" if sum(shown) < to_go else "sums-weeks"
    return voice.say(phrase, growth=growth, count=len(shown))


def _weeks(weeks: Sequence[float], to_go: float) -> Sequence[float]:
    """As many weeks as are needed, and one at least."""
    shown, total = 0, 0.0
    while shown < len(weeks) and (shown == 0 or total < to_go):
        total += weeks[shown]
        shown += 1
    return weeks[:shown]


def _week_after_week(weeks: Sequence[float], voice: Voice) -> str:
    return reduce(
        lambda first, next_: voice.say("sums-week-after-week", first=first, next=next_),
        [_growth(week, voice) for week in weeks],
    )


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
