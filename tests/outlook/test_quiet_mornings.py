"""Mornings that are passed over because nothing of them can be worth telling: the story without them is the same."""

from __future__ import annotations

import random
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from swardcast.outlook.memory import assess_jobs, memory_of
from swardcast.outlook.quiet_mornings import QuietMornings
from swardcast.outlook.states import Milestone, Work
from swardcast.outlook.story import JobStory, tell_story
from swardcast.outlook.weather_book import WeatherBook
from swardcast.records.folder import ClubRecords
from tests.conftest import DEMO_AS_OF
from tests.outlook.small_club import SmallClub, moment

_SEEDS = 2


def _said(story: JobStory) -> list[object]:
    return [
        (one.id, one.at, one.revision, one.news, one.cause, one.because, one.outlook.work, one.outlook.dates)
        for one in story.changes
    ]


def _stories(records: ClubRecords, as_of: datetime) -> dict[str, list[object]]:
    book = WeatherBook(records.club, records.weather)
    jobs = [job for job in records.jobs.values() if job.announced <= as_of.date()]
    return {job.id: _said(tell_story(records, job, as_of, book)) for job in jobs}


@pytest.mark.parametrize("seed", range(_SEEDS))
def test_stories_are_the_same_when_every_morning_is_dated(
    demo_records: ClubRecords, monkeypatch: pytest.MonkeyPatch, seed: int
) -> None:
    """Also with jobs that begin, and entries that are made, on other days than in the demo."""
    draw = random.Random(seed)  # noqa: S311 - an example, no secret
    entries = tuple(one for one in demo_records.entries if not seed or draw.random() < 0.8)
    known = {one.head.id for one in entries}
    entries = tuple(one for one in entries if getattr(one, "corrects", None) in (None, *known))
    records = replace(demo_records, entries=entries)
    as_of = DEMO_AS_OF - timedelta(days=7 * seed)
    passed = []
    is_quiet = QuietMornings.is_quiet

    def counted(self: QuietMornings, *arguments: object) -> bool:
        passed.append(is_quiet(self, *arguments))  # type: ignore[arg-type]
        return passed[-1]

    monkeypatch.setattr(QuietMornings, "is_quiet", counted)
    found = _stories(records, as_of)
    assert sum(passed) > len(passed) / 4
    monkeypatch.setattr(QuietMornings, "is_quiet", lambda *_: False)
    assert found == _stories(records, as_of)


@pytest.mark.parametrize(
    ("opened", "state", "is_quiet"),
    [("green 1: open, green 2: open", Work.BACK_TO_NORMAL, True), ("green 2: open", Work.HEALING, False)],
)
def test_of_two_greens_that_heal_alike_the_one_that_nobody_opened_counts_still(
    tmp_path: Path, opened: str, state: Work, *, is_quiet: bool
) -> None:
    """Its sum is over, so it is left to the whole sum; of what is opened, and over too, nothing more can come."""
    club = SmallClub(tmp_path)
    club.job("spring", "06-01", surfaces="greens 1-2, tee 1", more="    follow up: 1 hour\n")
    club.done("spring", "06-01", "surfaces: greens 1-2")
    club.done("spring", "06-21", "surfaces: tee 1", name="tee-done")
    club.log("opened", "06-22", "morning status", f"play: {{{opened}}}", time="06:40")
    records, at = club.records(), moment("07-10")
    book = WeatherBook(records.club, records.weather)
    heard = assess_jobs(records, at, book)["spring"]
    assert [one.work for one in heard.surfaces] == [state, Work.BACK_TO_NORMAL, Work.HEALING]
    mornings = QuietMornings(memory_of(records, book), heard, at)
    published = heard.dates[Milestone.BACK_TO_NORMAL]
    assert mornings.is_quiet(moment("07-11", "07:00"), published, []) is is_quiet
