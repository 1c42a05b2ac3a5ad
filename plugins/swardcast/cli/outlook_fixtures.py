"""The part of `swardcast outlook` about competitions and visitors' days."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from typing import Any

from swardcast.language.voice import Voice
from swardcast.notices.fixtures import fixture_in_words, meets_in_words
from swardcast.outlook.fixtures import FixtureOutlook, fixtures_ahead
from swardcast.outlook.states import CourseOutlook, JobOutlook
from swardcast.records.fixtures import Fixture
from swardcast.records.folder import ClubRecords

__all__ = ["fixture_lines", "fixtures_json"]

_Met = tuple[Fixture, list[tuple[JobOutlook, FixtureOutlook]]]


def _by_fixture(outlook: CourseOutlook, records: ClubRecords) -> list[_Met]:
    """Every fixture that matters to a job, with what it meets of each."""
    met: dict[str, list[tuple[JobOutlook, FixtureOutlook]]] = {}
    for job in outlook.jobs.values():
        for one in fixtures_ahead(job, records.fixtures, outlook.as_of.date()):
            met.setdefault(one.fixture.id, []).append((job, one))
    return [(fixture, met[fixture.id]) for fixture in records.fixtures if fixture.id in met]


def fixture_lines(outlook: CourseOutlook, records: ClubRecords) -> Iterator[str]:
    """Say what each coming fixture meets of each job.

    Args:
        outlook: the course at the moment.
        records: the club's records.

    Returns:
        Lines; none where no fixture meets a job.
    """
    voice = Voice.english(outlook.as_of.date())
    for place, (fixture, jobs) in enumerate(_by_fixture(outlook, records)):
        if place == 0:
            yield "\nCompetitions and visitors' days"
        yield f"\n{fixture_in_words(fixture, voice)} [{fixture.id}]"
        for job, one in jobs:
            yield f"  {job.job.title}: {meets_in_words(one, job, voice)}"


def fixtures_json(outlook: CourseOutlook, records: ClubRecords) -> list[dict[str, Any]]:
    """Give the same for a machine, chances as fractions.

    Args:
        outlook: the course at the moment.
        records: the club's records.

    Returns:
        One mapping for each fixture.
    """
    return [
        {
            "id": fixture.id,
            "name": fixture.name,
            "first_day": fixture.first_day.isoformat(),
            "last_day": fixture.last_day.isoformat(),
            "starts_at": _iso(fixture.starts_at),
            "ends_at": _iso(fixture.ends_at),
            "where": fixture.where,
            "jobs": [_met_json(job, one) for job, one in jobs],
        }
        for fixture, jobs in _by_fixture(outlook, records)
    ]


def _met_json(job: JobOutlook, one: FixtureOutlook) -> dict[str, Any]:
    return {
        "job": job.job.id,
        "in_work": one.in_work.value,
        "basis": one.basis.value,
        "chance_not_normal": _rounded(one.not_normal),
        "chance_unsettled": _rounded(one.unsettled),
        "before_end_of_range": one.in_range.value if one.in_range is not None else None,
    }


def _rounded(chance: float | None) -> float | None:
    return None if chance is None else round(chance, 4)


def _iso(moment: date | None) -> str | None:
    return moment.isoformat() if moment is not None else None
