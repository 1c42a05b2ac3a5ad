"""Where each sentence of a notice comes from, so that a manager can check what members read."""

from __future__ import annotations

from collections.abc import Iterator

from swardcast.language.voice import Voice
from swardcast.notices.explain import Explanation
from swardcast.notices.notice import Event, Notice, Section

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
    if notice.note is not None:
        head += [*_happened(notice.note, voice), (notice.note.markdown.strip(), notice.note.source)]
    head += [(notice.sign_off, "club.yaml")] if notice.sign_off else []
    parts = [Explanation(heading=voice.say("explain-head"), lines=tuple(head))]
    parts += [Explanation(heading=section.heading, lines=tuple(_lines(section))) for section in notice.sections]
    happened = tuple(line for one in notice.events for line in _happened(one, voice))
    parts.append(Explanation(heading=voice.say("site-what-happened"), lines=happened))
    if notice.before_the_work:
        before = ((notice.before_the_work.strip(), notice.planned_in),)
        parts.append(Explanation(heading=voice.say("notice-before-the-work"), lines=before))
    return parts


def _happened(event: Event, voice: Voice) -> list[tuple[str, str]]:
    return [(voice.say("site-event", when=event.when, what=event.sentence), event.source)]


def _lines(section: Section) -> Iterator[tuple[str, str]]:
    for paragraph in section.paragraphs:
        yield from ((sentence.text, sentence.source) for sentence in paragraph)
    yield from ((f"{fact.name}: {fact.value}", fact.source) for fact in section.facts)
    yield from ((sentence.text, sentence.source) for sentence in section.points)
    if section.markdown:
        yield section.markdown.strip(), section.own_source
