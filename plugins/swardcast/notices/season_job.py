"""One job of a season: its days of work, the months in which it waits, and the days on which it heals."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.ends import is_long_due_to_open, published_in_words
from swardcast.notices.matter import Matter
from swardcast.notices.spans import first_day_of_work, span_in_words
from swardcast.outlook.states import Milestone, Work
from swardcast.outlook.work_days import WorkPart, work_parts
from swardcast.records.club import Surface

__all__ = ["SeasonJob", "days_in_words", "season_job", "state_of"]

_DAY: Final = timedelta(days=1)
_UNFINISHED: Final = (Work.UNDER_WAY, Work.HELD_UP)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SeasonJob:
    """One job with its days.

    Args:
        matter: what its notice is made of.
        parts: its days of work; none where it is called off, or no day can be told.
        heals_from: the first day of healing, or of a closure after the work, on any of its surfaces; or None where
            nothing comes after the work.
        heals_until: the day to allow for, or the day of back to normal; today where that is over and the work still
            goes on, or the sum has it heal on by less than is told; None where there is no date. What nobody has
            reported as open is followed no further: from then on nobody knows.
    """

    matter: Matter
    parts: tuple[WorkPart, ...]
    heals_from: date | None
    heals_until: date | None

    @property
    def first_day(self) -> date:
        """Its first day of work as it stands now."""
        return min((part.first_day for part in self.parts), default=self.matter.outlook.starts)

    @property
    def last_day_of_work(self) -> date:
        """The last of its days of work that can be told; today at least, while it has begun and is not finished."""
        last = max((part.last_day for part in self.parts), default=self.first_day)
        outlook = self.matter.outlook
        stands = outlook.work in _UNFINISHED and any(work.done_at is None for work in outlook.surfaces)
        stands = stands and outlook.unreported is None  # else nobody knows whether it still waits
        return max(last, self.matter.voice.near) if self.parts and stands else last

    @property
    def waits(self) -> tuple[tuple[date, date], ...]:
        """Days between those of its work, and those since, as long as it is not finished: runs (first, last)."""
        runs, free = [], self.first_day
        ends = self.last_day_of_work + _DAY
        for first, last in (*((part.first_day, part.last_day) for part in self.parts), (ends, ends)):
            if first > free:
                runs.append((free, first - _DAY))
            free = max(free, last + _DAY)
        return tuple(runs)

    @property
    def last_day_of_healing(self) -> date | None:
        """The last day on which it heals as far as that is known: where there is no date, today or its last report."""
        if self.heals_from is None:
            return None
        silence = self.matter.outlook.unreported
        known_until = self.matter.voice.near if silence is None else silence.last_report.date()
        return self.heals_until or max(self.heals_from, known_until)

    @property
    def last_day(self) -> date:
        """The last day on which it is worked on, waits or heals, as far as that is known."""
        return max(self.last_day_of_work, self.heals_until or self.last_day_of_work)

    @property
    def ends_unreported(self) -> bool:
        """Whether its day to allow for is past, and no entry calls the surfaces open that were done."""
        is_past = self.matter.published.passed_untold(self.matter.voice.near)
        return is_past and is_long_due_to_open(self.matter.outlook.surfaces, self.matter.voice)

    @property
    def is_called_off(self) -> bool:
        """Whether it is called off on all its surfaces."""
        return self.matter.outlook.work is Work.CALLED_OFF

    @property
    def days(self) -> str:
        """All its days of work, as its notice says them."""
        days = self.first_day, max((part.last_day for part in self.parts), default=self.first_day)
        said = days_in_words(days, state_of(self.parts), self.matter.voice)
        return self.in_part(said, days[1]) or said

    def in_part(self, days: str, last: date) -> str:
        """Say how many surfaces are done of work that nobody reports on any more.

        Args:
            days: days of its work in words.
            last: the last of these.

        Returns:
            The days with the number, or "" of any other work.
        """
        works = [work for work in self.matter.outlook.surfaces if work.work is not Work.CALLED_OFF]
        if self.matter.outlook.unreported is None or not self.parts:
            return ""
        done = sum(work.done_at is not None and work.done_at.date() <= last for work in works)
        return self.matter.voice.say("season-work-in-part", days=days, done=done, count=len(works))

    @property
    def normal(self) -> str:
        """The published date for back to normal, as its notice says it."""
        return published_in_words(self.matter.published, self.matter.outlook, self.matter.voice)

    @property
    def called_normal(self) -> dict[date, list[Surface]]:
        """The surfaces that an entry called back to normal, by the day of that, the first first."""
        days: dict[date, list[Surface]] = {}
        for work in self.matter.outlook.surfaces:
            normal = work.dates[Milestone.BACK_TO_NORMAL]
            if work.work is Work.BACK_TO_NORMAL and normal.is_fact and normal.likely is not None:
                days.setdefault(normal.likely, []).append(work.surface)
        return dict(sorted(days.items()))

    @property
    def closed_again(self) -> list[Surface]:
        """The surfaces that were opened after the work and are closed again while they heal."""
        works = self.matter.outlook.surfaces
        return [work.surface for work in works if work.heals_closed_again]

    def parts_within(self, first: date, last: date) -> tuple[WorkPart, ...]:
        """Give its days of work that fall into some days.

        Args:
            first: the first of these.
            last: the last of these.

        Returns:
            Those parts, in order.
        """
        return tuple(part for part in self.parts if part.first_day <= last and part.last_day >= first)

    def waits_in(self, first: date, last: date) -> bool:
        """Tell whether it has begun, is not finished, and nobody works on it on any of some days.

        Args:
            first: the first of these days.
            last: the last of these days.

        Returns:
            Whether it waits then.
        """
        return self.first_day < first <= self.last_day_of_work and not self.parts_within(first, last)

    def unfinished_after(self, last: date) -> tuple[Surface, ...]:
        """Give the surfaces that were not finished at the end of a day.

        Args:
            last: the day.

        Returns:
            They, in the job's order.
        """
        works = self.matter.outlook.surfaces
        return tuple(work.surface for work in works if work.done_at is None or work.done_at.date() > last)


def season_job(matter: Matter) -> SeasonJob:
    """Lay out the days of one job.

    Args:
        matter: what its notice is made of.

    Returns:
        The job with its days.
    """
    has_days = matter.outlook.work is not Work.CALLED_OFF and not matter.has_no_day
    parts = work_parts(matter.outlook, matter.records.club.working_days) if has_days else ()
    if matter.outlook.unreported is not None:
        parts = tuple(part for part in parts if all(work.done_at is not None for work in part.works))
    if parts:  # begun yesterday and finished today, it has been work since yesterday, as its headline says
        started = min(parts[0].first_day, first_day_of_work(matter.outlook))
        parts = (replace(parts[0], first_day=started), *parts[1:])
    begins = None if matter.is_over_with_the_work else _healing_begins(parts)
    until = _healing_ends(matter) if begins is not None else None
    if begins is not None and until is not None and until < begins:
        begins = until = None  # back to normal on the day of the work
    return SeasonJob(matter=matter, parts=parts, heals_from=begins, heals_until=until)


def _healing_begins(parts: tuple[WorkPart, ...]) -> date | None:
    """The day after the first surfaces are finished: they heal while others are worked on, or wait for it."""
    finished = [part.last_day for part in parts if any(work.work is not Work.HELD_UP for work in part.works)]
    return min(finished or [part.last_day for part in parts]) + _DAY if parts else None


def _healing_ends(matter: Matter) -> date | None:
    until = matter.published.allow_until
    goes_on = matter.outlook.work in (*_UNFINISHED, Work.HEALING)
    goes_on = goes_on and not is_long_due_to_open(matter.outlook.surfaces, matter.voice)
    if until is not None and matter.outlook.unreported is None and goes_on:
        return max(until, matter.voice.near)
    return until


def days_in_words(days: tuple[date, date], state: str, voice: Voice) -> str:
    """Say days of work; of work that goes on its notice tells when it began, but no last day.

    Args:
        days: the first and the last.
        state: a state of `state_of`.
        voice: the language and the day of the reader.

    Returns:
        The days, or since when.
    """
    if state in ("under-way", "held-up"):
        return voice.say("when-under-way", day=voice.short_day(days[0]))
    return span_in_words(*days, voice)


def state_of(parts: Iterable[WorkPart]) -> str:
    """Tell the state of some days of work.

    Args:
        parts: the days.

    Returns:
        "held-up", "done", "planned" or "under-way".
    """
    works = [work for part in parts for work in part.works]
    states = {work.work for work in works}
    if Work.HELD_UP in states:
        return "held-up"
    if all(work.done_at is not None for work in works):
        return "done"
    return "planned" if states == {Work.PLANNED} else "under-way"
