"""The log parted by jobs: the same entries that reading all of it finds for each of them."""

from __future__ import annotations

from pathlib import Path

from swardcast.records.folder import ClubRecords
from swardcast.records.log import Correction, Entry, GrowthHeldBack
from swardcast.records.log_by_job import LogByJob
from tests.outlook.small_club import SmallClub


def found_by_reading_all(job: str, entries: tuple[Entry, ...]) -> list[Entry]:
    about = {one.head.id for one in entries if getattr(one, "job", "") == job or isinstance(one, GrowthHeldBack)}
    while more := {e.head.id for e in entries if isinstance(e, Correction) and e.corrects in about} - about:
        about |= more
    return [entry for entry in entries if entry.head.id in about]


def test_it_has_of_each_job_what_reading_all_entries_finds(demo_records: ClubRecords) -> None:
    log = LogByJob(demo_records.entries)
    parts = {job: list(log.of(job)) for job in demo_records.jobs}
    assert parts == {job: found_by_reading_all(job, demo_records.entries) for job in demo_records.jobs}
    assert any(isinstance(entry, Correction) for entries in parts.values() for entry in entries)


def test_growth_held_back_and_its_correction_go_with_each_job(tmp_path: Path) -> None:
    club = SmallClub(tmp_path)
    for job in ("spring", "summer"):
        club.job(job, "06-01")
    club.log("slow", "06-01", "growth held back", "surfaces: greens 1-2", "cause: dull weather", "until: 2027-06-10")
    club.log("sorry", "06-02", "correction", "corrects: slow")
    club.done("summer", "06-03")
    entries = club.records().entries
    names = {job: [entry.head.id for entry in LogByJob(entries).of(job)] for job in ("spring", "summer")}
    assert names == {"spring": ["slow", "sorry"], "summer": ["slow", "sorry", "summer-done"]}
    assert names == {job: [one.head.id for one in found_by_reading_all(job, entries)] for job in names}
