"""The part "Why now": what the work is, why it is done, what was measured, and what season and fixtures say."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from swardcast.language.sentences import sentences_of
from swardcast.language.voice import slug_of
from swardcast.notices.kinds import kind_name, said_of_kind
from swardcast.notices.matter import Matter
from swardcast.notices.notice import Section, Sentence
from swardcast.notices.readings import reading_facts
from swardcast.notices.spans import first_day_of_work, last_day_of_work
from swardcast.notices.words import percent
from swardcast.outlook.states import Milestone, Work
from swardcast.records.club import Tone
from swardcast.records.fixtures import Fixture
from swardcast.records.operations import Kind
from swardcast.records.plan import Part

__all__ = ["MOST_SENTENCES", "in_paragraphs", "why_now"]

MOST_SENTENCES: Final = 3
"""Sentences of a paragraph: NHS digital service manual, "How we write", paragraphs of up to 3 sentences."""
_SEASON_WEEKS: Final = 4
_WEEK_DAYS: Final = 7
_NEAR_FIXTURE_DAYS: Final = 21  # a fixture three weeks away is no reason for a date any more: judgement


def why_now(matter: Matter) -> Section:
    """Say why the work is done, and why in these days.

    Args:
        matter: what the notice is made of.

    Returns:
        The part.
    """
    full = matter.records.club.tone is Tone.FULL
    kinds, surface, voice = matter.kinds, matter.surface, matter.voice
    what = [_what_it_is(kind, matter) for kind in kinds]
    why, without = (said_of_kind(kinds[0], name, surface, voice) for name in ("why", "without"))
    own = [Sentence(text=line, source=matter.in_plan) for line in matter.job.why]
    paragraphs = [
        *in_paragraphs(own),
        (why, without) if full else (why,),
        *in_paragraphs([*_timing(matter)]),
    ]
    return Section(
        part=Part.WHY_NOW,
        heading=matter.voice.name("part", Part.WHY_NOW),
        paragraphs=tuple(paragraph for paragraph in paragraphs if paragraph),
        facts=tuple(reading_facts(matter.job, voice)),
        points=tuple(what) if full else (what[0],),
        kinds=tuple((slug_of(kind), kind_name(kind, voice)) for kind in kinds),
    )


def _what_it_is(kind: Kind, matter: Matter) -> Sentence:
    """What the work is; where sand comes after other work also what it is for, since a visitor meets it first."""
    what = said_of_kind(kind, "what", matter.surface, matter.voice)
    if kind is not Kind.TOPDRESSING or kind is matter.kinds[0]:
        return what
    why = said_of_kind(kind, "why", matter.surface, matter.voice)
    return replace(what, text=matter.voice.sentences([what.text, why.text]))


def in_paragraphs(sentences: Sequence[Sentence]) -> list[tuple[Sentence, ...]]:
    """Cut sentences into paragraphs that read well.

    Args:
        sentences: sentences in order.

    Returns:
        Paragraphs of up to three sentences, counted as they are read: what is a `Sentence` to us may be two.
    """
    found: list[list[Sentence]] = []
    room = 0
    for sentence in sentences:
        count = len(sentences_of(sentence.text))
        if count > room:
            found.append([])
            room = MOST_SENTENCES
        found[-1].append(sentence)
        room -= count
    return [tuple(paragraph) for paragraph in found]


def _timing(matter: Matter) -> Iterator[Sentence]:
    if matter.outlook.work is not Work.PLANNED or matter.has_no_day:
        return
    growth = [work.recovery.weeks_ahead for work in matter.outlook.surfaces if work.recovery is not None]
    if growth and len(growth[-1]) >= _SEASON_WEEKS:
        share = sum(growth[-1][:_SEASON_WEEKS]) / (_SEASON_WEEKS * _WEEK_DAYS)
        yield matter.say(
            "why-season", source=matter.sum_of(Milestone.BACK_TO_NORMAL), share=percent(round(share, 2), matter.voice)
        )
    before, after = _fixtures_around(matter)
    if before is not None and after is not None and before.name != after.name:
        yield matter.say(
            "why-between-fixtures",
            source="fixtures.ics",
            before=before.name,
            beforeday=matter.voice.short_day(before.last_day),
            after=after.name,
            afterday=matter.voice.short_day(after.first_day),
        )


def _fixtures_around(matter: Matter) -> tuple[Fixture | None, Fixture | None]:
    """The nearest fixtures before and after the work, where it falls on none of them."""
    first = first_day_of_work(matter.outlook)
    finished = last_day_of_work(matter.outlook)
    if finished is None or finished.likely is None:
        return None, None
    last = finished.likely
    fixtures = matter.records.fixtures
    if any(one.first_day <= last and one.last_day >= first for one in fixtures):
        return None, None
    before = [one for one in fixtures if 0 < (first - one.last_day).days <= _NEAR_FIXTURE_DAYS]
    after = [one for one in fixtures if 0 < (one.first_day - last).days <= _NEAR_FIXTURE_DAYS]
    latest = max(before, key=lambda one: one.last_day, default=None)
    return latest, min(after, key=lambda one: one.first_day, default=None)
