"""The manager's own words come first: added to a part of the notice, or in its place."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from swardcast.notices.matter import Matter
from swardcast.notices.notice import Section, Sentence
from swardcast.records.plan import OwnWords, Part

__all__ = ["answer_in_own_words", "with_own_words"]


def answer_in_own_words(matter: Matter) -> tuple[Sentence, ...]:
    """Give the manager's short answer where there is one in place of ours.

    Args:
        matter: what the notice is made of.

    Returns:
        Its words, or nothing.
    """
    for own in matter.job.own_parts:
        if own.part is Part.SHORT_ANSWER and own.instead:
            return (Sentence(text=" ".join(own.markdown.split()), source=matter.in_plan),)
    return ()


def with_own_words(sections: Iterable[Section], matter: Matter) -> Iterator[Section]:
    """Add the manager's own words to each part, or put them in its place.

    Args:
        sections: the parts in order.
        matter: what the notice is made of.

    Yields:
        The parts; one that had nothing to say and has own words now comes at the end.
    """
    left: dict[Part, OwnWords] = {
        own.part: own for own in matter.job.own_parts if not (own.part is Part.SHORT_ANSWER and own.instead)
    }
    for section in sections:
        own = left.pop(section.part, None) if section.part is not None else None
        yield section if own is None else _with(section, own, matter)
    for own in left.values():
        heading = matter.voice.name("part", own.part)
        yield _with(Section(part=own.part, heading=heading), own, matter)


def _with(section: Section, own: OwnWords, matter: Matter) -> Section:
    if own.instead:
        return Section(
            part=section.part,
            heading=section.heading,
            markdown=own.markdown,
            own_source=matter.in_plan,
            link=section.link,
            kinds=section.kinds,
        )
    return replace(section, markdown=own.markdown, own_source=matter.in_plan)
