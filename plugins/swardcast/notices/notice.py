"""A notice: one job in plain words, from the short answer to what happened on which day."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

__all__ = ["Event", "Fact", "Notice", "Section"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """A name and a value, such as "Holes closed": "likely by Friday 24 September; allow until ..."."""

    name: str
    value: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A part of a notice under one heading.

    Args:
        heading: the heading.
        paragraphs: plain text, a paragraph each.
        facts: names and values.
        points: a list of sentences.
        markdown: the manager's own Markdown, or "".
    """

    heading: str
    paragraphs: tuple[str, ...] = ()
    facts: tuple[Fact, ...] = ()
    points: tuple[str, ...] = ()
    markdown: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """Something that happened, for the part "What happened".

    Args:
        at: when.
        when: the same in words.
        sentence: what happened.
        markdown: the manager's own words, or "".
        withdrawn: whether a later correction withdrew it.
    """

    at: datetime
    when: str
    sentence: str
    markdown: str = ""
    withdrawn: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Notice:
    """A notice, ready to be carried out by any outlet.

    Args:
        id: the job's id: address, guid and UID for life.
        revision: changes that a reader should have heard of, 1 for the announcement.
        issued_at: when it was first public.
        revised_at: when it last changed.
        headline: what.
        where: where, in words.
        when: when the work is, in words.
        work: the state of the work in words.
        short_answer: how play is affected, when it is over, how sure; 40 words or fewer.
        changed: what members heard of last and why, or "" after the announcement alone.
        sections: the rest, in order.
        events: what happened, newest first.
        category: the main kind of work.
        tags: the kinds of surface.
    """

    id: str
    revision: int
    issued_at: datetime
    revised_at: datetime
    headline: str
    where: str
    when: str
    work: str
    short_answer: str
    changed: str
    sections: tuple[Section, ...]
    events: tuple[Event, ...]
    category: str
    tags: tuple[str, ...]
