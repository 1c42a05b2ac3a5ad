"""The part "How the date is worked out": how sure it is, and what it rests on."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from swardcast.language.voice import capital
from swardcast.notices.matter import Matter, sum_on
from swardcast.notices.notice import Section, Sentence
from swardcast.notices.reasons import reason_in_words
from swardcast.notices.why_now import in_paragraphs
from swardcast.notices.words import places_in_brief
from swardcast.outlook.states import ReasonKind
from swardcast.records.club import Surface
from swardcast.records.plan import Part

__all__ = ["how_the_date"]

_ABOUT_HOW_SURE: Final = {
    ReasonKind.NOT_VALIDATED,
    ReasonKind.SHORT_HISTORY,
    ReasonKind.HELD_BACK,
    ReasonKind.WEATHER_MISSING,
    ReasonKind.NOT_THIS_SEASON,
    ReasonKind.NO_HISTORY,
    ReasonKind.RULE_OF_THUMB,
}


def how_the_date(matter: Matter) -> Section | None:
    """Say how sure the dates are and where the sum is laid out.

    Args:
        matter: what the notice is made of.

    Returns:
        The part, or None where the work is over or called off.
    """
    if matter.is_over:
        return None
    said = [*_how_sure(matter)]
    return Section(
        part=Part.HOW_THE_DATE,
        heading=matter.voice.name("part", Part.HOW_THE_DATE),
        paragraphs=tuple(in_paragraphs(said)),
        link="dates",
    )


def _how_sure(matter: Matter) -> Iterator[Sentence]:
    if matter.is_computed and not matter.stands_still:
        yield matter.say("sure-likely")
        yield matter.say("sure-allow-until")
        yield matter.say("sure-computed-from")
        yield matter.say("sure-how-near")
        yield matter.say("sure-in-the-cold")
    if matter.stands_still:
        yield _why_no_new_date(matter)
    elif matter.is_over_with_the_work:
        yield matter.say("sure-nothing-heals")
    if matter.has_no_day or matter.is_over_with_the_work:
        return
    said: dict[str, tuple[str, list[Surface]]] = {}
    for work in matter.outlook.surfaces:
        for reason in work.reasons:
            if reason.kind in _ABOUT_HOW_SURE:
                words = reason_in_words(reason, matter.voice)
                source = sum_on(work.surface) if reason.source == "computed" else reason.source
                said.setdefault(words, (source, []))[1].append(work.surface)
    for words, (source, surfaces) in said.items():
        if len(surfaces) == len(matter.outlook.surfaces):
            yield Sentence(text=words, source=source)
        else:
            where = capital(places_in_brief(surfaces, matter.voice))
            yield matter.say("sure-of-some", source=source, where=where, sentence=words)


def _why_no_new_date(matter: Matter) -> Sentence:
    """Of work that stands still: its plan gives no last day any more, and no sum a date."""
    if matter.outlook.unreported is not None:
        return matter.say("sure-unreported", day=matter.voice.day(matter.outlook.unreported.last_report.date()))
    return matter.say("sure-postponed" if matter.outlook.is_put_off else "sure-never-begun")
