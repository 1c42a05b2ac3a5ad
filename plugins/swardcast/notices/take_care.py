"""The parts "What you can do", "Please take care" and "Who decides and whom to ask"."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Final

from swardcast.language.sentences import sentences_of
from swardcast.language.voice import capital
from swardcast.notices.kinds import cautions_of, kind_name, said_of_kind
from swardcast.notices.matter import Matter
from swardcast.notices.notice import Section, Sentence
from swardcast.notices.words import contact_in_words
from swardcast.outlook.states import Work
from swardcast.records.operations import ProductUse
from swardcast.records.plan import Part

__all__ = ["take_care", "what_you_can_do", "who_decides"]

_ASKED_FOR: Final = 3  # kinds of work whose requests a reader still takes in: judgement


def what_you_can_do(matter: Matter) -> Section:
    """Say what players can do while it lasts.

    Args:
        matter: what the notice is made of.

    Returns:
        The part.
    """
    asked = [said_of_kind(kind, "do", matter.surface, matter.voice) for kind in matter.kinds[:_ASKED_FOR]]
    return Section(
        part=Part.WHAT_YOU_CAN_DO,
        heading=matter.voice.name("part", Part.WHAT_YOU_CAN_DO),
        points=(*_each_sentence_once(asked), matter.say("do-look-at-status")),
    )


def _each_sentence_once(asked: Iterable[Sentence]) -> Iterator[Sentence]:
    """Kinds of work share sentences word for word, such as the one on pitch marks: the first to say it keeps it."""
    said: set[str] = set()
    for one in asked:
        left = [sentence for sentence in sentences_of(one.text) if sentence not in said]
        said.update(left)
        if left:
            yield replace(one, text=" ".join(left))


def take_care(matter: Matter) -> Section:
    """Give the words of the product label as typed, the usual cautions and the club's own.

    Args:
        matter: what the notice is made of.

    Returns:
        The part; of work that is over only the label, since only the label says how long it counts.
    """
    points = [*_labels(matter)]
    if matter.outlook.work is not Work.BACK_TO_NORMAL:
        points += cautions_of(matter.kinds, matter.voice)
        points += [Sentence(text=caution, source="club.yaml") for caution in matter.records.club.cautions]
    elif points:
        points.append(matter.say("caution-label"))
    return Section(part=Part.TAKE_CARE, heading=matter.voice.name("part", Part.TAKE_CARE), points=tuple(points))


def _labels(matter: Matter) -> Iterator[Sentence]:
    """What the manager typed from each product label: nothing is added, nothing left out."""
    voice = matter.voice
    for use in matter.job.operations:
        if isinstance(use, ProductUse):
            kind, re_entry = capital(kind_name(use.kind, voice)), _ended(use.re_entry)
            yield matter.say("label-re-entry", source=matter.in_plan, kind=kind, product=use.product, reentry=re_entry)
            signs, day = _ended(use.signs), voice.day(use.label_read_on)
            phrase = "label-signs-ahead" if use.label_read_on > voice.near else "label-signs"
            yield matter.say(phrase, source=matter.in_plan, signs=signs, by=use.label_read_by, day=day)


def _ended(typed: str) -> str:
    """Typed words with a full stop at the end, and otherwise as typed."""
    return typed if typed.endswith((".", "!", "?")) else f"{typed}."


def who_decides(matter: Matter) -> Section:
    """Say who decides and whom to ask.

    Args:
        matter: what the notice is made of.

    Returns:
        The part.
    """
    club = matter.records.club
    ways = contact_in_words(club.contact, matter.voice)
    email, telephone, shown = club.contact.email, club.contact.telephone, club.contact.telephone_on_one_line
    links = [(f"mailto:{email}", email, email), (club.contact.telephone_link, telephone, shown)]
    reached = tuple(link for link in links if all(link))
    phrase = "ask-office-at" if ways else "ask-office"
    slots = {"ways": ways} if ways else {}
    ask = matter.say(phrase, source="club.yaml", office=club.contact.office, **slots)
    decides = (Sentence(text=club.decides, source="club.yaml"),) if club.decides else ()
    return Section(
        part=Part.WHO_DECIDES,
        heading=matter.voice.name("part", Part.WHO_DECIDES),
        paragraphs=tuple((one,) for one in (*decides, ask)),
        ways=reached,
    )
