"""What to offer for this morning's entry: as it was last said, put forward by what the work has done since."""

from __future__ import annotations

import math
from collections.abc import Iterable

from swardcast.entering.kinds import PLAYS
from swardcast.entering.places import WHOLE_COURSE, phrase_for
from swardcast.entering.standing import Standing
from swardcast.notices.words import places_in_words
from swardcast.outlook.states import CourseOutlook, Milestone, SurfaceOutlook, Work
from swardcast.records.plan import Job, Play

__all__ = ["morning_offered"]


def morning_offered(standing: Standing, outlook: CourseOutlook) -> dict[str, str]:
    """Draft this morning's entry for the manager to accept or change.

    Assumes that surfaces to be worked on today are those next in the order of the work.

    Args:
        standing: what plan and log say.
        outlook: how the course stands.

    Returns:
        Answers by option: "open", "care", "temporary", "closed" and "why"; "" where there is nothing. A limit is never
        offered: it is somebody's decision, and one that stays needs no word.
    """
    play = {name: _play(surface) for name, surface in outlook.surfaces.items()}
    worked: dict[str, str] = {}
    for job in standing.jobs:
        for name in _next_today(standing, job):
            play[name] = job.while_working
            worked[name] = job.title
    surfaces = standing.records.surfaces
    offered = {"open": WHOLE_COURSE}
    for option, state in PLAYS.items():
        if option != "open":
            names = [name for name in surfaces if play[name].value == state]
            offered[option] = phrase_for(names, surfaces) if names else ""
    closed = [name for name in surfaces if play[name] in (Play.CLOSED, Play.TEMPORARY_GREEN)]
    offered["why"] = _why(standing, outlook, closed, worked)
    return offered


def _play(surface: SurfaceOutlook) -> Play:
    work, last = surface.current, surface.last_play
    match work.work if work else None:
        case Work.HEALING if work is not None:
            reopening = work.dates[Milestone.REOPENING]
            waits = work.job.reopens_after is not None and not reopening.is_fact
            if last is Play.OPEN:
                return Play.OPEN  # the manager has said so since the work
            return Play.CLOSED if waits else Play.OPEN_WITH_CARE
        case Work.UNDER_WAY if work is not None:
            return work.job.while_working
        case _:
            return last if last in (Play.CLOSED, Play.TEMPORARY_GREEN) else Play.OPEN


def _next_today(standing: Standing, job: Job) -> tuple[str, ...]:
    facts = standing.facts[job.id]
    today = standing.at.date()
    if (
        facts.called_off
        or facts.put_off
        or facts.starts > today
        or today.weekday() not in standing.records.club.working_days
    ):
        return ()
    begun = any(there.started for there in facts.surfaces.values())
    if not begun and facts.starts < today:
        return ()  # overdue: nobody has said that it begins today
    if standing.is_in_hand(job.id):
        return ()  # what is in hand comes first
    left = [name for name in job.surfaces if facts.surfaces[name].done is None]
    return tuple(left[: max(1, math.ceil(job.surfaces_a_day))])


def _why(standing: Standing, outlook: CourseOutlook, closed: Iterable[str], worked: dict[str, str]) -> str:
    surfaces = standing.records.surfaces
    titles: dict[str, list[str]] = {}
    for name in closed:
        current = outlook.surfaces[name].current
        going_on = current.job.title if current and current.work in (Work.UNDER_WAY, Work.HEALING) else ""
        if title := worked.get(name) or going_on:
            titles.setdefault(title, []).append(name)
    voice = standing.records.club.voice(standing.at.date())  # for members to read
    parts = [
        voice.say(
            "morning-closed-for-work",
            places=places_in_words((surfaces[name] for name in names), voice),
            job=title,
            count=len(names),
        )
        for title, names in titles.items()
    ]
    return voice.sentence(voice.joined(parts)) if parts else ""
