"""Competitions and visitors' days of one month, each with what it meets, in the words of the notices."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import groupby
from typing import Final

from swardcast.language.voice import Voice
from swardcast.notices.fixtures import fixture_in_words, meets_in_words, meets_nothing
from swardcast.notices.kinds import greens_first
from swardcast.notices.matter import Matter
from swardcast.outlook.fixtures import fixtures_ahead
from swardcast.records.fixtures import Fixture

__all__ = ["FixtureOfMonth", "FixturesOfMonth", "Meeting", "Together", "fixtures_of_month", "meetings_of"]

_FEWEST_TOGETHER: Final = 2
_SHOWN_AT_FIRST: Final = 3
"""Meetings of a fixture that are not folded: judgement."""


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
    """A fixture, or several in a row that meet the same.

    Args:
        names: their names with their days; of a series one name with its days.
        first_days: the first day of each.
        meets: what they meet, job by job; nothing where they are clear of all announced work.
        besides: what of it is not said once for several.
    """

    names: tuple[str, ...]
    first_days: tuple[date, ...]
    meets: tuple[Meeting, ...]
    besides: tuple[Meeting, ...]

    @property
    def shown(self) -> tuple[Meeting, ...]:
        """Of these the ones that are shown at first."""
        return self.besides[:_SHOWN_AT_FIRST]

    @property
    def folded(self) -> tuple[Meeting, ...]:
        """Of these the rest."""
        return self.besides[_SHOWN_AT_FIRST:]


@dataclass(frozen=True, slots=True, kw_only=True)
class Together:
    """What is said once for several fixtures of a month.

    Args:
        lead: for which of them, such as "For all of them:".
        meets: what they meet, job by job.
    """

    lead: str
    meets: tuple[Meeting, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FixturesOfMonth:
    """The fixtures of a month.

    Args:
        runs: they, by their days.
        together: what is said once for several of them.
    """

    runs: tuple[FixtureOfMonth, ...] = ()
    together: tuple[Together, ...] = ()

    @property
    def count(self) -> int:
        """How many fixtures there are."""
        return sum(len(run.first_days) for run in self.runs)


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
    for matter in sorted(matters, key=lambda one: greens_first(work.surface for work in one.outlook.surfaces)):
        if matter.stands_still:
            continue  # no date of it holds any more, and no chance
        for one in fixtures_ahead(matter.outlook, fixtures, voice.near):
            if not meets_nothing(one, matter.outlook):
                words = meets_in_words(one, matter.outlook, voice)
                meeting = Meeting(notice_id=matter.job.id, title=matter.job.title, words=words)
                met[one.fixture.id] = (*met.get(one.fixture.id, ()), meeting)
    return met


def fixtures_of_month(
    fixtures: Iterable[Fixture], met: Mapping[str, tuple[Meeting, ...]], month: tuple[date, date], voice: Voice
) -> FixturesOfMonth:
    """List the fixtures of a month that are still to come, or go on.

    Args:
        fixtures: the club's fixtures, the first first.
        met: what each meets, by its id.
        month: its first and its last day.
        voice: the language and the day of the reader.

    Returns:
        Fixtures by their days, those in a row that meet the same together; what several of them meet is said once.
    """
    coming = [
        one for one in fixtures if one.last_day >= voice.near and month[0] <= max(one.first_day, voice.near) <= month[1]
    ]
    meets = [met.get(one.id, ()) for one in coming]
    together = tuple(_said_together(coming, meets, voice))
    said = {one for group in together for one in group.meets}
    runs = []
    for what, run in groupby(zip(coming, meets, strict=True), key=lambda one: one[1]):
        group = [one for one, _ in run]
        runs.append(
            FixtureOfMonth(
                names=tuple(_names(group, voice)),
                first_days=tuple(one.first_day for one in group),
                meets=what,
                besides=tuple(one for one in what if one not in said),
            )
        )
    return FixturesOfMonth(runs=tuple(runs), together=together)


def _said_together(coming: Sequence[Fixture], met: Sequence[tuple[Meeting, ...]], voice: Voice) -> Iterator[Together]:
    """Words on a job that hold for at least two fixtures, and for half of those that meet it.

    The others that meet it have words of their own on it. Those that do not meet it lie all before the rest of the
    month, or all after its first part, which the lead names; else silence would be taken for the same.
    """
    groups: dict[tuple[str, str, str], list[Meeting]] = {}
    for job in dict.fromkeys(one.notice_id for meets in met for one in meets):
        found = [(place, one) for place, meets in enumerate(met) for one in meets if one.notice_id == job]
        words, count = Counter(one for _, one in found).most_common(1)[0]
        which, day = _which(coming, [place for place, _ in found])
        if which and count >= max(_FEWEST_TOGETHER, len(found) / 2):
            exceptions = "some" if count < len(found) else "none"
            groups.setdefault((which, exceptions, voice.day(day)), []).append(words)
    for (which, exceptions, said), chosen in groups.items():
        lead = voice.say("season-together", which=which, exceptions=exceptions, day=said)
        yield Together(lead=lead, meets=tuple(chosen))


def _which(coming: Sequence[Fixture], places: Sequence[int]) -> tuple[str, date]:
    """Name the fixtures at some places: "all", those "from" or "until" a day with that day; "" where no words do."""
    first, last, end = places[0], places[-1], len(coming) - 1
    if len(places) <= last - first:
        return "", date.min
    if (first, last) == (0, end):
        return "all", coming[0].first_day
    if last == end and coming[first - 1].first_day < coming[first].first_day:
        return "from", coming[first].first_day
    if first == 0 and coming[last].first_day < coming[last + 1].first_day:
        return "until", coming[last].first_day
    return "", date.min


def _names(group: Sequence[Fixture], voice: Voice) -> Iterator[str]:
    series: dict[str, list[Fixture]] = {}
    for one in group:
        series.setdefault(one.series, []).append(one)
    for alike in series.values():
        yield _named(alike, voice)


def _named(group: Sequence[Fixture], voice: Voice) -> str:
    if len(group) == 1:
        return fixture_in_words(group[0], voice)
    days = voice.joined([voice.day(one.first_day) for one in group])
    return voice.say("season-fixture-days", name=group[0].name, days=days)
