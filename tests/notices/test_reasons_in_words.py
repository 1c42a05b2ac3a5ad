"""What a state or a date rests on, as a member reads it in both Englishes."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date, datetime

import pytest

from swardcast.language.catalogue import BUILT_IN, built_in
from swardcast.language.voice import Voice
from swardcast.notices.reasons import reason_in_words
from swardcast.outlook.sightings import CoverSeen, Look, MarksSeen, RollSeen
from swardcast.outlook.states import Lesson, Reason, ReasonKind
from swardcast.records.log import Eye, HeldBackBy
from swardcast.turf.pace import Sighting

DAY = date(2027, 9, 14)  # a Tuesday, by any calendar
AT = datetime(2027, 9, 13, 7, 5)  # noqa: DTZ001 - a local time of day, as the log has it
SIGHTING = Sighting(share_left=0.15, growth_days=6, error=0.1, foretold=lambda _: 0.1)
MARKS = Look(at=AT, source="look", what=MarksSeen(share_left=0.15, how=Eye.BY_EYE), sighting=SIGHTING)
COVER = Look(at=AT, source="look", what=CoverSeen(share=0.92), sighting=SIGHTING)
ROLL = Look(at=AT, source="look", what=RollSeen(roll_mm=2844.8, of_target=0.9), sighting=SIGHTING)  # 112 x 25.4 mm


def lesson(days: float) -> Lesson:
    return Lesson(
        job="spring", title="Spring tining", source="log", normal_on=DAY, days_taken=days, days_computed=27, log_pace=0
    )


def said(reason: Reason, tag: str) -> str:
    return reason_in_words(reason, Voice(catalogue=built_in(tag), near=DAY)).replace("\u00a0", " ")


def full(kind: ReasonKind) -> Reason:
    return Reason(
        kind=kind, source="log", at=AT, words="frost.", until=DAY, looks=(MARKS, COVER), lesson=lesson(24),
        held_back_by=HeldBackBy.UNFED, count=5,
    )  # fmt: skip


@pytest.mark.parametrize("tag", BUILT_IN)
@pytest.mark.parametrize("kind", ReasonKind, ids=lambda kind: kind.name)
def test_every_reason_is_one_whole_sentence_with_and_without_words(kind: ReasonKind, tag: str) -> None:
    for words in ("frost.", ""):
        sentence = said(replace(full(kind), words=words), tag)
        assert sentence[0].isupper(), sentence
        assert sentence.endswith("."), sentence
        assert ".." not in sentence
        assert ".)" not in sentence
        assert "None" not in sentence


@pytest.mark.parametrize(
    ("reason", "british", "american"),
    [
        (
            Reason(kind=ReasonKind.HELD_UP, source="log", at=AT, words="The tines broke."),
            "Held up since 7:05am on Monday 13 September (The tines broke).",
            "Held up since 7:05 AM on Monday, September 13 (The tines broke).",
        ),
        (
            Reason(kind=ReasonKind.SAID_NORMAL, source="log", at=AT),
            "The course manager called it back to normal at 7:05am on Monday 13 September.",
            "The superintendent called it back to normal at 7:05 AM on Monday, September 13.",
        ),
        (
            Reason(kind=ReasonKind.LEARNT, source="log", at=DAY, lesson=lesson(24)),
            "Learnt from earlier work (Spring tining: 24 days, computed 27).",
            "Learned from earlier work (Spring tining: 24 days, computed 27).",
        ),
        (
            Reason(kind=ReasonKind.LEARNT, source="log", at=DAY, lesson=lesson(1)),
            "Learnt from earlier work (Spring tining: 1 day, computed 27).",
            "Learned from earlier work (Spring tining: 1 day, computed 27).",
        ),
        (
            Reason(
                kind=ReasonKind.HELD_BACK, source="log", at=DAY, until=date(2027, 9, 20),
                held_back_by=HeldBackBy.FROST_ON_THE_LEAF,
            ),
            "Growth held back from Tuesday 14 September to Monday 20 September: frost on the leaf; growth counts 0 %.",
            "Growth held back from Tuesday, September 14 to Monday, September 20: frost on the leaf; growth counts 0%.",
        ),
        (
            Reason(kind=ReasonKind.OBSERVED, source="log", at=AT, looks=(ROLL,)),
            "Seen on the course at 7:05am on Monday 13 September: green speed 9 ft 4 in, 90 % of the target.",
            "Seen on the course at 7:05 AM on Monday, September 13: green speed 9 ft 4 in, 90% of the target.",
        ),
        (
            Reason(kind=ReasonKind.CONTRADICTION, source="log", at=AT, looks=(MARKS, COVER)),
            ("Two looks contradict each other (15 % of the first marks left, by eye, then turf cover 92 %); each counts "
             "as far as it can be trusted."),
            ("Two looks contradict each other (15% of the first marks left, by eye, then turf cover 92%); each counts "
             "as far as it can be trusted."),
        ),
        (
            Reason(kind=ReasonKind.NO_FRESH_ENTRY, source="log"),
            "No report was ever made.",
            "No report was ever made.",
        ),
        (
            Reason(kind=ReasonKind.SHORT_HISTORY, source="weather/history", count=5),
            "Past years of weather known here: only 5, so the range is drawn wider.",
            "Past years of weather known here: only 5, so the range is drawn wider.",
        ),
    ],
    ids=lambda case: case.kind.name if isinstance(case, Reason) else "",
)  # fmt: skip
def test_reasons_in_both_englishes(reason: Reason, british: str, american: str) -> None:
    assert [said(reason, "en-GB"), said(reason, "en-US").replace("\u202f", " ")] == [british, american]


@pytest.mark.parametrize("tag", BUILT_IN)
@pytest.mark.parametrize("by", HeldBackBy, ids=lambda by: by.name)
def test_whatever_holds_growth_back_has_a_name(by: HeldBackBy, tag: str) -> None:
    sentence = said(replace(full(ReasonKind.HELD_BACK), held_back_by=by), tag)
    left = {"unfed": "70", "dull weather": "60", "growth regulator": "75", "frost on the leaf": "0"}[by.value]
    assert re.search(rf": [a-z ]+; growth counts {left} ?%\.$", sentence)
