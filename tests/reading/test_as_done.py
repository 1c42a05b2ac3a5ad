"""How work was really done may differ from the plan in its sizes, never in what keeps players safe."""

from __future__ import annotations

from pathlib import Path

import pytest

from swardcast.records.log import Progress
from swardcast.records.operations import ProductUse
from tests.conftest import problems_of
from tests.outlook.small_club import SmallClub

PRODUCT = "a feed in water"
RE_ENTRY = "keep off for 2 hours"
SIGNS = "at the 1st tee"
READ_ON = "2027-05-20"
FOLLOW_UP = "    follow up: 2 to 3 hours\n"
USUAL = "    normal after: {from: 4 to 8 weeks, source: our own experience}\n"


def _feed(*, product: str = PRODUCT, re_entry: str = RE_ENTRY, signs: str = SIGNS, rate: str = "20 l/ha") -> str:
    return (
        f"liquid feed: {{product: {product}, re-entry: {re_entry}, signs: {signs}, label read by: AB,"
        f" label read on: {READ_ON}, rate: {rate}}}"
    )


def _fed(folder: Path, really: str) -> SmallClub:
    club = SmallClub(folder)
    club.job("feed", "06-01", _feed(), more=FOLLOW_UP)
    club.done("feed", "06-01", "as done:", f"  - {really}")
    return club


def test_another_rate_of_the_product_that_was_planned_is_kept(tmp_path: Path) -> None:
    (done,) = _fed(tmp_path, _feed(rate="15 l/ha")).records().entries
    assert isinstance(done, Progress)
    (use,) = done.as_done
    assert isinstance(use, ProductUse)
    assert use.rate == "15 l/ha"


@pytest.mark.parametrize(
    "really",
    [
        _feed(product="another feed"),
        _feed(re_entry="keep off for 24 hours"),
        _feed(signs="none"),
        _feed().replace("liquid feed", "plant protection"),
    ],
    ids=["another product", "another time", "other signs", "another kind"],
)
def test_a_label_that_the_notice_would_not_tell_is_refused(tmp_path: Path, really: str) -> None:
    kind = really.partition(":")[0]
    assert problems_of(_fed(tmp_path, really).folder) == [
        (
            f"log/2027/feed-done.md: line 5, as done: found {kind} whose product or label is not that of the plan; expected"
            " the product and the words of its label as plan/feed.yaml, line 4, has them. Write the other product into the"
            " plan first, with how long players stay off after it. Its notice tells what the plan says."
        )
    ]


@pytest.mark.parametrize("more", ["", USUAL], ids=["no usual time", "a usual time"])
def test_work_of_which_nothing_is_computed_needs_its_usual_time(tmp_path: Path, more: str) -> None:
    club = SmallClub(tmp_path)
    club.job("holes", "06-01", more=more)
    club.done("holes", "06-01", "as done:", "  - sand injection: {depth: 120 mm}")
    said = (
        "log/2027/holes-done.md: line 5, as done: found sand injection, for which no date can be computed; expected its usual"
        " time in plan/holes.yaml, line 4, such as 'normal after: {from: 4 to 8 weeks, source: our own experience}'"
    )
    assert problems_of(club.folder) == ([] if more else [said])


def _label_read(folder: Path) -> SmallClub:
    club = SmallClub(folder)
    club.job("feed", "06-01", _feed(), more=FOLLOW_UP)
    return club


def _said(file: str, line: int, field: str, day: str) -> list[str]:
    return [
        (
            f"log/2027/{file}.md: line {line}, {field}: found {day}; the label of the liquid feed was read on 2027-05-20; expected"
            " a day not before the label was read. Read the label first, and put that day into 'label read on' in the plan."
        )
    ]


@pytest.mark.parametrize(("day", "early"), [("05-19", True), ("05-20", False)])
def test_a_product_is_not_used_before_its_label_was_read(tmp_path: Path, day: str, early: bool) -> None:
    club = _label_read(tmp_path)
    club.done("feed", day)
    assert problems_of(club.folder) == (_said("feed-done", 2, "at", f"2027-{day}") if early else [])


def test_a_job_is_not_brought_forward_to_before_its_label_was_read(tmp_path: Path) -> None:
    club = _label_read(tmp_path)
    fields = ("job: feed", "change: brought forward to", "starts: 2027-05-12", "because: it is dry")
    club.log("forward", "05-10", "change of plan", *fields)
    assert problems_of(club.folder) == _said("forward", 6, "starts", "2027-05-12")
    later = ("job: feed", "change: postponed to", "starts: 2027-05-25", "because: the label has to be read")
    club.log("later", "05-11", "change of plan", *later)
    assert problems_of(club.folder) == []
