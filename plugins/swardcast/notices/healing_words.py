"""The curve of healing of a job in words, with its key and its figures as tables."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import Final

from swardcast.language.voice import Voice, capital
from swardcast.notices.dates_in_words import range_in_words
from swardcast.notices.ends import published_in_words
from swardcast.notices.fixtures import fixture_in_words
from swardcast.notices.matter import Matter
from swardcast.notices.pictures import KeyRow, Sign, Table, Told
from swardcast.notices.words import percent
from swardcast.outlook.curve import Curve, Drawn, Seen
from swardcast.outlook.states import Milestone, Work
from swardcast.records.fixtures import Fixture
from swardcast.turf.healing import HOLES_CLOSED, SETTLED

__all__ = ["MILESTONES", "HealingMatter", "Level", "healing_in_words"]

MILESTONES: Final = {SETTLED: Milestone.SETTLED, HOLES_CLOSED: Milestone.HOLES_CLOSED}
"""Milestones that are shares of the surface still disturbed."""

_TABLE_STEPS_DAYS: Final = (1, 2, 7, 14, 28)
_MOST_ROWS: Final = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class Level:
    """A share of the surface at which something is reached.

    Args:
        share: the share, 0 to 1.
        words: what is reached there.
        on_axis: the same in as few letters as can be, or "" for what is not said inside the picture.
    """

    share: float
    words: str
    on_axis: str = ""


@dataclass(frozen=True, slots=True)
class HealingMatter:
    """What the words of a picture are made of.

    Args:
        of_notice: what the notice is made of.
        drawn: the surfaces.
        levels: milestones that are shares.
        first: the first day of work.
        curve: the share day by day.
        seen: what was seen on the course.
        fixtures: competitions and visitors' days of the axis.
    """

    of_notice: Matter
    drawn: Drawn
    levels: tuple[Level, ...]
    first: date
    curve: Curve
    seen: tuple[Seen, ...]
    fixtures: tuple[Fixture, ...]

    @property
    def voice(self) -> Voice:
        """The language and the day of the reader."""
        return self.of_notice.voice


def healing_in_words(matter: HealingMatter) -> Told:
    """Say what a picture of healing shows.

    Args:
        matter: what it shows.

    Returns:
        Its words, its key and every fact of it as tables.
    """
    voice, job, start = matter.voice, matter.of_notice.job, matter.curve[0]
    begins = voice.say("picture-healing-begins", day=voice.day(start.day), share=percent(start.likely, voice))
    dates = [voice.say("picture-fact", name=name, value=day) for name, day in _dates(matter)]
    return Told(
        name=f"healing-{job.id}",
        title=voice.say("picture-healing-title", title=job.title),
        description=voice.sentences([begins, *dates]),
        caption=tuple(_caption(matter)),
        key=tuple(_key(matter)),
        tables=tuple(_tables(matter)),
    )


def _dates(matter: HealingMatter) -> Iterator[tuple[str, str]]:
    voice, notice = matter.voice, matter.of_notice
    for level in matter.levels:
        reached = matter.drawn.reaches(MILESTONES[level.share])
        if notice.is_over and reached.likely is not None and not reached.is_fact:
            yield level.words, capital(voice.say("picture-was-likely", day=voice.day(reached.likely)))
        elif reached.is_given:
            yield level.words, capital(range_in_words(reached, voice))
    yield voice.say("row-back-to-normal"), capital(published_in_words(notice.published, notice.outlook, voice))


def _caption(matter: HealingMatter) -> Iterator[str]:
    voice, works = matter.voice, matter.drawn.works
    yield voice.say("picture-likely-and-band")
    more = [voice.say("picture-healing-small-shares")]
    if len(works) > 1:
        more.append(voice.say("picture-healing-last", count=len(works)))
    if matter.of_notice.outlook.work is Work.PLANNED:
        more.append(voice.say("picture-healing-planned"))
    yield voice.sentences(more)


def _key(matter: HealingMatter) -> Iterator[KeyRow]:
    voice, published = matter.voice, matter.of_notice.published
    yield KeyRow(sign=Sign.WORK, words=voice.say("picture-key-work"))
    if any(one.is_of_the_last for one in matter.seen):
        yield KeyRow(sign=Sign.SEEN, words=voice.say("picture-key-seen"))
    if not all(one.is_of_the_last for one in matter.seen):
        yield KeyRow(sign=Sign.SEEN_ELSEWHERE, words=voice.say("picture-key-seen-elsewhere"))
    if published.is_fact:
        yield KeyRow(sign=Sign.CAME, words=voice.say("row-back-to-normal"))
    elif published.is_given:
        yield KeyRow(sign=Sign.NORMAL, words=voice.say("picture-key-normal"))
    for number, fixture in enumerate(matter.fixtures, start=1):
        yield KeyRow(sign=Sign.FIXTURE, number=str(number), words=fixture_in_words(fixture, voice))


def _tables(matter: HealingMatter) -> Iterator[Table]:
    voice = matter.voice
    yield _shares(matter)
    numbered = (
        (voice.say("picture-fixture", number=str(number)), fixture_in_words(fixture, voice))
        for number, fixture in enumerate(matter.fixtures, start=1)
    )
    work = (voice.say("picture-key-work"), _work_days(matter))
    yield Table(
        caption=voice.say("picture-healing-days"),
        columns=(voice.say("picture-column-what"), voice.say("picture-column-when")),
        rows=(work, *_dates(matter), *numbered),
    )
    if matter.seen:
        yield Table(
            caption=voice.say("picture-healing-seen"),
            columns=(voice.say("picture-column-day"), voice.say("picture-column-disturbed")),
            rows=tuple((voice.day(one.day), _seen_in_words(one, voice)) for one in matter.seen),
        )


def _shares(matter: HealingMatter) -> Table:
    voice, curve = matter.voice, matter.curve
    step = next((step for step in _TABLE_STEPS_DAYS if len(curve) <= step * _MOST_ROWS), _TABLE_STEPS_DAYS[-1])
    return Table(
        caption=voice.say("picture-healing-shares"),
        columns=(voice.say("picture-column-day"), voice.say("column-likely"), voice.say("column-8-in-10")),
        rows=tuple(
            (
                voice.day(one.day),
                percent(one.likely, voice),
                voice.say("picture-from-to", first=percent(one.low, voice), last=percent(one.high, voice)),
            )
            for one in curve[::step]
        ),
    )


def _seen_in_words(one: Seen, voice: Voice) -> str:
    share = percent(one.share, voice)
    return share if one.is_of_the_last else voice.say("picture-seen-elsewhere", share=share)


def _work_days(matter: HealingMatter) -> str:
    first, last, voice = matter.first, matter.drawn.begins, matter.voice
    if first == last:
        return capital(voice.say("on-day", day=voice.day(first)))
    return voice.say("days-from-to", first=voice.day(first), last=voice.day(last))
