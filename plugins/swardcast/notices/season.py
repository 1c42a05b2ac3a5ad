"""What is planned when: work, healing and fixtures, month by month, in the words and days of the notices."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.dates_in_words import range_in_words
from swardcast.notices.headline import when_in_words
from swardcast.notices.matter import Matter
from swardcast.notices.season_fixtures import FixturesOfMonth, fixtures_of_month, meetings_of
from swardcast.notices.season_job import SeasonJob, days_in_words, season_job, state_of
from swardcast.notices.season_month import MonthOfSeason, OfMonth, in_short, month_after
from swardcast.notices.season_totals import KindTotals, season_totals
from swardcast.notices.words import few_words_for, places_in_words
from swardcast.outlook.states import DateRange, Work
from swardcast.outlook.work_days import WorkPart
from swardcast.records.club import Surface
from swardcast.records.fixtures import Fixture

__all__ = ["MonthOfSeason", "OfMonth", "Season", "SeasonJob", "compose_season", "months_in_words"]

_MONTHS_BACK: Final = 3
_MONTHS_AHEAD: Final = 12
_MONTHS_OPEN: Final = 2
"""Months that are not folded, from the reader's on: judgement, what a member plans for."""
_DAY: Final = timedelta(days=1)
_GOING_ON: Final = (Work.UNDER_WAY, Work.HELD_UP, Work.HEALING)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Season:
    """What is planned when.

    Args:
        months: from the first of what goes on or heals to the last that has work or meets a fixture, without a gap.
        beyond: what is worked on or heals after the last of them.
        no_day: work of which no day can be told, and healing without a date, or whose date has passed without a word.
        span: the months in words.
        jobs: all jobs that the months have, without what is called off, by their first day of work.
        totals: the months in figures, for each kind of surface that has a job.
        uncounted: pieces of work of which no day can be told, so that no figure counts them.
        has_fixtures: whether the club has told of any; else none is looked for.
    """

    months: tuple[MonthOfSeason, ...]
    beyond: tuple[OfMonth, ...]
    no_day: tuple[OfMonth, ...]
    span: str
    jobs: tuple[SeasonJob, ...]
    totals: tuple[KindTotals, ...]
    uncounted: int
    has_fixtures: bool

    @property
    def has_jobs(self) -> bool:
        """Whether anything is announced, or stands in its months."""
        return bool(self.jobs or self.no_day or any(month.work for month in self.months))

    @property
    def last_day(self) -> date:
        """The last day of the last month."""
        return self.months[-1].last_day


def compose_season(matters: Iterable[Matter], fixtures: Sequence[Fixture], voice: Voice) -> Season:
    """Lay out a season: at most three months back, twelve ahead.

    Args:
        matters: one for each announced job.
        fixtures: the club's fixtures, the first first.
        voice: the language and the day of the reader.

    Returns:
        The season; one month where nothing is announced.
    """
    jobs = sorted((season_job(matter) for matter in matters), key=lambda job: (job.first_day, job.matter.job.id))
    met = meetings_of((job.matter for job in jobs), fixtures, voice)
    busy = (one.first_day for one in fixtures if one.id in met)
    first, last = _first_month(jobs, voice.near), _last_month((*_last_days(jobs), *busy), voice.near)
    end = month_after(last, 1)
    starts = [first]
    while starts[-1] < last:
        starts.append(month_after(starts[-1], 1))
    shown = [
        job for job in jobs if not job.is_called_off and job.parts and first <= job.last_day and job.first_day < end
    ]
    months = [(start, month_after(start, 1) - _DAY) for start in starts]
    return Season(
        months=tuple(
            _month(month, jobs, fixtures_of_month(fixtures, met, month, voice), voice, has_fixtures=bool(fixtures))
            for month in months
        ),
        beyond=tuple(_healing(job, end, job.last_day) for job in jobs if job.parts and job.last_day >= end),
        no_day=tuple(_without_day(jobs)),
        span=months_in_words(first, last, voice),
        jobs=tuple(shown),
        totals=season_totals(shown, fixtures, (first, end - _DAY), voice),
        uncounted=sum(not job.parts and not job.matter.is_over for job in jobs),
        has_fixtures=bool(fixtures),
    )


def months_in_words(first: date, last: date, voice: Voice) -> str:
    """Say a span of months: "September 2027", "August to December 2027", "August 2027 to January 2028".

    Args:
        first: a day of the first.
        last: a day of the last, not earlier.
        voice: the language.

    Returns:
        The span.
    """
    end = voice.month_with_year(last)
    if (first.year, first.month) == (last.year, last.month):
        return capital(end)
    begin = voice.on(last).month(first)  # with its year where that is another
    return capital(voice.say("season-months-from-to", first=begin, last=end))


def _first_month(jobs: Sequence[SeasonJob], today: date) -> date:
    earliest = month_after(today, -_MONTHS_BACK)
    begun = [job for job in jobs if job.matter.outlook.work in _GOING_ON and job.last_day >= earliest]
    return max(month_after(min([*(job.first_day for job in begun), today]), 0), earliest)


def _last_days(jobs: Iterable[SeasonJob]) -> Iterator[date]:
    """The last days of work; where months would have nothing but healing, one list for all of them is enough."""
    for job in jobs:
        if job.parts or job.is_called_off:
            yield max((part.last_day for part in job.parts), default=job.first_day)


def _last_month(days: Iterable[date], today: date) -> date:
    return min(month_after(max([today, *days]), 0), month_after(today, _MONTHS_AHEAD))


