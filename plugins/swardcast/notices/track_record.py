"""How good the dates have been, in words: the club's own promises, and the published recoveries."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from statistics import fmean
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.dates_in_words import range_in_words
from swardcast.notices.words import as_clause, whole_percent
from swardcast.outlook.track_record import Kept, Outcome
from swardcast.turf.healing import COVER_COMPLETE
from swardcast.turf.published_recoveries import PublishedRecovery, Seen
from swardcast.turf.recovery_table import RecoveryRow, recovery_table

__all__ = ["Comparison", "Comparisons", "compose_published", "compose_track_record"]

ENOUGH_JOBS: Final = 5
"""Fewer finished jobs than this say nothing about the dates: judgement."""

_NO_LEAN_DAYS: Final = 0.5  # half a day is no day
_NO_LEAN_OF_SUM_DAYS: Final = 0.25  # a quarter of a day is no lean
_SEEN: Final = {
    Seen.SETTLED: "settled",
    Seen.HOLES_CLOSED: "holes-closed",
    Seen.BACK_TO_NORMAL: "back-to-normal",
    Seen.COMPLETE_COVER: "complete-cover",
}


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


def compose_track_record(kept: Sequence[Kept], voice: Voice, *, named_from: int = date.min.year) -> Comparisons:
    """Word the club's own track record.

    Args:
        kept: finished jobs, oldest first.
        voice: the language and the day of the reader.
        named_from: the first year of which missed jobs are named in the sentences; earlier ones stand in lines alone.

    Returns:
        Sentences and lines; with fewer than five judged jobs, that it is too early to judge.
    """
    judged = [one for one in kept if one.is_judged]
    lines = tuple(_line(one, voice) for one in reversed(kept))
    silent = sum(_is_silent(one, voice.near) for one in kept)
    more = [voice.say("record-silent", count=silent)] if silent else []
    return Comparisons(sentences=(*_own_sentences(judged, voice, named_from), *more), lines=lines)


def _is_silent(one: Kept, today: date) -> bool:
    """Whether the day to allow for is over, and nobody has called all of it back to normal."""
    return one.normal_on is None and one.promised.passed_untold(today)


def _own_sentences(judged: Sequence[Kept], voice: Voice, named_from: int) -> Iterable[str]:
    number = len(judged)
    if number < ENOUGH_JOBS:
        yield voice.say("record-too-early", count=number, needed=ENOUGH_JOBS)
        return
    counts = Counter(one.outcome for one in judged)
    late = [one.late_days for one in judged if one.late_days is not None]
    mean = fmean(late)
    yield voice.say(
        "record-counts",
        count=number,
        kept=counts[Outcome.KEPT],
        missed=counts[Outcome.MISSED],
        sooner=counts[Outcome.SOONER],
    )
    yield voice.say("record-expected")
    for one in reversed(judged):
        if one.outcome is Outcome.MISSED and one.done_on.year >= named_from:
            yield voice.say("record-missed-job", job=as_clause(one.job.title), days=one.days_past_the_range)
    yield voice.say(
        "record-missed",
        missed=voice.number(fmean(map(abs, late)), decimals=1),
        days=voice.number(abs(mean), decimals=1),
        lean="neither" if abs(mean) < _NO_LEAN_DAYS else "hopeful" if mean > 0 else "careful",
    )


def _line(one: Kept, voice: Voice) -> Comparison:
    today, voice = voice.near, voice.on(one.done_on)
    early = one.promised.early if one.promised.is_given else None
    return Comparison(
        what=one.job.title,
        work=voice.say("record-done", day=_day(one.done_on, voice)),
        notice_id=one.job.id,
        computed=capital(
            voice.say(
                "record-computed.early" if early else "record-computed",
                date=range_in_words(one.promised, voice),
                early=voice.day(early) if early else "",
            )
        ),
        came=capital(_day(one.normal_on, voice)) if one.normal_on else voice.say("record-not-normal-yet"),
        verdict=_verdict(one, voice, today),
        is_inside=one.is_inside if one.is_judged else None,
    )


def _day(day: date, voice: Voice) -> str:
    return voice.on(date.min).day(day)


def _verdict(one: Kept, voice: Voice, today: date) -> str:
    until = one.promised.allow_until
    if until is not None and _is_silent(one, today):
        return voice.say("record-not-reported", day=voice.day(until))
    if one.normal_on is None:
        return voice.say("record-not-judged-yet")
    if one.late_days is None or not one.is_judged:
        return voice.say("record-no-date")
    outcome = one.outcome.value
    if one.late_days == 0:
        return voice.say("record-on-the-day")
    if one.late_days > 0:
        return voice.say("record-after", outcome=outcome, days=one.late_days, past=one.days_past_the_range)
    return voice.say("record-before", outcome=outcome, days=-one.late_days)


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
    mean = fmean(dated)
    how_near = voice.say(
        "published-missed",
        count=len(dated),
        missed=voice.number(fmean(map(abs, dated)), decimals=1),
        days=voice.number(abs(mean), decimals=1),
        lean="neither" if abs(mean) < _NO_LEAN_OF_SUM_DAYS else "late" if mean > 0 else "early",
    )
    how_many = voice.say("published-inside", inside=sum(row.is_inside for row in table), count=len(table))
    return Comparisons(sentences=(how_many, how_near), lines=tuple(_published_line(row, voice) for row in table))


def _published_line(row: RecoveryRow, voice: Voice) -> Comparison:
    recovery = row.recovery
    computed = voice.say(
        "published-computed",
        seen=_SEEN[recovery.seen],
        share=whole_percent(1 - COVER_COMPLETE, voice),
        days=round(row.computed_days),
    )
    return Comparison(
        what=recovery.name,
        work=voice.say("published-work", who="trial" if recovery.is_trial else "course", work=recovery.work),
        notice_id="",
        computed=computed,
        came=_came(recovery, voice),
        verdict=_fits(row, voice),
        is_inside=row.is_inside,
        source=voice.say(
            "published-source.assumed" if recovery.assumed else "published-source",
            source=recovery.source,
            assumed=voice.clauses(recovery.assumed),
        ),
    )


def _came(recovery: PublishedRecovery, voice: Voice) -> str:
    if math.isinf(recovery.to_day):
        return voice.say("published-not-yet", days=round(recovery.from_day))
    return voice.say("published-came", first=round(recovery.from_day), last=round(recovery.to_day))


def _fits(row: RecoveryRow, voice: Voice) -> str:
    if row.is_inside:
        return voice.say("published-fits")
    recovery, days = row.recovery, round(row.computed_days)
    if days > recovery.to_day:
        return voice.say("published-too-late", days=round(days - recovery.to_day))
    return voice.say("published-too-early", days=round(recovery.from_day - days))
