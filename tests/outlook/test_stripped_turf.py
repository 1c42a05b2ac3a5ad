"""Fraise mowing on a course where every day is a growth day: dates by hand, and how it is explained."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from swardcast.outlook.states import Milestone, ReasonKind
from tests.outlook.small_club import SmallClub, moment
from tests.turf.law_by_hand import HandJob, needed_by_hand

AS_OF = moment("06-08")


def _club(folder: Path, *operations: str) -> SmallClub:
    club = SmallClub(folder)
    club.job("spring", "06-01", *operations)
    club.done("spring", "06-01")
    return club


@pytest.mark.parametrize(
    ("operations", "job"),
    [
        (("fraise mowing: {depth: 15 mm, share: 30 %}",), HandJob(stripped=0.3)),
        (("fraise mowing: {depth: 15 mm}",), HandJob(stripped=1.0)),
        (("fraise mowing: {depth: 15 mm, share: 30 %}", "topdressing: {sand: 2.4 mm}"), HandJob(2.4, stripped=0.3)),
    ],
    ids=["three tenths", "all of it", "with sand"],
)
def test_stripped_turf_grows_back_at_its_own_rate_and_then_waits_to_roll(
    tmp_path: Path, operations: tuple[str, ...], job: HandJob
) -> None:
    """Early, likely and allow until by a spread of 0.40, since no published recovery is of such work."""
    club = _club(tmp_path, *operations)
    settled, closed = (needed_by_hand(threshold, job) for threshold in (0.05, 0.02))
    factors = [math.exp(z * 0.40) for z in (-1.28155, 0, 1.28155)]
    days = club.days("spring", AS_OF)
    assert days[Milestone.SETTLED] == tuple(math.ceil(settled * factor) for factor in factors)
    assert days[Milestone.HOLES_CLOSED] == tuple(math.ceil(closed * factor) for factor in factors)
    assert days[Milestone.BACK_TO_NORMAL] == tuple(math.ceil((closed + 13) * factor) for factor in factors)
    assert ReasonKind.NOT_VALIDATED in {reason.kind for reason in club.work("spring", AS_OF).reasons}


def test_stripped_turf_is_explained_with_its_share_and_rate(tmp_path: Path) -> None:
    said = _club(tmp_path, "fraise mowing: {depth: 15 mm, share: 30 %}").explained("spring", AS_OF)
    assert any("30 % of the surface" in line and "0.187" in line for line in said), list(said)
    # ln(0.3 / 0.05) / 0.187 = 9.6 and ln(0.3 / 0.02) / 0.187 = 14.5, as in tests/turf/test_healing.py.
    assert "Growth days needed to settle (left: 5 %): 9.6." in said
    assert any(line.startswith("Growth days needed until") and line.endswith(": 14.5.") for line in said)
    assert "Left after G growth days: 1 - (1 - 0.300 x exp(-0.187 G))." in said
