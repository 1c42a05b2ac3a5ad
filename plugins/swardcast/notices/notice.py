"""A notice: one job in plain words, from the headline to what happened on which day; each sentence with its source."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from swardcast.records.plan import Part

__all__ = ["Event", "Fact", "Notice", "Section", "Sentence", "text_of"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sentence:
    """A sentence, or two that belong together, and where it comes from.

    Args:
        text: the words.
        source: file and line, or the entry, of what it rests on; the command that lays out a sum; the phrase's place
            for words that are ours.
    """

    text: str
    source: str


def text_of(sentences: tuple[Sentence, ...]) -> str:
    """Join sentences to a paragraph.

    Args:
        sentences: sentences in order.

    Returns:
        Their text.
    """
    return " ".join(sentence.text for sentence in sentences)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """A name and a value, such as "Holes closed": "likely by Friday 24 September; allow until ...".

    Args:
        name: the name.
        value: the value.
        source: what it rests on.
        is_of_today: whether it tells how things stand: what is done, what goes on, when what is closed reopens.
    """

    name: str
    value: str
    source: str = "computed"
    is_of_today: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A part of a notice under one heading; its pieces stand in the order of the fields.

    Args:
        heading: the heading.
        part: which of the fixed parts it is, or None for a piece of another page.
        paragraphs: paragraphs of sentences.
        facts: names and values.
        points: a list of sentences.
        markdown: the manager's own Markdown, or "".
        own_source: file and line of that Markdown, or "".
        link: what the heading's page about it is: "dates" for how dates are worked out, or "".
        kinds: kinds of work that have a page of their own, as (slug, name), to link.
        ways: ways to reach somebody that its paragraphs name, as (address of the link, words there, words shown).
    """

    heading: str
    part: Part | None = None
    paragraphs: tuple[tuple[Sentence, ...], ...] = ()
    facts: tuple[Fact, ...] = ()
    points: tuple[Sentence, ...] = ()
    markdown: str = ""
    own_source: str = ""
    link: str = ""
    kinds: tuple[tuple[str, str], ...] = ()
    ways: tuple[tuple[str, str, str], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """Something that happened, for the part "What happened".

    Args:
        at: when.
        when: the same in words.
        sentence: what happened.
        source: the entry, or the name of the change that the weather or another job brought.
        markdown: the manager's own words, or "".
        withdrawn: whether a later correction withdrew it.
    """

    at: datetime
    when: str
    sentence: str
    source: str = "computed"
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
        headline: what, where and when.
        title: what, as the plan has it.
        where: where, in words.
        where_in_brief: the same for a list: of several places with long names how many, and on which holes.
        places: its surfaces one by one, runs of numbers together, without the club's own names of sets.
        when: when the work is, in words.
        work: the state of the work in words.
        is_over_by_sum: whether its days are past, and nobody has reported that all of it is back to normal.
        normal: the published date of its end, in words.
        answer: how play is affected, when it is over, how sure; 40 words or fewer.
        in_short: what, until when, in a line or two; the fullest wording first, then ever shorter ones.
        own_words: the manager's Markdown for the head of the notice, typed for work to come and going on, or "".
        before_the_work: the same once the work is done, to be folded away, or "".
        note: the manager's newest note on how it stands now, for the head of the notice, or None.
        sections: the parts, in their fixed order.
        events: what happened, newest first, without `note`.
        category: the main kind of work, by its name in the plan.
        tags: the kinds of surface, by their names in the plan.
        planned_in: where the plan has the job.
        sign_off: the club's own last line, or "".
    """

    id: str
    revision: int
    issued_at: datetime
    revised_at: datetime
    headline: str
    title: str
    where: str
    where_in_brief: str
    places: tuple[str, ...]
    when: str
    work: str
    is_over_by_sum: bool
    normal: str
    answer: tuple[Sentence, ...]
    in_short: tuple[str, ...]
    own_words: str
    before_the_work: str
    note: Event | None
    sections: tuple[Section, ...]
    events: tuple[Event, ...]
    category: str
    tags: tuple[str, ...]
    planned_in: str
    sign_off: str

    @property
    def short_answer(self) -> str:
        """The short answer as one paragraph."""
        return text_of(self.answer)
