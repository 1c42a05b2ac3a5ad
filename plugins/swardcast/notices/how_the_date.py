"""The part "How the date is worked out": how sure it is, and what it rests on."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from swardcast.language.voice import capital
from swardcast.notices.matter import Matter
from swardcast.notices.notice import Section, Sentence
from swardcast.notices.reasons import reason_in_words
from swardcast.notices.why_now import in_paragraphs
from swardcast.notices.words import places_in_words
from swardcast.outlook.states import ReasonKind, Work
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
    if matter.outlook.work in (Work.CALLED_OFF, Work.BACK_TO_NORMAL):
        return None
    heals = matter.is_computed and not matter.is_overdue
    said = [*_how_sure(matter, heals=heals)]
    return Section(
        part=Part.HOW_THE_DATE,
        heading=matter.voice.name("part", Part.HOW_THE_DATE),
        paragraphs=tuple(in_paragraphs(said)),
        link="dates",
    )


def _how_sure(matter: Matter, *, heals: bool) -> Iterator[Sentence]:
    if heals:
        yield matter.say("sure-likely")
        yield matter.say("sure-allow-until")
        yield matter.say("sure-computed-from")
        yield matter.say("sure-how-near")
        yield matter.say("sure-in-the-cold")
    elif matter.leaves_turf_whole and matter.job.reopens_after is None:
        yield matter.say("sure-nothing-heals")
        return
    said: dict[str, tuple[str, list[Surface]]] = {}
    for work in matter.outlook.surfaces:
        for reason in work.reasons:
            if reason.kind in _ABOUT_HOW_SURE:
                words = reason_in_words(reason, matter.voice)
                source = reason.source
                if source == "computed":
                    source = f"sum: swardcast explain {work.surface.id}"
                said.setdefault(words, (source, []))[1].append(work.surface)
    for words, (source, surfaces) in said.items():
        if len(surfaces) == len(matter.outlook.surfaces):
            yield Sentence(text=words, source=source)
        else:
            where = capital(places_in_words(surfaces, matter.voice))
            yield matter.say("sure-of-some", source=source, where=where, sentence=words)
