"""The curve of healing of a job, ready to be drawn."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.ends import has_no_date_until_done
from swardcast.notices.healing_words import MILESTONES, HealingMatter, Level, healing_in_words
from swardcast.notices.kinds import closed_row
from swardcast.notices.matter import Matter
from swardcast.notices.pictures import LETTERS_ON_AXIS, AsOf, FixtureMark, Tick, Told, as_of_mark, day_ticks, numbered
from swardcast.notices.words import whole_percent
from swardcast.outlook.curve import Curve, Drawn, Seen, curve_of, drawn_works, seen_of
from swardcast.outlook.fixtures import fixtures_ahead, worth_telling
from swardcast.outlook.states import DateRange, Work
from swardcast.outlook.weather_view import WeatherView
from swardcast.records.club import SurfaceKind
from swardcast.records.fixtures import Fixture
from swardcast.records.plan import Job
from swardcast.turf.healing import HOLES_CLOSED, SETTLED

__all__ = ["HealingPicture", "healing_picture"]

_PAST_THE_END: Final = 0.04  # of the axis, shown after the day to allow for: judgement
_MOST_OF_AXIS: Final = 0.7  # that the words of a level may take
_NO_END_DAYS: Final = 84  # how far the curve goes where the season brings no date: judgement
_TOPS: Final = (0.06, 0.08, 0.1, 0.12, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.8, 1.0)
_MARKS: Final = (0.0, HOLES_CLOSED, SETTLED, 0.1, 0.2, 0.3, 0.5, 0.75, 1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class HealingPicture:
    """The share of the worked surface that is still disturbed, from the first day of work to back to normal.

    Args:
        told: the picture in words.
        first: the axis's first day, the first day of work.
        last: the axis's last day.
        ticks: days that are named.
        top: the axis's largest share, 0 to 1.
        marks: shares that are named.
        levels: milestones that are shares.
        work_until: the last day of work.
        curve: the share day by day, with the band that holds 8 times in 10.
        normal: back to normal as published; no days where none may be told.
        normal_words: what stands beside it.
        as_of: the day up to which the weather is known, or None where the axis does not have it.
        seen: what was seen on the course.
        fixtures: competitions and visitors' days.
    """

    told: Told
    first: date
    last: date
    ticks: tuple[Tick, ...]
    top: float
    marks: tuple[Level, ...]
    levels: tuple[Level, ...]
    work_until: date
    curve: Curve
    normal: DateRange
    normal_words: str
    as_of: AsOf | None
    seen: tuple[Seen, ...]
    fixtures: tuple[FixtureMark, ...]


def healing_picture(matter: Matter, view: WeatherView | None) -> HealingPicture | None:
    """Lay a job's healing out for a picture.

    Assumes that the dates of the notice rest on the same view.

    Args:
        matter: what the notice is made of.
        view: the weather as known, or None.

    Returns:
        The picture, or None where no curve is computed or no date of the job holds any more.
    """
    outlook, voice = matter.outlook, matter.voice
    drawn = drawn_works(outlook)
    if view is None or drawn is None or outlook.work is Work.CALLED_OFF:
        return None
    if has_no_date_until_done(matter.published, outlook, voice):
        return None
    levels = tuple(_levels(drawn, matter.job, voice))
    first = _first_day(matter, drawn)
    last = _last(matter, drawn, levels, first)
    curve = curve_of(drawn, view, last)
    if not curve:
        return None
    told_fixtures = _fixtures(matter, last)
    seen = seen_of(drawn, view)
    top = _top([*(one.high for one in curve), *(one.share for one in seen)])
    return HealingPicture(
        told=healing_in_words(HealingMatter(matter, drawn, levels, first, curve, seen, tuple(told_fixtures))),
        first=first,
        last=last,
        ticks=day_ticks(first, last, voice),
        top=top,
        marks=tuple(Level(share=share, words=whole_percent(share, voice)) for share in _MARKS if share <= top),
        levels=levels,
        work_until=drawn.begins,
        curve=curve,
        normal=matter.published,
        normal_words=voice.say("row-back-to-normal"),
        as_of=as_of_mark(first, last, voice),
        seen=tuple(one for one in seen if first <= one.day <= last),
        fixtures=numbered(told_fixtures),
    )


def _first_day(matter: Matter, drawn: Drawn) -> date:
    begun = [at.date() for work in drawn.works for at in (work.started_at, work.done_at) if at is not None]
    return min([*(begun or [matter.outlook.starts]), *(recovery.start for recovery in drawn.recoveries)])


def _levels(drawn: Drawn, job: Job, voice: Voice) -> Iterator[Level]:
    if all(work.surface.kind is SurfaceKind.GREEN for work in drawn.works):
        yield _level(SETTLED, "row-settled", voice)
    yield _level(HOLES_CLOSED, closed_row(job), voice)


def _level(share: float, row: str, voice: Voice) -> Level:
    return Level(share=share, words=voice.say(row), on_axis=voice.say(f"picture-{row}"))


def _last(matter: Matter, drawn: Drawn, levels: Sequence[Level], first: date) -> date:
    """A bit past the day to allow for, and far enough for the words of each level beyond the curve."""
    until = matter.published.allow_until
    if until is None:
        return max(drawn.begins, matter.voice.near) + timedelta(days=_NO_END_DAYS)
    ends = [(until - first).days * (1 + _PAST_THE_END) + 1]
    for level in levels:
        crossed = drawn.reaches(MILESTONES[level.share]).allow_until
        words = min(_MOST_OF_AXIS, len(level.on_axis) / LETTERS_ON_AXIS)
        ends += [(crossed - first).days / (1 - words)] if crossed is not None else []
    return first + timedelta(days=math.ceil(max(ends)))


def _top(shares: Sequence[float]) -> float:
    return next((top for top in _TOPS if max(shares) <= top), 1.0)


def _fixtures(matter: Matter, last: date) -> list[Fixture]:
    """Those that the notice names, as far as the axis goes."""
    ahead = fixtures_ahead(matter.outlook, matter.records.fixtures, matter.voice.near)
    met = worth_telling(ahead, matter.fixtures_crossed)
    return [one.fixture for one in met if one.fixture.first_day <= last]
