"""Notices held against the plain-language standards: what they miss, and the figures."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import cache, cached_property
from statistics import fmean
from typing import Final

from swardcast.compose import Bulletin
from swardcast.language.banned import banned_phrases
from swardcast.language.plain import MOST_SENTENCES, MOST_WORDS, Fault, FaultKind
from swardcast.outlets.html import notice_html
from tests.notices.grade import reading_grade
from tests.notices.notice_text import (
    Block,
    blocks_of,
    faults_of,
    measured,
    ordinary_sentences,
    wrong_plurals,
    wrong_weekdays,
)

__all__ = ["CHECKED", "Figures", "Read", "faulty", "figures_of", "read_notices", "wrong_days", "wrong_forms"]

MOST_WORDS_ON_AVERAGE: Final = 15
"""Words of a sentence on average. Judgement, below the NHS service manual's "sentences up to 20 words"."""
HIGHEST_GRADE: Final = 8
"""Reading grade on average. Judgement: a reading age of 9 to 11 is best, 11 to 14 at the worst (NHS service manual,
"How we write"), and a reader of 14 has been at school for 8 years."""
CHECKED: Final = tuple(FaultKind)


@dataclass(frozen=True)
class Read:
    """A notice as a reader has it."""

    name: str
    moment: datetime
    language: str
    blocks: Sequence[Block]

    @cached_property
    def grade(self) -> float:
        return reading_grade(ordinary_sentences(self.blocks))


def read_notices(bulletin: Bulletin) -> Iterator[Read]:
    """Read every notice of a bulletin."""
    for notice in bulletin.notices:
        name = f"{bulletin.as_of:%Y-%m-%d} {notice.id}"
        yield Read(
            name, bulletin.as_of, bulletin.club.language, blocks_of(notice_html(notice, bulletin.voice, "../../"))
        )


@cache
def _faults_of(block: Block, language: str) -> list[Fault]:
    """Most blocks stand in many notices."""
    return faults_of(block, banned_phrases(language))


def faulty(notices: Iterable[Read], kind: FaultKind) -> list[str]:
    """Faults of a kind, each with its notice."""
    return [
        f"{notice.name}: {fault}"
        for notice in notices
        for block in notice.blocks
        for fault in _faults_of(block, notice.language)
        if fault.kind is kind
    ]


def wrong_days(notices: Iterable[Read]) -> list[str]:
    """Days with the weekday of another; left out is the year of the reader, or that of the event that is told."""
    return [
        f"{notice.name}: {day}"
        for notice in notices
        for block in notice.blocks
        for day in wrong_weekdays(block.text, {notice.moment.year, block.year or notice.moment.year})
    ]


def wrong_forms(notices: Iterable[Read]) -> list[str]:
    """Numbers with the wrong form of the word after them."""
    return [
        f"{notice.name}: {words}"
        for notice in notices
        for block in notice.blocks
        for words in wrong_plurals(block.text)
    ]


@dataclass(frozen=True)
class Figures:
    """How plain notices are, and the same in lines to print."""

    mean_words: float
    mean_grade: float
    lines: tuple[str, ...]

    def check(self) -> None:
        assert self.mean_words <= MOST_WORDS_ON_AVERAGE
        assert self.mean_grade <= HIGHEST_GRADE


def figures_of(notices: Sequence[Read], what: str) -> Figures:
    """Measure notices."""
    told = measured([block for notice in notices for block in notice.blocks])
    worst = max(notices, key=lambda notice: notice.grade)
    mean_grade = fmean(notice.grade for notice in notices)
    lines = (
        f"{len(notices)} {what}, {told.sentences} sentences",
        f"  words a sentence: {told.mean_words:.1f} on average (limit {MOST_WORDS_ON_AVERAGE})",
        f"  longest sentence: {told.longest_words} words (limit {MOST_WORDS}): {told.longest}",
        f"  longest paragraph: {told.most_sentences} sentences (limit {MOST_SENTENCES})",
        f"  reading grade: {mean_grade:.1f} on average (limit {HIGHEST_GRADE}), {worst.grade:.1f} in {worst.name}",
    )
    return Figures(told.mean_words, mean_grade, lines)
