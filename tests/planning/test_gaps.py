"""What has to lie between jobs, by hand."""

from __future__ import annotations

from dataclasses import replace
from itertools import permutations

import pytest

from swardcast.planning.gaps import gaps_between
from swardcast.planning.schedule import Gap
from swardcast.records.folder import ClubRecords
from swardcast.records.gaps import KindGap
from swardcast.records.operations import Kind
from swardcast.records.plan import Job
from tests.outlook.small_club import SmallClub

HOLLOW = "hollow tining: {diameter: 12 mm, spacing: 50 x 50 mm, depth: 60 mm}"
SOLID = "solid tining: {diameter: 8 mm, spacing: 50 x 50 mm, depth: 90 mm}"
SIX_WEEKS = KindGap(earlier=Kind.HOLLOW_TINING, later=Kind.SOLID_TINING, least_days=42)


@pytest.fixture(scope="module")
def jobs(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Job]:
    club = SmallClub(tmp_path_factory.mktemp("gaps") / "club")
    club.job("hollow", "06-14", HOLLOW)
    club.job("solid", "06-21", SOLID, surfaces="green 2 and green 3")
    club.job("tees", "06-28", SOLID, surfaces="tee 1")
    records: ClubRecords = club.records()
    return dict(records.jobs)


def test_jobs_on_a_common_surface_never_share_a_day_and_others_only_keep_their_order(jobs: dict[str, Job]) -> None:
    found = gaps_between([jobs["hollow"], jobs["solid"], jobs["tees"]], ())
    assert found == (
        Gap(earlier="hollow", later="solid", least_days=1, in_order=True),
        Gap(earlier="solid", later="tees", least_days=1, in_order=True),
    )
    free = gaps_between([jobs["hollow"], jobs["solid"], jobs["tees"]], (), in_order=False)
    assert free == (
        Gap(earlier="hollow", later="solid", least_days=1),
        Gap(earlier="solid", later="hollow", least_days=1),
    )


def test_the_gap_asked_for_holds_on_common_surfaces_alone(jobs: dict[str, Job]) -> None:
    hollow, tees, solid = gaps_between([jobs["hollow"], jobs["tees"], jobs["solid"]], (), least_days=28)
    assert (hollow.later, hollow.least_days) == ("tees", 1)
    assert (tees.earlier, tees.later, tees.least_days) == ("hollow", "solid", 28)
    assert (solid.earlier, solid.least_days) == ("tees", 1)


def test_a_gap_between_kinds_holds_in_its_order_and_the_longest_of_several_counts(jobs: dict[str, Job]) -> None:
    there, back = gaps_between([jobs["hollow"], jobs["solid"]], [SIX_WEEKS], least_days=10, in_order=False)
    assert (there.earlier, there.least_days, back.least_days) == ("hollow", 42, 10)
    longer = replace(SIX_WEEKS, least_days=50)
    for told in permutations((SIX_WEEKS, longer)):
        (only,) = gaps_between([jobs["hollow"], jobs["solid"]], told)
        assert only.least_days == 50
    (other_way,) = gaps_between([jobs["solid"], jobs["hollow"]], [SIX_WEEKS])
    assert other_way.least_days == 1
