"""plan/*.yaml -> jobs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Annotated
from zoneinfo import ZoneInfo

from pydantic import BeforeValidator, Field
from pydantic_core import PydanticCustomError

from swardcast.errors import Problem
from swardcast.reading.local_rules import LocalRuleItem, local_rules_from
from swardcast.reading.operations import OperationItem, operation_from
from swardcast.reading.own_words import own_words_from
from swardcast.reading.plan_sense import oddities_of
from swardcast.reading.schema import (
    Day,
    Lines,
    Model,
    Number,
    Text,
    Words,
    local_moment,
    one_of,
    validated,
    within,
    wrong,
)
from swardcast.reading.selection import select_surfaces
from swardcast.reading.surfaces_file import identifier
from swardcast.reading.time_spans import MinutesFromTo
from swardcast.reading.usual_times import UsualTime, stretch_from
from swardcast.reading.yaml_text import Located
from swardcast.records.club import Surface
from swardcast.records.plan import COURSE_STATUS, FollowUp, Job, OwnWords, Play, Reading, Withdrawal

__all__ = ["jobs_from"]


class _Reading(Model):
    what: Text
    found: Text
    target: Words = ""
    on: Day | None = None


class _Withdrawn(Model):
    at: Text
    because: Text
    instead: Words = ""


def _job_id(value: object) -> str:
    if value == COURSE_STATUS:
        raise wrong(value, "another name: the feeds have the course's own news under this one")
    return identifier(value)


class _Job(Model):
    id: Annotated[str, BeforeValidator(_job_id)]
    title: Text
    announced: Day | None = None
    starts: Day
    surfaces: Text
    operations: Annotated[list[OperationItem], Field(min_length=1)]
    surfaces_a_day: Annotated[Number, within(0.05, 60, "surfaces finished in a day, from 0.05 to 60")]
    spare_days: Annotated[int, within(0, 30, "spare days from 0 to 30")] = 0
    while_working: Annotated[Play, one_of(Play)] = Play.CLOSED
    reopens_after: UsualTime | None = None
    follow_up: MinutesFromTo | None = None
    normal_after: UsualTime | None = None
    why: Lines = []
    measured: list[_Reading] = []
    local_rules: list[LocalRuleItem] = []
    scores: Words = ""
    meanwhile: Words = ""
    own_words: Words = ""
    withdrawn: _Withdrawn | None = None
    private_note: Words = ""


class _Programme(Model):
    programme: Text
    announced: Day
    jobs: Annotated[list[_Job], Field(min_length=1)]


def jobs_from(
    document: Located, *, file: str, surfaces: Mapping[str, Surface], zone: ZoneInfo, problems: list[Problem]
) -> list[Job]:
    """Read one programme.

    Args:
        document: the YAML of the plan file.
        file: its name for problems.
        surfaces: all surfaces by id.
        zone: the club's time zone.
        problems: where problems are added.

    Returns:
        Its jobs, in order; those with a problem are left out.
    """
    told = validated(_Programme, document, file=file, problems=problems)
    if told is None:
        return []
    jobs = []
    for place, job in enumerate(told.jobs):
        field: tuple[str, ...] = ("surfaces",)
        try:
            chosen = select_surfaces(job.surfaces, surfaces)
            field = ("withdrawn", "at")
            withdrawn = _withdrawal(job.withdrawn, zone, document.line(("jobs", place, "withdrawn")))
        except PydanticCustomError as error:
            problems.append(_problem(error, file, document.line(("jobs", place, *field)), ".".join(field)))
            continue
        line = document.line(("jobs", place)) or 1
        words = _own_words(document, place, file, problems)
        jobs.append(replace(_job(told, job, chosen, words, file=file, line=line), withdrawn=withdrawn))
        problems.extend(oddities_of(jobs[-1], surfaces))
    return jobs


def _withdrawal(told: _Withdrawn | None, zone: ZoneInfo, line: int | None) -> Withdrawal | None:
    if told is None:
        return None
    at = local_moment(told.at, zone)
    return Withdrawal(at=at, because=told.because, instead=told.instead, line=line or 1)


def _problem(error: PydanticCustomError, file: str, line: int | None, field: str) -> Problem:
    context = error.context or {}
    return Problem(
        file=file, line=line, field=field, found=context["found"], expected=context["expected"], hint=context["hint"]
    )


def _own_words(document: Located, place: int, file: str, problems: list[Problem]) -> tuple[str, tuple[OwnWords, ...]]:
    """Read as they stand in the file, so that each heading is told with its line."""
    words = document.value["jobs"][place].get("own words") or ""
    line = document.line(("jobs", place, "own words")) or 1
    below = line + 1 if "\n" in words else line  # a block of text begins on the line after its field
    return own_words_from(words, file=file, first_line=below, problems=problems)


def _job(
    told: _Programme,
    job: _Job,
    chosen: tuple[str, ...],
    words: tuple[str, tuple[OwnWords, ...]],
    *,
    file: str,
    line: int,
) -> Job:
    return Job(
        id=job.id,
        title=job.title,
        programme=told.programme,
        announced=job.announced or told.announced,
        starts=job.starts,
        surfaces=chosen,
        operations=tuple(map(operation_from, job.operations)),
        surfaces_a_day=job.surfaces_a_day,
        spare_days=job.spare_days,
        while_working=job.while_working,
        reopens_after=stretch_from(job.reopens_after),
        follow_up=FollowUp(from_minutes=job.follow_up[0], to_minutes=job.follow_up[1]) if job.follow_up else None,
        normal_after=stretch_from(job.normal_after),
        why=tuple(job.why),
        readings=tuple(Reading(what=r.what, found=r.found, target=r.target, on=r.on) for r in job.measured),
        own_words=words[0],
        own_parts=words[1],
        file=file,
        line=line,
        local_rules=local_rules_from(job.local_rules),
        scores=job.scores,
        meanwhile=job.meanwhile,
        private_note=job.private_note,
    )
