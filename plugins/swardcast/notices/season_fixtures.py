"""Competitions and visitors' days of one month, each with what it meets, in the words of the notices."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.fixtures import fixture_in_words, meets_in_words, meets_nothing
from swardcast.notices.matter import Matter
from swardcast.outlook.fixtures import fixtures_ahead
from swardcast.records.club import SurfaceKind
from swardcast.records.fixtures import Fixture

__all__ = ["FixtureOfMonth", "Meeting", "fixtures_of_month", "meetings_of"]

_FIRST: Final = (SurfaceKind.GREEN, SurfaceKind.TEE, SurfaceKind.FAIRWAY)


@dataclass(frozen=True, slots=True, kw_only=True)
class Meeting:
    """What a fixture meets of one job.

    Args:
        notice_id: the notice that tells more.
        title: the job's title.
        words: what it meets, with its chance where one is computed.
    """

    notice_id: str
    title: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FixtureOfMonth:
    """A fixture, or several of a series that meet the same.

    Args:
        name: its name with its days.
        first_days: the first day of each.
        meets: what it meets, job by job; nothing where it is clear of all announced work.
    """

    name: str
    first_days: tuple[date, ...]
    meets: tuple[Meeting, ...]


def meetings_of(matters: Iterable[Matter], fixtures: Sequence[Fixture], voice: Voice) -> dict[str, tuple[Meeting, ...]]:
    """Tell what each coming fixture meets, with the chances of the notices.

    Args:
        matters: one for each announced job.
        fixtures: the club's fixtures, the first first.
        voice: the language and the day of the reader.

    Returns:
        By the fixtures' ids, greens first, since they decide a round; nothing for one that is clear of all announced
        work.
    """
    met: dict[str, tuple[Meeting, ...]] = {}
    for matter in sorted(matters, key=_greens_first):
        if matter.has_no_day:
            continue  # no date of it holds any more, and no chance
        for one in fixtures_ahead(matter.outlook, fixtures, voice.near):
            if not meets_nothing(one, matter.outlook):
                words = meets_in_words(one, matter.outlook, voice)
                meeting = Meeting(notice_id=matter.job.id, title=matter.job.title, words=words)
                met[one.fixture.id] = (*met.get(one.fixture.id, ()), meeting)
    return met


def _greens_first(matter: Matter) -> int:
    kinds = [work.surface.kind for work in matter.outlook.surfaces]
    return min(_FIRST.index(kind) if kind in _FIRST else len(_FIRST) for kind in kinds)


def fixtures_of_month(
    fixtures: Iterable[Fixture], met: Mapping[str, tuple[Meeting, ...]], month: tuple[date, date], voice: Voice
) -> tuple[FixtureOfMonth, ...]:
    """List the fixtures of a month that are still to come, or go on.

    Args:
        fixtures: the club's fixtures, the first first.
        met: what each meets, by its id.
        month: its first and its last day.
        voice: the language and the day of the reader.

    Returns:
        Fixtures by their days; those of a series that meet the same stand together.
    """
    alike: dict[tuple[str, tuple[Meeting, ...]], list[Fixture]] = {}
    for one in fixtures:
        if one.last_day >= voice.near and month[0] <= max(one.first_day, voice.near) <= month[1]:
            alike.setdefault((one.series, met.get(one.id, ())), []).append(one)
    return tuple(
        FixtureOfMonth(name=_named(group, voice), first_days=tuple(one.first_day for one in group), meets=meets)
        for (_, meets), group in alike.items()
    )


def _named(group: Sequence[Fixture], voice: Voice) -> str:
    if len(group) == 1:
        return fixture_in_words(group[0], voice)
    days = voice.joined([voice.day(one.first_day) for one in group])
    return voice.say("season-fixture-days", name=group[0].name, days=days)
