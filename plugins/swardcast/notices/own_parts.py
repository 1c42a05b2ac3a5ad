"""The manager's own words come first: added to a part of the notice, or in its place."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from datetime import timedelta

from swardcast.language.sentences import paragraphs_of
from swardcast.notices.matter import Matter
from swardcast.notices.notice import Event, Section, Sentence
from swardcast.outlook.course import NOTE_IS_FRESH_DAYS
from swardcast.outlook.states import Work
from swardcast.records.log import NoteToMembers, PlanChange, Progress
from swardcast.records.plan import OwnWords, Part

__all__ = ["answer_in_own_words", "is_before_its_end", "newest_note", "opening_words", "with_own_words"]


def answer_in_own_words(matter: Matter) -> tuple[Sentence, ...]:
    """Give the manager's short answer where there is one in place of ours.

    Args:
        matter: what the notice is made of.

    Returns:
        Its words without the marks of Markdown; nothing once the work has begun, is called off or overdue: they were
        typed for work to come, and the log knows more by then.
    """
    own = _short_answer(matter)
    if own is None or not own.instead or matter.outlook.work is not Work.PLANNED or matter.has_no_day:
        return ()
    told = (sentence for one in paragraphs_of(own.markdown, markdown=True) for sentence in one.sentences)
    return (Sentence(text=" ".join(told), source=matter.in_plan),)


def opening_words(matter: Matter) -> str:
    """Give the manager's words that stand below the short answer as long as the work is to come or goes on.

    Args:
        matter: what the notice is made of.

    Returns:
        Markdown: what is added to the short answer, unless the work is over; then the words for the head.
    """
    own = _short_answer(matter)
    added = [own.markdown] if own is not None and not own.instead and not matter.is_over else []
    return "\n\n".join([*added, *filter(None, [matter.job.own_words])])


def is_before_its_end(matter: Matter) -> bool:
    """Tell whether work is to come or goes on, so that words typed for it are still about what members meet."""
    return matter.outlook.work in (Work.PLANNED, Work.UNDER_WAY, Work.HELD_UP)


def newest_note(events: Sequence[Event], matter: Matter) -> Event | None:
    """Find the manager's newest note on a job, as long as it is about how the job stands now.

    Args:
        events: what happened, newest first.
        matter: what the notice is made of.

    Returns:
        The note; None where it is more than 14 days old, or older than the last step of the work, which it could not
        know; and where the job is over.
    """
    if matter.is_over:
        return None
    steps = {entry.head.id for entry in matter.log if isinstance(entry, Progress | PlanChange)}
    notes = {entry.head.id for entry in matter.log if isinstance(entry, NoteToMembers)}
    oldest = matter.as_of - timedelta(days=NOTE_IS_FRESH_DAYS)
    for event in events:
        if event.withdrawn:
            continue
        if event.source in steps or event.at <= oldest:
            return None
        if event.source in notes and event.markdown:
            return event
    return None


def _short_answer(matter: Matter) -> OwnWords | None:
    return next((own for own in matter.job.own_parts if own.part is Part.SHORT_ANSWER), None)


def with_own_words(sections: Iterable[Section], matter: Matter) -> Iterator[Section]:
    """Add the manager's own words to each part, or put them in its place.

    Args:
        sections: the parts in order.
        matter: what the notice is made of.

    Yields:
        The parts; one that had nothing to say and has own words now comes at the end, unless the work is over or called
        off: then nobody is asked or told any more what was left out.
    """
    left: dict[Part, OwnWords] = {own.part: own for own in matter.job.own_parts if own.part is not Part.SHORT_ANSWER}
    for section in sections:
        own = left.pop(section.part, None) if section.part is not None else None
        if own is None or (own.instead and own.part is Part.DAY_BY_DAY and matter.outlook.work is not Work.PLANNED):
            yield section  # from the first day of the work the log knows more than the plan did
            continue
        yield _with(section, own, matter)
    for own in () if matter.is_over else left.values():
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
