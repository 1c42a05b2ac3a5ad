"""Every phrase that is said is there in both Englishes with the slots that it is given, and every phrase is said."""

from __future__ import annotations

import re
from enum import Enum

import pytest
from fluent.syntax import ast
from fluent.syntax.visitor import Visitor

from swardcast.language.catalogue import BUILT_IN, Catalogue, built_in
from swardcast.language.phrase_files import references_of
from swardcast.language.voice import slug_of
from swardcast.outlets.fleet_page import State
from swardcast.outlook.causes import Cause
from swardcast.outlook.fixtures import Basis
from swardcast.outlook.states import NoDate, Work
from swardcast.reading.limits import LIMITS
from swardcast.records.club import SurfaceKind
from swardcast.records.log import HeldBackBy
from swardcast.records.operations import Kind
from swardcast.records.plan import Play
from tests.language.spoken import families, said_in_code, said_in_templates, texts_in_code

SAID = [*said_in_code(), *said_in_templates()]
SAID_BY_NAME = {name for one in SAID for name in one.phrases}
CHOICES: dict[str, type[Enum]] = {
    "kind": Kind,
    "surface": SurfaceKind,
    "site-surface": SurfaceKind,
    "play": Play,
    "plays": Play,
    "news-all": Work,
    "news-some": Work,
    "brake": HeldBackBy,
    "fixtures": Basis,
    "planning-no-date": NoDate,
    "fleet-state": State,
}
ONE_TABLE = ("dates.ftl", "hours.ftl")
SURE = re.compile(r"\b(?:likely|chances?)\b|allow until", re.IGNORECASE)
SAY_HOW_SURE_ELSEWHERE = {
    "explain-date": "adds the early end, for the manager who asks how a date comes about",
    "record-on-the-day": "compares with the likely day, and gives no date",
    "record-before": "compares with the likely day",
    "record-after": "compares with the likely day",
    "record-missed": "compares with the likely day",
    "picture-was-likely": "repeats on finished work what the table told before",
    "picture-likely-and-band": "explains the line and the shade of a picture, and gives no date",
    "picture-key-normal": "explains a sign of a picture, and gives no date",
    "picture-key-promised": "explains a sign of a picture, and gives no date",
    "picture-promises-bars": "explains the bars of a picture, and gives no date",
    "picture-promises-days": "names what days are counted from",
    "season-key-likely": "explains a sign of a picture, and gives no date",
    "season-total-healing-is": "explains a column of a table, and gives no date",
    "answer-how-sure": "explains the table's words",
    "sure-likely": "explains the table's words",
    "sure-allow-until": "explains the table's words",
    "fixtures-computed": "speaks of the chances that the table has given",
    "fixtures-usual-range": "says that there is none",
    "planning-dates": "explains the tables that the manager and the committee have",
    "planning-fixtures": "explains the tables that the manager and the committee have",
    "planning-table-healing": "is the caption of a table that the manager and the committee have",
    "planning-table-fixtures": "is the caption of a table that the manager and the committee have",
    "planning-touched": "explains the tables that the manager and the committee have",
    "planning-picture-summary": "sums a picture of choices up, in days and with no date",
    "planning-picture-line": "explains a sign of a picture, and gives no date",
    "planning-picture-likely-days": "is the heading of numbers of days",
    "planning-fixture-words": "explains the tables that the manager and the committee have",
    "startdays-table-fixtures": "is the caption of a table that the manager and the committee have",
    "startdays-fixture-cells": "explains the tables that the manager and the committee have",
    "planning-days-a-year": "explains a column of a table, and gives no date",
    "planning-column-days-a-year": "is the heading of numbers of days",
    "report-summary-ended": "names what days are counted up to, and gives no date",
    "report-note-days": "explains the columns of a table",
    "report-note-not-called": "names what days are counted up to, and gives no date",
    "report-dates-counts": "compares with the likely day, and gives no date",
    "startdays-usual-time": "says that there is none",
    "startdays-cold": "counts days beyond a date that stands beside it",
    "startdays-weighted": "explains the tables that the manager and the committee have",
    "news-fixtures-before": "names the date that the table calls likely",
    "news-fixtures-after": "names the date that the table calls likely",
}


class _Texts(Visitor):
    """What a phrase says itself, without what stands in its slots."""

    def __init__(self) -> None:
        self.found: list[str] = []

    def visit_TextElement(self, node: ast.TextElement) -> None:  # noqa: N802 - the visitor's own name
        self.found.append(" ".join(node.value.split()))


@pytest.fixture(params=BUILT_IN)
def catalogue(request: pytest.FixtureRequest) -> Catalogue:
    return built_in(request.param)


def test_the_calls_are_found() -> None:
    """Or the tests below would pass on nothing."""
    assert len(SAID_BY_NAME) > 150
    assert "site-skip" in SAID_BY_NAME


def test_each_phrase_that_is_said_by_its_name_is_there(catalogue: Catalogue) -> None:
    assert [one for one in SAID for name in one.phrases if not catalogue.has(name)] == []


def test_each_phrase_gets_its_slots_and_no_other(catalogue: Catalogue) -> None:
    """Where one of several phrases is said, together they have the slots."""
    wrong = []
    for said in SAID:
        slots = frozenset().union(*(catalogue.slots_of(name) for name in said.phrases if catalogue.has(name)))
        if said.slots is not None and said.slots != slots:
            wrong.append((said, sorted(slots)))
    assert wrong == []


def test_both_englishes_have_the_same_phrases_and_terms() -> None:
    british, american = (built_in(tag) for tag in BUILT_IN)
    assert set(british.names()) == set(american.names())
    assert british.entries().keys() == american.entries().keys()
    assert {name for name in british.names() if british.slots_of(name) != american.slots_of(name)} == set()


@pytest.mark.parametrize("family", CHOICES)
def test_each_choice_of_a_family_has_its_phrase(catalogue: Catalogue, family: str) -> None:
    assert [choice for choice in CHOICES[family] if not catalogue.has(f"{family}-{slug_of(choice)}")] == []


def test_each_limit_and_cause_has_its_phrase(catalogue: Catalogue) -> None:
    assert [name for name in LIMITS if not catalogue.has(f"limit-{name.replace(' ', '-')}")] == []
    assert [cause for cause in Cause if not catalogue.has(f"cause-{slug_of(cause)}")] == []


def test_no_phrase_is_never_said(catalogue: Catalogue) -> None:
    """Said are names in calls, in small tables of the code, in other phrases, and names of a family that is put together."""
    said = SAID_BY_NAME | texts_in_code()
    said |= {name for entry in catalogue.entries().values() for name in references_of(entry)}
    beginnings = tuple(families())
    assert [name for name in catalogue.names() if name not in said and not name.startswith(beginnings)] == []


def test_only_one_table_says_how_sure_a_date_is(catalogue: Catalogue) -> None:
    elsewhere = {}
    for name, entry in catalogue.entries().items():
        file, _ = catalogue.places()[name]
        texts = _Texts()
        texts.visit(entry)
        if not file.endswith(ONE_TABLE) and any(SURE.search(text) for text in texts.found):
            elsewhere[name] = [text for text in texts.found if SURE.search(text)]
    assert elsewhere.keys() == SAY_HOW_SURE_ELSEWHERE.keys(), elsewhere
