"""The season for programs: /season.json and its JSON Schema, with the days and words of the page Season.

The schema (`static/season.schema.json`, JSON Schema 2020-12) is the reference: it describes every field. It and the
file have the same version, by the rules of `status_file`. Nothing is worked out here: everything stands in a `Season`.
"""

from __future__ import annotations

from typing import Final

from swardcast.artifact import Artifact
from swardcast.compose import Bulletin, season_of
from swardcast.notices.season import MonthOfSeason, OfMonth, SeasonJob
from swardcast.notices.season_fixtures import FixtureOfMonth, Meeting
from swardcast.outlets.json_file import json_artifact, schema_artifact
from swardcast.outlook.dates import DateRange

__all__ = ["SEASON_PATH", "SEASON_SCHEMA_PATH", "SEASON_VERSION", "season_artifacts"]

SEASON_PATH: Final = "season.json"
SEASON_SCHEMA_PATH: Final = "season.schema.json"
SEASON_VERSION: Final = "1.0"
"""Of the file and of its schema."""


def season_artifacts(bulletin: Bulletin) -> tuple[Artifact, ...]:
    """Write the season and its schema.

    Args:
        bulletin: the bulletin.

    Returns:
        Two files.
    """
    return (
        json_artifact(SEASON_PATH, _season(bulletin)),
        schema_artifact(SEASON_SCHEMA_PATH, bulletin.club.site),
    )


def _season(bulletin: Bulletin) -> dict[str, object]:
    club, season = bulletin.club, season_of(bulletin)
    return {
        "$schema": f"{club.site}/{SEASON_SCHEMA_PATH}",
        "version": SEASON_VERSION,
        "club": {"name": club.name, "language": club.language, "time_zone": club.time_zone.key},
        "site": f"{club.site}/",
        "as_of": bulletin.as_of.isoformat(timespec="seconds"),
        "jobs": [_job(job, club.site) for job in season.jobs],
        "months": [_month(month) for month in season.months],
        "beyond": [_of_month(one) for one in season.beyond],
        "no_day": [_of_month(one) for one in season.no_day],
    }


def _job(job: SeasonJob, site: str) -> dict[str, object]:
    matter = job.matter
    return {
        "notice": matter.job.id,
        "address": f"{site}/notices/{matter.job.id}/",
        "title": matter.job.title,
        "state": matter.outlook.work.value,
        "surfaces": [work.surface.id for work in matter.outlook.surfaces],
        "work": [
            {
                "first": part.first_day.isoformat(),
                "last": part.last_day.isoformat(),
                "surfaces": [work.surface.id for work in part.works],
            }
            for part in job.parts
        ],
        "heals_from": job.heals_from.isoformat() if job.heals_from is not None else None,
        "back_to_normal": None if job.heals_from is None else _normal(job, matter.published),
    }


def _normal(job: SeasonJob, published: DateRange) -> dict[str, object]:
    """The date in words, and its days as long as the words tell them."""
    until, today = published.allow_until, job.matter.voice.near
    holds = until is not None and (published.is_fact or (until >= today and not job.matter.stands_still))
    days = {"early": published.early, "likely": published.likely, "allow_until": until}
    return {
        "words": job.normal,
        **{name: day.isoformat() if holds and day is not None else None for name, day in days.items()},
        "is_fact": published.is_fact,
        "in_months": holds and published.is_wide,
    }


def _month(month: MonthOfSeason) -> dict[str, object]:
    return {
        "month": f"{month.first_day:%Y-%m}",
        "name": month.name,
        "work": [_of_month(one) for one in month.work],
        "healing": [_of_month(one) for one in month.healing],
        "fixtures": [_fixture(run) for run in month.fixtures.runs],
    }


def _of_month(one: OfMonth) -> dict[str, object]:
    return {
        "notice": one.notice_id,
        "title": one.title,
        "where": one.where,
        "words": one.when,
        "first": one.first.isoformat() if one.first is not None else None,
        "last": one.last.isoformat() if one.last is not None else None,
        "is_called_off": one.is_called_off,
    }


def _fixture(run: FixtureOfMonth) -> dict[str, object]:
    return {
        "names": list(run.names),
        "first_days": [day.isoformat() for day in run.first_days],
        "meets": [_meeting(one) for one in run.meets],
    }


def _meeting(one: Meeting) -> dict[str, object]:
    return {"notice": one.notice_id, "title": one.title, "words": one.words}
