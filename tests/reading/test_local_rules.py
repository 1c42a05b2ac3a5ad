"""Local Rules are taken as they were typed, in the plan and in the log."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from pydantic_core import PydanticCustomError

from swardcast.reading.local_rules import check_is_the_committee, rule_number
from swardcast.records.plan import LocalRule
from tests.outlook.small_club import SmallClub, moment

RULES = """    local rules:
      - rule: E-4
        says: relief from the holes on the greens, wherever they are marked
        decided by: the Committee
        from: 2027-06-01
        until: 2027-06-20
      - {rule: f-5.1, decided by: the Competitions Committee}
    scores: Rounds on these days count, as the Committee has decided.
"""


def test_a_jobs_local_rules_and_its_words_on_scores_are_kept_as_typed(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("job", "06-01", more=RULES)
    job = club.records().jobs["job"]
    assert job.local_rules == (
        LocalRule(
            rule="E-4",
            says="relief from the holes on the greens, wherever they are marked",
            decided_by="the Committee",
            starts=date(2027, 6, 1),
            until=date(2027, 6, 20),
        ),
        LocalRule(rule="F-5.1", says="", decided_by="the Competitions Committee", starts=None, until=None),
    )
    assert job.scores == "Rounds on these days count, as the Committee has decided."


def test_a_job_without_them_has_none(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    club.job("job", "06-01")
    job = club.records().jobs["job"]
    assert (job.local_rules, job.scores, club.records().club.scores) == ((), "", "")


def test_a_limit_carries_the_number_of_its_local_rule(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    said = (
        "limits: {preferred lies: {what: placed within 6 inches, rule: E-3, decided by: the Committee}, trolleys: none}"
    )
    club.log("morning", "06-01", "morning status", "play: {whole course: open}", said)
    limits = club.course(moment("06-01")).limits
    assert [(held.limit.name, held.limit.rule) for held in limits] == [("preferred lies", "E-3"), ("trolleys", "")]


@pytest.mark.parametrize("number", ["E-4", " e-4 ", "A-12", "F-5.1"])
def test_a_rule_number_is_a_letter_a_hyphen_and_a_number(number: str) -> None:
    assert rule_number(number) == number.strip().upper()


@pytest.mark.parametrize(
    ("number", "hint"),
    [
        ("E4", "Did you mean 'E-4'?"),
        ("e 4", "Did you mean 'E-4'?"),
        ("MLR E-4", "Did you mean 'E-4'?"),
        ("16.1", ""),
        ("winter rules", ""),
        ("E-", ""),
        ("EE-4", ""),
        ("E-4 and E-5", ""),
    ],
)
def test_another_number_is_refused_with_the_nearest(number: str, hint: str) -> None:
    with pytest.raises(PydanticCustomError) as raised:
        rule_number(number)
    assert (raised.value.context or {})["hint"] == hint


@pytest.mark.parametrize("who", ["the course manager", "Head Greenkeeper", "our greenkeepers", "the superintendent"])
def test_the_staff_cannot_adopt_one(who: str) -> None:
    with pytest.raises(PydanticCustomError) as raised:
        check_is_the_committee(who)
    assert (raised.value.context or {})["hint"] == "Only the Committee can adopt a Local Rule."


@pytest.mark.parametrize("who", ["the Committee", "the Greens Committee", "the Committee of the day", "the Board"])
def test_a_committee_by_any_name_can(who: str) -> None:
    assert check_is_the_committee(who) == who
