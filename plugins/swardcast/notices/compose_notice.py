"""A job's outlook and story -> a notice, its parts in their fixed order."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from swardcast.language.voice import Voice, capital
from swardcast.notices.answer import short_answer
from swardcast.notices.bulletins import last_change
from swardcast.notices.day_by_day import day_by_day, with_fixtures
from swardcast.notices.ends import is_over_by_sum, published_in_words, work_in_words
from swardcast.notices.events import events_of
from swardcast.notices.headline import headline_of, when_in_words
from swardcast.notices.how_the_date import how_the_date
from swardcast.notices.in_short import in_short
from swardcast.notices.matter import Matter
from swardcast.notices.notice import Fact, Notice, Section, Sentence, text_of
from swardcast.notices.numbers import facts_in_numbers
from swardcast.notices.own_parts import (
    answer_in_own_words,
    is_before_its_end,
    newest_note,
    opening_words,
    with_own_words,
)
from swardcast.notices.rules import the_rules
from swardcast.notices.take_care import take_care, what_you_can_do, who_decides
from swardcast.notices.what_you_see import what_you_see
from swardcast.notices.why_now import why_now
from swardcast.notices.words import few_words_for, place_list, places_in_brief, places_in_words
from swardcast.outlook.states import Milestone, Work
from swardcast.records.club import Surface, SurfaceKind
from swardcast.records.plan import Part

__all__ = ["compose_notice"]

_MOST_WORDS = 20  # of a sentence that names places; more become a list: NHS service manual, sentences up to 20 words

_WHERE = {Work.BACK_TO_NORMAL: "where-it-was", Work.CALLED_OFF: "where-it-was-planned"}


def compose_notice(matter: Matter) -> Notice:
    """Put one job into plain words.

    Args:
        matter: what the notice is made of.

    Returns:
        The notice.
    """
    outlook, story, voice = matter.outlook, matter.story, matter.voice
    zone, main = matter.records.club.time_zone, matter.kinds[0]
    where = places_in_words((work.surface for work in outlook.surfaces), voice)
    on = {work.surface.kind for work in outlook.surfaces}
    headline = headline_of(outlook, few_words_for((work.surface for work in outlook.surfaces), voice), voice)
    events = events_of(story, matter.log, matter.records, voice)
    note, opening, to_come = newest_note(events, matter), opening_words(matter), is_before_its_end(matter)
    answer = answer_in_own_words(matter) or short_answer(matter)
    return Notice(
        id=matter.job.id,
        revision=story.changes[-1].revision,
        issued_at=story.changes[0].at.astimezone(zone),
        revised_at=story.changes[-1].at.astimezone(zone),
        headline=headline,
        title=matter.job.title,
        where=where,
        where_in_brief=places_in_brief((work.surface for work in outlook.surfaces), voice),
        places=tuple(place_list((work.surface for work in outlook.surfaces), _by_number(voice))),
        when=when_in_words(outlook, voice),
        work=work_in_words(outlook, voice),
        is_over_by_sum=is_over_by_sum(outlook),
        normal=published_in_words(matter.published, outlook, voice),
        answer=answer,
        in_short=in_short(matter),
        own_words=opening if to_come else "",
        before_the_work="" if to_come else opening,
        note=note,
        sections=tuple(with_own_words(_sections(matter, answer), matter)),
        events=tuple(event for event in events if event is not note),
        category=main.value,
        tags=tuple(kind.plural for kind in SurfaceKind if kind in on),
        planned_in=matter.in_plan,
        sign_off=matter.records.club.sign_off,
    )


def _sections(matter: Matter, answer: tuple[Sentence, ...]) -> Iterator[Section]:
    called_off = matter.outlook.work is Work.CALLED_OFF
    days = None if called_off else day_by_day(matter)
    if days is not None:
        yield days
        yield from filter(None, (what_you_see(matter), with_fixtures(matter)))
    if not _is_where_said(matter, answer, () if days is None else days.facts):
        yield _where(matter)
    yield why_now(matter)
    numbers = _numbers(matter)
    if numbers.facts and not called_off:  # nothing of it was, or will be, made or spread
        yield numbers
    changed = last_change(matter.story, matter.records, matter.voice)
    if changed:
        yield _what_changed(matter, changed)
    if not matter.is_over:
        yield what_you_can_do(matter)
        yield the_rules(matter)
    if not called_off:
        care = take_care(matter)
        if care.points:
            yield care
    how = how_the_date(matter)
    if how is not None:
        yield how
    yield who_decides(matter)


def _numbers(matter: Matter) -> Section:
    source = f"computed from {matter.in_plan}, and surfaces.yaml"
    facts = tuple(replace(fact, source=source) for fact in facts_in_numbers(matter.outlook, matter.voice))
    return Section(part=Part.IN_NUMBERS, heading=matter.voice.name("part", Part.IN_NUMBERS), facts=facts)


def _where(matter: Matter) -> Section:
    surfaces, off = [work.surface for work in matter.outlook.surfaces], tuple(_called_off(matter))
    heading = matter.voice.name("part", Part.WHERE)
    phrase = _WHERE.get(matter.outlook.work, "where-in-words")
    where = _with_numbers(surfaces, matter.voice)
    whole = matter.say(phrase, source=matter.in_plan, where=where)
    if len(whole.text.split()) <= _MOST_WORDS:
        return Section(part=Part.WHERE, heading=heading, paragraphs=((whole, *off),))
    places = place_list(surfaces, _by_number(matter.voice))
    points = (Sentence(text=capital(place), source=matter.in_plan) for place in places)
    return Section(part=Part.WHERE, heading=heading, points=(*points, *off))


def _is_where_said(matter: Matter, answer: tuple[Sentence, ...], days: Sequence[Fact]) -> bool:
    """Whether title and short answer, or the rows of days, name every surface: the part would only repeat them."""
    if any(own.part is Part.WHERE for own in matter.job.own_parts) or any(_called_off(matter)):
        return False
    surfaces, numbers = [work.surface for work in matter.outlook.surfaces], _by_number(matter.voice)
    head = f"{matter.job.title} {text_of(answer)}"
    if all(_stands_in(place, head) for place in place_list(surfaces, numbers)):
        return True
    if matter.is_over:
        return False
    rows = " ".join(f"{fact.name} {fact.value}" for fact in days)
    return all(_stands_in(places_in_words([surface], numbers), rows) for surface in surfaces)


def _stands_in(words: str, text: str) -> bool:
    """Whether words stand in a text as a whole: "green 1" does not stand in "green 12"."""
    return re.search(rf"(?<!\w){re.escape(words.casefold())}(?!\w)", text.casefold()) is not None


def _with_numbers(surfaces: Sequence[Surface], voice: Voice) -> str:
    """A visitor does not know which greens "the sheltered greens" are."""
    where, numbered = places_in_words(surfaces, voice), places_in_words(surfaces, _by_number(voice))
    return where if numbered == where else voice.say("where-set", set=where, places=numbered, count=len(surfaces))


def _by_number(voice: Voice) -> Voice:
    """The same voice without the club's own names of sets."""
    return replace(voice, set_names=())


def _called_off(matter: Matter) -> Iterator[Sentence]:
    """The surfaces that the notice leaves out, since the work was called off before it came to them."""
    works = [work for work in matter.story.changes[-1].outlook.surfaces if work.work is Work.CALLED_OFF]
    if works and matter.outlook.work is not Work.CALLED_OFF:
        places = places_in_words((work.surface for work in works), matter.voice)
        said = matter.voice.sentence(matter.voice.say("news-some-called-off", places=places))
        yield Sentence(text=said, source=works[-1].reasons[0].source)


def _what_changed(matter: Matter, changed: tuple[str, ...]) -> Section:
    change = matter.story.changes[-1]
    source = change.entry.head.id if change.entry is not None else matter.sum_of(Milestone.BACK_TO_NORMAL)
    return Section(
        part=Part.WHAT_CHANGED,
        heading=matter.voice.name("part", Part.WHAT_CHANGED),
        paragraphs=tuple((Sentence(text=words, source=source),) for words in changed),
    )
