"""The next competition or visitors' day on the course status, with what it meets, in the words of the notices."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import groupby
from typing import Final

from swardcast.language.voice import Voice, capital, slug_of
from swardcast.notices.chances import FEWEST
from swardcast.notices.ends import stands_still
from swardcast.notices.fixtures import fixture_in_words, meets_in_words, meets_nothing
from swardcast.notices.kinds import greens_first
from swardcast.notices.words import places_in_brief
from swardcast.outlook.closures import Touch, begun_and_not, likely_closed, perhaps_closed_later
from swardcast.outlook.fixtures import FixtureOutlook, fixtures_ahead
from swardcast.outlook.job_ranges import without_called_off
from swardcast.outlook.play import OPEN
from swardcast.outlook.states import CourseOutlook, JobOutlook
from swardcast.records.club import SurfaceKind
from swardcast.records.fixtures import Fixture

__all__ = ["MetSoon", "NextFixture", "next_fixtures"]

_AHEAD: Final = timedelta(days=10)
"""How far ahead a member asks of the status what a day will be like; notices have the rest: judgement."""

_MOST_MET: Final = 2
"""Lines for one fixture, greens first: judgement, what is read at a glance."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MetSoon:
    """What a fixture meets of one job: in a sentence, and the notice that tells more."""

    words: str
    notice_id: str


@dataclass(frozen=True, slots=True, kw_only=True)
class NextFixture:
    """A fixture, or two that meet the same.

    Args:
        name: with its day.
        meets: what it meets, greens first; at least one.
    """

    name: str
    meets: tuple[MetSoon, ...]


def next_fixtures(
    outlook: CourseOutlook, fixtures: Iterable[Fixture], weekdays: Sequence[int], voice: Voice
) -> Iterator[NextFixture]:
    """Say what the next fixture meets; where that is one of a series, such as each Wednesday's, also the next other.

    The other is a day of its own where there is one soon, which members ask for, however many series come before it.

    Args:
        outlook: how the course stands.
        fixtures: the club's fixtures, the first first.
        weekdays: weekdays on which work is done, 0 for Monday.
        voice: the language and the day of the reader.

    Yields:
        The first first; none where nothing is other than usual then.
    """
    dated = (without_called_off(job) for job in outlook.jobs.values() if not stands_still(job, voice))
    on_holes = [job for job in dated if _is_on_holes(job)]
    jobs = sorted(on_holes, key=lambda job: greens_first(work.surface for work in job.surfaces))
    met = [
        (fixture, tuple(_met(fixture, jobs, weekdays, voice))[:_MOST_MET]) for fixture in _soon(fixtures, outlook.as_of)
    ]
    for meets, group in groupby((one for one in met if one[1]), key=lambda one: one[1]):
        yield NextFixture(name=voice.joined([fixture_in_words(fixture, voice) for fixture, _ in group]), meets=meets)


def _soon(fixtures: Iterable[Fixture], as_of: datetime) -> list[Fixture]:
    today = as_of.date()
    coming = [one for one in fixtures if not _is_over(one, as_of) and one.first_day <= today + _AHEAD]
    if not coming or _is_alone(coming[0]):
        return coming[:1]
    others = [one for one in coming if one.series != coming[0].series]
    alone = [one for one in others if _is_alone(one)]
    return [coming[0], *(alone or others)[:1]]


def _is_over(fixture: Fixture, as_of: datetime) -> bool:
    return fixture.last_day < as_of.date() or (fixture.ends_at is not None and fixture.ends_at <= as_of)


def _is_alone(fixture: Fixture) -> bool:
    """Whether it is a day of its own, and none of a series."""
    return fixture.series == fixture.id


def _is_on_holes(job: JobOutlook) -> bool:
    """Whether it is on a hole of the course; a practice green changes no round."""
    return any(work.surface.hole is not None for work in job.surfaces)


def _met(fixture: Fixture, jobs: Sequence[JobOutlook], weekdays: Sequence[int], voice: Voice) -> Iterator[MetSoon]:
    for job in jobs:
        for one in fixtures_ahead(job, [fixture], voice.near):
            if not meets_nothing(one, job) and _matters(one, job) and (words := _words(one, job, weekdays, voice)):
                yield MetSoon(words=words, notice_id=job.job.id)


def _matters(one: FixtureOutlook, job: JobOutlook) -> bool:
    """Greens that may not be as usual; elsewhere only what is perhaps closed, or is worked on."""
    if one.in_work is not Touch.NO:
        return job.job.while_working not in OPEN or _is_of_greens(job)
    if not _is_of_greens(job):
        return False
    if one.not_normal is not None:
        return one.not_normal >= FEWEST
    return one.in_range is not Touch.NO


def _is_of_greens(job: JobOutlook) -> bool:
    return all(work.surface.kind is SurfaceKind.GREEN for work in job.surfaces)


def _words(one: FixtureOutlook, job: JobOutlook, weekdays: Sequence[int], voice: Voice) -> str:
    """As in the notice, whose work is named; but closed places are named instead, and what is to be closed by plan.

    "" where all of it begins only after that day.
    """
    if one.in_work is Touch.NO or job.job.reopens_after is None:
        return voice.say("fixtures-of-job", job=job.job.title, met=meets_in_words(one, job, voice, after_a_name=True))
    begun, to_begin = begun_and_not(likely_closed(one.fixture, job, Touch.YES, weekdays, voice.near))
    perhaps = likely_closed(one.fixture, job, Touch.PERHAPS, weekdays, voice.near)
    told = (
        ("fixtures-closed", begun),
        ("fixtures-closed-by-plan", to_begin),
        ("fixtures-perhaps-closed", perhaps),
        ("fixtures-closed-if-it-goes-on", perhaps_closed_later(one.fixture, job, voice.near)),
    )
    play, said = slug_of(job.job.while_working), []
    for phrase, works in told:
        if works:
            who = places_in_brief([work.surface for work in works], voice)
            said.append(capital(voice.say(phrase, who=who, count=len(works), play=play)))
    return voice.sentences(said)
