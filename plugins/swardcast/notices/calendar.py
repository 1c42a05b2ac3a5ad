"""A job as it was told at a moment -> the events of a calendar: days of work, reopening, healing."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from enum import Enum
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.dates_in_words import told_before_in_words
from swardcast.notices.hours import hours_of_all, rounded_hours
from swardcast.notices.matter import Matter
from swardcast.notices.words import few_words_for, places_in_words
from swardcast.outlook.job_ranges import range_of_all
from swardcast.outlook.reopening import Hours
from swardcast.outlook.states import Milestone, SurfaceWork, Work
from swardcast.outlook.work_days import WorkPart, work_parts
from swardcast.records.plan import Play

__all__ = ["DaySpan", "Draft", "MomentSpan", "Occasion", "Standing", "Telling", "closes_meanwhile", "drafts_of"]


_NAMED_IN_A_LINE: Final = 3  # surfaces; more of them are counted where their names are long: judgement


class Occasion(Enum):
    """What an event of the calendar is about."""

    WORK = "work"
    REOPENING = "reopening"
    HEALING = "healing"


class Standing(Enum):
    """How sure an event is."""

    TENTATIVE = "tentative"
    CONFIRMED = "confirmed"
    CANCELLED = "cancelled"


@dataclass(frozen=True, slots=True, kw_only=True)
class DaySpan:
    """Whole days, the last one included."""

    first: date
    last: date

    @property
    def last_day(self) -> date:
        """The last day on which it is still to be seen."""
        return self.last


@dataclass(frozen=True, slots=True, kw_only=True)
class MomentSpan:
    """From a local moment to another one; `ends` is None for a moment alone."""

    starts: datetime
    ends: datetime | None

    @property
    def last_day(self) -> date:
        """The last day on which it is still to be seen."""
        return (self.ends or self.starts).date()


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """An event without its history.

    Args:
        id: name for life, from the job, the occasion and its place among those of the job.
        occasion: what it is about.
        standing: how sure it is.
        span: when it is.
        summary: the event in a line.
        places: its surfaces in a few words.
        names: its surfaces by name.
        surfaces: ids of its surfaces.
        taken_back: the event in a line, to be told that it no longer holds.
    """

    id: str
    occasion: Occasion
    standing: Standing
    span: DaySpan | MomentSpan
    summary: str
    places: str
    names: str
    surfaces: frozenset[str]
    taken_back: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Telling:
    """A moment at which members were told something of a job, or could see something.

    Args:
        matter: the job as told then.
        opened: when the log first called its finished surfaces open, as known then.
        is_revision: whether the notice was revised then.
        is_by_clock: whether no record brought it, but a day or an hour that went by.
    """

    matter: Matter
    opened: Mapping[str, datetime]
    is_revision: bool
    is_by_clock: bool

    @property
    def day(self) -> date:
        """The day on which it was told."""
        return self.matter.as_of.date()


def closes_meanwhile(matter: Matter) -> bool:
    """Tell whether the work takes surfaces out of play, so that they have to open again."""
    return matter.job.while_working in (Play.CLOSED, Play.TEMPORARY_GREEN)


def drafts_of(telling: Telling) -> Iterator[Draft]:
    """Make the events of a job as it was told at a moment.

    Args:
        telling: the moment.

    Yields:
        Events; none for what was called off, and none for what no day is told of.
    """
    matter = telling.matter
    if matter.outlook.work is Work.CALLED_OFF:
        return
    parts = _parts(matter)
    for part in parts:
        yield _work(matter, part)
        reopening = _reopening(telling, part) if closes_meanwhile(matter) else None
        if reopening is not None:
            yield reopening
    healing = _healing(telling, parts)
    if healing is not None:
        yield healing


def _parts(matter: Matter) -> tuple[WorkPart, ...]:
    """Of work that did not begin on its day only that day is left: of the others nobody knows any more."""
    parts = work_parts(matter.outlook, matter.records.club.working_days)
    if not matter.has_no_day:
        return parts
    day, first = matter.outlook.starts, min((part.first_day for part in parts), default=None)
    return tuple(replace(part, first_day=day, last_day=day) for part in parts if part.first_day == first)


def _named(works: Sequence[SurfaceWork], voice: Voice) -> tuple[str, str]:
    """Surfaces in a few words, and by name; a few are named in either."""
    surfaces = [work.surface for work in works]
    names = capital(places_in_words(surfaces, voice))
    return names if len(works) <= _NAMED_IN_A_LINE else capital(few_words_for(surfaces, voice)), names


def _ids(works: Sequence[SurfaceWork]) -> frozenset[str]:
    return frozenset(work.surface.id for work in works)


def _work(matter: Matter, part: WorkPart) -> Draft:
    voice, state = matter.voice, _state(matter, part)
    places, names = _named(part.works, voice)
    event = voice.say("calendar-work", places=places, title=matter.job.title)
    return Draft(
        id=f"{matter.job.id}/work-{part.number}",
        occasion=Occasion.WORK,
        standing=Standing.CONFIRMED if state == "done" else Standing.TENTATIVE,
        span=DaySpan(first=part.first_day, last=part.last_day),
        summary=voice.say("calendar-work-in-state", work=event, state=state),
        places=places,
        names=names,
        surfaces=_ids(part.works),
        taken_back=event,
    )


def _state(matter: Matter, part: WorkPart) -> str:
    if matter.has_no_day:
        return "not-started"
    if all(work.done_at is not None for work in part.works):
        return "done"
    if any(work.unreported is not None for work in part.works):
        return "not-reported"
    states = {work.work for work in part.works}
    if Work.HELD_UP in states:
        return "held-up"
    return "planned" if states == {Work.PLANNED} else "under-way"


def _reopening(telling: Telling, part: WorkPart) -> Draft | None:
    """When the last of the surfaces should open again; a fact once the log says so."""
    matter, known = telling.matter, [telling.opened.get(work.surface.id) for work in part.works]
    facts = [at for at in known if at is not None]
    places, names = _named(part.works, matter.voice)
    said = matter.voice.say("calendar-reopening", places=places, count=len(part.works))
    is_known = len(facts) == len(part.works)
    if is_known and any(work.heals_closed_again for work in part.works):
        said = matter.voice.say("calendar-closed-again", event=said)
    when = (MomentSpan(starts=max(facts), ends=None), said) if is_known else _expected(matter, part, places)
    if when is None:
        return None
    span, summary = when
    return Draft(
        id=f"{matter.job.id}/reopening-{part.number}",
        occasion=Occasion.REOPENING,
        standing=Standing.CONFIRMED if is_known else Standing.TENTATIVE,
        span=span,
        summary=summary,
        places=places,
        names=names,
        surfaces=_ids(part.works),
        taken_back=said,
    )


def _expected(matter: Matter, part: WorkPart, places: str) -> tuple[DaySpan | MomentSpan, str] | None:
    """When surfaces should open again, and that in words; nothing where the site tells neither a day nor an hour."""
    voice, count = matter.voice, len(part.works)
    if matter.job.reopens_after is not None and not matter.has_no_day:
        days = range_of_all(part.works, Milestone.REOPENING)
        to_come = any(work.work is Work.PLANNED for work in part.works) and len(part.works) < len(
            matter.outlook.surfaces
        )
        if to_come:
            return None  # before the work on them begins the notice tells only when all are open again
        if days.likely is None or days.allow_until is None or days.is_wide:
            return None
        when = told_before_in_words(days, voice)
        said = voice.say("calendar-reopening-by", places=places, count=count, when=when)
        return DaySpan(
            first=days.allow_until, last=days.allow_until
        ), said  # no banner over weeks: one may not count on it before
    hours = [work.hours for work in part.works if work.hours is not None]
    last = hours_of_all(hours) if hours else None
    if not isinstance(last, Hours) or any(work.work is Work.PLANNED for work in part.works):
        return None  # of what is held up, or not begun, no hour is told
    starts, ends = rounded_hours(last)
    span = MomentSpan(starts=starts, ends=ends if ends > starts else None)
    return span, voice.say("calendar-reopening-expected", places=places, count=count)


def _healing(telling: Telling, parts: Sequence[WorkPart]) -> Draft | None:
    """From the day after the work to the day to allow until, and once it is over on the day on which it ended.

    Where the site tells months, no day stands here either.
    """
    matter = telling.matter
    normal, voice = matter.published, matter.voice
    if matter.leaves_turf_whole or matter.has_no_day or not parts or (normal.is_wide and not normal.is_fact):
        return None
    first, last = parts[-1].last_day + timedelta(days=1), normal.allow_until
    if last is None or last < first:
        return None
    if matter.outlook.unreported is not None and last < telling.day:
        return None  # nobody knows whether the work was done
    works = [work for part in parts for work in part.works]
    going = [work for work in works if work.work is not Work.BACK_TO_NORMAL]
    told = works if normal.is_fact or not going else going
    places, names = _named(told, voice)
    count, day = len(told), voice.day(last)
    is_over = normal.is_fact or not going or last < telling.day
    if normal.is_fact:
        together = len({work.dates[Milestone.BACK_TO_NORMAL].likely for work in told}) == 1
        phrase = "calendar-normal-again" if together else "calendar-normal-by"
        summary = voice.say(phrase, places=places, count=count, day=day)
    elif is_over:
        summary = voice.say("calendar-should-be-normal", places=places, count=count)
    else:
        when = told_before_in_words(normal, voice)  # the day does not pass by in a calendar
        summary = voice.say("calendar-healing", places=places, count=count, when=when)
    return Draft(
        id=f"{matter.job.id}/healing",
        occasion=Occasion.HEALING,
        standing=Standing.CONFIRMED if normal.is_fact else Standing.TENTATIVE,
        span=DaySpan(first=last if is_over else first, last=last),
        summary=summary,
        places=places,
        names=names,
        surfaces=_ids(told),
        taken_back=voice.say("calendar-normal-by", places=places, count=count, day=day),
    )
