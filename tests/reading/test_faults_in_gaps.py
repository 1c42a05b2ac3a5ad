"""Faults in 'gaps' of club.yaml: each is told with its line and what is meant."""

from __future__ import annotations

from pathlib import Path

import pytest

from swardcast.reading.folder import read_club_folder
from swardcast.records.gaps import KindGap
from swardcast.records.operations import Kind
from tests.reading.breaking import CLUB, assert_said, fault, replace

FAULTS = [
    fault(
        "a kind by another word",
        "from: hollow tining, to",
        "from: coring, to",
        "line «coring», planning.gap 1, from: found 'coring'; expected one of: …. …",
    ),
    fault(
        "a gap without its unit",
        "at least: 53 days",
        "at least: 53",
        "line «at least», planning.gap 1, at least: found '53'; expected a time from 1 day to 366 days, such as '6 weeks'…",
    ),
    fault(
        "a gap of years",
        "at least: 53 days",
        "at least: 60 weeks",
        "line «at least», planning.gap 1, at least: found '60 weeks'; expected a time from 1 day to 366 days, such as"
        " '6 weeks'",
    ),
    fault(
        "a gap with no end",
        ", to: solid tining, at",
        ", at",
        "line «hollow tining, at», planning.gap 1, to: found nothing; expected the field 'to'",
    ),
]


@pytest.mark.parametrize(("old", "new", "says"), FAULTS)
def test_a_fault_in_gaps(demo_club: Path, old: str, new: str, says: tuple[str, ...]) -> None:
    replace(demo_club / CLUB, old, new)
    assert_said(demo_club, CLUB, says)


@pytest.mark.parametrize(("written", "days"), [("53 days", 53), ("6 weeks", 42), ("1 day", 1)])
def test_a_gap_reads_as_written(demo_club: Path, written: str, days: int) -> None:
    replace(demo_club / CLUB, "at least: 53 days", f"at least: {written}")
    gap = KindGap(earlier=Kind.HOLLOW_TINING, later=Kind.SOLID_TINING, least_days=days)
    assert read_club_folder(demo_club).planning.gaps == (gap,)
