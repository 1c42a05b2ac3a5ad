"""Where each sentence of a notice comes from, so that a manager can check what members read."""

from __future__ import annotations

from collections.abc import Iterator

from swardcast.language.voice import Voice
from swardcast.notices.explain import Explanation
from swardcast.notices.notice import Notice, Section

__all__ = ["explain_notice"]


def explain_notice(notice: Notice, voice: Voice) -> list[Explanation]:
    """Lay out a notice sentence by sentence.

    Args:
        notice: the notice.
        voice: the language of the headings.

    Returns:
        Its parts in order; each line is a sentence and what it rests on: an entry of the log, a line of a file, the
        sum of a surface, or the phrase of the catalogue where the words are ours.
    """
    head = [(notice.headline, notice.planned_in), *((one.text, one.source) for one in notice.answer)]
    head += [(notice.own_words.strip(), notice.planned_in)] if notice.own_words else []
    head += [(notice.sign_off, "club.yaml")] if notice.sign_off else []
    parts = [Explanation(heading=voice.say("explain-head"), lines=tuple(head))]
    parts += [Explanation(heading=section.heading, lines=tuple(_lines(section))) for section in notice.sections]
    happened = tuple((voice.say("site-event", when=one.when, what=one.sentence), one.source) for one in notice.events)
    return [*parts, Explanation(heading=voice.say("site-what-happened"), lines=happened)]


def _lines(section: Section) -> Iterator[tuple[str, str]]:
    for paragraph in section.paragraphs:
        yield from ((sentence.text, sentence.source) for sentence in paragraph)
    yield from ((f"{fact.name}: {fact.value}", fact.source) for fact in section.facts)
    yield from ((sentence.text, sentence.source) for sentence in section.points)
    if section.markdown:
        yield section.markdown.strip(), section.own_source