def _month(
    month: tuple[date, date], jobs: Sequence[SeasonJob], fixtures: FixturesOfMonth, voice: Voice, *, has_fixtures: bool
) -> MonthOfSeason:
    start, last = month
    work = tuple(one for job in jobs if (one := _work_in(job, start, last)) is not None)
    healing = [one for job in jobs if (one := _healing_in(job, start, last)) is not None]
    name, is_over = capital(voice.month_with_year(start)), last < voice.near
    return MonthOfSeason(
        first_day=start,
        name=name,
        heading=voice.say("season-month-over", month=name) if is_over else name,
        short_name=capital(voice.tick_month(start)),
        is_over=is_over,
        is_far=start >= month_after(voice.near, _MONTHS_OPEN),
        work=work,
        healing=tuple(sorted(healing, key=lambda one: one.first or start)),
        fixtures=fixtures,
        in_short=in_short(work, len(healing), fixtures.count, voice),
        without_work=voice.say("season-no-work-entered" if is_over else "season-no-work"),
        shows_fixtures=has_fixtures and not is_over,
    )


def _work_in(job: SeasonJob, start: date, last: date) -> OfMonth | None:
    voice = job.matter.voice
    if job.is_called_off and start <= job.first_day <= last:
        return _of_month(job, voice.name("work", Work.CALLED_OFF), (job.first_day, job.first_day), ())
    if job.waits_in(start, last):
        return _waiting_in(job, (start, min(last, job.last_day_of_work)))
    parts = job.parts_within(start, last)
    if not parts:
        return None
    days = max(start, parts[0].first_day), min(last, max(part.last_day for part in parts))
    state = state_of(parts)
    told = days_in_words(days, state, voice)
    said = job.in_part(told, last) or voice.say("season-work", days=told, state=state)
    return _of_month(job, said, days, _surfaces_of(parts))


def _waiting_in(job: SeasonJob, days: tuple[date, date]) -> OfMonth:
    """It has begun, is not finished, and nobody works on it in this month."""
    voice = job.matter.voice
    state = "held-up" if job.matter.outlook.work is Work.HELD_UP else "not-finished"
    since = voice.say("when-under-way", day=voice.short_day(job.first_day))
    left = few_words_for(job.unfinished_after(days[1]), voice)
    told = _of_month(job, voice.say("season-work", days=since, state=state), days, ())
    return replace(told, where=voice.say("season-still-to-do", places=left))


def _surfaces_of(parts: Iterable[WorkPart]) -> tuple[Surface, ...]:
    return tuple(work.surface for part in parts for work in part.works)


def _healing_in(job: SeasonJob, start: date, last: date) -> OfMonth | None:
    until = job.last_day_of_healing
    if job.heals_from is None or until is None or job.heals_from > last or until < start:
        return None
    told = _healing(job, max(job.heals_from, start), min(until, last))
    soonest = job.matter.published.early or job.matter.published.likely or until
    voice, closed = job.matter.voice, job.closed_again
    if closed and start <= voice.near <= last:
        places = capital(places_in_words(closed, voice))
        return replace(told, when=voice.say("season-closed-again", said=told.when, places=places, count=len(closed)))
    return replace(told, goes_on=job.heals_from < start and soonest > last)


def _healing(job: SeasonJob, first: date, last: date) -> OfMonth:
    """Surfaces that were called back to normal are named with that day in its month, and no more after it."""
    voice, days = job.matter.voice, job.called_normal
    left = [one for one in _surfaces_of(job.parts) if one not in [there for some in days.values() for there in some]]
    earlier = [there for day, some in days.items() if day < first for there in some]
    done = [
        voice.say("season-normal-there", places=places_in_words(some, voice), when=_on(day, voice))
        for day, some in days.items()
        if first <= day <= last
    ]
    said = voice.say("season-normal", when=job.normal)
    if left and done:
        slots = {"done": voice.clauses(done), "left": capital(places_in_words(left, voice)), "when": job.normal}
        said = voice.say("season-normal-in-part", count=len(left), **slots)
    where = [one for one in _surfaces_of(job.parts) if one not in earlier] if left else ()
    return _of_month(job, said, (first, last), where or _surfaces_of(job.parts))


def _on(day: date, voice: Voice) -> str:
    return range_in_words(DateRange.known(day), voice)


def _without_day(jobs: Iterable[SeasonJob]) -> Iterator[OfMonth]:
    for job in jobs:
        work, voice = job.matter.outlook.work, job.matter.voice
        if job.matter.stands_still or work is Work.HELD_UP or (not job.parts and work is Work.PLANNED):
            told = _of_month(job, capital(when_in_words(job.matter.outlook, voice)), None, ())
            left = [one.surface for one in job.matter.outlook.surfaces if one.unreported is not None]
            yield replace(told, where=capital(few_words_for(left, voice))) if left else told
        elif job.heals_from is not None and (job.heals_until is None or job.ends_unreported):
            yield _of_month(job, voice.say("season-normal", when=job.normal), None, ())


def _of_month(job: SeasonJob, when: str, days: tuple[date, date] | None, surfaces: Iterable[Surface]) -> OfMonth:
    first, last = days or (None, None)
    return OfMonth(
        notice_id=job.matter.job.id,
        title=job.matter.job.title,
        where=_places(surfaces, job.matter),
        when=when,
        first=first,
        last=last,
        is_called_off=job.is_called_off,
    )


def _places(chosen: Iterable[Surface], matter: Matter) -> str:
    """Some surfaces in the job's order, or all of its surfaces where there are none."""
    names = {one.id for one in chosen}
    surfaces = [work.surface for work in matter.outlook.surfaces]
    return capital(few_words_for([one for one in surfaces if one.id in names] or surfaces, matter.voice))
