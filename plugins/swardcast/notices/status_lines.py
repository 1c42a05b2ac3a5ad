"""The lines of the course status: what is not simply open, why, until when, and when that was last entered."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime
from typing import Final

from swardcast.language.voice import Voice, capital, slug_of
from swardcast.notices.ends import is_long_due_to_open, surface_work_in_words
from swardcast.notices.held_up import hope_to_go_on
from swardcast.notices.hole_marks import WORST_FIRST
from swardcast.notices.kinds import greens_first
from swardcast.notices.play import play_in_words, tees_played_elsewhere
from swardcast.notices.reasons import reason_in_words
from swardcast.notices.status_dates import StatusDate, status_dates
from swardcast.notices.words import places_in_brief, places_in_words
from swardcast.outlook.changes import is_only_computed
from swardcast.outlook.play import OPEN
from swardcast.outlook.states import (
    CourseOutlook,
    Milestone,
    ReasonKind,
    SurfaceOutlook,
    SurfaceWork,
    Unreported,
    Work,
)
from swardcast.outlook.story import JobStory
from swardcast.records.club import Club, Surface
from swardcast.records.plan import Play
from swardcast.records.standing import counts_until

__all__ = ["StatusLine", "first_end", "status_lines"]

_HEALING_OR_WORK: Final = {Work.UNDER_WAY, Work.HELD_UP, Work.HEALING}


_OUT_OF_PLAY: Final = (slug_of(Play.CLOSED), slug_of(Play.TEMPORARY_GREEN))


@dataclass(frozen=True, slots=True, kw_only=True)
class StatusLine:
    """Surfaces that share a state.

    Args:
        surfaces: their ids.
        where: which, in words; of several with long names how many, and on which holes.
        named: their names one by one where `where` only counts them, or "".
        play: play in words.
        play_key: the same as a name for styles: "open-with-care".
        meanwhile: how the holes are played while they are out of play; of what is in play while its work is held up,
            what that may shut when it goes on; or "".
        work: what is going on there in words, such as "work under way" or "healing", or "".
        state: the state of that work, or None.
        why: why.
        also: further work that is going on or healing there, or "".
        dates: milestones and their dates, in words and as dates.
        entered: when that was last entered, in words.
        is_of_another_moment: whether that is another moment than that of the latest morning entry, which stands above.
        counts_until: the moment from which that is too old, or None where it is so already.
        once_over: play from then on, in words.
        notice_id: the notice that tells more, or "".
    """

    surfaces: tuple[str, ...]
    where: str
    named: str
    play: str
    play_key: str
    meanwhile: str
    work: str
    state: Work | None
    why: str
    also: str
    dates: tuple[StatusDate, ...]
    entered: str
    is_of_another_moment: bool
    counts_until: datetime | None
    once_over: str
    notice_id: str

    @property
    def names_at_once(self) -> bool:
        """Whether its surfaces are named without being asked for: those on which nobody can play."""
        return self.play_key in _OUT_OF_PLAY

    @property
    def reason(self) -> str:
        """Why it is so, or "" where that would only repeat that nothing is known."""
        return self.why if self.notice_id or self.play_key != slug_of(Play.NOT_KNOWN) else ""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Alike:
    """What surfaces must share to stand in one line."""

    play: Play
    last_play: Play | None
    job: str
    work: Work | None
    silence: Unreported | None
    said_at: datetime | None
    together: tuple[str, ...]
    is_closed_again: bool
    others: tuple[tuple[str, Work, Unreported | None], ...]


def _alike(surface: SurfaceOutlook) -> _Alike:
    current = surface.current
    return _Alike(
        play=surface.play,
        last_play=surface.last_play,
        job=current.job.id if current else "",
        work=current.work if current else None,
        silence=current.unreported if current else None,
        said_at=surface.said_at,
        together=current.hours.together if current and current.hours else (),
        is_closed_again=current is not None and current.is_closed_again,
        others=tuple((other.job.title, other.work, other.unreported) for other in surface.others),
    )


def _with_what_members_wait_for(surface: SurfaceOutlook, outlook: CourseOutlook) -> SurfaceOutlook:
    """The surface with the work that its line is about, which may be none."""
    current = surface.current
    if current is None or (current.work not in _HEALING_OR_WORK and current.unreported is None):
        current = _silent_work(surface, outlook)
    return replace(surface, current=current)


def _silent_work(surface: SurfaceOutlook, outlook: CourseOutlook) -> SurfaceWork | None:
    """Work from which it was last said to be out of usual play, and after which nobody has said that it is so again.

    Of the end of its healing nobody has reported, or the entry that ended it was the last word on the surface.
    """
    said = surface.said_at
    if said is None or surface.last_play is Play.OPEN:
        return None
    for work in (work for job in outlook.jobs.values() for work in job.surfaces):
        if work.surface.id != surface.surface.id or work.done_at is None or work.done_at > said:
            continue
        until = work.dates[Milestone.BACK_TO_NORMAL].allow_until or date.min
        if surface.play is Play.NOT_KNOWN and is_only_computed(work) and said.date() <= until:
            return work
        if _is_finished(work) and work.done_at == said:
            return work
    return None


def _is_finished(work: SurfaceWork) -> bool:
    """Whether an entry ended it."""
    return work.work is Work.BACK_TO_NORMAL and not is_only_computed(work)


def _work_in_words(surfaces: Sequence[SurfaceOutlook], voice: Voice) -> str:
    current = surfaces[0].current
    if current is None:
        return ""
    if _is_finished(current):
        return voice.say("work-finished")
    if is_long_due_to_open([surface.current for surface in surfaces if surface.current is not None], voice):
        return voice.say("work-not-opened")
    there = [surface.surface for surface in surfaces]
    return surface_work_in_words(current.work, there, current.unreported, voice)


def status_lines(
    outlook: CourseOutlook, stories: Mapping[str, JobStory], club: Club, voice: Voice
) -> Iterable[StatusLine]:
    """Put into lines what is not simply open, and where work goes on or heals.

    Args:
        outlook: how the course stands.
        stories: published dates by job.
        club: the club.
        voice: the language and the day of the reader.

    Yields:
        Lines, most important first.
    """
    groups: dict[_Alike, list[SurfaceOutlook]] = {}
    for every in outlook.surfaces.values():
        surface = _with_what_members_wait_for(every, outlook)
        alike = _alike(surface)
        if surface.last_play in (Play.OPEN, None) and (alike.work is None or _waits_its_turn(surface, outlook)):
            continue  # of a course that is not known the sentence has said so already
        groups.setdefault(alike, []).append(surface)
    elsewhere = tees_played_elsewhere(outlook.surfaces.values())
    for alike, surfaces in sorted(groups.items(), key=lambda group: _importance(group[1])):
        story = stories.get(alike.job)
        there = [surface.surface for surface in surfaces]
        where, named = places_in_brief(there, voice), places_in_words(there, voice)
        yield StatusLine(
            surfaces=tuple(surface.surface.id for surface in surfaces),
            where=capital(where),
            named=capital(named) if named != where else "",
            play=_play_or_last(surfaces[0], alike.play, len(surfaces), voice),
            play_key=slug_of(alike.play),
            meanwhile=_meanwhile(surfaces, elsewhere, voice) or _hope(surfaces, outlook, voice),
            work=_work_in_words(surfaces, voice),
            state=alike.work,
            why=story.job.title if story else _why(surfaces[0], voice),
            also=voice.joined([_also(*other, there, voice) for other in alike.others]),
            dates=tuple(status_dates(surfaces, outlook.jobs[alike.job], story, outlook.as_of, voice)) if story else (),
            entered=voice.moment(alike.said_at) if alike.said_at else "",
            is_of_another_moment=alike.said_at is not None and alike.said_at != outlook.morning_at,
            counts_until=first_end(surfaces, club),
            once_over=_play_or_last(surfaces[0], Play.NOT_KNOWN, len(surfaces), voice),
            notice_id=alike.job,
        )


def _waits_its_turn(surface: SurfaceOutlook, outlook: CourseOutlook) -> bool:
    """Whether it was held up before its work began, and the job has gone on since with the surfaces before it."""
    current = surface.current
    if current is None or current.work is not Work.HELD_UP or current.started_at is not None:
        return False
    if current.unreported is not None:  # nobody knows whether the job goes on
        return False
    held = [r.at for r in current.reasons if r.kind is ReasonKind.HELD_UP and isinstance(r.at, datetime)]
    begun = [work.started_at for work in outlook.jobs[current.job.id].surfaces if work.started_at is not None]
    return bool(held) and any(at.timestamp() > held[-1].timestamp() for at in begun)


def _also(title: str, work: Work, silence: Unreported | None, there: Sequence[Surface], voice: Voice) -> str:
    return voice.say("status-also", job=title, work=surface_work_in_words(work, there, silence, voice))


def _meanwhile(surfaces: Sequence[SurfaceOutlook], elsewhere: Collection[str], voice: Voice) -> str:
    """The club's own words on the work there; else, of closed tees, that their holes are played from other markers."""
    if surfaces[0].play not in (Play.CLOSED, Play.TEMPORARY_GREEN):
        return ""
    current = surfaces[0].current
    if current is not None and current.work in _HEALING_OR_WORK and current.job.meanwhile:
        return capital(current.job.meanwhile)
    if all(surface.surface.id in elsewhere for surface in surfaces):
        return voice.say("meanwhile-other-markers", count=len({surface.surface.hole for surface in surfaces}))
    return ""


