"""Notices of the demo as members read them: golden files, each of which was read aloud by a person.

After a wanted change: SWARDCAST_GOLDEN=write, then read the difference.
"""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path
from typing import Final

import pytest

from swardcast.compose import Bulletin
from swardcast.outlook.states import Work
from swardcast.records.folder import ClubRecords
from tests.notices.as_text import notice_as_text

GOLDEN: Final = Path(__file__).parents[1] / "golden" / "notices"
WRITES: Final = os.environ.get("SWARDCAST_GOLDEN") == "write"
CHOSEN: Final = {
    "2027-04-20 08:00": ["greens-solid-tining-2027"],
    "2027-05-12 08:00": ["tees-solid-tining-2027"],
    "2027-08-24 10:00": ["greens-renovation-2027", "greens-verticutting-2027"],
    "2027-08-25 12:00": ["greens-renovation-2027"],
    "2027-09-14 09:30": [
        "greens-renovation-2027",
        "bunkers-resanding-2027",
        "greens-light-sanding-2027",
        "greens-autumn-feed-2027",
        "greens-leaf-disease-2027",
        "winter-ropes-2027",
        "trees-16-2027",
        "fairway-11-drain-2027",
    ],
    "2027-12-06 08:00": [
        "bunkers-resanding-2027",
        "greens-renovation-2027",
        "tees-returfing-2027",
        "fairways-deep-tining-2027",
        "greens-wetting-agent-2027",
        "greens-winter-height-2027",
        "path-10-2027",
        "bunkers-liners-2027",
        "low-greens-winter-2027",
        "pipe-14-2028",
    ],
}
"""Every kind of work and every state of it that the demo has, at moments that other tests have composed too."""


def _file(moment: str, notice: str) -> Path:
    return GOLDEN / f"{moment.replace(' ', '-').replace(':', '')}-{notice}.txt"


@pytest.mark.parametrize(("moment", "name"), [(moment, name) for moment, names in CHOSEN.items() for name in names])
def test_the_notice_is_the_one_that_was_read_by_a_person(
    demo_bulletin_at: Callable[[str], Bulletin], moment: str, name: str
) -> None:
    (notice,) = (notice for notice in demo_bulletin_at(moment).notices if notice.id == name)
    file, text = _file(moment, name), notice_as_text(notice)
    if WRITES:
        file.parent.mkdir(exist_ok=True)
        file.write_text(text, encoding="utf-8")
    assert text == file.read_text(encoding="utf-8")


def test_no_golden_notice_is_left_over() -> None:
    left_over = set(GOLDEN.iterdir()) - {_file(moment, name) for moment, names in CHOSEN.items() for name in names}
    if WRITES:
        for file in left_over:
            file.unlink()
    assert WRITES or left_over == set()


def test_every_kind_of_work_of_the_demo_is_read(demo_records: ClubRecords) -> None:
    read = {name for names in CHOSEN.values() for name in names}
    assert {operation.kind for job in demo_records.jobs.values() for operation in job.operations} == {
        operation.kind for job in demo_records.jobs.values() if job.id in read for operation in job.operations
    }


def test_every_state_of_work_of_the_demo_is_read(demo_bulletin_at: Callable[[str], Bulletin]) -> None:
    """The demo calls no work off. Work is not started in time when its plan has passed without an entry."""
    states = {demo_bulletin_at(moment).outlook.jobs[name].work for moment, names in CHOSEN.items() for name in names}
    assert states == set(Work) - {Work.CALLED_OFF}
    late = [
        notice
        for notice in demo_bulletin_at("2027-12-06 08:00").notices
        if "nobody has reported that it began" in notice.when
    ]
    assert {notice.id for notice in late} & set(CHOSEN["2027-12-06 08:00"])
