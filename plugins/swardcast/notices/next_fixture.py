"""The next competition or visitors' day on the course status, with what it meets, in the words of the notices."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import groupby
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.chances import FEWEST
from swardcast.notices.ends import has_no_day
from swardcast.notices.fixtures import fixture_in_words, meets_in_words, meets_nothing
from swardcast.notices.words import places_in_brief
from swardcast.outlook.fixtures import FixtureOutlook, Touch, fixtures_ahead, likely_closed
from swardcast.outlook.job_ranges import without_called_off
from swardcast.outlook.play import OPEN
from swardcast.outlook.states import CourseOutlook, JobOutlook
from swardcast.records.club import SurfaceKind
from swardcast.records.fixtures import Fixture

__all__ = ["MetSoon", "NextFixture", "next_fixtures"]

_AHEAD: Final = timedelta(days=10)
"""How far ahead a member asks of the status what a day will be like; notices have the rest: judgement."""

_MOST_FIXTURES: Final = 2
_MOST_MET: Final = 2
"""Lines for one fixture, greens first: judgement, what is read at a glance."""

_FIRST: Final = (SurfaceKind.GREEN, SurfaceKind.TEE, SurfaceKind.FAIRWAY)


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


def next_fixtures(outlook: CourseOutlook, fixtures: Iterable[Fixture], voice: Voice) -> Iterator[NextFixture]:
    """Say what the next fixture meets; where that is one of a series, such as each Wednesday's, also the next other.

    Args:
        outlook: how the course stands.
        fixtures: the club's fixtures, the first first.
        voice: the language and the day of the reader.

    Yields:
        The first first; none where nothing is other than usual then.
    """
    dated = (without_called_off(job) for job in outlook.jobs.values() if not has_no_day(job, voice))
    jobs = sorted((job for job in dated if _is_on_holes(job)), key=_greens_first)
    met = [(fixture, tuple(_met(fixture, jobs, voice))[:_MOST_MET]) for fixture in _soon(fixtures, outlook.as_of)]
    for meets, group in groupby((one for one in met if one[1]), key=lambda one: one[1]):
        yield NextFixture(name=voice.joined([fixture_in_words(fixture, voice) for fixture, _ in group]), meets=meets)


def _soon(fixtures: Iterable[Fixture], as_of: datetime) -> list[Fixture]:
    today = as_of.date()
    chosen: list[Fixture] = []
    for one in fixtures:
        is_over = one.last_day < today or (one.ends_at is not None and one.ends_at <= as_of)
        if is_over or one.first_day > today + _AHEAD or one.series in {other.series for other in chosen}:
            continue
        chosen.append(one)
        if one.series == one.id:
            break  # a day of its own, which members ask for
    return chosen[:_MOST_FIXTURES]


def _is_on_holes(job: JobOutlook) -> bool:
    """Whether it is on a hole of the course; a practice green changes no round."""
    return any(work.surface.hole is not None for work in job.surfaces)


def _greens_first(job: JobOutlook) -> int:
    kinds = [work.surface.kind for work in job.surfaces]
    return min((_FIRST.index(kind) if kind in _FIRST else len(_FIRST) for kind in kinds), default=len(_FIRST))


def _met(fixture: Fixture, jobs: Sequence[JobOutlook], voice: Voice) -> Iterator[MetSoon]:
    for job in jobs:
        for one in fixtures_ahead(job, [fixture], voice.near):
            if not meets_nothing(one, job) and _matters(one, job):
                yield MetSoon(words=_words(one, job, voice), notice_id=job.job.id)


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


def _words(one: FixtureOutlook, job: JobOutlook, voice: Voice) -> str:
    """As in the notice; but closed places are named, and of days of work it is said of which."""
    if one.in_work is Touch.NO:
        return meets_in_words(one, job, voice)
    if job.job.reopens_after is None:
        return voice.say("fixtures-of-job", job=job.job.title, met=meets_in_words(one, job, voice, after_a_name=True))
    said = []
    for touch, phrase in ((Touch.YES, "fixtures-closed"), (Touch.PERHAPS, "fixtures-perhaps-closed")):
        if there := likely_closed(one, job, touch, voice.near):
            said.append(capital(voice.say(phrase, who=places_in_brief(there, voice), count=len(there))))
    return voice.sentences(said)