def _hope(surfaces: Sequence[SurfaceOutlook], outlook: CourseOutlook, voice: Voice) -> str:
    """Of surfaces that are in play while the work on them is held up, what it may shut when it goes on."""
    current = surfaces[0].current
    if surfaces[0].play not in OPEN or current is None or current.work is not Work.HELD_UP:
        return ""
    return hope_to_go_on(outlook.jobs[current.job.id], voice)


def _importance(surfaces: Sequence[SurfaceOutlook]) -> tuple[int, int, int]:
    """Greens first, then tees, since they decide a round; among them the worst first, then the most."""
    return greens_first([surfaces[0].surface]), WORST_FIRST.index(surfaces[0].play), -len(surfaces)


def _play_or_last(surface: SurfaceOutlook, play: Play, count: int, voice: Voice) -> str:
    if play is not Play.NOT_KNOWN or surface.last_play is None:
        return play_in_words(play, voice, count)
    then = play_in_words(surface.last_play, voice, count)
    if surface.said_at is None:
        return voice.say("status-not-known-then", play=then)
    return voice.say("status-not-known-since", day=voice.day(surface.said_at.date()), play=then)


def _why(surface: SurfaceOutlook, voice: Voice) -> str:
    reason = surface.reasons[0]
    return capital(reason.words) or reason_in_words(reason, voice)


def first_end(surfaces: Iterable[SurfaceOutlook], club: Club) -> datetime | None:
    """Tell when the first word on some surfaces no longer counts.

    Args:
        surfaces: the surfaces.
        club: the club.

    Returns:
        The moment, or None where nothing is known of any of them.
    """
    ends = [counts_until(one.said_at, club) for one in surfaces if one.said_at and one.play is not Play.NOT_KNOWN]
    return min(ends, default=None)
